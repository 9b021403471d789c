/** Pieces of known height placed on pages: nothing is drawn before every page number is known. */
import type { Pen } from './pen.ts';
import type { LinkSink } from './lines.ts';

export interface Spot {
  readonly pen: Pen;
  readonly link: LinkSink;
  /** 1-based page of a `#id`, for the contents list. */
  readonly pageOf: (id: string) => number | undefined;
}

export interface Atom {
  readonly height: number;
  /** Space above, dropped at the top of a page. */
  readonly before: number;
  /** Stays on the page of the atom that follows. */
  readonly keep?: boolean;
  readonly breakBefore?: boolean;
  /** Targets that links may name. */
  readonly anchors?: readonly string[];
  /** Drawn first again when this atom starts a page (the head of a table). */
  readonly repeat?: Atom;
  readonly draw: (spot: Spot, top: number) => void;
}

export interface Placed {
  readonly atom: Atom;
  readonly page: number;
  readonly top: number;
}

export interface Paper {
  readonly top: number;
  readonly bottom: number;
}

/** The run of atoms that must share a page, starting at `from`. */
function groupFrom(atoms: readonly Atom[], from: number): Atom[] {
  const group: Atom[] = [];
  for (let at = from; at < atoms.length; at += 1) {
    const atom = atoms[at];
    if (!atom || (group.length > 0 && atom.breakBefore)) break;
    group.push(atom);
    if (!atom.keep) break;
  }
  return group;
}

const heightOf = (group: readonly Atom[]): number =>
  group.reduce((sum, atom, index) => sum + atom.height + (index === 0 ? 0 : atom.before), 0);

/** Page and place of every atom; groups longer than a page are let go rather than looped over. */
export function placed(atoms: readonly Atom[], paper: Paper): Placed[] {
  const result: Placed[] = [];
  const room = paper.bottom - paper.top;
  let page = 1;
  let y = paper.top;
  const nextPage = (): void => {
    page += 1;
    y = paper.top;
  };
  const put = (atom: Atom): void => {
    result.push({ atom, page, top: y });
    y += atom.height;
  };
  let held = 0;
  atoms.forEach((atom, index) => {
    const atTop = (): boolean => y === paper.top;
    if (atom.breakBefore && !atTop()) nextPage();
    if (held > 0) held -= 1;
    else {
      const group = groupFrom(atoms, index);
      const whole = heightOf(group);
      const needed = (whole <= room ? whole : atom.height) + (atTop() ? 0 : atom.before);
      if (y + needed > paper.bottom && !atTop()) nextPage();
      held = whole <= room ? group.length - 1 : 0;
    }
    if (atTop() && page > 1 && atom.repeat) put({ ...atom.repeat, keep: true });
    else if (!atTop()) y += atom.before;
    if (y + atom.height > paper.bottom && !atTop()) nextPage();
    put(atom);
  });
  return result;
}

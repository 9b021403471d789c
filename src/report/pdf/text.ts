/** Text as atoms, its styles, and frames around atoms. */
import type { Inline } from '../document.ts';
import type { Atom } from './flow.ts';
import type { Line, TextStyle } from './lines.ts';
import { drawLine, linesOf } from './lines.ts';
import type { Pen } from './pen.ts';

export const bodyText: TextStyle = { size: 10, leading: 14 };
export const leadText: TextStyle = { size: 11.5, leading: 16 };
export const smallText: TextStyle = { size: 8.5, leading: 11.5, ink: 'soft' };
export const sideText: TextStyle = { size: 9.5, leading: 12.5 };
export const formulaText: TextStyle = { size: 11, leading: 15, face: 'serif' };

export const PARAGRAPH_GAP = 6;
export const INDENT = 16;
/** Boxes up to this height are kept on one page. */
const KEPT_HEIGHT = 420;

interface TextOptions {
  readonly before?: number;
  readonly indent?: number;
  readonly label?: string;
}

/** Lines of a text; the first two and the last two stay together. */
export function textAtoms(
  pen: Pen,
  text: Inline,
  x: number,
  width: number,
  style: TextStyle,
  options: TextOptions = {},
): Atom[] {
  const indent = options.indent ?? 0;
  const lines = linesOf(pen, text, width - indent, style);
  return lines.map((line, index) => ({
    height: style.leading,
    before: index === 0 ? (options.before ?? PARAGRAPH_GAP) : 0,
    ...((index === 0 && lines.length > 1) || index === lines.length - 2 ? { keep: true } : {}),
    draw: ({ pen: on, link }, top) => {
      if (index === 0 && options.label !== undefined) {
        drawLine(on, plainLine(on, options.label, style), x, top, style, link);
      }
      drawLine(on, line, x + indent, top, style, link);
    },
  }));
}

function plainLine(pen: Pen, text: string, style: TextStyle): Line {
  const face = style.face ?? 'sans';
  return {
    pieces: [{ text, face, ink: style.ink ?? 'ink', width: pen.widthOf(text, face, style.size) }],
    width: 0,
  };
}

/** A frame drawn piece by piece, so that a long box may cross pages. */
export function framed(
  atoms: readonly Atom[],
  frame: (pen: Pen, top: number, height: number, first: boolean, last: boolean) => void,
  padding: number,
  before: number,
  anchors: readonly string[],
): Atom[] {
  const whole = atoms.reduce((sum, atom) => sum + atom.height + atom.before, padding * 2);
  const isKept = whole <= KEPT_HEIGHT;
  return atoms.map((atom, index) => {
    const first = index === 0;
    const last = index === atoms.length - 1;
    const lead = first ? padding : atom.before;
    const height = atom.height + lead + (last ? padding : 0);
    const keep = last ? false : isKept || (atom.keep ?? false) || first;
    return {
      height,
      before: first ? before : 0,
      ...(keep ? { keep: true } : {}),
      anchors: first ? anchors : [],
      draw: (spot, top) => {
        frame(spot.pen, top, height, first, last);
        atom.draw(spot, top + lead);
      },
    };
  });
}

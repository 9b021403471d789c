/** The notes of a sheet in their columns. */
import type { Anchor, DetailModel } from './edge-model.ts';
import { point } from './geometry.ts';
import { fitsColumn, hasCrossing, placeNotes, type Column, type Note, type PlacedNote } from './labels.ts';
import { BALLOON_mm, type Layout, type SheetSize } from './layout.ts';
import { circle, group, line, pen, text, type Shape, type TextShape } from './shapes.ts';
import { wordsHeight } from './sheet-measures.ts';
import { letterMark, wrapNote, type NoteText, type WrappedNote } from './sheet-notes.ts';
import { toPaper, type Placement } from './sheet-section.ts';

const NOTE_GAP_mm = 1.6;
const COMPACT_GAP_mm = 0.8;
const LINE_STEP = 1.14;
/** Middle of the first line's small letters, from the label's top, in font sizes. */
const FIRST_LINE = 0.6;

/** How the left notes are parted above and below the roof edge's figure: by meaning, as it fits, not at all. */
export const partings = ['by-meaning', 'as-it-fits', 'one-column'] as const;
export type Parting = (typeof partings)[number];

export interface NoteWish {
  readonly parting: Parting;
  /** Notes of the wall stand left of it, or in the room. */
  readonly wallSide: 'left' | 'right';
}

export interface NoteSet {
  readonly placed: readonly PlacedNote[];
  readonly words: ReadonlyMap<string, WrappedNote>;
}

type ColumnName = 'right' | 'above' | 'below';

function columnOf(anchor: Anchor, wish: NoteWish): ColumnName {
  switch (anchor.side) {
    case 'stack':
    case 'room':
      return 'right';
    case 'edge-above':
      return 'above';
    case 'edge-below':
      return 'below';
    case 'wall':
      return wish.wallSide === 'left' ? 'below' : 'right';
  }
}

function columnsOf(
  edge: DetailModel,
  placement: Placement,
  layout: Layout,
  size: SheetSize,
  edgeWords: number,
): Record<ColumnName, Column> {
  const { margin_mm, left_mm, right_mm, size_mm, isCompact, strip_mm } = layout;
  const bottom = size.height_mm - margin_mm - strip_mm;
  const beside = edge.measures.find((m) => m.way === 'edge');
  const high = toPaper(placement, beside?.to ?? edge.partAt).y;
  const low = toPaper(placement, beside?.from ?? edge.partAt).y;
  const middle = (high + low) / 2;
  const half = wordsHeight(edgeWords, size_mm) / 2 + 1.5;
  const column = (side: 'left' | 'right', top: number, end: number): Column => ({
    side,
    x: side === 'left' ? margin_mm + left_mm : size.width_mm - margin_mm - right_mm,
    width_mm: side === 'left' ? left_mm : right_mm,
    top,
    bottom: end,
    gap_mm: isCompact ? COMPACT_GAP_mm : NOTE_GAP_mm,
  });
  return {
    right: column('right', margin_mm, bottom),
    above: column('left', margin_mm, isCompact ? middle - 1 : Math.min(high, middle - half) - 1),
    below: column('left', isCompact ? middle + 1 : Math.max(low, middle + half) + 1, bottom),
  };
}

interface Wanted {
  readonly text: NoteText;
  readonly anchor: Anchor;
}

/** Whose second lines stay longest when a column is short: what carries the eave, insulation, other layers. */
function detailRank({ anchor }: Wanted): number {
  if (anchor.id === 'part-outrigger' || anchor.id === 'part-tail') return 0;
  if (anchor.layerId !== null) return /^(insulation|cavity)/.test(anchor.layerId) ? 1 : 2;
  return 3;
}

/** One column with its words broken to its width; when it is short, only the second lines that matter most. */
function placeColumn(
  wanted: readonly Wanted[],
  target: Column,
  placement: Placement,
  layout: Layout,
  words: Map<string, WrappedNote>,
): PlacedNote[] | null {
  const { size_mm, isCompact } = layout;
  const wrapped = (note: NoteText, hasDetail: boolean): WrappedNote =>
    isCompact
      ? { lines: [note.mark], nameLines: 1 }
      : wrapNote(note, target.width_mm - 1.5, size_mm, hasDetail);
  const height_mm = ({ lines }: WrappedNote): number =>
    isCompact ? BALLOON_mm : lines.length * size_mm * LINE_STEP;
  const portDrop_mm = isCompact ? BALLOON_mm / 2 : size_mm * FIRST_LINE;
  for (const { text: note } of wanted) words.set(note.id, wrapped(note, false));
  const list = (): Note[] =>
    wanted.map(({ text: { id, layerId, mark }, anchor }) => ({
      id,
      layerId,
      mark,
      at: toPaper(placement, anchor.at),
      height_mm: height_mm(words.get(id) ?? { lines: [], nameLines: 0 }),
      portDrop_mm,
    }));
  let notes = list();
  if (!fitsColumn(notes, target)) return null;
  const detailed = wanted.filter(({ text: { detail } }) => detail !== '' && !isCompact);
  for (const { text: note } of detailed.sort((p, q) => detailRank(p) - detailRank(q))) {
    const plain = words.get(note.id);
    words.set(note.id, wrapped(note, true));
    const longer = list();
    if (fitsColumn(longer, target)) notes = longer;
    else if (plain !== undefined) words.set(note.id, plain);
  }
  return placeNotes(notes, target);
}

/** How many notes may move up past the roof edge's figure, or down. */
const MOVES = [0, 1, -1, 2, -2, 3, -3];

/** Places wanted notes in a column of the sheet. */
type PlaceIn = (wanted: readonly Wanted[], column: Column) => PlacedNote[] | null;

/**
 * The left side: the upper notes above the roof edge's figure, the others below it, parted so that no
 * leader crosses another; or one column beside everything, which never crosses.
 */
function placeLeft(
  above: readonly Wanted[],
  below: readonly Wanted[],
  columns: Record<ColumnName, Column>,
  placeIn: PlaceIn,
  parting: Parting,
): PlacedNote[] | null {
  const all = [...above, ...below].sort((a, b) => b.anchor.at.y - a.anchor.at.y);
  if (parting === 'one-column') return placeIn(all, { ...columns.above, bottom: columns.below.bottom });
  const uppers =
    parting === 'by-meaning' ? [above] : MOVES.map((more) => all.slice(0, Math.max(0, above.length + more)));
  for (const upper of uppers) {
    const high = placeIn(upper, columns.above);
    const low = placeIn(
      all.filter((wanted) => !upper.includes(wanted)),
      columns.below,
    );
    if (high !== null && low !== null && !hasCrossing([...high, ...low])) return [...high, ...low];
  }
  return null;
}

/** Notes of all columns, or null when a column is too short for its words. */
export function placeAll(
  edge: DetailModel,
  notes: readonly NoteText[],
  placement: Placement,
  layout: Layout,
  size: SheetSize,
  edgeWords: number,
  wish: NoteWish,
): NoteSet | null {
  const words = new Map<string, WrappedNote>();
  const columns = columnsOf(edge, placement, layout, size, edgeWords);
  const wantedIn = (name: ColumnName): Wanted[] =>
    edge.anchors.flatMap((anchor): Wanted[] => {
      const note = columnOf(anchor, wish) === name ? notes.find((n) => n.id === anchor.id) : undefined;
      return note === undefined ? [] : [{ text: note, anchor }];
    });
  const placeIn: PlaceIn = (wanted, column) => placeColumn(wanted, column, placement, layout, words);
  const right = placeIn(wantedIn('right'), columns.right);
  if (right === null) return null;
  const left = placeLeft(wantedIn('above'), wantedIn('below'), columns, placeIn, wish.parting);
  return left === null ? null : { placed: [...right, ...left], words };
}

/** The notes with letters in the order in which they stand on the sheet: left column down, then right. */
export function lettered(notes: readonly NoteText[], set: NoteSet): NoteText[] {
  const order = set.placed.filter((p) => p.note.layerId === null).sort((a, b) => a.box.x - b.box.x);
  const letters = new Map(order.map((p, index) => [p.note.id, letterMark(index)]));
  return notes
    .map((note) => ({ ...note, mark: letters.get(note.id) ?? note.mark }))
    .sort((a, b) => Number(a.layerId === null) - Number(b.layerId === null) || markOrder(a.mark, b.mark));
}

const markOrder = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true });

export interface DrawnNotes {
  readonly shapes: Shape[];
  readonly texts: TextShape[];
}

function noteInner(placed: PlacedNote, wrapped: WrappedNote, layout: Layout, isLit: boolean): Shape[] {
  const { note, box, port } = placed;
  const { size_mm, isCompact } = layout;
  const isLeft = box.x < note.at.x;
  if (isCompact) {
    const center = point(isLeft ? port.x - BALLOON_mm / 2 : port.x + BALLOON_mm / 2, port.y);
    const baseline = point(center.x, center.y + size_mm * 0.33);
    return [
      circle(center, BALLOON_mm / 2, pen(0.35, isLit ? 'highlight' : 'line'), 'paper'),
      text(baseline, note.mark, { size_mm, anchor: 'middle', weight: 'bold' }),
    ];
  }
  return wrapped.lines.map((words, i) =>
    text(point(isLeft ? port.x - 1 : port.x + 1, box.y + size_mm * (0.86 + i * LINE_STEP)), words, {
      size_mm,
      anchor: isLeft ? 'end' : 'start',
      ink: isLit ? 'highlight' : i < wrapped.nameLines ? 'text' : 'softText',
    }),
  );
}

export function noteShapes(set: NoteSet, layout: Layout, isNoteLit: (note: Note) => boolean): DrawnNotes {
  const shapes: Shape[] = [];
  const texts: TextShape[] = [];
  for (const placed of set.placed) {
    const { note, port } = placed;
    const isLit = isNoteLit(note);
    const inner = noteInner(placed, set.words.get(note.id) ?? { lines: [], nameLines: 0 }, layout, isLit);
    texts.push(...inner.filter((shape) => shape.kind === 'text'));
    const leader = [
      line(note.at, port, pen(0.25, isLit ? 'highlight' : 'dimension')),
      circle(note.at, 0.5, null, 'solid'),
    ];
    shapes.push(
      group('note', `note-${note.id}`, [...leader, ...inner], {
        layerId: note.layerId,
        isHighlighted: isLit,
      }),
    );
  }
  return { shapes, texts };
}

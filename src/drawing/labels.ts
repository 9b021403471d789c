/**
 * Places notes in a column beside the drawing so that no two labels overlap and no two leaders cross.
 * Order first: the leaders are untangled by swapping labels; then heights: least squares with spacing
 * (isotonic regression by pooling neighbors), kept within the column.
 */
import { segmentsCross, type Box, type Point, type Segment } from './geometry.ts';

export interface Note {
  readonly id: string;
  readonly layerId: string | null;
  readonly mark: string;
  /** End of the leader on the drawing. */
  readonly at: Point;
  readonly height_mm: number;
  /** Where the leader meets the label, from its top: the middle of the first line. */
  readonly portDrop_mm: number;
}

export interface Column {
  /** Side of the drawing on which the column stands. */
  readonly side: 'left' | 'right';
  /** Edge of the column that faces the drawing. */
  readonly x: number;
  readonly width_mm: number;
  readonly top: number;
  readonly bottom: number;
  readonly gap_mm: number;
}

export interface PlacedNote {
  readonly note: Note;
  readonly box: Box;
  /** Where the leader meets the label. */
  readonly port: Point;
}

const totalHeight = (notes: readonly Note[], gap_mm: number): number =>
  notes.reduce((sum, note) => sum + note.height_mm, 0) + gap_mm * Math.max(0, notes.length - 1);

export const fitsColumn = (notes: readonly Note[], column: Column): boolean =>
  totalHeight(notes, column.gap_mm) <= column.bottom - column.top;

/** Means of pooled neighbors: the non-decreasing sequence nearest to the wanted one in least squares. */
export function nondecreasing(wanted: readonly number[]): number[] {
  const pools: { sum: number; count: number }[] = [];
  for (const value of wanted) {
    pools.push({ sum: value, count: 1 });
    for (;;) {
      const last = pools.at(-1);
      const before = pools.at(-2);
      if (last === undefined || before === undefined || before.sum / before.count <= last.sum / last.count)
        break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  }
  return pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
}

/** Tops of labels in a given order: as near to their parts as spacing and column allow. */
function tops(notes: readonly Note[], column: Column): number[] {
  let reach = 0;
  const offsets = notes.map((_, i) => {
    const before = notes[i - 1];
    if (before !== undefined) reach += before.height_mm + column.gap_mm;
    return reach;
  });
  const high = column.bottom - (notes.at(-1)?.height_mm ?? 0) - reach;
  return nondecreasing(notes.map((note, i) => note.at.y - note.portDrop_mm - (offsets[i] ?? 0))).map(
    (value, i) => Math.max(column.top, Math.min(high, value)) + (offsets[i] ?? 0),
  );
}

const placedAt = (note: Note, top: number, column: Column): PlacedNote => ({
  note,
  port: { x: column.x, y: top + note.portDrop_mm },
  box: {
    x: column.side === 'right' ? column.x : column.x - column.width_mm,
    y: top,
    width: column.width_mm,
    height: note.height_mm,
  },
});

function settle(notes: readonly Note[], column: Column): PlacedNote[] {
  const ys = tops(notes, column);
  return notes.map((note, i) => placedAt(note, ys[i] ?? 0, column));
}

export const leaderOf = (placed: PlacedNote): Segment => [placed.note.at, placed.port];

/** True when any two leaders of the notes cross. */
export const hasCrossing = (placed: readonly PlacedNote[]): boolean => firstCrossing(placed) !== null;

/** First pair of leaders that cross, by place in the column. */
function firstCrossing(placed: readonly PlacedNote[]): [number, number] | null {
  for (let i = 0; i < placed.length; i += 1) {
    for (let j = i + 1; j < placed.length; j += 1) {
      const a = placed[i];
      const b = placed[j];
      if (a !== undefined && b !== undefined && segmentsCross(leaderOf(a), leaderOf(b))) return [i, j];
    }
  }
  return null;
}

/**
 * One label under the other, each taking the part whose leader has every other part below it. The leaders
 * still to come then lie below that line too, so none can cross it: free of crossings for any heights.
 */
function stacked(notes: readonly Note[], column: Column): PlacedNote[] {
  const left = [...notes];
  const placed: PlacedNote[] = [];
  const drop = Math.max(...notes.map((note) => note.portDrop_mm));
  const wanted = notes.reduce((sum, note) => sum + note.at.y, 0) / notes.length;
  const total = totalHeight(notes, column.gap_mm);
  let top = Math.max(column.top, Math.min(column.bottom - total, wanted - total / 2));
  while (left.length > 0) {
    const port = { x: column.x, y: top + drop };
    const steepness = (note: Note): number =>
      (note.at.y - port.y) / Math.max(1e-9, Math.abs(port.x - note.at.x));
    const next = left.reduce((best, note) => (steepness(note) < steepness(best) ? note : best));
    left.splice(left.indexOf(next), 1);
    placed.push(placedAt(next, top, column));
    top += next.height_mm + column.gap_mm;
  }
  return placed;
}

const MOST_SWAPS = 200;

/**
 * Places the notes of one column.
 *
 * @param notes   notes with their leader ends and heights; the leader meets every label equally far from its top
 * @param column  where the labels may stand
 * @returns       placed notes from top to bottom; null when they are higher than the column
 */
export function placeNotes(notes: readonly Note[], column: Column): PlacedNote[] | null {
  if (!fitsColumn(notes, column)) return null;
  const order = [...notes].sort((a, b) => a.at.y - b.at.y || a.at.x - b.at.x);
  for (let swaps = 0; swaps < MOST_SWAPS; swaps += 1) {
    const placed = settle(order, column);
    const pair = firstCrossing(placed);
    if (pair === null) return placed;
    const [i, j] = pair;
    const a = order[i];
    const b = order[j];
    if (a === undefined || b === undefined) break;
    order[i] = b;
    order[j] = a;
  }
  return stacked(notes, column);
}

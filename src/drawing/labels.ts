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

/** Centers of labels in a given order. */
function centers(notes: readonly Note[], column: Column): number[] {
  let reach = 0;
  const offsets = notes.map((note, i) => {
    const before = notes[i - 1];
    if (before !== undefined) reach += (before.height_mm + note.height_mm) / 2 + column.gap_mm;
    return reach;
  });
  const first = notes[0]?.height_mm ?? 0;
  const last = notes.at(-1)?.height_mm ?? 0;
  const low = column.top + first / 2;
  const high = column.bottom - last / 2 - reach;
  return nondecreasing(notes.map((note, i) => note.at.y - (offsets[i] ?? 0))).map(
    (value, i) => Math.max(low, Math.min(high, value)) + (offsets[i] ?? 0),
  );
}

function settle(notes: readonly Note[], column: Column): PlacedNote[] {
  const ys = centers(notes, column);
  return notes.map((note, i) => {
    const y = ys[i] ?? 0;
    return {
      note,
      port: { x: column.x, y },
      box: {
        x: column.side === 'right' ? column.x : column.x - column.width_mm,
        y: y - note.height_mm / 2,
        width: column.width_mm,
        height: note.height_mm,
      },
    };
  });
}

export const leaderOf = (placed: PlacedNote): Segment => [placed.note.at, placed.port];

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

const MOST_SWAPS = 400;

/**
 * Places the notes of one column.
 *
 * @param notes   notes with their leader ends and heights
 * @param column  where the labels may stand
 * @returns       placed notes from top to bottom; null when they are higher than the column
 */
export function placeNotes(notes: readonly Note[], column: Column): PlacedNote[] | null {
  if (!fitsColumn(notes, column)) return null;
  const order = [...notes].sort((a, b) => a.at.y - b.at.y || a.at.x - b.at.x);
  let placed = settle(order, column);
  for (let swaps = 0; swaps < MOST_SWAPS; swaps += 1) {
    const pair = firstCrossing(placed);
    if (pair === null) break;
    const [i, j] = pair;
    const a = order[i];
    const b = order[j];
    if (a === undefined || b === undefined) break;
    order[i] = b;
    order[j] = a;
    placed = settle(order, column);
  }
  return placed;
}

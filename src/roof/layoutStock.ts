/** How many boards or panels the pieces of a layout take, with what is cut off used again where it is large enough. */
import type { Piece, Stock } from './layout.ts';

/** [m] rounding noise of a length. */
const NOISE_M = 1e-7;

interface Offcut {
  /** Along the board that it was cut from: channels and edges of panels must meet. */
  readonly from_m: number;
  readonly to_m: number;
  readonly width_m: number;
}

export interface StockCount {
  /** Boards, panels or sheets to buy. */
  readonly count: number;
  /** Laid as they are. */
  readonly whole: number;
  /** Cut pieces, and how many of them came from what was cut off before. */
  readonly cut: number;
  readonly reused: number;
}

const lengthOf = ({ from_m, to_m }: Offcut): number => to_m - from_m;

/** The smallest offcut that a piece can be cut from; -1 without one. */
function bestFit(offcuts: readonly Offcut[], piece: Piece, isHanded: boolean): number {
  const { length_m, width_m, start_m } = piece;
  let best = -1;
  let least_m2 = Infinity;
  for (let index = 0; index < offcuts.length; index += 1) {
    const offcut = offcuts[index] as Offcut;
    if (offcut.width_m < width_m - NOISE_M) continue;
    const fits = isHanded
      ? offcut.from_m <= start_m + NOISE_M && offcut.to_m >= start_m + length_m - NOISE_M
      : lengthOf(offcut) >= length_m - NOISE_M;
    const area_m2 = lengthOf(offcut) * offcut.width_m;
    if (fits && area_m2 < least_m2) {
      best = index;
      least_m2 = area_m2;
    }
  }
  return best;
}

/** What is left of a rectangle after a piece is cut out of its lower edge: on both sides, and above. */
function leftOver(from: Offcut, piece: Piece, isHanded: boolean, least_m: number): Offcut[] {
  const start_m = isHanded ? piece.start_m : from.from_m;
  const end_m = start_m + piece.length_m;
  const { width_m } = from;
  return [
    { from_m: from.from_m, to_m: start_m, width_m },
    { from_m: end_m, to_m: from.to_m, width_m },
    { from_m: start_m, to_m: end_m, width_m: width_m - piece.width_m },
  ].filter((offcut) => lengthOf(offcut) >= least_m && offcut.width_m >= least_m);
}

/**
 * Boards, panels or sheets that a list of pieces takes.
 *
 * A piece is cut from the smallest offcut that holds its rectangle, else from a new board; what is left on its sides
 * and above is kept when it is `least` long and wide. A piece of panel is cut from its own place along the panel, so
 * that channels and factory edges meet. Slanted remains are never used again.
 *
 * @param pieces   [m] of one layer, in the order of laying
 * @param stock    [m] size as sold
 * @param least_m  [m] shortest offcut that is kept; Infinity keeps none
 * @returns        [-] counts
 * @source         OUR-JUDGEMENT best fit in order of laying: a crew that keeps its offcuts sorted
 * @assumes        no saw kerf; rectangles around slanted pieces: counts are on the careful side at hips and valleys
 */
export function stockCount(pieces: readonly Piece[], stock: Stock, least_m: number): StockCount {
  const offcuts: Offcut[] = [];
  let count = 0;
  let whole = 0;
  let reused = 0;
  for (const piece of pieces) {
    if (piece.isWhole) {
      count += 1;
      whole += 1;
      continue;
    }
    const index = bestFit(offcuts, piece, stock.handed);
    const [found] = index < 0 ? [] : offcuts.splice(index, 1);
    if (found === undefined) count += 1;
    else reused += 1;
    const from = found ?? { from_m: 0, to_m: stock.length_m, width_m: stock.width_m };
    offcuts.push(...leftOver(from, piece, stock.handed, least_m));
  }
  return { count, whole, cut: pieces.length - whole, reused };
}

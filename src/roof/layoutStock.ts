/** How many boards or panels the pieces of a layout take, with what is cut off used again where it is large enough. */
import type { Piece, Stock } from './layout.ts';

/** [m] rounding noise of a length. */
const NOISE_M = 1e-7;

interface Offcut {
  readonly length_m: number;
  readonly width_m: number;
  /** End of the board that it holds; pieces of one hand only fit there. */
  readonly side: 'left' | 'right' | 'any';
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

const fits = (offcut: Offcut, piece: Piece, isHanded: boolean): boolean =>
  offcut.length_m >= piece.length_m - NOISE_M &&
  offcut.width_m >= piece.width_m - NOISE_M &&
  (!isHanded || offcut.side === piece.side);

/** The smallest offcut that a piece can be cut from. */
function bestFit(offcuts: readonly Offcut[], piece: Piece, isHanded: boolean): number {
  let best = -1;
  let least_m2 = Infinity;
  offcuts.forEach((offcut, index) => {
    const area_m2 = offcut.length_m * offcut.width_m;
    if (area_m2 < least_m2 && fits(offcut, piece, isHanded)) {
      best = index;
      least_m2 = area_m2;
    }
  });
  return best;
}

const opposite = { left: 'right', right: 'left' } as const;

/** What is left of a rectangle after a piece is cut out of its corner: beside it, and above it. */
function leftOver(from: Offcut, piece: Piece, stock: Stock, least_m: number): Offcut[] {
  const beside = {
    length_m: from.length_m - piece.length_m,
    width_m: from.width_m,
    side:
      piece.side === 'left' || piece.side === 'right'
        ? from.side === 'any'
          ? opposite[piece.side]
          : from.side
        : ('any' as const),
  };
  const above = {
    length_m: piece.length_m,
    width_m: from.width_m - piece.width_m,
    side: 'any' as const,
  };
  const usable = stock.handed
    ? // A piece out of the middle of a panel, or a strip of one, has no end of a row that it fits.
      from.length_m > stock.length_m - NOISE_M && beside.side !== 'any'
      ? [beside]
      : []
    : [beside, above];
  return usable.filter(({ length_m, width_m }) => length_m >= least_m && width_m >= least_m);
}

/**
 * Boards, panels or sheets that a list of pieces takes.
 *
 * A piece is cut from the smallest offcut that holds its rectangle, else from a new board; what is left beside and
 * above is kept when it is `least` long and wide. Slanted remains are never used again.
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
    if (piece.side === 'whole') {
      count += 1;
      whole += 1;
      continue;
    }
    const index = bestFit(offcuts, piece, stock.handed);
    const [found] = index < 0 ? [] : offcuts.splice(index, 1);
    if (found === undefined) count += 1;
    else reused += 1;
    const from = found ?? { length_m: stock.length_m, width_m: stock.width_m, side: 'any' };
    offcuts.push(...leftOver(from, piece, stock, least_m));
  }
  return { count, whole, cut: pieces.length - whole, reused };
}

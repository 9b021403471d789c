/** Money of the shopping list: ranges from the price list, and lines that are priced by it. */
import { cost } from '../catalog/costs.ts';
import { dimension } from '../catalog/dimensions.ts';
import { uncertaintiesOf } from '../catalog/uncertainties.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Requirements } from '../evaluation/evaluation.ts';
import type { TakeoffLine } from '../evaluation/takeoff.ts';
import type { Draft } from './draft.ts';

export interface ListInput {
  readonly given: CompleteCase;
  readonly draft: Draft;
  readonly requirements: Requirements;
}

export type Range = TakeoffLine['cost_USD'];

/**
 * A range times a factor.
 *
 * @param range   [any] low, mid, high
 * @param factor  [-] 0 or more
 * @returns       [any] the same shape
 * @source        COMMON-PRACTICE arithmetic (computed)
 */
export const times = ({ low, mid, high }: Range, factor: number): Range => ({
  low: low * factor,
  mid: mid * factor,
  high: high * factor,
});

/**
 * Ranges added, lows to lows and highs to highs.
 *
 * @param ranges  [any] any number
 * @returns       [any] 0 for none
 * @source        COMMON-PRACTICE arithmetic (computed)
 */
export const added = (ranges: readonly Range[]): Range =>
  ranges.reduce<Range>(
    (sum, one) => ({ low: sum.low + one.low, mid: sum.mid + one.mid, high: sum.high + one.high }),
    { low: 0, mid: 0, high: 0 },
  );

/**
 * Range of a single default of dimensions.json: its value times the factors of uncertainties.json.
 *
 * @param id  [-] of the dimension and of the price
 * @returns   [USD] low, mid, high
 * @source    OUR-JUDGEMENT invented defaults
 */
export function defaultRange(id: string): Range {
  const mid = dimension(id);
  const row = uncertaintiesOf('price').find(({ price }) => price === id);
  return row === undefined
    ? { low: mid, mid, high: mid }
    : { low: mid * row.low, mid: mid * row.likely, high: mid * row.high };
}

/**
 * A row of the price list.
 *
 * @param id  [-] of costs.json
 * @returns   [USD for each unit of the row] low, mid, high
 * @source    OUR-JUDGEMENT invented and remembered defaults
 */
export const price = (id: string): Range => {
  const { low, mid, high } = cost(id);
  return { low, mid, high };
};

/** A line before its money. */
export type Bare = Omit<TakeoffLine, 'cost_USD'>;
/**
 * A line whose money is its quantity times a row of the price list.
 *
 * @param bare    [-] the line
 * @param id      [-] row of costs.json
 * @param amount  [unit of the row] what is paid for; the quantity unless told
 * @returns       [USD] the line with its range
 * @source        OUR-JUDGEMENT invented and remembered defaults
 */
export const priced = (bare: Bare, id: string, amount = bare.quantity): TakeoffLine => ({
  ...bare,
  cost_USD: times(price(id), amount),
});

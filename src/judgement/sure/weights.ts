/** How far each weight alone must move until the second comes level with the first. */
import { totalOf, type Scores, type Weights } from '../weighted.ts';

export interface CriticalWeight {
  readonly criterion: string;
  readonly weight: number;
  /** The weight at which both are level, the others held; null when no weight of 0 or more does it. */
  readonly level: number | null;
  /** Change in percent of the weight; null as above, or for a weight of 0. */
  readonly change_pct: number | null;
}

const PERCENT = 100;

/**
 * What a weight that moved alone is of all weights, once they are scaled to sum 1 again.
 *
 * w' = l / (1 - w + l)
 *
 * @param weight  [-] its share before, 0 to 1
 * @param level   [-] where it moved to, on the same scale, the others held
 * @returns       [-] its share after
 * @source        OUR-JUDGEMENT scaling to sum 1, textbook form (memory)
 */
export const shareThen = (weight: number, level: number): number => level / (1 - weight + level);

/**
 * Critical change of every single weight for a pair of alternatives.
 *
 * delta_k = (P_to - P_from) / (a_from,k - a_to,k), in percent of w_k; feasible only where w_k + delta_k >= 0
 *
 * @param weights  [-] on any scale: changes in percent do not depend on it
 * @param from     [-] scores of the one ahead
 * @param to       [-] scores of the one behind
 * @returns        [-, %] in the order of the weights
 * @source         TRIANTAPHYLLOU-SANCHEZ-1997 theorem 5.1 for the weighted sum (memory)
 * @assumes        the other weights stay as they are; normalizing again does not change who is ahead
 */
export function criticalWeights(weights: Weights, from: Scores, to: Scores): CriticalWeight[] {
  const lead = totalOf(weights, from) - totalOf(weights, to);
  return Object.entries(weights).map(([criterion, weight]) => {
    const difference = (from[criterion] ?? 0) - (to[criterion] ?? 0);
    const level = difference === 0 ? Number.NaN : weight - lead / difference;
    if (!(level >= 0)) return { criterion, weight, level: null, change_pct: null };
    return {
      criterion,
      weight,
      level,
      change_pct: weight === 0 ? null : (PERCENT * (level - weight)) / weight,
    };
  });
}

/** Weighted additive value over alternatives, and the smallest change of one weight that reverses a pair. */

export type Weights = Readonly<Record<string, number>>;
/** Value by criterion; 0 to 1 in this product, any scale in the calculation. */
export type Scores = Readonly<Record<string, number>>;

export interface Overturn {
  /** Null when no single weight reverses the pair. */
  readonly criterion: string | null;
  readonly from: string;
  readonly to: string;
  /** The weight at which the two are equal, on the scale of the weights given. */
  readonly weight: number | null;
  readonly change_pct: number | null;
}

export interface WeightedRanking {
  readonly totals: Readonly<Record<string, number>>;
  readonly order: readonly string[];
  readonly overturns: readonly Overturn[];
}

const PERCENT = 100;

/**
 * Weights that sum to 1.
 *
 * w = weight / Σ weights
 *
 * @param weights  [-] 0 or more by criterion, at least one above 0
 * @returns        [-] the same criteria, sum 1
 * @throws         RangeError when a weight is negative or not finite, or none is above 0
 * @source         OUR-JUDGEMENT additive multi-attribute value model, textbook form (memory)
 */
export function normalized(weights: Weights): Record<string, number> {
  const entries = Object.entries(weights);
  for (const [criterion, weight] of entries)
    if (!Number.isFinite(weight) || weight < 0)
      throw new RangeError(`weights.${criterion}: ${weight} is below 0`);
  const sum = entries.reduce((total, [, weight]) => total + weight, 0);
  if (!(sum > 0)) throw new RangeError('weights: none is above 0');
  return Object.fromEntries(entries.map(([criterion, weight]) => [criterion, weight / sum]));
}

/**
 * Weight times value by criterion.
 *
 * @param weights  [-] by criterion
 * @param scores   [-] by criterion; a missing one counts 0
 * @returns        [-] by criterion of the weights
 * @source         OUR-JUDGEMENT additive multi-attribute value model, textbook form (memory)
 */
export const contributionsOf = (weights: Weights, scores: Scores): Record<string, number> =>
  Object.fromEntries(
    Object.entries(weights).map(([criterion, weight]) => [criterion, weight * (scores[criterion] ?? 0)]),
  );

/**
 * Sum of the contributions.
 *
 * total = Σ w v
 *
 * @param weights  [-] by criterion
 * @param scores   [-] by criterion; a missing one counts 0
 * @returns        [-] on the scale of the weights
 * @source         OUR-JUDGEMENT additive multi-attribute value model, textbook form (memory)
 */
export const totalOf = (weights: Weights, scores: Scores): number =>
  Object.values(contributionsOf(weights, scores)).reduce((sum, part) => sum + part, 0);

/**
 * Smallest relative change of one weight, the others held, that brings `to` level with `from`.
 *
 * d + Δ (v_from − v_to) = 0, Δ = −d / (v_from − v_to), with w + Δ >= 0
 *
 * @param weights  [-] weights before or after normalizing: the relative change is the same
 * @param from     [-] the one ahead
 * @param to       [-] the one behind
 * @returns        [-, %] criterion, weight at equality, change; nulls when none reverses the pair
 * @source         OUR-JUDGEMENT one-way sensitivity of an additive value model (computed)
 */
export function overturnOf(
  weights: Weights,
  from: { readonly id: string; readonly scores: Scores },
  to: { readonly id: string; readonly scores: Scores },
): Overturn {
  const lead = totalOf(weights, from.scores) - totalOf(weights, to.scores);
  let best: Overturn = { criterion: null, from: from.id, to: to.id, weight: null, change_pct: null };
  for (const [criterion, weight] of Object.entries(weights)) {
    const difference = (from.scores[criterion] ?? 0) - (to.scores[criterion] ?? 0);
    if (difference === 0 || weight === 0) continue;
    const change = -lead / difference;
    if (weight + change < 0) continue;
    const change_pct = (PERCENT * change) / weight;
    if (best.change_pct === null || Math.abs(change_pct) < Math.abs(best.change_pct))
      best = { criterion, from: from.id, to: to.id, weight: weight + change, change_pct };
  }
  return best;
}

/**
 * Ranks alternatives by weighted additive value.
 *
 * total = Σ w v, weights normalized to sum 1
 *
 * @param weights  [-] by criterion, 0 or more
 * @param scores   [-] by alternative and criterion, 0 to 1
 * @returns        [-] totals, order (ties in the order given), one overturn of the first by each other
 * @throws         RangeError when the weights cannot be normalized
 * @source         OUR-JUDGEMENT additive multi-attribute value model, textbook form (memory)
 */
export function weightedRanking(weights: Weights, scores: Readonly<Record<string, Scores>>): WeightedRanking {
  const shares = normalized(weights);
  const totals = Object.fromEntries(Object.entries(scores).map(([id, row]) => [id, totalOf(shares, row)]));
  const order = Object.keys(scores).sort((a, b) => (totals[b] ?? 0) - (totals[a] ?? 0));
  const [first] = order;
  const scored = (id: string) => ({ id, scores: scores[id] ?? {} });
  const overturns =
    first === undefined ? [] : order.slice(1).map((id) => overturnOf(weights, scored(first), scored(id)));
  return { totals, order, overturns };
}

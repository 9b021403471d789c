/** Who is worse in everything, and what a first look at cost against durability shows. */
import type { StrategyId } from '../catalog/sets.ts';
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';

/** Criteria that say how long the roof lasts; the rest are money, work and looks (our judgement). */
export const durabilityIds: readonly string[] = [
  'deckWarmth',
  'airBarrier',
  'drying',
  'slopeLoadPath',
  'windHold',
  'snowService',
];

const valuesOf = ({ attributes }: Candidate): ReadonlyMap<string, number> =>
  new Map(attributes.map(({ criterion, value }) => [criterion, value]));

/**
 * Whether one candidate is at least as good in every criterion and better in one.
 *
 * @param one    [-] a candidate with attributes
 * @param other  [-] another
 * @returns      [-] true when no weights whatever can put the other before the one
 * @source       OUR-JUDGEMENT dominance of an additive value model, textbook form (memory)
 */
export function dominates(one: Candidate, other: Candidate): boolean {
  const values = valuesOf(other);
  let isBetter = false;
  for (const { criterion, value } of one.attributes) {
    const against = values.get(criterion) ?? 0;
    if (value < against) return false;
    if (value > against) isBetter = true;
  }
  return isBetter;
}

export interface TradeOffPoint {
  readonly candidate: string;
  readonly strategy: StrategyId;
  readonly isLeader: boolean;
  readonly cost_USD_m2: number;
  /** Weighted mean value of the criteria of durability, 0 to 1. */
  readonly durability: number;
  readonly fascia_m: number;
  /** Another one is cheaper and lasts longer, or as much. */
  readonly isBehind: boolean;
}

/**
 * All feasible candidates by money and durability.
 *
 * durability = sum of w v over the criteria of durability / sum of their w; their mean when none has a weight
 *
 * @param evaluation  [-] with a ranking
 * @returns           [USD/m², -, m] in the order of the ranking
 * @source            OUR-JUDGEMENT which criteria speak of durability
 */
export function tradeOffPoints({ ranking, candidates }: Evaluation): TradeOffPoint[] {
  const total = durabilityIds.reduce((sum, id) => sum + (ranking.weights[id] ?? 0), 0);
  const leaders = new Set(ranking.leaders.map(({ candidate }) => candidate));
  const rows = ranking.order.flatMap((id) => {
    const candidate = candidates.find((one) => one.id === id);
    if (candidate === undefined) return [];
    const values = valuesOf(candidate);
    const share = (one: string): number =>
      total > 0 ? (ranking.weights[one] ?? 0) / total : 1 / durabilityIds.length;
    return [
      {
        candidate: id,
        strategy: candidate.strategy,
        isLeader: leaders.has(id),
        cost_USD_m2: candidate.takeoff.cost_USD_m2,
        durability: durabilityIds.reduce((sum, one) => sum + share(one) * (values.get(one) ?? 0), 0),
        fascia_m: candidate.edge.fascia_m,
      },
    ];
  });
  return rows.map((row) => ({
    ...row,
    isBehind: rows.some(
      (other) =>
        other.cost_USD_m2 <= row.cost_USD_m2 &&
        other.durability >= row.durability &&
        (other.cost_USD_m2 < row.cost_USD_m2 || other.durability > row.durability),
    ),
  }));
}

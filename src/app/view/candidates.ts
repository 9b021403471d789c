/** Picking and naming candidates for a page. */
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import { strategies, type StrategyId } from '../../catalog/sets.ts';
import { boardNames, strategyNames, ventilationNames } from './names.ts';

/** The best candidate of each strategy that has one, best first. */
export function leadersOf({ ranking, candidates }: Evaluation): readonly Candidate[] {
  return ranking.leaders.flatMap(({ candidate }) => candidates.find(({ id }) => id === candidate) ?? []);
}

/** The candidate that a page shows for a strategy: its leader, else its first variant with the fewest exclusions. */
export function shownFor(evaluation: Evaluation, strategy: StrategyId): Candidate | undefined {
  const leader = leadersOf(evaluation).find((candidate) => candidate.strategy === strategy);
  if (leader) return leader;
  return evaluation.candidates
    .filter((candidate) => candidate.strategy === strategy)
    .toSorted((a, b) => a.excludedBy.length - b.excludedBy.length)[0];
}

/** `Rafter overhang, polyisocyanurate board, vented furring`. */
export function variantName(candidate: Candidate): string {
  return [
    strategyNames[candidate.strategy],
    boardsOf(candidate),
    ventilationNames[candidate.ventilation.kind],
  ].join(', ');
}

export function boardsOf({ board, baseBoard }: Candidate): string {
  return baseBoard === null ? boardNames[board] : `${boardNames[board]} over ${boardNames[baseBoard]}`;
}

export function candidateNames({ candidates }: Evaluation): ReadonlyMap<string, string> {
  return new Map(candidates.map((candidate) => [candidate.id, variantName(candidate)]));
}

export interface MissingStrategy {
  readonly strategy: StrategyId;
  /** What excludes its variants, each reason once. */
  readonly reasons: readonly string[];
}

/** Strategies without a feasible variant, with the reasons that hold for the variant nearest to feasible. */
export function missingOf(evaluation: Evaluation): readonly MissingStrategy[] {
  return strategies.flatMap((strategy) => {
    if (evaluation.ranking.leaders.some((leader) => leader.strategy === strategy)) return [];
    const nearest = shownFor(evaluation, strategy);
    return [{ strategy, reasons: nearest?.excludedBy.map(({ reason }) => reason) ?? [] }];
  });
}

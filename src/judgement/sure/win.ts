/** What would have to be true for another strategy to come first. */
import { strategies, type StrategyId } from '../../catalog/sets.ts';
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { AnswerChange } from './answers.ts';
import { criticalWeights, type CriticalWeight } from './weights.ts';

export interface WayToWin {
  readonly strategy: StrategyId;
  /** Its best member, feasible or the nearest to it. */
  readonly candidate: string;
  /** Rules that exclude that member; empty when it is ranked. */
  readonly excludedBy: Candidate['excludedBy'];
  /** How far it is behind the first, 0 to 1; null where it is not ranked. */
  readonly behind: number | null;
  /** Single weights that bring it level, smallest change first. */
  readonly weights: readonly CriticalWeight[];
  /** Single answers that put it first. */
  readonly answers: readonly AnswerChange[];
}

const valuesOf = ({ attributes }: Candidate): Record<string, number> =>
  Object.fromEntries(attributes.map(({ criterion, value }) => [criterion, value]));

const totalOf = (candidate: Candidate, weights: Readonly<Record<string, number>>): number =>
  candidate.attributes.reduce((sum, { criterion, value }) => sum + (weights[criterion] ?? 0) * value, 0);

/** The leader of a strategy, else the member with the fewest exclusions, the best of those. */
function nearest({ candidates, ranking }: Evaluation, strategy: StrategyId): Candidate | undefined {
  const leader = ranking.leaders.find((one) => one.strategy === strategy)?.candidate;
  return (
    candidates.find(({ id }) => id === leader) ??
    candidates
      .filter((one) => one.strategy === strategy)
      .sort(
        (a, b) =>
          a.excludedBy.length - b.excludedBy.length ||
          totalOf(b, ranking.weights) - totalOf(a, ranking.weights) ||
          (a.id < b.id ? -1 : 1),
      )[0]
  );
}

/**
 * For each strategy that is not first: how far behind, which rules exclude it, which weights or answers would put it first.
 *
 * @param evaluation  [-] with a first place
 * @param changes     [-] answers changed one at a time; none known yet is an empty list
 * @returns           [-] in the order of the strategies
 * @source            TRIANTAPHYLLOU-SANCHEZ-1997 critical weights (memory)
 */
export function waysToWin(evaluation: Evaluation, changes: readonly AnswerChange[]): WayToWin[] {
  const { ranking, candidates } = evaluation;
  const first = candidates.find(({ id }) => id === ranking.recommended);
  if (first === undefined) return [];
  return strategies
    .filter((strategy) => strategy !== first.strategy)
    .flatMap((strategy): WayToWin[] => {
      const other = nearest(evaluation, strategy);
      if (other === undefined) return [];
      const weights = criticalWeights(ranking.weights, valuesOf(first), valuesOf(other))
        .filter(({ change_pct }) => change_pct !== null)
        .sort((a, b) => Math.abs(a.change_pct ?? 0) - Math.abs(b.change_pct ?? 0));
      return [
        {
          strategy,
          candidate: other.id,
          excludedBy: other.excludedBy,
          behind: other.feasible ? totalOf(first, ranking.weights) - totalOf(other, ranking.weights) : null,
          weights: other.feasible ? weights : [],
          answers: changes.filter((change) => change.first === strategy && change.outcome === 'other'),
        },
      ];
    });
}

/** The criteria as a page asks for their weights. */
import type { CompleteCase } from '../../case/complete.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import { criteria, weightsOf, type Criterion, type Role } from '../../judgement/criteria.ts';

export { criteria, type Criterion };

const names = new Map(criteria.map(({ id, name }) => [id, name]));
export const criterionName = (id: string): string => names.get(id) ?? id;

/** The weight that stands while none is given: the reader's usual one, moved by the answers once there is a case. */
export function usualWeights(evaluation: Evaluation | null, role: Role): ReadonlyMap<string, number> {
  if (evaluation === null) return new Map(criteria.map(({ id, weights }) => [id, weights[role]]));
  const given = { ...evaluation.case, priorities: {} } as unknown as CompleteCase;
  return new Map(weightsOf(given, evaluation.climate).map(({ criterion, raw }) => [criterion, raw]));
}

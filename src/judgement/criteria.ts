/** Value functions and swing weights of a case. */
import jsonLogic from 'json-logic-js';
import { criteria, type Criterion } from '../catalog/criteria.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Climate } from '../evaluation/evaluation.ts';

export type Role = CompleteCase['project']['role'];
export { criteria, criteriaTable, criterion, type Criterion } from '../catalog/criteria.ts';

/**
 * Value of a measure: straight lines between anchors, flat outside.
 *
 * v = v1 + (v2 − v1) (x − x1) / (x2 − x1)
 *
 * @param measure  [unit of the criterion] finite
 * @param anchors  [unit, -] at least two, measures rising
 * @returns        [-] 0 to 1
 * @throws         RangeError when the measure is not finite
 * @source         OUR-JUDGEMENT anchors of criteria.json
 */
export function valueOfMeasure(measure: number, anchors: Criterion['anchors']): number {
  if (!Number.isFinite(measure)) throw new RangeError(`measure: ${measure} is not a finite number`);
  // Without taking pairs apart: the chances ask this a hundred million times.
  let before = anchors[0] as Criterion['anchors'][number];
  if (measure <= before[0]) return before[1];
  for (let index = 1; index < anchors.length; index += 1) {
    const after = anchors[index] as Criterion['anchors'][number];
    if (measure < after[0])
      return before[1] + ((after[1] - before[1]) * (measure - before[0])) / (after[0] - before[0]);
    before = after;
  }
  return before[1];
}

export interface Weight {
  readonly criterion: string;
  /** Swing weight before normalizing: the user's, or the default with its modifiers. */
  readonly raw: number;
  readonly isOwn: boolean;
  /** Why the default was moved. */
  readonly reasons: readonly string[];
}

/** Every weight 0 says that all matter alike, so all count alike: a ranking needs one above 0. */
function evenWhenAllZero(weights: readonly Weight[]): Weight[] {
  const isAllZero = weights.every(({ raw }) => raw === 0);
  return weights.map((weight) =>
    isAllZero ? { ...weight, raw: 1, reasons: ['Every weight is 0: all count alike.'] } : weight,
  );
}

/**
 * Swing weights of a case: the user's where given, else the reader's default moved by the answers.
 *
 * raw = default of the reader × every modifier whose condition holds
 *
 * @param given    [-] the complete case
 * @param climate  [-] its climate, which modifiers may name
 * @returns        [-] one weight for each criterion, 0 or more, at least one above 0
 * @source         OUR-JUDGEMENT defaults and modifiers of criteria.json
 * @assumes        a weight of the user's own takes the place of default and modifiers
 */
export function weightsOf(given: CompleteCase, climate: Climate): Weight[] {
  const weights = criteria.map((row): Weight => {
    const own = given.priorities[row.id];
    if (own !== undefined) return { criterion: row.id, raw: own, isOwn: true, reasons: [] };
    const holding = row.modifiers.filter((modifier) =>
      jsonLogic.truthy(jsonLogic.apply(modifier.when as never, { case: given, climate })),
    );
    const raw = holding.reduce((sum, modifier) => sum * modifier.factor, row.weights[given.project.role]);
    return { criterion: row.id, raw, isOwn: false, reasons: holding.map((modifier) => modifier.reason) };
  });
  return evenWhenAllZero(weights);
}

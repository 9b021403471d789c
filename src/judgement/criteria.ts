/** Criteria of the ranking: value functions and swing weights, from content/tables/criteria.json. */
import jsonLogic from 'json-logic-js';
import * as v from 'valibot';
import json from '../../content/tables/criteria.json' with { type: 'json' };
import type { CompleteCase } from '../case/complete.ts';
import { roles } from '../case/case.ts';
import { knownGrades } from '../catalog/sets.ts';
import { measureKinds } from '../measures.ts';

const anchor = v.strictTuple([v.number(), v.pipe(v.number(), v.minValue(0), v.maxValue(1))]);
const weight = v.pipe(v.number(), v.minValue(0), v.maxValue(100));

export const criteriaTable = v.strictObject({
  title: v.string(),
  about: v.string(),
  rows: v.array(
    v.strictObject({
      id: v.pipe(v.string(), v.regex(/^[a-z][a-zA-Z]*$/)),
      name: v.string(),
      measure: v.string(),
      kind: v.picklist(measureKinds),
      better: v.picklist(['more', 'less']),
      anchors: v.pipe(v.array(anchor), v.minLength(2)),
      anchorReason: v.string(),
      swing: v.string(),
      weights: v.strictObject({ builder: weight, designer: weight, trainer: weight }),
      modifiers: v.array(
        v.strictObject({ when: v.unknown(), factor: v.pipe(v.number(), v.minValue(0)), reason: v.string() }),
      ),
      source: v.string(),
      known: v.picklist(knownGrades),
    }),
  ),
});

export type Criterion = v.InferOutput<typeof criteriaTable>['rows'][number];

export const criteria: readonly Criterion[] = v.parse(criteriaTable, json).rows;
export type Role = (typeof roles)[number];

/** The criterion of an id. @throws RangeError when there is none. */
export function criterion(id: string): Criterion {
  const found = criteria.find((row) => row.id === id);
  if (!found) throw new RangeError(`no criterion ${id} in criteria.json`);
  return found;
}

/**
 * Value of a measure: straight lines between anchors, flat outside.
 *
 * @param measure  [unit of the criterion] finite
 * @param anchors  [unit, -] at least two, measures rising
 * @returns        [-] 0 to 1
 * @throws         RangeError when the measure is not finite
 */
export function valueOfMeasure(measure: number, anchors: Criterion['anchors']): number {
  if (!Number.isFinite(measure)) throw new RangeError(`measure: ${measure} is not a finite number`);
  for (let index = 1; index < anchors.length; index += 1) {
    const [below, lower] = anchors[index - 1] as [number, number];
    const [above, upper] = anchors[index] as [number, number];
    if (measure <= below) return lower;
    if (measure < above) return lower + ((upper - lower) * (measure - below)) / (above - below);
  }
  return (anchors.at(-1) as [number, number])[1];
}

export interface Weight {
  readonly criterion: string;
  /** Swing weight before normalizing: the user's, or the default with its modifiers. */
  readonly raw: number;
  readonly isOwn: boolean;
  /** Why the default was moved. */
  readonly reasons: readonly string[];
}

/** Swing weights of a case: the user's where given, else the reader's default moved by the answers. */
export function weightsOf(given: CompleteCase): Weight[] {
  return criteria.map((row) => {
    const own = given.priorities[row.id];
    if (own !== undefined) return { criterion: row.id, raw: own, isOwn: true, reasons: [] };
    const holding = row.modifiers.filter((modifier) =>
      jsonLogic.truthy(jsonLogic.apply(modifier.when as never, { case: given })),
    );
    const raw = holding.reduce((sum, modifier) => sum * modifier.factor, row.weights[given.project.role]);
    return { criterion: row.id, raw, isOwn: false, reasons: holding.map((modifier) => modifier.reason) };
  });
}

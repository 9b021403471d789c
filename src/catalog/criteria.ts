/** Criteria of the ranking: measure, value function, swing weights, from content/tables/criteria.json. */
import * as v from 'valibot';
import json from '../../content/tables/criteria.json' with { type: 'json' };
import { measureKinds } from '../measures.ts';
import { knownGrades } from './sets.ts';

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

/** The criterion of an id. @throws RangeError when there is none. */
export function criterion(id: string): Criterion {
  const found = criteria.find((row) => row.id === id);
  if (!found) throw new RangeError(`no criterion ${id} in criteria.json`);
  return found;
}

/** Rules as data: conditions in JSON Logic, effects and words, from content/rules/rules.json. */
import * as v from 'valibot';
import json from '../../content/rules/rules.json' with { type: 'json' };
import { measureKinds } from '../measures.ts';
import { cautionLevels, deciders, strategies } from './sets.ts';

const fact = v.strictObject({ path: v.string(), kind: v.picklist([...measureKinds, 'text']) });
const shared = {
  id: v.pipe(v.string(), v.regex(/^[a-z][a-z0-9-]*$/)),
  scope: v.picklist(['case', 'candidate']),
  strategies: v.optional(v.array(v.picklist(strategies))),
  when: v.unknown(),
  text: v.pipe(v.string(), v.minLength(1)),
  facts: v.record(v.string(), fact),
  question: v.string(),
  source: v.string(),
};

export const rulesTable = v.strictObject({
  title: v.string(),
  about: v.string(),
  rows: v.array(
    v.variant('effect', [
      v.strictObject({ ...shared, effect: v.literal('stop') }),
      v.strictObject({ ...shared, effect: v.literal('exclude') }),
      v.strictObject({ ...shared, effect: v.literal('caution'), level: v.picklist(cautionLevels) }),
      v.strictObject({
        ...shared,
        effect: v.literal('defer'),
        to: v.picklist(deciders),
        item: v.string(),
      }),
    ]),
  ),
});

export type Rule = v.InferOutput<typeof rulesTable>['rows'][number];

export const rules: readonly Rule[] = v.parse(rulesTable, json).rows;

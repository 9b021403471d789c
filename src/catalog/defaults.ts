/** Cautious defaults for questions answered with "not sure", from content/tables/defaults.json. */
import * as v from 'valibot';
import json from '../../content/tables/defaults.json' with { type: 'json' };

const text = v.pipe(v.string(), v.minLength(1));

export const defaultsTable = v.strictObject({
  title: text,
  about: text,
  rows: v.array(
    v.strictObject({
      path: text,
      question: text,
      /** Paths (or `zone`) and the values they may have for the row to hold. */
      when: v.optional(v.record(v.string(), v.array(v.unknown()))),
      value: v.unknown(),
      reason: text,
      cost: text,
      source: text,
    }),
  ),
});

export type DefaultRow = v.InferOutput<typeof defaultsTable>['rows'][number];
export const defaultRows: readonly DefaultRow[] = v.parse(defaultsTable, json).rows;

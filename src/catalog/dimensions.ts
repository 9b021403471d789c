/** Usual sizes and shares of the build-ups, by id; the unit is in the id. */
import * as v from 'valibot';
import json from '../../content/tables/dimensions.json' with { type: 'json' };
import { knownGrades } from './sets.ts';

export const dimensionsTable = v.strictObject({
  title: v.string(),
  about: v.string(),
  rows: v.array(
    v.strictObject({
      id: v.pipe(v.string(), v.minLength(1)),
      value: v.pipe(v.number(), v.finite(), v.minValue(0)),
      unit: v.string(),
      name: v.string(),
      source: v.string(),
      known: v.picklist(knownGrades),
      note: v.string(),
    }),
  ),
});

const table = v.parse(dimensionsTable, json);
export type Dimension = (typeof table)['rows'][number];
const byId = new Map(table.rows.map((row) => [row.id, row]));

export const allDimensions = (): readonly Dimension[] => table.rows;

/** The value of an id. @throws RangeError when the table has no such row: a slip in content or code. */
export function dimension(id: string): number {
  const row = byId.get(id);
  if (!row) throw new RangeError(`no dimension ${id} in dimensions.json`);
  return row.value;
}

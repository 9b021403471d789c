/** Vapor retarder classes from content/tables/vapor-retarder-classes.json. */
import * as v from 'valibot';
import json from '../../content/tables/vapor-retarder-classes.json' with { type: 'json' };
import { nanogramsFromPerms } from '../units.ts';
import { vaporRetarderTable } from './schemas.ts';

const table = v.parse(vaporRetarderTable, json);

export type VaporRetarderClass = (typeof table)['rows'][number]['id'];

export const vaporRetarderClasses = (): typeof table.rows => table.rows;

/**
 * Class of a vapor retarder by its dry-cup permeance; none above the last limit
 *
 * @param permeance_ng_Pasm2 [ng/(Pa·s·m²)] dry-cup permeance, >= 0
 * @returns [I, II, III or none] the class
 * @throws RangeError when the permeance is negative or not a number
 * @source IRC-2018-R202 definition of vapor retarder class (seen-secondary)
 * @assumes desiccant method, ASTM E96 procedure A
 */
export function vaporRetarderClass(permeance_ng_Pasm2: number): VaporRetarderClass | 'none' {
  if (!(permeance_ng_Pasm2 >= 0)) throw new RangeError('the permeance must be 0 or more');
  return table.rows.find((row) => permeance_ng_Pasm2 <= nanogramsFromPerms(row.atMost_perm))?.id ?? 'none';
}

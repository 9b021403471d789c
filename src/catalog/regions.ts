/** States, territories and provinces from content/tables/regions.json. */
import * as v from 'valibot';
import json from '../../content/tables/regions.json' with { type: 'json' };
import { regionsTable } from './placeSchemas.ts';

const table = v.parse(regionsTable, json);
const byId = new Map(table.rows.map((row) => [row.id, row]));

export const allRegions = (): typeof table.rows => table.rows;

/** The full name of a two-letter region; the letters themselves when the table lacks them. */
export const regionName = (id: string): string => byId.get(id)?.name ?? id;

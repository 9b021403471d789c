/** Typed access to content/tables/counties.json. In a module of its own, so that the app can load it late. */
import type * as v from 'valibot';
import json from '../../content/tables/counties.json' with { type: 'json' };
import { regionName } from './regions.ts';
import type { countiesTable } from './placeSchemas.ts';
import { searchWords, wordsOf, type Searchable } from './search.ts';
import type { Zone } from './sets.ts';

export interface County {
  readonly fips: string;
  readonly name: string;
  readonly state: string;
  readonly stateName: string;
  /** Zone of the 2021 map, and of the 2006-2018 map. */
  readonly zone: Zone;
  readonly olderZone: Zone;
  /** Warm-humid flag of the older map; null where unknown. */
  readonly isWarmHumid: boolean | null;
  /** What to know about the row, in words. */
  readonly note: string | null;
}

/** The file as the schema has it; checkTables holds it to that. */
const table = json as unknown as v.InferOutput<typeof countiesTable>;
const notes = new Map(table.notes.map((row) => [row.id, row.text]));

const counties: readonly County[] = table.states.flatMap(({ state, counties: rows }) =>
  rows.map((row) => ({
    fips: row[0],
    name: row[1],
    state,
    stateName: regionName(state),
    zone: row[2],
    olderZone: row[3],
    isWarmHumid: row[4] === null ? null : row[4] === 1,
    note: row[5] === undefined ? null : (notes.get(row[5]) ?? null),
  })),
);

const byFips = new Map(counties.map((county) => [county.fips, county]));

const searchable: readonly Searchable<County>[] = counties.map((county) => ({
  item: county,
  name: wordsOf(county.name),
  region: [county.state.toLowerCase(), ...wordsOf(county.stateName)],
  more: [county.fips],
}));

export const allCounties = (): readonly County[] => counties;

export const countyByFips = (fips: string): County | undefined => byFips.get(fips);

/** Counties whose words the query holds: `king, wa`, `St. Louis County`, `53033`. Best first. */
export const searchCounties = (query: string, limit = 20): County[] => searchWords(searchable, query, limit);

/** `King, WA`. */
export const countyLabel = (county: County): string => `${county.name}, ${county.state}`;

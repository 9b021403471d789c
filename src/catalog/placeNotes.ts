/** The notes that belong to a place: those listed with it and those that follow from its data. */
import * as v from 'valibot';
import json from '../../content/tables/place-notes.json' with { type: 'json' };
import type { Place } from './places.ts';
import { placeNotesTable, type PlaceNote } from './placeSchemas.ts';

export type { PlaceNote };

const table = v.parse(placeNotesTable, json);

/** [K] one whole °F, to which the county limits are rounded. @source EPA-CLDT-2015 (seen) */
const WHOLE_FAHRENHEIT_K = 0.56;

/** What a place has or lacks, and the note that follows. */
const rules: readonly (readonly [string, (place: Place) => boolean])[] = [
  ['station-county', (p) => p.country === 'US'],
  ['county-limit', (p) => p.heatingDesignCounty_C !== null],
  [
    'county-limit-colder',
    (p) =>
      p.heatingDesignCounty_C !== null &&
      p.heatingDesignStation_C !== null &&
      p.heatingDesignStation_C - p.heatingDesignCounty_C > WHOLE_FAHRENHEIT_K,
  ],
  ['humidity-two-readings', (p) => p.country === 'US' && p.monthlyRelativeHumidity_pct !== null],
  [
    'humidity-missing',
    (p) => p.monthlyRelativeHumidity_pct === null || p.monthlyRelativeHumidity_pct.includes(null),
  ],
  ['zone-number-computed', (p) => p.country === 'CA'],
  [
    'older-normals',
    (p) => ['NCEI-CCD-8110', 'ECCC-7100', 'ECCC-8110-TO', 'TYPICAL-YEAR-CA'].includes(p.source),
  ],
  ['degree-days-hidden', (p) => p.heatingDegreeDays18_Cd === null],
  ['snow-from-memory', (p) => p.groundSnowKnown === 'memory'],
  ['snow-ask', (p) => p.groundSnow_Pa === null],
];

export const placeNoteIds = (): string[] => table.rows.map((row) => row.id);
export const derivedNoteIds = (): string[] => rules.map(([id]) => id);

/** All notes of a place, in the order of the table. */
export function notesOf(place: Place): PlaceNote[] {
  const ids = new Set([...place.notes, ...rules.filter(([, applies]) => applies(place)).map(([id]) => id)]);
  return table.rows.filter((row) => ids.has(row.id));
}

/** The note of a code, or undefined when the table has none. */
export const placeNote = (id: string): PlaceNote | undefined => table.rows.find((row) => row.id === id);

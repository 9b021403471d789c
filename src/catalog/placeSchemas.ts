/** Schemas of the tables of places, counties, regions and zones. */
import * as v from 'valibot';
import {
  finite,
  head,
  id,
  known,
  nonNegative,
  note,
  some,
  sourceId,
  text,
  twelve,
  zone,
} from './schemaParts.ts';

const thermalRow = v.strictObject({
  zone: v.picklist(['0', '1', '2', '3', '4', '5', '6', '7', '8']),
  coolingDegreeDays10Above_Cd: v.nullable(finite),
  coolingDegreeDays10AtMost_Cd: v.nullable(finite),
  heatingDegreeDays18Above_Cd: v.nullable(finite),
  heatingDegreeDays18AtMost_Cd: v.nullable(finite),
  known,
  note,
});
export const zonesTable = v.strictObject({
  ...head,
  rows: some(
    v.strictObject({
      zone,
      name: text,
      representative: id,
      standIn: v.nullable(zone),
      note,
    }),
  ),
  thresholdsLater: some(thermalRow),
  thresholdsEarlier: some(thermalRow),
  moisture: some(v.strictObject({ id, known, text })),
  canada: some(v.strictObject({ nbcZone: text, from_Cd: finite, below_Cd: v.nullable(finite), known })),
});

export const placeColumns = [
  'id',
  'name',
  'region',
  'country',
  'latitude_deg',
  'longitude_deg',
  'elevation_m',
  'county',
  'fips',
  'zone',
  'olderZone',
  'zoneNumberOnly',
  'nbcZone',
  'monthlyMean_C',
  'monthlyRelativeHumidity_pct',
  'heatingDesignCounty_C',
  'heatingDesignStation_C',
  'heatingDegreeDays18_Cd',
  'groundSnow_Pa',
  'groundSnowKnown',
  'source',
  'notes',
] as const;
const zoneNumberOnly = v.picklist(['4 or 5', '5', '6', '6 or 7', '7', '7 or 8', '8']);
export const placeRow = v.strictTuple([
  id,
  text,
  v.pipe(v.string(), v.length(2)),
  v.picklist(['US', 'CA']),
  v.pipe(finite, v.minValue(-90), v.maxValue(90)),
  v.pipe(finite, v.minValue(-180), v.maxValue(180)),
  v.nullable(finite),
  v.nullable(text),
  v.nullable(v.pipe(v.string(), v.regex(/^\d{5}$/, 'five digits'))),
  v.nullable(zone),
  v.nullable(zone),
  v.nullable(zoneNumberOnly),
  v.nullable(v.picklist(['4', '5', '6', '7A', '7B', '8'])),
  twelve(v.pipe(finite, v.minValue(-60), v.maxValue(50))),
  v.nullable(twelve(v.nullable(v.pipe(finite, v.minValue(1), v.maxValue(100))))),
  v.nullable(finite),
  v.nullable(finite),
  v.nullable(nonNegative),
  v.nullable(nonNegative),
  v.nullable(known),
  sourceId,
  v.array(id),
]);
export const placesTable = v.strictObject({
  ...head,
  columns: v.strictTuple(placeColumns.map((name) => v.literal(name))),
  rows: some(placeRow),
});

export const placeNotesTable = v.strictObject({
  ...head,
  rows: some(v.strictObject({ id, title: text, text, source: sourceId, known })),
});
export type PlaceNote = v.InferOutput<typeof placeNotesTable>['rows'][number];

export const regionsTable = v.strictObject({
  ...head,
  rows: some(
    v.strictObject({ id: v.pipe(v.string(), v.length(2)), name: text, country: v.picklist(['US', 'CA']) }),
  ),
});

/** fips, name, 2021 zone, 2006-2018 zone, warm-humid (1, 0 or null), and a note code where there is one. */
export const countyRow = v.union([
  v.strictTuple([v.pipe(v.string(), v.regex(/^\d{5}$/)), text, zone, zone, v.nullable(v.picklist([0, 1]))]),
  v.strictTuple([
    v.pipe(v.string(), v.regex(/^\d{5}$/)),
    text,
    zone,
    zone,
    v.nullable(v.picklist([0, 1])),
    id,
  ]),
]);
export const countiesTable = v.strictObject({
  ...head,
  columns: some(text),
  notes: some(v.strictObject({ id, text })),
  states: some(v.strictObject({ state: v.pipe(v.string(), v.length(2)), counties: some(countyRow) })),
});

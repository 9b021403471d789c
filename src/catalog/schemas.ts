/** Schemas of content/tables; every type of a row is inferred from here. */
import * as v from 'valibot';
import { boards, coverings, editions, knownGrades, zones } from './sets.ts';

const text = v.pipe(v.string(), v.minLength(1));
const note = v.string();
const finite = v.pipe(v.number(), v.finite());
const positive = v.pipe(finite, v.gtValue(0));
const nonNegative = v.pipe(finite, v.minValue(0));
const id = v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower case words with hyphens'));
const sourceId = v.pipe(v.string(), v.regex(/^[A-Za-z0-9]+([-.][A-Za-z0-9.]+)*$/, 'a source id'));
const known = v.picklist(knownGrades);
const zone = v.picklist(zones);
const edition = v.picklist(editions);
const some = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.minLength(1));
const twelve = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.length(12));

const head = { title: text, about: v.optional(text), sources: some(sourceId) };
const cited = { source: sourceId, known };

export const sourceRow = v.strictObject({
  id: sourceId,
  publisher: text,
  title: text,
  edition: v.optional(text),
  year: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1900), v.maxValue(2100))),
  url: v.optional(text),
  how: known,
  note: v.optional(text),
});
export const sourcesTable = v.strictObject({ title: text, about: v.optional(text), rows: some(sourceRow) });
export type Source = v.InferOutput<typeof sourceRow>;

export const materialCategories = [
  'rigid-board',
  'cavity-fill',
  'deck',
  'wood',
  'interior-lining',
  'interior-retarder',
  'membrane',
  'underlayment',
  'air-layer',
  'covering',
  'surface-film',
] as const;

/** How the vapor permeance of a material scales with its thickness. */
export const vaporSchema = v.variant('kind', [
  v.strictObject({ kind: v.literal('sheet'), dry_ng_Pasm2: positive, wet_ng_Pasm2: positive }),
  v.strictObject({ kind: v.literal('scaled-sheet'), dry_ng_Pasm2: positive, wet_ng_Pasm2: positive }),
  v.strictObject({ kind: v.literal('permeability'), dry_ng_Pasm: positive, wet_ng_Pasm: positive }),
  v.strictObject({ kind: v.literal('factor'), dry: positive, wet: positive }),
  v.strictObject({ kind: v.literal('not-limiting') }),
  v.strictObject({ kind: v.literal('unknown') }),
]);

export const materialRow = v.strictObject({
  id,
  name: text,
  category: v.picklist(materialCategories),
  thickness_m: v.nullable(positive),
  conductivity_W_mK: v.nullable(positive),
  resistance_m2K_W: v.nullable(nonNegative),
  density_kg_m3: v.nullable(positive),
  specificHeat_J_kgK: v.nullable(positive),
  vapor: vaporSchema,
  airPermeable: v.boolean(),
  foam: v.boolean(),
  vaporResistanceFactor: v.optional(v.strictObject({ dry: positive, wet: positive })),
  permeanceByHumidity: v.optional(
    v.strictObject({ thickness_m: positive, points: some(v.tuple([finite, positive])), known, note }),
  ),
  soldThicknesses_m: v.optional(some(positive)),
  soldKnown: v.optional(known),
  soldNote: v.optional(text),
  source: some(sourceId),
  known,
  knownVapor: known,
  note,
});
export const temperatureRow = v.strictObject({
  series: id,
  meanTemperature_C: finite,
  resistivity_mK_W: positive,
  ...cited,
  note,
});
export const materialsTable = v.strictObject({
  ...head,
  temperatureAbout: text,
  rows: some(materialRow),
  polyisocyanurateByTemperature: some(temperatureRow),
});
export type Material = v.InferOutput<typeof materialRow>;
export type BoardAtTemperature = v.InferOutput<typeof temperatureRow>;

export const energyCodeTable = v.strictObject({
  ...head,
  rows: some(
    v.strictObject({
      edition,
      zones: some(zone),
      ceiling_R: positive,
      ceiling_U: positive,
      ...cited,
      place: text,
      knownU: known,
      note,
    }),
  ),
  exceptions: some(
    v.strictObject({
      id,
      editions: some(edition),
      ...cited,
      place: text,
      insteadOf_R: v.optional(positive),
      accepted_R: positive,
      areaCap_ft2: v.optional(positive),
      areaShare: v.optional(v.pipe(positive, v.maxValue(1))),
      text,
    }),
  ),
  paths: some(v.strictObject({ id, name: text, place: text, known, text })),
  rules: some(v.strictObject({ id, place: text, known, text })),
  canada: some(
    v.strictObject({
      nbcZone: v.picklist(['4', '5', '6', '7A', '7B', '8']),
      heatingDegreeDays18: text,
      cathedral_m2K_W: positive,
      belowAttic_m2K_W: positive,
      ...cited,
      place: text,
      note,
    }),
  ),
});

export const condensationTable = v.strictObject({
  ...head,
  temperatureRule: v.strictObject({ indoor_F: finite, deckLimit_F: finite, ...cited, place: text, note }),
  rows: some(
    v.strictObject({
      edition,
      zones: some(zone),
      minimum_R: nonNegative,
      coverings: v.optional(some(v.picklist(coverings))),
      ...cited,
      place: text,
      note,
    }),
  ),
  conditions: some(v.strictObject({ id, item: text, known, text })),
  cautions: some(v.strictObject({ id, known, text })),
});

export const vaporRetarderTable = v.strictObject({
  ...head,
  rows: some(
    v.strictObject({ id: v.picklist(['I', 'II', 'III']), atMost_perm: positive, ...cited, examples: text }),
  ),
});

export const coveringRow = v.strictObject({
  id: v.picklist(coverings),
  name: text,
  material: id,
  minimumPitch_rise_per_12: positive,
  doubleUnderlayment: v.nullable(v.strictObject({ from_rise_per_12: positive, below_rise_per_12: positive })),
  underlayments: some(text),
  iceBarrierApplies: v.boolean(),
  nailBase: v.picklist(['solid', 'solid-or-spaced']),
  vaporTight: v.boolean(),
  slippery: v.boolean(),
  weight_Pa: positive,
  weightHeavy_Pa: positive,
  weightNote: text,
  weightSource: sourceId,
  weightKnown: known,
  gapOverUnventedDeck_m: v.optional(positive),
  fireClass: text,
  ...cited,
  place: text,
  note,
});
export const coveringsTable = v.strictObject({ ...head, rows: some(coveringRow) });
export type Covering = v.InferOutput<typeof coveringRow>;

export const iceBarrierTable = v.strictObject({
  ...head,
  rows: some(
    v.strictObject({
      id: v.picklist(['inside-wall-line', 'along-slope']),
      length_in: positive,
      measured: text,
      atPitch_rise_per_12: nonNegative,
      ...cited,
      note,
    }),
  ),
});

export const dripEdgeTable = v.strictObject({
  ...head,
  rows: some(
    v.strictObject({
      id,
      least_in: v.nullable(positive),
      most_in: v.nullable(positive),
      text,
      ...cited,
    }),
  ),
});
export type DripEdgeRule = v.InferOutput<typeof dripEdgeTable>['rows'][number];

const range = { low: nonNegative, mid: nonNegative, high: nonNegative, unit: text };
export const costRow = v.variant('kind', [
  v.strictObject({ id, kind: v.literal('board'), board: v.picklist(boards), ...range, ...cited, note }),
  v.strictObject({ id, kind: v.literal('item'), name: text, ...range, ...cited, note }),
  v.strictObject({ id, kind: v.literal('hours'), name: text, ...range, ...cited, note }),
]);
export const carbonRow = v.strictObject({
  id,
  board: v.picklist(boards),
  variant: v.optional(text),
  ...range,
  ...cited,
  note,
});
export const costsTable = v.strictObject({ ...head, rows: some(costRow), carbon: some(carbonRow) });
export type Cost = v.InferOutput<typeof costRow>;
export type Carbon = v.InferOutput<typeof carbonRow>;

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

/** Schemas of content/tables; every type of a row is inferred from here. Places and zones: placeSchemas.ts. */
import * as v from 'valibot';
import {
  cited,
  edition,
  finite,
  head,
  id,
  known,
  nonNegative,
  note,
  positive,
  some,
  sourceId,
  text,
  zone,
} from './schemaParts.ts';
import { boards, coverings } from './sets.ts';

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
  permeanceDoubt: v.optional(
    v.strictObject({
      thickness_m: v.nullable(positive),
      low_ng: positive,
      high_ng: positive,
      reason: text,
      source: some(sourceId),
      known,
    }),
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

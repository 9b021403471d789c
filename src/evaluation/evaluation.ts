/**
 * The evaluation: everything computed about one case. Plain JSON, SI, unit in the name; the same case
 * always gives the same bytes. The types are inferred from the schema, so that `overdeck schema evaluation`
 * and the code can never disagree.
 */
import * as v from 'valibot';
import { boards, cautionLevels, deciders, strategies, ventilations, zones } from '../catalog/sets.ts';
import { assumptionSchema } from '../case/assumption.ts';
import { caseSchema, cuts } from '../case/case.ts';
import { fasteningEntries } from './fastening.ts';
import {
  airLeakageSchema,
  bridgeLossSchema,
  combinedSchema,
  condensationPlaneSchema,
  dryingPlaceSchema,
  editionShareSchema,
  gapFlowSchema,
  indoorAirSchema,
  permeanceDoubtSchema,
  planeMonthsSchema,
  profileSchema,
  seasonLossSchema,
  thermalZoneSchema,
} from './heatMoisture.ts';
import { siteLoadsSchema, structureSchema } from './structure.ts';
import { sureSchema } from './sure.ts';
import { geometryChecksSchema, roofGeometrySchema, takeoffListSchema } from './takeoff.ts';

const number = v.number();
const maybe = v.nullable(v.number());
const word = v.string();
const flag = v.boolean();
/** Values that a text template may name: `{zone}`, `{aboveDeck_m2K_W}`. */
const facts = v.record(v.string(), v.union([v.string(), v.number(), v.boolean(), v.null()]));

/** Where a figure comes from and how it is known; `known` is one of catalog/sets.ts knownGrades. */
const citation = v.object({
  source: word,
  clause: word,
  known: word,
  note: v.optional(word),
});

export const climateSchema = v.object({
  placeName: word,
  /** Where the months come from: `own` values, a `weather-file`, a `place` of the table, or the zone's `representative` place. */
  basis: v.picklist(['own', 'weather-file', 'place', 'county', 'representative']),
  zone: v.picklist(zones),
  zoneBasis: word,
  monthlyTemperature_C: v.array(number),
  monthlyRelativeHumidity_pct: v.array(number),
  coldestMonths: v.array(number),
  coldestMean_C: number,
  /** Degree days that count: estimated from `monthly-means`, or of a weather file's `hours`. */
  degreeDaysBasis: v.picklist(['monthly-means', 'hours']),
  heatingDegreeDays18_Cd: number,
  coolingDegreeDays10_Cd: number,
  /** With (highest + lowest)/2 as the mean of a day, the weather service's practice; null where no hours are known. */
  heatingDegreeDays18Extremes_Cd: maybe,
  coolingDegreeDays10Extremes_Cd: maybe,
  /** Zone numbers that the degree days make by the thresholds: a plausibility check that decides nothing. */
  zoneNumbersByThreshold: v.array(number),
  /** In words, where given months or a weather file make another zone number than the one that counts. */
  zoneDoubt: v.nullable(word),
  designTemperature_C: maybe,
  /** Codes of content/tables/place-notes.json. */
  notes: v.array(word),
  sources: v.array(word),
});

export const requirementsSchema = v.object({
  edition: word,
  ceiling: v.object({
    resistance_m2K_W: number,
    transmittance_W_m2K: number,
    local: flag,
    ...citation.entries,
  }),
  aboveDeckTable: v.object({ resistance_m2K_W: number, local: flag, ...citation.entries }),
  /** Share of the total R that the table implies with the code's own ceiling total. */
  tableShare_pct: number,
  temperatureRule: v.object({
    limit_C: number,
    indoor_C: number,
    outdoorMean_C: number,
    /** Needed share of R above the deck; 0 when the outdoor mean is at or above the limit. */
    share_pct: number,
    aboveDeck_m2K_W: number,
    ...citation.entries,
  }),
  /** What is below the deck and what was asked for above it. */
  split: v.object({
    belowDeck_m2K_W: number,
    aboveDeck_m2K_W: number,
    share_pct: number,
    /** What decided the R above the deck: `wanted`, `total-wanted`, `table`, `temperature`, `ceiling`, `local`. */
    governedBy: word,
  }),
  slope: v.object({
    pitch_rise_per_12: number,
    angle_deg: number,
    minimum_rise_per_12: number,
    meetsMinimum: flag,
    doubleUnderlayment: flag,
    ...citation.entries,
  }),
  iceBarrier: v.object({
    required: flag,
    /** Length along the slope from the eave edge, [m]. */
    length_m: number,
    /** How many 36 in rolls side by side cover it. */
    courses: number,
    ...citation.entries,
  }),
  interiorRetarder: v.object({ class: word, permeance_ng: maybe, ...citation.entries }),
});

export const layerRoles = [
  'ceiling',
  'interior-retarder',
  'cavity',
  'deck',
  'air-barrier',
  'insulation',
  'vent-gap',
  'drainage-mat',
  'upper-deck',
  'underlayment',
  'covering',
] as const;

export const layerSchema = v.object({
  /** Unique within the candidate, stable between variants: `deck`, `insulation-1`, … */
  id: word,
  role: v.picklist(layerRoles),
  /** Row id in content/tables/materials.json, or null for an air space. */
  material: v.nullable(word),
  name: word,
  thickness_m: number,
  /** Labelled (rated at 75 °F / 24 °C mean) resistance. */
  resistance_m2K_W: number,
  /** Resistance at the layer's own mean temperature in the three coldest months. */
  winterResistance_m2K_W: number,
  /** Dry-cup permeance of the layer as built; null where vapor is no obstacle (air spaces). */
  permeance_ng: maybe,
  /** Wet-cup permeance of the same layer. */
  permeanceWet_ng: maybe,
  /** What sources disagree about; null where none is known. */
  permeanceDoubt: v.nullable(permeanceDoubtSchema),
  mass_kg_m2: number,
  /** The question whose answer set this layer. */
  question: word,
  /** Why it is there, one sentence. */
  why: word,
});

export const thermalSchema = v.object({
  aboveDeck_m2K_W: number,
  aboveDeckWinter_m2K_W: number,
  belowDeck_m2K_W: number,
  total_m2K_W: number,
  share_pct: number,
  framingShare_pct: number,
  fieldTransmittance_W_m2K: number,
  /** Transmittance of the band in which outriggers or blocking cross the insulation; null when none do. */
  bandTransmittance_W_m2K: maybe,
  bandShare_pct: number,
  fastenerCorrection_W_m2K: number,
  /** Whole roof over the heated rooms by parallel path: framing, bands, fasteners and air voids in. */
  transmittance_W_m2K: number,
  /** One over the transmittance of the whole roof. */
  effectiveResistance_m2K_W: number,
  combined: combinedSchema,
  zones: v.array(thermalZoneSchema),
  /** What the whole transmittance is made of; the parts add up to it. */
  losses: v.array(bridgeLossSchema),
  season: seasonLossSchema,
  transmittanceSummary: word,
  meetsCeilingResistance: flag,
  ceilingMargin_m2K_W: number,
  meetsTransmittance: flag,
  transmittanceMargin_W_m2K: number,
});

export const condensationControlSchema = v.object({
  table: v.object({ minimum_m2K_W: number, provided_m2K_W: number, margin_m2K_W: number, meets: flag }),
  temperature: v.object({
    deck_C: number,
    limit_C: number,
    margin_K: number,
    meets: flag,
    aboveDeckNeeded_m2K_W: number,
    share_pct: number,
    shareNeeded_pct: number,
  }),
  humidity: v.object({ maximumIndoor_pct: number, indoor_pct: number, margin_pct: number, meets: flag }),
  planes: v.array(planeMonthsSchema),
  editionShare: editionShareSchema,
});

export const moistureSchema = v.object({
  method: word,
  verdict: v.picklist(['none', 'dries-out', 'accumulates', 'not-covered']),
  peak_kg_m2: number,
  /** The layer inside the wettest plane, or null. */
  plane: v.nullable(word),
  planes: v.array(condensationPlaneSchema),
  /** Every plane stays within the limit of its materials. */
  meetsLimit: flag,
  /** Limit at the plane that comes nearest to it or passes it furthest; null where nothing condenses. */
  limit_kg_m2: maybe,
  /** Peak at that plane. */
  limitPeak_kg_m2: maybe,
  /** Month in which the year of the method begins, 1 to 12; null where no month condenses. */
  startMonth: maybe,
  indoorAir: indoorAirSchema,
  profile: profileSchema,
  /** What the method does not cover, in short sentences. */
  leavesOut: v.array(word),
  /** Null where nothing lies between the room and the deck. */
  airLeakage: v.nullable(airLeakageSchema),
});

export const dryingSchema = v.object({
  /** Permeance from the deck's top face to the outdoor air (or to the vented gap), [ng/(Pa·s·m²)]. */
  outwardPermeance_ng: number,
  inwardPermeance_ng: number,
  path: v.picklist(['both', 'outward', 'inward', 'neither']),
  /** Months for 1 kg/m² put into the upper nailing layer (or deck when there is none); null when over the limit. */
  monthsToDryUpper: maybe,
  monthsToDryDeck: maybe,
  verdict: word,
  places: v.array(dryingPlaceSchema),
  /** Moving air under the covering; null without a gap. */
  gap: v.nullable(gapFlowSchema),
});

export const airBarrierSchema = v.object({
  /** Tail bays or truss bays to block and seal along all eaves. */
  bays: number,
  piercings: number,
  /** Joints that must be made airtight at the eave, count and length. */
  joints: number,
  jointLength_m: number,
  jointLengthPerEave_m_m: number,
  eaveLength_m: number,
  summary: word,
});

export const fastenersSchema = v.object({
  screwLength_m: number,
  sold: flag,
  into: v.picklist(['rafter', 'deck']),
  penetration_m: number,
  spacing_m: number,
  perArea_1_m2: number,
  count: number,
  /** Along-slope demand over the capacity of the screws across the board; above 1 needs design. */
  slopeUse: number,
  mayShowBelow: flag,
  ...fasteningEntries,
});

export const edgeSchema = v.object({
  cut: v.picklist(cuts),
  carrier: word,
  /** Everything above the framing, square to the slope, [m]. */
  buildUp_m: number,
  /** Depth of the framing or carrier behind the fascia, [m]. */
  carrierDepth_m: number,
  fascia_m: number,
  fasciaLimit_m: maybe,
  fasciaMargin_m: maybe,
  ridgeRise_m: number,
  ridgeLimit_m: maybe,
  ridgeMargin_m: maybe,
});

export const ventilationSchema = v.object({
  kind: v.picklist(ventilations),
  gap_m: number,
  status: v.picklist(['preferred', 'allowed', 'caution']),
  rule: word,
  netFreeArea_m2_m: number,
});

export const takeoffSchema = v.object({
  roofArea_m2: number,
  eaveLength_m: number,
  rakeLength_m: number,
  /** Boards and panels bought beyond what they cover, as laid out. */
  waste_pct: number,
  items: v.array(
    v.object({ id: word, what: word, thickness_m: v.optional(number), quantity: number, unit: word }),
  ),
  /** What money and hours are made of: each part grows with one row of costs.json or dimensions.json. */
  parts: v.array(
    v.object({ price: word, what: v.picklist(['material', 'open-hours', 'edge-hours']), amount_m2: number }),
  ),
  laborRate_USD_h: number,
  cost_USD_m2: number,
  labor_h_m2: number,
  carbon_kg_m2: number,
  trades: number,
  steps: number,
  daysOpen: number,
});

export const attributeSchema = v.object({
  criterion: word,
  measure: number,
  unit: word,
  /** 0 (worst anchor) to 1 (best anchor). */
  value: number,
  note: v.optional(word),
});

export const exclusionSchema = v.object({ rule: word, reason: word, facts });

export const candidateSchema = v.object({
  id: word,
  strategy: v.picklist(strategies),
  board: v.picklist(boards),
  /** Board of the layer under a prebonded panel, or null. */
  baseBoard: v.nullable(v.picklist(boards)),
  ventilation: ventilationSchema,
  underlayment: v.picklist(['vapor-open', 'vapor-tight']),
  carrier: v.picklist(['rafter-tails', 'truss-tails', 'outriggers']),
  feasible: flag,
  excludedBy: v.array(exclusionSchema),
  layers: v.array(layerSchema),
  thermal: thermalSchema,
  condensationControl: condensationControlSchema,
  moisture: moistureSchema,
  drying: dryingSchema,
  airBarrier: airBarrierSchema,
  structure: structureSchema,
  fasteners: fastenersSchema,
  edge: edgeSchema,
  takeoff: takeoffSchema,
  attributes: v.array(attributeSchema),
});

export const cautionSchema = v.object({
  /** File name in content/cautions/ without its ending. */
  id: word,
  level: v.picklist(cautionLevels),
  rule: word,
  /** One sentence with the facts filled in. */
  text: word,
  /** `all`, or the strategies it concerns. */
  strategies: v.array(v.picklist(strategies)),
  question: word,
  facts,
  source: word,
});

export const deferralSchema = v.object({
  id: word,
  to: v.picklist(deciders),
  item: word,
  reason: word,
  source: word,
});

export const rankingSchema = v.object({
  /** Ids of all feasible candidates, best first. Empty after a stop. */
  order: v.array(word),
  /** The best candidate of each strategy that has one, best first. */
  leaders: v.array(v.object({ strategy: v.picklist(strategies), candidate: word, total: number })),
  recommended: v.nullable(word),
  /** Normalized, sum 1. */
  weights: v.record(v.string(), number),
  /** Total value by candidate id, 0 to 1. */
  scores: v.record(v.string(), number),
  /** weight × value by candidate id and criterion; they add up to the score. */
  contributions: v.record(v.string(), v.record(v.string(), number)),
  overturns: v.array(v.object({ criterion: word, from: word, to: word, weight: number, change_pct: number })),
  confidence: v.object({
    level: v.picklist(['clear', 'narrow', 'stop', 'none-feasible']),
    margin: number,
    runnerUp: v.nullable(word),
    reasons: v.array(v.object({ criterion: word, difference: number, text: word })),
    worries: v.array(v.object({ criterion: word, difference: number, text: word })),
  }),
});

export const evaluationSchema = v.object({
  overdeck: v.literal(1),
  case: caseSchema,
  assumptions: v.array(assumptionSchema),
  climate: climateSchema,
  requirements: requirementsSchema,
  /** Snow, wind and live load of the place, shared by all candidates. */
  siteLoads: siteLoadsSchema,
  /** Planes and edges of the roof, shared by all candidates. */
  roofGeometry: roofGeometrySchema,
  candidates: v.array(candidateSchema),
  ranking: rankingSchema,
  /** Why the first comes first, sentence by sentence, for each reader; empty where nothing is ranked. */
  rationale: v.object({ builder: v.array(word), designer: v.array(word), trainer: v.array(word) }),
  /** Shopping list of the best candidate of each strategy, best first; empty after a stop. */
  takeoffs: v.array(takeoffListSchema),
  /** Geometry checks of the same candidates. */
  geometryChecks: v.array(geometryChecksSchema),
  /** How sure the ranking is; only where it was asked for, since it takes many evaluations. */
  sure: v.optional(sureSchema),
  cautions: v.array(cautionSchema),
  deferrals: v.array(deferralSchema),
  sources: v.array(
    v.object({ id: word, publisher: word, title: word, edition: v.optional(word), known: word }),
  ),
});

export type Evaluation = v.InferOutput<typeof evaluationSchema>;
export type Climate = v.InferOutput<typeof climateSchema>;
export type Requirements = v.InferOutput<typeof requirementsSchema>;
export type Candidate = v.InferOutput<typeof candidateSchema>;
export type Layer = v.InferOutput<typeof layerSchema>;
export type LayerRole = (typeof layerRoles)[number];
export type Attribute = v.InferOutput<typeof attributeSchema>;
export type Caution = v.InferOutput<typeof cautionSchema>;
export type Deferral = v.InferOutput<typeof deferralSchema>;
export type {
  AirLeakage,
  LeakSurface,
  BridgeLoss,
  CondensationPlane,
  DryingPlace,
  GapFlow,
  IndoorAir,
  PlaneMonths,
  Profile,
  ThermalZone,
} from './heatMoisture.ts';
export type ThermalZoneId = v.InferOutput<typeof thermalZoneSchema>['id'];
export type { Assumption } from '../case/assumption.ts';
export type Ranking = v.InferOutput<typeof rankingSchema>;
export type {
  CarrierPlan,
  Combination,
  NamedLoad,
  RakeScreening,
  SiteLoads,
  StructureCheck,
  WindZoneLoad,
} from './structure.ts';
export type Exclusion = v.InferOutput<typeof exclusionSchema>;

/**
 * The case file: everything the interview can learn about one roof. SI, unit in the name.
 *
 * Every field but `overdeck` and `place` is optional; a missing one means "not sure" and takes the
 * cautious default of content/tables/defaults.json (see complete.ts).
 */
import * as v from 'valibot';
import { BOARDS, COVERINGS, EDITIONS, VENTILATIONS, ZONES } from '../catalog/sets.ts';

export const formatVersion = 1;

/** A finite number within [least, greatest]; both ends allowed. */
const amount = (least: number, greatest: number) =>
  v.pipe(v.number(), v.finite(), v.minValue(least), v.maxValue(greatest));
const count = (greatest: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(greatest));
const text = (longest: number) => v.pipe(v.string(), v.maxLength(longest));
const yesNo = v.boolean();
const twelve = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.length(12));

export const ROLES = ['builder', 'designer', 'trainer'] as const;
export const PROJECT_KINDS = ['new-roof', 're-roof', 'addition'] as const;
export const ROOF_SHAPES = ['gable', 'hip', 'shed', 'gambrel', 'cross-gable'] as const;
export const FRAMING_KINDS = ['rafter', 'truss', 'i-joist'] as const;
export const DECKS = ['plywood', 'osb', 'plank'] as const;
export const DECK_CONDITIONS = ['sound', 'some-rot', 'active-leak'] as const;
export const ATTICS = ['cathedral', 'conditioned-attic', 'stays-vented'] as const;
export const CAVITY_FILLS = [
  'none',
  'glass-fiber-batt',
  'mineral-wool-batt',
  'cellulose',
  'open-cell-spray',
  'closed-cell-spray',
] as const;
export const CEILINGS = ['gypsum', 'wood-boards', 'deck-in-view', 'none'] as const;
export const INTERIOR_RETARDERS = ['none', 'latex-paint', 'kraft-facer', 'smart-membrane', 'polyethylene'] as const;
export const AIRTIGHTNESS_GOALS = ['ordinary', 'tight', 'very-tight'] as const;
export const APPLIANCES = ['none-or-sealed', 'drafting'] as const;
export const OVERHANG_CARRIERS = ['rafter-tails', 'truss-tails', 'outriggers', 'none'] as const;
export const TAIL_PLANS = ['keep', 'may-cut', 'must-cut'] as const;
export const ICE_DAMS = ['never', 'sometimes', 'every-winter'] as const;
export const LOOKS = ['thin-edge', 'ordinary', 'exposed-tails', 'no-preference'] as const;
export const CUTS = ['plumb', 'square'] as const;
export const WALL_AIR_BARRIERS = ['exterior-membrane', 'taped-sheathing', 'interior', 'none'] as const;
export const CLADDINGS = ['stays', 'comes-off', 'new'] as const;
export const VENT_WISHES = ['no-preference', 'vented', 'unvented'] as const;
export const EXPOSURES = ['B', 'C', 'D'] as const;
export const WILDFIRES = ['none', 'hazard-zone'] as const;
export const SEISMIC_CATEGORIES = ['A', 'B', 'C', 'D0', 'D1', 'D2', 'E'] as const;
export const INSECT_RISKS = ['low', 'carpenter-ants-or-termites'] as const;
export const CREWS = ['self-build', 'roofer', 'framer', 'framer-and-roofer', 'panel-crew'] as const;
export const EXPERIENCES = ['none', 'some', 'much'] as const;
export const SCHEDULES = ['open', 'ordinary', 'tight'] as const;
export const WEATHERS = ['dry', 'mixed', 'wet'] as const;
export const BUDGETS = ['low', 'middle', 'high'] as const;
export const ENGINEERS = ['engaged', 'can-be-hired', 'none'] as const;
export const PANEL_SUPPLIES = ['at-hand', 'can-be-ordered', 'not-available'] as const;

const project = v.strictObject({
  name: v.optional(text(200)),
  client: v.optional(text(200)),
  author: v.optional(text(200)),
  revision: v.optional(text(40)),
  date: v.optional(v.pipe(v.string(), v.isoDate())),
  role: v.optional(v.picklist(ROLES)),
  kind: v.optional(v.picklist(PROJECT_KINDS)),
});

/** At least one of id, countyFips, zone or monthlyTemperature_C is needed (checked below). */
const place = v.pipe(
  v.strictObject({
    id: v.optional(text(80)),
    name: v.optional(text(120)),
    countyFips: v.optional(v.pipe(v.string(), v.regex(/^\d{5}$/, 'five digits'))),
    zone: v.optional(v.picklist(ZONES)),
    elevation_m: v.optional(amount(-100, 4500)),
    monthlyTemperature_C: v.optional(twelve(amount(-60, 45))),
    monthlyRelativeHumidity_pct: v.optional(twelve(amount(1, 100))),
    designTemperature_C: v.optional(amount(-60, 30)),
  }),
  v.check(
    (p) =>
      p.id !== undefined ||
      p.countyFips !== undefined ||
      p.zone !== undefined ||
      p.monthlyTemperature_C !== undefined,
    'needs at least one of id, countyFips, zone, monthlyTemperature_C',
  ),
  v.check(
    (p) => p.monthlyTemperature_C === undefined || p.zone !== undefined || p.id !== undefined || p.countyFips !== undefined,
    'monthlyTemperature_C alone does not decide the code zone: add zone, countyFips or id',
  ),
);

const codes = v.strictObject({
  edition: v.optional(v.picklist(EDITIONS)),
  /** Local amendment: ceiling R that the authority asks instead of the model code's. */
  localCeiling_m2K_W: v.optional(amount(0.5, 20)),
  /** Local amendment: R above the deck that the authority asks instead of the model code's. */
  localAboveDeck_m2K_W: v.optional(amount(0, 15)),
  iceBarrierRequired: v.optional(yesNo),
});

const roof = v.strictObject({
  shape: v.optional(v.picklist(ROOF_SHAPES)),
  pitch_rise_per_12: v.optional(amount(2, 24)),
  length_m: v.optional(amount(2, 100)),
  width_m: v.optional(amount(2, 60)),
  eaveHeight_m: v.optional(amount(1, 20)),
  valleys: v.optional(count(40)),
  dormers: v.optional(count(30)),
  skylights: v.optional(count(40)),
  chimneys: v.optional(count(10)),
  penetrations: v.optional(count(100)),
  exhaustEndsInRoof: v.optional(yesNo),
});

const framing = v.strictObject({
  kind: v.optional(v.picklist(FRAMING_KINDS)),
  depth_m: v.optional(amount(0.08, 0.7)),
  width_m: v.optional(amount(0.03, 0.2)),
  spacing_m: v.optional(amount(0.2, 2.5)),
  deck: v.optional(v.picklist(DECKS)),
  deckThickness_m: v.optional(amount(0.009, 0.1)),
  deckSeenFromBelow: v.optional(yesNo),
  deckCondition: v.optional(v.picklist(DECK_CONDITIONS)),
  deckMoisture_pct: v.optional(amount(4, 60)),
});

const belowDeck = v.strictObject({
  attic: v.optional(v.picklist(ATTICS)),
  fill: v.optional(v.picklist(CAVITY_FILLS)),
  fillDepth_m: v.optional(amount(0, 0.7)),
  fillResistance_m2K_W: v.optional(amount(0, 15)),
  ceiling: v.optional(v.picklist(CEILINGS)),
  interiorRetarder: v.optional(v.picklist(INTERIOR_RETARDERS)),
  recessedLights: v.optional(count(200)),
  wiringNearDeck: v.optional(yesNo),
});

const indoor = v.strictObject({
  temperature_C: v.optional(amount(10, 30)),
  relativeHumidity_pct: v.optional(amount(10, 80)),
  airtightness: v.optional(v.picklist(AIRTIGHTNESS_GOALS)),
  appliances: v.optional(v.picklist(APPLIANCES)),
});

const overhang = v.strictObject({
  eave_m: v.optional(amount(0, 1.5)),
  rake_m: v.optional(amount(0, 1.5)),
  carriedToday: v.optional(v.picklist(OVERHANG_CARRIERS)),
  tails: v.optional(v.picklist(TAIL_PLANS)),
  iceDams: v.optional(v.picklist(ICE_DAMS)),
});

const profile = v.strictObject({
  fasciaLimit_m: v.optional(amount(0.05, 1.2)),
  ridgeRiseLimit_m: v.optional(amount(0, 1.5)),
  heritage: v.optional(yesNo),
  look: v.optional(v.picklist(LOOKS)),
  cut: v.optional(v.picklist(CUTS)),
});

const wall = v.strictObject({
  airBarrier: v.optional(v.picklist(WALL_AIR_BARRIERS)),
  exteriorInsulation_m: v.optional(amount(0, 0.4)),
  thickness_m: v.optional(amount(0.08, 0.8)),
  cladding: v.optional(v.picklist(CLADDINGS)),
});

const stock = v.strictObject({
  board: v.picklist(BOARDS),
  thickness_m: amount(0.01, 0.3),
  area_m2: amount(0, 5000),
});

const insulation = v.strictObject({
  aboveDeckTarget_m2K_W: v.optional(amount(0.2, 15)),
  totalTarget_m2K_W: v.optional(amount(0.5, 25)),
  refusedBoards: v.optional(v.array(v.picklist(BOARDS))),
  foamFree: v.optional(yesNo),
  stock: v.optional(stock),
});

const covering = v.strictObject({
  kind: v.optional(v.picklist(COVERINGS)),
  ventWish: v.optional(v.picklist(VENT_WISHES)),
  refusedVentilations: v.optional(v.array(v.picklist(VENTILATIONS))),
  solarPlanned: v.optional(yesNo),
});

const loads = v.strictObject({
  groundSnow_Pa: v.optional(amount(0, 30000)),
  basicWindSpeed_m_s: v.optional(amount(20, 120)),
  exposure: v.optional(v.picklist(EXPOSURES)),
  wildfire: v.optional(v.picklist(WILDFIRES)),
  seismicCategory: v.optional(v.picklist(SEISMIC_CATEGORIES)),
  insects: v.optional(v.picklist(INSECT_RISKS)),
});

const work = v.strictObject({
  crew: v.optional(v.picklist(CREWS)),
  experience: v.optional(v.picklist(EXPERIENCES)),
  lift: v.optional(yesNo),
  schedule: v.optional(v.picklist(SCHEDULES)),
  weather: v.optional(v.picklist(WEATHERS)),
  budget: v.optional(v.picklist(BUDGETS)),
  engineer: v.optional(v.picklist(ENGINEERS)),
  panelSupply: v.optional(v.picklist(PANEL_SUPPLIES)),
});

/** Swing weights, 0 (does not matter) to 100 (the first thing I would improve), by criterion id. */
const priorities = v.record(v.pipe(v.string(), v.regex(/^[a-z][a-zA-Z]*$/, 'a criterion id')), amount(0, 100));

export const caseSchema = v.strictObject({
  overdeck: v.literal(formatVersion),
  project: v.optional(project),
  place,
  codes: v.optional(codes),
  roof: v.optional(roof),
  framing: v.optional(framing),
  belowDeck: v.optional(belowDeck),
  indoor: v.optional(indoor),
  overhang: v.optional(overhang),
  profile: v.optional(profile),
  wall: v.optional(wall),
  insulation: v.optional(insulation),
  covering: v.optional(covering),
  loads: v.optional(loads),
  work: v.optional(work),
  priorities: v.optional(priorities),
  notes: v.optional(text(10000)),
});

/** A case as a person gave it. */
export type Case = v.InferOutput<typeof caseSchema>;

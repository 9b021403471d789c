/**
 * The case file: everything the interview can learn about one roof. SI, unit in the name.
 *
 * Every field but `overdeck` and `place` is optional; a missing one means "not sure" and takes the
 * cautious default of content/tables/defaults.json (see complete.ts).
 */
import * as v from 'valibot';
import { lumberGrades, lumberSizes, speciesIds } from '../catalog/lumber.ts';
import { boards, coverings, editions, ventilations, zones } from '../catalog/sets.ts';

export const formatVersion = 1;

/** A finite number within [least, greatest]; both ends allowed. */
const amount = (least: number, greatest: number) =>
  v.pipe(v.number(), v.finite(), v.minValue(least), v.maxValue(greatest));
const count = (greatest: number) => v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(greatest));
const text = (longest: number) => v.pipe(v.string(), v.maxLength(longest));
const yesNo = v.boolean();
const twelve = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.length(12));

export const roles = ['builder', 'designer', 'trainer'] as const;
export const projectKinds = ['new-roof', 're-roof', 'addition'] as const;
export const roofShapes = ['gable', 'hip', 'shed', 'gambrel', 'cross-gable'] as const;
export const framingKinds = ['rafter', 'truss', 'i-joist'] as const;
export const decks = ['plywood', 'osb', 'plank'] as const;
export const deckConditions = ['sound', 'some-rot', 'active-leak'] as const;
export const attics = ['cathedral', 'conditioned-attic', 'stays-vented'] as const;
export const cavityFills = [
  'none',
  'glass-fiber-batt',
  'mineral-wool-batt',
  'cellulose',
  'open-cell-spray',
  'closed-cell-spray',
] as const;
export const ceilings = ['gypsum', 'wood-boards', 'deck-in-view', 'none'] as const;
export const interiorRetarders = [
  'none',
  'latex-paint',
  'kraft-facer',
  'smart-membrane',
  'polyethylene',
] as const;
export const airtightnessGoals = ['ordinary', 'tight', 'very-tight'] as const;
export const appliances = ['none-or-sealed', 'drafting'] as const;
export const overhangCarriers = ['rafter-tails', 'truss-tails', 'outriggers', 'none'] as const;
export const tailPlans = ['keep', 'may-cut', 'must-cut'] as const;
export const iceDams = ['never', 'sometimes', 'every-winter'] as const;
export const looks = ['thin-edge', 'ordinary', 'exposed-tails', 'no-preference'] as const;
export const cuts = ['plumb', 'square'] as const;
export const wallAirBarriers = ['exterior-membrane', 'taped-sheathing', 'interior', 'none'] as const;
export const claddings = ['stays', 'comes-off', 'new'] as const;
export const ventWishes = ['no-preference', 'vented', 'unvented'] as const;
export const outriggerSeats = ['deck', 'blocking', 'board'] as const;
export const orientations = ['flat', 'on-edge'] as const;
export const loadStandards = ['asce7-16', 'asce7-22'] as const;
export const snowLevels = ['allowable', 'strength'] as const;
export const exposures = ['B', 'C', 'D'] as const;
export const wildfires = ['none', 'hazard-zone'] as const;
export const seismicCategories = ['A', 'B', 'C', 'D0', 'D1', 'D2', 'E'] as const;
export const insectRisks = ['low', 'carpenter-ants-or-termites'] as const;
export const crews = ['self-build', 'roofer', 'framer', 'framer-and-roofer', 'panel-crew'] as const;
export const experiences = ['none', 'some', 'much'] as const;
export const schedules = ['open', 'ordinary', 'tight'] as const;
export const weathers = ['dry', 'mixed', 'wet'] as const;
export const budgets = ['low', 'middle', 'high'] as const;
export const engineers = ['engaged', 'can-be-hired', 'none'] as const;
export const panelSupplies = ['at-hand', 'can-be-ordered', 'not-available'] as const;

const project = v.strictObject({
  name: v.optional(text(200)),
  client: v.optional(text(200)),
  author: v.optional(text(200)),
  revision: v.optional(text(40)),
  date: v.optional(v.pipe(v.string(), v.isoDate())),
  role: v.optional(v.picklist(roles)),
  kind: v.optional(v.picklist(projectKinds)),
});

export const weatherFormats = ['epw', 'tmy3'] as const;
export const designBases = ['quoted', 'typical-year'] as const;
const line = (longest: number) => v.pipe(v.string(), v.minLength(1), v.maxLength(longest));
const year = v.pipe(v.number(), v.integer(), v.minValue(1800), v.maxValue(2200));

/**
 * The hourly weather file that the twelve months were read from. Without it they are a person's own. Degree days are
 * those of its hours: by the mean of a day's hours, and by the mean of its highest and lowest (`Extremes`).
 */
const weatherFile = v.strictObject({
  /** Of the file, without its folder. */
  name: line(120),
  format: v.picklist(weatherFormats),
  station: line(120),
  /** The set of data that the file names, such as TMY3. */
  dataSet: v.optional(line(120)),
  /** First and last year of its records: in a typical year the months come from different years. */
  firstYear: v.optional(year),
  lastYear: v.optional(year),
  /** Hours with temperature and humidity. */
  usable_h: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(8784)),
  heatingDegreeDays18_Cd: amount(0, 33000),
  heatingDegreeDays18Extremes_Cd: amount(0, 33000),
  coolingDegreeDays10_Cd: amount(0, 22000),
  coolingDegreeDays10Extremes_Cd: amount(0, 22000),
  /** The file's own 99 % heating temperature; `designTemperature_C` of the place goes before it. */
  designTemperature_C: amount(-70, 70),
  /** `quoted` from the station's handbook, or from the hours of a `typical-year`, which is no design value. */
  designBasis: v.picklist(designBases),
});

/** At least one of id, countyFips, zone or monthlyTemperature_C is needed (checked below). */
const place = v.pipe(
  v.strictObject({
    id: v.optional(text(80)),
    name: v.optional(text(120)),
    countyFips: v.optional(v.pipe(v.string(), v.regex(/^\d{5}$/, 'five digits'))),
    zone: v.optional(v.picklist(zones)),
    elevation_m: v.optional(amount(-100, 4500)),
    monthlyTemperature_C: v.optional(twelve(amount(-60, 45))),
    monthlyRelativeHumidity_pct: v.optional(twelve(amount(1, 100))),
    designTemperature_C: v.optional(amount(-60, 30)),
    weatherFile: v.optional(weatherFile),
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
    (p) =>
      p.monthlyTemperature_C === undefined ||
      p.zone !== undefined ||
      p.id !== undefined ||
      p.countyFips !== undefined,
    'monthlyTemperature_C alone does not decide the code zone: add zone, countyFips or id',
  ),
  v.check(
    (p) =>
      p.weatherFile === undefined ||
      (p.monthlyTemperature_C !== undefined && p.monthlyRelativeHumidity_pct !== undefined),
    'weatherFile says where the months come from: add its monthlyTemperature_C and monthlyRelativeHumidity_pct, or leave it out',
  ),
);

const codes = v.strictObject({
  edition: v.optional(v.picklist(editions)),
  /** Local amendment: ceiling R that the authority asks instead of the model code's. */
  localCeiling_m2K_W: v.optional(amount(0.5, 20)),
  /** Local amendment: R above the deck that the authority asks instead of the model code's. */
  localAboveDeck_m2K_W: v.optional(amount(0, 15)),
  iceBarrierRequired: v.optional(yesNo),
});

const roof = v.strictObject({
  shape: v.optional(v.picklist(roofShapes)),
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
  kind: v.optional(v.picklist(framingKinds)),
  depth_m: v.optional(amount(0.08, 0.7)),
  width_m: v.optional(amount(0.03, 0.2)),
  spacing_m: v.optional(amount(0.2, 2.5)),
  deck: v.optional(v.picklist(decks)),
  deckThickness_m: v.optional(amount(0.009, 0.1)),
  deckSeenFromBelow: v.optional(yesNo),
  deckCondition: v.optional(v.picklist(deckConditions)),
  deckMoisture_pct: v.optional(amount(4, 60)),
});

const belowDeck = v.strictObject({
  attic: v.optional(v.picklist(attics)),
  fill: v.optional(v.picklist(cavityFills)),
  fillDepth_m: v.optional(amount(0, 0.7)),
  fillResistance_m2K_W: v.optional(amount(0, 15)),
  ceiling: v.optional(v.picklist(ceilings)),
  interiorRetarder: v.optional(v.picklist(interiorRetarders)),
  recessedLights: v.optional(count(200)),
  wiringNearDeck: v.optional(yesNo),
});

const indoor = v.strictObject({
  temperature_C: v.optional(amount(10, 30)),
  relativeHumidity_pct: v.optional(amount(10, 80)),
  /** Humidity class of ISO 13788 for the monthly method, 1 to 4; without one the humidity above is held all year. */
  humidityClass: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(4))),
  airtightness: v.optional(v.picklist(airtightnessGoals)),
  appliances: v.optional(v.picklist(appliances)),
});

const overhang = v.strictObject({
  eave_m: v.optional(amount(0, 1.5)),
  rake_m: v.optional(amount(0, 1.5)),
  carriedToday: v.optional(v.picklist(overhangCarriers)),
  tails: v.optional(v.picklist(tailPlans)),
  iceDams: v.optional(v.picklist(iceDams)),
  outriggerSpecies: v.optional(v.picklist(speciesIds)),
  outriggerGrade: v.optional(v.picklist(lumberGrades)),
  /** The member at hand; the smallest that passes is looked for when absent. */
  outriggerSize: v.optional(v.picklist(lumberSizes)),
  outriggerOrientation: v.optional(v.picklist(orientations)),
  outriggerSpacing_m: v.optional(amount(0.2, 1.3)),
  /** Along the member, wall line to heel screws; twice the overhang when absent. */
  outriggerBackSpan_m: v.optional(amount(0.2, 6)),
  /** What it rests on at the wall line. */
  outriggerSeat: v.optional(v.picklist(outriggerSeats)),
});

const profile = v.strictObject({
  fasciaLimit_m: v.optional(amount(0.05, 1.2)),
  ridgeRiseLimit_m: v.optional(amount(0, 1.5)),
  heritage: v.optional(yesNo),
  look: v.optional(v.picklist(looks)),
  cut: v.optional(v.picklist(cuts)),
});

const wall = v.strictObject({
  airBarrier: v.optional(v.picklist(wallAirBarriers)),
  exteriorInsulation_m: v.optional(amount(0, 0.4)),
  thickness_m: v.optional(amount(0.08, 0.8)),
  cladding: v.optional(v.picklist(claddings)),
});

const stock = v.strictObject({
  board: v.picklist(boards),
  thickness_m: amount(0.01, 0.3),
  area_m2: amount(0, 5000),
});

/**
 * Allowable values from the evaluation report of the roof screw that will be bought, at load duration 1. Each one given
 * goes before the equations; no maker is named or needed.
 */
const screwReport = v.pipe(
  v.strictObject({
    /** As it should be printed in the record. */
    name: v.optional(text(80)),
    /** For each length of thread in the framing or deck. */
    withdrawal_N_m: v.optional(amount(1000, 1_000_000)),
    /** Of one screw as it is driven here. */
    allowableWithdrawal_N: v.optional(amount(20, 50_000)),
    pullThrough_N: v.optional(amount(20, 50_000)),
    /** Shear of one screw with insulation between, of at most `lateralGap_m` when that is given. */
    lateral_N: v.optional(amount(1, 20_000)),
    lateralGap_m: v.optional(amount(0, 0.6)),
    minimumPenetration_m: v.optional(amount(0.006, 0.15)),
    /** Longest screw that is sold. */
    longest_m: v.optional(amount(0.05, 0.8)),
    /** Every length that is sold; goes before the lengths commonly sold. */
    lengths_m: v.optional(v.pipe(v.array(amount(0.05, 0.8)), v.minLength(1), v.maxLength(60))),
  }),
  v.check(
    (r) => r.withdrawal_N_m === undefined || r.allowableWithdrawal_N === undefined,
    'withdrawal_N_m and allowableWithdrawal_N say the same twice: give one of them',
  ),
  v.check(
    (r) => r.lateralGap_m === undefined || r.lateral_N !== undefined,
    'lateralGap_m belongs to lateral_N: give that as well, or leave it out',
  ),
);

const insulation = v.strictObject({
  screwReport: v.optional(screwReport),
  aboveDeckTarget_m2K_W: v.optional(amount(0.2, 15)),
  totalTarget_m2K_W: v.optional(amount(0.5, 25)),
  refusedBoards: v.optional(v.array(v.picklist(boards))),
  foamFree: v.optional(yesNo),
  stock: v.optional(stock),
});

const covering = v.strictObject({
  kind: v.optional(v.picklist(coverings)),
  ventWish: v.optional(v.picklist(ventWishes)),
  refusedVentilations: v.optional(v.array(v.picklist(ventilations))),
  solarPlanned: v.optional(yesNo),
});

const loads = v.strictObject({
  groundSnow_Pa: v.optional(amount(0, 30000)),
  /** Whether the ground snow is a figure of older maps (allowable stress) or of the 2022 maps (strength). */
  snowLevel: v.optional(v.picklist(snowLevels)),
  snowExposureFactor: v.optional(amount(0.7, 1.2)),
  thermalFactor: v.optional(amount(0.85, 1.3)),
  importanceFactor: v.optional(amount(0.8, 1.2)),
  /** Length of a higher roof that snow can blow from, square to the step; 0 for none. */
  upperRoofLength_m: v.optional(amount(0, 150)),
  basicWindSpeed_m_s: v.optional(amount(20, 120)),
  exposure: v.optional(v.picklist(exposures)),
  onHill: v.optional(yesNo),
  topographicFactor: v.optional(amount(1, 3)),
  /** Standard that the authority names for wind and snow; the code edition decides when absent. */
  standard: v.optional(v.picklist(loadStandards)),
  wildfire: v.optional(v.picklist(wildfires)),
  seismicCategory: v.optional(v.picklist(seismicCategories)),
  insects: v.optional(v.picklist(insectRisks)),
});

const work = v.strictObject({
  crew: v.optional(v.picklist(crews)),
  experience: v.optional(v.picklist(experiences)),
  lift: v.optional(yesNo),
  schedule: v.optional(v.picklist(schedules)),
  weather: v.optional(v.picklist(weathers)),
  budget: v.optional(v.picklist(budgets)),
  engineer: v.optional(v.picklist(engineers)),
  panelSupply: v.optional(v.picklist(panelSupplies)),
});

/** Swing weights, 0 (does not matter) to 100 (the first thing I would improve), by criterion id. */
const priorities = v.record(
  v.pipe(v.string(), v.regex(/^[a-z][a-zA-Z]*$/, 'a criterion id')),
  amount(0, 100),
);

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

/** Where the months of a place were read from. */
export type WeatherFile = v.InferOutput<typeof weatherFile>;

/** A case as a person gave it. */
export type Case = v.InferOutput<typeof caseSchema>;

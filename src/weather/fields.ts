/**
 * The 35 fields of an EPW data record, and how a cell of a weather file becomes a number.
 * Limits and missing codes: US DOE / NREL, EnergyPlus Auxiliary Programs, weather file data dictionary (seen).
 */

/** Why a cell gives no number: its missing code (or nothing) stands there, or a value that cannot be. */
export type Gap = 'missing' | 'outside';
export type Amount = number | Gap;

export interface CellRule {
  /** The code and everything above it mean "not measured". */
  readonly missingFrom?: number;
  /** The code and everything below it mean "not measured". */
  readonly missingDownFrom?: number;
  /** Limits that are allowed themselves. */
  readonly least?: number;
  readonly most?: number;
  /** Limits that are not allowed themselves. */
  readonly above?: number;
  readonly below?: number;
}

export interface FieldRule extends CellRule {
  /** Place in the record, 1 to 35. */
  readonly column: number;
  /** As a message names it. */
  readonly words: string;
}

/** [°C] limits of dry-bulb and dew point (data dictionary, seen). */
export const TEMPERATURE_LIMITS = { above: -70, below: 70 } as const;
/** [%] limits of relative humidity (data dictionary, seen: fog is written as up to 110). */
export const HUMIDITY_LIMITS = { least: 0, most: 110 } as const;
const temperature = { ...TEMPERATURE_LIMITS, missingFrom: 99.9 };
const radiation = { least: 0, missingFrom: 9999 };
const illuminance = { least: 0, missingFrom: 999900 };
const tenths = { least: 0, most: 10, missingFrom: 99 };

/** Every numeric field by name; field 6 (flags) and field 28 (weather codes) are text. */
export const epwFields = {
  year: { column: 1, words: 'year' },
  month: { column: 2, words: 'month' },
  day: { column: 3, words: 'day' },
  hour: { column: 4, words: 'hour' },
  minute: { column: 5, words: 'minute' },
  dryBulb_C: { column: 7, words: 'dry-bulb temperature', ...temperature },
  dewPoint_C: { column: 8, words: 'dew-point temperature', ...temperature },
  relativeHumidity_pct: { column: 9, words: 'relative humidity', ...HUMIDITY_LIMITS, missingFrom: 999 },
  pressure_Pa: { column: 10, words: 'station pressure', least: 31000, most: 120000, missingFrom: 999999 },
  extraterrestrialHorizontal_Wh_m2: {
    column: 11,
    words: 'extraterrestrial horizontal radiation',
    ...radiation,
  },
  extraterrestrialNormal_Wh_m2: { column: 12, words: 'extraterrestrial direct radiation', ...radiation },
  skyInfrared_Wh_m2: { column: 13, words: 'infrared radiation from the sky', ...radiation },
  globalHorizontal_Wh_m2: { column: 14, words: 'global horizontal radiation', ...radiation },
  directNormal_Wh_m2: { column: 15, words: 'direct normal radiation', ...radiation },
  diffuseHorizontal_Wh_m2: { column: 16, words: 'diffuse horizontal radiation', ...radiation },
  globalIlluminance_lux: { column: 17, words: 'global horizontal illuminance', ...illuminance },
  directIlluminance_lux: { column: 18, words: 'direct normal illuminance', ...illuminance },
  diffuseIlluminance_lux: { column: 19, words: 'diffuse horizontal illuminance', ...illuminance },
  zenithLuminance_cd_m2: { column: 20, words: 'zenith luminance', ...radiation },
  windDirection_deg: { column: 21, words: 'wind direction', least: 0, most: 360, missingFrom: 999 },
  windSpeed_m_s: { column: 22, words: 'wind speed', least: 0, most: 40, missingFrom: 999 },
  totalSkyCover_tenths: { column: 23, words: 'total sky cover', ...tenths },
  opaqueSkyCover_tenths: { column: 24, words: 'opaque sky cover', ...tenths },
  visibility_km: { column: 25, words: 'visibility', missingFrom: 9999 },
  /** 77777 is unlimited, 88888 cirroform: codes that are no missing value. */
  ceilingHeight_m: { column: 26, words: 'ceiling height', missingFrom: 99999 },
  presentWeather: { column: 27, words: 'present weather observation', missingFrom: 9 },
  precipitableWater_mm: { column: 29, words: 'precipitable water', missingFrom: 999 },
  aerosolDepth_thousandths: { column: 30, words: 'aerosol optical depth', missingFrom: 0.999 },
  snowDepth_cm: { column: 31, words: 'snow depth', missingFrom: 999 },
  daysSinceSnow_d: { column: 32, words: 'days since last snowfall', missingFrom: 99 },
  albedo: { column: 33, words: 'albedo', missingFrom: 999 },
  rainDepth_mm: { column: 34, words: 'liquid precipitation depth', missingFrom: 999 },
  rainTime_h: { column: 35, words: 'liquid precipitation quantity', missingFrom: 99 },
} as const satisfies Readonly<Record<string, FieldRule>>;

export type FieldName = keyof typeof epwFields;
export const fieldNames = Object.keys(epwFields) as FieldName[];

/** Longest number read, in characters: real ones have about ten. */
const LONGEST_NUMBER = 30;
const PLAIN_NUMBER = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d{1,3})?$/i;

/** A decimal number as these files write it; undefined for anything else, words and hexadecimal included. */
export function numberIn(text: string): number | undefined {
  const bare = text.trim();
  if (bare.length > LONGEST_NUMBER || !PLAIN_NUMBER.test(bare)) return undefined;
  const value = Number(bare);
  return Number.isFinite(value) ? value : undefined;
}

function isOutside(value: number, rule: CellRule): boolean {
  const { least = -Infinity, most = Infinity, above = -Infinity, below = Infinity } = rule;
  return value < least || value > most || value <= above || value >= below;
}

/** The number of a cell, or why there is none; undefined when the cell holds something that is no number. */
export function amountIn(text: string, rule: CellRule): Amount | undefined {
  if (text.trim() === '') return 'missing';
  const value = numberIn(text);
  if (value === undefined) return undefined;
  const { missingFrom = Infinity, missingDownFrom = -Infinity } = rule;
  if (value >= missingFrom || value <= missingDownFrom) return 'missing';
  return isOutside(value, rule) ? 'outside' : value;
}

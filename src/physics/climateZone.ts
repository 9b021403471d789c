/**
 * Climate zone from degree days and rain: thermal number by thresholds, moisture letter by ASHRAE 169.
 * A plausibility check beside the county list, which decides.
 */
import { canadianZones, zoneThresholds } from '../catalog/zones.ts';
import { DAYS_OF_MONTHS, MONTHS, requireTwelveMeans } from './climate.ts';
import { at, requireNotNegative, requireWithin, sum } from './guards.ts';

/** later: ASHRAE 169-2013, energy-code editions from 2021 on. earlier: ASHRAE 90.1-2010, editions 2012 to 2018. */
export type ZoneDefinition = 'later' | 'earlier';
export type MoistureLetter = 'A' | 'B' | 'C';

/** [-] coldest zone of the tables. */
const COLDEST_ZONE = 8;

const isAbove = (value: number, limit: number | null): boolean => limit === null || value > limit;
const isAtMost = (value: number, limit: number | null): boolean => limit === null || value <= limit;

/**
 * Thermal climate zone by degree-day thresholds, in the later or the earlier definition.
 *
 * @param heatingDegreeDays18_Cd [K·d] heating degree days, base 18 °C
 * @param coolingDegreeDays10_Cd [K·d] cooling degree days, base 10 °C
 * @param definition             [-] later (zone 0 exists) unless said otherwise, or earlier
 * @returns                      [-] zone number 0 to 8
 * @range                        plausibility check only: the county list decides
 * @throws                       RangeError when a value is negative or not finite
 * @source                       ASHRAE-169-2013 thresholds (memory); ASHRAE-90.1-2010 table B-4 (seen-secondary)
 * @assumes                      annual sums of daily means
 */
export function thermalZone(
  heatingDegreeDays18_Cd: number,
  coolingDegreeDays10_Cd: number,
  definition: ZoneDefinition = 'later',
): number {
  requireNotNegative('heatingDegreeDays18_Cd', heatingDegreeDays18_Cd);
  requireNotNegative('coolingDegreeDays10_Cd', coolingDegreeDays10_Cd);
  const row = zoneThresholds(definition).find(
    (limits) =>
      isAbove(coolingDegreeDays10_Cd, limits.coolingDegreeDays10Above_Cd) &&
      isAtMost(coolingDegreeDays10_Cd, limits.coolingDegreeDays10AtMost_Cd) &&
      isAbove(heatingDegreeDays18_Cd, limits.heatingDegreeDays18Above_Cd) &&
      isAtMost(heatingDegreeDays18_Cd, limits.heatingDegreeDays18AtMost_Cd),
  );
  if (!row)
    throw new Error(`zones.json has no row for ${heatingDegreeDays18_Cd} and ${coolingDegreeDays10_Cd}`);
  return Number(row.zone);
}

/** [°C] marine: coldest month above, coldest month below, warmest month below, warm month above (seen in transcription). */
const MARINE_COLDEST_ABOVE_C = -3;
const MARINE_COLDEST_BELOW_C = 18;
const MARINE_WARMEST_BELOW_C = 22;
const WARM_MONTH_ABOVE_C = 10;
/** [-] marine: least number of warm months (seen in transcription). */
const LEAST_WARM_MONTHS = 4;
/** [-] marine: wettest cold-season month over driest month of the rest (memory). */
const DRY_SUMMER_RATIO = 3;
/** [-] calendar months of the cold season in the northern hemisphere, October to March (memory). */
const COLD_SEASON: readonly number[] = [10, 11, 12, 1, 2, 3];
/** [-] thermal zones that have a marine form in the code tables (seen in county lists). */
const MARINE_ZONES: readonly number[] = [3, 4, 5];
/** [-] warmest and coldest thermal zone that carries a letter in the code tables (seen in county lists). */
const LAST_ZONE_WITH_LETTER = 6;
/** [mm/K] rain that dries off per kelvin of the annual mean (SI form seen in transcription). */
const DRY_MM_PER_K = 20;
/** [K] offset by the share of rain in the high-sun half-year: little, middle, most (middle seen in transcription, others memory). */
const DRY_OFFSET_K = { little: 0, middle: 7, most: 14 } as const;
/** [-] shares of rain in the high-sun half-year that part the three forms (memory). */
const LITTLE_SHARE = 0.3;
const MOST_SHARE = 0.7;

const isColdSeason = (index: number): boolean => COLD_SEASON.includes(index + 1);

/** The temperatures of a marine climate, dry summers left aside. */
function hasMarineTemperatures(monthly_C: readonly number[]): boolean {
  const coldest = Math.min(...monthly_C);
  return (
    coldest > MARINE_COLDEST_ABOVE_C &&
    coldest < MARINE_COLDEST_BELOW_C &&
    Math.max(...monthly_C) < MARINE_WARMEST_BELOW_C &&
    monthly_C.filter((mean) => mean > WARM_MONTH_ABOVE_C).length >= LEAST_WARM_MONTHS
  );
}

function hasDrySummers(monthly_mm: readonly number[]): boolean {
  const wettestCold = Math.max(...monthly_mm.filter((_, index) => isColdSeason(index)));
  const driestRest = Math.min(...monthly_mm.filter((_, index) => !isColdSeason(index)));
  return wettestCold >= DRY_SUMMER_RATIO * driestRest;
}

function dryOffset_K(monthly_mm: readonly number[] | undefined, definition: ZoneDefinition): number {
  if (definition === 'earlier' || monthly_mm === undefined) return DRY_OFFSET_K.middle;
  const year = sum(monthly_mm);
  if (year === 0) return DRY_OFFSET_K.middle;
  const share = sum(monthly_mm.filter((_, index) => !isColdSeason(index))) / year;
  if (share >= MOST_SHARE) return DRY_OFFSET_K.most;
  return share <= LITTLE_SHARE ? DRY_OFFSET_K.little : DRY_OFFSET_K.middle;
}

export interface RainAndWarmth {
  readonly annualPrecipitation_mm?: number | undefined;
  readonly annualMean_C?: number | undefined;
  /** January first. */
  readonly monthlyMean_C?: readonly number[] | undefined;
  readonly monthlyPrecipitation_mm?: readonly number[] | undefined;
}

function requireTwelveAmounts(monthly_mm: readonly number[]): void {
  if (monthly_mm.length !== MONTHS) {
    throw new RangeError(`monthlyPrecipitation_mm: ${monthly_mm.length} is not ${MONTHS}`);
  }
  for (const amount_mm of monthly_mm) requireNotNegative('monthlyPrecipitation_mm', amount_mm);
}

function yearMean_C(monthly_C: readonly number[]): number {
  return sum(monthly_C.map((mean, index) => mean * at(DAYS_OF_MONTHS, index))) / sum(DAYS_OF_MONTHS);
}

/**
 * Moisture letter of a climate zone: marine (C), else dry (B), else humid (A).
 *
 * dry: P < 20 (T + offset) mm, offset 7 K in the earlier form; in the later form 14, 7 or 0 K by the share of rain
 * from April to September (70 % and more, between, 30 % and less)
 *
 * @param thermal    [-] thermal zone number 0 to 8
 * @param climate    [mm, °C] annual or monthly precipitation, annual or monthly mean temperature
 * @param definition [-] later unless said otherwise, or earlier
 * @returns          [-] A, B, C, or null: zones 7 and 8 carry none, and where the data cannot tell
 * @range            northern hemisphere
 * @throws           RangeError when a list is not of twelve or a value is out of range
 * @source           ASHRAE-90.1-2010 appendix B (seen-secondary); ASHRAE-169-2013 annex A (memory)
 * @assumes          without monthly temperatures marine is not tried; with marine temperatures but without monthly rain
 *                   the letter stays open
 */
export function moistureLetter(
  thermal: number,
  climate: RainAndWarmth,
  definition: ZoneDefinition = 'later',
): MoistureLetter | null {
  requireWithin('thermal', thermal, 0, COLDEST_ZONE);
  const { monthlyMean_C, monthlyPrecipitation_mm } = climate;
  if (monthlyMean_C) requireTwelveMeans(monthlyMean_C);
  if (monthlyPrecipitation_mm) requireTwelveAmounts(monthlyPrecipitation_mm);
  if (thermal > LAST_ZONE_WITH_LETTER) return null;
  if (MARINE_ZONES.includes(thermal) && monthlyMean_C && hasMarineTemperatures(monthlyMean_C)) {
    if (!monthlyPrecipitation_mm) return null;
    if (hasDrySummers(monthlyPrecipitation_mm)) return 'C';
  }
  const rain_mm = climate.annualPrecipitation_mm ?? (monthlyPrecipitation_mm && sum(monthlyPrecipitation_mm));
  const mean_C = climate.annualMean_C ?? (monthlyMean_C && yearMean_C(monthlyMean_C));
  if (rain_mm === undefined || mean_C === undefined) return null;
  requireNotNegative('annualPrecipitation_mm', rain_mm);
  const limit_mm = DRY_MM_PER_K * (mean_C + dryOffset_K(monthlyPrecipitation_mm, definition));
  return rain_mm < limit_mm ? 'B' : 'A';
}

/**
 * Climate zone of the National Building Code of Canada.
 *
 * @param heatingDegreeDays18_Cd [K·d] heating degree days, base 18 °C
 * @returns                      [-] 4, 5, 6, 7A, 7B or 8
 * @range                        0 or more
 * @throws                       RangeError when negative or not finite
 * @source                       NBC-9.36 table 9.36.2.6.-A (seen)
 * @assumes                      degree days of the code's own climate table where the place is listed
 */
export function canadianZone(heatingDegreeDays18_Cd: number): string {
  requireNotNegative('heatingDegreeDays18_Cd', heatingDegreeDays18_Cd);
  const row = canadianZones().find(
    (each) =>
      heatingDegreeDays18_Cd >= each.from_Cd &&
      (each.below_Cd === null || heatingDegreeDays18_Cd < each.below_Cd),
  );
  if (!row) throw new Error(`zones.json has no Canadian row for ${heatingDegreeDays18_Cd}`);
  return row.nbcZone;
}

/**
 * Climate figures from monthly means: the three coldest months, degree days, the thermal climate zone.
 */
import { at, requireNotNegative, requirePositive, requireWithin, sum } from './guards.ts';

/** [d] days of the months of a common year. */
export const DAYS_OF_MONTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
/** [-] months of a year. */
export const MONTHS = 12;
/** [°C] lowest and highest monthly mean accepted: beyond any inhabited place, our judgement. */
export const MONTHLY_MEAN_RANGE_C = [-70, 60] as const;
/** [-] months in the mean that the deck-temperature rule asks for (IRC R806.5 item 5.1.4, seen-secondary). */
const COLDEST_MONTHS = 3;

export function requireTwelveMeans(monthly_C: readonly number[]): void {
  if (monthly_C.length !== MONTHS)
    throw new RangeError(`monthly values: ${monthly_C.length} is not ${MONTHS}`);
  for (const mean_C of monthly_C)
    requireWithin('monthly mean_C', mean_C, MONTHLY_MEAN_RANGE_C[0], MONTHLY_MEAN_RANGE_C[1]);
}

export interface ColdestMonths {
  readonly mean_C: number;
  /** Calendar months 1 to 12, coldest first; of equal months the earlier first. */
  readonly months: readonly [number, number, number];
}

/**
 * Mean of the three coldest months of a year of monthly means.
 *
 * @param monthly_C [°C] twelve monthly means, January first
 * @returns         [°C, 1-12] mean, and the months from coldest on
 * @range           -70 to 60 °C
 * @throws          RangeError when there are not twelve values or one is out of range
 * @source          IRC-2018-R806.5 item 5.1.4 (seen-secondary)
 * @assumes         the months need not be neighbors; each counts alike, whatever its days
 */
export function threeColdestMonths(monthly_C: readonly number[]): ColdestMonths {
  requireTwelveMeans(monthly_C);
  const ranked = monthly_C
    .map((mean_C, index) => ({ mean_C, month: index + 1 }))
    .sort((a, b) => a.mean_C - b.mean_C || a.month - b.month)
    .slice(0, COLDEST_MONTHS);
  return {
    mean_C: sum(ranked.map((entry) => entry.mean_C)) / COLDEST_MONTHS,
    months: [at(ranked, 0).month, at(ranked, 1).month, at(ranked, 2).month],
  };
}

/** [K], [-], [-], [-] Erbs, Klein and Beckman, ASHRAE Journal, June 1983 (memory, tried on 15 hourly files). */
const DEVIATION_AT_ZERO_K = 1.45;
const DEVIATION_PER_MEAN = -0.029;
const DEVIATION_PER_YEARLY = 0.0664;
/** [-] shape of the daily distribution; 1.698 fits, 1.698 sqrt(N) as some reprints give does not. */
const DISTRIBUTION_SHAPE = 1.698;
/** [-] exponent of the number of days in the printed formula. */
const DAYS_EXPONENT = 1.5;

/**
 * Degree days of a year estimated from twelve monthly means.
 *
 * s = 1.45 - 0.0290 Tm + 0.0664 sy; h = (Tb - Tm) / (s sqrt(N)), for cooling the negative;
 * D = s N^1.5 (h/2 + ln(exp(-a h) + exp(a h)) / (2 a)), a = 1.698
 *
 * @param monthly_C [°C] twelve monthly means, January first (Tm; sy their population standard deviation)
 * @param base_C    [°C] base temperature (Tb), for zones 18 heating and 10 cooling
 * @param kind      [-] heating or cooling
 * @returns         [K·d] degree days of a year of 365 days
 * @range           estimate within 4 % above 1100 K·d, 8 % from 550 to 1100 K·d, poor below
 * @throws          RangeError when there are not twelve values or one is out of range
 * @source          ERBS-1983 degree-day formula (memory)
 * @assumes         days of a month spread about its mean as in the United States sample of the paper
 */
export function degreeDaysFromMonthlyMeans_Kd(
  monthly_C: readonly number[],
  base_C: number,
  kind: 'heating' | 'cooling',
): number {
  requireTwelveMeans(monthly_C);
  requireWithin('base_C', base_C, MONTHLY_MEAN_RANGE_C[0], MONTHLY_MEAN_RANGE_C[1]);
  const yearMean = sum(monthly_C) / MONTHS;
  const yearDeviation = Math.sqrt(sum(monthly_C.map((mean) => (mean - yearMean) ** 2)) / MONTHS);
  const direction = kind === 'heating' ? 1 : -1;
  return sum(
    monthly_C.map((mean, index) => {
      const days = at(DAYS_OF_MONTHS, index);
      const deviation =
        DEVIATION_AT_ZERO_K + DEVIATION_PER_MEAN * mean + DEVIATION_PER_YEARLY * yearDeviation;
      requirePositive('standard deviation of the month', deviation);
      const h = (direction * (base_C - mean)) / (deviation * Math.sqrt(days));
      const logSum =
        DISTRIBUTION_SHAPE * Math.abs(h) + Math.log1p(Math.exp(-2 * DISTRIBUTION_SHAPE * Math.abs(h)));
      return deviation * Math.pow(days, DAYS_EXPONENT) * (h / 2 + logSum / (2 * DISTRIBUTION_SHAPE));
    }),
  );
}

export type ZoneDefinition = '2013' | '2010';

/** [K·d] upper limits of heating degree days, base 18 °C, zones 3 to 7 (ASHRAE 169-2013; 90.1-2010 table B-4). */
const HEATING_LIMITS_KD: readonly (readonly [number, number])[] = [
  [2000, 3],
  [3000, 4],
  [4000, 5],
  [5000, 6],
  [7000, 7],
];
/** [-] zone above the last heating limit. */
const COLDEST_ZONE = 8;
/** [K·d] lower limits of cooling degree days, base 10 °C, zones 0 to 2 of the 2013 definition (memory; zone 0 seen-secondary). */
const COOLING_LIMITS_2013_KD: readonly (readonly [number, number])[] = [
  [6000, 0],
  [5000, 1],
  [3500, 2],
];
/** [K·d] lower limits of cooling degree days of the 2010 definition, with its own line for 3A and 3B (seen in transcription). */
const COOLING_LIMITS_2010_KD: readonly (readonly [number, number])[] = [
  [5000, 1],
  [3500, 2],
  [2500, 3],
];

/**
 * Thermal climate zone by degree-day thresholds, in the newer or the older definition.
 *
 * @param heatingDegreeDays18_Cd [K·d] heating degree days, base 18 °C
 * @param coolingDegreeDays10_Cd [K·d] cooling degree days, base 10 °C
 * @param definition             [-] 2013 (zone 0 exists; IECC 2021 on) or 2010 (IECC 2012 to 2018)
 * @returns                      [-] zone number 0 to 8
 * @range                        plausibility check only: the county list decides
 * @throws                       RangeError when a value is negative or not finite
 * @source                       ASHRAE-169-2013 thresholds (memory); ASHRAE-90.1-2010 table B-4 (seen-secondary)
 * @assumes                      annual sums of daily means
 */
export function thermalZone(
  heatingDegreeDays18_Cd: number,
  coolingDegreeDays10_Cd: number,
  definition: ZoneDefinition = '2013',
): number {
  requireNotNegative('heatingDegreeDays18_Cd', heatingDegreeDays18_Cd);
  requireNotNegative('coolingDegreeDays10_Cd', coolingDegreeDays10_Cd);
  const coolingLimits = definition === '2013' ? COOLING_LIMITS_2013_KD : COOLING_LIMITS_2010_KD;
  for (const [limit, zone] of coolingLimits) if (coolingDegreeDays10_Cd > limit) return zone;
  for (const [limit, zone] of HEATING_LIMITS_KD) if (heatingDegreeDays18_Cd <= limit) return zone;
  return COLDEST_ZONE;
}

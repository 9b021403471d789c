/**
 * Climate figures from monthly means: the three coldest months, degree days.
 */
import { at, requirePositive, requireWithin, sum } from './guards.ts';

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

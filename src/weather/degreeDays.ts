/** Degree days of a year from its hours, by both conventions for the mean of a day. */
import { at, sum } from '../physics/guards.ts';

/** [K·d] base temperatures of heating: 18 °C, and 65 °F, which is 18.33 °C. */
export const HEATING_BASES_C = { base18: 18, base18_3: (65 - 32) / 1.8 } as const;
/** [°C] base of cooling degree days in the zone definitions, 50 °F (ASHRAE-169-2013, memory). */
export const COOLING_BASE_C = 10;

/** Temperatures of one day's hours, those that are there. */
export interface DayTemperatures {
  /** 1 to 12. */
  readonly month: number;
  readonly temperatures_C: readonly number[];
}

/** `extremes`: (highest + lowest)/2, the practice of the federal weather service. `hours`: mean of the hours. */
export type DayMean = 'extremes' | 'hours';

function dayMean_C(temperatures_C: readonly number[], convention: DayMean): number {
  return convention === 'hours'
    ? sum(temperatures_C) / temperatures_C.length
    : (Math.max(...temperatures_C) + Math.min(...temperatures_C)) / 2;
}

/**
 * Degree days of a year from the temperatures of its days.
 *
 * D = sum over months of N mean(max(0, Tb - Tday)), for cooling max(0, Tday - Tb)
 *
 * @param days         [°C] days with their hourly temperatures; every month needs at least one day
 * @param monthLengths [d] calendar days of the twelve months (N): a month that lacks days counts as if whole
 * @param base_C       [°C] base temperature (Tb)
 * @param kind         [-] heating or cooling
 * @param convention   [-] how the mean of a day (Tday) is taken
 * @returns            [K·d] degree days of the year
 * @range              days with enough hours to show their course; the caller picks them
 * @throws             RangeError when a month has no day
 * @source             NWS-DEGREE-DAYS (max + min)/2 against base 65 °F (seen-secondary)
 * @assumes            days that are missing are like the days of their month
 */
export function degreeDays_Kd(
  days: readonly DayTemperatures[],
  monthLengths: readonly number[],
  base_C: number,
  kind: 'heating' | 'cooling',
  convention: DayMean,
): number {
  const direction = kind === 'heating' ? 1 : -1;
  return sum(
    monthLengths.map((length, index) => {
      const within = days.filter(({ month }) => month === index + 1);
      if (within.length === 0) throw new RangeError(`month ${index + 1} has no day`);
      const excess = within.map(({ temperatures_C }) =>
        Math.max(0, direction * (base_C - dayMean_C(temperatures_C, convention))),
      );
      return (length * sum(excess)) / within.length;
    }),
  );
}

/**
 * The temperature that a share of the hours stays below.
 *
 * @param temperatures_C [°C] hourly temperatures, at least one
 * @param below_pct      [%] share of the hours that are colder, above 0 to 100
 * @returns              [°C] the k-th coldest hour, k = share of the hours, rounded up
 * @range                a whole year for a design temperature
 * @source               EPW-DICTIONARY and OUR-JUDGEMENT: a stand-in where a file quotes no design temperature
 * @assumes              one typical year, which lacks the coldest years: warmer than a design value
 */
export function coldestShare_C(temperatures_C: readonly number[], below_pct: number): number {
  const sorted = [...temperatures_C].sort((a, b) => a - b);
  const rank = Math.max(1, Math.ceil((below_pct / 100) * sorted.length));
  return at(sorted, rank - 1);
}

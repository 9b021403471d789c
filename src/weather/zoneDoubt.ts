/** Whether a weather file fits the climate zone that counts: a plausibility check, the county list decides. */
import { thermalZone, type ZoneDefinition } from '../physics/climateZone.ts';
import type { DayMean } from './degreeDays.ts';
import type { WeatherSummary } from './monthly.ts';

const CONVENTIONS: readonly DayMean[] = ['extremes', 'hours'];

/**
 * A sentence of doubt where the degree days of a file make another zone number than the one that counts.
 *
 * Both conventions for the mean of a day must make another one, so that a place near a limit is let be.
 *
 * @param summary    [K·d] the degree days of a file
 * @param zone       [-] climate zone that counts, such as 5B
 * @param definition [-] the map's definition: later for editions from 2021 on, else earlier
 * @returns          [-] the sentence, or undefined when nothing is strange
 * @source           ASHRAE-169-2013 thresholds (memory); ASHRAE-90.1-2010 table B-4 (seen-secondary)
 * @assumes          of 259 places of the table 40 differ from their county's zone, most by one (computed): no proof of an error
 */
export function zoneDoubt(
  summary: WeatherSummary,
  zone: string,
  definition: ZoneDefinition,
): string | undefined {
  const numbers = CONVENTIONS.map((convention) =>
    thermalZone(
      summary.heatingDegreeDays[convention].base18_Kd,
      summary.coolingDegreeDays10_Kd[convention],
      definition,
    ),
  );
  const counted = Number.parseInt(zone, 10);
  if (numbers.includes(counted)) return undefined;
  const heating = Math.round(summary.heatingDegreeDays.extremes.base18_Kd);
  const cooling = Math.round(summary.coolingDegreeDays10_Kd.extremes);
  return `${heating} heating degree days (18 °C) and ${cooling} cooling degree days (10 °C) make zone ${[...new Set(numbers)].join(' or ')} by the thresholds, and zone ${zone} counts: is this the file of the place?`;
}

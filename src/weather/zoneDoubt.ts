/** Whether a weather file fits the climate zone that counts: a plausibility check, the county list decides. */
import type { ZoneDefinition } from '../physics/climateZone.ts';
import { zoneDoubtOf, type DegreeDays } from '../physics/zoneCheck.ts';
import type { DayMean } from './degreeDays.ts';
import type { WeatherSummary } from './monthly.ts';

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
  const by = (convention: DayMean): DegreeDays => ({
    heating18_Kd: summary.heatingDegreeDays[convention].base18_Kd,
    cooling10_Kd: summary.coolingDegreeDays10_Kd[convention],
  });
  return zoneDoubtOf([by('hours'), by('extremes')], zone, definition);
}

/** Degree days against the climate zone that counts: a plausibility check, the county list decides. */
import { show } from '../measures.ts';
import { thermalZone, type ZoneDefinition } from './climateZone.ts';
import { at, requireNotNegative } from './guards.ts';

/** Degree days of a place by one way of counting them. */
export interface DegreeDays {
  /** [K·d] base 18 °C. */
  readonly heating18_Kd: number;
  /** [K·d] base 10 °C. */
  readonly cooling10_Kd: number;
}

/** [-] accuracy of degree days that are estimated from monthly means, above 1,100 K·d. @source ERBS-1983 (computed against 15 hourly files) */
const ESTIMATE_SHARE = 0.04;

/**
 * Degree days at both ends of what an estimate from monthly means may be off by.
 *
 * D, D (1 - 0.04), D (1 + 0.04); heating and cooling move against each other, as warmth does
 *
 * @param estimate [K·d] heating and cooling degree days from twelve monthly means
 * @returns        [K·d] three pairs: as estimated, the warmest, the coldest
 * @range          0 or more
 * @throws         RangeError when a value is negative or not finite
 * @source         ERBS-1983 stated accuracy above 1100 K·d (computed)
 * @assumes        a place near a limit between zones is let be
 */
export function estimateRange(estimate: DegreeDays): DegreeDays[] {
  requireNotNegative('heating18_Kd', estimate.heating18_Kd);
  requireNotNegative('cooling10_Kd', estimate.cooling10_Kd);
  return [0, -ESTIMATE_SHARE, ESTIMATE_SHARE].map((share) => ({
    heating18_Kd: estimate.heating18_Kd * (1 + share),
    cooling10_Kd: estimate.cooling10_Kd * (1 - share),
  }));
}

/**
 * The zone numbers that degree days make by the thresholds.
 *
 * @param ways       [K·d] degree days by every way of counting that is to be let be
 * @param definition [-] the map's definition: later for editions from 2021 on, else earlier
 * @returns          [-] zone numbers 0 to 8, each once, from the warmest
 * @range            plausibility check only
 * @throws           RangeError when a value is negative or not finite
 * @source           ASHRAE-169-2013 thresholds (memory); ASHRAE-90.1-2010 table B-4 (seen-secondary)
 * @assumes          annual sums of daily means
 */
export const zoneNumbers = (ways: readonly DegreeDays[], definition: ZoneDefinition): number[] =>
  [
    ...new Set(
      ways.map(({ heating18_Kd, cooling10_Kd }) => thermalZone(heating18_Kd, cooling10_Kd, definition)),
    ),
  ].sort((a, b) => a - b);

const both = (value_Kd: number): string =>
  `${show('degreeDays', value_Kd, 'IP')} (${show('degreeDays', value_Kd, 'SI')})`;

/**
 * A sentence of doubt where degree days make another zone number than the one that counts.
 *
 * @param ways       [K·d] degree days by every way of counting; the first is the one that the sentence names
 * @param zone       [-] climate zone that counts, such as 5B
 * @param definition [-] the map's definition: later for editions from 2021 on, else earlier
 * @returns          [-] the sentence, or undefined when one way makes the number of the zone
 * @range            plausibility check only: the county list decides
 * @throws           RangeError when a value is negative or not finite, or there is no way
 * @source           ASHRAE-169-2013 thresholds (memory); ASHRAE-90.1-2010 table B-4 (seen-secondary)
 * @assumes          of 259 listed places of the United States 40 differ from their county's zone, all but a mountain top by
 *                   one (computed from the table of places)
 */
export function zoneDoubtOf(
  ways: readonly DegreeDays[],
  zone: string,
  definition: ZoneDefinition,
): string | undefined {
  const { heating18_Kd, cooling10_Kd } = at(ways, 0);
  const numbers = zoneNumbers(ways, definition);
  const apart = Math.min(...numbers.map((number) => Math.abs(number - Number.parseInt(zone, 10))));
  if (apart === 0) return undefined;
  const weight =
    apart > 1
      ? `That is ${apart} zones apart: probably the months and the zone belong to different places, unless the site is a mountain.`
      : 'One zone apart is common; still make sure that the months and the zone belong to one place.';
  return `Heating degree-days of ${both(heating18_Kd)}, base 18 °C, and cooling degree-days of ${both(cooling10_Kd)}, base 10 °C, make zone ${numbers.join(' or ')} by the thresholds, and zone ${zone} counts. ${weight} The county list or the zone you chose decides, not the thresholds.`;
}

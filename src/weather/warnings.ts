/** What a reader of a weather file should know before trusting it. */
import type { Fault } from '../faults.ts';
import { WHOLE_FIELDS } from './epw.ts';
import { hasWrongSign, type Station } from './station.ts';
import { DEW_POINT_SLACK_K } from './vapor.ts';
import type { Oddity, Sighting, WeatherYear } from './year.ts';

/** [h] hours of a common year. */
const HOURS_OF_YEAR = 8760;
/** [%] share of missing temperatures or dew points from which on a file is warned of (our judgement). */
const MOST_MISSING_PCT = 2;
const PERCENT = 100;

const sentences: Readonly<Record<Exclude<Oddity, 'dryBulbMissing' | 'dewPointMissing'>, string>> = {
  dryBulbOutside: 'dry-bulb temperature out of the range -70 to 70 °C, left out',
  dewPointOutside: 'dew point out of the range -70 to 70 °C, left out',
  dewPointAbove: `dew point above the air temperature by more than ${DEW_POINT_SLACK_K} K, taken as saturated air`,
  zeroHumidity: 'relative humidity 0, which no open air has, taken as missing',
  fromHumidity: 'no dew point, vapor pressure taken from the relative humidity',
  shortRecord: `fewer than ${WHOLE_FIELDS} fields, the later ones taken as missing`,
};

const records = (count: number): string => `${count} ${count === 1 ? 'record' : 'records'}`;

function sighted({ count, line }: Sighting, what: string): Fault {
  return { path: `line ${line}`, message: `${records(count)} from here on: ${what}` };
}

function missing(words: string, seen: Sighting | undefined, total: number): Fault[] {
  if (seen === undefined || (PERCENT * seen.count) / total <= MOST_MISSING_PCT) return [];
  const share = ((PERCENT * seen.count) / total).toFixed(1);
  return [sighted(seen, `${words} missing, ${share} % of the file; more than ${MOST_MISSING_PCT} % is much`)];
}

/** Warnings of a file that can be used, the gravest first. */
export function warningsOf(
  station: Station,
  year: WeatherYear,
  usableHours: number,
  designBasis: 'quoted' | 'typical-year',
): Fault[] {
  const warnings: Fault[] = [];
  if (usableHours < HOURS_OF_YEAR) {
    const message = `${usableHours} usable hours; a year has ${HOURS_OF_YEAR}, and means are of the hours there are`;
    warnings.push({ path: '', message });
  }
  if (hasWrongSign(station)) {
    const message = `longitude ${station.longitude_deg}° is east; North America lies west, with a negative longitude`;
    warnings.push({ path: '', message });
  }
  const { dryBulbMissing, dewPointMissing, ...others } = year.sightings;
  warnings.push(...missing('dry-bulb temperature', dryBulbMissing, year.records));
  warnings.push(...missing('dew point', dewPointMissing, year.records));
  for (const [oddity, sentence] of Object.entries(sentences)) {
    const seen = others[oddity as keyof typeof sentences];
    if (seen !== undefined) warnings.push(sighted(seen, sentence));
  }
  if (designBasis === 'typical-year') {
    const message = 'quotes no design temperature: its own is from a typical year, not a design value';
    warnings.push({ path: '', message });
  }
  return warnings;
}

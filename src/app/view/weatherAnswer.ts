/** A weather file as an answer to the question of the place. */
import type { WeatherFile } from '../../case/case.ts';
import { editions } from '../../catalog/sets.ts';
import { usesOlderMap } from '../../catalog/zones.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import type { Answers, Patch } from '../../interview/index.ts';
import { knownZone } from '../../interview/zone.ts';
import type { WeatherSummary } from '../../weather/monthly.ts';
import type { PlaceOfWeather } from '../../weather/place.ts';
import { zoneDoubt } from '../../weather/zoneDoubt.ts';

/** The newest map stands for "not sure", as in content/tables/defaults.json. */
const OPEN_EDITION = editions[2];

/** Puts the months of a file into the answers, or takes them and the file out. */
export const weatherPatch = (place: PlaceOfWeather | undefined): Patch => ({
  'place.monthlyTemperature_C': place?.monthlyTemperature_C,
  'place.monthlyRelativeHumidity_pct': place?.monthlyRelativeHumidity_pct,
  'place.weatherFile': place?.weatherFile,
});

/** Whether the file belongs to the zone that counts; null also while no zone is chosen. */
export function doubtAbout(summary: WeatherSummary, answers: Answers): string | null {
  const zone = knownZone(answers);
  if (zone === undefined) return null;
  const map = usesOlderMap(answers.codes?.edition ?? OPEN_EDITION) ? 'earlier' : 'later';
  return zoneDoubt(summary, zone, map) ?? null;
}

export interface WeatherInUse {
  readonly file: WeatherFile | undefined;
  readonly monthly_C: readonly number[] | undefined;
  readonly doubt: string | null;
  readonly zoneWords: string;
}

/** What the field of the weather file shows of the answers. */
export function weatherInUse(answers: Answers, climate: Evaluation['climate'] | null): WeatherInUse {
  const zone = knownZone(answers);
  return {
    file: answers.place?.weatherFile,
    monthly_C: answers.place?.monthlyTemperature_C,
    doubt: climate?.basis === 'weather-file' ? climate.zoneDoubt : null,
    zoneWords:
      zone === undefined
        ? 'The file does not decide the code zone: choose the town, county or zone above as well.'
        : `The file does not decide the code zone: it stays ${zone}, from the county list or your choice above.`,
  };
}

/** `--weather FILE`: the twelve months of a weather file put into the place of a case. */
import type { Case } from '../case/case.ts';
import { zoneOf } from '../case/place.ts';
import { readCase } from '../case/read.ts';
import { editions } from '../catalog/sets.ts';
import { usesOlderMap } from '../catalog/zones.ts';
import { faultLine, type Fault } from '../faults.ts';
import { placeOfWeather } from '../weather/place.ts';
import { readWeatherBytes } from '../weather/read.ts';
import { weatherSizeFault } from '../weather/reader.ts';
import { zoneDoubt } from '../weather/zoneDoubt.ts';
import { BadInput, valueOf } from './badInput.ts';
import { readBytes } from './files.ts';

/** The newest map stands for "not sure", as in content/tables/defaults.json. */
const OPEN_EDITION = editions[2];

/** A fault of a weather file with the file's name before the line. */
const inFile =
  (named: string) =>
  ({ path, message }: Fault): Fault => ({ path: path === '' ? named : `${named} ${path}`, message });

export interface CaseWithWeather {
  readonly roof: Case;
  /** What to know of the file, a line each. */
  readonly notes: readonly string[];
}

/** The case with the file's months; zone and county stay as they are and decide. */
export function withWeather(given: Case, named: string): CaseWithWeather {
  const reading = readWeatherBytes(readBytes(named, weatherSizeFault));
  if (!reading.ok) throw new BadInput(reading.faults.map(inFile(named)), named);
  const summary = reading.value;
  const { notes: cuts, ...fromFile } = placeOfWeather(summary, named);
  const own_C = given.place.designTemperature_C;
  const roof = valueOf(readCase({ ...given, place: { ...given.place, ...fromFile } }), named);
  const { zone } = zoneOf(roof);
  const map = usesOlderMap(roof.codes?.edition ?? OPEN_EDITION) ? 'earlier' : 'later';
  const doubt = zoneDoubt(summary, zone, map);
  const notes = [
    ...summary.warnings.map((warning) => faultLine(inFile(named)(warning), named)),
    ...cuts.map((note) => `${named}: ${note}`),
    ...(own_C === undefined ? [] : [`${named}: the design temperature of the case, ${own_C} °C, is kept`]),
    ...(doubt === undefined ? [] : [`${named}: ${doubt}`]),
  ];
  return { roof, notes };
}

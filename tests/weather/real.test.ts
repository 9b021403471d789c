/**
 * Real hourly files (TMY3, NREL 2008), where they are present: the folder in OVERDECK_WEATHER_FILES, else the reference
 * pack beside the repository. They are not part of the repository, so their tests are skipped, and counted, without them.
 *
 * Degree days and design temperatures: worked apart from this program (computed) and read in the files' headers (seen).
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { degreeDaysFromMonthlyMeans_Kd } from '../../src/physics/climate.ts';
import { vaporPressure_Pa } from '../../src/physics/psychrometrics.ts';
import type { WeatherSummary } from '../../src/weather/monthly.ts';
import { placeOfWeather } from '../../src/weather/place.ts';
import { readWeatherBytes } from '../../src/weather/read.ts';
import { zoneDoubt } from '../../src/weather/zoneDoubt.ts';
import { root } from '../support/arrows.ts';

const folder =
  process.env['OVERDECK_WEATHER_FILES'] ?? join(root, '..', 'shared', 'reference', 'climate', 'epw');

interface RealFile {
  readonly name: string;
  readonly file: string;
  readonly zone: string;
  /** [°F·d] base 65 °F: by the mean of the day's hours, by (max + min)/2, and from the twelve means. */
  readonly hours65: number;
  readonly extremes65: number;
  readonly means65: number;
  /** [K·d] base 10 °C from the file's hours. */
  readonly cooling10: number;
  readonly heating996_C: number;
  readonly heating99_C: number;
}

const files: readonly RealFile[] = [
  {
    name: 'Denver CO',
    file: 'USA_CO_Denver.Intl.AP.725650_TMY3.epw',
    zone: '5B',
    hours65: 5783,
    extremes65: 5655,
    means65: 5848,
    cooling10: 1707,
    heating996_C: -17.4,
    heating99_C: -14.0,
  },
  {
    name: 'Portland OR',
    file: 'USA_OR_Portland.Intl.AP.726980_TMY3.epw',
    zone: '4C',
    hours65: 4301,
    extremes65: 4186,
    means65: 4437,
    cooling10: 1366,
    heating996_C: -4.5,
    heating99_C: -1.9,
  },
];

const absent = files.filter(({ file }) => !existsSync(join(folder, file)));
if (absent.length > 0) {
  const names = absent.map(({ name }) => name).join(', ');
  console.warn(
    `SKIPPED: ${absent.length} of ${files.length} real weather files are not here (${names}); set OVERDECK_WEATHER_FILES`,
  );
}

const FAHRENHEIT_PER_KELVIN = 1.8;
/**
 * [°F·d] the printed estimates take February with 28.25 days, the program with 28: a quarter of a day at some
 * 33 °F below the base, and the rounding to whole degree days.
 */
const QUARTER_DAY_FD = 0.25 * 33 + 0.5;
/** [-] accuracy of the estimate above 2,000 °F·d, as src/physics/climate.ts states it. */
const ESTIMATE_SHARE = 0.04;

describe.each(files)('the hourly file of $name', (real) => {
  const skipped = absent.includes(real);
  const read = (): WeatherSummary => {
    const reading = readWeatherBytes(readFileSync(join(folder, real.file)));
    if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
    return reading.value;
  };

  it.skipIf(skipped)('is whole: 8,760 usable hours, no warning', () => {
    expect(read()).toMatchObject({ usableHours: 8760, warnings: [] });
  });

  it.skipIf(skipped)('has the degree days worked elsewhere, to the unit printed', () => {
    const { heatingDegreeDays, coolingDegreeDays10_Kd } = read();
    // The other figures are cut or rounded to whole degree days.
    const near = (value: number, printed: number): void => {
      expect(Math.abs(value - printed)).toBeLessThanOrEqual(1);
    };
    near(FAHRENHEIT_PER_KELVIN * heatingDegreeDays.hours.base18_3_Kd, real.hours65);
    near(FAHRENHEIT_PER_KELVIN * heatingDegreeDays.extremes.base18_3_Kd, real.extremes65);
    near(coolingDegreeDays10_Kd.hours, real.cooling10);
  });

  it.skipIf(skipped)('quotes its station design temperatures', () => {
    expect(read().designTemperature).toMatchObject({
      basis: 'quoted',
      heating996_C: real.heating996_C,
      heating99_C: real.heating99_C,
    });
  });

  it.skipIf(skipped)('is met by the estimate from its twelve means, within 4 %', () => {
    const { monthlyTemperature_C, heatingDegreeDays } = read();
    const estimate = degreeDaysFromMonthlyMeans_Kd(monthlyTemperature_C, (65 - 32) / 1.8, 'heating');
    expect(Math.abs(FAHRENHEIT_PER_KELVIN * estimate - real.means65)).toBeLessThanOrEqual(QUARTER_DAY_FD);
    expect(Math.abs(estimate / heatingDegreeDays.hours.base18_3_Kd - 1)).toBeLessThan(ESTIMATE_SHARE);
  });

  it.skipIf(skipped)('keeps its vapor pressures on the way into a case', () => {
    const summary = read();
    const place = placeOfWeather(summary, real.file);
    for (const [index, mean_Pa] of summary.monthlyVaporPressure_Pa.entries()) {
      const found_Pa = vaporPressure_Pa(
        place.monthlyTemperature_C[index] ?? NaN,
        place.monthlyRelativeHumidity_pct[index] ?? NaN,
      );
      expect(Math.abs(found_Pa / mean_Pa - 1)).toBeLessThan(0.003);
    }
    expect(place.notes).toEqual([]);
  });

  it.skipIf(skipped)('makes the zone number of its county', () => {
    expect(zoneDoubt(read(), real.zone, 'later')).toBeUndefined();
  });
});

/** Months, degree days and design temperature of invented years whose figures can be worked by hand. */
import { describe, expect, it } from 'vitest';
import { vaporPressure_Pa } from '../../src/physics/psychrometrics.ts';
import { coldestShare_C, degreeDays_Kd } from '../../src/weather/degreeDays.ts';
import type { WeatherSummary } from '../../src/weather/monthly.ts';
import { placeOfWeather } from '../../src/weather/place.ts';
import { readWeatherBytes } from '../../src/weather/read.ts';
import { saturationOverWater_Pa, vaporOfHour } from '../../src/weather/vapor.ts';
import { zoneDoubt } from '../../src/weather/zoneDoubt.ts';
import { bytesOf, epwText, headers, hoursOfYear, tmy3Text, type EpwOptions } from './files.ts';

function summary(options: EpwOptions): WeatherSummary {
  const reading = readWeatherBytes(bytesOf(epwText(options)));
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.value;
}

/** Murphy and Koop 2005 equation 10, over liquid and supercooled water, 123 to 332 K (memory): another formula. */
function murphyKoop_Pa(temperature_C: number): number {
  const T = temperature_C + 273.15;
  const bend = 53.878 - 1331.22 / T - 9.44523 * Math.log(T) + 0.014025 * T;
  return Math.exp(
    54.842763 - 6763.22 / T - 4.21 * Math.log(T) + 0.000367 * T + Math.tanh(0.0415 * (T - 218.8)) * bend,
  );
}

describe('saturation pressure over water', () => {
  it('is within 0.5 % of another formula from -35 to 58 °C', () => {
    for (let temperature_C = -35; temperature_C <= 58; temperature_C += 0.5) {
      const ratio = saturationOverWater_Pa(temperature_C) / murphyKoop_Pa(temperature_C);
      expect(Math.abs(ratio - 1)).toBeLessThan(0.005);
    }
  });

  it('is within 2.8 % below, down to -70 °C, and refused beyond', () => {
    for (let temperature_C = -70; temperature_C < -35; temperature_C += 0.5) {
      const ratio = saturationOverWater_Pa(temperature_C) / murphyKoop_Pa(temperature_C);
      expect(Math.abs(ratio - 1)).toBeLessThan(0.0285);
    }
    expect(() => saturationOverWater_Pa(-70.1)).toThrow(RangeError);
  });
});

describe('the vapor pressure of an hour', () => {
  const moment = { month: 1, day: 1, hour: 1 };
  const of = (dryBulb_C: number, dewPoint_C: number | 'missing', relativeHumidity_pct: number | 'missing') =>
    vaporOfHour({ ...moment, dryBulb_C, dewPoint_C, relativeHumidity_pct });

  it('comes from the dew point, whatever the humidity says', () => {
    expect(of(2.8, -6.1, 99)?.vaporPressure_Pa).toBe(saturationOverWater_Pa(-6.1));
  });

  it('comes from the humidity where there is no dew point', () => {
    expect(of(20, 'missing', 50)?.vaporPressure_Pa).toBeCloseTo(saturationOverWater_Pa(20) / 2, 9);
    expect(of(20, 'missing', 110)?.vaporPressure_Pa).toBe(saturationOverWater_Pa(20));
  });

  it('is saturation where the dew point is above the air temperature', () => {
    expect(of(20, 25, 90)?.vaporPressure_Pa).toBe(saturationOverWater_Pa(20));
  });

  it('is none without humidity', () => {
    expect(of(20, 'missing', 'missing')).toBeUndefined();
    expect(of(20, 'missing', 0)).toBeUndefined();
    expect(vaporOfHour({ ...moment, dryBulb_C: 'missing', dewPoint_C: 5, relativeHumidity_pct: 50 })).toBe(
      undefined,
    );
  });
});

describe('the months of a year', () => {
  it('average the vapor pressure of the hours, not the dew point', () => {
    const read = summary({ weather: ({ hour }) => ({ dryBulb: 15, dewPoint: hour % 2 === 0 ? -10 : 10 }) });
    const expected_Pa = (murphyKoop_Pa(-10) + murphyKoop_Pa(10)) / 2;
    for (const month_Pa of read.monthlyVaporPressure_Pa) {
      expect(Math.abs(month_Pa / expected_Pa - 1)).toBeLessThan(0.003);
      // A mean dew point of 0 °C would give 611 Pa, a fifth less.
      expect(month_Pa).toBeGreaterThan(740);
    }
    expect(read.monthlyRelativeHumidity_pct[0]).toBeCloseTo((100 * expected_Pa) / murphyKoop_Pa(15), 0);
  });

  it('keep apart: each has its own mean', () => {
    const read = summary({ weather: ({ month }) => ({ dryBulb: month, dewPoint: month - 1 }) });
    expect(read.monthlyTemperature_C.map((mean) => mean.toFixed(6))).toEqual(
      Array.from({ length: 12 }, (_, index) => (index + 1).toFixed(6)),
    );
  });

  it('have degree days by both conventions: 18 hours of 0 °C and 6 of 20 °C', () => {
    const read = summary({ weather: ({ hour }) => ({ dryBulb: hour > 18 ? 20 : 0, dewPoint: -5 }) });
    // (20 + 0)/2 = 10 °C is 8 K below 18 °C; the mean of the hours is 5 °C, 13 K below.
    expect(read.heatingDegreeDays.extremes.base18_Kd).toBeCloseTo(365 * 8, 6);
    expect(read.heatingDegreeDays.hours.base18_Kd).toBeCloseTo(365 * 13, 6);
    expect(read.heatingDegreeDays.extremes.base18_3_Kd * 1.8).toBeCloseTo(365 * (65 - 50), 6);
    expect(read.coolingDegreeDays10_Kd).toEqual({ extremes: 0, hours: 0 });
  });

  it('have degree days as if whole where days are missing', () => {
    const hours = hoursOfYear().filter(({ day }) => day > 8);
    expect(summary({ hours }).heatingDegreeDays.hours.base18_Kd).toBeCloseTo(365 * 8, 6);
  });

  it('leave a day of less than 18 hours out of the degree days', () => {
    const cold = summary({
      hours: hoursOfYear().filter(({ month, day, hour }) => month !== 1 || day !== 1 || hour <= 17),
      weather: ({ month, day }) => (month === 1 && day === 1 ? { dryBulb: -30, dewPoint: -35 } : {}),
    });
    expect(cold.heatingDegreeDays.hours.base18_Kd).toBeCloseTo(365 * 8, 6);
  });

  it('cool above 10 °C only', () => {
    const read = summary({ weather: () => ({ dryBulb: 14, dewPoint: 5 }) });
    expect(read.coolingDegreeDays10_Kd.hours).toBeCloseTo(365 * 4, 6);
  });
});

describe('degree days', () => {
  it('refuse a month without a day', () => {
    expect(() =>
      degreeDays_Kd([{ month: 2, temperatures_C: [1] }], [31, 28], 18, 'heating', 'hours'),
    ).toThrow(RangeError);
  });
});

describe('the design temperature', () => {
  it('is the quoted one where the header has it', () => {
    expect(summary({}).designTemperature).toEqual({
      heating99_C: -25.4,
      heating996_C: -28.6,
      basis: 'quoted',
      source: 'as the file quotes: Invented Handbook',
    });
  });

  it('is else the 88th and the 36th coldest of the 8,760 hours, and says what it is', () => {
    const { designTemperature } = summary({
      headers: headers({ 1: 'DESIGN CONDITIONS,0' }),
      weather: (_, index) => ({ dryBulb: (-20 + index / 250).toFixed(3), dewPoint: -30 }),
    });
    expect(designTemperature).toEqual({
      heating99_C: -20 + 87 / 250,
      heating996_C: -20 + 35 / 250,
      basis: 'typical-year',
      source: 'from a typical year, not a design value',
    });
  });

  it.each([
    [1, 1],
    [25, 1],
    [26, 2],
    [100, 4],
  ])('below which %i %% of four hours lie is hour %i in order', (share_pct, expected) => {
    expect(coldestShare_C([3, 1, 4, 2], share_pct)).toBe(expected);
  });
});

describe('the place of a weather file', () => {
  it('gives back the mean vapor pressure in the monthly balance, above and below freezing', () => {
    const read = summary({
      weather: ({ month, hour }) => ({
        dryBulb: 2 * month - 12 + (hour > 12 ? 9 : -9),
        dewPoint: 2 * month - 24,
      }),
    });
    const place = placeOfWeather(read, 'a.epw');
    for (const [index, vapor_Pa] of read.monthlyVaporPressure_Pa.entries()) {
      const found_Pa = vaporPressure_Pa(
        place.monthlyTemperature_C[index] ?? NaN,
        place.monthlyRelativeHumidity_pct[index] ?? NaN,
      );
      // Humidity is rounded to 0.1 % of about 40 %, temperature to 0.01 K.
      expect(Math.abs(found_Pa / vapor_Pa - 1)).toBeLessThan(0.003);
      // Against the mean of the hourly saturation pressures a tenth and more is lost.
      const lost_Pa = vaporPressure_Pa(
        read.monthlyTemperature_C[index] ?? NaN,
        read.monthlyRelativeHumidity_pct[index] ?? NaN,
      );
      expect(lost_Pa / vapor_Pa).toBeLessThan(0.9);
    }
    expect(place.notes).toEqual([]);
  });

  it('cuts freezing fog, saturated over water, to saturation over ice and says so', () => {
    const read = summary({ weather: ({ month }) => (month === 1 ? { dryBulb: -20, dewPoint: -20 } : {}) });
    const place = placeOfWeather(read, 'a.epw');
    expect(place.monthlyRelativeHumidity_pct[0]).toBe(100);
    expect(place.notes).toEqual(["January: vapor pressure is cut to saturation at the month's mean"]);
    expect(place.weatherFile.designTemperature_C).toBe(-25.4);
  });

  it('raises the air of a desert to the least humidity that a case takes', () => {
    const read = summary({ weather: () => ({ dryBulb: 40, dewPoint: -40 }) });
    expect(placeOfWeather(read, 'a.epw').notes).toHaveLength(12);
    expect(placeOfWeather(read, 'a.epw').monthlyRelativeHumidity_pct[0]).toBe(1);
  });

  it('writes 0 without a sign', () => {
    const { monthlyTemperature_C } = placeOfWeather(
      summary({ weather: () => ({ dryBulb: -0.001, dewPoint: -5 }) }),
      'a.epw',
    );
    expect(Object.is(monthlyTemperature_C[0], 0)).toBe(true);
  });
});

describe('the zone that the degree days make', () => {
  // 8 K below 18 °C all year is 2,920 K·d, zone 4 in the later definition; 10 °C has no cooling degree days.
  const mild = summary({});

  it('is no matter where it has the number that counts, whatever the letter', () => {
    expect(zoneDoubt(mild, '4A', 'later')).toBeUndefined();
    expect(zoneDoubt(mild, '4C', 'earlier')).toBeUndefined();
  });

  it('is a doubt where it has not', () => {
    const doubt = zoneDoubt(mild, '6A', 'later');
    expect(doubt).toContain('2920 °C·d');
    expect(doubt).toContain('5256 °F·d');
    expect(doubt).toContain('make zone 4 by the thresholds, and zone 6A counts');
    expect(doubt).toContain('2 zones apart');
    expect(zoneDoubt(mild, '5A', 'later')).toContain('One zone apart is common');
  });

  it('is none between the two conventions', () => {
    // 3,650 by extremes (zone 5), 4,137 by hours (zone 6).
    const uneven = summary({ weather: ({ hour }) => ({ dryBulb: hour > 14 ? 16 : 0, dewPoint: -5 }) });
    expect([zoneDoubt(uneven, '5A', 'later'), zoneDoubt(uneven, '6A', 'later')]).toEqual([
      undefined,
      undefined,
    ]);
    expect(zoneDoubt(uneven, '4A', 'later')).toMatch(/make zone 5 or 6 by the thresholds/);
  });

  it('is asked of a table without a header too', () => {
    const reading = readWeatherBytes(bytesOf(tmy3Text()));
    expect(reading.ok && zoneDoubt(reading.value, '4A', 'later')).toBeUndefined();
  });
});

/**
 * Saturation pressure, dew point and humidity ratio against formulas and a library written by others.
 * Sources: ASHRAE Handbook of Fundamentals 2017 chapter 1 tables 1 to 3 (seen through the published tests of an
 * open psychrometric library); IAPWS R14-08(2011); IAPWS R7-97(2012) region 4 (coefficients from memory, their
 * verification numbers reproduced below).
 */
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  type SaturationMethod,
  dewPointFromHumidity_C,
  dewPoint_C,
  humidityRatio_kg_kg,
  relativeHumidityFromDewPoint_pct,
  saturationVaporPressure_Pa,
  stationPressure_Pa,
  vaporConcentration_kg_m3,
  vaporPressure_Pa,
} from '../../src/physics/psychrometrics.ts';
import { industrialFormula_Pa, sublimation_Pa } from '../support/iapws.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

const steps = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);

describe('the second formula of these tests is itself right', () => {
  it('ice at 230 K gives the IAPWS verification number 8.94735 Pa', () => {
    expect(sublimation_Pa(230 - 273.15)).toBeCloseTo(8.94735, 4);
  });
  it('water at 300 K gives the IAPWS-IF97 verification number 3536.58941 Pa', () => {
    expect(industrialFormula_Pa(300 - 273.15)).toBeCloseTo(3536.58941, 5);
  });
});

describe('saturation vapor pressure', () => {
  it('ashrae stays within 0.035 % of IAPWS from -60 to 50 °C (claimed 0.03 %, a rounded figure)', () => {
    for (const t of steps(-60, 50, 0.5)) {
      const reference = t < 0.01 ? sublimation_Pa(t) : industrialFormula_Pa(t);
      expect(Math.abs(saturationVaporPressure_Pa(t, 'ashrae') / reference - 1), `${t} °C`).toBeLessThan(
        3.5e-4,
      );
    }
  });

  it('iso13788 stays within 0.55 % of IAPWS from -20 to 40 °C (worst at -20 °C, 0.48 %)', () => {
    for (const t of steps(-20, 40, 0.5)) {
      const reference = t < 0.01 ? sublimation_Pa(t) : industrialFormula_Pa(t);
      expect(Math.abs(saturationVaporPressure_Pa(t) / reference - 1), `${t} °C`).toBeLessThan(5.5e-3);
    }
  });

  it('ashrae equals psychrolib from -40 to 50 °C within 1e-12 of the value: the same formula', () => {
    for (const t of steps(-40, 50, 0.25)) {
      const reference = psychrolib.GetSatVapPres(t);
      expect(Math.abs(saturationVaporPressure_Pa(t, 'ashrae') / reference - 1), `${t} °C`).toBeLessThan(
        1e-12,
      );
    }
  });

  it('is continuous at the join of ice and water', () => {
    const jump = (at: number, method: SaturationMethod): number =>
      saturationVaporPressure_Pa(at, method) / saturationVaporPressure_Pa(at - 1e-9, method) - 1;
    expect(Math.abs(jump(0, 'iso13788'))).toBeLessThan(1e-9);
    expect(Math.abs(jump(0.01, 'ashrae'))).toBeLessThan(2e-4);
  });

  it('rises all the way from -40 to 80 °C, in both formulas', () => {
    for (const method of ['iso13788', 'ashrae'] as const) {
      const values = steps(-40, 80, 0.01).map((t) => saturationVaporPressure_Pa(t, method));
      expect(values.every((value, index) => index === 0 || value > (values[index - 1] ?? 0))).toBe(true);
    }
  });

  it.each([
    [-60.1, 'iso13788'],
    [80.1, 'iso13788'],
    [-100.1, 'ashrae'],
    [200.1, 'ashrae'],
    [Number.NaN, 'ashrae'],
  ] as const)('refuses %d °C by %s', (t, method) => {
    expect(() => saturationVaporPressure_Pa(t, method)).toThrow(RangeError);
  });
});

describe('dew point', () => {
  it('equals psychrolib within 0.002 K from -40 to 50 °C and 5 to 100 % (it stops its search within 0.001 K)', () => {
    for (const t of steps(-40, 50, 2.5)) {
      for (const humidity of steps(5, 100, 5)) {
        const reference = psychrolib.GetTDewPointFromRelHum(t, humidity / 100);
        expect(
          Math.abs(dewPointFromHumidity_C(t, humidity, 'ashrae') - reference),
          `${t} °C ${humidity} %`,
        ).toBeLessThan(0.002);
      }
    }
  });

  it.each([-20, 5, 50])('of saturated air at %d °C is that temperature', (t) => {
    expect(dewPoint_C(saturationVaporPressure_Pa(t, 'ashrae'), 'ashrae')).toBeCloseTo(t, 9);
    expect(dewPoint_C(saturationVaporPressure_Pa(t))).toBeCloseTo(t, 9);
  });

  it('gives back the relative humidity', () => {
    expect(relativeHumidityFromDewPoint_pct(20, dewPointFromHumidity_C(20, 43.5))).toBeCloseTo(43.5, 9);
    expect(() => relativeHumidityFromDewPoint_pct(20, 20.1)).toThrow(RangeError);
  });

  it('refuses air without vapor and pressures beyond the range', () => {
    expect(() => dewPoint_C(0)).toThrow(RangeError);
    expect(() => dewPoint_C(1e9, 'ashrae')).toThrow(RangeError);
    expect(() => vaporPressure_Pa(20, 100.1)).toThrow(RangeError);
  });
});

describe('humidity ratio and pressure', () => {
  // ASHRAE 2017 chapter 1 table 2; tolerances of the library's own tests: the table includes the enhancement factor.
  it.each([
    [-20, 0.0006373, 0.01],
    [-5, 0.0024863, 0.005],
    [5, 0.005425, 0.005],
    [25, 0.020173, 0.005],
    [50, 0.086863, 0.01],
  ])('saturated air at %d °C holds %d kg/kg', (t, ratio, tolerance) => {
    const computed = humidityRatio_kg_kg(saturationVaporPressure_Pa(t, 'ashrae'));
    expect(Math.abs(computed / ratio - 1)).toBeLessThan(tolerance);
  });

  // ASHRAE 2017 chapter 1 table 1, printed to 1 Pa.
  it.each([
    [-500, 107478],
    [0, 101325],
    [500, 95461],
    [1000, 89875],
    [4000, 61640],
    [10000, 26436],
  ])('the standard atmosphere at %d m is %d Pa', (altitude, pressure) => {
    expect(Math.abs(stationPressure_Pa(altitude) - pressure)).toBeLessThanOrEqual(1);
  });

  it('vapor concentration follows the gas law: 17.3 g/m3 in saturated air at 20 °C (textbook value 17.3)', () => {
    expect(vaporConcentration_kg_m3(saturationVaporPressure_Pa(20, 'ashrae'), 20) * 1000).toBeCloseTo(
      17.3,
      1,
    );
  });

  it('refuses vapor pressures that are not below the air pressure', () => {
    expect(() => humidityRatio_kg_kg(101325)).toThrow(RangeError);
    expect(() => stationPressure_Pa(10001)).toThrow(RangeError);
  });
});

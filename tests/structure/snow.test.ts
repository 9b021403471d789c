import { describe, expect, it } from 'vitest';
import {
  allowableStressSnow,
  canadianRoofSnow,
  eaveIce,
  flatRoofSnow,
  lowSlopeMinimum,
  rainOnSnow,
  slopeFactor,
} from '../../src/structure/snow.ts';
import { driftHeight, driftHeight2022, snowDensity, unbalancedSnow } from '../../src/structure/snowDrift.ts';
import { feetFromMeters, metersFromFeet, pascalsFromPsf, psfFromPascals, rsiFromR } from '../../src/units.ts';

const HALF_ON_12_DEG = (Math.atan(0.5 / 12) * 180) / Math.PI;
const SIX_ON_12_DEG = (Math.atan(6 / 12) * 180) / Math.PI;
/** [N/m³] per lb/ft³, from the definitions of pound-force and foot. */
const PCF = 4.4482216152605 / 0.3048 ** 3;

describe('flat roof snow', () => {
  // S4: open unit test of ASCE 7-05, low-slope minimum included (seen-transcription).
  it.each([
    [15, 1.0, 15],
    [20, 1.0, 20],
    [25, 1.0, 20],
    [30, 1.0, 21],
    [30, 1.15, 24.15],
  ])(
    'S4: ground %d psf, importance %d gives %d psf with the minimum',
    (ground_psf, importance, expected_psf) => {
      const groundSnow_Pa = pascalsFromPsf(ground_psf);
      const flat_Pa = flatRoofSnow({
        groundSnow_Pa,
        exposureFactor: 1,
        thermalFactor: 1,
        importanceFactor: importance,
      });
      const governing_Pa = Math.max(flat_Pa, lowSlopeMinimum(groundSnow_Pa, importance, 0));
      expect(psfFromPascals(governing_Pa)).toBeCloseTo(expected_psf, 2);
    },
  );

  it('the minimum ends at 15 degrees', () => {
    expect(lowSlopeMinimum(1000, 1, 14.99)).toBeGreaterThan(0);
    expect(lowSlopeMinimum(1000, 1, 15)).toBe(0);
  });

  it('the 2022 edition leaves the importance factor out and takes 0.7 S in allowable stress', () => {
    const input = { groundSnow_Pa: 1000, exposureFactor: 1, thermalFactor: 1, importanceFactor: 1.2 };
    expect(flatRoofSnow(input)).toBeCloseTo(840, 9);
    expect(flatRoofSnow({ ...input, edition: 'asce7-22' })).toBeCloseTo(700, 9);
    expect(allowableStressSnow('asce7-22', 1000)).toBe(700);
    expect(allowableStressSnow('asce7-16', 1000)).toBe(1000);
  });

  it('a value out of range is refused, not clamped', () => {
    expect(() => slopeFactor(91, 1, false)).toThrow(RangeError);
    expect(() => slopeFactor(Number.NaN, 1, false)).toThrow(RangeError);
  });
});

describe('rain on snow', () => {
  it('S1: no surcharge with 30 psf on the ground', () => {
    expect(rainOnSnow(pascalsFromPsf(30), HALF_ON_12_DEG, metersFromFeet(150))).toBe(0);
  });
  it('5 psf on a long low roof with 20 psf on the ground, none on a short one', () => {
    expect(rainOnSnow(pascalsFromPsf(20), 2, metersFromFeet(101))).toBeCloseTo(pascalsFromPsf(5), 9);
    expect(rainOnSnow(pascalsFromPsf(20), 2, metersFromFeet(99))).toBe(0);
  });
});

describe('eave ice (limits from memory: confirm in the standard)', () => {
  const at = (resistance_R: number, ventilated: boolean, overhang_ft = 2) =>
    eaveIce({
      flat_Pa: pascalsFromPsf(35),
      resistance_m2K_W: rsiFromR(resistance_R),
      ventilated,
      overhang_m: metersFromFeet(overhang_ft),
    });
  it('S12: R-24 unventilated carries 70 psf on the 2 ft overhang', () => {
    const ice = at(24, false);
    expect(ice.triggered).toBe(true);
    expect(psfFromPascals(ice.load_Pa)).toBeCloseTo(70, 1);
    expect(feetFromMeters(ice.length_m)).toBeCloseTo(2, 9);
  });
  it('S13: R-49 is not triggered, and the load stays in view', () => {
    expect(at(49, false).triggered).toBe(false);
    expect(at(49, false).load_Pa).toBe(at(24, false).load_Pa);
  });
  it('a ventilated roof is free from R-20 on; the load reaches at most 5 ft', () => {
    expect(at(19.9, true).triggered).toBe(true);
    expect(at(20, true).triggered).toBe(false);
    expect(feetFromMeters(at(24, false, 8).length_m)).toBeCloseTo(5, 9);
  });
});

describe('unbalanced snow', () => {
  const roof = (eaveToRidge_ft: number, angle_deg: number) =>
    unbalancedSnow({
      groundSnow_Pa: pascalsFromPsf(50),
      sloped_Pa: pascalsFromPsf(35),
      eaveToRidge_m: metersFromFeet(eaveToRidge_ft),
      angle_deg,
      importanceFactor: 1,
    });
  it('S10: 50 psf, 24 ft, 6 on 12', () => {
    const snow = roof(24, SIX_ON_12_DEG);
    expect(Math.abs(feetFromMeters(snow.driftHeight_m) - 1.952)).toBeLessThan(0.01);
    expect(Math.abs(psfFromPascals(snow.surcharge_Pa) - 28.3)).toBeLessThan(0.1);
    expect(Math.abs(feetFromMeters(snow.surchargeExtent_m) - 7.36)).toBeLessThan(0.01);
    expect(psfFromPascals(snow.windward_Pa)).toBeCloseTo(10.5, 6);
  });
  it.each([31, 2.3])('S14: not required at %d degrees', (angle_deg) => {
    expect(roof(24, angle_deg)).toMatchObject({ required: false, leeward_Pa: 0, surcharge_Pa: 0 });
  });
  it('a short roof carries the ground snow on the lee side and nothing to windward', () => {
    expect(roof(20, 20)).toMatchObject({ required: true, windward_Pa: 0, surcharge_Pa: 0 });
    expect(psfFromPascals(roof(20, 20).leeward_Pa)).toBeCloseTo(50, 9);
  });
  it('S8: the 2022 drift with 50 psf, 32 ft, winter wind 0.55 is 2.851 ft', () => {
    expect(snowDensity(pascalsFromPsf(50)) / PCF).toBeCloseTo(20.5, 9);
    const height_ft = feetFromMeters(driftHeight2022(pascalsFromPsf(50), metersFromFeet(32), 0.55));
    expect(Math.abs(height_ft - 2.851)).toBeLessThan(0.001);
  });
  it('drifted snow is never heavier than 30 pcf and a drift never negative', () => {
    expect(snowDensity(pascalsFromPsf(300)) / PCF).toBeCloseTo(30, 9);
    expect(driftHeight(0, metersFromFeet(20), 1)).toBeGreaterThanOrEqual(0);
  });
});

it('S7: Canada, Ss 1 and Sr 1 kPa, flat: 1.8 kPa, serviceability 1.62 kPa (seen-secondary)', () => {
  const roof = (importanceFactor: number) =>
    canadianRoofSnow({ snow_Pa: 1000, rain_Pa: 1000, shapeFactor: 0.8, importanceFactor });
  expect(roof(1)).toBeCloseTo(1800, 6);
  expect(roof(0.9)).toBeCloseTo(1620, 6);
});

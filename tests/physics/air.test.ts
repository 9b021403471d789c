/**
 * Gap ventilation, air leakage and stored water against hand-worked values (computed: formulas evaluated apart from
 * this program; the tolerance is the rounding of the figures given).
 */
import { describe, expect, it } from 'vitest';
import { buoyancyFlow, equivalentPermeance_ng } from '../../src/physics/airGap.ts';
import {
  diffusionWater_kg,
  leakageWater_kg,
  orificeFlow_m3_s,
  stackPressure_Pa,
} from '../../src/physics/airLeakage.ts';
import { storedWater_kg_m2 } from '../../src/physics/wood.ts';
import { permsFromNanograms } from '../../src/units.ts';

const near = (computed: number, expected: number, share: number): void => {
  expect(Math.abs(computed / expected - 1)).toBeLessThan(share);
};
const slope_6_in_12 = (Math.atan(0.5) * 180) / Math.PI;
const gap = (height_m: number) => ({ height_m, length_m: 6, angle_deg: slope_6_in_12, lossCoefficient: 6 });
/** 278 K. */
const OUTDOOR_C = 4.85;

describe('the ventilated gap', () => {
  it('38 mm at 20 air changes passes as much as 1560 ng or 27.3 perm (0.5 %)', () => {
    near(equivalentPermeance_ng(20, 0.038), 1560, 0.005);
    near(permsFromNanograms(equivalentPermeance_ng(20, 0.038)), 27.3, 0.005);
  });

  it.each([
    [0.019, 1, 39],
    [0.019, 10, 390],
    [0.038, 50, 3901],
    [0.038, 200, 15604],
  ])('%d m at %i air changes passes %i ng (1.5 %: whole nanograms)', (height, changes, permeance) => {
    near(equivalentPermeance_ng(changes, height), permeance, 0.015);
  });

  it('air 3 K warmer rises at 0.213 m/s in 38 mm: 128 air changes (1 %)', () => {
    const flow = buoyancyFlow(gap(0.038), 3, OUTDOOR_C);
    near(flow.velocity_m_s, 0.213, 0.01);
    near(flow.airChanges_1_h, 128, 0.01);
  });

  it.each([
    [0.019, 1, 20],
    [0.019, 3, 55],
    [0.025, 10, 212],
    [0.05, 1, 74],
    [0.05, 10, 299],
  ])('%d m and %i K give about %i air changes (2.5 %: whole numbers near 20)', (height, excess, changes) => {
    near(buoyancyFlow(gap(height), excess, OUTDOOR_C).airChanges_1_h, changes, 0.025);
  });

  it('no warmth, no flow; a level roof neither', () => {
    expect(buoyancyFlow(gap(0.038), 0, OUTDOOR_C).velocity_m_s).toBe(0);
    expect(buoyancyFlow({ ...gap(0.038), angle_deg: 0 }, 5, OUTDOOR_C).velocity_m_s).toBe(0);
  });

  it('driving pressure and losses balance', () => {
    const flow = buoyancyFlow(gap(0.03), 4, OUTDOOR_C);
    const losses =
      (12 * 1.75e-5 * 6 * flow.velocity_m_s) / 0.03 ** 2 + (6 * 1.25 * flow.velocity_m_s ** 2) / 2;
    expect(losses).toBeCloseTo(flow.pressure_Pa, 12);
  });

  it('refuses gaps without height and negative air changes', () => {
    expect(() => equivalentPermeance_ng(1, 0)).toThrow(RangeError);
    expect(() => equivalentPermeance_ng(-1, 0.02)).toThrow(RangeError);
    expect(() => buoyancyFlow(gap(0), 1, OUTDOOR_C)).toThrow(RangeError);
  });
});

describe('air leakage beside diffusion', () => {
  const squareInch = 645.16e-6;

  it('a hole of 1 in2 at 4 Pa passes 9.995e-4 m3/s (0.1 %)', () => {
    near(orificeFlow_m3_s(squareInch, 4), 9.995e-4, 0.001);
  });

  it.each([
    [40, 0, 4, 150, 31.4, squareInch],
    [35, -5, 4, 120, 32, squareInch],
    [35, -5, 10, 120, 51, squareInch],
    [35, -5, 4, 120, 5, 100e-6],
  ])(
    '%i %% indoors, surface %i °C, %i Pa, %i days: %d kg (1 %%: two digits)',
    (humidity, surface, pressure, days, water, area) => {
      const air = {
        indoorTemperature_C: 20,
        indoorRelativeHumidity_pct: humidity,
        surfaceTemperature_C: surface,
      };
      near(leakageWater_kg(orificeFlow_m3_s(area, pressure), air, days), water, 0.015);
    },
  );

  it.each([
    [286, 3.57],
    [57, 0.71],
    [2288, 28.6],
  ])('diffusion at %i ng through a 4 by 8 ft sheet carries %d kg in 150 days (1 %%)', (permeance, water) => {
    near(diffusionWater_kg(permeance, 2.973, 324, 150), water, 0.01);
  });

  it('a surface above the dew point stays dry', () => {
    const air = { indoorTemperature_C: 20, indoorRelativeHumidity_pct: 35, surfaceTemperature_C: 10 };
    expect(leakageWater_kg(0.001, air, 100)).toBe(0);
  });

  it('6 m above the neutral plane, 30 K: 7.5 Pa by the rule of thumb 0.0415 Pa per m and K (10 %: fixed density)', () => {
    near(stackPressure_Pa(6, 20, -10), 7.5, 0.1);
    near(stackPressure_Pa(6, 30, 0), 7.5, 0.05);
    expect(stackPressure_Pa(6, 20, 20)).toBe(0);
  });
});

describe('water stored in wood', () => {
  it.each([
    [0.0159, 450, 19, 28, 0.644],
    [0.0111, 600, 0, 1, 0.067],
    [0.038, 430, 19, 28, 1.47],
  ])(
    '%d m of %i kg/m3 from %i to %i %% takes %d kg/m2 (digits given)',
    (thickness, density, from, to, water) => {
      expect(Math.abs(storedWater_kg_m2(thickness, density, from, to) - water)).toBeLessThan(0.001);
    },
  );
});

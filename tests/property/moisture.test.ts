/** Laws of the monthly condensation method, for roofs of one to six layers and any year of -30 to 35 °C. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drying } from '../../src/physics/drying.ts';
import { condensationYear } from '../../src/physics/iso13788.ts';
import {
  type MonthConditions,
  monthBalance,
  moistureModel,
  vaporPoints,
} from '../../src/physics/moistureBalance.ts';
import { vaporPressureOfLine_Pa } from '../../src/physics/vaporLine.ts';
import type { MoistureAssembly, MoistureLayer } from '../../src/physics/vaporPlanes.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const layer: fc.Arbitrary<MoistureLayer> = fc.record({
  resistance_m2K_W: number(0, 3),
  equivalentAirLayer_m: fc.oneof(number(0.01, 1), number(1, 300)),
});
const assembly: fc.Arbitrary<MoistureAssembly> = fc.record({
  insideSurface_m2K_W: fc.constant(0.1),
  outsideSurface_m2K_W: fc.constant(0.04),
  layers: fc.array(layer, { minLength: 1, maxLength: 6 }),
});
const month: fc.Arbitrary<MonthConditions> = fc.record({
  outdoorTemperature_C: number(-30, 35),
  outdoorRelativeHumidity_pct: number(20, 98),
  indoorTemperature_C: number(16, 27),
  indoorRelativeHumidity_pct: number(20, 75),
});
const year = fc.array(month, { minLength: 12, maxLength: 12 });
const turned = <T>(list: readonly T[], shift: number): T[] => [...list.slice(shift), ...list.slice(0, shift)];
const value = (list: readonly number[], index: number): number => list[index] ?? Number.NaN;

describe('one month', () => {
  it('the pressure line passes no saturation pressure', () => {
    fc.assert(
      fc.property(assembly, month, (roof, conditions) => {
        const model = moistureModel(roof);
        const points = vaporPoints(
          model,
          conditions,
          model.sites.map(() => 0),
        );
        for (const point of points.slice(1, -1)) {
          // The construction leaves points alone that are less than 1e-7 Pa below the line.
          expect(vaporPressureOfLine_Pa(points, point.airLayer_m)).toBeLessThanOrEqual(
            point.pressure_Pa + 1e-6,
          );
        }
      }),
    );
  });

  it('with no water present nothing can leave', () => {
    fc.assert(
      fc.property(assembly, month, (roof, conditions) => {
        const model = moistureModel(roof);
        const { change_kg_m2 } = monthBalance(
          model,
          conditions,
          model.sites.map(() => 0),
          30,
        );
        for (const change of change_kg_m2) expect(change).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('isothermal and no wetter inside than out, nothing condenses', () => {
    fc.assert(
      fc.property(assembly, number(0, 30), number(20, 95), number(0, 1), (roof, t, humidity, share) => {
        const conditions = {
          outdoorTemperature_C: t,
          outdoorRelativeHumidity_pct: humidity,
          indoorTemperature_C: t,
          indoorRelativeHumidity_pct: humidity * share,
        };
        const model = moistureModel(roof);
        const { held_kg_m2 } = monthBalance(
          model,
          conditions,
          model.sites.map(() => 0),
          31,
        );
        expect(Math.max(0, ...held_kg_m2)).toBe(0);
      }),
    );
  });

  it('turned inside out with the climates exchanged, the same water falls at the same planes', () => {
    fc.assert(
      fc.property(assembly, month, (roof, conditions) => {
        const mirrored: MoistureAssembly = {
          insideSurface_m2K_W: roof.outsideSurface_m2K_W,
          outsideSurface_m2K_W: roof.insideSurface_m2K_W,
          layers: [...roof.layers].reverse(),
        };
        const exchanged: MonthConditions = {
          outdoorTemperature_C: conditions.indoorTemperature_C,
          outdoorRelativeHumidity_pct: conditions.indoorRelativeHumidity_pct,
          indoorTemperature_C: conditions.outdoorTemperature_C,
          indoorRelativeHumidity_pct: conditions.outdoorRelativeHumidity_pct,
        };
        const [one, other] = [moistureModel(roof), moistureModel(mirrored)];
        const here = monthBalance(
          one,
          conditions,
          one.sites.map(() => 0),
          30,
        ).held_kg_m2;
        const there = [
          ...monthBalance(
            other,
            exchanged,
            other.sites.map(() => 0),
            30,
          ).held_kg_m2,
        ].reverse();
        here.forEach((mass, site) => {
          expect(Math.abs(mass - value(there, site))).toBeLessThan(1e-6 + 1e-6 * mass);
        });
      }),
    );
  });

  it('where nothing runs out, splitting the month changes nothing; it always ends', () => {
    fc.assert(
      fc.property(assembly, month, number(0, 2), (roof, conditions, water) => {
        const model = moistureModel(roof);
        const start = model.sites.map((_, site) => (site % 3 === 0 ? water : 0));
        const strict = monthBalance(model, conditions, start, 30);
        const split = monthBalance(model, conditions, start, 30, 'split');
        expect(split.held_kg_m2.every((mass) => Number.isFinite(mass) && mass >= 0)).toBe(true);
        const ranOut = strict.change_kg_m2.some(
          (change, site) => value(start, site) + change <= 0 && change < 0,
        );
        if (ranOut) return;
        split.held_kg_m2.forEach((mass, site) => {
          expect(mass).toBeCloseTo(value(strict.held_kg_m2, site), 9);
        });
      }),
    );
  });
});

describe('one year', () => {
  it('water at the end of a month is that of its start and its change, never below 0; all finite', () => {
    fc.assert(
      fc.property(assembly, year, (roof, months) => {
        const result = condensationYear(roof, months);
        for (const plane of result.planes) {
          for (let step = 0; step < 12; step++) {
            const index = (result.startIndex + step) % 12;
            const before = step === 0 ? 0 : value(plane.accumulated_kg_m2, (index + 11) % 12);
            const after = value(plane.accumulated_kg_m2, index);
            expect(Number.isFinite(after)).toBe(true);
            expect(after).toBeCloseTo(Math.max(0, before + value(plane.monthly_kg_m2, index)), 12);
          }
        }
        expect(result.driesOut).toBe(result.residual_kg_m2 === 0);
      }),
    );
  });

  it('vapor resistances ten times as great carry a tenth of the water', () => {
    fc.assert(
      fc.property(assembly, year, (roof, months) => {
        const tight = {
          ...roof,
          layers: roof.layers.map((each) => ({
            ...each,
            equivalentAirLayer_m: 10 * each.equivalentAirLayer_m,
          })),
        };
        const ten = 10 * condensationYear(tight, months, { startIndex: 0 }).maximum_kg_m2;
        const one = condensationYear(roof, months, { startIndex: 0 }).maximum_kg_m2;
        expect(Math.abs(ten - one)).toBeLessThan(1e-6 + 1e-6 * one);
      }),
    );
  });

  it('the calendar month in which the list begins does not matter', () => {
    fc.assert(
      fc.property(assembly, year, fc.integer({ min: 1, max: 11 }), (roof, months, shift) => {
        const one = condensationYear(roof, months);
        const other = condensationYear(roof, turned(months, shift), { firstMonth: 1 + shift });
        expect(other.driesOut).toBe(one.driesOut);
        if (!one.driesOut) return; // a year that does not dry may begin in another month of equal right
        expect(other.maximum_kg_m2).toBeCloseTo(one.maximum_kg_m2, 9);
      }),
    );
  });

  it('a tighter outer membrane never lowers the peak under it (winter wetting of a cold deck)', () => {
    const cold = fc.array(number(-25, 12), { minLength: 6, maxLength: 6 });
    fc.assert(
      fc.property(
        cold,
        number(1, 100),
        number(1, 10),
        number(30, 55),
        (temperatures, airLayer, factor, humidity) => {
          const months = temperatures.map((t) => ({
            outdoorTemperature_C: t,
            outdoorRelativeHumidity_pct: 75,
            indoorTemperature_C: 20,
            indoorRelativeHumidity_pct: humidity,
          }));
          const peak = (equivalentAirLayer_m: number): number => {
            const model = moistureModel({
              insideSurface_m2K_W: 0.1,
              outsideSurface_m2K_W: 0.04,
              layers: [
                { resistance_m2K_W: 0.08, equivalentAirLayer_m: 0.13 },
                { resistance_m2K_W: 3.7, equivalentAirLayer_m: 0.14 },
                { resistance_m2K_W: 0.02, equivalentAirLayer_m },
              ],
            });
            let held: readonly number[] = model.sites.map(() => 0);
            let most = 0;
            for (const conditions of months) {
              held = monthBalance(model, conditions, held, 30).held_kg_m2;
              most = Math.max(most, value(held, held.length - 1));
            }
            return most;
          };
          expect(peak(airLayer * factor)).toBeGreaterThanOrEqual(peak(airLayer) - 1e-9);
        },
      ),
    );
  });
});

describe('drying', () => {
  it('ends, stays finite, and its lists are as long as the months it took', () => {
    fc.assert(
      fc.property(assembly, year, fc.nat(5), number(0.1, 5), (roof, months, pick, water) => {
        const wetLayer = pick % roof.layers.length;
        const result = drying(roof, months, wetLayer, { initial_kg_m2: water, limit_months: 36 });
        expect(result.remaining_kg_m2).toHaveLength(result.monthsToDry ?? 36);
        expect(result.elsewhere_kg_m2).toHaveLength(result.monthsToDry ?? 36);
        for (const mass of [...result.remaining_kg_m2, ...result.elsewhere_kg_m2]) {
          expect(Number.isFinite(mass) && mass >= 0).toBe(true);
        }
        if (result.monthsToDry !== null) expect(result.remaining_kg_m2.at(-1)).toBe(0);
      }),
    );
  });
});

/**
 * ISO 13788: worked examples and an independent second solution. All numbers are computed (the annexes of the
 * standard could not be read): hand arithmetic where it is short, a separate program for the years. Limits of
 * mold and humidity classes are from memory of the 2012 edition.
 */
import { describe, expect, it } from 'vitest';
import { drying } from '../../src/physics/drying.ts';
import { classVaporPressure_Pa, controlledRelativeHumidity_pct } from '../../src/physics/internalHumidity.ts';
import { condensationYear, startCandidates } from '../../src/physics/iso13788.ts';
import {
  type MonthConditions,
  type MoistureModel,
  monthBalance,
  moistureModel,
  vaporPoints,
} from '../../src/physics/moistureBalance.ts';
import { saturationVaporPressure_Pa, vaporPressure_Pa } from '../../src/physics/psychrometrics.ts';
import {
  lowestSurfaceTemperature_C,
  requiredTemperatureFactor,
  temperatureFactor,
} from '../../src/physics/surface.ts';
import { condensationRates_kg_m2s, vaporPressureOfLine_Pa } from '../../src/physics/vaporLine.ts';
import {
  type MoistureAssembly,
  type MoistureLayer,
  planeTemperature_C,
  planesOf,
  sublayerCount,
} from '../../src/physics/vaporPlanes.ts';
import { relaxedRates } from '../support/relaxation.ts';

const layer = (thickness_m: number, conductivity_W_mK: number, factor: number): MoistureLayer => ({
  resistance_m2K_W: thickness_m / conductivity_W_mK,
  equivalentAirLayer_m: thickness_m * factor,
});
const films = { insideSurface_m2K_W: 0.1, outsideSurface_m2K_W: 0.04 };
const membrane = layer(0.004, 0.23, 50000);
const gypsum = layer(0.0127, 0.16, 10);
const osb = layer(0.0159, 0.13, 50);
const batt = layer(0.14, 0.038, 1);
const insideOnly: MoistureAssembly = { ...films, layers: [gypsum, batt, osb, membrane] };
const split: MoistureAssembly = {
  ...films,
  layers: [
    gypsum,
    batt,
    osb,
    layer(0.001, 0.23, 50000),
    layer(0.1, 0.026, 60),
    layer(0.0111, 0.13, 50),
    membrane,
  ],
};

/** Invented climate like zone 6: outdoor °C and %, indoor °C and %, January first. */
const coldYear: readonly MonthConditions[] = (
  [
    [-9, 72, 20, 35],
    [-6.5, 71, 20, 35],
    [0, 68, 20, 35],
    [8, 62, 20, 40],
    [14.5, 60, 20, 50],
    [20, 64, 23, 55],
    [22.5, 66, 24, 55],
    [21, 69, 24, 55],
    [16, 70, 21, 50],
    [9, 68, 20, 40],
    [1, 74, 20, 35],
    [-7, 76, 20, 35],
  ] as const
).map(([outdoor, outdoorHumidity, indoor, indoorHumidity]) => ({
  outdoorTemperature_C: outdoor,
  outdoorRelativeHumidity_pct: outdoorHumidity,
  indoorTemperature_C: indoor,
  indoorRelativeHumidity_pct: indoorHumidity,
}));

const grams = (values: readonly number[] | undefined): number[] =>
  (values ?? []).map((value) => Math.round(value * 1e5) / 100);

describe('division into sub-layers', () => {
  it.each([
    [0, 1],
    [0.25, 1],
    [0.2501, 2],
    [3, 12],
    [0.12 / 0.04, 12],
    [3.6842, 15],
  ])('R %d is cut into %i', (resistance, count) => {
    expect(sublayerCount(resistance)).toBe(count);
  });

  it('a plane inside a layer gives its place from the inner face', () => {
    const { planes } = planesOf({
      ...films,
      layers: [{ resistance_m2K_W: 0.75, equivalentAirLayer_m: 3 }, osb],
    });
    expect(planes.map(({ afterLayer, within_pct }) => [afterLayer, within_pct])).toEqual([
      [0, 100 / 3],
      [0, 200 / 3],
      [0, undefined],
    ]);
  });
});

describe('one block of 90 days, worked by hand', () => {
  // Outside to inside: R 0.10 s_d 2.0; insulation R 3.0 s_d 0.12; lining R 0.05 s_d 0.10; DIN 4108-3 climate.
  const assembly: MoistureAssembly = {
    ...films,
    layers: [
      { resistance_m2K_W: 0.05, equivalentAirLayer_m: 0.1 },
      { resistance_m2K_W: 3, equivalentAirLayer_m: 0.12 },
      { resistance_m2K_W: 0.1, equivalentAirLayer_m: 2 },
    ],
  };
  const winter: MonthConditions = {
    outdoorTemperature_C: -5,
    outdoorRelativeHumidity_pct: 80,
    indoorTemperature_C: 20,
    indoorRelativeHumidity_pct: 50,
  };
  const model = moistureModel(assembly);
  const dry = model.sites.map(() => 0);

  it('5.063 kg/m2 condense under the outer layer and nothing elsewhere (0.1 %: four digits by hand)', () => {
    const { held_kg_m2 } = monthBalance(model, winter, dry, 90);
    const wet = held_kg_m2.filter((mass) => mass > 0);
    expect(wet).toHaveLength(1);
    expect(held_kg_m2.at(-1)).toBe(wet[0]);
    expect(Math.abs((wet[0] ?? 0) / 5.063 - 1)).toBeLessThan(1e-3);
  });

  it('the plane is at -3.936 °C and 439.26 Pa', () => {
    const plane = model.set.planes.at(-1);
    if (!plane) throw new Error('no plane');
    const temperature = planeTemperature_C(model.set, plane, 20, -5);
    expect(temperature).toBeCloseTo(-3.936, 3);
    expect(saturationVaporPressure_Pa(temperature)).toBeCloseTo(439.26, 2);
  });

  it.each([
    [2000, 6.277],
    [1700, 3.923],
  ])('held at %d Pa between 1200 Pa it loses %d kg/m2 in 90 days (0.1 %)', (saturation, loss) => {
    const rates = condensationRates_kg_m2s([
      { airLayer_m: 0, pressure_Pa: 1200, held: true },
      { airLayer_m: 0.22, pressure_Pa: saturation, held: true },
      { airLayer_m: 2.22, pressure_Pa: 1200, held: true },
    ]);
    expect(Math.abs(((rates[1] ?? 0) * -90 * 86400) / loss - 1)).toBeLessThan(1e-3);
  });

  it('while dry the flux is delta0 (pi - pe) / s_dT through every layer', () => {
    const warm = { ...winter, outdoorTemperature_C: 15 };
    const points = vaporPoints(model, warm, dry);
    const flux = (from: number, to: number): number =>
      (2e-10 * (vaporPressureOfLine_Pa(points, from) - vaporPressureOfLine_Pa(points, to))) / (to - from);
    const whole = (2e-10 * (vaporPressure_Pa(20, 50) - vaporPressure_Pa(15, 80))) / 2.22;
    expect(Math.abs(flux(0.02, 0.05) / whole - 1)).toBeLessThan(1e-12);
    expect(Math.abs(flux(1.02, 1.9) / whole - 1)).toBeLessThan(1e-12);
  });
});

describe('twelve months, two programs (grams, printed to 0.01)', () => {
  it('insulation inside only, tight membrane: the deck takes up 3.15 kg/m2 by March and is dry in July', () => {
    const year = condensationYear(insideOnly, coldYear);
    expect(year.startIndex).toBe(10);
    const [deck, outer] = year.planes;
    expect(deck?.afterLayer).toBe(1);
    expect(grams(deck?.monthly_kg_m2)).toEqual([
      988.52, 759.18, 315.83, -361.31, -1031.45, -1585.18, -2201.68, 0, 0, 0, 215.48, 872.36,
    ]);
    expect(grams(deck?.accumulated_kg_m2)).toEqual([
      2076.37, 2835.54, 3151.37, 2790.07, 1758.62, 173.43, 0, 0, 0, 0, 215.48, 1087.84,
    ]);
    expect(outer?.afterLayer).toBe(2);
    expect(grams(outer?.monthly_kg_m2)).toEqual([
      15.59, 15.56, 18.25, 16.56, 10.28, 6.4, 2.58, -431.78, 0, 0, 17.92, 16.94,
    ]);
    expect(grams(outer?.accumulated_kg_m2)).toEqual([
      50.45, 66.01, 84.26, 100.82, 111.1, 117.51, 120.08, 0, 0, 0, 17.92, 34.86,
    ]);
    expect(year.verdict).toBe('dries-out');
  });

  it('split insulation: 15 g/m2 under the outer membrane, the deck stays dry', () => {
    const year = condensationYear(split, coldYear);
    expect(year.planes).toHaveLength(1);
    expect(year.planes[0]?.afterLayer).toBe(5);
    expect(grams(year.planes[0]?.monthly_kg_m2)).toEqual([
      4.69, 3.6, 1.33, -2.37, -6.3, -9.35, 0, 0, 0, 0, 0.94, 4.18,
    ]);
    expect(grams(year.planes[0]?.accumulated_kg_m2)).toEqual([
      9.81, 13.41, 14.74, 12.37, 6.07, 0, 0, 0, 0, 0, 0.94, 5.12,
    ]);
  });

  it('the wet layer of a deck under a tight membrane is dry in 2 months, under wood fiber in 1', () => {
    const plywood = layer(0.0159, 0.13, 100);
    const fromOctober = [...coldYear.slice(9), ...coldYear.slice(0, 9)];
    const tight: MoistureAssembly = {
      ...films,
      layers: [
        gypsum,
        plywood,
        { resistance_m2K_W: 0.00435, equivalentAirLayer_m: 50 },
        layer(0.1, 0.026, 60),
        layer(0.0111, 0.13, 50),
        membrane,
      ],
    };
    const open: MoistureAssembly = {
      ...films,
      layers: [gypsum, plywood, layer(0.1, 0.043, 5), { resistance_m2K_W: 0, equivalentAirLayer_m: 0.05 }],
    };
    const slow = drying(tight, fromOctober, 1, { firstMonth: 10 });
    expect(slow.monthsToDry).toBe(2);
    expect((slow.remaining_kg_m2[0] ?? 0) * 1000).toBeCloseTo(221.6, 1);
    expect(slow.elsewhere_kg_m2.at(-1)).toBeGreaterThan(0);
    expect(drying(open, fromOctober, 1, { firstMonth: 10 }).monthsToDry).toBe(1);
  });

  it('a very tight layer does not dry within its limit', () => {
    const tight: MoistureAssembly = {
      ...films,
      layers: [{ resistance_m2K_W: 0.1, equivalentAirLayer_m: 200 }],
    };
    const result = drying(tight, coldYear, 0, { limit_months: 24 });
    expect(result.monthsToDry).toBeNull();
    expect(result.remaining_kg_m2).toHaveLength(24);
  });

  it('a layer between two tight sheets gets a dry center, but its water sits at its faces', () => {
    const trapped: MoistureAssembly = { ...films, layers: [membrane, osb, membrane] };
    const result = drying(trapped, coldYear, 1);
    expect(result.monthsToDry).not.toBeNull();
    expect(result.elsewhere_kg_m2.at(-1)).toBeGreaterThan(0.9);
  });

  it('refuses a wet layer that is open to the air or does not exist', () => {
    const bare: MoistureAssembly = {
      ...films,
      layers: [{ resistance_m2K_W: 1, equivalentAirLayer_m: 0 }, osb],
    };
    expect(() => drying(bare, coldYear, 0)).toThrow(RangeError);
    expect(() => drying(bare, coldYear, 2)).toThrow(RangeError);
    expect(() => drying(bare, coldYear.slice(1), 1)).toThrow(RangeError);
    expect(() => condensationYear(bare, coldYear, { firstMonth: 13 })).toThrow(RangeError);
    expect(() => condensationYear(bare, coldYear, { firstMonth: 1.5 })).toThrow(RangeError);
  });

  it('water that comes in every month accumulates', () => {
    const cold = {
      outdoorTemperature_C: -15,
      outdoorRelativeHumidity_pct: 80,
      indoorTemperature_C: 20,
      indoorRelativeHumidity_pct: 50,
    };
    const year = condensationYear(
      insideOnly,
      Array.from({ length: 12 }, () => cold),
    );
    expect(year.verdict).toBe('accumulates');
    expect(year.residual_kg_m2).toBeGreaterThan(0);
    expect(year.maximum_kg_m2).toBeLessThanOrEqual(year.maximumTotal_kg_m2);
  });

  it('a year that begins where it is told begins there', () => {
    const year = condensationYear(insideOnly, coldYear, { startIndex: 0 });
    expect(year.startIndex).toBe(0);
    expect(year.planes[0]?.accumulated_kg_m2[0]).toBeCloseTo(year.planes[0]?.monthly_kg_m2[0] ?? 0, 12);
  });

  it('splitting the month where the water runs out changes the month of drying only', () => {
    const strict = condensationYear(insideOnly, coldYear);
    const conserving = condensationYear(insideOnly, coldYear, { exhaustion: 'split' });
    const until = (year: typeof strict): number[] => grams(year.planes[0]?.accumulated_kg_m2.slice(0, 6));
    expect(until(conserving)).toEqual(until(strict));
    expect(conserving.planes[0]?.monthly_kg_m2[6]).toBeCloseTo(-0.17343, 5);
    expect(conserving.driesOut).toBe(true);
  });
});

describe('layers without vapor resistance', () => {
  const air: MoistureLayer = { resistance_m2K_W: 0.16, equivalentAirLayer_m: 0 };

  it('beside a face they are open to that air and hold nothing', () => {
    const { layers } = insideOnly;
    const open = condensationYear({ ...films, layers: [air, ...layers, air] }, coldYear);
    expect(open.planes.map((plane) => plane.afterLayer)).toEqual([2, 3]);
  });

  it('between layers the water sits on the colder side', () => {
    const gap: MoistureAssembly = { ...films, layers: [gypsum, batt, air, osb, membrane] };
    const year = condensationYear(gap, coldYear);
    expect(year.planes[0]?.afterLayer).toBe(2);
  });
});

describe('start of the year', () => {
  const model = (assembly: MoistureAssembly): MoistureModel => moistureModel(assembly);
  it('is the first month with condensation after one without', () => {
    expect(startCandidates(model(insideOnly), coldYear)).toEqual([10]);
  });
  it('does not exist when no month condenses', () => {
    const open: MoistureAssembly = { ...films, layers: [membrane, batt] };
    expect(startCandidates(model(open), coldYear)).toEqual([]);
    expect(condensationYear(open, coldYear)).toMatchObject({
      verdict: 'none',
      driesOut: true,
      maximum_kg_m2: 0,
    });
  });
});

describe('an independent second solution: projected relaxation', () => {
  it.each([
    ['insulation inside only', insideOnly],
    ['split insulation', split],
  ])('%s: every month of the year agrees to 0.1 g/m2', (_, assembly) => {
    const model = moistureModel(assembly);
    const days = [30, 31, 31, 28, 31, 30, 31, 30, 31, 31, 30, 31];
    const fromNovember = [...coldYear.slice(10), ...coldYear.slice(0, 10)];
    let held: readonly number[] = model.sites.map(() => 0);
    let relaxed: readonly number[] = held;
    let most = 0;
    fromNovember.forEach((month, index) => {
      const duration = (days[index] ?? 0) * 86400;
      const rates = relaxedRates(
        vaporPoints(
          model,
          month,
          relaxed.map((mass) => (mass > 1e-7 ? mass : 0)),
        ),
      );
      relaxed = relaxed.map((mass, site) => Math.max(0, mass + (rates[site + 1] ?? 0) * duration));
      held = monthBalance(model, month, held, days[index] ?? 0).held_kg_m2;
      most = Math.max(most, ...held.map((mass, site) => Math.abs(mass - (relaxed[site] ?? 0))));
    });
    expect(most).toBeLessThan(1e-4);
  });
});

describe('indoor humidity and the surface check', () => {
  it('20 °C, 1168.5 Pa, -5 °C outdoors: 12.62 °C and a factor of 0.705 against mold (hand-worked)', () => {
    const lowest = lowestSurfaceTemperature_C(1168.5, 'mold');
    expect(lowest).toBeCloseTo(12.62, 2);
    expect(requiredTemperatureFactor(lowest, 20, -5)).toBeCloseTo(0.705, 3);
    expect(lowestSurfaceTemperature_C(1168.5, 'condensation')).toBeCloseTo(9.27, 2);
  });

  it('a roof of U 0.2 keeps a factor of 0.95 with R 0.25 inside', () => {
    expect(temperatureFactor(0.2)).toBeCloseTo(0.95, 12);
    expect(() => temperatureFactor(5)).toThrow(RangeError);
    expect(requiredTemperatureFactor(2, 20, 5)).toBe(0);
    expect(() => requiredTemperatureFactor(12, 5, 5)).toThrow(RangeError);
  });

  it('class 2 adds 594 Pa at 0 °C and below, half at 10 °C, nothing from 20 °C on', () => {
    const excess = (outdoor: number): number => classVaporPressure_Pa(2, outdoor, 300, 24) - 300;
    expect([-10, 0, 10, 20, 25].map((t) => Math.round(excess(t)))).toEqual([594, 594, 297, 0, 0]);
  });

  it('never gives more than saturated air, and a set point gains five points', () => {
    expect(classVaporPressure_Pa(4, 0, 2000, 20)).toBe(saturationVaporPressure_Pa(20));
    expect([30, 97].map(controlledRelativeHumidity_pct)).toEqual([35, 100]);
  });
});

/** Invented numbers for the plots: within what a roof may give, and at its edges. */
import fc from 'fast-check';
import type { AirLeakage, BridgeLoss } from '../../src/evaluation/heatMoisture.ts';
import { airLeakPlot } from '../../src/plot/airLeak.ts';
import { condensatePlot, type Condensate } from '../../src/plot/condensate.ts';
import { deckMonthsPlot, type DeckMonths } from '../../src/plot/deckMonths.ts';
import { dryingPlot, type DryingCurves } from '../../src/plot/drying.ts';
import { heatLossPlot, type HeatLoss } from '../../src/plot/heatLoss.ts';
import type { Plot, PlotOptions } from '../../src/plot/plot.ts';
import { profilePlot, type SectionProfile } from '../../src/plot/profile.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const twelve = (each: fc.Arbitrary<number>): fc.Arbitrary<number[]> =>
  fc.array(each, { minLength: 12, maxLength: 12 });
const words = ['deck', 'oriented strand board', 'graphite-enhanced expanded polystyrene board', 'paint'];
const name = fc.constantFrom(...words);

export const anyDeckMonths: fc.Arbitrary<DeckMonths> = fc.record({
  plane: fc.record({
    id: fc.constant('deck-underside' as const),
    after: fc.constant('cavity'),
    temperature_C: twelve(between(-30, 40)),
    maximumIndoor_pct: twelve(between(0, 100)),
  }),
  outdoor_C: twelve(between(-45, 40)),
  indoor: fc.record({
    basis: fc.constant('fixed' as const),
    humidityClass: fc.constant(null),
    relativeHumidity_pct: twelve(between(10, 90)),
    dewPoint_C: twelve(between(-15, 25)),
  }),
});

const bridgeIds: readonly BridgeLoss['id'][] = [
  'clear',
  'framing',
  'eave-band',
  'rake-band',
  'nailers',
  'panel-blocking',
  'screws',
  'air-voids',
];
export const anyHeatLoss: fc.Arbitrary<HeatLoss> = fc
  .array(fc.record({ part: between(0, 0.3), what: name }), { minLength: 1, maxLength: bridgeIds.length })
  .map((parts) => {
    const whole = 0.01 + parts.reduce((sum, { part }) => sum + part, 0);
    return {
      transmittance_W_m2K: whole,
      effectiveResistance_m2K_W: 1 / whole,
      bridges: parts.map(({ part, what }, i) => {
        const own = i === 0 ? part + 0.01 : part;
        return {
          id: bridgeIds[i] ?? 'clear',
          what,
          transmittance_W_m2K: own,
          share_pct: (100 * own) / whole,
        };
      }),
    };
  });

const sumOf = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

const anySurface = (id: 'deck' | 'cold-side'): fc.Arbitrary<AirLeakage['deck']> =>
  fc
    .record({
      leak: twelve(between(0, 5)),
      diffusion: twelve(between(0, 5)),
      share: between(0, 1),
      isDry: fc.boolean(),
    })
    .map(({ leak, diffusion, share, isDry }) => {
      const by = isDry ? leak.map(() => 0) : leak;
      const through = diffusion.map((value) => (isDry ? 0 : value * share ** 3));
      return {
        id,
        after: id === 'deck' ? 'cavity' : 'insulation-2',
        monthlyLeak_kg: by,
        seasonLeak_kg: sumOf(by),
        monthlyDiffusion_kg: through,
        seasonDiffusion_kg: sumOf(through),
        seasonRate_kg_m2: 0.1,
      };
    });

export const anyAirLeak: fc.Arbitrary<AirLeakage> = fc
  .record({ deck: anySurface('deck'), coldSide: anySurface('cold-side') })
  .map(({ deck, coldSide }) => ({
    hole_m2: 0.00064516,
    pressure_Pa: 4,
    flow_m3_s: 0.001,
    sheet_m2: 2.97,
    rate_m3_sm2: 3e-5,
    deck,
    coldSide,
    known: 'our judgement',
    source: 'OUR-JUDGEMENT',
  }));

const anyPlane = (after: string): fc.Arbitrary<Condensate['planes'][number]> =>
  fc
    .record({ monthly: twelve(between(-0.4, 0.4)), limit: between(0.01, 3), where: name })
    .map(({ monthly, limit, where }) => {
      let sum = 0;
      const accumulated = monthly.map((value) => (sum = Math.max(0, sum + value)));
      const peak = Math.max(...accumulated);
      return {
        after,
        within_pct: null,
        monthly_kg_m2: monthly,
        accumulated_kg_m2: accumulated,
        peak_kg_m2: peak,
        limit_kg_m2: limit,
        meetsLimit: peak <= limit,
        limitReason: 'invented',
        source: 'OUR-JUDGEMENT',
        where: `outside of the ${where}`,
      };
    });
export const anyCondensate: fc.Arbitrary<Condensate> = fc.integer({ min: 1, max: 3 }).chain((count) =>
  fc.record({
    planes: fc.tuple(...Array.from({ length: count }, (_, i) => anyPlane(`layer-${String(i)}`))),
  }),
);

const anyCurve = fc
  .record({
    dries: fc.boolean(),
    months: fc.integer({ min: 1, max: 24 }),
    falls: fc.array(between(0, 1), { minLength: 24, maxLength: 24 }),
    share: between(0, 1),
  })
  .map(({ dries, months, falls, share }) => {
    const count = dries ? months : 24;
    const whole = falls.slice(0, count).reduce((a, b) => a + b, 0.001);
    let left = 1;
    const remaining = Array.from({ length: count }, (_, i) => {
      left = Math.max(0, left - (falls[i] ?? 0) / (dries ? whole : 2 * whole));
      return dries && i === count - 1 ? 0 : left;
    });
    const elsewhere = remaining.map((value) => (1 - value) * share);
    return {
      startMonth: 10,
      initial_kg_m2: 1,
      monthsToDry: dries ? count : null,
      limit_months: 24,
      remaining_kg_m2: remaining,
      elsewhere_kg_m2: elsewhere,
      left_kg_m2: (remaining.at(-1) ?? 0) + (elsewhere.at(-1) ?? 0),
      leftAfter: 'deck',
    };
  });
const kinds = ['unvented', 'vented furring', 'drainage mat', 'panel gap'] as const;
export const anyDrying: fc.Arbitrary<DryingCurves> = fc
  .array(anyCurve, { minLength: 1, maxLength: kinds.length })
  .map((curves) => ({
    name: 'drying-compared' as const,
    title: 'Water under the underlayment, by kind of ventilation',
    lines: curves.map((curve, i) => ({
      id: `kind-${String(i)}`,
      what: kinds[i] ?? '',
      drying: { ...curve, place: 'deck' as const, layer: 'deck' },
      leftWhere: 'outside of the oriented strand board',
    })),
  }));

export const anyProfile: fc.Arbitrary<SectionProfile> = fc
  .record({
    layers: fc.array(
      fc.record({
        name,
        material: fc.constantFrom(null, 'xps', 'osb', 'gypsum', 'glass-fiber', 'membrane'),
        thickness_m: fc.constantFrom(0, 0.0002, 0.0127, 0.05, 0.235),
        parts: fc.integer({ min: 1, max: 4 }),
        fall: between(0, 8),
      }),
      { minLength: 2, maxLength: 13 },
    ),
    month: fc.integer({ min: 1, max: 12 }),
    dewPoint: between(-5, 20),
    isWet: fc.boolean(),
  })
  .map(({ layers, month, dewPoint, isWet }) => {
    let depth = 0;
    let t = 20;
    const point = (after: string) => ({
      after,
      depth_m: depth,
      equivalentAirLayer_m: depth * 10,
      temperature_C: t,
      vaporPressure_Pa: Math.max(50, 40 * (t + 20)),
      saturationPressure_Pa: Math.max(60, 80 * (t + 20)),
    });
    const points = [point('inside-surface')];
    // A roof is never without thickness: the last layer always has some.
    const thick = layers.map((layer, i) =>
      i === layers.length - 1 ? { ...layer, thickness_m: 0.1 } : layer,
    );
    thick.forEach((layer, i) => {
      for (let part = 0; part < layer.parts; part += 1) {
        depth += layer.thickness_m / layer.parts;
        t -= layer.fall / layer.parts;
        points.push(point(`layer-${String(i)}`));
      }
    });
    const wet = Math.floor(layers.length / 2);
    return {
      profile: { month, points },
      layers: thick.map((layer, i) => ({
        id: `layer-${String(i)}`,
        name: layer.name,
        material: layer.material,
      })),
      planes: isWet
        ? [
            {
              after: `layer-${String(wet)}`,
              within_pct: null,
              monthly_kg_m2: Array<number>(12).fill(0.1),
              accumulated_kg_m2: Array<number>(12).fill(0.2),
              peak_kg_m2: 0.2,
              limit_kg_m2: 0.5,
              meetsLimit: true,
              limitReason: 'invented',
              source: 'OUR-JUDGEMENT',
              where: `outside of the ${thick[wet]?.name ?? ''}`,
            },
          ]
        : [],
      indoorDewPoint_C: dewPoint,
    };
  });

export interface Kind {
  readonly name: string;
  readonly plot: fc.Arbitrary<(options: PlotOptions) => Plot>;
}
const kind = <T>(of: string, data: fc.Arbitrary<T>, plot: (one: T, options: PlotOptions) => Plot): Kind => ({
  name: of,
  plot: data.map((one) => (options) => plot(one, options)),
});
/** Every plot with the numbers it may be given. */
export const anyPlots: readonly Kind[] = [
  kind('heat-loss', anyHeatLoss, heatLossPlot),
  kind('deck-months', anyDeckMonths, deckMonthsPlot),
  kind('profile', anyProfile, profilePlot),
  kind('condensate', anyCondensate, condensatePlot),
  kind('air-leak', anyAirLeak, airLeakPlot),
  kind('drying', anyDrying, dryingPlot),
];

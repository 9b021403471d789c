/**
 * Heat and vapor through layers, and the monthly condensation step, against networks of conductances solved by a
 * general numerical library. Only the physics is shared; the code under test uses sums, a hull and no matrix.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elementResistance } from '../../src/physics/iso6946.ts';
import { moistureModel, monthBalance, vaporPoints } from '../../src/physics/moistureBalance.ts';
import { interfaceTemperatures_C } from '../../src/physics/thermal.ts';
import {
  AIR_PERMEABILITY_KG_MSPA,
  condensationRates_kg_m2s,
  vaporPressureOfLine_Pa,
  type VaporPoint,
} from '../../src/physics/vaporLine.ts';
import { chain, networkSolution } from './network.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const value = (list: readonly number[], index: number): number => list[index] ?? Number.NaN;

describe('steady lines through 1 to 12 layers', () => {
  it('temperatures at every interface, resistances 0.01 to 10 m2K/W, -40 to 80 °C, within 1e-9 K', () => {
    fc.assert(
      fc.property(
        fc.array(number(0.01, 10), { minLength: 1, maxLength: 12 }),
        number(-40, 80),
        number(-40, 80),
        (resistances, inside_C, outside_C) => {
          const ends = new Map([
            [0, inside_C],
            [resistances.length, outside_C],
          ]);
          const { potentials } = networkSolution(resistances.length + 1, chain(resistances), ends);
          interfaceTemperatures_C(inside_C, outside_C, resistances).forEach((temperature_C, node) => {
            expect(Math.abs(temperature_C - value(potentials, node))).toBeLessThan(1e-9);
          });
        },
      ),
    );
  });

  it('vapor pressures where nothing condenses, air layers 0.01 to 300 m, within 1e-7 Pa', () => {
    fc.assert(
      fc.property(
        fc.array(number(0.01, 300), { minLength: 1, maxLength: 12 }),
        number(10, 3000),
        number(10, 3000),
        (layers, inside_Pa, outside_Pa) => {
          const ends = new Map([
            [0, inside_Pa],
            [layers.length, outside_Pa],
          ]);
          const { potentials } = networkSolution(layers.length + 1, chain(layers), ends);
          const total = layers.reduce((sum, layer) => sum + layer, 0);
          const points: VaporPoint[] = [
            { airLayer_m: 0, pressure_Pa: inside_Pa, held: true },
            { airLayer_m: total, pressure_Pa: outside_Pa, held: true },
          ];
          let place = 0;
          layers.slice(0, -1).forEach((layer, index) => {
            place += layer;
            const here = vaporPressureOfLine_Pa(points, place);
            expect(Math.abs(here - value(potentials, index + 1))).toBeLessThan(1e-7); // rounding of 3000 Pa where conductances differ by 30,000
          });
        },
      ),
    );
  });
});

const bridged = fc.record({ share: number(0.02, 0.98), one: number(0.05, 6), other: number(0.05, 6) });

describe('the combined method, 1 to 5 layers of two paths each', () => {
  it('both limits are networks: isothermal planes, and paths that never meet, within 1e-10 of the value', () => {
    fc.assert(
      fc.property(fc.array(bridged, { minLength: 1, maxLength: 5 }), (layers) => {
        const element = elementResistance({
          insideSurface_m2K_W: 0.1,
          outsideSurface_m2K_W: 0.04,
          layers: layers.map(({ share, one, other }) => ({
            paths: [
              { share, resistance_m2K_W: one },
              { share: 1 - share, resistance_m2K_W: other },
            ],
          })),
        });
        const ends = (last: number) =>
          new Map([
            [0, 1],
            [last, 0],
          ]);
        const last = layers.length + 2;
        const planes = networkSolution(
          last + 1,
          [
            { from: 0, to: 1, conductance: 1 / 0.1 },
            ...layers.flatMap(({ share, one, other }, index) => [
              { from: index + 1, to: index + 2, conductance: share / one },
              { from: index + 1, to: index + 2, conductance: (1 - share) / other },
            ]),
            { from: last - 1, to: last, conductance: 1 / 0.04 },
          ],
          ends(last),
        );
        const lower = 1 / value(planes.inflows, last);
        const flows = Array.from({ length: 2 ** layers.length }, (_, paths) => {
          const area = layers.reduce(
            (product, { share }, bit) => product * ((paths >> bit) & 1 ? share : 1 - share),
            1,
          );
          const way = layers.map(({ one, other }, bit) => ((paths >> bit) & 1 ? one : other));
          return (
            area * value(networkSolution(last + 1, chain([0.1, ...way, 0.04]), ends(last)).inflows, last)
          );
        });
        const upper = 1 / flows.reduce((sum, flow) => sum + flow, 0);
        expect(Math.abs(element.lowerLimit_m2K_W / lower - 1)).toBeLessThan(1e-10);
        expect(Math.abs(element.upperLimit_m2K_W / upper - 1)).toBeLessThan(1e-10);
      }),
      { numRuns: 50 },
    );
  });
});

/**
 * The condensation step as a linear system with fixed planes. Which planes are fixed is found by trying: fix where
 * the free solution passes saturation, let go where a dry plane would have to give water (a primal-dual active set).
 */
function ratesByNetwork_kg_m2s(points: readonly VaporPoint[]): number[] {
  const layers = points.slice(1).map((point, index) => point.airLayer_m - (points[index]?.airLayer_m ?? 0));
  const links = chain(layers.map((layer) => layer / AIR_PERMEABILITY_KG_MSPA));
  let active = points.map((point) => point.held);
  for (let round = 0; round <= 4 * points.length; round++) {
    const fixed = new Map(
      points.flatMap((point, node): [number, number][] => (active[node] ? [[node, point.pressure_Pa]] : [])),
    );
    const { potentials, inflows } = networkSolution(points.length, links, fixed);
    const next = points.map(
      (point, node) =>
        point.held || (active[node] ? value(inflows, node) > 0 : value(potentials, node) > point.pressure_Pa),
    );
    if (next.every((on, node) => on === active[node]))
      return points.map((_, node) =>
        active[node] && node > 0 && node < points.length - 1 ? value(inflows, node) : 0,
      );
    active = next;
  }
  throw new Error('the fixed planes did not settle');
}

const assembly = fc.record({
  insideSurface_m2K_W: fc.constant(0.1),
  outsideSurface_m2K_W: fc.constant(0.04),
  layers: fc.array(
    fc.record({
      resistance_m2K_W: number(0.01, 2),
      equivalentAirLayer_m: fc.oneof(number(0.01, 1), number(1, 300)),
    }),
    { minLength: 2, maxLength: 5 },
  ),
});
const month = fc.record({
  outdoorTemperature_C: number(-30, 35),
  outdoorRelativeHumidity_pct: number(20, 98),
  indoorTemperature_C: number(16, 27),
  indoorRelativeHumidity_pct: number(20, 75),
});
const DAYS = 30;
const SECONDS = DAYS * 86400;
/** [kg/m2] the hull leaves planes alone within 1e-7 Pa of the line: 2e-10 of that over 1 mm of air layer, a month. */
const TOUCH_KG_M2 = (2 * AIR_PERMEABILITY_KG_MSPA * 1e-7 * SECONDS) / 0.001;

describe('the monthly condensation step, 2 to 5 layers, any month of -30 to 35 °C', () => {
  it('rates at every plane, dry or with water at some, are those of the linear system', () => {
    fc.assert(
      fc.property(assembly, month, fc.array(fc.boolean(), { maxLength: 6 }), (roof, conditions, wet) => {
        const model = moistureModel(roof);
        const held = model.sites.map((_, site) => (wet[site % Math.max(1, wet.length)] ? 0.5 : 0));
        const points = vaporPoints(model, conditions, held);
        const solved = ratesByNetwork_kg_m2s(points);
        condensationRates_kg_m2s(points).forEach((rate, node) => {
          const off_kg_m2 = Math.abs(rate - value(solved, node)) * SECONDS;
          expect(off_kg_m2).toBeLessThan(TOUCH_KG_M2 + 1e-9 * Math.abs(rate) * SECONDS);
        });
      }),
    );
  });

  it('a year of twelve steps ends with the same water', () => {
    fc.assert(
      fc.property(assembly, fc.array(month, { minLength: 12, maxLength: 12 }), (roof, months) => {
        const model = moistureModel(roof);
        let ours: readonly number[] = model.sites.map(() => 0);
        let theirs = [...ours];
        for (const conditions of months) {
          ours = monthBalance(model, conditions, ours, DAYS).held_kg_m2;
          const rates = ratesByNetwork_kg_m2s(vaporPoints(model, conditions, theirs)).slice(1, -1);
          theirs = theirs.map((mass, site) => Math.max(0, mass + value(rates, site) * SECONDS));
          // Rounding may leave a trace where the other has none; a trace is then told apart from water.
          ours = ours.map((mass) => (mass < 1e-9 ? 0 : mass));
          theirs = theirs.map((mass) => (mass < 1e-9 ? 0 : mass));
        }
        ours.forEach((mass, site) => {
          expect(Math.abs(mass - value(theirs, site))).toBeLessThan(12 * TOUCH_KG_M2 + 1e-9 * mass);
        });
      }),
      { numRuns: 50 },
    );
  });
});

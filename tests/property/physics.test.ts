/** Laws that the physics keeps for any input of the stated domain. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { equivalentPermeance_ng } from '../../src/physics/airGap.ts';
import {
  DAYS_OF_MONTHS,
  degreeDaysFromMonthlyMeans_Kd,
  threeColdestMonths,
} from '../../src/physics/climate.ts';
import {
  DECK_TEMPERATURE_LIMIT_C,
  aboveDeckForTemperature_m2K_W,
  deckTemperature_C,
  maximumIndoorRelativeHumidity_pct,
  requiredAboveDeckShare,
} from '../../src/physics/condensationControl.ts';
import { type Element, elementResistance, fastenerCorrection_W_m2K } from '../../src/physics/iso6946.ts';
import {
  type SaturationMethod,
  dewPoint_C,
  dewPointFromHumidity_C,
  relativeHumidityFromDewPoint_pct,
  saturationVaporPressure_Pa,
} from '../../src/physics/psychrometrics.ts';
import {
  interfaceTemperatures_C,
  parallelPath_m2K_W,
  solveTemperatureDependentResistance,
} from '../../src/physics/thermal.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const method = fc.constantFrom<SaturationMethod>('iso13788', 'ashrae');
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

describe('moist air, -40 to 50 °C', () => {
  it('dew point undoes saturation pressure', () => {
    fc.assert(
      fc.property(number(-40, 50), method, (t, formula) => {
        // 1e-6 K; between 0 and 0.01 °C ice and water of Hyland-Wexler differ by less than that.
        expect(Math.abs(dewPoint_C(saturationVaporPressure_Pa(t, formula), formula) - t)).toBeLessThan(1e-6);
      }),
    );
  });

  it('the dew point is never above the air, and gives back the humidity (5 to 100 %)', () => {
    fc.assert(
      fc.property(number(-30, 50), number(5, 100), method, (t, humidity, formula) => {
        const dew = Math.min(t, dewPointFromHumidity_C(t, humidity, formula));
        expect(dewPointFromHumidity_C(t, humidity, formula)).toBeLessThanOrEqual(t + 1e-9);
        expect(relativeHumidityFromDewPoint_pct(t, dew, formula)).toBeCloseTo(humidity, 6);
      }),
    );
  });
});

describe('layers in a row, R 0 to 10, -40 to 40 °C', () => {
  const resistances = fc
    .array(number(0, 10), { minLength: 1, maxLength: 12 })
    .filter((list) => sum(list) > 1e-3);

  it('the drops of the layers add to the whole (conservation of energy)', () => {
    fc.assert(
      fc.property(number(-40, 40), number(-40, 40), resistances, (inside, outside, list) => {
        const planes = interfaceTemperatures_C(inside, outside, list);
        const drops = list.map((_, index) => (planes[index] ?? NaN) - (planes[index + 1] ?? NaN));
        expect(sum(drops)).toBeCloseTo(inside - outside, 9);
        const flow = (inside - outside) / sum(list);
        drops.forEach((drop, index) => {
          expect(drop).toBeCloseTo(flow * (list[index] ?? NaN), 8);
        });
      }),
    );
  });

  it('every plane lies between indoors and outdoors', () => {
    fc.assert(
      fc.property(number(-40, 40), number(-40, 40), resistances, (inside, outside, list) => {
        for (const plane of interfaceTemperatures_C(inside, outside, list)) {
          expect(plane).toBeGreaterThanOrEqual(Math.min(inside, outside) - 1e-9);
          expect(plane).toBeLessThanOrEqual(Math.max(inside, outside) + 1e-9);
        }
      }),
    );
  });

  it('the search for conductivity by temperature ends and its answer fits itself (k changes up to 1 % a kelvin)', () => {
    const board = fc.record({ R: number(0.05, 10), slope: number(-0.01, 0.01), bend: number(-1e-4, 1e-4) });
    fc.assert(
      fc.property(
        fc.array(board, { minLength: 1, maxLength: 6 }),
        number(-40, 40),
        number(-40, 40),
        (boards, inside, outside) => {
          const layers = boards.map(({ R, slope, bend }) => ({
            resistanceAt: (t: number) => R / Math.max(0.3, 1 + slope * t + bend * t * t),
          }));
          const solved = solveTemperatureDependentResistance(layers, inside, outside);
          layers.forEach((layer, index) => {
            const mean =
              ((solved.temperatures_C[index] ?? NaN) + (solved.temperatures_C[index + 1] ?? NaN)) / 2;
            const again = layer.resistanceAt(mean);
            expect(Math.abs((solved.resistances_m2K_W[index] ?? NaN) / again - 1)).toBeLessThan(1e-6);
          });
        },
      ),
    );
  });
});

describe('ISO 6946, up to four layers of one to three parts, R 0.01 to 8', () => {
  const layer = fc
    .array(fc.record({ weight: number(0.05, 1), resistance_m2K_W: number(0.01, 8) }), {
      minLength: 1,
      maxLength: 3,
    })
    .map((parts) => {
      const whole = sum(parts.map((part) => part.weight));
      return {
        paths: parts.map(({ weight, resistance_m2K_W }) => ({ share: weight / whole, resistance_m2K_W })),
      };
    });
  const element: fc.Arbitrary<Element> = fc.record({
    insideSurface_m2K_W: fc.constantFrom(0.1, 0.13, 0.17),
    outsideSurface_m2K_W: fc.constant(0.04),
    layers: fc.array(layer, { minLength: 1, maxLength: 4 }),
  });

  it('lower <= combined <= upper', () => {
    fc.assert(
      fc.property(element, (each) => {
        const {
          lowerLimit_m2K_W: lower,
          resistance_m2K_W: mean,
          upperLimit_m2K_W: upper,
        } = elementResistance(each);
        expect(lower).toBeLessThanOrEqual(mean * (1 + 1e-12));
        expect(mean).toBeLessThanOrEqual(upper * (1 + 1e-12));
      }),
    );
  });

  it('without bridging both limits are the plain sum', () => {
    fc.assert(
      fc.property(fc.array(number(0, 8), { minLength: 1, maxLength: 8 }), (list) => {
        const plain = elementResistance({
          insideSurface_m2K_W: 0.1,
          outsideSurface_m2K_W: 0.04,
          layers: list.map((resistance_m2K_W) => ({ paths: [{ share: 1, resistance_m2K_W }] })),
        });
        expect(plain.upperLimit_m2K_W).toBeCloseTo(0.14 + sum(list), 9);
        expect(plain.lowerLimit_m2K_W).toBeCloseTo(0.14 + sum(list), 9);
      }),
    );
  });

  it('the order of the layers changes nothing', () => {
    fc.assert(
      fc.property(element, (each) => {
        const turned = elementResistance({ ...each, layers: [...each.layers].reverse() });
        expect(turned.resistance_m2K_W).toBeCloseTo(elementResistance(each).resistance_m2K_W, 9);
      }),
    );
  });

  it('parallel paths lie between the worst and the best', () => {
    fc.assert(
      fc.property(layer, ({ paths }) => {
        const R = parallelPath_m2K_W(paths);
        const each = paths.map((path) => path.resistance_m2K_W);
        expect(R).toBeGreaterThanOrEqual(Math.min(...each) * (1 - 1e-12));
        expect(R).toBeLessThanOrEqual(Math.max(...each) * (1 + 1e-12));
      }),
    );
  });

  it('the loss by fasteners grows with their number, in proportion', () => {
    const fastener = {
      crossSection_m2: 1.8e-5,
      conductivity_W_mK: 50,
      lengthInLayer_m: 0.1,
      layerThickness_m: 0.1,
      layerResistance_m2K_W: 3.8,
      totalResistance_m2K_W: 4.1,
    };
    fc.assert(
      fc.property(number(0, 50), (n) => {
        expect(fastenerCorrection_W_m2K(fastener, 2 * n)).toBeCloseTo(
          2 * fastenerCorrection_W_m2K(fastener, n),
          12,
        );
      }),
    );
  });
});

describe('condensation control, R 0.1 to 20, outdoors -40 to 20 °C', () => {
  it('more resistance above never cools the deck while it is warmer indoors', () => {
    fc.assert(
      fc.property(
        number(0, 20),
        number(0, 10),
        number(0.1, 20),
        number(-40, 20),
        (above, more, below, outdoor) => {
          const thin = deckTemperature_C({ aboveDeck_m2K_W: above, belowDeck_m2K_W: below }, outdoor);
          const thick = deckTemperature_C({ aboveDeck_m2K_W: above + more, belowDeck_m2K_W: below }, outdoor);
          expect(thick).toBeGreaterThanOrEqual(thin - 1e-12);
        },
      ),
    );
  });

  it('the resistance asked for puts the deck at the limit, exactly', () => {
    fc.assert(
      fc.property(number(0.1, 20), number(-40, 7), (below, outdoor) => {
        const above = aboveDeckForTemperature_m2K_W(below, outdoor);
        const deck = deckTemperature_C({ aboveDeck_m2K_W: above, belowDeck_m2K_W: below }, outdoor);
        expect(deck).toBeCloseTo(DECK_TEMPERATURE_LIMIT_C, 9);
      }),
    );
  });

  it('the share falls as it gets warmer outdoors and stays in 0 to 1', () => {
    fc.assert(
      fc.property(number(-40, 20), number(0, 20), (outdoor, warmer) => {
        const cold = requiredAboveDeckShare(outdoor);
        expect(cold).toBeGreaterThanOrEqual(0);
        expect(cold).toBeLessThan(1);
        expect(requiredAboveDeckShare(outdoor + warmer)).toBeLessThanOrEqual(cold + 1e-12);
      }),
    );
  });

  it('air at the highest humidity has its dew point at the deck', () => {
    fc.assert(
      fc.property(number(-20, 20), number(20, 26), (deck, indoor) => {
        const humidity = maximumIndoorRelativeHumidity_pct(deck, indoor);
        expect(dewPointFromHumidity_C(indoor, humidity, 'ashrae')).toBeCloseTo(deck, 6);
      }),
    );
  });
});

describe('climate, twelve means of -30 to 35 °C', () => {
  const year = fc.array(number(-30, 35), { minLength: 12, maxLength: 12 });

  it('heating less cooling degree days are the sum of base less mean, exactly', () => {
    fc.assert(
      fc.property(year, number(5, 20), (means, base) => {
        const heating = degreeDaysFromMonthlyMeans_Kd(means, base, 'heating');
        const cooling = degreeDaysFromMonthlyMeans_Kd(means, base, 'cooling');
        const plain = sum(means.map((mean, index) => (base - mean) * (DAYS_OF_MONTHS[index] ?? NaN)));
        expect(heating - cooling).toBeCloseTo(plain, 6);
        expect(Math.min(heating, cooling)).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });

  it('the three coldest months are never warmer than the year, wherever it begins', () => {
    fc.assert(
      fc.property(year, fc.integer({ min: 0, max: 11 }), (means, shift) => {
        const { mean_C } = threeColdestMonths(means);
        expect(mean_C).toBeLessThanOrEqual(sum(means) / 12 + 1e-9);
        const turned = threeColdestMonths([...means.slice(shift), ...means.slice(0, shift)]);
        expect(turned.mean_C).toBeCloseTo(mean_C, 9);
      }),
    );
  });
});

describe('the ventilated gap', () => {
  it('its permeance is proportional to air changes and to height', () => {
    fc.assert(
      fc.property(number(0, 500), number(0.001, 0.2), (changes, height) => {
        const one = equivalentPermeance_ng(changes, height);
        expect(equivalentPermeance_ng(2 * changes, height)).toBeCloseTo(2 * one, 6);
        expect(equivalentPermeance_ng(changes, 2 * height)).toBeCloseTo(2 * one, 6);
      }),
    );
  });
});

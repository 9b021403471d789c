/** The 45 °F rule: shares worked by hand (computed) and what is refused. */
import { describe, expect, it } from 'vitest';
import { editions, zones } from '../../src/catalog/sets.ts';
import { calculate } from '../../src/catalog/calculation.ts';
import { physicsCalculations } from '../../src/physics/calculations.ts';
import {
  DECK_TEMPERATURE_LIMIT_C,
  RULE_INDOOR_TEMPERATURE_C,
  aboveDeckForTemperature_m2K_W,
  aboveDeckOfTotal_m2K_W,
  deckTemperature_C,
  meetsDeckTemperature,
  requiredAboveDeckShare,
} from '../../src/physics/condensationControl.ts';
import { dewPointFromHumidity_C } from '../../src/physics/psychrometrics.ts';
import { celsiusFromFahrenheit, rFromRsi, rsiFromR } from '../../src/units.ts';

const share = (outdoor_F: number): number => requiredAboveDeckShare(celsiusFromFahrenheit(outdoor_F));

describe('share above the deck', () => {
  it.each([
    [20, 0.5208],
    [30, 0.3947],
    [10, 0.6034],
    [0, 0.6618],
    [35, 0.303],
    [45, 0],
    [60, 0],
  ])('at %i °F outdoors is %d', (outdoor, expected) => {
    expect(share(outdoor)).toBeCloseTo(expected, 4);
  });

  it.each([
    [0, 0.361],
    [-5, 0.489],
    [-10, 0.574],
    [-15, 0.635],
    [-20, 0.681],
  ])('at %i °C outdoors is %d', (outdoor, expected) => {
    expect(requiredAboveDeckShare(outdoor)).toBeCloseTo(expected, 3);
  });

  // Dew-point variant: limit is the dew point of the indoor air (Hyland-Wexler).
  it.each([
    [68, 30, 20, 0.322],
    [68, 40, 20, 0.475],
    [68, 45, 20, 0.539],
    [68, 50, 10, 0.667],
    [70, 35, 30.3, 0.273],
    [70, 35, 19.8, 0.425],
    [70, 50, 32, 0.488],
  ])(
    '%d °F and %i %% indoors, %d °F outdoors: %d keeps the deck at the dew point',
    (indoor, humidity, outdoor, expected) => {
      const indoor_C = celsiusFromFahrenheit(indoor);
      const dew = dewPointFromHumidity_C(indoor_C, humidity, 'ashrae');
      expect(requiredAboveDeckShare(celsiusFromFahrenheit(outdoor), indoor_C, dew)).toBeCloseTo(expected, 3);
    },
  );

  it.each([
    [49, 20, 25.5],
    [38, 30, 15],
    [60, 10, 36.2],
    [38, 0, 25.1],
    [49, 35, 14.85],
  ])('of R-%i in total at %i °F R-%d lies above (one decimal)', (total, outdoor, above) => {
    const computed = rFromRsi(aboveDeckOfTotal_m2K_W(rsiFromR(total), celsiusFromFahrenheit(outdoor)));
    expect(Math.abs(computed - above)).toBeLessThanOrEqual(0.05);
  });
});

describe('the rule', () => {
  it('is 45 °F and 68 °F exactly, not the rounded 7 °C', () => {
    expect(DECK_TEMPERATURE_LIMIT_C).toBeCloseTo(65 / 9, 12);
    expect(RULE_INDOOR_TEMPERATURE_C).toBe(20);
    expect([meetsDeckTemperature(65 / 9), meetsDeckTemperature(7.2), meetsDeckTemperature(7)]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('refuses a limit at or above the indoor temperature and roofs without resistance', () => {
    expect(() => requiredAboveDeckShare(0, 20, 20)).toThrow(RangeError);
    expect(() => aboveDeckForTemperature_m2K_W(-1, 0)).toThrow(RangeError);
    expect(() => deckTemperature_C({ aboveDeck_m2K_W: 0, belowDeck_m2K_W: 0 }, 0)).toThrow(RangeError);
    expect(() => deckTemperature_C({ aboveDeck_m2K_W: 1, belowDeck_m2K_W: 1 }, Number.NaN)).toThrow(
      RangeError,
    );
  });
});

describe('code tables through the door', () => {
  it.each(editions.flatMap((edition) => zones.map((zone) => [edition, zone] as const)))(
    'edition %s zone %s gives a number or null, never anything else',
    (edition, zone) => {
      const energy = physicsCalculations['energy-code'];
      if (!energy) throw new Error('no energy-code');
      const result = calculate(energy, { edition, zone });
      const output = (result.ok ? result.output : {}) as Record<string, number | null>;
      const { ceilingResistance_m2K_W: R, transmittance_W_m2K: U } = output;
      expect(R === null ? U === null : (R ?? 0) > 1 && (U ?? 0) > 0).toBe(true);
    },
  );
});

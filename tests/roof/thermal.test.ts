import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boards } from '../../src/catalog/sets.ts';
import { fieldOnly, type Zone } from '../../src/roof/heat/zones.ts';
import { thermalOf, type Bridges } from '../../src/roof/thermal.ts';
import type { Variant } from '../../src/roof/variant.ts';
import { boardsOf, candidateOf, flush, layersWith, settingOf, type Changes } from '../support/roofs.ts';

const stack = [
  { board: 'eps', thickness_m: 0.0508 },
  { board: 'eps', thickness_m: 0.0508 },
] as const;
const ceiling = { resistance_m2K_W: 8.6, transmittance_W_m2K: 0.15 };

const thermal = (changes: Changes = {}, of: Partial<Variant> = {}, bridges: Partial<Bridges> = {}) => {
  const { given, climate } = settingOf(changes);
  const all = { zones: fieldOnly(given), screwsPerArea_1_m2: 0, ...bridges };
  return thermalOf(given, layersWith(stack, changes, of), all, ceiling, climate);
};
/** A quarter of the roof as a band of wood, the rest field. */
const quarter = (woodShare: number, woodDepth_m: number): Zone[] => [
  { id: 'eave-band', area_m2: 25, woodShare, woodDepth_m, what: 'outriggers' },
  { id: 'field', area_m2: 75, woodShare: 0, woodDepth_m: 0, what: 'board' },
];

/** Resistances of the plain roof by hand, from thickness and conductivity of the table. */
const hand = {
  insideFilm: 0.1,
  gypsum: 0.0127 / 0.16,
  plywood: 0.016 / 0.115,
  membrane: 0.001 / 0.23,
  board: 0.1016 / 0.0343399,
  cavity: 3.3,
  rafter: 0.14 / 0.12,
  woodShare: 0.04 / 0.4,
};
const shared = hand.insideFilm + hand.gypsum + hand.plywood + hand.membrane + hand.board;

describe('the transmittance of the field, by hand', () => {
  it('vented: parallel path to the gap, the inside film again outside (ISO 6946:2017, 6.9.4)', () => {
    const whole = shared + hand.insideFilm;
    const u = (1 - hand.woodShare) / (whole + hand.cavity) + hand.woodShare / (whole + hand.rafter);
    expect(thermal().fieldTransmittance_W_m2K).toBeCloseTo(u, 9);
    expect(thermal().transmittance_W_m2K).toBeCloseTo(u, 9);
  });

  it('unvented: second deck and shingles count, the outside film is 0.04', () => {
    const whole = shared + 0.0159 / 0.115 + 0.0775 + 0.04;
    const u = (1 - hand.woodShare) / (whole + hand.cavity) + hand.woodShare / (whole + hand.rafter);
    expect(thermal({}, { ventilation: 'unvented' }).fieldTransmittance_W_m2K).toBeCloseTo(u, 9);
  });

  it('without a fill there is one path', () => {
    const bare = thermal({ 'belowDeck.fill': 'none' });
    expect(bare.fieldTransmittance_W_m2K).toBeCloseTo(1 / (shared + hand.insideFilm), 9);
    expect(bare).toMatchObject({ framingShare_pct: 0, belowDeck_m2K_W: 0, share_pct: 100 });
  });

  it('a fill of no depth leaves the rafter path without wood', () => {
    const empty = { 'belowDeck.fillResistance_m2K_W': 0, 'belowDeck.fillDepth_m': 0 };
    expect(thermal(empty).fieldTransmittance_W_m2K).toBeCloseTo(1 / (shared + hand.insideFilm), 9);
  });

  it('beyond a vented gap nothing counts: the covering does not matter', () => {
    const under = (kind: string) => thermal({ 'covering.kind': kind }).transmittance_W_m2K;
    expect(under('slate')).toBe(under('asphalt-shingle'));
    expect(thermal({ 'covering.kind': 'slate' }, { ventilation: 'unvented' }).transmittance_W_m2K).not.toBe(
      thermal({}, { ventilation: 'unvented' }).transmittance_W_m2K,
    );
  });
});

describe('bridges', () => {
  const half = hand.board / 2;
  const outrigger = 0.0508 / 0.12;

  it('outriggers in half of the board: four paths side by side, by hand', () => {
    const rest = shared + hand.insideFilm - hand.board + half;
    const paths = [
      [0.9 * 0.9, half + hand.cavity],
      [0.9 * 0.1, half + hand.rafter],
      [0.1 * 0.9, outrigger + hand.cavity],
      [0.1 * 0.1, outrigger + hand.rafter],
    ] as const;
    const u = paths.reduce((sum, [share, own]) => sum + share / (rest + own), 0);
    const found = thermal({}, {}, { zones: quarter(0.1, 0.0508) });
    expect(found.bandTransmittance_W_m2K).toBeCloseTo(u, 9);
    expect(found.bandShare_pct).toBe(25);
    expect(found.transmittance_W_m2K).toBeCloseTo(0.75 * found.fieldTransmittance_W_m2K + 0.25 * u, 12);
  });

  it('the lower limit of that band: wood and board side by side in each layer, by hand', () => {
    const board = 1 / (0.9 / half + 0.1 / outrigger);
    const cavity = 1 / (0.9 / hand.cavity + 0.1 / hand.rafter);
    const lower = shared + hand.insideFilm - hand.board + half + board + cavity;
    const [band] = thermal({}, {}, { zones: quarter(0.1, 0.0508) }).zones;
    const upper = 1 / (band?.transmittance_W_m2K ?? 0);
    expect(2 / (band?.combined_W_m2K ?? 1) - upper).toBeCloseTo(lower, 9);
  });

  it('a band loses more than the field, for every board', () => {
    for (const board of boards) {
      const { thermal: found } = candidateOf({}, { ...flush, board });
      expect(found.bandTransmittance_W_m2K).toBeGreaterThan(found.fieldTransmittance_W_m2K);
    }
  });

  it('outriggers deeper than the board fill its whole depth', () => {
    const deep = thermal({}, {}, { zones: quarter(0.1, 0.3) });
    const whole = thermal({}, {}, { zones: quarter(0.1, 0.1016) });
    expect(deep.transmittance_W_m2K).toBeCloseTo(whole.transmittance_W_m2K, 12);
  });

  it('screws add 0.8 λ A n / d (R1 / RT,h)², ISO 6946 annex F, with RT,h beside every member', () => {
    const screws = thermal({}, {}, { screwsPerArea_1_m2: 4 });
    const area_m2 = (Math.PI * 0.0048 ** 2) / 4;
    const total = shared + hand.cavity + hand.insideFilm;
    const expected = ((0.8 * 50 * area_m2 * 4) / 0.1016) * (hand.board / total) ** 2;
    expect(screws.fastenerCorrection_W_m2K).toBeCloseTo(expected, 12);
    expect(screws.transmittance_W_m2K).toBeCloseTo(screws.fieldTransmittance_W_m2K + expected, 12);
  });

  it('one layer of butted board adds 0.01 (R1 / RT,h)², two offset layers nothing', () => {
    const { given, climate } = settingOf();
    const one = thermalOf(
      given,
      layersWith([{ board: 'eps', thickness_m: 0.1016 }]),
      { zones: fieldOnly(given), screwsPerArea_1_m2: 0 },
      ceiling,
      climate,
    );
    const total = shared + hand.cavity + hand.insideFilm;
    const voids = (found: typeof one) => found.losses.find(({ id }) => id === 'air-voids');
    expect(voids(one)?.transmittance_W_m2K).toBeCloseTo(0.01 * (hand.board / total) ** 2, 12);
    expect(voids(thermal())?.transmittance_W_m2K).toBe(0);
  });
});

describe('the rule of the ceiling', () => {
  it('holds by R where board and cavity add up to it, with no allowance for films', () => {
    const total = hand.board + hand.cavity;
    const { given, climate } = settingOf();
    const bridges = { zones: fieldOnly(given), screwsPerArea_1_m2: 0 };
    const at = (resistance_m2K_W: number) =>
      thermalOf(given, layersWith(stack), bridges, { resistance_m2K_W, transmittance_W_m2K: 0.1 }, climate);
    expect(at(total)).toMatchObject({ meetsCeilingResistance: true, meetsTransmittance: false });
    expect(at(total + 0.001).meetsCeilingResistance).toBe(false);
    expect(at(total + 1).ceilingMargin_m2K_W).toBeCloseTo(-1, 9);
  });
});

describe('resistance in winter', () => {
  const iso = [
    { board: 'polyisocyanurate', thickness_m: 0.0508 },
    { board: 'polyisocyanurate', thickness_m: 0.0508 },
  ] as const;

  it('polyisocyanurate loses in the cold, the outer layer more; expanded polystyrene keeps its label', () => {
    const [inner, outer] = boardsOf(layersWith(iso, {}, { board: 'polyisocyanurate' }));
    expect(inner?.winterResistance_m2K_W).toBeLessThan(inner?.resistance_m2K_W ?? 0);
    expect(outer?.winterResistance_m2K_W).toBeLessThan(inner?.winterResistance_m2K_W ?? 0);
    for (const layer of boardsOf(layersWith(stack)))
      expect(layer.winterResistance_m2K_W).toBe(layer.resistance_m2K_W);
  });

  it('stays between the coldest value of the series and the label (any winter mean of −50 to 15 °C)', () => {
    const { climate } = settingOf();
    const ratio = 31.2007 / 38.8275;
    fc.assert(
      fc.property(fc.double({ min: -50, max: 15, noNaN: true }), (coldestMean_C) => {
        const found = boardsOf(
          layersWith(iso, {}, { board: 'polyisocyanurate' }, { ...climate, coldestMean_C }),
        );
        for (const layer of found) {
          const share = layer.winterResistance_m2K_W / layer.resistance_m2K_W;
          expect(share).toBeGreaterThanOrEqual(ratio - 1e-9);
          expect(share).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('layers beyond a gap keep their label', () => {
    const layers = layersWith(iso, {}, { board: 'polyisocyanurate' });
    const covering = layers.at(-1);
    expect(covering?.winterResistance_m2K_W).toBe(covering?.resistance_m2K_W);
  });
});

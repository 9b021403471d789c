import { describe, expect, it } from 'vitest';
import type { Variant } from '../../src/roof/variant.ts';
import { buildCandidate } from '../../src/strategies/index.ts';
import { candidateOf, draftOf, flush, panel, settingOf, variant, type Changes } from '../support/roofs.ts';

const wanted = { 'insulation.aboveDeckTarget_m2K_W': 2.9 };
const control = (changes: Changes = {}, of: Partial<Variant> = {}) =>
  candidateOf({ ...wanted, ...changes }, of).condensationControl;
/** 4 in of expanded polystyrene over R 3.3 with −6 °C outdoors. */
const above = 0.1016 / 0.0343399;

describe('condensation control, three ways', () => {
  it('by the table: R above the deck against R-25', () => {
    const { table } = control();
    expect(table.provided_m2K_W).toBeCloseTo(above, 9);
    expect(table.margin_m2K_W).toBeCloseTo(above - 25 * 0.1761101838, 9);
    expect(table.meets).toBe(false);
    expect(control({ 'insulation.aboveDeckTarget_m2K_W': 4.5 }).table.meets).toBe(true);
  });

  it('by deck temperature: 20 − 26 × 3.3 / (3.3 + 2.959) °C against 7.2 °C', () => {
    const { temperature } = control();
    const deck_C = 20 - (26 * 3.3) / (3.3 + above);
    expect(temperature.deck_C).toBeCloseTo(deck_C, 9);
    expect(temperature.limit_C).toBeCloseTo(65 / 9, 9);
    expect(temperature.margin_K).toBeCloseTo(deck_C - 65 / 9, 9);
    expect(temperature.meets).toBe(false);
    expect(temperature.share_pct).toBeCloseTo((100 * above) / (above + 3.3), 9);
    expect(temperature.shareNeeded_pct).toBeCloseTo((100 * (65 / 9 + 6)) / 26, 9);
  });

  it('by humidity: the dew point of the rooms at their own temperature', () => {
    const { humidity } = control({ 'indoor.relativeHumidity_pct': 30 });
    expect(humidity.indoor_pct).toBe(30);
    expect(humidity.margin_pct).toBeCloseTo(humidity.maximumIndoor_pct - 30, 9);
    // 6.29 °C at the deck: saturation 955 Pa there over 2,339 Pa at 20 °C.
    expect(humidity.maximumIndoor_pct).toBeCloseTo(40.8, 0);
    expect(humidity.meets).toBe(true);
    expect(control({ 'indoor.relativeHumidity_pct': 60 }).humidity.meets).toBe(false);
  });

  it('uses the cold value of polyisocyanurate for the deck, the label for the table', () => {
    const { thermal, condensationControl } = candidateOf(wanted, { board: 'polyisocyanurate' });
    expect(thermal.aboveDeckWinter_m2K_W).toBeLessThan(thermal.aboveDeck_m2K_W);
    expect(condensationControl.table.provided_m2K_W).toBe(thermal.aboveDeck_m2K_W);
    expect(condensationControl.temperature.deck_C).toBeCloseTo(
      20 - (26 * 3.3) / (3.3 + thermal.aboveDeckWinter_m2K_W),
      9,
    );
  });
});

describe('the edge', () => {
  const layers_m = 0.016 + 0.001 + 0.1016 + 0.0381 + 0.0159 + 0.0005 + 0.006;
  const slant = Math.sqrt(1.25);

  it('tails: layers and rafter, plumb', () => {
    const { edge } = candidateOf(wanted);
    expect(edge.buildUp_m).toBeCloseTo(layers_m, 9);
    expect(edge.fascia_m).toBeCloseTo((layers_m + 0.14) * slant, 9);
    expect(edge.ridgeRise_m).toBeCloseTo(layers_m * slant, 9);
    expect(edge).toMatchObject({
      carrierDepth_m: 0.14,
      fasciaLimit_m: null,
      fasciaMargin_m: null,
      ridgeLimit_m: null,
      ridgeMargin_m: null,
    });
  });

  it('outriggers: layers alone; truss tails: 2x4', () => {
    expect(candidateOf(wanted, flush).edge).toMatchObject({
      carrierDepth_m: 0,
      fascia_m: expect.closeTo(layers_m * slant, 9) as number,
    });
    const truss = { ...wanted, 'framing.kind': 'truss', 'framing.depth_m': 0.3 };
    expect(candidateOf(truss, { carrier: 'truss-tails' }).edge.carrierDepth_m).toBe(0.0889);
  });

  it('shows the margin to the limits named', () => {
    const { edge } = candidateOf({
      ...wanted,
      'profile.fasciaLimit_m': 0.3,
      'profile.ridgeRiseLimit_m': 0.25,
    });
    expect(edge.fasciaMargin_m).toBeCloseTo(0.3 - edge.fascia_m, 12);
    expect(edge.ridgeMargin_m).toBeCloseTo(0.25 - edge.ridgeRise_m, 12);
  });
});

describe('the band of outriggers', () => {
  it('lies along eaves and rakes, a back span deep', () => {
    const draft = draftOf(wanted, flush);
    // Over the walls: 12 m by 8 m; eaves 2 x 12 m, rakes four times half of the width up the slope.
    const rakes_m = 4 * 4 * Math.sqrt(1.25);
    const band_m2 = (24 + rakes_m) * (draft.outrigger?.backSpan_m ?? 0);
    expect(draft.candidate.thermal.bandShare_pct).toBeCloseTo(
      (100 * band_m2) / (12 * 8 * Math.sqrt(1.25)),
      9,
    );
    expect(draftOf({ ...wanted, 'overhang.rake_m': 0 }, flush).candidate.thermal.bandShare_pct).toBeLessThan(
      draft.candidate.thermal.bandShare_pct,
    );
  });

  it('covers the roof at most once', () => {
    const small = { ...wanted, 'roof.length_m': 2, 'roof.width_m': 2, 'overhang.eave_m': 1.5 };
    expect(candidateOf(small, flush).thermal.bandShare_pct).toBeLessThanOrEqual(100);
  });

  it('is none on tails', () => {
    expect(candidateOf(wanted).thermal).toMatchObject({ bandShare_pct: 0, bandTransmittance_W_m2K: null });
  });
});

describe('a panel', () => {
  it('is one thickness of core, or core over base', () => {
    const alone = candidateOf(wanted, panel);
    expect(alone.layers.filter(({ role }) => role === 'insulation')).toHaveLength(1);
    const based = candidateOf(wanted, { ...panel, baseBoard: 'eps' });
    expect(based.layers.filter(({ role }) => role === 'insulation').length).toBeGreaterThan(1);
  });
});

describe('the same case', () => {
  it('builds the same candidate, remembered or not', () => {
    const { given, climate, requirements } = settingOf(wanted);
    const built = () => JSON.stringify(buildCandidate(given, variant(), climate, requirements).candidate);
    expect(built()).toBe(built());
    expect(JSON.stringify(candidateOf(wanted))).toBe(JSON.stringify(candidateOf(wanted)));
  });
});

import { describe, expect, it } from 'vitest';
import { metersFromInches } from '../../src/units.ts';
import { candidateOf, draftOf, panel } from '../support/roofs.ts';
import type { Variant } from '../../src/roof/variant.ts';

const wanted = { 'insulation.aboveDeckTarget_m2K_W': 2.9 };
/** R 2.9 is 4 in of expanded polystyrene (2.959), in two layers of 2 in. */
const board_m = metersFromInches(4);
const membrane_m = 0.001;
const deck_m = 0.016;
const screws = (changes: Record<string, unknown> = {}, of: Partial<Variant> = {}) =>
  candidateOf({ ...wanted, ...changes }, of).fasteners;
const soldInch = (length_m: number): number => length_m / metersFromInches(1);

describe('the length of the screw', () => {
  it('furring: membrane, board, furring, deck, 1 1/2 in of thread, to the next length sold', () => {
    const needed_m = membrane_m + board_m + 0.0381 + deck_m + 0.0381;
    // 194.8 mm is 7.67 in: 8 in is sold.
    expect(soldInch(needed_m)).toBeCloseTo(7.67, 2);
    expect(screws()).toMatchObject({
      into: 'rafter',
      sold: true,
      screwLength_m: expect.closeTo(metersFromInches(8), 9) as number,
      penetration_m: expect.closeTo(metersFromInches(8) - (needed_m - 0.0381), 9) as number,
    });
  });

  it('unvented: through the second deck instead of furring', () => {
    const needed_m = membrane_m + board_m + 0.0159 + deck_m + 0.0381;
    expect(soldInch(needed_m)).toBeCloseTo(6.8, 2);
    expect(soldInch(screws({}, { ventilation: 'unvented' }).screwLength_m)).toBeCloseTo(7, 9);
  });

  it('panel: through top sheet and gap, half an inch past the deck', () => {
    const needed_m = membrane_m + board_m + 0.0254 + 0.0159 + deck_m + 0.0127;
    expect(soldInch(needed_m)).toBeCloseTo(6.8, 2);
    const found = screws({}, panel);
    expect(found.into).toBe('deck');
    expect(soldInch(found.screwLength_m)).toBeCloseTo(7, 9);
  });

  it('longer than is sold: the length needed is shown and not sold', () => {
    const thick = screws({ 'insulation.aboveDeckTarget_m2K_W': 13 });
    expect(thick).toMatchObject({ sold: false, penetration_m: 0.0381 });
    expect(thick.screwLength_m).toBeGreaterThan(metersFromInches(18));
  });
});

describe('the number of screws', () => {
  it('into rafters: every 24 in up rafters 400 mm apart', () => {
    const found = screws();
    expect(found.perArea_1_m2).toBeCloseTo(1 / (0.6096 * 0.4), 9);
    // Each of the six zones is rounded up to whole screws.
    const area_m2 = 2 * 12.6 * 4.4 * Math.sqrt(1.25);
    expect(found.count).toBeGreaterThanOrEqual(area_m2 / (0.6096 * 0.4));
    expect(found.count).toBeLessThan(area_m2 / (0.6096 * 0.4) + found.schedule.length);
    expect(found.count).toBe(found.schedule.reduce((sum, row) => sum + row.count, 0));
  });

  it('into the deck: a grid of 16 in, whatever the rafters', () => {
    expect(screws({}, panel).perArea_1_m2).toBeCloseTo(1 / (0.4064 * 0.4064), 9);
    expect(screws({ 'framing.spacing_m': 1.2 }, panel).count).toBe(screws({}, panel).count);
  });
});

describe('hold', () => {
  const windUse = (changes: Record<string, unknown> = {}, of: Partial<Variant> = {}) =>
    draftOf({ ...wanted, ...changes }, of).windUse;

  it('is used up faster by more wind, and by a thinner deck under a panel', () => {
    const slow = windUse() ?? 0;
    expect(windUse({ 'loads.basicWindSpeed_m_s': 70 })).toBeGreaterThan(slow);
    expect(windUse({ 'framing.deckThickness_m': 0.0119 }, panel)).toBeGreaterThan(windUse({}, panel) ?? 0);
  });

  it('grows with the square of the wind speed', () => {
    const ratio =
      (windUse({ 'loads.basicWindSpeed_m_s': 80 }) ?? 0) / (windUse({ 'loads.basicWindSpeed_m_s': 40 }) ?? 1);
    expect(ratio).toBeCloseTo(4, 6);
  });

  it('is not known on slopes that the wind tables leave out', () => {
    expect(windUse({ 'roof.pitch_rise_per_12': 24 })).toBeNull();
  });

  it('along the slope is used more by thicker board, snow and slope', () => {
    const use = (changes: Record<string, unknown>) => screws(changes).slopeUse;
    expect(use({ 'insulation.aboveDeckTarget_m2K_W': 5 })).toBeGreaterThan(use({}));
    expect(use({ 'loads.groundSnow_Pa': 3000 })).toBeGreaterThan(use({}));
    expect(use({ 'loads.groundSnow_Pa': 0, 'roof.pitch_rise_per_12': 12 })).toBeGreaterThan(
      use({ 'loads.groundSnow_Pa': 0 }),
    );
  });

  it('of a plank deck is that of softwood', () => {
    expect(windUse({ 'framing.deck': 'plank' }, panel)).toBeGreaterThan(windUse({}, panel) ?? 0);
  });

  it('may show below where the deck is in view', () => {
    expect(screws().mayShowBelow).toBe(false);
    expect(screws({ 'framing.deckSeenFromBelow': true }).mayShowBelow).toBe(true);
  });
});

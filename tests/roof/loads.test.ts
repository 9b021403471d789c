import { describe, expect, it } from 'vitest';
import { alongSlope_Pa, loadsOn, slidingSnowCase, type RoofLoad } from '../../src/roof/loads.ts';
import { layersWith, settingOf, type Changes } from '../support/roofs.ts';

const stack = [{ board: 'eps', thickness_m: 0.1016 }] as const;
const load = (changes: Changes = {}): RoofLoad =>
  loadsOn(settingOf(changes).given, layersWith(stack, changes));

describe('the dead load', () => {
  it('is what lies on the framing: deck 7.2, membrane 1.1, board 2.4, second deck 7.2 kg/m², shingles', () => {
    const layers = layersWith(stack);
    const shingles = layers.at(-1)?.mass_kg_m2 ?? 0;
    const known = 0.016 * 450 + 0.001 * 1100 + 0.1016 * 24 + 0.0159 * 450 + shingles;
    expect(load().dead_Pa).toBeCloseTo(9.80665 * known, 6);
    expect(load().upper_Pa).toBeCloseTo(9.80665 * (0.0159 * 450 + shingles), 6);
  });

  it('does not count the ceiling', () => {
    expect(load({ 'belowDeck.ceiling': 'none' }).dead_Pa).toBe(load().dead_Pa);
  });
});

describe('snow', () => {
  it('on a roof flatter than the slope limit: 0.7 × 1.0 × 1.1 × 1.0 × ground snow (ASCE 7-16)', () => {
    expect(load({ 'roof.pitch_rise_per_12': 4 }).snow_Pa).toBeCloseTo(0.7 * 1.1 * 1500, 6);
  });

  it('slides off slippery steep roofs', () => {
    const steep = { 'roof.pitch_rise_per_12': 12 };
    expect(load({ ...steep, 'covering.kind': 'standing-seam-metal' }).snow_Pa).toBeLessThan(
      load(steep).snow_Pa,
    );
  });
});

describe('wind', () => {
  it('lifts corners and overhangs, and grows with the square of the speed', () => {
    const slow = load({ 'loads.basicWindSpeed_m_s': 40 });
    const fast = load({ 'loads.basicWindSpeed_m_s': 80 });
    expect(slow.cornerUplift_Pa).toBeLessThan(0);
    expect(slow.overhangUplift_Pa).toBeLessThan(0);
    expect((fast.cornerUplift_Pa ?? 0) / (slow.cornerUplift_Pa ?? 1)).toBeCloseTo(4, 9);
  });

  it('is stronger on a higher roof', () => {
    const wide = load({ 'roof.eaveHeight_m': 6, 'roof.width_m': 16 }).cornerUplift_Pa ?? 0;
    expect(wide).toBeLessThan(load({ 'roof.eaveHeight_m': 6 }).cornerUplift_Pa ?? 0);
  });

  it.each(['shed', 'gambrel', 'cross-gable'])('is not covered on a %s: no other shape stands in', (shape) => {
    expect(load({ 'roof.shape': shape })).toMatchObject({
      cornerUplift_Pa: null,
      overhangUplift_Pa: null,
      rakeUplift_Pa: null,
    });
  });

  it('is weaker in thin air, and never stronger below sea level', () => {
    const at = (elevation_m: number) => load({ 'place.elevation_m': elevation_m }).cornerUplift_Pa ?? 0;
    expect(at(2500)).toBeGreaterThan(at(0));
    expect(at(-80)).toBe(at(0));
  });

  it('takes the hip’s coefficients for a hip', () => {
    expect(load({ 'roof.shape': 'hip' }).cornerUplift_Pa).not.toBe(load().cornerUplift_Pa);
  });

  it('is not known on slopes that the tables leave out', () => {
    expect(load({ 'roof.pitch_rise_per_12': 24 })).toMatchObject({
      cornerUplift_Pa: null,
      overhangUplift_Pa: null,
      overhangDownward_Pa: null,
    });
  });
});

describe('the pull down the slope', () => {
  it('is weight and snow times the sine: at 30° half of both', () => {
    expect(alongSlope_Pa({ ...load(), upper_Pa: 200, slidingSnow_Pa: 1000 }, 30)).toBeCloseTo(600, 9);
  });

  it('takes the lee side’s mean where wind over the ridge makes it the greater: short rafters, I x pg against 0.7 Ct pg', () => {
    const low = load({ 'roof.pitch_rise_per_12': 4, 'roof.width_m': 8 });
    expect(low.slidingSnow_Pa).toBeCloseTo(1500, 6);
    expect(slidingSnowCase(low)).toBe('unbalanced');
    // Steeper than 7:12 the unbalanced case is not asked for.
    const steep = load({ 'roof.pitch_rise_per_12': 9, 'roof.width_m': 8 });
    expect(steep.slidingSnow_Pa).toBe(steep.snow_Pa);
    expect(slidingSnowCase(steep)).toBe('balanced');
  });

  it('takes drift below a higher roof whole where it is the greatest', () => {
    const below = load({ 'loads.upperRoofLength_m': 15 });
    expect(slidingSnowCase(below)).toBe('drift');
    expect(below.slidingSnow_Pa).toBe(below.drift_Pa);
    expect(below.slidingSnow_Pa).toBeGreaterThan(load().slidingSnow_Pa);
  });
});

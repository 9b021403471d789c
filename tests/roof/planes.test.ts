import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roofShapes } from '../../src/case/case.ts';
import { measureRoof, type RoofPlan } from '../../src/roof/geometry.ts';
import { roofPlanes, type RoofBreaks, type RoofPlanes } from '../../src/roof/planes.ts';
import { unionArea_m2 } from '../support/clipping.ts';

const none: RoofBreaks = { valleys: 0, dormers: 0, skylights: 0, chimneys: 0 };
/** 3-4-5 slope: cosine 0.8, so that every length can be worked in the head. */
const angle_deg = (Math.atan(3 / 4) * 180) / Math.PI;
const plan = (changes: Partial<RoofPlan> = {}): RoofPlan => ({
  shape: 'gable',
  angle_deg,
  length_m: 12,
  width_m: 8,
  eaveOverhang_m: 0.4,
  rakeOverhang_m: 0.3,
  ...changes,
});
const areaOf = (found: RoofPlanes, start: string): number =>
  found.planes.filter(({ id }) => id.startsWith(start)).reduce((sum, { area_m2 }) => sum + area_m2, 0);

describe('planes of plain roofs, by hand', () => {
  it('gable: two rectangles of 12.6 m by 4.4 / 0.8 m', () => {
    const found = roofPlanes(plan(), none);
    expect(found.planes).toHaveLength(2);
    expect(found.area_m2).toBeCloseTo(2 * 12.6 * 5.5, 9);
    expect(found.lengths_m.eave).toBeCloseTo(2 * 12.6, 9);
    expect(found.lengths_m.rake).toBeCloseTo(4 * 5.5, 9);
    expect(found.lengths_m.ridge).toBeCloseTo(12.6, 9);
    expect(found.assumptions).toEqual([]);
  });

  it('shed: one rectangle of 12.6 m by 8.4 / 0.8 m, its high edge no ridge', () => {
    const found = roofPlanes(plan({ shape: 'shed' }), none);
    expect(found.area_m2).toBeCloseTo(12.6 * 10.5, 9);
    expect(found.lengths_m['high-edge']).toBeCloseTo(12.6, 9);
    expect(found.lengths_m.ridge).toBe(0);
  });

  it('hip: plan 12.8 by 8.8 m over 0.8; ridge 4 m; each hip 4.4 √(2 + 0.75²) m', () => {
    const found = roofPlanes(plan({ shape: 'hip' }), none);
    expect(found.area_m2).toBeCloseTo((12.8 * 8.8) / 0.8, 9);
    expect(areaOf(found, 'end')).toBeCloseTo((2 * (8.8 * 4.4)) / 2 / 0.8, 9);
    expect(found.lengths_m.ridge).toBeCloseTo(4, 9);
    expect(found.lengths_m.hip).toBeCloseTo(4 * 4.4 * Math.sqrt(2 + 0.75 ** 2), 9);
    expect(found.lengths_m.eave).toBeCloseTo(2 * (12.8 + 8.8), 9);
  });

  it('pyramid: four triangles without a ridge', () => {
    const found = roofPlanes(plan({ shape: 'hip', length_m: 8 }), none);
    expect(found.planes.map(({ outline }) => outline.length)).toEqual([3, 3, 3, 3]);
    expect(found.lengths_m.ridge).toBe(0);
  });

  it('gambrel: lower third at 24:12 (√5 for each meter level), upper two thirds at the pitch given', () => {
    const found = roofPlanes(plan({ shape: 'gambrel' }), none);
    const lower_m = 4 * 0.3333;
    expect(areaOf(found, 'lower')).toBeCloseTo(2 * 12.6 * (lower_m + 0.4) * Math.sqrt(5), 9);
    expect(areaOf(found, 'upper')).toBeCloseTo((2 * 12.6 * (4 - lower_m)) / 0.8, 9);
    expect(found.lengths_m.break).toBeCloseTo(2 * 12.6, 9);
    expect(found.lengths_m.rake).toBeCloseTo(4 * ((lower_m + 0.4) * Math.sqrt(5) + (4 - lower_m) / 0.8), 9);
    expect(found.assumptions.map(({ id }) => id)).toEqual(['gambrel']);
  });
});

describe('valleys, dormers and openings, by hand', () => {
  it('one valley: an L of two legs 8 m wide and 10 m long outside; area, eaves and ridge of the plain roof', () => {
    const found = roofPlanes(plan({ shape: 'cross-gable' }), { ...none, valleys: 1 });
    // Outer eaves 10 + 0.4 + 0.3; inner eaves (12 − 8) / 2 − 0.4 + 0.3; depth 4.4, at 45° in plan.
    expect(areaOf(found, 'outer')).toBeCloseTo((2 * 4.4 * (10.7 - 4.4 / 2)) / 0.8, 9);
    expect(areaOf(found, 'inner')).toBeCloseTo((2 * 4.4 * (1.9 + 4.4 / 2)) / 0.8, 9);
    expect(found.area_m2).toBeCloseTo(2 * 12.6 * 5.5, 9);
    expect(found.lengths_m.eave).toBeCloseTo(2 * 12.6, 9);
    expect(found.lengths_m.ridge).toBeCloseTo(12.6, 9);
    const slanted_m = 4.4 * Math.sqrt(2 + 0.75 ** 2);
    expect(found.lengths_m.valley).toBeCloseTo(slanted_m, 9);
    expect(found.lengths_m.hip).toBeCloseTo(slanted_m, 9);
  });

  it('two valleys: one gable two thirds as wide as the house; the area stays', () => {
    const found = roofPlanes(plan(), { ...none, valleys: 2 });
    const half_m = (8 * 0.6667) / 2 + 0.4;
    expect(found.area_m2).toBeCloseTo(2 * 12.6 * 5.5, 9);
    expect(areaOf(found, 'slope-1-gable')).toBeCloseTo(half_m ** 2 / 0.8, 9);
    expect(found.lengths_m.valley).toBeCloseTo(2 * half_m * Math.sqrt(2 + 0.75 ** 2), 9);
    expect(found.lengths_m.ridge).toBeCloseTo(12.6 + half_m, 9);
    expect(found.lengths_m.eave).toBeCloseTo(2 * 12.6 - 2 * half_m, 9);
    expect(found.assumptions).toEqual([{ id: 'cross-gables', count: 1, size: 2 * (half_m - 0.4) }]);
  });

  it('an L too short for its legs is a cross gable', () => {
    const found = roofPlanes(plan({ shape: 'cross-gable', length_m: 9 }), { ...none, valleys: 1 });
    expect(found.assumptions.map(({ id }) => id)).toEqual(['cross-gables']);
  });

  it('a dormer 1.5 m wide: two valleys, cheeks 1.2 / 0.75 m level, the sheathed area unchanged', () => {
    const found = roofPlanes(plan(), { ...none, dormers: 1 });
    const cheek_m = Math.min(1.2 / 0.75, 0.35 * 4.4);
    expect(found.area_m2).toBeCloseTo(2 * 12.6 * 5.5, 9);
    expect(found.lengths_m.cheek).toBeCloseTo((2 * cheek_m) / 0.8, 9);
    expect(found.lengths_m.apron).toBeCloseTo(1.5, 9);
    expect(found.lengths_m.valley).toBeCloseTo(2 * 0.75 * Math.sqrt(2 + 0.75 ** 2), 9);
  });

  it('a skylight of 2 by 4 ft and a chimney of 32 in square are left out of the area', () => {
    const found = roofPlanes(plan(), { ...none, skylights: 1, chimneys: 1 });
    const holes_m2 = 0.6096 * 1.2192 + 0.8128 ** 2;
    expect(found.area_m2).toBeCloseTo(2 * 12.6 * 5.5 - holes_m2, 9);
    expect(found.lengths_m.opening).toBeCloseTo(2 * (0.6096 + 1.2192) + 4 * 0.8128, 9);
  });
});

const anyPlan = fc.record({
  shape: fc.constantFrom(...roofShapes),
  pitch: fc.double({ min: 2, max: 24, noNaN: true }),
  length_m: fc.double({ min: 2, max: 100, noNaN: true }),
  width_m: fc.double({ min: 2, max: 60, noNaN: true }),
  eaveOverhang_m: fc.double({ min: 0, max: 1.5, noNaN: true }),
  rakeOverhang_m: fc.double({ min: 0, max: 1.5, noNaN: true }),
  valleys: fc.integer({ min: 0, max: 40 }),
  dormers: fc.integer({ min: 0, max: 30 }),
  skylights: fc.integer({ min: 0, max: 40 }),
  chimneys: fc.integer({ min: 0, max: 10 }),
});

describe('any roof of the case file', () => {
  it('plane areas, by the polygon library, add up to plan / cos; a gambrel has more', () => {
    fc.assert(
      fc.property(anyPlan, ({ pitch, valleys, dormers, skylights, chimneys, ...rest }) => {
        const given = { ...rest, angle_deg: (Math.atan(pitch / 12) * 180) / Math.PI };
        const found = roofPlanes(given, { valleys, dormers, skylights, chimneys });
        const gross_m2 = found.planes.reduce((sum, { outline }) => sum + unionArea_m2([outline]), 0);
        const holes_m2 = found.planes.reduce((sum, { holes }) => sum + unionArea_m2(holes), 0);
        expect(Math.abs(gross_m2 - holes_m2 - found.area_m2)).toBeLessThan(1e-3);
        const openings_m2 = found.planes
          .flatMap(({ holes }) => holes.filter((hole) => hole.length === 4))
          .reduce((sum, hole) => sum + unionArea_m2([hole]), 0);
        const plain_m2 = measureRoof(given).area_m2;
        const sheathed_m2 = found.area_m2 + openings_m2;
        if (given.shape === 'gambrel') expect(sheathed_m2).toBeGreaterThanOrEqual(plain_m2 - 1e-3);
        else expect(Math.abs(sheathed_m2 - plain_m2)).toBeLessThan(1e-3);
      }),
      { numRuns: 300 },
    );
  });

  it('holes lie inside their plane and never touch each other', () => {
    fc.assert(
      fc.property(anyPlan, ({ pitch, valleys, dormers, skylights, chimneys, ...rest }) => {
        const given = { ...rest, angle_deg: (Math.atan(pitch / 12) * 180) / Math.PI };
        for (const { outline, holes } of roofPlanes(given, { valleys, dormers, skylights, chimneys })
          .planes) {
          const each_m2 = holes.reduce((sum, hole) => sum + unionArea_m2([hole]), 0);
          expect(Math.abs(unionArea_m2(holes) - each_m2)).toBeLessThan(1e-4);
          expect(Math.abs(unionArea_m2([outline, ...holes]) - unionArea_m2([outline]))).toBeLessThan(1e-4);
        }
      }),
      { numRuns: 200 },
    );
  });
});

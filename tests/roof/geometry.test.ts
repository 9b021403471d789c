import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleOfPitch_deg, cosine, measureRoof, roofEdge, sine } from '../../src/roof/geometry.ts';

/** A 9:12 roof is a 3-4-5 triangle: cosine 0.8, sine 0.6. */
const nine = angleOfPitch_deg(9);
const plan = {
  angle_deg: nine,
  length_m: 12,
  width_m: 8,
  eaveOverhang_m: 0.4,
  rakeOverhang_m: 0.3,
} as const;

describe('the angle of a pitch', () => {
  it('9:12 is a 3-4-5 triangle, 12:12 is 45°', () => {
    expect(cosine(nine)).toBeCloseTo(0.8, 12);
    expect(sine(nine)).toBeCloseTo(0.6, 12);
    expect(angleOfPitch_deg(12)).toBeCloseTo(45, 12);
    expect(angleOfPitch_deg(0)).toBe(0);
  });
});

describe('the measures of a roof, by plane geometry', () => {
  it('gable: two rectangles 5.5 m by 12.6 m', () => {
    expect(measureRoof({ ...plan, shape: 'gable' })).toEqual({
      area_m2: expect.closeTo(2 * 5.5 * 12.6, 9) as number,
      eaveLength_m: expect.closeTo(2 * 12.6, 9) as number,
      rakeLength_m: expect.closeTo(4 * 5.5, 9) as number,
      ridgeLength_m: expect.closeTo(12.6, 9) as number,
      slopeLength_m: expect.closeTo(5.5, 9) as number,
      run_m: 4,
    });
  });

  it('hip: two trapezoids and two triangles', () => {
    const roof = measureRoof({ ...plan, shape: 'hip' });
    const trapezoid_m2 = ((12.8 + 4) / 2) * 5.5;
    const triangle_m2 = (8.8 * 5.5) / 2;
    expect(roof.area_m2).toBeCloseTo(2 * trapezoid_m2 + 2 * triangle_m2, 9);
    expect(roof).toMatchObject({ eaveLength_m: 2 * (12.8 + 8.8), rakeLength_m: 0, ridgeLength_m: 4 });
  });

  it('a hip over a square has no ridge', () => {
    expect(measureRoof({ ...plan, shape: 'hip', length_m: 8 }).ridgeLength_m).toBe(0);
    expect(measureRoof({ ...plan, shape: 'hip', length_m: 6 }).ridgeLength_m).toBe(0);
  });

  it('shed: one rectangle over the whole width', () => {
    const roof = measureRoof({ ...plan, shape: 'shed' });
    expect(roof.slopeLength_m).toBeCloseTo(8.4 / 0.8, 9);
    expect(roof.area_m2).toBeCloseTo((8.4 / 0.8) * 12.6, 9);
    expect(roof.eaveLength_m).toBeCloseTo(12.6, 9);
    expect(roof.rakeLength_m).toBeCloseTo((2 * 8.4) / 0.8, 9);
    expect(roof.run_m).toBe(8);
  });

  it('with overhangs alike all round, hip and gable cover the same area (any plan and slope)', () => {
    const length = fc.double({ min: 2, max: 60, noNaN: true });
    fc.assert(
      fc.property(
        length,
        length,
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        fc.integer({ min: 2, max: 24 }),
        (length_m, width_m, overhang_m, pitch) => {
          const both = {
            length_m,
            width_m,
            angle_deg: angleOfPitch_deg(pitch),
            eaveOverhang_m: overhang_m,
            rakeOverhang_m: overhang_m,
          };
          const hip = measureRoof({ ...both, shape: 'hip' }).area_m2;
          expect(measureRoof({ ...both, shape: 'gable' }).area_m2 / hip).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});

describe('the roof edge at 9:12, 120 mm above a 140 mm rafter', () => {
  const edge = { angle_deg: nine, layers_m: [0.1, 0.02], framingDepth_m: 0.14 } as const;

  it.each([
    ['plumb', 'rafter-tails', 0.26 / 0.8],
    ['square', 'rafter-tails', 0.26],
    ['plumb', 'truss-tails', 0.26 / 0.8],
    ['square', 'truss-tails', 0.26],
    ['plumb', 'outriggers', 0.12 / 0.8],
    ['square', 'outriggers', 0.12],
  ] as const)('%s cut on %s', (cut, carrier, fascia_m) => {
    const found = roofEdge({ ...edge, cut, carrier });
    expect(found.fascia_m).toBeCloseTo(fascia_m, 12);
    expect(found.buildUp_m).toBeCloseTo(0.12, 12);
    expect(found.ridgeRise_m).toBeCloseTo(0.15, 12);
  });

  it('a steeper roof never has a lower plumb-cut fascia; a square cut does not change (2:12 to 24:12)', () => {
    const pitch = fc.double({ min: 2, max: 24, noNaN: true });
    fc.assert(
      fc.property(pitch, pitch, (a, b) => {
        const at = (rise: number, cut: 'plumb' | 'square') =>
          roofEdge({ ...edge, angle_deg: angleOfPitch_deg(rise), cut, carrier: 'rafter-tails' }).fascia_m;
        const [flat, steep] = a < b ? [a, b] : [b, a];
        expect(at(steep, 'plumb')).toBeGreaterThanOrEqual(at(flat, 'plumb'));
        expect(at(steep, 'square')).toBe(at(flat, 'square'));
      }),
    );
  });
});

/** What holds the upper layers back: the slanted screw and its strut, the eave block, the hold of one screw. */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { screwOf } from '../../src/catalog/lumber.ts';
import { eaveCleat } from '../../src/structure/eaveCleat.ts';
import { holdUse, screwHold } from '../../src/structure/screwHold.ts';
import { SLANT_DEG, slantedLength, slantedScrews } from '../../src/structure/slantedScrews.ts';
import { gapSlip, screwPush, slantedShare, trussForces } from '../../src/structure/slopeTruss.ts';
import {
  metersFromInches,
  newtonsFromPounds,
  pascalsFromPsf,
  PASCALS_PER_PSI,
  poundsFromNewtons,
} from '../../src/units.ts';

const inch = metersFromInches;
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rad = (angle_deg: number): number => (angle_deg * Math.PI) / 180;

/**
 * Two pinned bars by the direct stiffness method: joint stiffness from unit elongations, then displacements, then bar
 * forces. x runs up the slope, y away from the roof. Shares no formula with the code under test.
 */
function barsByStiffness(load: { x: number; y: number }, feet: readonly (readonly [number, number])[]) {
  const bars = feet.map(([x, y]) => {
    const length = Math.hypot(x, y);
    return { length, cos: x / length, sin: y / length };
  });
  const ea = 7;
  const stiffness = Matrix.zeros(2, 2);
  for (const { length, cos, sin } of bars)
    stiffness.add(
      new Matrix([
        [cos * cos, cos * sin],
        [cos * sin, sin * sin],
      ]).mul(ea / length),
    );
  const moved = solve(stiffness, Matrix.columnVector([load.x, load.y]));
  // Elongation of a bar from the head to its fixed foot is minus the head's movement along it.
  return bars.map(({ length, cos, sin }) => (-ea / length) * (moved.get(0, 0) * cos + moved.get(1, 0) * sin));
}

describe('a slanted screw and its strut', () => {
  it('board: F/cos b and F tan b + N; at 60 degrees 100 N pull 200 N and press 173.2 N', () => {
    const forces = trussForces(100, 0, 60, 90);
    expect(forces.tension_N).toBeCloseTo(200, 9);
    expect(forces.compression_N).toBeCloseTo(173.205, 3);
    expect(trussForces(100, 50, 60, 90).compression_N).toBeCloseTo(223.205, 3);
  });
  it('a pair at 60 degrees: 100 N pull 100 N and push 100 N', () => {
    const forces = trussForces(100, 0, 60, 60);
    expect(forces.tension_N).toBeCloseTo(100, 9);
    expect(forces.compression_N).toBeCloseTo(100, 9);
  });
  it('equals a truss solved by stiffness, slopes of 30 to 85 degrees, any pull and press', () => {
    fc.assert(
      fc.property(
        within(0, 5000),
        within(0, 5000),
        within(30, 85),
        within(30, 90),
        within(0.05, 0.4),
        (along_N, pressing_N, b, c, depth_m) => {
          const feet = [
            [depth_m / Math.tan(rad(b)), -depth_m],
            [c === 90 ? 0 : -depth_m / Math.tan(rad(c)), -depth_m],
          ] as const;
          const [tension = 0, strut = 0] = barsByStiffness({ x: -along_N, y: -pressing_N }, feet);
          const forces = trussForces(along_N, pressing_N, b, c);
          const size = along_N + pressing_N + 1;
          expect(Math.abs(forces.tension_N - tension) / size).toBeLessThan(1e-9);
          expect(Math.abs(forces.compression_N + strut) / size).toBeLessThan(1e-9);
        },
      ),
    );
  });
  it('keeps all of its withdrawal square to the grain, 1/1.05 of it at 60 degrees', () => {
    expect(slantedShare(90)).toBeCloseTo(1, 12);
    expect(slantedShare(60)).toBeCloseTo(1 / (1.2 * 0.25 + 0.75), 12);
    expect(() => slantedShare(20)).toThrow(RangeError);
  });
});

describe('push on a screw across a gap', () => {
  it('long: 0.877 of Euler over 1.67, by hand 170 lb for a No. 14 over 8 in', () => {
    // r = 0.196/4 = 0.049 in; KL/r = 163.3; Fe = 9.8696 x 29008 ksi / 163.3^2 = 10.74 ksi; x 0.877/1.67 x 0.03017 in^2.
    const push_N = screwPush(inch(0.196), 70_000 * PASCALS_PER_PSI, inch(8));
    expect(poundsFromNewtons(push_N)).toBeCloseTo(170.2, 0);
  });
  it('short: near yield over 1.67', () => {
    const area_m2 = Math.PI * (inch(0.196) / 2) ** 2;
    const push_N = screwPush(inch(0.196), 70_000 * PASCALS_PER_PSI, inch(0.05));
    expect(push_N / ((70_000 * PASCALS_PER_PSI * area_m2) / 1.67)).toBeCloseTo(1, 3);
  });
  it('never grows with length, and the two branches meet, 10 to 500 mm', () => {
    fc.assert(
      fc.property(within(0.01, 0.5), within(1, 1.5), (length_m, times) => {
        const push = (l: number) => screwPush(inch(0.196), 70_000 * PASCALS_PER_PSI, l);
        expect(push(length_m * times)).toBeLessThanOrEqual(push(length_m));
        expect(push(length_m * 1.0001)).toBeGreaterThan(push(length_m) * 0.998);
      }),
    );
  });
});

describe('slip across a gap', () => {
  it('is F g³/(12 E I): 10 lb on a No. 14 through 4 in bend it 0.025 in', () => {
    // I = pi 0.196^4/64 = 7.244e-5 in^4; 10 x 64 / (12 x 29.008e6 x 7.244e-5).
    expect(gapSlip(newtonsFromPounds(10), inch(4), inch(0.196)) / inch(1)).toBeCloseTo(0.02538, 4);
  });
});

describe('slanted screws by spacing', () => {
  const wanted = {
    cases: [{ along_Pa: pascalsFromPsf(20), pressing_Pa: pascalsFromPsf(30), loadDuration: 1.15 }],
    across_m: inch(16),
    steps_m: [48, 32, 24, 16, 12, 8].map(inch),
    withdrawal_N: newtonsFromPounds(183),
    pullThrough_N: newtonsFromPounds(220),
    strut: { kind: 'board', width_m: inch(3.5), strength_Pa: 20 * PASCALS_PER_PSI },
  } as const;
  it('take the widest spacing that holds', () => {
    // 48 in: F = 20 x 48 x 16 / 144 = 106.7 lb, T = 213 lb over 183 / 1.05 x 1.15 = 200 lb; 32 in: T = 142 lb.
    const found = slantedScrews(wanted);
    expect(found.step_m).toBeCloseTo(inch(32), 9);
    expect(poundsFromNewtons(found.tension_N)).toBeCloseTo(142.2, 1);
  });
  it('board presses alike at every spacing: soft board fails them all', () => {
    const soft = slantedScrews({ ...wanted, strut: { ...wanted.strut, strength_Pa: 5 * PASCALS_PER_PSI } });
    expect(soft).toMatchObject({ governing: 'board', step_m: inch(8) });
    expect(soft.ratio).toBeGreaterThan(1);
  });
  it('a closer spacing never raises the ratio; more pull never lowers it', () => {
    fc.assert(
      fc.property(
        within(1, 5000),
        within(0, 3000),
        within(0.1, 1.2),
        within(0.3, 1),
        (along_Pa, pressing_Pa, step_m, share) => {
          const at = (step: number, pull_Pa: number) =>
            slantedScrews({
              ...wanted,
              cases: [{ along_Pa: pull_Pa, pressing_Pa, loadDuration: 1 }],
              steps_m: [step],
            }).ratio;
          expect(at(step_m * share, along_Pa)).toBeLessThanOrEqual(at(step_m, along_Pa) * (1 + 1e-12));
          expect(at(step_m, along_Pa * 1.5)).toBeGreaterThanOrEqual(at(step_m, along_Pa));
        },
      ),
    );
  });
  it('a pair is limited by the push of the long screw', () => {
    const root_m = inch(0.196);
    const pair = slantedScrews({
      ...wanted,
      strut: { kind: 'screw', root_m, yield_Pa: 70_000 * PASCALS_PER_PSI, gap_m: inch(12) },
    });
    expect(pair.governing).toBe('push');
    expect(pair.tension_N).toBeCloseTo(pair.compression_N, 9);
    expect(slantedLength(inch(12))).toBeCloseTo(inch(12) / Math.sin(rad(SLANT_DEG)), 12);
  });
});

describe('an eave block', () => {
  const wanted = {
    cases: [{ force_N: newtonsFromPounds(300), loadDuration: 1.15 }],
    lever_m: inch(4),
    hold: {
      withdrawal_N: newtonsFromPounds(183),
      pullThrough_N: newtonsFromPounds(220),
      shear_N: newtonsFromPounds(138),
    },
    nominal_m: inch(0.242),
    bearingArea_m2: inch(1.5) * inch(3.5),
    bearing_Pa: 425 * PASCALS_PER_PSI,
  };
  it('tension of the far screw is that of a rigid block about its toe', () => {
    const found = eaveCleat(wanted);
    // n screws at i x 2.42 in: T = 300 x 4 x n x 2.42 / (2.42^2 sum i^2).
    const squares = [...Array(found.count)].reduce<number>((sum, _, i) => sum + (i + 1) ** 2, 0);
    const tension_lb = (300 * 4 * found.count) / (2.42 * squares);
    expect(poundsFromNewtons(found.tension_N)).toBeCloseTo(tension_lb, 6);
    // The moments of all screws about the toe add up to the push times its lever.
    const all = [...Array(found.count)].reduce<number>(
      (sum, _, i) => sum + ((tension_lb * (i + 1)) / found.count) * (i + 1) * 2.42,
      0,
    );
    expect(all).toBeCloseTo(1200, 6);
    expect(found.length_m).toBeCloseTo(inch((found.count + 1) * 2.42), 9);
  });
  it('takes the fewest screws that hold, six at most', () => {
    expect(eaveCleat({ ...wanted, cases: [{ force_N: 50, loadDuration: 1 }] }).count).toBe(2);
    const heavy = eaveCleat({ ...wanted, cases: [{ force_N: 20_000, loadDuration: 1 }] });
    expect(heavy.count).toBe(6);
    expect(heavy.ratio).toBeGreaterThan(1);
  });
  it('soft grain under the push governs where the screws are many', () => {
    expect(eaveCleat({ ...wanted, bearing_Pa: 1e4 }).governing).toBe('bearing');
  });
  it('more push or a taller block never lowers the ratio at the same number of screws, 0 to 20 kN, 0 to 0.3 m', () => {
    fc.assert(
      fc.property(within(1, 20_000), within(0, 0.3), within(1, 3), (force_N, lever_m, times) => {
        const at = (force: number, lever: number) =>
          eaveCleat({ ...wanted, cases: [{ force_N: force, loadDuration: 1 }], lever_m: lever });
        const one = at(force_N, lever_m);
        for (const more of [at(force_N * times, lever_m), at(force_N, lever_m * times)])
          expect(more.count > one.count || more.ratio >= one.ratio * (1 - 1e-12)).toBe(true);
      }),
    );
  });
  it('refuses no load at all', () => {
    expect(() => eaveCleat({ ...wanted, cases: [] })).toThrow('cases');
  });
});

describe('the hold of one screw', () => {
  const wanted = {
    screw: screwOf('wood-14'),
    side: { thickness_m: inch(1.5), specificGravity: 0.42 },
    main: { thread_m: inch(1.5), specificGravity: 0.42 },
    gap_m: inch(4),
  };
  it('No. 14, 1 1/2 in of thread in G 0.42: 183 lb withdrawal, 12.7 lb shear through 4 in', () => {
    const hold = screwHold(wanted);
    expect(poundsFromNewtons(hold.withdrawal_N)).toBeCloseTo(2850 * 0.42 ** 2 * 0.242 * 1.5, 6);
    expect(Math.abs(poundsFromNewtons(hold.lateral_N) - 0.72 * 17.6)).toBeLessThan(0.1);
    // 1725 pi 0.48^2 0.42^2, the furring being thicker than 2.5 heads.
    expect(poundsFromNewtons(hold.pullThrough_N ?? 0)).toBeCloseTo(1725 * Math.PI * 0.48 ** 2 * 0.42 ** 2, 6);
    expect(hold.leastPenetration_m).toBeCloseTo(6 * inch(0.242), 12);
    expect(hold.fromReport).toEqual([]);
  });
  it('each value of a report goes before the equations', () => {
    const hold = screwHold({
      ...wanted,
      report: { withdrawal_N_m: 50_000, pullThrough_N: 1500, lateral_N: 90, minimumPenetration_m: 0.03 },
    });
    expect(hold.withdrawal_N).toBeCloseTo(50_000 * inch(1.5), 9);
    expect(hold).toMatchObject({ pullThrough_N: 1500, lateral_N: 90, leastPenetration_m: 0.03 });
    expect(hold.fromReport).toEqual(['withdrawal', 'pull-through', 'lateral', 'penetration']);
    expect(
      screwHold({ ...wanted, report: { allowableWithdrawal_N: 999, withdrawal_N_m: 1 } }).withdrawal_N,
    ).toBe(999);
  });
  it('a report for thinner insulation never raises the shear across thicker', () => {
    const plain_N = screwHold(wanted).lateral_N;
    const report = { lateral_N: 400, lateralGap_m: inch(2) };
    expect(screwHold({ ...wanted, report }).lateral_N).toBeCloseTo(plain_N, 9);
    expect(screwHold({ ...wanted, gap_m: inch(2), report }).lateral_N).toBe(400);
  });
  it('a lag screw leaves pull-through to its washer', () => {
    expect(screwHold({ ...wanted, screw: screwOf('lag-1/4') }).pullThrough_N).toBeNull();
  });
  it('use: pull alone is the withdrawal ratio, shear alone the lateral one, together never less than either', () => {
    const hold = screwHold(wanted);
    expect(holdUse(hold, 100, 0, 1.6).ratios.combined).toBeCloseTo(100 / (1.6 * hold.withdrawal_N), 9);
    expect(holdUse(hold, 0, 20, 1.6).ratios.combined).toBeCloseTo(20 / hold.lateral_N, 9);
    expect(holdUse(hold, 0, 0, 1).ratio).toBe(0);
    fc.assert(
      fc.property(within(0, 2000), within(0, 200), within(0.9, 1.6), (pull_N, shear_N, duration) => {
        const use = holdUse(hold, pull_N, shear_N, duration);
        expect(use.ratio).toBe(Math.max(...Object.values(use.ratios)));
        const half = holdUse(hold, pull_N / 2, shear_N / 2, duration);
        expect(half.ratio).toBeLessThanOrEqual(use.ratio);
      }),
    );
  });
});

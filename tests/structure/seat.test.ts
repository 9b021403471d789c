/** The springy seat against a stiffness solve that shares no formula with it, its limits, and laws of loads and outriggers. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadCases } from '../../src/structure/combinations.ts';
import { roofLive } from '../../src/structure/live.ts';
import { outriggerScreening, type Outrigger, type Seat } from '../../src/structure/outrigger.ts';
import { smallestOutrigger } from '../../src/structure/outriggerChoice.ts';
import { rafterTailScreening } from '../../src/structure/rafterTail.ts';
import {
  beamOnSeat,
  seatPressure,
  seatSprings,
  type SeatBeam,
  type SeatSprings,
} from '../../src/structure/seat.ts';
import { stepDrift, unbalancedSnow } from '../../src/structure/snowDrift.ts';
import { allowableStress, overhangStatics, tipDeflection } from '../../src/structure/timber.ts';
import {
  metersFromFeet,
  metersFromInches,
  pascalsFromPsf,
  PASCALS_PER_PSI,
  psfFromPascals,
} from '../../src/units.ts';
import { overhangByStiffness } from './beamStiffness.ts';

const inch = metersFromInches;

/** The same beam by the stiffness method. */
function bySprings(beam: SeatBeam, springs: SeatSprings) {
  const { load_N_m: w, tip_N: p, overhang_m: a, backSpan_m: b, stiffness_Nm2: ei } = beam;
  const solved = overhangByStiffness(
    { w, p, a, b, ei },
    { heel: springs.heel_N_m, seat: springs.seat_N_m, seatTurn: springs.seatTurn_Nm },
  );
  return {
    // A spring pulls against its own sinking.
    wallReaction_N: springs.seat_N_m * solved.wallDown,
    seatMoment_Nm: springs.seatTurn_Nm * solved.wallTurn,
    rotation_rad: solved.wallTurn,
    tipDeflection_m: solved.tipDown,
  };
}

const beams = fc.record({
  load_N_m: fc.double({ min: 10, max: 4000, noNaN: true }),
  tip_N: fc.double({ min: 0, max: 900, noNaN: true }),
  overhang_m: fc.double({ min: 0.1, max: 1.2, noNaN: true }),
  backSpan_m: fc.double({ min: 0.2, max: 3, noNaN: true }),
  stiffness_Nm2: fc.double({ min: 3000, max: 300_000, noNaN: true }),
});
const springs = fc.record({
  seat_N_m: fc.double({ min: 1e5, max: 1e7, noNaN: true }),
  seatTurn_Nm: fc.double({ min: 0, max: 1e5, noNaN: true }),
  heel_N_m: fc.double({ min: 1e5, max: 1e7, noNaN: true }),
});
const near = (value: number, expected: number, scale: number): void =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-8 * Math.max(scale, Math.abs(expected)));

describe('a beam on a seat that sinks and turns', () => {
  it('agrees with the stiffness method: a 0.1 to 1.2 m, b 0.2 to 3 m, springs 0.1 to 10 MN/m', () => {
    fc.assert(
      fc.property(beams, springs, (beam, spring) => {
        const found = beamOnSeat(beam, spring);
        const solved = bySprings(beam, spring);
        const force = beam.load_N_m * beam.overhang_m + beam.tip_N;
        near(found.wallReaction_N, solved.wallReaction_N, force);
        near(found.heelHoldDown_N, solved.wallReaction_N - force, force);
        near(found.seatMoment_Nm, solved.seatMoment_Nm, force);
        near(found.rotation_rad, solved.rotation_rad, 1e-3);
        near(found.tipDeflection_m, solved.tipDeflection_m, 1e-3);
      }),
    );
  });
  it('is in balance to 1e-9: forces, and moments about the heel', () => {
    fc.assert(
      fc.property(beams, springs, (beam, spring) => {
        const { overhang_m: a, backSpan_m: b, load_N_m: w, tip_N: p } = beam;
        const { wallReaction_N, heelHoldDown_N, seatMoment_Nm } = beamOnSeat(beam, spring);
        const down = w * a + p;
        expect(Math.abs(wallReaction_N - heelHoldDown_N - down)).toBeLessThanOrEqual(1e-9 * down);
        const turning = w * a * (b + a / 2) + p * (a + b);
        expect(Math.abs(wallReaction_N * b + seatMoment_Nm - turning)).toBeLessThanOrEqual(1e-9 * turning);
      }),
    );
  });
  it('with rigid supports and a knife edge is the handbook beam', () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const rigid = beamOnSeat(beam, { seat_N_m: Infinity, seatTurn_Nm: 0, heel_N_m: Infinity });
        near(rigid.tipDeflection_m, tipDeflection(beam), 1e-6);
        near(rigid.wallReaction_N, overhangStatics(beam).wallReaction_N, 1);
      }),
    );
  });
  it('a softer bed never lowers the sag of the tip', () => {
    fc.assert(
      fc.property(beams, fc.double({ min: 1e5, max: 1e7, noNaN: true }), (beam, bed_Pa) => {
        const on = (factor: number): number =>
          beamOnSeat(beam, {
            heel_N_m: Infinity,
            ...seatSprings({ bed_Pa: bed_Pa * factor, thickness_m: 0.1, width_m: 0.038, length_m: 0.3 }),
          }).tipDeflection_m;
        expect(on(0.5)).toBeGreaterThanOrEqual(on(1) * (1 - 1e-12));
      }),
    );
  });
  it.each([
    { seat_N_m: 0, seatTurn_Nm: 0, heel_N_m: 1 },
    { seat_N_m: 1, seatTurn_Nm: -1, heel_N_m: 1 },
    { seat_N_m: 1, seatTurn_Nm: 0, heel_N_m: 0 },
  ])('springs %o are refused', (spring) => {
    const beam = { load_N_m: 1, tip_N: 0, overhang_m: 1, backSpan_m: 1, stiffness_Nm2: 1 };
    expect(() => beamOnSeat(beam, spring)).toThrow(RangeError);
  });
});

describe('pressure under a turned seat', () => {
  const seat = { force_N: 600, width_m: 0.1, length_m: 0.3 };
  it.each([
    [0, 1, false],
    [600 * 0.049, 1.98, false],
    [600 * 0.075, 8 / 3, true],
    [600 * 0.2, 4, true],
  ])('moment %d: %d times the mean (footing without tension, by hand)', (moment_Nm, times, lifts) => {
    const found = seatPressure({ ...seat, moment_Nm });
    expect(found.mean_Pa).toBeCloseTo(20_000, 6);
    expect(found.edge_Pa / found.mean_Pa).toBeCloseTo(times, 9);
    expect(found.lifts).toBe(lifts);
  });
  it('no force, no pressure', () => {
    expect(seatPressure({ ...seat, force_N: 0, moment_Nm: 5 })).toEqual({
      mean_Pa: 0,
      edge_Pa: 0,
      lifts: false,
    });
  });
});

const outrigger = (overhang_m: number, seat?: Seat): Outrigger => ({
  member: { species: 'spruce-pine-fir', size: '2x6', orientation: 'on-edge' },
  spacing_m: inch(24),
  overhang_m,
  backSpan_m: 1.2,
  loads: {
    dead_Pa: 300,
    snow_Pa: 1500,
    unbalanced_Pa: 1900,
    roofLive_Pa: 900,
    robustIce_Pa: 3000,
    windUplift_Pa: -2500,
    windDownward_Pa: 800,
  },
  tip_N: 45,
  screw: {
    kind: 'wood-screw',
    diameter_m: inch(0.242),
    headDiameter_m: inch(0.48),
    threadPenetration_m: inch(1.5),
    specificGravity: 0.42,
    heelCount: 2,
    wallCount: 2,
  },
  ...(seat === undefined ? {} : { seat }),
});
const board: Seat = {
  on: 'board',
  bearingLength_m: 0.3,
  boardThickness_m: 0.1,
  boardStrength_Pa: 172_000,
};

describe('an outrigger', () => {
  it('asks for more in every check when it reaches farther: 0.05 to 1.4 m, on wood and on board', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 1.4, noNaN: true }),
        fc.double({ min: 0.001, max: 0.4, noNaN: true }),
        fc.constantFrom(undefined, board),
        (a, more, seat) => {
          const [near, far] = [a, a + more].map((one) => outriggerScreening(outrigger(one, seat)));
          for (const key of [
            'bending',
            'shear',
            'deflection',
            'heelScrews',
            'wallTie',
            'seat',
            'seatEdge',
          ] as const)
            expect(far?.[key]?.demand ?? 0).toBeGreaterThanOrEqual((near?.[key]?.demand ?? 0) * (1 - 1e-12));
        },
      ),
    );
  });
  it('a robust case governs nothing and is shown', () => {
    const with_ = outriggerScreening(outrigger(0.6));
    const without = outriggerScreening({
      ...outrigger(0.6),
      loads: {
        dead_Pa: 300,
        snow_Pa: 1500,
        unbalanced_Pa: 1900,
        roofLive_Pa: 900,
        windUplift_Pa: -2500,
        windDownward_Pa: 800,
      },
    });
    expect(with_.governing).toEqual(without.governing);
    expect(with_.robust?.ratio).toBeGreaterThan(with_.bending.ratio);
    expect(without.robust).toBeUndefined();
  });
  it('as many screws as needed bring the check to its limit, one fewer does not', () => {
    const long = outrigger(1.2);
    const { screwsNeeded } = outriggerScreening(long);
    const tie = (wallCount: number): number =>
      outriggerScreening({ ...long, screw: { ...long.screw, wallCount } }).wallTie.ratio;
    expect(screwsNeeded.wall).toBeGreaterThan(1);
    expect(tie(screwsNeeded.wall)).toBeLessThanOrEqual(1);
    expect(tie(screwsNeeded.wall - 1)).toBeGreaterThan(1);
  });
  it('blocking is stiffer than board and softer than the deck', () => {
    const sag = (seat: Seat): number => outriggerScreening(outrigger(0.6, seat)).deflection.demand;
    const blocking = sag({ on: 'blocking', bearingLength_m: 0.0889, blockingHeight_m: 0.1 });
    expect(blocking).toBeGreaterThan(sag({ on: 'wood', bearingLength_m: 0.0889 }));
    expect(blocking).toBeLessThan(sag(board));
  });
  it('the smallest that passes: every size tried before it fails or is gated', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 0.9, noNaN: true }), (a) => {
        const wanted = { ...outrigger(a), backSpan_m: 2 * a };
        const { choice, tried } = smallestOutrigger(wanted);
        if (choice === null) return;
        expect(choice.screening.governing.ratio).toBeLessThanOrEqual(1);
        const place = tried.findIndex(
          (one) => one.size === choice.size && one.orientation === choice.orientation,
        );
        for (const before of tried.slice(0, place))
          expect(before.ratio > 1 || before.gates.includes('flat-2x4')).toBe(true);
      }),
    );
  });
  it('a settled size or orientation is kept to', () => {
    const { tried } = smallestOutrigger(outrigger(0.4), Infinity, { size: '2x8', orientation: 'flat' });
    expect(tried.map(({ size, orientation }) => [size, orientation])).toEqual([['2x8', 'flat']]);
  });
});

it('grades: Douglas fir-larch Select Structural 2x6 is 1500 x 1.3 psi with E 1.9 million (memory)', () => {
  const member = {
    species: 'douglas-fir-larch',
    size: '2x6',
    orientation: 'on-edge',
    grade: 'select-structural',
  } as const;
  const found = allowableStress(member, 1, false);
  expect(found.bending_Pa / PASCALS_PER_PSI).toBeCloseTo(1950, 6);
  expect(found.elasticity_Pa / PASCALS_PER_PSI).toBeCloseTo(1.9e6, 3);
});

describe('loads', () => {
  it.each([
    [3, 20],
    [4, 20],
    [8, 16],
    [12, 12],
    [18, 12],
  ])('roof live load at %d in 12 is %d psf (eq. 4.8-1, memory)', (pitch, expected_psf) => {
    expect(psfFromPascals(roofLive(pitch))).toBeCloseTo(expected_psf, 9);
  });
  it('unbalanced snow, drift and live load each add their case; a robust one does not count', () => {
    const cases = loadCases(
      { dead_Pa: 100, snow_Pa: 1000, unbalanced_Pa: 1200, drift_Pa: 2000, robustIce_Pa: 3000 },
      0,
    );
    expect(cases.map(({ id, normal_Pa, counts }) => [id, normal_Pa, counts])).toEqual([
      ['dead', 100, true],
      ['dead-snow', 1100, true],
      ['dead-unbalanced', 1300, true],
      ['dead-drift', 2100, true],
      ['dead-ice-robust', 3100, false],
    ]);
  });
  it('a drift below a 40 ft roof with 50 psf: 0.43 x 40^(1/3) x 60^(1/4) - 1.5 ft, 20.5 pcf, by hand', () => {
    const drift = stepDrift({
      groundSnow_Pa: pascalsFromPsf(50),
      importanceFactor: 1,
      upperLength_m: metersFromFeet(40),
      lowerLength_m: metersFromFeet(20),
    });
    const height_ft = 0.43 * 40 ** (1 / 3) * 60 ** 0.25 - 1.5;
    expect(psfFromPascals(drift.surcharge_Pa)).toBeCloseTo(height_ft * 20.5, 4);
    expect(drift.width_m).toBeCloseTo(metersFromFeet(4 * height_ft), 9);
    expect(drift.from).toBe('lee');
    // A long lower roof in front of a short upper one drifts to windward: three quarters of its own height.
    const front = stepDrift({
      groundSnow_Pa: pascalsFromPsf(50),
      importanceFactor: 1,
      upperLength_m: metersFromFeet(20),
      lowerLength_m: metersFromFeet(200),
    });
    expect(front.from).toBe('windward');
    expect(front.height_m).toBeCloseTo(metersFromFeet(0.75 * (0.43 * 200 ** (1 / 3) * 60 ** 0.25 - 1.5)), 9);
  });
  it('the 2022 drift takes the place of the 2016 one where the winter wind is given', () => {
    const roof = {
      groundSnow_Pa: pascalsFromPsf(50),
      sloped_Pa: pascalsFromPsf(35),
      eaveToRidge_m: metersFromFeet(32),
      angle_deg: 26.57,
      importanceFactor: 1,
    };
    const found = unbalancedSnow({ ...roof, winterWindShare: 0.55 });
    // S8: 2.851 ft for these inputs.
    expect(found.driftHeight_m).toBeCloseTo(metersFromFeet(2.851), 3);
    expect(unbalancedSnow(roof).driftHeight_m).not.toBeCloseTo(found.driftHeight_m, 2);
  });
});

it('a tail’s cases are in balance, and more overhang never lowers a demand', () => {
  const tail = (overhang_m: number) =>
    rafterTailScreening({
      species: 'hem-fir',
      size: '2x8',
      spacing_m: inch(16),
      overhang_m,
      backSpan_m: 3,
      angle_deg: 30,
      notch_m: inch(1.5),
      loads: { dead_Pa: 400, snow_Pa: 1500, windUplift_Pa: -2000, windDownward_Pa: 500 },
      tip_N: 30,
    });
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 1.2, noNaN: true }), (a) => {
      const near = tail(a);
      const far = tail(a * 1.1);
      for (const each of near.cases) {
        const tip_N = each.id === 'uplift' ? 0 : 30;
        const down = each.normal_Pa * inch(16) * a + tip_N;
        expect(Math.abs(each.wallReaction_N - each.heelHoldDown_N - down)).toBeLessThanOrEqual(
          1e-9 * Math.abs(down),
        );
      }
      for (const key of ['bending', 'shear', 'deflection'] as const)
        expect(far[key].demand).toBeGreaterThanOrEqual(near[key].demand);
    }),
  );
  // Hand: 1 1/2 in of level seat cuts 1.5 sin 30 = 3/4 in; a quarter of 7 1/4 in.
  expect(tail(0.5).seatCut.demand).toBeCloseTo(inch(0.75), 12);
  expect(tail(0.5).seatCut.capacity).toBeCloseTo(inch(7.25 / 4), 12);
});

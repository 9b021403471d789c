/**
 * Outrigger and rafter tail against the stiffness method solved by a numerical library, and against the handbook
 * formulas of a beam overhanging one support: AISC Manual table 3-23 diagrams 24 to 26 and AWC Design Aid 6 figures
 * 24 to 26 (memory, the wording of the tables; the formulas hold by the stiffness solution beside them).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lumberOf, lumberSizes, speciesIds } from '../../src/catalog/lumber.ts';
import { outriggerScreening } from '../../src/structure/outrigger.ts';
import { rafterTailScreening } from '../../src/structure/rafterTail.ts';
import { beamOnSeat } from '../../src/structure/seat.ts';
import { overhangStatics, rectangle, sectionOf, tipDeflection } from '../../src/structure/timber.ts';
import { overhangByStiffness } from '../structure/beamStiffness.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Off by a share of a scale that cannot vanish. */
const off = (one: number, other: number, scale: number): number => Math.abs(one - other) / scale;
/** Rounding of doubles times the condition of the stiffness matrix, with three digits to spare. */
const CLOSE = 1e-9;

const beams = fc.record({
  load_N_m: within(10, 6000),
  tip_N: within(0, 2000),
  overhang_m: within(0.1, 1.5),
  backSpan_m: within(0.3, 4),
});

describe('a beam with an overhang, 10 to 6000 N/m, overhang 0.1 to 1.5 m, back span 0.3 to 4 m', () => {
  it('reactions, moment and sag are those of the stiffness method to 1e-9', () => {
    fc.assert(
      fc.property(beams, within(1e3, 1e5), (beam, ei) => {
        const solved = overhangByStiffness({
          w: beam.load_N_m,
          p: beam.tip_N,
          a: beam.overhang_m,
          b: beam.backSpan_m,
          ei,
        });
        const statics = overhangStatics(beam);
        const sag_m = tipDeflection({ ...beam, stiffness_Nm2: ei });
        expect(off(solved.wallUp, statics.wallReaction_N, statics.wallReaction_N)).toBeLessThan(CLOSE);
        expect(off(-solved.heelUp, statics.heelHoldDown_N, statics.wallReaction_N)).toBeLessThan(CLOSE);
        expect(off(solved.wallMoment, statics.moment_Nm, statics.moment_Nm)).toBeLessThan(CLOSE);
        expect(off(solved.tipDown, sag_m, sag_m)).toBeLessThan(CLOSE);
      }),
    );
  });

  it('uniform load on the overhang: R1 wa2/2l, R2 wa(2l+a)/2l, M wa2/2, tip wa3(4l+3a)/24EI', () => {
    fc.assert(
      fc.property(beams, within(1e3, 1e5), ({ load_N_m: w, overhang_m: a, backSpan_m: l }, EI) => {
        const beam = { load_N_m: w, tip_N: 0, overhang_m: a, backSpan_m: l };
        const statics = overhangStatics(beam);
        expect(statics.heelHoldDown_N).toBeCloseTo((w * a * a) / (2 * l), 8);
        expect(statics.wallReaction_N).toBeCloseTo((w * a * (2 * l + a)) / (2 * l), 8);
        expect(statics.moment_Nm).toBeCloseTo((w * a * a) / 2, 8);
        const tip_m = (w * a ** 3 * (4 * l + 3 * a)) / (24 * EI);
        expect(off(tipDeflection({ ...beam, stiffness_Nm2: EI }), tip_m, tip_m)).toBeLessThan(1e-12);
      }),
    );
  });

  it('load at the tip: R1 Pa/l, R2 P(l+a)/l, M Pa, tip Pa2(l+a)/3EI', () => {
    fc.assert(
      fc.property(beams, within(1, 2000), ({ overhang_m: a, backSpan_m: l }, P) => {
        const beam = { load_N_m: 0, tip_N: P, overhang_m: a, backSpan_m: l };
        const statics = overhangStatics(beam);
        expect(statics.heelHoldDown_N).toBeCloseTo((P * a) / l, 8);
        expect(statics.wallReaction_N).toBeCloseTo((P * (l + a)) / l, 8);
        expect(statics.moment_Nm).toBeCloseTo(P * a, 8);
        const EI = 1e4;
        const tip_m = (P * a * a * (l + a)) / (3 * EI);
        expect(off(tipDeflection({ ...beam, stiffness_Nm2: EI }), tip_m, tip_m)).toBeLessThan(1e-12);
      }),
    );
  });
});

describe('a beam on a seat and a heel that give', () => {
  it('reactions, seat moment, sinking, turn and sag are those of the stiffness method to 1e-7', () => {
    const spring = fc.oneof(fc.constant(Infinity), within(1e4, 1e8));
    fc.assert(
      fc.property(
        beams,
        within(1e3, 1e5),
        spring,
        spring,
        within(0, 1e5),
        (beam, ei, seat_N_m, heel_N_m, seatTurn_Nm) => {
          const state = beamOnSeat({ ...beam, stiffness_Nm2: ei }, { seat_N_m, heel_N_m, seatTurn_Nm });
          const solved = overhangByStiffness(
            { w: beam.load_N_m, p: beam.tip_N, a: beam.overhang_m, b: beam.backSpan_m, ei },
            { seat: seat_N_m, heel: heel_N_m, seatTurn: seatTurn_Nm },
          );
          const force = state.wallReaction_N;
          const lever = beam.overhang_m + beam.backSpan_m;
          // Springs up to ten thousand times the beam's own stiffness cost digits in the dense solve.
          const near = 1e-7;
          expect(off(solved.wallUp, force, force)).toBeLessThan(near);
          expect(off(-solved.heelUp, state.heelHoldDown_N, force)).toBeLessThan(near);
          expect(off(solved.seatMoment, state.seatMoment_Nm, force * lever)).toBeLessThan(near);
          expect(off(solved.wallDown, state.sinking_m, state.tipDeflection_m)).toBeLessThan(near);
          expect(
            off(solved.wallTurn * lever, state.rotation_rad * lever, state.tipDeflection_m),
          ).toBeLessThan(near);
          expect(off(solved.tipDown, state.tipDeflection_m, state.tipDeflection_m)).toBeLessThan(near);
        },
      ),
    );
  });
});

describe('the screenings, dead 200 to 1500 Pa and snow to 5000 Pa on the flat', () => {
  const loads = fc.record({ dead_Pa: within(200, 1500), snow_Pa: within(0, 5000) });

  it('an outrigger: every case has the reactions of its own load by the stiffness method', () => {
    fc.assert(
      fc.property(
        beams,
        loads,
        fc.constantFrom(...speciesIds),
        fc.constantFrom(...lumberSizes),
        fc.constantFrom('flat' as const, 'on-edge' as const),
        within(0.3, 0.7),
        ({ tip_N, overhang_m, backSpan_m }, roof, species, size, orientation, spacing_m) => {
          const member = { species, size, orientation };
          const ei = lumberOf(species, size).elasticity_Pa * sectionOf(member).inertia_m4;
          const { cases } = outriggerScreening({
            member,
            spacing_m,
            overhang_m,
            backSpan_m,
            loads: roof,
            tip_N,
            screw: {
              kind: 'wood-screw',
              diameter_m: 0.006,
              threadPenetration_m: 0.04,
              specificGravity: 0.42,
              heelCount: 2,
              wallCount: 2,
            },
          });
          expect(cases.map((load) => load.load_N_m / spacing_m)).toEqual([
            expect.closeTo(roof.dead_Pa, 6),
            expect.closeTo(roof.dead_Pa + roof.snow_Pa, 6),
          ]);
          for (const load of cases) {
            const solved = overhangByStiffness({
              w: load.load_N_m,
              p: tip_N,
              a: overhang_m,
              b: backSpan_m,
              ei,
            });
            expect(off(solved.wallUp, load.wallReaction_N, load.wallReaction_N)).toBeLessThan(CLOSE);
            expect(off(-solved.heelUp, load.heelHoldDown_N, load.wallReaction_N)).toBeLessThan(CLOSE);
            expect(off(solved.tipDown, load.memberDeflection_m, load.memberDeflection_m)).toBeLessThan(CLOSE);
          }
        },
      ),
    );
  });

  it('a rafter tail: bending, shear and sag are those of dead load and snow by the stiffness method', () => {
    fc.assert(
      fc.property(
        beams,
        loads,
        fc.constantFrom(...speciesIds),
        fc.constantFrom('2x6' as const, '2x8' as const, '2x10' as const),
        within(0, 0.03),
        ({ tip_N, overhang_m, backSpan_m }, roof, species, size, notch_m) => {
          const section = sectionOf({ species, size, orientation: 'on-edge' });
          const left = rectangle(section.width_m, section.depth_m - notch_m);
          const spacing_m = 0.4;
          const screened = rafterTailScreening({
            species,
            size,
            spacing_m,
            overhang_m,
            backSpan_m,
            angle_deg: 0,
            notch_m,
            loads: roof,
            tip_N,
          });
          /** The stress or sag that the screening names, from the case it names. */
          const solved = (governing: string) => {
            const pressure_Pa = governing === 'dead' ? roof.dead_Pa : roof.dead_Pa + roof.snow_Pa;
            return overhangByStiffness({
              w: pressure_Pa * spacing_m,
              p: tip_N,
              a: overhang_m,
              b: backSpan_m,
              ei: lumberOf(species, size).elasticity_Pa * section.inertia_m4,
            });
          };
          const { bending, shear, deflection } = screened;
          const bendingStress = solved(bending.governingCase).wallMoment / left.modulus_m3;
          expect(off(bendingStress, bending.demand, bending.demand)).toBeLessThan(CLOSE);
          const { wallUp, heelUp } = solved(shear.governingCase);
          // Shear jumps by the wall's reaction: the overhang's side is reaction and heel together.
          const greatest = Math.max(Math.abs(heelUp), Math.abs(wallUp + heelUp));
          expect(off((1.5 * greatest) / left.area_m2, shear.demand, shear.demand)).toBeLessThan(CLOSE);
          expect(
            off(solved(deflection.governingCase).tipDown, deflection.demand, deflection.demand),
          ).toBeLessThan(CLOSE);
        },
      ),
    );
  });
});

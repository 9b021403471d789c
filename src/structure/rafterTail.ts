/** Rafter tails and truss tails as cantilevers: prescriptive limits, then bending, shear and sag. */
import { metersFromInches } from '../units.ts';
import { loadCases, type RoofLoads } from './combinations.ts';
import { demandPositive, demandRange } from './guards.ts';
import {
  CONFIRM_IN_STANDARD,
  ENGINEER,
  standingOf,
  type Screening,
  type ScreeningCheck,
} from './screening.ts';
import {
  allowableStress,
  overhangStatics,
  rectangle,
  sectionOf,
  shearStress,
  tipDeflection,
  type LumberSize,
  type SpeciesId,
} from './timber.ts';

/** [m] 24 in, greatest cantilever of a notched tail and eave rule, IRC R802.7.1.1 (seen-secondary), WFCM (memory). */
export const PRESCRIPTIVE_OVERHANG_M = metersFromInches(24);
/** [-] overhang up to a third of the rafter span, WFCM eave rule (memory). */
const SPAN_DIVISOR = 3;
/** [m] 3-1/2 in left above the notch, IRC R802.7.1.1 (seen-secondary). */
const LEAST_REMAINING_M = metersFromInches(7 / 2);
/** [-] notch at the end of a rafter up to a quarter of its depth, IRC R802.7.1 (seen-secondary). */
const NOTCH_DIVISOR = 4;
/** [-] sag limit of roof members under total load, L/120, with twice the overhang as L, IBC table 1604.3 (memory). */
export const SAG_DIVISOR = 120;

/**
 * Deepest eave overhang that the prescriptive rules carry.
 *
 * lesser of 24 in and span/3
 *
 * @param rafterSpan_m  [m] rafter span behind the wall > 0
 * @returns             [m] overhang
 * @throws              RangeError when the span is not > 0
 * @source              AWC-WFCM eave overhang (memory): confirm in the standard
 */
export function prescriptiveOverhang(rafterSpan_m: number): number {
  demandPositive('rafterSpan_m', rafterSpan_m);
  return Math.min(PRESCRIPTIVE_OVERHANG_M, rafterSpan_m / SPAN_DIVISOR);
}

export interface RafterTail {
  readonly species: SpeciesId;
  readonly size: LumberSize;
  readonly spacing_m: number;
  /** Along the slope from the wall line to the tip. */
  readonly overhang_m: number;
  /** Along the slope behind the wall line. */
  readonly backSpan_m: number;
  readonly angle_deg: number;
  /** Depth cut away by the birdsmouth, square to the rafter; 0 without. */
  readonly notch_m: number;
  readonly loads: RoofLoads;
  /** Fascia, gutter and ice at the tip. */
  readonly tip_N: number;
}

export interface RafterTailScreening extends Screening {
  readonly bending: ScreeningCheck;
  readonly shear: ScreeningCheck;
  readonly deflection: ScreeningCheck;
  readonly remainingDepth: ScreeningCheck;
  readonly notchDepth: ScreeningCheck;
  readonly prescriptive: ScreeningCheck;
  readonly tipDeflection_m: number;
}

/**
 * Screening of a sawn rafter tail.
 *
 * M = w a^2/2 + P a and V on the section left above the notch; sag with the full section; ratio = demand / limit
 *
 * @param tail  [m, deg, Pa, N] member, spacing, overhang, back span, slope, notch, loads
 * @returns     [-] one check per limit with the case that governs
 * @throws      RangeError when a value is outside its range
 * @source      NDS-2018 chapter 3 (seen-transcription); IRC-2024-R802.7 section R802.7.1 (seen-secondary); AWC-WFCM (memory)
 * @assumes     the notch sits at the wall line; repetitive use when spaced 24 in or less; no load on the back span
 */
export function rafterTailScreening(tail: RafterTail): RafterTailScreening {
  demandPositive('spacing_m', tail.spacing_m);
  demandRange('notch_m', tail.notch_m, 0);
  demandRange('tip_N', tail.tip_N, 0);
  const member = { species: tail.species, size: tail.size, orientation: 'on-edge' } as const;
  const full = sectionOf(member);
  if (tail.notch_m >= full.depth_m)
    throw new RangeError(`notch_m: ${tail.notch_m} is not below the depth ${full.depth_m}`);
  const left = rectangle(full.width_m, full.depth_m - tail.notch_m);
  const isRepetitive = tail.spacing_m <= PRESCRIPTIVE_OVERHANG_M;
  const rows = loadCases(tail.loads, tail.angle_deg).map((load) => {
    const beam = {
      load_N_m: load.normal_Pa * tail.spacing_m,
      tip_N: tail.tip_N * load.tipShare,
      overhang_m: tail.overhang_m,
      backSpan_m: tail.backSpan_m,
    };
    const statics = overhangStatics(beam);
    const allowed = allowableStress(member, load.loadDuration, isRepetitive);
    const stiffness_Nm2 = allowed.elasticity_Pa * full.inertia_m4;
    return {
      id: load.id,
      bending: [Math.abs(statics.moment_Nm) / left.modulus_m3, allowed.bending_Pa] as const,
      shear: [shearStress(statics.shear_N, left.area_m2), allowed.shear_Pa] as const,
      deflection: [
        Math.abs(tipDeflection({ ...beam, stiffness_Nm2 })),
        (2 * tail.overhang_m) / SAG_DIVISOR,
      ] as const,
    };
  });
  const worst = (
    key: 'bending' | 'shear' | 'deflection',
    text: Pick<ScreeningCheck, 'what' | 'unit' | 'source' | 'clause' | 'known'>,
  ): ScreeningCheck => {
    const row = rows.reduce((most, next) =>
      next[key][0] / next[key][1] > most[key][0] / most[key][1] ? next : most,
    );
    const [demand, capacity] = row[key];
    return {
      id: `tail-${key}`,
      demand,
      capacity,
      ratio: demand / capacity,
      governingCase: row.id,
      who: ENGINEER,
      ...text,
    };
  };
  const rule = (
    id: string,
    what: string,
    demand: number,
    capacity: number,
    source: string,
    clause: string,
    known: string,
  ): ScreeningCheck => ({
    id,
    what,
    demand,
    capacity,
    unit: 'm',
    ratio: demand / capacity,
    governingCase: 'geometry',
    who: ENGINEER,
    source,
    clause,
    known,
  });
  const bending = worst('bending', {
    what: 'Bending of the tail above the notch',
    unit: 'Pa',
    source: 'NDS-2018-SUPPLEMENT',
    clause: 'Tables 4A, 4B',
    known: 'seen-transcription',
  });
  const shear = worst('shear', {
    what: 'Shear of the tail above the notch',
    unit: 'Pa',
    source: 'NDS-2018',
    clause: '3.4.2',
    known: 'seen-transcription',
  });
  const deflection = worst('deflection', {
    what: 'Sag of the tip against twice the overhang over 120',
    unit: 'm',
    source: 'IBC-2018',
    clause: 'Table 1604.3',
    known: 'memory',
  });
  const isNotched = tail.notch_m > 0;
  // The demand is the depth that must stay, so that a ratio above 1 is a fault as everywhere.
  const remainingDepth = rule(
    'tail-remaining-depth',
    'Depth that must stay above the notch against the depth that stays',
    isNotched ? LEAST_REMAINING_M : 0,
    left.depth_m,
    'IRC-2024-R802.7',
    'R802.7.1.1',
    'seen-secondary',
  );
  const notchDepth = rule(
    'tail-notch',
    'Notch against a quarter of the depth',
    tail.notch_m,
    full.depth_m / NOTCH_DIVISOR,
    'IRC-2024-R802.7',
    'R802.7.1',
    'seen-secondary',
  );
  const prescriptive = rule(
    'tail-prescriptive',
    'Overhang against the lesser of 24 in and a third of the span',
    tail.overhang_m,
    prescriptiveOverhang(tail.backSpan_m),
    'AWC-WFCM',
    'eave overhang',
    'memory',
  );
  const checks = [bending, shear, deflection, remainingDepth, notchDepth, prescriptive];
  return {
    provisional: true,
    decidedBy: ENGINEER,
    standing: standingOf(checks, prescriptive.ratio > 1),
    notes: [CONFIRM_IN_STANDARD, 'Truss tails follow the truss drawing, not this screening.'],
    bending,
    shear,
    deflection,
    remainingDepth,
    notchDepth,
    prescriptive,
    tipDeflection_m: deflection.demand,
  };
}

/** Lateral strength of a dowel in single shear by all yield modes, with or without a gap between the wood faces. */
import { inchesFromMeters, metersFromInches, PASCALS_PER_PSI } from '../units.ts';
import { demandPositive, demandRange } from './guards.ts';
import { GREATEST_LOAD_DURATION, SPECIFIC_GRAVITY } from './screws.ts';

export const yieldModes = ['Im', 'Is', 'II', 'IIIm', 'IIIs', 'IV'] as const;
export type YieldMode = (typeof yieldModes)[number];
export type ModeForces = Readonly<Record<YieldMode, number>>;

/** [m] 1/4 in: below it bearing is the same in all directions, NDS 2018 table 12.3.3. */
const SMALL_DIAMETER_M = metersFromInches(1 / 4);
/** [psi], [-] Fe = 16600 G^1.84, NDS 2018 table 12.3.3 (seen-transcription). */
const SMALL_BEARING = { factor_psi: 16600, power: 1.84 } as const;
/** [psi] Fe parallel = 11200 G (seen-transcription). */
const PARALLEL_BEARING_PSI = 11200;
/** [psi], [-] Fe perpendicular = 6100 G^1.45 / sqrt(D) (seen-transcription). */
const PERPENDICULAR_BEARING = { factor_psi: 6100, power: 1.45 } as const;
/** [psi] bearing strengths are rounded to this, note of table 12.3.3. */
const BEARING_STEP_PSI = 50;
/** [m³/m³] yield moment Fyb D^3/6, AWC TR12 (memory). */
const YIELD_MOMENT_DIVISOR = 6;
/** [-] coefficients of the quadratic terms, AWC TR12 table 1. */
const HALF = 1 / 2;
/** [-] the same. */
const QUARTER = 1 / 4;
/** [in], [-] KD = 2.2 to 0.17 in, then 10 D + 0.5, NDS 2018 table 12.3.1B (seen-transcription). */
const SMALL_REDUCTION = { flat: 2.2, flatTo_in: 0.17, slope: 10, base: 0.5 } as const;
/** [-] Rd from 1/4 in on: 4, 3.6, 3.2 times K-theta, NDS 2018 table 12.3.1B (seen-transcription). */
const LARGE_REDUCTION: ModeForces = { Im: 4, Is: 4, II: 3.6, IIIm: 3.2, IIIs: 3.2, IV: 3.2 };
/** [deg], [-] K-theta = 1 + 0.25 theta/90, NDS 2018 table 12.3.1B. */
const GRAIN_ANGLE = { share: 0.25, full_deg: 90 } as const;

export interface Dowel {
  /** Diameter of the equations: root diameter for screws, shank for nails and bolts. */
  readonly diameter_m: number;
  readonly bendingYield_Pa: number;
  readonly sideThickness_m: number;
  readonly sideBearing_Pa: number;
  readonly mainPenetration_m: number;
  readonly mainBearing_Pa: number;
  /** Insulation between the two wood faces. */
  readonly gap_m: number;
}

/**
 * Dowel bearing strength of wood, rounded as in the table.
 *
 * D < 1/4 in: 16600 G^1.84; else parallel 11200 G, perpendicular 6100 G^1.45 / sqrt(D) (psi, in), to the nearest 50 psi
 *
 * @param nominal_m        [m] nominal diameter, picks the branch
 * @param specificGravity  [-] G, 0.31 to 0.73
 * @param grain            load parallel or perpendicular to grain; no matter below 1/4 in
 * @returns                [Pa] Fe
 * @throws                 RangeError when a value is outside its range
 * @source                 NDS-2018 table 12.3.3 (seen-transcription)
 */
export function dowelBearing(
  nominal_m: number,
  specificGravity: number,
  grain: 'parallel' | 'perpendicular' = 'parallel',
): number {
  demandPositive('nominal_m', nominal_m);
  demandRange('specificGravity', specificGravity, SPECIFIC_GRAVITY.atLeast, SPECIFIC_GRAVITY.atMost);
  const strength_psi =
    nominal_m < SMALL_DIAMETER_M
      ? SMALL_BEARING.factor_psi * Math.pow(specificGravity, SMALL_BEARING.power)
      : grain === 'parallel'
        ? PARALLEL_BEARING_PSI * specificGravity
        : (PERPENDICULAR_BEARING.factor_psi * Math.pow(specificGravity, PERPENDICULAR_BEARING.power)) /
          Math.sqrt(inchesFromMeters(nominal_m));
  return Math.round(strength_psi / BEARING_STEP_PSI) * BEARING_STEP_PSI * PASCALS_PER_PSI;
}

/** The positive root of A P² + B P + C = 0 with C < 0, in the form that keeps its digits. */
function positiveRoot(a: number, b: number, c: number): number {
  return (-2 * c) / (b + Math.sqrt(b * b - (a * c) / QUARTER));
}

/**
 * Force at which each yield mode forms, single shear, with a gap.
 *
 * Im: qm lm; Is: qs ls; others the positive root of A P^2 + B P + C = 0 with the gap g in B
 *
 * @param dowel  [m, Pa] root diameter (D), Fyb, ls, Fes, lm, Fem, gap (g) >= 0; qs = Fes D, qm = Fem D, M = Fyb D^3/6
 * @returns      [N] by mode, before any reduction
 * @range        the insulation and friction carry nothing (conservative)
 * @throws       RangeError when a value is outside its range
 * @source       AWC-TR12 table 1 general dowel equations (memory; equal to NDS-2018 table 12.3.1A at g = 0, computed)
 */
export function yieldForces(dowel: Dowel): ModeForces {
  for (const key of [
    'diameter_m',
    'bendingYield_Pa',
    'sideThickness_m',
    'sideBearing_Pa',
    'mainPenetration_m',
    'mainBearing_Pa',
  ] as const)
    demandPositive(key, dowel[key]);
  demandRange('gap_m', dowel.gap_m, 0);
  const { diameter_m, sideThickness_m: ls, mainPenetration_m: lm, gap_m: g } = dowel;
  const qs = dowel.sideBearing_Pa * diameter_m;
  const qm = dowel.mainBearing_Pa * diameter_m;
  const moment = (dowel.bendingYield_Pa * diameter_m * diameter_m * diameter_m) / YIELD_MOMENT_DIVISOR;
  const side = QUARTER * qs * ls * ls;
  const main = QUARTER * qm * lm * lm;
  return {
    Im: qm * lm,
    Is: qs * ls,
    II: positiveRoot(QUARTER / qs + QUARTER / qm, ls / 2 + g + lm / 2, -side - main),
    IIIm: positiveRoot(HALF / qs + QUARTER / qm, g + lm / 2, -moment - main),
    IIIs: positiveRoot(QUARTER / qs + HALF / qm, ls / 2 + g, -side - moment),
    IV: positiveRoot(HALF / qs + HALF / qm, g, -moment - moment),
  };
}

/**
 * Reduction term of each yield mode.
 *
 * D >= 1/4 in: 4, 3.6, 3.2 times K-theta; D < 1/4 in: KD; threaded with nominal >= 1/4 and root below: KD K-theta
 *
 * @param diameter_m  [m] diameter of the equations (root for screws)
 * @param nominal_m   [m] nominal diameter
 * @param angle_deg   [deg] greatest angle of load to grain, 0 to 90
 * @returns           [-] Rd by mode
 * @throws            RangeError when a value is outside its range
 * @source            NDS-2018 table 12.3.1B (seen-transcription)
 */
export function reductionTerms(diameter_m: number, nominal_m = diameter_m, angle_deg = 0): ModeForces {
  demandPositive('diameter_m', diameter_m);
  demandRange('angle_deg', angle_deg, 0, GRAIN_ANGLE.full_deg);
  const grain = 1 + (GRAIN_ANGLE.share * angle_deg) / GRAIN_ANGLE.full_deg;
  const scaled = (term: (mode: YieldMode) => number): ModeForces =>
    Object.fromEntries(yieldModes.map((mode) => [mode, term(mode)])) as Record<YieldMode, number>;
  if (diameter_m >= SMALL_DIAMETER_M) return scaled((mode) => LARGE_REDUCTION[mode] * grain);
  const diameter_in = inchesFromMeters(diameter_m);
  const small =
    diameter_in <= SMALL_REDUCTION.flatTo_in
      ? SMALL_REDUCTION.flat
      : SMALL_REDUCTION.slope * diameter_in + SMALL_REDUCTION.base;
  return scaled(() => small * (nominal_m >= SMALL_DIAMETER_M ? grain : 1));
}

export interface LateralDesign {
  /** Reference design value of each mode, CD 1. */
  readonly modes_N: ModeForces;
  readonly governing: YieldMode;
  readonly reference_N: number;
  readonly allowable_N: number;
}

/**
 * Lateral design value of one dowel in single shear.
 *
 * Z = min(P / Rd) over the modes; Z' = Z CD
 *
 * @param dowel         [m, Pa] the joint; bearing lengths ls, lm without the tip's taper
 * @param options       [m, deg, -] nominal diameter (the dowel's own when absent), load to grain, CD (1 when absent)
 * @returns             [N] by mode, least, allowable
 * @throws              RangeError when a value is outside its range
 * @source              NDS-2018 section 12.3.1 (seen-transcription); AWC-TR12 for the gap (memory)
 * @assumes             penetration and spacing rules are checked apart; group factor 1 for D < 1/4 in
 */
export function lateralDesign(
  dowel: Dowel,
  options: { readonly nominal_m?: number; readonly angle_deg?: number; readonly loadDuration?: number } = {},
): LateralDesign {
  const duration = options.loadDuration ?? 1;
  demandPositive('loadDuration', duration);
  demandRange('loadDuration', duration, 0, GREATEST_LOAD_DURATION);
  const forces = yieldForces(dowel);
  const reduction = reductionTerms(dowel.diameter_m, options.nominal_m, options.angle_deg);
  const modes_N = Object.fromEntries(
    yieldModes.map((mode) => [mode, forces[mode] / reduction[mode]]),
  ) as Record<YieldMode, number>;
  const governing = yieldModes.reduce((least, mode) => (modes_N[mode] < modes_N[least] ? mode : least));
  const reference_N = modes_N[governing];
  return { modes_N, governing, reference_N, allowable_N: reference_N * duration };
}

/** Sawn lumber members by the NDS, allowable stress: sections, factors, bending, shear, stiffness. */
import { lumberOf, type LumberGrade, type LumberSize, type SpeciesId } from '../catalog/lumber.ts';
import { demandPositive } from './guards.ts';

export type { LumberGrade, LumberSize, SpeciesId };
export type Orientation = 'flat' | 'on-edge';

export interface Member {
  readonly species: SpeciesId;
  readonly size: LumberSize;
  readonly orientation: Orientation;
  /** No. 2 when absent. */
  readonly grade?: LumberGrade;
}

/** [-] load duration factors, NDS 2018 table 2.3.2 (seen-transcription). */
export const LOAD_DURATION = {
  permanent: 0.9,
  tenYears: 1.0,
  snow: 1.15,
  construction: 1.25,
  wind: 1.6,
} as const;
/** [-] section modulus divisor b d^2/6. */
const MODULUS_DIVISOR = 6;
/** [-] moment of inertia divisor b d^3/12. */
const INERTIA_DIVISOR = 12;
/** [-] greatest over mean shear stress of a rectangle, NDS 2018 eq. 3.4-2. */
const SHEAR_PEAK = 3 / 2;

export interface Section {
  /** Across the load. */
  readonly width_m: number;
  /** Along the load. */
  readonly depth_m: number;
  readonly area_m2: number;
  readonly modulus_m3: number;
  readonly inertia_m4: number;
}

/**
 * Properties of a rectangular section.
 *
 * A = b d, S = b d^2/6, I = b d^3/12
 *
 * @param width_m  [m] across the load (b) > 0
 * @param depth_m  [m] along the load (d) > 0
 * @returns        [m², m³, m⁴] area, modulus, inertia
 * @throws         RangeError when a side is not > 0
 * @source         NDS-2018-SUPPLEMENT table 1B (seen-transcription), arithmetic (computed)
 */
export function rectangle(width_m: number, depth_m: number): Section {
  demandPositive('width_m', width_m);
  demandPositive('depth_m', depth_m);
  const area_m2 = width_m * depth_m;
  return {
    width_m,
    depth_m,
    area_m2,
    modulus_m3: (area_m2 * depth_m) / MODULUS_DIVISOR,
    inertia_m4: (area_m2 * depth_m * depth_m) / INERTIA_DIVISOR,
  };
}

/**
 * The dressed section of a member as it lies.
 *
 * @param member  size and orientation
 * @returns       [m, m², m³, m⁴] the section
 * @source        NDS-2018-SUPPLEMENT table 1B (seen-transcription)
 */
export function sectionOf(member: Member): Section {
  const { thickness_m, depth_m } = lumberOf(member.species, member.size);
  return member.orientation === 'flat' ? rectangle(depth_m, thickness_m) : rectangle(thickness_m, depth_m);
}

export interface AllowableStress {
  readonly bending_Pa: number;
  readonly shear_Pa: number;
  /** Perpendicular to grain; no load duration factor. */
  readonly bearing_Pa: number;
  readonly elasticity_Pa: number;
}

/**
 * Allowable stresses of a member, dry.
 *
 * Fb' = Fb CD CF Cfu Cr, Fv' = Fv CD, Fc-perp' = Fc-perp, E' = E
 *
 * @param member        species, size, orientation, grade
 * @param loadDuration  [-] CD, above 0, at most 1.6
 * @param isRepetitive  three or more members at 24 in or less, tied by a deck (Cr 1.15)
 * @returns             [Pa] allowable stresses
 * @throws              RangeError when the load duration is outside its range
 * @source              NDS-2018 table 4.3.1; NDS-2018-SUPPLEMENT tables 4A and 4B (seen-transcription; other grades than No. 2 memory)
 * @assumes             dry service, normal temperature, lateral support of the edge in compression (CL 1)
 */
export function allowableStress(
  member: Member,
  loadDuration: number,
  isRepetitive: boolean,
): AllowableStress {
  if (!(loadDuration > 0 && loadDuration <= LOAD_DURATION.wind))
    throw new RangeError(`loadDuration: ${loadDuration} is outside what is allowed (above 0, at most 1.6)`);
  const lumber = lumberOf(member.species, member.size, member.grade);
  const flat = member.orientation === 'flat' ? lumber.flatUseFactor : 1;
  const repetitive = isRepetitive ? lumber.repetitiveFactor : 1;
  return {
    bending_Pa: lumber.bending_Pa * loadDuration * lumber.sizeFactor * flat * repetitive,
    shear_Pa: lumber.shear_Pa * loadDuration,
    bearing_Pa: lumber.bearing_Pa,
    elasticity_Pa: lumber.elasticity_Pa,
  };
}

/**
 * Greatest shear stress in a rectangle.
 *
 * fv = 3 V / (2 A)
 *
 * @param shear_N  [N] V
 * @param area_m2  [m²] A > 0
 * @returns        [Pa] fv
 * @source         NDS-2018 eq. 3.4-2 (memory)
 */
export function shearStress(shear_N: number, area_m2: number): number {
  demandPositive('area_m2', area_m2);
  return (SHEAR_PEAK * shear_N) / area_m2;
}

export interface OverhangStatics {
  /** Up is positive: what the wall line must push up with. */
  readonly wallReaction_N: number;
  /** Hold-down at the heel: positive when the heel wants to lift (pulls on its screws). */
  readonly heelHoldDown_N: number;
  /** At the wall line; positive puts the top in tension. */
  readonly moment_Nm: number;
  /** Greatest shear, either side of the wall line. */
  readonly shear_N: number;
}

/**
 * A beam over two supports with load on its overhang only.
 *
 * R_A = w a (1 + a/2b) + P (1 + a/b); R_B = w a^2/2b + P a/b; M = w a^2/2 + P a
 *
 * @param input  [N/m, N, m] uniform load (w), tip load (P), overhang (a), back span (b); loads down are positive
 * @returns      [N, N·m] reactions, moment and greatest shear, signed
 * @throws       RangeError when a length is not > 0
 * @source       AWC-BEAM-FORMULAS figure 26 (memory), own statics (computed)
 * @assumes      pinned at the wall line and at the heel; no load on the back span
 */
export function overhangStatics(input: {
  readonly load_N_m: number;
  readonly tip_N: number;
  readonly overhang_m: number;
  readonly backSpan_m: number;
}): OverhangStatics {
  demandPositive('overhang_m', input.overhang_m);
  demandPositive('backSpan_m', input.backSpan_m);
  const total_N = input.load_N_m * input.overhang_m + input.tip_N;
  const moment_Nm =
    (input.load_N_m * input.overhang_m * input.overhang_m) / 2 + input.tip_N * input.overhang_m;
  const heelHoldDown_N = moment_Nm / input.backSpan_m;
  return {
    wallReaction_N: total_N + heelHoldDown_N,
    heelHoldDown_N,
    moment_Nm,
    shear_N: Math.max(Math.abs(total_N), Math.abs(heelHoldDown_N)),
  };
}

/** [-] numbers of the tip deflection: w a^3 (4b + 3a)/24EI + P a^2 (a + b)/3EI. */
const TIP = { back: 4, over: 3, uniform: 24, point: 3 } as const;

/**
 * Sag of the overhang's tip.
 *
 * w a^3 (4b + 3a)/(24 EI) + P a^2 (a + b)/(3 EI)
 *
 * @param input  [N/m, N, m, N·m²] w, P, a, b and stiffness EI > 0
 * @returns      [m] down is positive
 * @throws       RangeError when a length or the stiffness is not > 0
 * @source       AWC-BEAM-FORMULAS figures 24 and 26 (memory), own statics (computed)
 * @assumes      stiff supports; slip of screws and squeeze of board come on top
 */
export function tipDeflection(input: {
  readonly load_N_m: number;
  readonly tip_N: number;
  readonly overhang_m: number;
  readonly backSpan_m: number;
  readonly stiffness_Nm2: number;
}): number {
  const { load_N_m: w, tip_N: p, overhang_m: a, backSpan_m: b, stiffness_Nm2 } = input;
  demandPositive('overhang_m', a);
  demandPositive('backSpan_m', b);
  demandPositive('stiffness_Nm2', stiffness_Nm2);
  const uniform = (w * a * a * a * (TIP.back * b + TIP.over * a)) / (TIP.uniform * stiffness_Nm2);
  const point = (p * a * a * (a + b)) / (TIP.point * stiffness_Nm2);
  return uniform + point;
}

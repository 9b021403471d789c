/** Screws and nails by the NDS: withdrawal, head pull-through, combined load, penetration. Reference values in ASD. */
import type { ScrewKind } from '../catalog/lumber.ts';
import { inchesFromMeters, METERS_PER_INCH, NEWTONS_PER_POUND } from '../units.ts';
import { demandPositive, demandRange, radians } from './guards.ts';

export type { ScrewKind };
export type FastenerKind = ScrewKind | 'plain-nail' | 'ring-shank-nail';

/** [N/m] one pound-force per inch. */
const NEWTONS_METER_PER_POUND_INCH = NEWTONS_PER_POUND / METERS_PER_INCH;
/** W = factor G^gravityPower D^diameterPower, lb/in and in, NDS 2018 eqs 12.2-1, 12.2-2, 12.2-3, 12.2-5 (seen-transcription). */
const WITHDRAWAL = {
  'lag-screw': { factor: 1800, gravityPower: 3 / 2, diameterPower: 3 / 4 },
  'wood-screw': { factor: 2850, gravityPower: 2, diameterPower: 1 },
  'plain-nail': { factor: 1380, gravityPower: 5 / 2, diameterPower: 1 },
  'ring-shank-nail': { factor: 1800, gravityPower: 2, diameterPower: 1 },
} as const;
/** [-] specific gravities of the NDS tables, range of the withdrawal equations. */
export const SPECIFIC_GRAVITY = { atLeast: 0.31, atMost: 0.73 } as const;
/** [-] greatest load duration factor of a connection, NDS 2018 section 2.3.2. */
export const GREATEST_LOAD_DURATION = 1.6;
/** [psi] pull-through of a head in thin and in thick side members, NDS 2018 eqs 12.2-6a and b (seen-transcription). */
const PULL_THROUGH = { thin_psi: 690, thick_psi: 1725, thinUpTo: 5 / 2 } as const;
/** [-] least and full penetration in diameters, NDS 2018 sections 12.1.4 and 12.1.6, table 12 notes (seen-transcription). */
const PENETRATION = {
  'lag-screw': { least: 4, full: 8 },
  'wood-screw': { least: 6, full: 10 },
  'plain-nail': { least: 6, full: 10 },
  'ring-shank-nail': { least: 6, full: 10 },
} as const;

/**
 * Withdrawal from side grain for each length of thread (nails: of penetration).
 *
 * lag 1800 G^1.5 D^0.75; wood screw 2850 G^2 D; plain nail 1380 G^2.5 D; ring-shank 1800 G^2 D (lb/in, in)
 *
 * @param kind             fastener
 * @param diameter_m       [m] nominal diameter (D) > 0
 * @param specificGravity  [-] G of the main member, 0.31 to 0.73
 * @returns                [N/m] reference value W
 * @range                  side grain; proprietary screws take their own report values
 * @throws                 RangeError when a value is outside its range
 * @source                 NDS-2018 eqs 12.2-1, 12.2-2, 12.2-3, 12.2-5 (seen-transcription)
 */
export function withdrawalPerLength(kind: FastenerKind, diameter_m: number, specificGravity: number): number {
  demandPositive('diameter_m', diameter_m);
  demandRange('specificGravity', specificGravity, SPECIFIC_GRAVITY.atLeast, SPECIFIC_GRAVITY.atMost);
  const { factor, gravityPower, diameterPower } = WITHDRAWAL[kind];
  const load_lb_in =
    factor * Math.pow(specificGravity, gravityPower) * Math.pow(inchesFromMeters(diameter_m), diameterPower);
  return load_lb_in * NEWTONS_METER_PER_POUND_INCH;
}

export interface AdjustmentFactors {
  /** CM: 0.7 in wet service. */
  readonly wetService?: number;
  /** Ct: 0.8 to 125 °F, 0.7 to 150 °F. */
  readonly temperature?: number;
  /** Ceg: 0.75 for lag screws in end grain. */
  readonly endGrain?: number;
}

/**
 * Allowable withdrawal of one fastener.
 *
 * W' p = W p CD CM Ct Ceg
 *
 * @param input  [m, -] kind, nominal diameter, G, thread in the main member (p), CD (1 when absent), factors
 * @returns      [N] allowable load
 * @throws       RangeError when a value is outside its range; wood screws and nails have no end-grain value
 * @source       NDS-2018 table 11.3.1 and section 12.2 (seen-transcription)
 * @assumes      thread length without the tip for lag screws; tension in the steel is checked by its maker
 */
export function allowableWithdrawal(input: {
  readonly kind: FastenerKind;
  readonly diameter_m: number;
  readonly specificGravity: number;
  readonly threadPenetration_m: number;
  readonly loadDuration?: number;
  readonly factors?: AdjustmentFactors;
}): number {
  demandRange('threadPenetration_m', input.threadPenetration_m, 0);
  const duration = input.loadDuration ?? 1;
  demandPositive('loadDuration', duration);
  demandRange('loadDuration', duration, 0, GREATEST_LOAD_DURATION);
  const { wetService = 1, temperature = 1, endGrain } = input.factors ?? {};
  if (endGrain !== undefined && input.kind !== 'lag-screw')
    throw new RangeError('factors.endGrain: only lag screws have a withdrawal value in end grain');
  return (
    withdrawalPerLength(input.kind, input.diameter_m, input.specificGravity) *
    input.threadPenetration_m *
    duration *
    wetService *
    temperature *
    (endGrain ?? 1)
  );
}

/**
 * Pull of a round head through the side member.
 *
 * t <= 2.5 DH: 690 pi DH G^2 t; else 1725 pi DH^2 G^2 (psi, in)
 *
 * @param headDiameter_m   [m] DH > 0
 * @param specificGravity  [-] G of the side member
 * @param thickness_m      [m] t > 0
 * @returns                [N] reference value, CD 1
 * @throws                 RangeError when a value is outside its range
 * @source                 NDS-2018 section 12.2.5.1 (seen-transcription)
 */
export function headPullThrough(
  headDiameter_m: number,
  specificGravity: number,
  thickness_m: number,
): number {
  demandPositive('headDiameter_m', headDiameter_m);
  demandPositive('thickness_m', thickness_m);
  demandRange('specificGravity', specificGravity, SPECIFIC_GRAVITY.atLeast, SPECIFIC_GRAVITY.atMost);
  const head_in = inchesFromMeters(headDiameter_m);
  const thickness_in = inchesFromMeters(thickness_m);
  const around = Math.PI * head_in * specificGravity * specificGravity;
  const load_lb =
    thickness_in <= PULL_THROUGH.thinUpTo * head_in
      ? PULL_THROUGH.thin_psi * around * thickness_in
      : PULL_THROUGH.thick_psi * around * head_in;
  return load_lb * NEWTONS_PER_POUND;
}

/**
 * Allowable load of a screw under lateral load and withdrawal at once.
 *
 * Z_alpha = W'p Z' / (W'p cos^2(alpha) + Z' sin^2(alpha))
 *
 * @param withdrawal_N  [N] W'p > 0
 * @param lateral_N     [N] Z' > 0
 * @param angle_deg     [deg] between load and wood surface (alpha): 0 lateral, 90 withdrawal
 * @returns             [N] allowable resultant
 * @throws              RangeError when a value is outside its range
 * @source              NDS-2018 eq. 12.4-1 (seen-transcription)
 */
export function combinedScrewLoad(withdrawal_N: number, lateral_N: number, angle_deg: number): number {
  demandPositive('withdrawal_N', withdrawal_N);
  demandPositive('lateral_N', lateral_N);
  demandRange('angle_deg', angle_deg, 0, 90);
  const cosine = Math.cos(radians(angle_deg));
  const sine = Math.sin(radians(angle_deg));
  return (withdrawal_N * lateral_N) / (withdrawal_N * cosine * cosine + lateral_N * sine * sine);
}

export interface PenetrationStanding {
  readonly least_m: number;
  readonly full_m: number;
  readonly meetsLeast: boolean;
  /** Share of the tabulated lateral value: 0 below the least, p/full between, 1 from full on. */
  readonly tableShare: number;
}

/**
 * Penetration rules for lateral load.
 *
 * least 4D (lag) or 6D; full table value at 8D or 10D, in proportion between
 *
 * @param kind           fastener
 * @param diameter_m     [m] nominal D > 0
 * @param penetration_m  [m] in the main member
 * @returns              [m, -] limits and the share of the table value
 * @source               NDS-2018 sections 12.1.4 to 12.1.6 and table notes (seen-transcription)
 */
export function penetrationStanding(
  kind: FastenerKind,
  diameter_m: number,
  penetration_m: number,
): PenetrationStanding {
  demandPositive('diameter_m', diameter_m);
  demandRange('penetration_m', penetration_m, 0);
  const { least, full } = PENETRATION[kind];
  const least_m = least * diameter_m;
  const full_m = full * diameter_m;
  const meetsLeast = penetration_m >= least_m;
  return { least_m, full_m, meetsLeast, tableShare: meetsLeast ? Math.min(1, penetration_m / full_m) : 0 };
}

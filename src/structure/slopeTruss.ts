/** A slanted screw that pulls and a strut that pushes: the plane truss that holds layers back across insulation. */
import { demandPositive, demandRange, radians } from './guards.ts';

/** [Pa] modulus of elasticity of steel, 29 000 ksi, AISC 360-16 symbols (memory). */
const STEEL_MODULUS_PA = 200e9;
/** [-] safety factor in compression, AISC 360-16 section E1. */
const COMPRESSION_SAFETY = 1.67;
/** [-] coefficients of the column curve, AISC 360-16 eqs E3-2 and E3-3. */
const COLUMN = { base: 0.658, elastic: 0.877, limit: 2.25 } as const;
/** [m⁴/m⁴] I = pi d^4/64 of a round bar. */
const ROUND_INERTIA = 64;
/** [-] bar held against turning at both ends: delta = F g^3 / (12 E I). */
const FIXED_ENDS = 12;
/** [-] withdrawal at an angle to grain: 1.2 cos² + sin², EN 1995-1-1 eq. 8.38 (memory). */
const ALONG_GRAIN = 1.2;

export interface TrussForces {
  /** In the pulling screw. */
  readonly tension_N: number;
  /** In the strut: board, or the pushing screw. */
  readonly compression_N: number;
}

/**
 * Forces in a slanted screw and its strut under the head, pinned at all three ends.
 *
 * T = (F sin c - N cos c)/sin(b + c); C = (F sin b + N cos b)/sin(b + c)
 *
 * @param along_N      [N] pull down the slope at the head (F) >= 0
 * @param pressing_N   [N] load square to the slope at the head, down positive (N)
 * @param tension_deg  [deg] pulling screw to the roof surface (b), tip up the slope, above 0 to below 90
 * @param strut_deg    [deg] strut to the roof surface (c), foot down the slope; 90 for board square to the slope
 * @returns            [N] tension of the screw and compression of the strut; negative when the sense is reversed
 * @throws             RangeError when an angle is outside its range
 * @source             COMMON-PRACTICE statics of two pinned bars (computed)
 */
export function trussForces(
  along_N: number,
  pressing_N: number,
  tension_deg: number,
  strut_deg: number,
): TrussForces {
  demandPositive('tension_deg', tension_deg);
  demandPositive('strut_deg', strut_deg);
  demandRange('tension_deg', tension_deg, 0, 89);
  demandRange('strut_deg', strut_deg, 0, 90);
  const b = radians(tension_deg);
  const c = radians(strut_deg);
  const between = Math.sin(b + c);
  return {
    tension_N: (along_N * Math.sin(c) - pressing_N * Math.cos(c)) / between,
    compression_N: (along_N * Math.sin(b) + pressing_N * Math.cos(b)) / between,
  };
}

/**
 * Share of the withdrawal value that a slanted screw keeps.
 *
 * k = 1/(1.2 cos^2 a + sin^2 a)
 *
 * @param angle_deg  [deg] screw to the grain (a), 30 to 90
 * @returns          [-] 1 square to the grain
 * @throws           RangeError when the angle is outside its range
 * @source           EN-1995-1-1-2004 eq. 8.38 (memory)
 * @assumes          the screw leans along the rafter, so that its angle to the slope is its angle to the grain
 */
export function slantedShare(angle_deg: number): number {
  demandRange('angle_deg', angle_deg, 30, 90);
  const cosine = Math.cos(radians(angle_deg));
  return 1 / (ALONG_GRAIN * cosine * cosine + (1 - cosine * cosine));
}

/**
 * Compression that a screw takes over its free length without buckling.
 *
 * Fe = pi^2 E/(KL/r)^2, r = d/4, K = 1; Fcr = 0.658^(Fy/Fe) Fy or 0.877 Fe; P = Fcr A/1.67
 *
 * @param root_m    [m] root diameter (d) > 0
 * @param yield_Pa  [Pa] yield stress (Fy) > 0
 * @param length_m  [m] between the wood faces along the screw (L) > 0
 * @returns         [N] allowable push
 * @throws          RangeError when a value is not > 0
 * @source          AISC-360-16 eqs E3-1 to E3-4 (memory)
 * @assumes         ends free to turn; no help from the board around it; bending yield stands for yield
 */
export function screwPush(root_m: number, yield_Pa: number, length_m: number): number {
  demandPositive('root_m', root_m);
  demandPositive('yield_Pa', yield_Pa);
  demandPositive('length_m', length_m);
  const slender = length_m / (root_m / 2 / 2);
  const elastic_Pa = (Math.PI * Math.PI * STEEL_MODULUS_PA) / (slender * slender);
  const critical_Pa =
    yield_Pa / elastic_Pa <= COLUMN.limit
      ? Math.pow(COLUMN.base, yield_Pa / elastic_Pa) * yield_Pa
      : COLUMN.elastic * elastic_Pa;
  const area_m2 = Math.PI * (root_m / 2) * (root_m / 2);
  return (critical_Pa * area_m2) / COMPRESSION_SAFETY;
}

/**
 * Sideways bend of a screw between two wood faces: the least that the upper layers slip.
 *
 * d = F g^3/(12 E I), I = pi d^4/64
 *
 * @param shear_N  [N] along the slope on one screw (F) >= 0
 * @param gap_m    [m] between the wood faces (g) >= 0
 * @param root_m   [m] root diameter (d) > 0
 * @returns        [m] slip of the steel alone
 * @throws         RangeError when a value is outside its range
 * @source         AWC-BEAM-FORMULAS bar fixed against turning at both ends (memory)
 * @assumes        elastic; the wood holds both ends still, so real slip is more; foam carries nothing, so it may be less
 */
export function gapSlip(shear_N: number, gap_m: number, root_m: number): number {
  demandRange('shear_N', shear_N, 0);
  demandRange('gap_m', gap_m, 0);
  demandPositive('root_m', root_m);
  const inertia_m4 = (Math.PI * root_m * root_m * root_m * root_m) / ROUND_INERTIA;
  return (shear_N * gap_m * gap_m * gap_m) / (FIXED_ENDS * STEEL_MODULUS_PA * inertia_m4);
}

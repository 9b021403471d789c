/** The measures of the roof of a case: the finished one with its overhangs, and the part over the heated rooms. */
import type { CompleteCase } from '../case/complete.ts';
import { angleOfPitch_deg, cosine, measureRoof, type RoofMeasures } from './geometry.ts';

/**
 * Measures of the finished roof.
 *
 * @param given  [m] the complete case
 * @returns      [m, m²] see measureRoof
 * @source       COMMON-PRACTICE plane geometry (computed)
 */
export const roofOf = (given: CompleteCase): RoofMeasures =>
  measureRoof({
    ...given.roof,
    angle_deg: angleOfPitch_deg(given.roof.pitch_rise_per_12),
    eaveOverhang_m: given.overhang.eave_m,
    rakeOverhang_m: given.overhang.rake_m,
  });

export interface HeatedRoof {
  readonly area_m2: number;
  /** Length of the wall line under the rakes along the slope; 0 on a hip. */
  readonly rakeWall_m: number;
}

/**
 * The part of the roof that heat goes through: over the plan of the walls, without the overhangs.
 *
 * area = length x width / cos(angle); rakes = 2 per slope, run / cos(angle) each
 *
 * @param given  [m] the complete case
 * @returns      [m², m] area, and wall line under the rakes
 * @source       COMMON-PRACTICE plane geometry (computed)
 * @assumes      one pitch; the plan of the case is the heated plan
 */
export function heatedRoofOf(given: CompleteCase): HeatedRoof {
  const { shape, length_m, width_m, pitch_rise_per_12 } = given.roof;
  const cos = cosine(angleOfPitch_deg(pitch_rise_per_12));
  return { area_m2: (length_m * width_m) / cos, rakeWall_m: shape === 'hip' ? 0 : (2 * width_m) / cos };
}

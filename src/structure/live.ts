/** Roof live load of people and tools by ASCE/SEI 7. Acts on the horizontal projection. */
import { pascalsFromPsf } from '../units.ts';
import { demandRange } from './guards.ts';

/** [Pa] 20 psf, roof live load before reduction, ASCE/SEI 7-16 table 4.3-1 (memory). */
const LIVE_PA = pascalsFromPsf(20);
/** [Pa] 12 psf, least roof live load, section 4.8.2 (memory). */
const LEAST_LIVE_PA = pascalsFromPsf(12);
/** [-] slope reduction R2 = 1.2 - 0.05 F, between rises of 4 and 12 in 12, eq. 4.8-1 (memory). */
const SLOPE_REDUCTION = { base: 1.2, perRise: 0.05 } as const;

/**
 * Roof live load on a pitched roof, small tributary area.
 *
 * Lr = 20 psf R2, R2 = 1.2 - 0.05 F within 0.6 to 1, never below 12 psf
 *
 * @param pitch_rise_per_12  [-] rise in 12 (F), 0 to 24
 * @returns                  [Pa] on the horizontal projection
 * @throws                   RangeError when the pitch is outside its range
 * @source                   ASCE-7-16 eq. 4.8-1 (memory)
 * @assumes                  tributary area up to 200 ft², so that R1 is 1
 */
export function roofLive(pitch_rise_per_12: number): number {
  demandRange('pitch_rise_per_12', pitch_rise_per_12, 0, 24);
  const reduction = Math.min(1, SLOPE_REDUCTION.base - SLOPE_REDUCTION.perRise * pitch_rise_per_12);
  return Math.max(LEAST_LIVE_PA, LIVE_PA * reduction);
}

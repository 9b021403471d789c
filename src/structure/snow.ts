/** Roof snow by ASCE/SEI 7: flat, sloped, eave ice. All loads act on the horizontal projection. */
import { feetFromMeters, metersFromFeet, pascalsFromPsf, rsiFromR } from '../units.ts';
import { demandPositive, demandRange } from './guards.ts';

export type SnowEdition = 'asce7-16' | 'asce7-22';

/** [-] ground-to-roof factor, ASCE/SEI 7-16 eq. 7.3-1. */
const GROUND_TO_ROOF = 0.7;
/** [deg] slope at which snow no longer stays, ASCE/SEI 7-16 figure 7.4-1. */
const BARE_SLOPE_DEG = 70;
/** [-] greatest thermal factor of a warm roof, ASCE/SEI 7-16 section 7.4.1. */
const WARM_THERMAL_FACTOR = 1.0;
/** [-] least thermal factor of the coldest line, ASCE/SEI 7-16 figure 7.4-1c. */
const COLD_THERMAL_FACTOR = 1.2;
/** [deg] slopes up to which Cs = 1, ASCE/SEI 7-16 figure 7.4-1 (seen-transcription). */
const FULL_LOAD_SLOPE_DEG = {
  warm: { slippery: 5, other: 30 },
  cool: { slippery: 10, other: 37.5 },
  cold: { slippery: 15, other: 45 },
} as const;
/** [Pa] 20 psf, cap of the low-slope minimum, ASCE/SEI 7-16 section 7.3.4. */
const LOW_SLOPE_CAP_PA = pascalsFromPsf(20);
/** [deg] below this slope the minimum applies, ASCE/SEI 7-16 section 7.3.4. */
const LOW_SLOPE_DEG = 15;
/** [Pa] 5 psf rain-on-snow surcharge, ASCE/SEI 7-16 section 7.10. */
const RAIN_ON_SNOW_PA = pascalsFromPsf(5);
/** [ft/deg] divisor of the eave-to-ridge run, ASCE/SEI 7-16 section 7.10. */
const RAIN_RUN_FT_PER_DEG = 50;
/** [-] eave ice multiplies the flat load, ASCE/SEI 7-16 section 7.4.5. */
const EAVE_ICE_FACTOR = 2;
/** [m] 5 ft from the eave, ASCE/SEI 7-16 section 7.4.5 (memory). */
const EAVE_ICE_LENGTH_M = metersFromFeet(5);
/** [m²K/W] R-30, an unventilated roof is free of the eave case from here, section 7.4.5 (memory). */
const EAVE_ICE_UNVENTILATED_M2K_W = rsiFromR(30);
/** [m²K/W] R-20, the same for a ventilated roof, section 7.4.5 (memory). */
const EAVE_ICE_VENTILATED_M2K_W = rsiFromR(20);
/** [-] allowable-stress factor on snow: 1.0 in 7-16, 0.7 in 7-22 (memory), section 2.4.1. */
const ALLOWABLE_STRESS_FACTOR = { 'asce7-16': 1.0, 'asce7-22': 0.7 } as const;

/**
 * Balanced snow on a flat roof.
 *
 * pf = 0.7 Ce Ct Is pg; in the 2022 edition pg is mapped by risk category and Is is gone
 *
 * @param input  [Pa, -] ground snow (pg) >= 0; exposure (Ce), thermal (Ct), importance (Is) factors > 0
 * @returns      [Pa] on the horizontal projection
 * @range        roofs without drifts from higher roofs
 * @throws       RangeError when a value is not finite or outside its range
 * @source       ASCE-7-16 eq. 7.3-1 (seen-primary in a guide example); ASCE-7-22 (seen-transcription)
 * @assumes      the ground snow comes from the authority
 */
export function flatRoofSnow(input: {
  readonly groundSnow_Pa: number;
  readonly exposureFactor: number;
  readonly thermalFactor: number;
  readonly importanceFactor: number;
  readonly edition?: SnowEdition;
}): number {
  demandRange('groundSnow_Pa', input.groundSnow_Pa, 0);
  demandPositive('exposureFactor', input.exposureFactor);
  demandPositive('thermalFactor', input.thermalFactor);
  demandPositive('importanceFactor', input.importanceFactor);
  const importance = input.edition === 'asce7-22' ? 1 : input.importanceFactor;
  return GROUND_TO_ROOF * input.exposureFactor * input.thermalFactor * importance * input.groundSnow_Pa;
}

/**
 * Slope factor: the share of the flat load that stays on a slope.
 *
 * Cs = 1 up to the line's slope, then straight to 0 at 70 degrees
 *
 * @param angle_deg      [deg] slope, 0 to 90
 * @param thermalFactor  [-] Ct > 0
 * @param slippery       unobstructed slippery surface with room below the eave
 * @returns              [-] 0 to 1
 * @range                the 2016 lines; the 2022 lines were not retrieved, so they serve there too and are flagged
 * @throws               RangeError when the angle is outside 0 to 90
 * @source               ASCE-7-16 figure 7.4-1 (seen-transcription)
 * @assumes              a warm slippery line is used only when the caller has checked R >= 30 (unventilated) or 20
 */
export function slopeFactor(angle_deg: number, thermalFactor: number, slippery: boolean): number {
  demandRange('angle_deg', angle_deg, 0, 90);
  demandPositive('thermalFactor', thermalFactor);
  const line =
    thermalFactor <= WARM_THERMAL_FACTOR ? 'warm' : thermalFactor < COLD_THERMAL_FACTOR ? 'cool' : 'cold';
  const full_deg = FULL_LOAD_SLOPE_DEG[line][slippery ? 'slippery' : 'other'];
  return Math.min(1, Math.max(0, (BARE_SLOPE_DEG - angle_deg) / (BARE_SLOPE_DEG - full_deg)));
}

/**
 * Least load of a low slope: a case of its own, never added.
 *
 * pm = Is min(pg, 20 psf) below 15 degrees
 *
 * @param groundSnow_Pa     [Pa] pg >= 0
 * @param importanceFactor  [-] Is > 0
 * @param angle_deg         [deg] slope
 * @returns                 [Pa] 0 from 15 degrees on
 * @source                  ASCE-7-16 section 7.3.4 (seen-transcription)
 */
export function lowSlopeMinimum(groundSnow_Pa: number, importanceFactor: number, angle_deg: number): number {
  return angle_deg < LOW_SLOPE_DEG ? importanceFactor * Math.min(groundSnow_Pa, LOW_SLOPE_CAP_PA) : 0;
}

/**
 * Rain that falls on snow.
 *
 * 5 psf when 0 < pg <= 20 psf and the slope in degrees is below W/50, W in feet
 *
 * @param groundSnow_Pa  [Pa] pg
 * @param angle_deg      [deg] slope
 * @param eaveToRidge_m  [m] horizontal run W
 * @returns              [Pa] 0 or the surcharge
 * @source               ASCE-7-16 section 7.10 (seen-transcription)
 */
export function rainOnSnow(groundSnow_Pa: number, angle_deg: number, eaveToRidge_m: number): number {
  const inRange = groundSnow_Pa > 0 && groundSnow_Pa <= LOW_SLOPE_CAP_PA;
  return inRange && angle_deg < feetFromMeters(eaveToRidge_m) / RAIN_RUN_FT_PER_DEG ? RAIN_ON_SNOW_PA : 0;
}

export interface EaveIce {
  /** True when the standard asks for it at this R and ventilation. */
  readonly triggered: boolean;
  readonly load_Pa: number;
  readonly length_m: number;
  readonly note: string;
}

/**
 * Ice along the eave: twice the flat load on the overhang, with dead load only.
 *
 * 2 pf over the overhang, at most 5 ft, when unventilated with R < 30 or ventilated with R < 20
 *
 * @param input  [Pa, m²K/W, m] flat load of the heated part, roof resistance, ventilation, overhang
 * @returns      [Pa, m] load and length, with whether the standard asks for it
 * @source       ASCE-7-16 section 7.4.5 (opening and last sentence seen-secondary; R limits and 5 ft memory)
 * @assumes      where the case is not asked for, it stays in view as a robust check: the overhang is cold
 */
export function eaveIce(input: {
  readonly flat_Pa: number;
  readonly resistance_m2K_W: number;
  readonly ventilated: boolean;
  readonly overhang_m: number;
}): EaveIce {
  demandRange('flat_Pa', input.flat_Pa, 0);
  demandRange('overhang_m', input.overhang_m, 0);
  const limit = input.ventilated ? EAVE_ICE_VENTILATED_M2K_W : EAVE_ICE_UNVENTILATED_M2K_W;
  const triggered = input.resistance_m2K_W < limit;
  return {
    triggered,
    load_Pa: EAVE_ICE_FACTOR * input.flat_Pa,
    length_m: Math.min(input.overhang_m, EAVE_ICE_LENGTH_M),
    note: triggered
      ? 'Eave ice at twice the flat load is asked for at this R. Confirm the limits in the standard.'
      : 'Eave ice is not asked for at this R; the case stays as a robust check, because the overhang is cold by construction.',
  };
}

/**
 * Snow at the allowable-stress level of the load combinations.
 *
 * S in 7-16, 0.7 S in 7-22
 *
 * @param edition  edition of the standard that gave the ground snow
 * @param load_Pa  [Pa] roof snow
 * @returns        [Pa] for allowable-stress combinations
 * @source         ASCE-7-16 section 2.4.1; ASCE-7-22 section 2.4.1 (memory)
 */
export function allowableStressSnow(edition: SnowEdition, load_Pa: number): number {
  return ALLOWABLE_STRESS_FACTOR[edition] * load_Pa;
}

/**
 * Snow by the Canadian code, part 4 form (part 9: Cb 0.45 or 0.55 and the other factors 1).
 *
 * S = Is [Ss Cb Cw Cs Ca + Sr]
 *
 * @param input  [Pa, -] ground snow Ss and rain Sr; Cb times the other shape factors; Is
 * @returns      [Pa] roof snow
 * @source       NBC-2015-PART-4 4.1.6.2 (seen-secondary)
 */
export function canadianRoofSnow(input: {
  readonly snow_Pa: number;
  readonly rain_Pa: number;
  readonly shapeFactor: number;
  readonly importanceFactor: number;
}): number {
  demandRange('snow_Pa', input.snow_Pa, 0);
  demandRange('rain_Pa', input.rain_Pa, 0);
  return input.importanceFactor * (input.snow_Pa * input.shapeFactor + input.rain_Pa);
}

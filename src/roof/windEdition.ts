/** Which edition of the wind and snow standard counts, and the wind on this house. Shared by loads and fasteners. */
import type { WindEdition } from '../catalog/windCoefficients.ts';
import type { CompleteCase } from '../case/complete.ts';
import { GREATEST_ROOF_HEIGHT_M, WIND_ANGLES_DEG, type WindSite } from '../structure/wind.ts';
import { angleOfPitch_deg, cosine, sine } from './geometry.ts';

/**
 * Edition of the wind and snow standard: the one that the authority names, else that of the code edition.
 *
 * 2024 codes: 2022 edition; 2018 and 2021: 2016 edition; 2015 codes name the 2010 edition, for which the 2016 one stands in
 *
 * @param given  [-] the complete case
 * @returns      [-] the edition
 * @source       COMMON-PRACTICE editions adopted by reference in the model codes (memory)
 * @assumes      the 2010 edition asks less suction of steep roofs than the 2016 edition that stands in for it
 */
export function windEditionOf(given: CompleteCase): WindEdition {
  return given.loads.standard ?? (given.codes.edition === '2024' ? 'asce7-22' : 'asce7-16');
}

/**
 * Mean height of the roof above the ground: half way from eave to ridge.
 *
 * h = eave + run tan(angle)/2, at most 60 ft
 *
 * @param given  [m] the complete case
 * @returns      [m] h
 * @source       ASCE-7-16 section 26.2 (memory)
 */
export function meanRoofHeight_m(given: CompleteCase): number {
  const { shape, width_m, eaveHeight_m, pitch_rise_per_12 } = given.roof;
  const angle_deg = angleOfPitch_deg(pitch_rise_per_12);
  const run_m = shape === 'shed' ? width_m : width_m / 2;
  const rise_m = (run_m * sine(angle_deg)) / cosine(angle_deg);
  return Math.min(eaveHeight_m + rise_m / 2, GREATEST_ROOF_HEIGHT_M);
}

export interface WindGap {
  readonly reason: string;
  /** The roof whose figures are shown in its place; null where none is near enough. */
  readonly standIn: string | null;
}

/**
 * Why the wind tables of gable and hip roofs say nothing about this roof, and what stands in for it.
 *
 * @param given  [-] the complete case
 * @returns      [-] reason and stand-in; null where the tables reach
 * @source       ASCE-7-16 figures 30.3-2A to 30.3-2I, shapes and slopes (seen-transcription); OUR-JUDGEMENT stand-ins
 * @assumes      past 45 degrees no figure of this shape is near enough to stand in
 */
export function windGapOf(given: CompleteCase): WindGap | null {
  const { shape, eaveHeight_m, width_m } = given.roof;
  const angle_deg = angleOfPitch_deg(given.roof.pitch_rise_per_12);
  if (!(angle_deg > WIND_ANGLES_DEG.above && angle_deg <= WIND_ANGLES_DEG.atMost))
    return {
      reason: 'The wind tables of gable and hip roofs read here go from 7 to 45 degrees.',
      standIn: null,
    };
  if (shape !== 'gable' && shape !== 'hip')
    return {
      reason: `The wind tables read here are for gable and hip roofs; a ${shape === 'cross-gable' ? 'cross gable' : shape} has its own figures.`,
      standIn: 'plain gable',
    };
  if (eaveHeight_m + ((width_m / 2) * (sine(angle_deg) / cosine(angle_deg))) / 2 > GREATEST_ROOF_HEIGHT_M)
    return {
      reason: 'The wind tables read here end at a mean roof height of 60 ft (18.3 m).',
      standIn: `${shape} with its mean height at 60 ft (18.3 m)`,
    };
  return null;
}

/**
 * Wind and height of this house.
 *
 * @param given  [-] the complete case
 * @returns      [m/s, m] edition, speed, exposure, mean roof height, topography, ground elevation
 * @source       ASCE-7-16 chapter 26 (seen-transcription)
 * @assumes      flat ground where no topographic factor is given; ground below sea level counts as sea level
 */
export function windSiteOf(given: CompleteCase): WindSite {
  return {
    edition: windEditionOf(given),
    basicSpeed_m_s: given.loads.basicWindSpeed_m_s,
    exposure: given.loads.exposure,
    meanRoofHeight_m: meanRoofHeight_m(given),
    topographicFactor: given.loads.topographicFactor,
    groundElevation_m: Math.max(0, given.place.elevation_m ?? 0),
  };
}

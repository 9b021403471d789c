/** Loads on a candidate roof for the screening of edges and fasteners. All provisional. */
import { dimension } from '../catalog/dimensions.ts';
import { covering } from '../catalog/coverings.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Layer } from '../evaluation/evaluation.ts';
import { allowableStressSnow, flatRoofSnow, slopeFactor } from '../structure/snow.ts';
import { roofWindPressure, type WindShape, type WindZone } from '../structure/wind.ts';
import { angleOfPitch_deg, cosine, sine } from './geometry.ts';

/** [m/s²] standard gravity (BIPM SI brochure, 9th edition). */
const GRAVITY = 9.80665;
/** [m²] smallest effective area of the wind tables: 10 ft² (ASCE/SEI 7-16, seen-transcription). */
const SMALL_AREA_M2 = 0.92903;
/** [m] the wind tables end at a mean roof height of 60 ft (ASCE/SEI 7-16, seen-transcription). */
const GREATEST_HEIGHT_M = 18.288;
const WIND_EDITION = 'asce7-16';
const SNOW_EDITION = 'asce7-16';

export interface RoofLoad {
  /** Everything above the framing, per slope area. */
  readonly dead_Pa: number;
  /** Everything above the insulation, per slope area. */
  readonly upper_Pa: number;
  /** Roof snow on the horizontal projection, allowable-stress level. */
  readonly snow_Pa: number;
  /** Strength-level pressures square to the slope; null when the tables do not reach this slope. */
  readonly cornerUplift_Pa: number | null;
  readonly overhangUplift_Pa: number | null;
  readonly overhangDownward_Pa: number | null;
}

const weight_Pa = (layers: readonly Layer[]): number =>
  GRAVITY * layers.reduce((sum, layer) => sum + layer.mass_kg_m2, 0);

const windShape = (shape: CompleteCase['roof']['shape']): WindShape => (shape === 'hip' ? 'hip' : 'gable');

/** The zones of the corner and of the eave corner, in the words of the 2016 edition. */
const cornerZone = (shape: WindShape): WindZone => (shape === 'hip' ? '3' : '3r');
const eaveCornerZone = (shape: WindShape): WindZone => (shape === 'hip' ? '3' : '3e');

/**
 * Dead, snow and wind on a candidate.
 *
 * dead = g Σ mass of the layers above the framing; snow = flat roof snow × slope factor, allowable-stress level
 *
 * @param given   [-] the complete case
 * @param layers  [kg/m²] its layers
 * @returns       [Pa] see RoofLoad
 * @source        ASCE-7-16 chapters 7 and 30 (seen-transcription): confirm in the standard
 * @assumes       partly exposed, cold upper deck, category II; house fully enclosed, flat ground; a shed, gambrel or
 *                cross gable takes the coefficients of a gable
 */
export function loadsOn(given: CompleteCase, layers: readonly Layer[]): RoofLoad {
  const angle_deg = angleOfPitch_deg(given.roof.pitch_rise_per_12);
  const thermalFactor = dimension('snow-thermal-factor');
  const flat_Pa = flatRoofSnow({
    groundSnow_Pa: given.loads.groundSnow_Pa,
    exposureFactor: dimension('snow-exposure-factor'),
    thermalFactor,
    importanceFactor: dimension('snow-importance-factor'),
    edition: SNOW_EDITION,
  });
  const slope = slopeFactor(angle_deg, thermalFactor, covering(given.covering.kind).slippery);
  const run_m = given.roof.shape === 'shed' ? given.roof.width_m : given.roof.width_m / 2;
  const ridge_m = given.roof.eaveHeight_m + (run_m * sine(angle_deg)) / cosine(angle_deg);
  const site = {
    edition: WIND_EDITION,
    basicSpeed_m_s: given.loads.basicWindSpeed_m_s,
    exposure: given.loads.exposure,
    meanRoofHeight_m: Math.min((given.roof.eaveHeight_m + ridge_m) / 2, GREATEST_HEIGHT_M),
    groundElevation_m: Math.max(0, given.place.elevation_m ?? 0),
  } as const;
  const roofShape = windShape(given.roof.shape);
  const pressure = (zone: WindZone, part: 'roof' | 'overhang') => {
    const found = roofWindPressure(
      site,
      { roofShape, angle_deg, zone, effectiveArea_m2: SMALL_AREA_M2 },
      part,
    );
    return found.kind === 'notCovered' ? null : found;
  };
  const overhang = pressure(eaveCornerZone(roofShape), 'overhang');
  const insulationEnd = layers.findLastIndex((layer) => layer.role === 'insulation');
  const deck = layers.findIndex((layer) => layer.role === 'deck');
  return {
    dead_Pa: weight_Pa(layers.slice(deck)),
    upper_Pa: weight_Pa(layers.slice(insulationEnd + 1)),
    snow_Pa: allowableStressSnow(SNOW_EDITION, flat_Pa * slope),
    cornerUplift_Pa: pressure(cornerZone(roofShape), 'roof')?.uplift_Pa ?? null,
    overhangUplift_Pa: overhang?.uplift_Pa ?? null,
    overhangDownward_Pa: overhang?.downward_Pa ?? null,
  };
}

/**
 * Pull down the slope of what lies above the insulation, snow included, per slope area.
 *
 * (D + S) sin(angle)
 *
 * @param load       [Pa] dead load above the insulation (D) and roof snow (S)
 * @param angle_deg  [deg] slope
 * @returns          [Pa] along the slope
 * @source           COMMON-PRACTICE statics of a sloped plane (computed)
 * @assumes          roof snow taken on the slope area, which is more than its horizontal projection
 */
export const alongSlope_Pa = (load: RoofLoad, angle_deg: number): number =>
  (load.upper_Pa + load.snow_Pa) * sine(angle_deg);

/** Snow blown over the ridge of gable and hip roofs by ASCE/SEI 7. Loads act on the horizontal projection. */
import {
  feetFromMeters,
  METERS_PER_FOOT,
  metersFromFeet,
  NEWTONS_PER_POUND,
  psfFromPascals,
} from '../units.ts';
import { demandPositive, demandRange, radians } from './guards.ts';

/** [deg] 1/2 on 12, unbalanced snow starts here, ASCE/SEI 7-16 section 7.6.1 (seen-secondary). */
const UNBALANCED_FROM_DEG = 2.38;
/** [deg] 7 on 12, unbalanced snow ends here, same clause. */
const UNBALANCED_TO_DEG = 30.2;
/** [m] 20 ft, simple rule for short roofs, same clause. */
const SHORT_ROOF_M = metersFromFeet(20);
/** [-] windward share of the sloped load, same clause. */
const WINDWARD_SHARE = 0.3;
/** [-], [-] width of the surcharge 8/3 hd sqrt(S), same clause. */
const SURCHARGE_WIDTH = 8 / 3;
/** [1/ft], [pcf], [pcf] snow density 0.13 pg + 14 <= 30, eq. 7.7-1. */
const DENSITY = { perGroundSnow: 0.13, base_pcf: 14, greatest_pcf: 30 } as const;
/** [-] drift height 0.43 lu^(1/3) (pg + 10)^(1/4) - 1.5 in feet and psf, figure 7.6-1. */
const DRIFT_16 = { factor: 0.43, added_psf: 10, off_ft: 1.5, fetchPower: 1 / 3, snowPower: 1 / 4 } as const;
/** [-] drift in front of a step over that behind it, section 7.7.1 (memory). */
const WINDWARD_DRIFT = 0.75;
/** [-] width of a drift over its height, section 7.7.1 (memory). */
const DRIFT_WIDTH = 4;
/** [m] 20 ft, least fetch of the drift formula (memory). */
const LEAST_FETCH_M = metersFromFeet(20);
/** [-] drift height 1.5 sqrt(pg^0.74 lu^0.70 W2^1.7 / density) in feet, psf, pcf, 7-22 eq. 7.6-1. */
const DRIFT_22 = { factor: 1.5, snowPower: 0.74, fetchPower: 0.7, windPower: 1.7 } as const;
/** [N/m³] one pound-force per cubic foot (NIST SP 811 units). */
const NEWTONS_M3_PER_PCF = NEWTONS_PER_POUND / (METERS_PER_FOOT * METERS_PER_FOOT * METERS_PER_FOOT);

/**
 * Weight of drifted snow.
 *
 * gamma = 0.13 pg + 14 <= 30 pcf
 *
 * @param groundSnow_Pa  [Pa] pg >= 0
 * @returns              [N/m³] weight density
 * @source               ASCE-7-16 eq. 7.7-1 (seen-primary in a guide example)
 */
export function snowDensity(groundSnow_Pa: number): number {
  const density_pcf = DENSITY.perGroundSnow * psfFromPascals(groundSnow_Pa) + DENSITY.base_pcf;
  return Math.min(DENSITY.greatest_pcf, density_pcf) * NEWTONS_M3_PER_PCF;
}

/**
 * Height of the drift behind the ridge, 2016 edition.
 *
 * hd = sqrt(Is) [0.43 lu^(1/3) (pg + 10)^(1/4) - 1.5] in ft, psf
 *
 * @param groundSnow_Pa     [Pa] pg > 0
 * @param fetch_m           [m] lu, not less than 20 ft
 * @param importanceFactor  [-] Is > 0
 * @returns                 [m] drift height, never below 0
 * @source                  ASCE-7-16 figure 7.6-1 (formula seen-primary; root of Is and 20 ft memory)
 */
export function driftHeight(groundSnow_Pa: number, fetch_m: number, importanceFactor: number): number {
  demandPositive('fetch_m', fetch_m);
  demandPositive('importanceFactor', importanceFactor);
  const fetch_ft = feetFromMeters(Math.max(fetch_m, LEAST_FETCH_M));
  const height_ft =
    DRIFT_16.factor *
      Math.pow(fetch_ft, DRIFT_16.fetchPower) *
      Math.pow(psfFromPascals(groundSnow_Pa) + DRIFT_16.added_psf, DRIFT_16.snowPower) -
    DRIFT_16.off_ft;
  return metersFromFeet(Math.sqrt(importanceFactor) * Math.max(0, height_ft));
}

/**
 * Height of the drift behind the ridge, 2022 edition.
 *
 * hd = 1.5 sqrt(pg^0.74 lu^0.70 W2^1.7 / gamma) in ft, psf, pcf
 *
 * @param groundSnow_Pa    [Pa] pg >= 0
 * @param fetch_m          [m] lu > 0
 * @param winterWindShare  [-] W2 winter wind parameter, 0 to 1
 * @returns                [m] drift height
 * @source                 ASCE-7-22 eq. 7.6-1 (seen-transcription): confirm in the standard
 */
export function driftHeight2022(groundSnow_Pa: number, fetch_m: number, winterWindShare: number): number {
  demandPositive('fetch_m', fetch_m);
  demandRange('winterWindShare', winterWindShare, 0, 1);
  const inside =
    (Math.pow(psfFromPascals(groundSnow_Pa), DRIFT_22.snowPower) *
      Math.pow(feetFromMeters(fetch_m), DRIFT_22.fetchPower) *
      Math.pow(winterWindShare, DRIFT_22.windPower)) /
    (snowDensity(groundSnow_Pa) / NEWTONS_M3_PER_PCF);
  return metersFromFeet(DRIFT_22.factor * Math.sqrt(inside));
}

interface DriftSite {
  readonly groundSnow_Pa: number;
  readonly importanceFactor: number;
  /** W2 of the 2022 maps; the 2016 formula serves when it is absent. */
  readonly winterWindShare?: number;
}

const heightOf = (site: DriftSite, fetch_m: number): number =>
  site.winterWindShare === undefined
    ? driftHeight(site.groundSnow_Pa, fetch_m, site.importanceFactor)
    : driftHeight2022(site.groundSnow_Pa, fetch_m, site.winterWindShare);

export interface StepDrift {
  /** At the step, on top of the balanced load; falls to nothing over `width_m`. */
  readonly surcharge_Pa: number;
  readonly height_m: number;
  readonly width_m: number;
  /** Whether the drift behind or in front of the step is the higher one. */
  readonly from: 'lee' | 'windward';
}

/**
 * Drift on a roof below a higher one.
 *
 * hd = greater of hd(upper length) and 0.75 hd(lower length); pd = hd gamma; width 4 hd
 *
 * @param input  [Pa, m, -] ground snow, lengths of the upper and the lower roof square to the step, importance, W2 for 2022
 * @returns      [Pa, m] greatest surcharge, height, width
 * @throws       RangeError when a value is outside its range
 * @source       ASCE-7-16 section 7.7.1 (memory); heights as of driftHeight
 * @assumes      the step is high enough for the whole drift; a lower step holds less
 */
export function stepDrift(
  input: DriftSite & { readonly upperLength_m: number; readonly lowerLength_m: number },
): StepDrift {
  const lee_m = heightOf(input, input.upperLength_m);
  const windward_m = WINDWARD_DRIFT * heightOf(input, input.lowerLength_m);
  const height_m = Math.max(lee_m, windward_m);
  return {
    surcharge_Pa: height_m * snowDensity(input.groundSnow_Pa),
    height_m,
    width_m: DRIFT_WIDTH * height_m,
    from: lee_m >= windward_m ? 'lee' : 'windward',
  };
}

export interface UnbalancedSnow {
  readonly required: boolean;
  readonly windward_Pa: number;
  readonly leeward_Pa: number;
  /** Added to the leeward load next to the ridge. */
  readonly surcharge_Pa: number;
  /** Horizontal width of the surcharge from the ridge. */
  readonly surchargeExtent_m: number;
  readonly driftHeight_m: number;
}

/**
 * Snow blown over the ridge of a gable or hip roof; the drift by the 2016 edition, or by 2022 with its wind parameter.
 *
 * short roofs (W <= 20 ft): lee Is pg, windward bare; else windward 0.3 ps, lee ps + hd gamma / sqrt(S) over 8/3 hd sqrt(S)
 *
 * @param input  [Pa, m, deg, -] ground and sloped load, eave-to-ridge run (W), slope, importance, W2 for 2022
 * @returns      [Pa, m] loads of both sides and the surcharge; not required outside 1/2:12 to 7:12
 * @throws       RangeError when a value is outside its range
 * @source       ASCE-7-16 section 7.6.1 (0.3 ps, hd, gamma and surcharge seen-primary; slope range seen-secondary)
 * @assumes      simple rafters ridge to eave for the short rule
 */
export function unbalancedSnow(input: {
  readonly groundSnow_Pa: number;
  readonly sloped_Pa: number;
  readonly eaveToRidge_m: number;
  readonly angle_deg: number;
  readonly importanceFactor: number;
  readonly winterWindShare?: number;
}): UnbalancedSnow {
  demandRange('groundSnow_Pa', input.groundSnow_Pa, 0);
  demandPositive('eaveToRidge_m', input.eaveToRidge_m);
  const none = { windward_Pa: 0, leeward_Pa: 0, surcharge_Pa: 0, surchargeExtent_m: 0, driftHeight_m: 0 };
  if (input.angle_deg < UNBALANCED_FROM_DEG || input.angle_deg > UNBALANCED_TO_DEG)
    return { required: false, ...none };
  if (input.eaveToRidge_m <= SHORT_ROOF_M)
    return { required: true, ...none, leeward_Pa: input.importanceFactor * input.groundSnow_Pa };
  const height_m = heightOf(input, input.eaveToRidge_m);
  const root = Math.sqrt(1 / Math.tan(radians(input.angle_deg)));
  return {
    required: true,
    windward_Pa: WINDWARD_SHARE * input.sloped_Pa,
    leeward_Pa: input.sloped_Pa,
    surcharge_Pa: (height_m * snowDensity(input.groundSnow_Pa)) / root,
    surchargeExtent_m: SURCHARGE_WIDTH * root * height_m,
    driftHeight_m: height_m,
  };
}

/** Wind on roof coverings and overhangs by ASCE/SEI 7, components and cladding, mean roof height to 60 ft. */
import {
  coefficientLine,
  WALL_LINE,
  type CoefficientLine,
  type WindEdition,
  type WindShape,
  type WindZone,
} from '../catalog/windCoefficients.ts';
import { metersFromFeet, pascalsFromPsf } from '../units.ts';
import type { NotCovered } from '../catalog/notCovered.ts';
import { demandPositive, demandRange } from './guards.ts';
import { AUTHORITY, CONFIRM_IN_STANDARD, ENGINEER } from './screening.ts';

export type { WindEdition, WindShape, WindZone };
export type Exposure = 'B' | 'C' | 'D';

/** [N·s²/m⁴] half the air density as printed, ASCE/SEI 7-16 eq. 26.10-1.si. */
const VELOCITY_CONSTANT = 0.613;
/** [-] directionality of components and cladding, table 26.6-1. */
const DIRECTIONALITY = 0.85;
/** [1/m] ground elevation factor exp(-0.000119 z), table 26.9-1 note 2.si (seen-transcription). */
const ELEVATION_RATE = 0.000119;
/** [m] 15 ft, lowest height of the exposure coefficient, table 26.10-1. */
const LEAST_HEIGHT_M = metersFromFeet(15);
/** [m] 60 ft, greatest mean roof height of chapter 30 part 1. */
export const GREATEST_ROOF_HEIGHT_M = metersFromFeet(60);
/** [-], [m] exposure constants, table 26.11-1: 7-16 seen-transcription; 7-22 B exponent 7.5 memory, others transcription. */
const EXPOSURE_CONSTANTS = {
  'asce7-16': {
    factor: 2.01,
    B: { power: 7.0, gradient_m: metersFromFeet(1200) },
    C: { power: 9.5, gradient_m: metersFromFeet(900) },
    D: { power: 11.5, gradient_m: metersFromFeet(700) },
  },
  'asce7-22': {
    factor: 2.41,
    B: { power: 7.5, gradient_m: 1000 },
    C: { power: 9.8, gradient_m: 750 },
    D: { power: 11.5, gradient_m: 590 },
  },
} as const;
/** [-] internal pressure of an enclosed building, table 26.13-1. */
const INTERNAL_ENCLOSED = 0.18;
/** [Pa] 16 psf, least strength-level pressure, section 30.2.2 (memory). */
const LEAST_PRESSURE_PA = pascalsFromPsf(16);
/** [-] wind in allowable-stress combinations, section 2.4.1. */
export const ALLOWABLE_STRESS_WIND = 0.6;
/** [-] height to width up to which a hip roof counts as low, and from which as high, figure 30.3-2E and following. */
const HIP_PROPORTION = { low: 0.5, high: 0.8 } as const;
/** [deg] slopes covered: the program's roofs are steeper than 7 degrees; the figures end at 45. */
export const WIND_ANGLES_DEG = { above: 7, atMost: 45 } as const;
/** [-], [m] edge width: 10 % of the least plan dimension, 40 % of the height, floor 4 % or 3 ft, figure 30.3-1 notation. */
const EDGE = { plan: 0.1, height: 0.4, floor: 0.04, least_m: metersFromFeet(3) } as const;
/** [-] effective wind area is at least span times span/3, section 26.2. */
const AREA_SPAN_DIVISOR = 3;

/**
 * Exposure coefficient of the wind velocity pressure.
 *
 * Kz = 2.01 (z/zg)^(2/alpha) in 7-16, 2.41 (z/zg)^(2/alpha) in 7-22, z >= 15 ft
 *
 * @param edition   edition of the standard
 * @param exposure  B, C or D
 * @param height_m  [m] height above ground (z), 0 to 60 ft
 * @returns         [-] Kz
 * @throws          RangeError when the height is outside its range
 * @source          ASCE-7-16 table 26.10-1 (seen-transcription); ASCE-7-22 table 26.10-1 (seen-transcription, B memory)
 */
export function exposureCoefficient(edition: WindEdition, exposure: Exposure, height_m: number): number {
  demandRange('height_m', height_m, 0, GREATEST_ROOF_HEIGHT_M);
  const constants = EXPOSURE_CONSTANTS[edition];
  const { power, gradient_m } = constants[exposure];
  return constants.factor * Math.pow(Math.max(height_m, LEAST_HEIGHT_M) / gradient_m, 2 / power);
}

/**
 * Thinner air at altitude.
 *
 * Ke = exp(-0.000119 z)
 *
 * @param elevation_m  [m] ground above sea level
 * @returns            [-] Ke
 * @source             ASCE-7-16 table 26.9-1 (seen-transcription)
 */
export function groundElevationFactor(elevation_m: number): number {
  demandRange('groundElevation_m', elevation_m, -500, 9000);
  return Math.exp(-ELEVATION_RATE * elevation_m);
}

export interface WindSite {
  readonly edition: WindEdition;
  readonly basicSpeed_m_s: number;
  readonly exposure: Exposure;
  readonly meanRoofHeight_m: number;
  /** Kzt, 1 on flat ground. */
  readonly topographicFactor?: number;
  readonly groundElevation_m?: number;
}

/**
 * Velocity pressure at mean roof height, directionality in.
 *
 * q = 0.613 Kz Kzt Kd Ke V^2
 *
 * @param site  [m/s, m] speed (V, strength level), exposure, height, topography (Kzt), ground elevation
 * @returns     [Pa] with Kd = 0.85 inside for both editions, so that they compare; 7-22 prints Kd with the coefficient
 * @throws      RangeError when a value is outside its range
 * @source      ASCE-7-16 eq. 26.10-1 (seen-primary in a guide example); ASCE-7-22 (seen-secondary)
 */
export function velocityPressure(site: WindSite): number {
  demandRange('basicSpeed_m_s', site.basicSpeed_m_s, 0);
  const topography = site.topographicFactor ?? 1;
  demandPositive('topographicFactor', topography);
  return (
    VELOCITY_CONSTANT *
    exposureCoefficient(site.edition, site.exposure, site.meanRoofHeight_m) *
    topography *
    DIRECTIONALITY *
    groundElevationFactor(site.groundElevation_m ?? 0) *
    site.basicSpeed_m_s *
    site.basicSpeed_m_s
  );
}

/**
 * A coefficient between the end points of its line.
 *
 * GCp(A) = g1 + (g2 - g1) log(A/A1) / log(A2/A1), level outside
 *
 * @param line     end points
 * @param area_m2  [m²] effective wind area (A) > 0
 * @returns        [-] GCp
 * @source         ASCE-7-16 figure 30.3-2 (seen-transcription)
 */
export function coefficientAt(line: CoefficientLine, area_m2: number): number {
  demandPositive('effectiveArea_m2', area_m2);
  const share = Math.log(area_m2 / line.smallArea_m2) / Math.log(line.largeArea_m2 / line.smallArea_m2);
  return line.atSmallArea + (line.atLargeArea - line.atSmallArea) * Math.min(1, Math.max(0, share));
}

export interface WindCoefficient {
  readonly kind: 'coefficient';
  readonly value: number;
  readonly notes: readonly string[];
}

export interface RoofPlace {
  readonly edition: WindEdition;
  readonly roofShape: WindShape;
  readonly angle_deg: number;
  readonly zone: WindZone;
  readonly effectiveArea_m2: number;
  /** Mean roof height over least width; the greater suction is taken when it is absent. */
  readonly heightToWidth?: number;
}

/**
 * External coefficient of one zone: suction on the roof, suction on an overhang, or pressure.
 *
 * @param place  edition, shape, slope, zone, effective wind area [m²], height to width [-]
 * @param part   roof, overhang or positive
 * @returns      [-] the coefficient with its notes, or notCovered with the reason
 * @source       ASCE-7-16 figures 30.3-2A to 30.3-2I (seen-transcription); ASCE-7-22 figures 30.3-2A to 30.3-2G (seen-transcription)
 * @assumes      7-22 overhang: roof coefficient plus the wall coefficient on the soffit (memory)
 */
export function externalCoefficient(
  place: RoofPlace,
  part: 'roof' | 'overhang' | 'positive',
): WindCoefficient | NotCovered {
  const roofLine = (proportion: 'low' | 'high', wanted = part): CoefficientLine | undefined =>
    coefficientLine({
      edition: place.edition,
      shape: place.roofShape,
      angle_deg: place.angle_deg,
      part: wanted,
      zone: place.zone,
      proportion,
    });
  const soffit = place.edition === 'asce7-22' && part === 'overhang';
  const low = roofLine('low', soffit ? 'roof' : part);
  const high = roofLine('high', soffit ? 'roof' : part);
  if (!low || !high)
    return {
      kind: 'notCovered',
      reason: `${place.angle_deg} degrees is not covered for a ${place.roofShape} roof, ${part}, zone ${place.zone} in ${place.edition}; a structural engineer decides`,
      deferTo: ENGINEER,
    };
  const atLow = coefficientAt(low, place.effectiveArea_m2);
  const atHigh = coefficientAt(high, place.effectiveArea_m2);
  const share =
    place.heightToWidth === undefined
      ? undefined
      : (place.heightToWidth - HIP_PROPORTION.low) / (HIP_PROPORTION.high - HIP_PROPORTION.low);
  const value =
    share === undefined
      ? part === 'positive'
        ? Math.max(atLow, atHigh)
        : Math.min(atLow, atHigh)
      : atLow + (atHigh - atLow) * Math.min(1, Math.max(0, share));
  const notes = [low.note, high.note === low.note ? undefined : high.note].filter(
    (note) => note !== undefined,
  );
  return {
    kind: 'coefficient',
    value: soffit ? value - coefficientAt(WALL_LINE, place.effectiveArea_m2) : value,
    notes: [CONFIRM_IN_STANDARD, ...notes],
  };
}

export interface WindPressure {
  readonly kind: 'pressure';
  readonly velocityPressure_Pa: number;
  /** Strength level, negative. */
  readonly uplift_Pa: number;
  /** Strength level, positive. */
  readonly downward_Pa: number;
  readonly notes: readonly string[];
  readonly decidedBy: string;
}

/**
 * Design pressure on a piece of roof or overhang, strength level, enclosed building.
 *
 * p = q [(GCp) -+ 0.18] on the roof, q (GCp) on an overhang, never less than 16 psf either way
 *
 * @param site   [m/s, m] wind and height
 * @param place  shape, slope, zone and effective area [m²]
 * @param part   roof or overhang
 * @returns      [Pa] velocity pressure, uplift (negative), downward; times 0.6 in allowable-stress combinations; or notCovered
 * @throws       RangeError when a value is outside its range
 * @source       ASCE-7-16 eq. 30.3-1 and section 30.9 (seen-secondary); coefficients seen-transcription; 16 psf memory
 * @assumes      enclosed building; downward wind on an overhang uses the roof's positive coefficient
 */
export function roofWindPressure(
  site: WindSite,
  place: Omit<RoofPlace, 'edition'>,
  part: 'roof' | 'overhang',
): WindPressure | NotCovered {
  const pressure_Pa = velocityPressure(site);
  const here = { ...place, edition: site.edition };
  const suction = externalCoefficient(here, part);
  const positive = externalCoefficient(here, 'positive');
  if (suction.kind === 'notCovered') return suction;
  if (positive.kind === 'notCovered') return positive;
  const internal = part === 'roof' ? INTERNAL_ENCLOSED : 0;
  return {
    kind: 'pressure',
    velocityPressure_Pa: pressure_Pa,
    uplift_Pa: Math.min(-LEAST_PRESSURE_PA, pressure_Pa * (suction.value - internal)),
    downward_Pa: Math.max(LEAST_PRESSURE_PA, pressure_Pa * (positive.value + internal)),
    notes: [...new Set([...suction.notes, ...positive.notes])],
    decidedBy: AUTHORITY,
  };
}

/**
 * Width of the edge strips.
 *
 * a = min(0.10 least plan dimension, 0.4 h), not less than 0.04 least plan dimension or 3 ft
 *
 * @param leastPlan_m       [m] least plan dimension
 * @param meanRoofHeight_m  [m] h
 * @returns                 [m] a
 * @source                  ASCE-7-16 figure 30.3-1 (seen-primary, older figure)
 */
export function edgeWidth(leastPlan_m: number, meanRoofHeight_m: number): number {
  demandPositive('leastPlan_m', leastPlan_m);
  demandPositive('meanRoofHeight_m', meanRoofHeight_m);
  const wanted_m = Math.min(EDGE.plan * leastPlan_m, EDGE.height * meanRoofHeight_m);
  return Math.max(wanted_m, EDGE.floor * leastPlan_m, EDGE.least_m);
}

/**
 * Effective wind area of a member.
 *
 * A = span x max(tributary width, span/3)
 *
 * @param span_m       [m] span
 * @param tributary_m  [m] tributary width
 * @returns            [m²] effective area
 * @source             ASCE-7-16 section 26.2 (memory)
 */
export function effectiveWindArea(span_m: number, tributary_m: number): number {
  demandPositive('span_m', span_m);
  demandPositive('tributary_m', tributary_m);
  return span_m * Math.max(tributary_m, span_m / AREA_SPAN_DIVISOR);
}

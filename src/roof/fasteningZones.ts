/** The roof in the zones that the wind standard names: their areas, and the suction on each. */
import type { WindEdition, WindShape, WindZone } from '../catalog/windCoefficients.ts';
import type { CompleteCase } from '../case/complete.ts';
import { edgeWidth, roofWindPressure } from '../structure/wind.ts';
import { angleOfPitch_deg, cosine, type RoofPlan } from './geometry.ts';
import { once } from './memo.ts';
import { meanRoofHeight_m, windSiteOf } from './windEdition.ts';

export interface ZoneArea {
  readonly zone: WindZone;
  /** On the slope, overhangs in. */
  readonly area_m2: number;
}

const windShapeOf = (shape: RoofPlan['shape']): WindShape => (shape === 'hip' ? 'hip' : 'gable');

/** Zones of the 2016 edition that the 2022 edition names as one. */
const MERGED: Readonly<Record<WindZone, WindZone>> = {
  '1': '1',
  '2': '2',
  '3': '3',
  '2e': '2',
  '2n': '2',
  '2r': '2',
  '3e': '3',
  '3r': '3',
};

/** Plan areas of one gable plane: strips of width a along eave, ridge and rakes. */
function gablePlane(length_m: number, depth_m: number, a_m: number): ZoneArea[] {
  const rake_m = Math.min(a_m, length_m / 2);
  const eave_m = Math.min(a_m, depth_m);
  const ridge_m = Math.min(a_m, depth_m - eave_m);
  const inner_m = length_m - 2 * rake_m;
  const middle_m = depth_m - eave_m - ridge_m;
  return [
    { zone: '1', area_m2: inner_m * middle_m },
    { zone: '2e', area_m2: inner_m * eave_m },
    { zone: '2n', area_m2: 2 * rake_m * middle_m },
    { zone: '2r', area_m2: inner_m * ridge_m },
    { zone: '3e', area_m2: 2 * rake_m * eave_m },
    { zone: '3r', area_m2: 2 * rake_m * ridge_m },
  ];
}

/** Plan area of a plane over a base, sides at 45°, no higher than `height`. */
const trapezoid = (base_m: number, height_m: number): number => {
  const h_m = Math.max(0, Math.min(height_m, base_m / 2));
  return Math.max(0, base_m) * h_m - h_m * h_m;
};

/** Plan areas of a hip roof: eave strip with corners, strips on both sides of ridge and hips, the rest. */
function hipPlanes(length_m: number, width_m: number, a_m: number): ZoneArea[] {
  const edge_m = Math.min(a_m, width_m / 2);
  const innerLength_m = length_m - 2 * edge_m;
  const innerWidth_m = width_m - 2 * edge_m;
  const corners_m2 = 2 * 2 * edge_m * edge_m;
  const inner_m2 = innerLength_m * innerWidth_m;
  // A hip runs at 45° in plan: a strip of width a beside it takes a √2 of the base at each end.
  const inset_m = 2 * Math.SQRT2 * edge_m;
  const field_m2 =
    2 * trapezoid(innerLength_m - inset_m, innerWidth_m / 2 - edge_m) +
    2 * trapezoid(innerWidth_m - inset_m, innerWidth_m / 2);
  return [
    { zone: '1', area_m2: field_m2 },
    { zone: '2e', area_m2: length_m * width_m - inner_m2 - corners_m2 },
    { zone: '2r', area_m2: inner_m2 - field_m2 },
    { zone: '3', area_m2: corners_m2 },
  ];
}

/**
 * Areas of the wind zones of a roof.
 *
 * strips of width a from the outer edges, overhangs in, along ridge and hips; plan area / cos(angle);
 * the 2022 edition joins 2e, 2n, 2r to 2 and 3e, 3r to 3
 *
 * @param plan     [m, deg] ridge along the length
 * @param edition  names the zones
 * @param edge_m   [m] width of the strips (a) > 0
 * @returns        [m²] zones with any area, in the order of the standard; they add up to the roof
 * @source         ASCE-7-16 figures 30.3-2A to 30.3-2I, layout of zones (memory): confirm in the standard
 * @assumes        a shed, gambrel or cross gable is laid out as the plain gable over the same plan
 */
export function zoneAreas(plan: RoofPlan, edition: WindEdition, edge_m: number): ZoneArea[] {
  const { shape, length_m, width_m, eaveOverhang_m: eave_m, rakeOverhang_m } = plan;
  const planes = shape === 'shed' ? 1 : 2;
  const parts =
    shape === 'hip'
      ? hipPlanes(Math.max(length_m, width_m) + 2 * eave_m, Math.min(length_m, width_m) + 2 * eave_m, edge_m)
      : gablePlane(length_m + 2 * rakeOverhang_m, width_m / planes + eave_m, edge_m).map((part) => ({
          ...part,
          area_m2: planes * part.area_m2,
        }));
  const joined = new Map<WindZone, number>();
  for (const { zone, area_m2 } of parts) {
    const name = edition === 'asce7-22' ? MERGED[zone] : zone;
    joined.set(name, (joined.get(name) ?? 0) + area_m2 / cosine(plan.angle_deg));
  }
  return [...joined].filter(([, area_m2]) => area_m2 > 0).map(([zone, area_m2]) => ({ zone, area_m2 }));
}

export interface RoofZones {
  readonly edition: WindEdition;
  /** Width of the strips, a. */
  readonly edge_m: number;
  readonly zones: readonly ZoneArea[];
}

/**
 * The zones of this roof.
 *
 * a = least of 10 % of the least width and 0.4 h, not less than 4 % of the width or 3 ft
 *
 * @param given  [m] the complete case
 * @returns      [m, m²] edition, strip width, zones
 * @source       ASCE-7-16 figure 30.3-1 (seen-primary, older figure; memory)
 * @assumes      least width without overhangs, strips measured from the outer edge of the overhang
 */
export const zonesOfRoof = (given: CompleteCase): RoofZones =>
  once(given, 'fastening/zones', () => {
    const { edition } = windSiteOf(given);
    const edge_m = edgeWidth(Math.min(given.roof.length_m, given.roof.width_m), meanRoofHeight_m(given));
    const plan = {
      ...given.roof,
      angle_deg: angleOfPitch_deg(given.roof.pitch_rise_per_12),
      eaveOverhang_m: given.overhang.eave_m,
      rakeOverhang_m: given.overhang.rake_m,
    };
    return { edition, edge_m, zones: zoneAreas(plan, edition, edge_m) };
  });

/** Whether the zone holds a piece of overhang: the strips along an edge do, the field once an overhang is wider than them. */
function holdsOverhang(given: CompleteCase, zone: WindZone, edge_m: number): boolean {
  const { eave_m, rake_m } = given.overhang;
  const most_m = given.roof.shape === 'hip' ? eave_m : Math.max(eave_m, rake_m);
  if (zone === '1' || zone === '2r') return most_m > edge_m;
  return most_m > 0;
}

/**
 * Suction on the tributary area of one screw in a zone, strength level.
 *
 * the greater of roof and overhang where the zone holds a piece of overhang
 *
 * @param given    [-] the complete case
 * @param zone     as the edition names it
 * @param area_m2  [m²] effective area: what one screw holds
 * @returns        [Pa] positive outward; null where the tables do not reach the slope
 * @source         ASCE-7-16 chapter 30 (seen-transcription); ASCE-7-22 chapter 30 (seen-transcription)
 * @assumes        a roof that the tables do not cover takes those of its stand-in, see windGapOf; enclosed house; wind gets into a gap that is open at the eave, so overhang suction acts on the upper deck
 */
export const zoneSuction_Pa = (given: CompleteCase, zone: WindZone, area_m2: number): number | null =>
  once(given, `fastening/suction/${zone}/${area_m2}`, () => {
    const site = windSiteOf(given);
    const width_m = Math.min(given.roof.length_m, given.roof.width_m);
    const place = {
      roofShape: windShapeOf(given.roof.shape),
      angle_deg: angleOfPitch_deg(given.roof.pitch_rise_per_12),
      zone,
      effectiveArea_m2: area_m2,
      heightToWidth: site.meanRoofHeight_m / width_m,
    };
    const roof = roofWindPressure(site, place, 'roof');
    if (roof.kind === 'notCovered') return null;
    if (!holdsOverhang(given, zone, zonesOfRoof(given).edge_m)) return -roof.uplift_Pa;
    const overhang = roofWindPressure(site, place, 'overhang');
    return overhang.kind === 'notCovered' ? -roof.uplift_Pa : Math.max(-roof.uplift_Pa, -overhang.uplift_Pa);
  });

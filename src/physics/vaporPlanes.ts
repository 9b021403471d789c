/**
 * An assembly cut into planes for the monthly condensation method: sub-layers, temperatures, saturation
 * pressures along the vapor resistance.
 */
import { at, last, requireNotNegative, requirePositive, sum } from './guards.ts';
import { saturationVaporPressure_Pa } from './psychrometrics.ts';

/** A layer as heat and vapor see it. */
export interface MoistureLayer {
  readonly resistance_m2K_W: number;
  /** s_d: thickness of still air with the same vapor resistance. */
  readonly equivalentAirLayer_m: number;
}

export interface MoistureAssembly {
  readonly insideSurface_m2K_W: number;
  readonly outsideSurface_m2K_W: number;
  /** Inside to outside. */
  readonly layers: readonly MoistureLayer[];
}

/** A plane where water may collect: between two layers or inside one. */
export interface Plane {
  /** Index of the layer on its inner side, or that holds it. */
  readonly afterLayer: number;
  /** Place within the layer from its inner face; absent between layers. */
  readonly within_pct?: number;
  /** Vapor resistance from the inner face to the plane. */
  readonly airLayerFromInside_m: number;
  /** Thermal resistance from the indoor air to the plane. */
  readonly resistanceFromInside_m2K_W: number;
}

export interface PlaneSet {
  readonly planes: readonly Plane[];
  readonly totalAirLayer_m: number;
  readonly totalResistance_m2K_W: number;
}

/** [m2·K/W] greatest resistance of one sub-layer, ISO 13788:2012 clause 6.4.2 (memory). */
export const SUBLAYER_RESISTANCE_M2K_W = 0.25;
/** [-] rounding allowed in the count of sub-layers, so that 3.0000000000000004 / 0.25 stays 12 (our judgement). */
const COUNT_TOLERANCE = 1e-9;
/** [%] the outer face of a layer. */
const WHOLE_PCT = 100;

/**
 * Number of equal sub-layers of a layer.
 *
 * n = ceil(R / 0.25), at least 1
 *
 * @param resistance_m2K_W [m2·K/W] resistance of the layer (R)
 * @returns                [-] count
 * @range                  0 or more
 * @throws                 RangeError when negative or not finite
 * @source                 ISO-13788-2012 clause 6.4.2 (memory)
 * @assumes                homogeneous layer
 */
export function sublayerCount(resistance_m2K_W: number): number {
  requireNotNegative('resistance_m2K_W', resistance_m2K_W);
  return Math.max(1, Math.ceil(resistance_m2K_W / SUBLAYER_RESISTANCE_M2K_W - COUNT_TOLERANCE));
}

/**
 * The planes of an assembly, inside to outside, without its two faces.
 *
 * @param assembly [m2·K/W, m] films and layers, inside to outside
 * @param centered [-] index of a layer that is cut into two halves first (drying); none when absent
 * @returns        [-, m, m2·K/W] planes with their place along both resistances, and the totals
 * @range          at least one layer; some vapor resistance and some thermal resistance in total
 * @throws         RangeError when a resistance is negative or a total is 0
 * @source         ISO-13788-2012 clauses 6.4.2 and 7.2 (memory)
 * @assumes        vapor resistance of the surface films neglected
 */
export function planesOf(assembly: MoistureAssembly, centered?: number): PlaneSet {
  requireNotNegative('insideSurface_m2K_W', assembly.insideSurface_m2K_W);
  requireNotNegative('outsideSurface_m2K_W', assembly.outsideSurface_m2K_W);
  for (const layer of assembly.layers) {
    requireNotNegative('resistance_m2K_W', layer.resistance_m2K_W);
    requireNotNegative('equivalentAirLayer_m', layer.equivalentAirLayer_m);
  }
  if (centered !== undefined) at(assembly.layers, centered);
  const planes: Plane[] = [];
  let resistance = assembly.insideSurface_m2K_W;
  let airLayer = 0;
  assembly.layers.forEach((layer, afterLayer) => {
    const count =
      afterLayer === centered
        ? 2 * sublayerCount(layer.resistance_m2K_W / 2)
        : sublayerCount(layer.resistance_m2K_W);
    for (let part = 1; part <= count; part++) {
      const place = {
        afterLayer,
        airLayerFromInside_m: airLayer + (layer.equivalentAirLayer_m * part) / count,
        resistanceFromInside_m2K_W: resistance + (layer.resistance_m2K_W * part) / count,
      };
      planes.push(part === count ? place : { ...place, within_pct: (WHOLE_PCT * part) / count });
    }
    airLayer += layer.equivalentAirLayer_m;
    resistance += layer.resistance_m2K_W;
  });
  const totalAirLayer_m = sum(assembly.layers.map((layer) => layer.equivalentAirLayer_m));
  const totalResistance_m2K_W = resistance + assembly.outsideSurface_m2K_W;
  requirePositive('total equivalentAirLayer_m', totalAirLayer_m);
  requirePositive('total resistance_m2K_W', totalResistance_m2K_W);
  return { planes: planes.slice(0, -1), totalAirLayer_m, totalResistance_m2K_W };
}

/**
 * Temperature at a plane.
 *
 * t = ti - (ti - te) R(plane) / Rtotal
 *
 * @param set       [-] planes and totals
 * @param plane     [-] one of the planes
 * @param inside_C  [°C] indoor temperature (ti)
 * @param outside_C [°C] outdoor temperature (te)
 * @returns         [°C] temperature
 * @range           steady state
 * @throws          never
 * @source          ISO-13788-2012 clause 6.4.2 (memory)
 * @assumes         no latent heat, no storage
 */
export function planeTemperature_C(set: PlaneSet, plane: Plane, inside_C: number, outside_C: number): number {
  return inside_C - ((inside_C - outside_C) * plane.resistanceFromInside_m2K_W) / set.totalResistance_m2K_W;
}

/**
 * Saturation pressures at every plane.
 *
 * @param set       [-] planes and totals
 * @param inside_C  [°C] indoor temperature
 * @param outside_C [°C] outdoor temperature
 * @returns         [Pa] one per plane
 * @range           -60 to 80 °C
 * @throws          RangeError outside the range
 * @source          ISO-13788-2012 clause 6.4.2 and annex E (memory)
 * @assumes         as planeTemperature_C
 */
export function planeSaturation_Pa(set: PlaneSet, inside_C: number, outside_C: number): number[] {
  return set.planes.map((plane) =>
    saturationVaporPressure_Pa(planeTemperature_C(set, plane, inside_C, outside_C), 'iso13788'),
  );
}

/** One store of water: a plane, or planes without vapor resistance between them. */
export interface Site {
  /** Indices of its planes. */
  readonly planes: readonly number[];
  readonly airLayerFromInside_m: number;
}

/** [m] vapor resistance below which two planes are one site: a millionth of a coat of paint (our judgement). */
const SAME_PLACE_M = 1e-9;

/**
 * The sites where water may collect: planes gathered where no vapor resistance lies between them. Planes with
 * no vapor resistance to a face are open to that air and hold nothing.
 *
 * @param set [-, m] planes and totals
 * @returns   [m] sites, inside to outside, strictly between the faces
 * @range     any plane set
 * @throws    never
 * @source    OUR-JUDGEMENT limit case of ISO 13788 clause 6.4.3 for layers of no vapor resistance
 * @assumes   water moves freely between planes of one site and sits at its coldest
 */
export function sitesOf(set: PlaneSet): Site[] {
  const sites: { planes: number[]; airLayerFromInside_m: number }[] = [];
  set.planes.forEach((plane, index) => {
    const place = plane.airLayerFromInside_m;
    if (place <= SAME_PLACE_M || place >= set.totalAirLayer_m - SAME_PLACE_M) return;
    const before = sites.length === 0 ? undefined : last(sites);
    if (before && place - before.airLayerFromInside_m <= SAME_PLACE_M) before.planes.push(index);
    else sites.push({ planes: [index], airLayerFromInside_m: place });
  });
  return sites;
}

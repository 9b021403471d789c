/** Temperature and vapor pressure through the section in the coldest month. */
import type { Layer, Profile } from '../../evaluation/evaluation.ts';
import { moistureModel, vaporPoints, type MonthConditions } from '../../physics/moistureBalance.ts';
import { saturationVaporPressure_Pa } from '../../physics/psychrometrics.ts';
import { touchedPoints, vaporPressureOfLine_Pa } from '../../physics/vaporLine.ts';
import { sublayerCount, type MoistureAssembly } from '../../physics/vaporPlanes.ts';
import { rounded } from '../rounding.ts';

/** [m²·K/W] a layer of more is shown at several points, so that the curve of saturation is smooth (our judgement). */
const PART_M2K_W = 1.5;
/** [-] most parts of one layer (our judgement). */
const MOST_PARTS = 3;
/** [-] a kink nearer to a face than this is the face. */
const SAME_SHARE = 1e-6;
/** [m], [m], [K], [Pa] steps to which points are kept. */
const DEPTH_STEP_M = 1e-5;
const AIR_LAYER_STEP_M = 1e-4;
const TEMPERATURE_STEP_K = 1e-3;
const PRESSURE_STEP_PA = 1e-1;

interface Cut {
  readonly after: string;
  readonly depth_m: number;
  readonly airLayer_m: number;
  readonly resistance_m2K_W: number;
}

/** Places at faces, at layer boundaries and within thick layers, inside to outside. */
function cutsOf(assembly: MoistureAssembly, layers: readonly Layer[], kinks_m: readonly number[]): Cut[] {
  let depth_m = 0;
  let airLayer_m = 0;
  let resistance_m2K_W = assembly.insideSurface_m2K_W;
  const cuts: Cut[] = [{ after: 'inside-surface', depth_m, airLayer_m, resistance_m2K_W }];
  layers.forEach((layer, index) => {
    const { equivalentAirLayer_m, resistance_m2K_W: own_m2K_W } = assembly.layers[index] ?? {
      equivalentAirLayer_m: 0,
      resistance_m2K_W: 0,
    };
    const parts = Math.min(MOST_PARTS, Math.max(1, Math.ceil(own_m2K_W / PART_M2K_W)));
    // On the planes of the method, between which the line of vapor pressure is straight.
    const planes = sublayerCount(own_m2K_W);
    const even = Array.from(
      { length: parts },
      (_, part) => Math.max(1, Math.round(((part + 1) * planes) / parts)) / planes,
    );
    const kinks = kinks_m
      .map((place_m) => (place_m - airLayer_m) / equivalentAirLayer_m)
      .filter((share) => share > SAME_SHARE && share < 1 - SAME_SHARE);
    for (const share of [...new Set([...even, ...kinks])].sort((a, b) => a - b))
      cuts.push({
        after: layer.id,
        depth_m: depth_m + share * layer.thickness_m,
        airLayer_m: airLayer_m + share * equivalentAirLayer_m,
        resistance_m2K_W: resistance_m2K_W + share * own_m2K_W,
      });
    depth_m += layer.thickness_m;
    airLayer_m += equivalentAirLayer_m;
    resistance_m2K_W += own_m2K_W;
  });
  return cuts;
}

/**
 * The profile of one month, room to moving air.
 *
 * t(x) = ti - (ti - te) R(x) / Rtotal; vapor pressure along the line that touches saturation without crossing it
 *
 * @param assembly  [m²·K/W, m] films and layers
 * @param layers    [m] the same layers, for their names and thickness
 * @param months    [°C, %] January to December
 * @param month     [-] the month shown, 1 to 12
 * @returns         [m, m, °C, Pa, Pa] points from the inside surface to the outside surface
 * @source          ISO-13788-2012 clause 6.4 (memory)
 * @assumes         no water left over from earlier months
 */
export function profileOf(
  assembly: MoistureAssembly,
  layers: readonly Layer[],
  months: readonly MonthConditions[],
  month: number,
): Profile {
  const model = moistureModel(assembly);
  const conditions = months[month - 1] as MonthConditions;
  const points = vaporPoints(
    model,
    conditions,
    model.sites.map(() => 0),
  );
  const kinks_m = touchedPoints(points).flatMap((index) => points[index]?.airLayer_m ?? []);
  const { indoorTemperature_C: inside_C, outdoorTemperature_C: outside_C } = conditions;
  return {
    month,
    points: cutsOf(assembly, layers, kinks_m).map(({ after, depth_m, airLayer_m, resistance_m2K_W }) => {
      const exact_C =
        inside_C - ((inside_C - outside_C) * resistance_m2K_W) / model.set.totalResistance_m2K_W;
      const place_m = Math.min(airLayer_m, model.set.totalAirLayer_m);
      return {
        after,
        depth_m: rounded(depth_m, DEPTH_STEP_M),
        equivalentAirLayer_m: rounded(airLayer_m, AIR_LAYER_STEP_M),
        temperature_C: rounded(exact_C, TEMPERATURE_STEP_K),
        vaporPressure_Pa: rounded(vaporPressureOfLine_Pa(points, place_m), PRESSURE_STEP_PA),
        saturationPressure_Pa: rounded(saturationVaporPressure_Pa(exact_C, 'iso13788'), PRESSURE_STEP_PA),
      };
    }),
  };
}

/**
 * The line of vapor pressure through an assembly where it may not pass the saturation pressure: the lower
 * convex hull, held at saturation where water already sits, and the rates it gives.
 */
import { AIR_PERMEABILITY_NG_PASM } from '../catalog/vapor.ts';
import { at } from './guards.ts';

/** [kg] one nanogram. */
const KILOGRAMS_PER_NANOGRAM = 1e-12;
/** [kg/(m·s·Pa)] vapor permeability of still air, ISO 13788:2012 clause 4 (seen-secondary). */
export const AIR_PERMEABILITY_KG_MSPA = AIR_PERMEABILITY_NG_PASM * KILOGRAMS_PER_NANOGRAM;

/** A point of the line: place along the vapor resistance, pressure, and whether the line must pass it. */
export interface VaporPoint {
  readonly airLayer_m: number;
  readonly pressure_Pa: number;
  /** True for the two faces and for sites that hold water. */
  readonly held: boolean;
}

/** [Pa] how far saturation must lie below the line before a point is touched: rounding only (our judgement). */
const TOUCH_TOLERANCE_PA = 1e-7;

function lineAt_Pa(from: VaporPoint, to: VaporPoint, airLayer_m: number): number {
  const way = (airLayer_m - from.airLayer_m) / (to.airLayer_m - from.airLayer_m);
  return from.pressure_Pa + way * (to.pressure_Pa - from.pressure_Pa);
}

/**
 * The points that the vapor pressure line passes: both faces, sites that hold water, and sites it touches.
 *
 * Between held points the lower convex hull of the saturation pressures (chain of straight lines that touches
 * the saturation curve without crossing it).
 *
 * @param points [m, Pa] along the vapor resistance, first and last held, places strictly rising
 * @returns      [-] indices of the points on the line, rising
 * @range        at least two points
 * @throws       RangeError when there are fewer than two points
 * @source       ISO-13788-2012 clause 6.4.3 (memory), tangent construction as a lower convex hull (computed)
 * @assumes      saturation pressure as the only limit; no capillary flow
 */
export function touchedPoints(points: readonly VaporPoint[]): number[] {
  at(points, 1);
  const chain: number[] = [];
  points.forEach((point, index) => {
    while (chain.length >= 2) {
      const middle = at(points, at(chain, chain.length - 1));
      const before = at(points, at(chain, chain.length - 2));
      if (
        middle.held ||
        middle.pressure_Pa < lineAt_Pa(before, point, middle.airLayer_m) - TOUCH_TOLERANCE_PA
      )
        break;
      chain.pop();
    }
    chain.push(index);
  });
  return chain;
}

/**
 * Rate at which water collects (positive) or leaves (negative) at every point of the line.
 *
 * g = delta0 ((pb - pc) / (sb - sc) - (pc - pa) / (sc - sa)), zero where the line does not bend
 *
 * @param points [m, Pa] along the vapor resistance, first and last the faces
 * @returns      [kg/(m2·s)] one per point; 0 at the faces and at points the line does not touch
 * @range        as touchedPoints
 * @throws       RangeError when there are fewer than two points
 * @source       ISO-13788-2012 clause 6.4.3 (memory)
 * @assumes      steady diffusion within the month
 */
export function condensationRates_kg_m2s(points: readonly VaporPoint[]): number[] {
  const rates = points.map(() => 0);
  const chain = touchedPoints(points);
  for (let link = 1; link < chain.length - 1; link++) {
    const index = at(chain, link);
    const a = at(points, at(chain, link - 1));
    const c = at(points, index);
    const b = at(points, at(chain, link + 1));
    rates[index] =
      AIR_PERMEABILITY_KG_MSPA *
      ((b.pressure_Pa - c.pressure_Pa) / (b.airLayer_m - c.airLayer_m) -
        (c.pressure_Pa - a.pressure_Pa) / (c.airLayer_m - a.airLayer_m));
  }
  return rates;
}

/**
 * Vapor pressure at a place of the line.
 *
 * @param points     [m, Pa] as touchedPoints
 * @param airLayer_m [m] place along the vapor resistance, between the faces
 * @returns          [Pa] vapor pressure
 * @range            between the first and the last point
 * @throws           RangeError outside
 * @source           ISO-13788-2012 clause 6.4.3 (memory)
 * @assumes          as touchedPoints
 */
export function vaporPressureOfLine_Pa(points: readonly VaporPoint[], airLayer_m: number): number {
  const chain = touchedPoints(points).map((index) => at(points, index));
  const next = chain.findIndex((point) => point.airLayer_m >= airLayer_m);
  if (next < 0 || airLayer_m < at(chain, 0).airLayer_m) {
    throw new RangeError(`airLayer_m: ${airLayer_m} is outside the assembly`);
  }
  return lineAt_Pa(at(chain, Math.max(0, next - 1)), at(chain, Math.max(1, next)), airLayer_m);
}

/** A plane of the roof in its own slope. */
import { cosine } from './geometry.ts';
import type { BarePlane, Corner, EdgeKind } from './planeShapes.ts';

export interface Point {
  readonly u: number;
  readonly v: number;
}

/** A plane in its own slope: u along the eave, v up the slope from the edge of the eave. */
export interface Plane {
  readonly id: string;
  readonly angle_deg: number;
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
  readonly edges: readonly { readonly kind: EdgeKind; readonly from: Point; readonly to: Point }[];
  /** Without the holes. */
  readonly area_m2: number;
}

/**
 * Area of a polygon.
 *
 * A = 1/2 |sum (u_i v_(i+1) - u_(i+1) v_i)|
 *
 * @param points  [m] its corners in order
 * @returns       [m²]
 * @source        COMMON-PRACTICE shoelace formula (computed)
 */
export function polygonArea_m2(points: readonly Point[]): number {
  let twice = 0;
  for (let index = 0; index < points.length; index += 1) {
    const at = points[index] as Point;
    const next = points[(index + 1) % points.length] as Point;
    twice += at.u * next.v - next.u * at.v;
  }
  return Math.abs(twice) / 2;
}

/**
 * A plane from level measures to the slope itself.
 *
 * v = y / cos(angle)
 *
 * @param bare     [m, deg] the plane
 * @param outline  [m] its corners, level
 * @param holes    [m] what stands in it, level
 * @returns        [m, m²] corners and edges on the slope
 * @source         COMMON-PRACTICE plane geometry (computed)
 */
export function onSlope(
  bare: BarePlane,
  outline: readonly Corner[],
  holes: readonly (readonly Corner[])[],
): Plane {
  const cos = cosine(bare.angle_deg);
  const lift = ({ x, y }: Corner): Point => ({ u: x, v: y / cos });
  const edgesOf = (corners: readonly Corner[]): Plane['edges'] =>
    corners.map((at, index) => ({
      kind: at.edge,
      from: lift(at),
      to: lift(corners[(index + 1) % corners.length] as Corner),
    }));
  const raised = outline.map(lift);
  const raisedHoles = holes.map((hole) => hole.map(lift));
  return {
    id: bare.id,
    angle_deg: bare.angle_deg,
    outline: raised,
    holes: raisedHoles,
    edges: [outline, ...holes].flatMap(edgesOf),
    area_m2: raisedHoles.reduce((area, hole) => area - polygonArea_m2(hole), polygonArea_m2(raised)),
  };
}

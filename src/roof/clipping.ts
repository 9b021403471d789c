/** Clipping of polygons by lines; exact for convex ones. */
import { polygonArea_m2, type Point } from './slopePlane.ts';

/**
 * Part of a polygon on the left of a line through `at` along `along`, at least `off` away from it.
 *
 * @param points  [m] corners in order
 * @param at      [m] a point of the line
 * @param along   [m] its direction, of length 1 where `off` is given
 * @param off_m   [m] distance from the line
 * @returns       [m] corners in order; none where nothing is left
 * @source        COMMON-PRACTICE clipping by half-planes, Sutherland and Hodgman (memory)
 */
export function clipped(points: readonly Point[], at: Point, along: Point, off_m = 0): Point[] {
  const distance = (p: Point): number => along.u * (p.v - at.v) - along.v * (p.u - at.u) - off_m;
  const kept: Point[] = [];
  for (let index = 0; index < points.length; index += 1) {
    const from = points[index] as Point;
    const to = points[(index + 1) % points.length] as Point;
    const a = distance(from);
    const b = distance(to);
    if (a >= 0) kept.push(from);
    if ((a > 0 && b < 0) || (a < 0 && b > 0)) {
      const share = a / (a - b);
      kept.push({ u: from.u + share * (to.u - from.u), v: from.v + share * (to.v - from.v) });
    }
  }
  return kept;
}

const RIGHT: Point = { u: 1, v: 0 };
const LEFT: Point = { u: -1, v: 0 };
const UP: Point = { u: 0, v: 1 };
const DOWN: Point = { u: 0, v: -1 };
/**
 * Part of a polygon in a level strip.
 *
 * @param points  [m] corners
 * @param v0      [m] lower edge
 * @param v1      [m] upper edge
 * @returns       [m] corners
 * @source        COMMON-PRACTICE clipping by half-planes (computed)
 */
export const between = (points: readonly Point[], v0: number, v1: number): Point[] =>
  clipped(clipped(points, { u: 0, v: v0 }, RIGHT), { u: 0, v: v1 }, LEFT);
/**
 * Part of a polygon in an upright strip.
 *
 * @param points  [m] corners
 * @param u0      [m] left edge
 * @param u1      [m] right edge
 * @returns       [m] corners
 * @source        COMMON-PRACTICE clipping by half-planes (computed)
 */
export const within = (points: readonly Point[], u0: number, u1: number): Point[] =>
  clipped(clipped(points, { u: u0, v: 0 }, DOWN), { u: u1, v: 0 }, UP);

/**
 * Area that two convex polygons share.
 *
 * @param one    [m] corners
 * @param other  [m] corners, counterclockwise
 * @returns      [m²]
 * @source       COMMON-PRACTICE clipping by half-planes (computed)
 */
export function overlap_m2(one: readonly Point[], other: readonly Point[]): number {
  let left: readonly Point[] = one;
  other.forEach((from, index) => {
    const to = other[(index + 1) % other.length] as Point;
    left = clipped(left, from, { u: to.u - from.u, v: to.v - from.v });
  });
  return polygonArea_m2(left);
}

/**
 * Least and greatest coordinates of a polygon.
 *
 * @param points  [m] corners, at least one
 * @returns       [m]
 * @source        COMMON-PRACTICE plane geometry (computed)
 */
export function boundsOf(points: readonly Point[]): { u0: number; u1: number; v0: number; v1: number } {
  const bounds = { u0: Infinity, u1: -Infinity, v0: Infinity, v1: -Infinity };
  for (const { u, v } of points) {
    if (u < bounds.u0) bounds.u0 = u;
    if (u > bounds.u1) bounds.u1 = u;
    if (v < bounds.v0) bounds.v0 = v;
    if (v > bounds.v1) bounds.v1 = v;
  }
  return bounds;
}

/**
 * A rectangle along the axes.
 *
 * @param u0  [m] left
 * @param u1  [m] right
 * @param v0  [m] bottom
 * @param v1  [m] top
 * @returns   [m] corners, counterclockwise
 * @source    COMMON-PRACTICE plane geometry (computed)
 */
export const box = (u0: number, u1: number, v0: number, v1: number): Point[] => [
  { u: u0, v: v0 },
  { u: u1, v: v0 },
  { u: u1, v: v1 },
  { u: u0, v: v1 },
];

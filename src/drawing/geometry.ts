/**
 * Plane geometry for the drawings: points, lines, clipping. Lengths are in meters for models and in
 * millimeters of paper for sheets; the functions do not care which.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export type Segment = readonly [Point, Point];

export const point = (x: number, y: number): Point => ({ x, y });
export const add = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const subtract = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const times = (a: Point, factor: number): Point => ({ x: a.x * factor, y: a.y * factor });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;
export const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
export const between = (a: Point, b: Point, share: number): Point => add(a, times(subtract(b, a), share));
export const direction = (angle_rad: number): Point => ({ x: Math.cos(angle_rad), y: Math.sin(angle_rad) });

/** Signed area, positive when counterclockwise with y up. */
export function area(polygon: readonly Point[]): number {
  let twice = 0;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    twice += cross(a, b);
  });
  return twice / 2;
}

/** Mean of the corners; good enough as an anchor of a convex part. */
export function middle(polygon: readonly Point[]): Point {
  const sum = polygon.reduce(add, point(0, 0));
  return times(sum, 1 / Math.max(1, polygon.length));
}

/** Keeps the part of a polygon on the side where dot(normal, p) <= limit (Sutherland and Hodgman). */
export function clipToSide(polygon: readonly Point[], normal: Point, limit: number): Point[] {
  const kept: Point[] = [];
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    const da = dot(normal, a) - limit;
    const db = dot(normal, b) - limit;
    if (da <= 0) kept.push(a);
    if ((da < 0 && db > 0) || (da > 0 && db < 0)) kept.push(between(a, b, da / (da - db)));
  });
  return kept;
}

/** Pieces of the endless line origin + t * along that lie inside a simple polygon (even-odd rule). */
export function lineInside(origin: Point, along: Point, polygon: readonly Point[]): Segment[] {
  const crossings: number[] = [];
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    const sideA = cross(along, subtract(a, origin));
    const sideB = cross(along, subtract(b, origin));
    if (sideA < 0 === sideB < 0) return;
    const hit = between(a, b, sideA / (sideA - sideB));
    crossings.push(dot(subtract(hit, origin), along) / dot(along, along));
  });
  crossings.sort((p, q) => p - q);
  const pieces: Segment[] = [];
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const from = crossings[i] ?? 0;
    const to = crossings[i + 1] ?? 0;
    if (to > from) pieces.push([add(origin, times(along, from)), add(origin, times(along, to))]);
  }
  return pieces;
}

/** Pieces of a segment that lie inside a simple polygon. */
export function segmentInside(from: Point, to: Point, polygon: readonly Point[]): Segment[] {
  const along = subtract(to, from);
  const squared = dot(along, along);
  if (squared === 0) return [];
  const share = (p: Point): number => dot(subtract(p, from), along) / squared;
  const pieces: Segment[] = [];
  for (const [a, b] of lineInside(from, along, polygon)) {
    const start = Math.max(0, share(a));
    const end = Math.min(1, share(b));
    if (end > start) pieces.push([between(from, to, start), between(from, to, end)]);
  }
  return pieces;
}

/** Even-odd test of a point against a simple polygon. */
export function isInside(p: Point, polygon: readonly Point[]): boolean {
  let inside = false;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  });
  return inside;
}

/** True when two segments cross at a point inside both; touching ends do not count. */
export function segmentsCross(a: Segment, b: Segment): boolean {
  const side = (s: Segment, p: Point): number => cross(subtract(s[1], s[0]), subtract(p, s[0]));
  return side(a, b[0]) * side(a, b[1]) < 0 && side(b, a[0]) * side(b, a[1]) < 0;
}

export function boxOf(points: readonly Point[]): Box {
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

export const boxesOverlap = (a: Box, b: Box, clearance = 0): boolean =>
  a.x < b.x + b.width + clearance &&
  b.x < a.x + a.width + clearance &&
  a.y < b.y + b.height + clearance &&
  b.y < a.y + a.height + clearance;

export const boxInside = (inner: Box, outer: Box): boolean =>
  inner.x >= outer.x &&
  inner.y >= outer.y &&
  inner.x + inner.width <= outer.x + outer.width &&
  inner.y + inner.height <= outer.y + outer.height;

/**
 * The roof's own axes: s up the slope, n square to it. Origin where the top of the framing meets the
 * outer face of the wall sheathing; the roof rises to the right.
 */
export interface RoofAxes {
  readonly angle_rad: number;
  /** Point at s, n in level axes. */
  readonly at: (s: number, n: number) => Point;
  /** Height of the plane n at the plumb line x. */
  readonly levelAt: (x: number, n: number) => number;
  /** s on the plane n at the plumb line x. */
  readonly slopeAt: (x: number, n: number) => number;
}

export function roofAxes(angle_rad: number): RoofAxes {
  const c = Math.cos(angle_rad);
  const k = Math.sin(angle_rad);
  return {
    angle_rad,
    at: (s, n) => point(s * c - n * k, s * k + n * c),
    levelAt: (x, n) => (x * k + n) / c,
    slopeAt: (x, n) => (x + n * k) / c,
  };
}

/** A cutting plane of the roof: plumb at x, or square to the slope at s. */
export type CutPlane =
  { readonly kind: 'plumb'; readonly x: number } | { readonly kind: 'square'; readonly s: number };

/** s at which a cutting plane meets the plane n. */
export const slopeOn = (plane: CutPlane, n: number, axes: RoofAxes): number =>
  plane.kind === 'plumb' ? axes.slopeAt(plane.x, n) : plane.s;

/** The same plane moved up the roof by a distance square to itself. */
export const shifted = (plane: CutPlane, by: number): CutPlane =>
  plane.kind === 'plumb' ? { kind: 'plumb', x: plane.x + by } : { kind: 'square', s: plane.s + by };

/** Corners of the band between two planes n and two cutting planes, counterclockwise with y up. */
export function band(axes: RoofAxes, from: CutPlane, to: CutPlane, low: number, high: number): Point[] {
  return [
    axes.at(slopeOn(from, low, axes), low),
    axes.at(slopeOn(to, low, axes), low),
    axes.at(slopeOn(to, high, axes), high),
    axes.at(slopeOn(from, high, axes), high),
  ];
}

/** True when a segment touches a box. */
export function segmentHitsBox([from, to]: Segment, box: Box): boolean {
  const corners = [
    point(box.x, box.y),
    point(box.x + box.width, box.y),
    point(box.x + box.width, box.y + box.height),
    point(box.x, box.y + box.height),
  ];
  return isInside(from, corners) || isInside(to, corners) || segmentInside(from, to, corners).length > 0;
}

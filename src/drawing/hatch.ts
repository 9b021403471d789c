/**
 * Hatches by material, drawn as clipped lines of our own so that SVG, PDF and DXF show the same strokes.
 * Spacings are in millimeters of paper; the patterns follow North American habit (common practice).
 */
import {
  add,
  boxOf,
  direction,
  dot,
  lineInside,
  point,
  segmentInside,
  times,
  type Point,
  type Segment,
} from './geometry.ts';
import { line, pen, type Shape } from './shapes.ts';

export const materials = [
  'foam',
  'fibrous',
  'wood-end',
  'wood-long',
  'wood-beyond',
  'panel',
  'gypsum',
  'metal',
  'covering',
  'cladding',
  'mat',
  'air',
] as const;
export type HatchName = (typeof materials)[number];

const hatchPen = pen(0.18, 'hatch');
const strokes = (segments: readonly Segment[]): Shape[] => segments.map(([a, b]) => line(a, b, hatchPen));

/** Parallel lines at an angle, clipped to the polygon. `origin` keeps neighbors from lining up. */
export function parallelLines(
  polygon: readonly Point[],
  angle_rad: number,
  spacing_mm: number,
  shift_mm = 0,
): Segment[] {
  const along = direction(angle_rad);
  const across = point(-along.y, along.x);
  const reach = polygon.map((p) => dot(p, across));
  const first = Math.ceil((Math.min(...reach) - shift_mm) / spacing_mm);
  const last = Math.floor((Math.max(...reach) - shift_mm) / spacing_mm);
  const segments: Segment[] = [];
  for (let i = first; i <= last; i += 1) {
    segments.push(...lineInside(times(across, i * spacing_mm + shift_mm), along, polygon));
  }
  return segments;
}

/** A polyline clipped to the polygon. */
function clipPath(points: readonly Point[], polygon: readonly Point[]): Segment[] {
  return points.slice(1).flatMap((b, i) => segmentInside(points[i] ?? b, b, polygon));
}

/** Axes of a band on the sheet: along its grain and across it, with its reach in both. */
function bandReach(polygon: readonly Point[], angle_rad: number) {
  const along = direction(angle_rad);
  const across = point(-along.y, along.x);
  const s = polygon.map((p) => dot(p, along));
  const n = polygon.map((p) => dot(p, across));
  const at = (u: number, w: number): Point => add(times(along, u), times(across, w));
  return { at, s0: Math.min(...s), s1: Math.max(...s), n0: Math.min(...n), n1: Math.max(...n) };
}

/** Round loops from face to face: the sign for batts and loose fill. */
function loops(polygon: readonly Point[], angle_rad: number): Segment[] {
  const { at, s0, s1, n0, n1 } = bandReach(polygon, angle_rad);
  const depth = n1 - n0;
  const pitch = Math.max(2.4, Math.min(depth * 0.42, 9));
  const points: Point[] = [];
  const STEPS = 10;
  let s = s0 - pitch;
  let up = true;
  while (s < s1 + pitch) {
    const radius = pitch / 2;
    const turn = Math.min(radius, depth / 2);
    for (let i = 0; i <= STEPS; i += 1) {
      const angle = Math.PI - (Math.PI * i) / STEPS;
      const u = s + radius + radius * Math.cos(angle);
      const w = up ? n1 - turn + turn * Math.sin(angle) : n0 + turn - turn * Math.sin(angle);
      points.push(at(u, w));
    }
    s += pitch;
    up = !up;
  }
  return clipPath(points, polygon);
}

/** Long waves along the grain: wood cut lengthwise. */
function grain(polygon: readonly Point[], angle_rad: number): Segment[] {
  const { at, s0, s1, n0, n1 } = bandReach(polygon, angle_rad);
  const rows = Math.max(1, Math.min(5, Math.floor((n1 - n0) / 2.6)));
  const segments: Segment[] = [];
  for (let row = 0; row < rows; row += 1) {
    const mid = n0 + ((row + 0.5) * (n1 - n0)) / rows;
    const points: Point[] = [];
    for (let s = s0; s <= s1 + 3; s += 3) points.push(at(s, mid + 0.28 * Math.sin(s / 5.5 + row * 1.7)));
    segments.push(...clipPath(points, polygon));
  }
  return segments;
}

/** Both diagonals of the part: a member cut across its grain. */
function diagonals(polygon: readonly Point[]): Segment[] {
  if (polygon.length !== 4) {
    const box = boxOf(polygon);
    const far = point(box.x + box.width, box.y + box.height);
    return [
      ...segmentInside(point(box.x, box.y), far, polygon),
      ...segmentInside(point(box.x, far.y), point(far.x, box.y), polygon),
    ];
  }
  const [a, b, c, d] = polygon as [Point, Point, Point, Point];
  return [
    [a, c],
    [b, d],
  ];
}

/** Repeatable speckle: gypsum and other fine grain. */
function specks(polygon: readonly Point[]): Segment[] {
  const box = boxOf(polygon);
  const segments: Segment[] = [];
  let seed = 7;
  const next = (): number => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  };
  const count = Math.min(400, Math.round((box.width * box.height) / 2.2));
  for (let i = 0; i < count; i += 1) {
    const p = point(box.x + next() * box.width, box.y + next() * box.height);
    segments.push(...segmentInside(p, add(p, point(0.25, 0.12)), polygon));
  }
  return segments;
}

/** Zigzag between the faces: an entangled drainage mat. */
function zigzag(polygon: readonly Point[], angle_rad: number): Segment[] {
  const { at, s0, s1, n0, n1 } = bandReach(polygon, angle_rad);
  const points: Point[] = [];
  let up = false;
  for (let s = s0; s <= s1 + 1.6; s += 1.6) {
    points.push(at(s, up ? n1 : n0));
    up = !up;
  }
  return clipPath(points, polygon);
}

/** Strokes of one part. `angle_rad` is the direction of the part's length on the sheet (y down). */
export function hatch(material: HatchName, polygon: readonly Point[], angle_rad: number): Shape[] {
  const quarter = Math.PI / 4;
  switch (material) {
    case 'foam':
      return strokes([
        ...parallelLines(polygon, angle_rad + quarter, 3.2),
        ...parallelLines(polygon, angle_rad - quarter, 3.2),
      ]);
    case 'fibrous':
      return strokes(loops(polygon, angle_rad));
    case 'wood-end':
      return strokes(diagonals(polygon));
    case 'wood-long':
      return strokes(grain(polygon, angle_rad));
    case 'panel':
      return strokes(parallelLines(polygon, angle_rad + Math.PI / 3, 1.5));
    case 'gypsum':
      return strokes(specks(polygon));
    case 'covering':
      return strokes(parallelLines(polygon, angle_rad + quarter, 0.9));
    case 'mat':
      return strokes(zigzag(polygon, angle_rad));
    case 'metal':
    case 'cladding':
    case 'wood-beyond':
    case 'air':
      return [];
    default: {
      const never: never = material;
      return never;
    }
  }
}

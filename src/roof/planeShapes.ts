/** Outlines of roof planes in plan: x along the eave, y level from the edge of the eave toward the ridge. */

/** What an edge of a plane is; ridges, hips, valleys and breaks are shared by two planes. */
export type EdgeKind =
  'eave' | 'rake' | 'ridge' | 'hip' | 'valley' | 'break' | 'high-edge' | 'cheek' | 'apron' | 'opening';

/** A corner, and what the edge to the next corner is. */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly edge: EdgeKind;
}

/** A plane without what stands on it. */
export interface BarePlane {
  readonly id: string;
  readonly angle_deg: number;
  /** Counterclockwise; the first edge is the eave. */
  readonly outline: readonly Corner[];
  /** Level depth from the edge of the eave to the top. */
  readonly depth_m: number;
  /** Along the eave, where gables, dormers and openings may stand; null where none do. */
  readonly room: readonly [number, number] | null;
}

const corner = (x: number, y: number, edge: EdgeKind): Corner => ({ x, y, edge });

/** Edges shorter than this are no edges. [m] */
const NOTHING_M = 1e-9;
const withoutNothing = (outline: readonly Corner[]): Corner[] =>
  outline.filter((at, index) => {
    const next = outline[(index + 1) % outline.length] ?? at;
    return Math.hypot(next.x - at.x, next.y - at.y) > NOTHING_M;
  });

/**
 * A plane between an eave and a parallel edge above it.
 *
 * @param id         [-] its name
 * @param angle_deg  [deg] slope
 * @param sides      [m] length, level depth, and the edge on each side and on top
 * @returns          [m] the plane
 * @source           COMMON-PRACTICE plane geometry (computed)
 */
export function rectangle(
  id: string,
  angle_deg: number,
  sides: {
    readonly length_m: number;
    readonly depth_m: number;
    readonly bottom?: EdgeKind;
    readonly top: EdgeKind;
  },
): BarePlane {
  const { length_m, depth_m, bottom = 'eave', top } = sides;
  return {
    id,
    angle_deg,
    depth_m,
    room: [0, length_m],
    outline: withoutNothing([
      corner(0, 0, bottom),
      corner(length_m, 0, 'rake'),
      corner(length_m, depth_m, top),
      corner(0, depth_m, 'rake'),
    ]),
  };
}

/**
 * A plane that ends at hips or valleys at 45° in plan.
 *
 * @param id         [-] its name
 * @param angle_deg  [deg] slope
 * @param sides      [m] length of the eave, level depth, what it ends at on both sides
 * @returns          [m] the plane; a valley widens it toward the ridge, a hip narrows it
 * @source           COMMON-PRACTICE plane geometry (computed)
 * @assumes          the planes on both sides have the same slope
 */
export function trapezoid(
  id: string,
  angle_deg: number,
  sides: {
    readonly length_m: number;
    readonly depth_m: number;
    readonly left: 'rake' | 'hip';
    readonly right: 'hip' | 'valley';
  },
): BarePlane {
  const { length_m, depth_m, left, right } = sides;
  const leftTop_m = left === 'hip' ? depth_m : 0;
  const rightTop_m = right === 'hip' ? length_m - depth_m : length_m + depth_m;
  return {
    id,
    angle_deg,
    depth_m,
    room: [left === 'hip' ? depth_m / 2 : 0, right === 'hip' ? length_m - depth_m / 2 : length_m],
    outline: withoutNothing([
      corner(0, 0, 'eave'),
      corner(length_m, 0, right),
      corner(rightTop_m, depth_m, 'ridge'),
      corner(leftTop_m, depth_m, left),
    ]),
  };
}

/**
 * One side of a cross gable that is cut into a plane of the same slope, front overhanging as far as the eave.
 *
 * @param id         [-] its name
 * @param angle_deg  [deg] slope
 * @param half_m     [m] half its width at the edge of the eave
 * @returns          [m] a triangle: valley, ridge, rake
 * @source           COMMON-PRACTICE plane geometry (computed)
 */
export const gableSide = (id: string, angle_deg: number, half_m: number): BarePlane => ({
  id,
  angle_deg,
  depth_m: half_m,
  room: null,
  outline: [corner(0, 0, 'valley'), corner(half_m, half_m, 'ridge'), corner(0, half_m, 'rake')],
});

/**
 * One side of a dormer's own roof.
 *
 * @param id         [-] its name
 * @param angle_deg  [deg] slope, that of the main roof
 * @param cheek_m    [m] level length of the cheek
 * @param half_m     [m] half the width
 * @returns          [m] eave, valley, ridge, rake
 * @source           COMMON-PRACTICE plane geometry (computed)
 * @assumes          no overhang of its own: trim
 */
export const dormerSide = (id: string, angle_deg: number, cheek_m: number, half_m: number): BarePlane => ({
  id,
  angle_deg,
  depth_m: half_m,
  room: null,
  outline: withoutNothing([
    corner(0, 0, 'eave'),
    corner(cheek_m, 0, 'valley'),
    corner(cheek_m + half_m, half_m, 'ridge'),
    corner(0, half_m, 'rake'),
  ]),
});

/**
 * A hole in a plane where a dormer stands: apron, cheeks, valleys.
 *
 * @param x        [m] its middle along the eave
 * @param front_m  [m] level, from the edge of the eave to its front
 * @param cheek_m  [m] level length of the cheek
 * @param half_m   [m] half its width
 * @returns        [m] corners, counterclockwise
 * @source         COMMON-PRACTICE plane geometry (computed)
 */
export const dormerHole = (
  x: number,
  front_m: number,
  cheek_m: number,
  half_m: number,
): readonly Corner[] => [
  corner(x - half_m, front_m, 'apron'),
  corner(x + half_m, front_m, 'cheek'),
  corner(x + half_m, front_m + cheek_m, 'valley'),
  corner(x, front_m + cheek_m + half_m, 'valley'),
  corner(x - half_m, front_m + cheek_m, 'cheek'),
];

/**
 * A hole for a skylight or chimney.
 *
 * @param x         [m] its middle along the eave
 * @param bottom_m  [m] level, from the edge of the eave
 * @param width_m   [m] along the eave
 * @param depth_m   [m] level
 * @returns         [m] corners, counterclockwise
 * @source          COMMON-PRACTICE plane geometry (computed)
 */
export const openingHole = (
  x: number,
  bottom_m: number,
  width_m: number,
  depth_m: number,
): readonly Corner[] => [
  corner(x - width_m / 2, bottom_m, 'opening'),
  corner(x + width_m / 2, bottom_m, 'opening'),
  corner(x + width_m / 2, bottom_m + depth_m, 'opening'),
  corner(x - width_m / 2, bottom_m + depth_m, 'opening'),
];

/**
 * Corners of a cross gable's valleys in the eave of the plane that it is cut into.
 *
 * @param x       [m] its middle along the eave
 * @param half_m  [m] half its width at the edge of the eave
 * @returns       [m] three corners from left to right
 * @source        COMMON-PRACTICE plane geometry (computed)
 */
export const gableNotch = (x: number, half_m: number): readonly Corner[] => [
  corner(x - half_m, 0, 'valley'),
  corner(x, half_m, 'valley'),
  corner(x + half_m, 0, 'eave'),
];

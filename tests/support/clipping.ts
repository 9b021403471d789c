/** Polygons by an independent library, in whole micrometers: areas of unions and overlaps. */
import { areaPaths, FillRule, intersect, union, type Path64 } from 'clipper2-ts';
import type { Point } from '../../src/roof/slopePlane.ts';

const PER_METER = 1e6;
const path = (points: readonly Point[]): Path64 =>
  points.map(({ u, v }) => ({ x: Math.round(u * PER_METER), y: Math.round(v * PER_METER) }));
const square = (area: number): number => Math.abs(area) / PER_METER ** 2;

/** [m²] of everything that at least one of the polygons covers. */
export const unionArea_m2 = (polygons: readonly (readonly Point[])[]): number =>
  square(areaPaths(union(polygons.map(path), FillRule.NonZero)));

/** [m²] that two sets of polygons share. */
export const sharedArea_m2 = (
  one: readonly (readonly Point[])[],
  other: readonly (readonly Point[])[],
): number => square(areaPaths(intersect(one.map(path), other.map(path), FillRule.NonZero)));

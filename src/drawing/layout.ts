/** How a sheet is divided, and the largest standard scale at which the eave fits its middle. */
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import type { System } from '../measures.ts';
import { eaveEdge, type EaveEdge } from './edge.ts';
import type { EdgeView } from './edge-input.ts';
import { boxOf, point, type Box, type Point } from './geometry.ts';
import { paperPerMeter_mm, scalesOf, type Scale } from './scale.ts';
import type { Placement } from './sheet-section.ts';

export interface SheetSize {
  readonly system: System;
  readonly width_mm: number;
  readonly height_mm: number;
  /** Fixed scale, 1 to this many: for drawings side by side. */
  readonly denominator?: number;
}

export interface Layout {
  readonly isCompact: boolean;
  readonly size_mm: number;
  readonly margin_mm: number;
  readonly left_mm: number;
  readonly right_mm: number;
  readonly dimension_mm: number;
  /** Height of the title strip. */
  readonly strip_mm: number;
  /** Where the section itself may stand. */
  readonly zone: Box;
}

/** [mm] Font size whose capitals are 2.5 mm high (ISO 3098-1:2015 smallest height, known: memory; capitals 0.66 em). */
export const TEXT_mm = 3.8;
export const BALLOON_mm = 5.6;
const STRIP_mm = 15;
const COMPACT_STRIP_mm = 9;

export function layoutOf(size: SheetSize, isCompact: boolean): Layout {
  const { width_mm, height_mm } = size;
  const margin_mm = isCompact ? 2 : 6;
  const left_mm = isCompact ? BALLOON_mm + 1 : Math.min(56, Math.max(38, width_mm * 0.18));
  const right_mm = isCompact ? BALLOON_mm + 1 : Math.min(62, Math.max(46, width_mm * 0.205));
  const dimension_mm = isCompact ? 7 : 12;
  const strip_mm = isCompact ? COMPACT_STRIP_mm : STRIP_mm;
  const sky_mm = isCompact ? 5 : 9;
  const x = margin_mm + left_mm + dimension_mm;
  return {
    isCompact,
    size_mm: TEXT_mm,
    margin_mm,
    left_mm,
    right_mm,
    dimension_mm,
    strip_mm,
    zone: {
      x,
      y: margin_mm + sky_mm,
      width: width_mm - x - margin_mm - right_mm - (isCompact ? 6 : 16),
      height: height_mm - 2 * margin_mm - sky_mm - strip_mm,
    },
  };
}

/** Points that must lie in the zone. */
const edgePoints = (edge: EaveEdge): Point[] => [
  ...edge.parts.flatMap((part) => part.polygon),
  ...edge.breaks.flat(),
  ...edge.measures.flatMap((m) => (m.id === 'fascia' ? [m.from, m.to] : [])),
];

const LEAST_INSIDE_m = 0.28;
const WIDEST_INSIDE_m = 1.6;
const LEAST_WALL_m = 0.15;
const TALLEST_WALL_m = 0.6;

export interface Fit {
  readonly edge: EaveEdge;
  readonly scale: Scale;
  readonly placement: Placement;
}

/** Size of the section on paper when inside and wall are shown longer by the given lengths. */
const paperSize = (edge: EaveEdge, scale: Scale, inside_m: number, wall_m: number) => {
  const box = boxOf(edgePoints(edge));
  const per_m = paperPerMeter_mm(scale);
  return {
    width: (box.width + inside_m) * per_m,
    height: (box.height + inside_m * Math.tan(edge.axes.angle_rad) + wall_m) * per_m,
  };
};

const fits = (edge: EaveEdge, scale: Scale, zone: Box): boolean => {
  const { width, height } = paperSize(edge, scale, 0, 0);
  return width <= zone.width && height <= zone.height;
};

/** Places the edge in the zone; `share` 0 puts spare height below, 1 above. */
function place(edge: EaveEdge, scale: Scale, zone: Box, share: number): Fit {
  const per_m = paperPerMeter_mm(scale);
  const box = boxOf(edgePoints(edge));
  const spareX = zone.width - box.width * per_m;
  const spareY = zone.height - box.height * per_m;
  const origin = point(
    zone.x + spareX / 2 - box.x * per_m,
    zone.y + spareY * share + (box.y + box.height) * per_m,
  );
  return { edge, scale, placement: { per_m, origin } };
}

/**
 * Ways to put the eave on the sheet, best first: larger scale before smaller, much roof before much wall,
 * centered before raised.
 */
export function* fittings(
  evaluation: Evaluation,
  candidate: Candidate,
  size: SheetSize,
  zone: Box,
): Generator<Fit> {
  if (zone.width <= 0 || zone.height <= 0) return;
  const build = (view: EdgeView): EaveEdge => eaveEdge(evaluation, candidate, view);
  const cos = Math.cos((evaluation.requirements.slope.angle_deg * Math.PI) / 180);
  const least: EdgeView = { inside_m: LEAST_INSIDE_m * cos, wall_m: LEAST_WALL_m };
  const smallest = build(least);
  /** More roof moves the break right and up, more wall moves the bottom down: both in closed form. */
  const widened = (scale: Scale, keys: readonly (keyof EdgeView)[]): EaveEdge => {
    const per_m = paperPerMeter_mm(scale);
    let view = least;
    for (const key of keys) {
      const grown = paperSize(smallest, scale, view.inside_m - least.inside_m, view.wall_m - least.wall_m);
      const up_m = (zone.height - grown.height) / per_m;
      const across_m = (zone.width - grown.width) / per_m;
      const room_m = key === 'wall_m' ? up_m : Math.min(across_m, up_m / Math.tan(smallest.axes.angle_rad));
      const most_m = key === 'wall_m' ? TALLEST_WALL_m : WIDEST_INSIDE_m;
      view = { ...view, [key]: Math.min(most_m, view[key] + Math.max(0, room_m)) };
    }
    return build(view);
  };
  const scales = scalesOf(size.system).filter(
    (scale) => size.denominator === undefined || scale.denominator === size.denominator,
  );
  for (const scale of scales) {
    if (!fits(smallest, scale, zone)) continue;
    for (const keys of [
      ['inside_m', 'wall_m'],
      ['wall_m', 'inside_m'],
    ] as const) {
      const edge = widened(scale, keys);
      for (const share of [0.5, 0.15]) yield place(edge, scale, zone, share);
    }
  }
}

/** Left end of the section, for the dimension of the roof edge. */
export const leftEnd = (fit: Fit): number =>
  fit.placement.origin.x + boxOf(edgePoints(fit.edge)).x * fit.placement.per_m;

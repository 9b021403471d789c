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
  /** From the section's left end out to the dimension line of the roof edge. */
  readonly edgeLine_mm: number;
  /** Height of the title strip. */
  readonly strip_mm: number;
  /** Where the section itself may stand. */
  readonly zone: Box;
}

/** [mm] Font size whose capitals are 2.5 mm high (ISO 3098-1:2015 smallest height, known: memory; capitals 0.66 em). */
export const TEXT_mm = 3.8;
export const BALLOON_mm = 5.6;

/** Roomy columns beside the section, columns as narrow as words allow, or marks alone. */
export type Columns = 'roomy' | 'narrow' | 'marks';

/** [mm] Widths of a sheet's parts, by its columns. */
function widthsOf(columns: Columns, width_mm: number) {
  switch (columns) {
    case 'roomy':
      return {
        margin_mm: 6,
        left_mm: Math.min(56, Math.max(38, width_mm * 0.18)),
        right_mm: Math.min(62, Math.max(46, width_mm * 0.205)),
        dimension_mm: 12,
        edgeLine_mm: 6.6,
        leader_mm: 16,
        sky_mm: 9,
      };
    case 'narrow':
      return {
        margin_mm: 2,
        left_mm: 36,
        right_mm: 36,
        dimension_mm: 9,
        edgeLine_mm: 5,
        leader_mm: 9,
        sky_mm: 9,
      };
    case 'marks': {
      const side_mm = BALLOON_mm + 1;
      return {
        margin_mm: 2,
        left_mm: side_mm,
        right_mm: side_mm,
        dimension_mm: 7,
        edgeLine_mm: 2.1,
        leader_mm: 6,
        sky_mm: 5,
      };
    }
  }
}

/** Divides a sheet. `stripOf` gives the height of the title strip for a width and for marks alone. */
export function layoutOf(
  size: SheetSize,
  columns: Columns,
  stripOf: (width_mm: number, isCompact: boolean) => number,
): Layout {
  const { width_mm, height_mm } = size;
  const isCompact = columns === 'marks';
  const { leader_mm, sky_mm, ...widths } = widthsOf(columns, width_mm);
  const { margin_mm, left_mm, right_mm, dimension_mm } = widths;
  const strip_mm = stripOf(width_mm - 2 * margin_mm, isCompact);
  const x = margin_mm + left_mm + dimension_mm;
  return {
    isCompact,
    size_mm: TEXT_mm,
    ...widths,
    strip_mm,
    zone: {
      x,
      y: margin_mm + sky_mm,
      width: width_mm - x - margin_mm - right_mm - leader_mm,
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
  /** Left end of the section on the sheet, for the dimension of the roof edge. */
  readonly left_mm: number;
}

/** The smallest part of an eave worth drawing, and how to build one that shows more. */
export interface Least {
  readonly view: EdgeView;
  readonly edge: EaveEdge;
  readonly box: Box;
  readonly build: (view: EdgeView) => EaveEdge;
}

export function leastEdge(evaluation: Evaluation, candidate: Candidate): Least {
  const cos = Math.cos((evaluation.requirements.slope.angle_deg * Math.PI) / 180);
  const view: EdgeView = { inside_m: LEAST_INSIDE_m * cos, wall_m: LEAST_WALL_m };
  const build = (wanted: EdgeView): EaveEdge => eaveEdge(evaluation, candidate, wanted);
  const edge = build(view);
  return { view, edge, box: boxOf(edgePoints(edge)), build };
}

/** Standard scales, largest first; the wanted one alone when the scale is fixed. */
export const scalesFor = (size: SheetSize): readonly Scale[] =>
  scalesOf(size.system).filter(
    (scale) => size.denominator === undefined || scale.denominator === size.denominator,
  );

/** True when the least of an eave fits the zone at a scale. */
export const fitsZone = ({ box }: Least, scale: Scale, zone: Box): boolean => {
  const per_m = paperPerMeter_mm(scale);
  return box.width * per_m <= zone.width && box.height * per_m <= zone.height;
};

/**
 * A view that fills the zone. More roof moves the break right and up, more wall moves the bottom down:
 * both in closed form.
 */
function filling(least: Least, scale: Scale, zone: Box, keys: readonly (keyof EdgeView)[]): EdgeView {
  const per_m = paperPerMeter_mm(scale);
  const slope = Math.tan(least.edge.axes.angle_rad);
  let { inside_m, wall_m } = least.view;
  for (const key of keys) {
    const moreInside_m = inside_m - least.view.inside_m;
    const across_m = zone.width / per_m - (least.box.width + moreInside_m);
    const up_m = zone.height / per_m - (least.box.height + moreInside_m * slope + wall_m - least.view.wall_m);
    if (key === 'wall_m') wall_m = Math.min(TALLEST_WALL_m, wall_m + Math.max(0, up_m));
    else inside_m = Math.min(WIDEST_INSIDE_m, inside_m + Math.max(0, Math.min(across_m, up_m / slope)));
  }
  return { inside_m, wall_m };
}

/** Shares of the spare height that stand above the section: centered, then raised. */
const SHARES_ABOVE = [0.5, 0.15];

/** Ways to put the eave in a zone at one scale: much roof before much wall, centered before raised. */
export function* fittings(least: Least, scale: Scale, zone: Box): Generator<Fit> {
  const per_m = paperPerMeter_mm(scale);
  for (const keys of [
    ['inside_m', 'wall_m'],
    ['wall_m', 'inside_m'],
  ] as const) {
    const edge = least.build(filling(least, scale, zone, keys));
    const box = boxOf(edgePoints(edge));
    const x = zone.x + (zone.width - box.width * per_m) / 2 - box.x * per_m;
    const spare_mm = zone.height - box.height * per_m;
    for (const share of SHARES_ABOVE) {
      const origin = point(x, zone.y + spare_mm * share + (box.y + box.height) * per_m);
      yield { edge, scale, placement: { per_m, origin }, left_mm: x + box.x * per_m };
    }
  }
}

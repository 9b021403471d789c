/** How a sheet is divided, and the largest standard scale at which a detail fits its middle. */
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import type { System } from '../measures.ts';
import { detailModel } from './details.ts';
import type { Detail, DetailModel, EdgeView } from './edge-model.ts';
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

/** [mm] More sky over a ridge, for its rise, and more ground under its breaks. */
const RIDGE_SKY_mm = 10;
const RIDGE_GROUND_mm = 4;

/** Divides a sheet. `stripOf` gives the height of the title strip for a width and for marks alone. */
export function layoutOf(
  size: SheetSize,
  detail: Detail,
  columns: Columns,
  stripOf: (width_mm: number, isCompact: boolean) => number,
): Layout {
  const { width_mm, height_mm } = size;
  const isCompact = columns === 'marks';
  const { leader_mm, sky_mm: plain_mm, ...widths } = widthsOf(columns, width_mm);
  const sky_mm = plain_mm + (detail === 'ridge' ? RIDGE_SKY_mm : 0);
  const ground_mm = detail === 'ridge' ? RIDGE_GROUND_mm : 0;
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
      height: height_mm - 2 * margin_mm - sky_mm - ground_mm - strip_mm,
    },
  };
}

/** Points that must lie in the zone. */
const edgePoints = (edge: DetailModel): Point[] => [
  ...edge.parts.flatMap((part) => part.polygon),
  ...edge.lines.flatMap((each) => (outlines.has(each.kind) ? each.points : [])),
  ...edge.breaks.flat(),
  ...edge.measures.flatMap((m) => (m.way === 'edge' || m.way === 'plumb' ? [m.from, m.to] : [])),
];
/** Lines that are bodies of their own outside the parts. */
const outlines: ReadonlySet<string> = new Set(['gutter', 'removed']);

const LEAST_INSIDE_m: Readonly<Record<Detail, number>> = { eave: 0.28, rake: 0.28, ridge: 0.36 };
/** [m] Room beside a dimension across the layers of a ridge. */
const LEAST_ACROSS_m = 0.08;
const LEAST_WALL_m = 0.15;
const MOST_m: EdgeView = { inside_m: 1.6, wall_m: 0.6 };

export interface Fit {
  readonly edge: DetailModel;
  readonly scale: Scale;
  readonly placement: Placement;
  /** Left end of the section on the sheet, for the dimension beside the edge. */
  readonly left_mm: number;
}

/** The smallest part of a detail worth drawing, and how to build one that shows more. */
export interface Least {
  readonly view: EdgeView;
  readonly edge: DetailModel;
  readonly box: Box;
  readonly build: (view: EdgeView) => DetailModel;
}

export function leastDetail(evaluation: Evaluation, candidate: Candidate, detail: Detail): Least {
  const cos = Math.cos((evaluation.requirements.slope.angle_deg * Math.PI) / 180);
  // The slope of a ridge must be long enough for a line across its layers to end within it.
  const across_m = candidate.edge.buildUp_m * Math.sqrt(1 - cos * cos) + LEAST_ACROSS_m;
  const plain_m = LEAST_INSIDE_m[detail] * (detail === 'rake' ? 1 : cos);
  const inside_m = detail === 'ridge' ? Math.max(plain_m, across_m) : plain_m;
  const view: EdgeView = { inside_m, wall_m: LEAST_WALL_m };
  const build = (wanted: EdgeView): DetailModel => detailModel(evaluation, candidate, detail, wanted);
  const edge = build(view);
  return { view, edge, box: boxOf(edgePoints(edge)), build };
}

/** Standard scales, largest first; the wanted one alone when the scale is fixed. */
export const scalesFor = (size: SheetSize): readonly Scale[] =>
  scalesOf(size.system).filter(
    (scale) => size.denominator === undefined || scale.denominator === size.denominator,
  );

/** True when the least of a detail fits the zone at a scale. */
export const fitsZone = ({ box }: Least, scale: Scale, zone: Box): boolean => {
  const per_m = paperPerMeter_mm(scale);
  return box.width * per_m <= zone.width && box.height * per_m <= zone.height;
};

/** A view that fills the zone: a detail grows in proportion to its view, so this is closed form. */
function filling(least: Least, scale: Scale, zone: Box, keys: readonly (keyof EdgeView)[]): EdgeView {
  const per_m = paperPerMeter_mm(scale);
  const { growth } = least.edge;
  const view = { ...least.view };
  const grown = (side: 'across' | 'up'): number =>
    (['inside_m', 'wall_m'] as const).reduce(
      (sum, key) => sum + growth[key][side] * (view[key] - least.view[key]),
      0,
    );
  const room = (spare_m: number, rate: number): number => (rate > 0 ? Math.max(0, spare_m) / rate : Infinity);
  for (const key of keys) {
    const across_m = zone.width / per_m - (least.box.width + grown('across'));
    const up_m = zone.height / per_m - (least.box.height + grown('up'));
    const { across, up } = growth[key];
    view[key] = Math.min(MOST_m[key], view[key] + Math.min(room(across_m, across), room(up_m, up)));
  }
  return view;
}

/** Shares of the spare height that stand above the section: centered, then raised. */
const SHARES_ABOVE = [0.5, 0.15];

/** Ways to put a detail in a zone at one scale: much roof before much wall, centered before raised. */
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

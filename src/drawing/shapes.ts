/**
 * The closed set of shapes that every drawing is made of. Millimeters of paper, x to the right, y down.
 * SVG, PDF and screen parts all draw from these; nobody adds a stroke of their own.
 */
import { boxOf, point, type Box, type Point } from './geometry.ts';
import type { FillName, InkName } from './palette.ts';
import { textWidth_mm } from './text-metrics.ts';

/** [mm] Line widths of the series of ISO 128-2:2020 (steps of the square root of two; known: memory). */
export const penWidths = [0.18, 0.25, 0.35, 0.5, 0.7] as const;
export type PenWidth_mm = (typeof penWidths)[number];

/** Line types by meaning (ISO 128-2:2020 basic types 01, 02, 04, 07; known: memory). */
export const dashes = ['continuous', 'dashed', 'chain', 'dotted'] as const;
export type Dash = (typeof dashes)[number];

/** [mm] Dash lengths, stroke then space. */
export const dashLengths: Record<Dash, readonly number[]> = {
  continuous: [],
  dashed: [2.4, 1],
  chain: [5, 1, 0.5, 1],
  dotted: [0.4, 1],
};

export interface Pen {
  readonly width_mm: PenWidth_mm;
  readonly dash: Dash;
  readonly ink: InkName;
}

export type TextAnchor = 'start' | 'middle' | 'end';

export interface LineShape {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
  readonly pen: Pen;
}
export interface PolylineShape {
  readonly kind: 'polyline';
  readonly points: readonly Point[];
  readonly pen: Pen;
}
export interface PolygonShape {
  readonly kind: 'polygon';
  readonly points: readonly Point[];
  readonly pen: Pen | null;
  readonly fill: FillName | null;
}
export interface CircleShape {
  readonly kind: 'circle';
  readonly center: Point;
  readonly radius_mm: number;
  readonly pen: Pen | null;
  readonly fill: FillName | null;
}
export interface TextShape {
  readonly kind: 'text';
  /** On the baseline. */
  readonly at: Point;
  readonly text: string;
  /** [mm] Font size (em), not the height of the capitals. */
  readonly size_mm: number;
  readonly anchor: TextAnchor;
  readonly weight: 'regular' | 'bold';
  readonly ink: InkName;
  /** Counterclockwise as seen on the sheet. */
  readonly turn_deg: number;
}
export interface GroupShape {
  readonly kind: 'group';
  /** Class by meaning: `part`, `membrane`, `dimension`, `note`, … */
  readonly meaning: string;
  readonly id: string;
  /** Layer of the candidate that the group shows, or null. */
  readonly layerId: string | null;
  readonly title: string | null;
  readonly isHighlighted: boolean;
  readonly shapes: readonly Shape[];
}
export type Shape = LineShape | PolylineShape | PolygonShape | CircleShape | TextShape | GroupShape;

export const pen = (width_mm: PenWidth_mm, ink: InkName = 'line', dash: Dash = 'continuous'): Pen => ({
  width_mm,
  dash,
  ink,
});
export const line = (from: Point, to: Point, stroke: Pen): LineShape => ({
  kind: 'line',
  from,
  to,
  pen: stroke,
});
export const polyline = (points: readonly Point[], stroke: Pen): PolylineShape => ({
  kind: 'polyline',
  points,
  pen: stroke,
});
export const polygon = (
  points: readonly Point[],
  stroke: Pen | null,
  fill: FillName | null,
): PolygonShape => ({ kind: 'polygon', points, pen: stroke, fill });
export const circle = (
  center: Point,
  radius_mm: number,
  stroke: Pen | null,
  fill: FillName | null,
): CircleShape => ({ kind: 'circle', center, radius_mm, pen: stroke, fill });

export interface TextStyle {
  readonly size_mm: number;
  readonly anchor?: TextAnchor;
  readonly weight?: 'regular' | 'bold';
  readonly ink?: InkName;
  readonly turn_deg?: number;
}
export const text = (at: Point, words: string, style: TextStyle): TextShape => ({
  kind: 'text',
  at,
  text: words,
  size_mm: style.size_mm,
  anchor: style.anchor ?? 'start',
  weight: style.weight ?? 'regular',
  ink: style.ink ?? 'text',
  turn_deg: style.turn_deg ?? 0,
});
export const group = (
  meaning: string,
  id: string,
  shapes: readonly Shape[],
  options: { layerId?: string | null; title?: string | null; isHighlighted?: boolean } = {},
): GroupShape => ({
  kind: 'group',
  meaning,
  id,
  layerId: options.layerId ?? null,
  title: options.title ?? null,
  isHighlighted: options.isHighlighted ?? false,
  shapes,
});

/** Share of the font size above and below the baseline that letters of the drawing's font take. */
const ASCENT_SHARE = 0.73;
const DESCENT_SHARE = 0.22;

/** Box that a text takes on the sheet, turned texts by the box around them. */
export function textBox(shape: TextShape): Box {
  const width = textWidth_mm(shape.text, shape.size_mm, shape.weight);
  const left = shape.anchor === 'start' ? 0 : shape.anchor === 'middle' ? -width / 2 : -width;
  const turn = (-shape.turn_deg * Math.PI) / 180;
  const corners = [
    point(left, -shape.size_mm * ASCENT_SHARE),
    point(left + width, -shape.size_mm * ASCENT_SHARE),
    point(left + width, shape.size_mm * DESCENT_SHARE),
    point(left, shape.size_mm * DESCENT_SHARE),
  ].map((p) =>
    point(
      shape.at.x + p.x * Math.cos(turn) - p.y * Math.sin(turn),
      shape.at.y + p.x * Math.sin(turn) + p.y * Math.cos(turn),
    ),
  );
  return boxOf(corners);
}

/** Every shape that is not a group, in drawing order. */
export function* leaves(shapes: readonly Shape[]): Generator<Exclude<Shape, GroupShape>> {
  for (const shape of shapes) {
    if (shape.kind === 'group') yield* leaves(shape.shapes);
    else yield shape;
  }
}

/** Box around one shape, line width left out. */
export function shapeBox(shape: Exclude<Shape, GroupShape>): Box {
  switch (shape.kind) {
    case 'line':
      return boxOf([shape.from, shape.to]);
    case 'polyline':
    case 'polygon':
      return boxOf(shape.points);
    case 'circle':
      return {
        x: shape.center.x - shape.radius_mm,
        y: shape.center.y - shape.radius_mm,
        width: 2 * shape.radius_mm,
        height: 2 * shape.radius_mm,
      };
    case 'text':
      return textBox(shape);
  }
}

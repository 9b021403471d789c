/** Lines, points and bars. Series are told apart by line pattern and the form of their points; ink only repeats it. */
import { line as lineOf } from 'd3-shape';
import { point, type Point } from '../drawing/geometry.ts';
import type { FillName, InkName } from '../drawing/palette.ts';
import { parallelLines } from '../drawing/hatch.ts';
import { circle, line, pen, polygon, polyline, type Dash, type Pen, type Shape } from '../drawing/shapes.ts';

export const forms = ['circle', 'square', 'triangle', 'diamond'] as const;
export type Form = (typeof forms)[number];

export interface Style {
  readonly dash: Dash;
  readonly form: Form;
  readonly ink: InkName;
}

/** One style for each series of a plot, in order. */
export const styles: readonly Style[] = [
  { dash: 'continuous', form: 'circle', ink: 'line' },
  { dash: 'dashed', form: 'square', ink: 'waterPath' },
  { dash: 'chain', form: 'triangle', ink: 'dryingPath' },
  { dash: 'dotted', form: 'diamond', ink: 'limit' },
];
export const styleOf = (index: number): Style =>
  styles[index % styles.length] ?? { dash: 'continuous', form: 'circle', ink: 'line' };

export const limitPen: Pen = pen(0.35, 'limit', 'chain');
export const seriesPen = (style: Style): Pen => pen(0.5, style.ink, style.dash);

interface Sink {
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  closePath(): void;
}

/**
 * The line through the places that hold a value, broken where one is missing.
 * The generator draws into a sink of our own, so that the line becomes shapes and not text for one renderer.
 */
export function traced(places: readonly (Point | null)[]): Point[][] {
  const runs: Point[][] = [];
  const sink: Sink = {
    moveTo: (x, y) => void runs.push([point(x, y)]),
    lineTo: (x, y) => void runs.at(-1)?.push(point(x, y)),
    closePath: () => undefined,
  };
  lineOf<Point | null>()
    .defined((place) => place !== null)
    .x((place) => place?.x ?? 0)
    .y((place) => place?.y ?? 0)
    .context(sink as Parameters<ReturnType<typeof lineOf>['context']>[0] & object)([...places]);
  return runs;
}

export const linesThrough = (places: readonly (Point | null)[], stroke: Pen): Shape[] =>
  traced(places).map((points) => polyline(points, stroke));

/** [mm] Half the size of a point. */
const POINT_mm = 0.95;

/** A point of a series, hollow unless it is to stand out. */
export function mark(
  form: Form,
  at: Point,
  ink: InkName,
  fill: FillName = 'paper',
  size_mm = POINT_mm,
): Shape {
  const stroke = pen(0.35, ink);
  const corner = (x: number, y: number): Point => point(at.x + x * size_mm, at.y + y * size_mm);
  switch (form) {
    case 'circle':
      return circle(at, size_mm, stroke, fill);
    case 'square':
      return polygon([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)], stroke, fill);
    case 'triangle':
      return polygon([corner(-1.1, 0.9), corner(1.1, 0.9), corner(0, -1.1)], stroke, fill);
    case 'diamond':
      return polygon([corner(-1.2, 0), corner(0, -1.2), corner(1.2, 0), corner(0, 1.2)], stroke, fill);
  }
}

export const rectangle = (left: number, top: number, right: number, bottom: number): Point[] => [
  point(left, top),
  point(right, top),
  point(right, bottom),
  point(left, bottom),
];

/** Patterns of bars, told apart without color: plain, leaning right, leaning left, crossed, dense, wide. */
export const patterns = ['plain', 'right', 'left', 'crossed', 'dense', 'upright'] as const;
export type Pattern = (typeof patterns)[number];
export const patternOf = (index: number): Pattern => patterns[index % patterns.length] ?? 'plain';

const QUARTER = Math.PI / 4;
/** [rad, mm] Direction and spacing of the strokes of each pattern. */
const strokesOf: Readonly<Record<Pattern, readonly (readonly [number, number])[]>> = {
  plain: [],
  right: [[-QUARTER, 1.6]],
  left: [[QUARTER, 1.6]],
  crossed: [
    [-QUARTER, 1.8],
    [QUARTER, 1.8],
  ],
  dense: [[-QUARTER, 0.7]],
  upright: [[Math.PI / 2, 1.2]],
};

/** A bar with its pattern. */
export const barShapes = (corners: readonly Point[], pattern: Pattern): Shape[] => [
  polygon(corners, null, 'covering'),
  ...strokesOf[pattern].flatMap(([angle, spacing]) =>
    parallelLines(corners, angle, spacing).map(([from, to]) => line(from, to, pen(0.18, 'line'))),
  ),
  polygon(corners, pen(0.25), null),
];

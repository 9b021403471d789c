/** Dimension lines with oblique ticks (ISO 129-1:2018 allows them; known: memory). */
import { add, between, distance, point, subtract, times, type Point } from './geometry.ts';
import { line, pen, text, type Shape, type TextAnchor } from './shapes.ts';

const thin = pen(0.25, 'dimension');
const TICK_mm = 1.1;
/** [mm] Space between the object and the start of an extension line, and its overshoot. */
const EXTENSION_GAP_mm = 1;
const EXTENSION_PAST_mm = 1.6;

const unit = (a: Point, b: Point): Point => times(subtract(b, a), 1 / Math.max(1e-9, distance(a, b)));

export function tick(at: Point): Shape {
  return line(
    point(at.x - TICK_mm, at.y + TICK_mm),
    point(at.x + TICK_mm, at.y - TICK_mm),
    pen(0.35, 'dimension'),
  );
}

export interface DimensionText {
  readonly at: Point;
  readonly anchor: TextAnchor;
  readonly words: string;
  readonly size_mm: number;
}

/** A dimension line beside the object: two extension lines, the line, two ticks. */
export function offsetDimension(from: Point, to: Point, objectFrom: Point, objectTo: Point): Shape[] {
  const extension = (object: Point, foot: Point): Shape[] => {
    if (distance(object, foot) <= EXTENSION_GAP_mm) return [];
    const along = unit(object, foot);
    return [
      line(add(object, times(along, EXTENSION_GAP_mm)), add(foot, times(along, EXTENSION_PAST_mm)), thin),
    ];
  };
  return [
    ...extension(objectFrom, from),
    ...extension(objectTo, to),
    line(from, to, thin),
    tick(from),
    tick(to),
  ];
}

/** A dimension drawn through the section, with a tail that leads out to its figure. */
export function throughDimension(from: Point, to: Point, tail_mm: number): { shapes: Shape[]; end: Point } {
  const along = unit(from, to);
  const end = add(to, times(along, tail_mm));
  const start = distance(from, to) < 2 * TICK_mm ? add(from, times(along, -3)) : from;
  return { shapes: [line(start, end, thin), tick(from), tick(to)], end };
}

export const dimensionText = (words: DimensionText): Shape =>
  text(words.at, words.words, { size_mm: words.size_mm, anchor: words.anchor, ink: 'text' });

/** A long break across the section: a thin line with one zigzag (ISO 128-2:2020 type 01.1 with zigzags; known: memory). */
export function breakLine(from: Point, to: Point): Point[] {
  const along = unit(from, to);
  const across = point(-along.y, along.x);
  const mid = between(from, to, 0.5);
  const start = add(from, times(along, -3));
  const end = add(to, times(along, 3));
  const ZIG_mm = 1.8;
  return [
    start,
    add(mid, times(along, -ZIG_mm)),
    add(add(mid, times(along, -ZIG_mm / 3)), times(across, ZIG_mm)),
    add(add(mid, times(along, ZIG_mm / 3)), times(across, -ZIG_mm)),
    add(mid, times(along, ZIG_mm)),
    end,
  ];
}

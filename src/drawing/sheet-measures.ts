/** The dimensions of the eave on the sheet. */
import type { System } from '../measures.ts';
import { add, boxesOverlap, distance, point, subtract, times, type Box, type Point } from './geometry.ts';
import { offsetDimension, throughDimension } from './dimensions.ts';
import type { EaveEdge } from './edge.ts';
import type { Measure } from './edge-model.ts';
import { lengthText } from './lengths.ts';
import {
  group,
  line,
  pen,
  polygon,
  text,
  textBox,
  type Shape,
  type TextAnchor,
  type TextShape,
} from './shapes.ts';
import { marginWords } from './sheet-notes.ts';
import { toPaper, type Placement } from './sheet-section.ts';

export interface MeasureContext {
  readonly edge: EaveEdge;
  readonly placement: Placement;
  readonly system: System;
  readonly size_mm: number;
  readonly isCompact: boolean;
  /** Where texts may stand. */
  readonly sheet: Box;
  /** x of the dimension line of the roof edge. */
  readonly edgeLine_x: number;
}

export interface Placed {
  readonly shapes: Shape[];
  readonly texts: TextShape[];
}

const LINE_STEP = 1.25;

function backed(shape: TextShape): Shape[] {
  const box = textBox(shape);
  const PAD_mm = 0.4;
  const corners = [
    point(box.x - PAD_mm, box.y - PAD_mm),
    point(box.x + box.width + PAD_mm, box.y - PAD_mm),
    point(box.x + box.width + PAD_mm, box.y + box.height + PAD_mm),
    point(box.x - PAD_mm, box.y + box.height + PAD_mm),
  ];
  return [polygon(corners, null, 'paper'), shape];
}

/** Words of the roof edge's dimension, one line each. */
export function fasciaWords(measure: Measure, system: System, isCompact: boolean): string[] {
  const value = lengthText(measure.value_m, system);
  const lines = isCompact ? [value] : [measure.name, value];
  if (measure.limit_m !== null && measure.margin_m !== null) {
    lines.push(`limit ${lengthText(measure.limit_m, system)}`, marginWords(measure.margin_m, system));
  }
  return lines;
}

/** Height that the words beside the roof edge need. */
export const wordsHeight = (count: number, size_mm: number): number => count * size_mm * LINE_STEP;

function fascia(context: MeasureContext, measure: Measure, taken: readonly Box[]): Placed {
  const { placement, system, size_mm, edgeLine_x, isCompact, edge } = context;
  const low = toPaper(placement, measure.from);
  const high = toPaper(placement, measure.to);
  const isPlumb = edge.input.planes.face.kind === 'plumb';
  const shapes: Shape[] = [];
  const shift = isPlumb
    ? point(edgeLine_x - low.x, 0)
    : times(normalOf(high, low), Math.abs(low.x - edgeLine_x) * 0.6);
  const from = add(low, shift);
  const to = add(high, shift);
  shapes.push(...offsetDimension(from, to, low, high));
  if (measure.limit_m !== null) {
    const along = times(subtract(low, high), 1 / Math.max(1e-9, distance(low, high)));
    const limit = add(high, times(along, measure.limit_m * placement.per_m));
    const reach = add(limit, times(shift, 1.15));
    shapes.push(line(add(limit, times(shift, -0.35)), reach, pen(0.5, 'limit', 'chain')));
  }
  const words = fasciaWords(measure, system, isCompact);
  const mid = times(add(from, to), 0.5);
  const firstLine = mid.y - wordsHeight(words.length, size_mm) / 2 + size_mm;
  const texts = words.map((words_i, i) =>
    text(point(Math.min(from.x, to.x) - 2, firstLine + i * size_mm * LINE_STEP), words_i, {
      size_mm,
      anchor: 'end',
      weight: measure.value_m !== 0 && words_i === lengthText(measure.value_m, system) ? 'bold' : 'regular',
      ink: i >= words.length - 2 && measure.limit_m !== null ? 'limit' : 'text',
    }),
  );
  return { shapes, texts: texts.filter((t) => !taken.some((box) => boxesOverlap(box, textBox(t)))) };
}

/** Unit vector square to a segment, pointing to the lower left of the sheet's eave. */
function normalOf(from: Point, to: Point): Point {
  const along = times(subtract(to, from), 1 / Math.max(1e-9, distance(from, to)));
  const across = point(-along.y, along.x);
  return across.x <= 0 ? across : times(across, -1);
}

/** A figure at the sky end of a dimension that runs through the stack. */
function through(
  context: MeasureContext,
  measure: Measure,
  taken: readonly Box[],
  slide_m: number,
): Placed | null {
  const { placement, system, size_mm, sheet, edge, isCompact } = context;
  const move = subtract(edge.axes.at(slide_m, 0), edge.axes.at(0, 0));
  const from = toPaper(placement, add(measure.from, move));
  const to = toPaper(placement, add(measure.to, move));
  const stackTop = edge.input.stack.at(-1)?.high_m ?? 0;
  const above_mm = (stackTop - heightOf(edge, measure.to)) * placement.per_m;
  const words =
    isCompact && measure.id === 'gap' ? '' : `${measure.name} ${lengthText(measure.value_m, system)}`;
  if (words === '') return null;
  for (const tail_mm of [5, 8, 11, 15, 20, 26]) {
    const { shapes, end } = throughDimension(from, to, above_mm + tail_mm);
    const anchor: TextAnchor = 'end';
    const shape = text(point(end.x - 0.8, end.y + size_mm * 0.1), words, { size_mm, anchor });
    const box = textBox(shape);
    const isFree =
      box.x > sheet.x &&
      box.y > sheet.y &&
      box.x + box.width < sheet.x + sheet.width &&
      !taken.some((other) => boxesOverlap(other, box, 1));
    if (isFree) return { shapes, texts: [shape] };
  }
  return null;
}

const heightOf = (edge: EaveEdge, p: Point): number =>
  -p.x * Math.sin(edge.axes.angle_rad) + p.y * Math.cos(edge.axes.angle_rad);

function overhang(context: MeasureContext, measure: Measure, taken: readonly Box[]): Placed {
  const { placement, system, size_mm, sheet, isCompact, edge } = context;
  const a = toPaper(placement, measure.from);
  const b = toPaper(placement, measure.to);
  const words = isCompact
    ? lengthText(measure.value_m, system)
    : `${measure.name} ${lengthText(measure.value_m, system)}`;
  const bottom = toPaper(placement, point(0, edge.input.wall.bottom_m)).y;
  for (const drop_mm of [9, 12, 15, 7, 18, 22]) {
    const y = a.y + drop_mm;
    const shape = text(point((a.x + b.x) / 2, y - 1), words, { size_mm, anchor: 'middle' });
    const box = textBox(shape);
    if (y > bottom || box.x < sheet.x || taken.some((other) => boxesOverlap(other, box, 0.6))) continue;
    const from = point(a.x, y);
    const to = point(b.x, y);
    return { shapes: offsetDimension(from, to, a, point(b.x, y - 3)), texts: [shape] };
  }
  return { shapes: [], texts: [] };
}

/** All dimensions; those whose figure finds no free place are left out and stand in the list instead. */
export function measureShapes(context: MeasureContext, taken: readonly Box[]): Placed {
  const shapes: Shape[] = [];
  const texts: TextShape[] = [];
  const boxes = [...taken];
  const keep = (id: string, placed: Placed | null): void => {
    if (placed === null) return;
    for (const shape of placed.texts) boxes.push(textBox(shape));
    texts.push(...placed.texts);
    shapes.push(group('dimension', `dimension-${id}`, [...placed.shapes, ...placed.texts.flatMap(backed)]));
  };
  for (const measure of context.edge.measures) {
    if (measure.id === 'fascia') keep(measure.id, fascia(context, measure, boxes));
    if (measure.id === 'overhang') keep(measure.id, overhang(context, measure, boxes));
    if (measure.id === 'build-up') keep(measure.id, through(context, measure, boxes, 0));
    if (measure.id === 'gap') keep(measure.id, through(context, measure, boxes, -0.1));
  }
  return { shapes, texts };
}

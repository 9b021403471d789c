/** The dimensions of a detail on the sheet; a figure looks for a free place and keeps off leaders when it can. */
import type { System } from '../measures.ts';
import { add, boxInside, distance, point, subtract, times, type Box, type Point } from './geometry.ts';
import { offsetDimension, throughDimension } from './dimensions.ts';
import type { DetailModel, Measure, MeasureWay } from './edge-model.ts';
import { lengthText } from './lengths.ts';
import { group, line, pen, polygon, text, textBox, type Shape, type TextShape } from './shapes.ts';
import { marginWords } from './sheet-notes.ts';
import { toPaper, type Placement } from './sheet-section.ts';
import type { Taken } from './taken.ts';
import { textWidth_mm } from './text-metrics.ts';

export interface MeasureContext {
  readonly edge: DetailModel;
  readonly placement: Placement;
  readonly system: System;
  readonly size_mm: number;
  readonly isCompact: boolean;
  /** Where texts may stand. */
  readonly sheet: Box;
  /** x of the dimension line of a plumb roof edge. */
  readonly edgeLine_x: number;
}

interface Choice {
  readonly shapes: readonly Shape[];
  readonly texts: readonly TextShape[];
}

/** [mm] Air that keeps a figure from being read with the one beside it. */
const READING_AIR_mm = 3;

const widened = (box: Box): Box => ({
  ...box,
  x: box.x - READING_AIR_mm,
  width: box.width + 2 * READING_AIR_mm,
});

/** The first choice well clear of texts and lines; else the first that covers neither; else the first that covers no text. */
function choose(choices: readonly Choice[], sheet: Box, taken: Taken): Choice | null {
  const allowed = choices.filter((choice) =>
    choice.texts.every((shape) => boxInside(textBox(shape), sheet) && !taken.hasText(textBox(shape))),
  );
  const offLines = allowed.filter((choice) => choice.texts.every((t) => !taken.hasLine(textBox(t))));
  const isClear = (choice: Choice): boolean => choice.texts.every((t) => !taken.hasText(widened(textBox(t))));
  return offLines.find(isClear) ?? offLines[0] ?? allowed.find(isClear) ?? allowed[0] ?? null;
}

const LINE_STEP = 1.25;

/** A figure with paper behind it. */
function backed(shape: TextShape): Shape[] {
  const box = textBox(shape);
  const PAD_mm = 0.4;
  const left = box.x - PAD_mm;
  const top = box.y - PAD_mm;
  const right = box.x + box.width + PAD_mm;
  const bottom = box.y + box.height + PAD_mm;
  return [
    polygon([point(left, top), point(right, top), point(right, bottom), point(left, bottom)], null, 'paper'),
    shape,
  ];
}

/** Words of the roof edge's dimension, one line each. On a narrow sheet the value alone: the list says the rest. */
export function fasciaWords(measure: Measure, system: System, isCompact: boolean): string[] {
  const value = lengthText(measure.value_m, system);
  if (isCompact) return [value];
  const lines = [measure.name, value];
  if (measure.limit_m !== null && measure.margin_m !== null) {
    lines.push(`limit ${lengthText(measure.limit_m, system)}`, marginWords(measure.margin_m, system));
  }
  return lines;
}

/** Height that the words beside the roof edge need. */
export const wordsHeight = (count: number, size_mm: number): number => count * size_mm * LINE_STEP;

/** Unit vector square to a segment, pointing to the lower left of the sheet's eave. */
function outward(from: Point, to: Point): Point {
  const along = times(subtract(to, from), 1 / Math.max(1e-9, distance(from, to)));
  const across = point(-along.y, along.x);
  return across.x <= 0 ? across : times(across, -1);
}

const SQUARE_OFFSET_mm = 7;
/** [mm] Space between a dimension line and the figure along it. */
const FIGURE_OFF_mm = 1;
/** [-] Height of capitals and figures in font sizes. */
const CAPITALS_SHARE = 0.66;

function fasciaLines(context: MeasureContext, measure: Measure): { shapes: Shape[]; from: Point; to: Point } {
  const { placement, edgeLine_x, edge } = context;
  const low = toPaper(placement, measure.from);
  const high = toPaper(placement, measure.to);
  const shift = edge.isEdgePlumb ? point(edgeLine_x - low.x, 0) : times(outward(high, low), SQUARE_OFFSET_mm);
  const from = add(low, shift);
  const to = add(high, shift);
  const shapes = offsetDimension(from, to, low, high);
  if (measure.limit_m !== null) {
    const along = times(subtract(low, high), 1 / Math.max(1e-9, distance(low, high)));
    const limit = add(high, times(along, measure.limit_m * placement.per_m));
    const outer = add(limit, times(shift, 1.3));
    // A limit far below the edge needs no line: its margin stands in the words.
    const lowest = toPaper(placement, point(0, edge.bottom_m)).y;
    if (Math.max(limit.y, outer.y) <= lowest)
      shapes.push(line(add(limit, times(shift, -1)), outer, pen(0.5, 'limit', 'chain')));
  }
  return { shapes, from, to };
}

/** [deg] Figures turn a quarter at most; the hair above it is for plumb lines that rounding leans over. */
const UPRIGHT_deg = 90.001;
/** [mm] How far a dimension line runs on to a figure beyond its end. */
const RUN_ON_mm = 3;

/** The figure level beyond the lower end of the line, where none fits along it. */
function pastTheEnd(
  { size_mm }: MeasureContext,
  shapes: readonly Shape[],
  high: Point,
  low: Point,
  words: string,
): Choice {
  const along = times(subtract(low, high), 1 / Math.max(1e-9, distance(low, high)));
  const end = add(low, times(along, RUN_ON_mm));
  const isLevel = Math.abs(along.x) > Math.abs(along.y);
  const at = isLevel
    ? point(end.x + Math.sign(along.x), end.y + size_mm * 0.3)
    : point(end.x, end.y + size_mm * 0.8);
  // Below a plumb edge the balloons stand to the left, the soffit's air to the right.
  const anchor = isLevel && along.x < 0 ? 'end' : 'start';
  return {
    shapes: [...shapes, line(low, end, pen(0.25, 'dimension'))],
    texts: [text(at, words, { size_mm, anchor })],
  };
}

function fasciaChoices(context: MeasureContext, measure: Measure): Choice[] {
  const { system, size_mm, isCompact } = context;
  const { shapes, from, to } = fasciaLines(context, measure);
  const words = fasciaWords(measure, system, isCompact);
  const mid = times(add(from, to), 0.5);
  if (isCompact) {
    const along_deg = (Math.atan2(from.y - to.y, to.x - from.x) * 180) / Math.PI;
    // A line that leans past plumb would set its figure upside down: the other way round, off by its height.
    const isTurned = along_deg > UPRIGHT_deg;
    const off_mm = FIGURE_OFF_mm + (isTurned ? size_mm * CAPITALS_SHARE : 0);
    const figure = (share: number): TextShape => {
      const at = add(mid, times(subtract(to, from), share));
      return text(add(at, times(outward(to, from), off_mm)), words[0] ?? '', {
        size_mm,
        anchor: 'middle',
        turn_deg: isTurned ? along_deg - 180 : along_deg,
      });
    };
    return [
      ...[0, 0.2, -0.2].map((share): Choice => ({ shapes, texts: [figure(share)] })),
      pastTheEnd(context, shapes, to, from, words[0] ?? ''),
    ];
  }
  const x = Math.min(mid.x, (mid.x + Math.min(from.x, to.x)) / 2) - 2;
  const height = wordsHeight(words.length, size_mm);
  const room = Math.max(0, (Math.abs(to.y - from.y) - height) / 2 - 1);
  return [0, -1, 1, -0.5, 0.5].map((share) => ({
    shapes,
    texts: words.map((figure, i) =>
      text(point(x, mid.y + share * room - height / 2 + size_mm * (1 + i * LINE_STEP)), figure, {
        size_mm,
        anchor: 'end',
        weight: i === 1 ? 'bold' : 'regular',
        ink: i >= 2 ? 'limit' : 'text',
      }),
    ),
  }));
}

const heightOf = (edge: DetailModel, p: Point): number =>
  -p.x * Math.sin(edge.axes.angle_rad) + p.y * Math.cos(edge.axes.angle_rad);

const TAILS_mm = [5, 8, 11, 15, 20, 26];

/** Choices for a dimension through the stack with its figure in the sky. */
function throughChoices(context: MeasureContext, measure: Measure): Choice[] {
  const { placement, system, size_mm, edge } = context;
  const words = `${measure.name} ${lengthText(measure.value_m, system)}`;
  const above_mm = (edge.buildUp_m - heightOf(edge, measure.to)) * placement.per_m;
  return (measure.slides_m ?? [0]).flatMap((slide_m) => {
    const move = subtract(edge.axes.at(slide_m, 0), edge.axes.at(0, 0));
    const from = toPaper(placement, add(measure.from, move));
    const to = toPaper(placement, add(measure.to, move));
    return TAILS_mm.map((tail_mm) => {
      const { shapes, end } = throughDimension(from, to, above_mm + tail_mm);
      const figure = text(point(end.x - 0.8, end.y + size_mm * 0.1), words, { size_mm, anchor: 'end' });
      return { shapes, texts: [figure] };
    });
  });
}

const DROPS_mm = [9, 12, 15, 7, 18, 22];

function overhangChoices(context: MeasureContext, measure: Measure): Choice[] {
  const { placement, system, size_mm, isCompact, edge } = context;
  const a = toPaper(placement, measure.from);
  const b = toPaper(placement, measure.to);
  const value = lengthText(measure.value_m, system);
  const bottom = toPaper(placement, point(0, edge.bottom_m)).y;
  const wordings = isCompact ? [value] : [`${measure.name} ${value}`, value];
  return wordings.flatMap((words) => {
    const isWide = textWidth_mm(words, size_mm) > b.x - a.x - 3;
    if (isWide && words !== value) return [];
    return DROPS_mm.filter((drop) => a.y + drop < bottom).map((drop) => {
      const y = a.y + drop;
      const at = isWide ? point(a.x - 2.4, y + size_mm * 0.3) : point((a.x + b.x) / 2, y - 1);
      return {
        shapes: offsetDimension(point(a.x, y), point(b.x, y), a, point(b.x, y - 3)),
        texts: [text(at, words, { size_mm, anchor: isWide ? 'end' : 'middle' })],
      };
    });
  });
}

/** Choices for a plumb dimension over the ridge: its figure and limit stand above its end, to either side. */
function plumbChoices(context: MeasureContext, measure: Measure): Choice[] {
  const { placement, system, size_mm, isCompact } = context;
  const from = toPaper(placement, measure.from);
  const to = toPaper(placement, measure.to);
  const value = lengthText(measure.value_m, system);
  const limit =
    measure.limit_m === null || measure.margin_m === null
      ? []
      : [`limit ${lengthText(measure.limit_m, system)}, ${marginWords(measure.margin_m, system)}`];
  const words = isCompact ? [value] : [`${measure.name} ${value}`, ...limit];
  const past_mm = (measure.past_m ?? 0) * placement.per_m;
  return TAILS_mm.flatMap((tail_mm) => {
    const { shapes, end } = throughDimension(
      from,
      to,
      past_mm + tail_mm + wordsHeight(words.length, size_mm),
    );
    return (['start', 'end'] as const).map((anchor) => ({
      shapes,
      texts: words.map((figure, i) =>
        text(
          point(
            end.x + (anchor === 'start' ? FIGURE_OFF_mm : -FIGURE_OFF_mm),
            end.y + size_mm * (CAPITALS_SHARE + i * LINE_STEP),
          ),
          figure,
          { size_mm, anchor, ink: i > 0 ? 'limit' : 'text' },
        ),
      ),
    }));
  });
}

function choicesFor(context: MeasureContext, measure: Measure): Choice[] {
  switch (measure.way) {
    case 'edge':
      return fasciaChoices(context, measure);
    case 'below':
      return overhangChoices(context, measure);
    case 'across':
      return context.isCompact && measure.id === 'gap' ? [] : throughChoices(context, measure);
    case 'plumb':
      return plumbChoices(context, measure);
    case 'listed':
      return [];
  }
}

/** Dimensions find their place in this order. */
const order: readonly MeasureWay[] = ['edge', 'below', 'plumb', 'across', 'listed'];

/** All dimensions; a figure that finds no free place is left to the list beside the drawing. */
export function measureShapes(context: MeasureContext, taken: Taken): Shape[] {
  const measures = [...context.edge.measures].sort((a, b) => order.indexOf(a.way) - order.indexOf(b.way));
  return measures.flatMap((measure): Shape[] => {
    const choice = choose(choicesFor(context, measure), context.sheet, taken);
    if (choice === null) return [];
    const shapes = [...choice.shapes, ...choice.texts.flatMap(backed)];
    taken.add(shapes);
    return [group('dimension', `dimension-${measure.id}`, shapes)];
  });
}

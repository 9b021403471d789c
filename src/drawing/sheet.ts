/** The eave of a candidate as a finished sheet: section, notes, dimensions, scale, title. */
import type { System } from '../measures.ts';
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import { eaveEdge, type EaveEdge } from './edge.ts';
import type { EdgeView } from './edge-input.ts';
import { boxOf, point, type Box, type Point } from './geometry.ts';
import { fitsColumn, placeNotes, type Column, type Note, type PlacedNote } from './labels.ts';
import type { Theme } from './palette.ts';
import { scaleBar, scalesOf, paperPerMeter_mm, type Scale } from './scale.ts';
import { circle, group, line, pen, text, textBox, type Shape, type TextShape } from './shapes.ts';
import { fasciaWords, measureShapes, wordsHeight } from './sheet-measures.ts';
import {
  description,
  noteTexts,
  sheetLayers,
  wrapNote,
  type NoteText,
  type SheetLayer,
} from './sheet-notes.ts';
import { sectionShapes, toPaper, walkShapes, type Placement } from './sheet-section.ts';

export type WalkPath = 'air-barrier' | 'water' | 'drying';

export interface SheetOptions {
  readonly system: System;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly highlight?: readonly string[];
  readonly theme?: Theme;
  /** Marks in the drawing, words outside it: for narrow screens. */
  readonly isCompact?: boolean;
  /** Fixed scale, 1 to this many: for drawings side by side. */
  readonly denominator?: number;
  readonly walk?: WalkPath;
}

export interface Drawing {
  readonly width_mm: number;
  readonly height_mm: number;
  readonly title: string;
  readonly scaleText: string;
  readonly denominator: number;
  readonly theme: Theme;
  readonly isCompact: boolean;
  readonly shapes: readonly Shape[];
  readonly layers: readonly SheetLayer[];
  /** Every mark of the drawing with its words, for lists beside it. */
  readonly notes: readonly NoteText[];
  readonly description: readonly string[];
  readonly edge: EaveEdge;
}

interface Layout {
  readonly isCompact: boolean;
  readonly size_mm: number;
  readonly margin_mm: number;
  readonly left_mm: number;
  readonly right_mm: number;
  readonly dimension_mm: number;
  readonly zone: Box;
}

/** [mm] Font size whose capitals are 2.5 mm high (ISO 3098-1:2015 smallest height, known: memory; capitals 0.66 em). */
const TEXT_mm = 3.8;
const TITLE_mm = 5;
const STRIP_mm = 15;
const COMPACT_STRIP_mm = 9;
const BALLOON_mm = 5.6;
const NOTE_GAP_mm = 1.6;
const LINE_STEP = 1.14;

function layoutOf(options: SheetOptions, isCompact: boolean): Layout {
  const { width_mm, height_mm } = options;
  const margin_mm = isCompact ? 2 : 6;
  const left_mm = isCompact ? BALLOON_mm + 1 : Math.min(56, Math.max(38, width_mm * 0.18));
  const right_mm = isCompact ? BALLOON_mm + 1 : Math.min(70, Math.max(46, width_mm * 0.225));
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
    zone: {
      x,
      y: margin_mm + sky_mm,
      width: width_mm - x - margin_mm - right_mm - (isCompact ? 5 : 10),
      height: height_mm - 2 * margin_mm - sky_mm - strip_mm,
    },
  };
}

const edgePoints = (edge: EaveEdge): Point[] => [
  ...edge.parts.flatMap((part) => part.polygon),
  ...edge.breaks.flat(),
  ...edge.measures.flatMap((m) => (m.id === 'fascia' ? [m.from, m.to] : [])),
];

const LEAST_INSIDE_m = 0.28;
const WIDEST_INSIDE_m = 1.6;
const LEAST_WALL_m = 0.16;
const TALLEST_WALL_m = 0.6;
const SEARCH_STEPS = 7;

interface Fit {
  readonly edge: EaveEdge;
  readonly scale: Scale;
}

/** The largest standard scale at which the eave fits, then as much roof and wall as the sheet holds. */
function fitEdge(evaluation: Evaluation, candidate: Candidate, options: SheetOptions, zone: Box): Fit {
  const build = (view: EdgeView): EaveEdge => eaveEdge(evaluation, candidate, view);
  const scales = scalesOf(options.system);
  const fits = (edge: EaveEdge, scale: Scale): boolean => {
    const box = boxOf(edgePoints(edge));
    const per_m = paperPerMeter_mm(scale);
    return box.width * per_m <= zone.width && box.height * per_m <= zone.height;
  };
  const least: EdgeView = { inside_m: LEAST_INSIDE_m, wall_m: LEAST_WALL_m };
  const smallest = build(least);
  const fixed = scales.find((scale) => scale.denominator === options.denominator);
  const scale = fixed ?? scales.find((s) => fits(smallest, s)) ?? scales.at(-1);
  if (scale === undefined) throw new RangeError('no scale');
  let view = least;
  const widen = (key: keyof EdgeView, most: number): void => {
    let low = view[key];
    let high = most;
    for (let i = 0; i < SEARCH_STEPS; i += 1) {
      const middle_m = (low + high) / 2;
      if (fits(build({ ...view, [key]: middle_m }), scale)) low = middle_m;
      else high = middle_m;
    }
    view = { ...view, [key]: low };
  };
  widen('inside_m', WIDEST_INSIDE_m);
  widen('wall_m', TALLEST_WALL_m);
  return { edge: build(view), scale };
}

interface NoteSet {
  readonly placed: readonly PlacedNote[];
  readonly words: ReadonlyMap<string, { lines: readonly string[]; nameLines: number }>;
}

/** Notes of all columns, or null when a column is too short for its words. */
function placeAll(
  edge: EaveEdge,
  notes: readonly NoteText[],
  placement: Placement,
  layout: Layout,
  options: SheetOptions,
  edgeWords: number,
  hasDetail: boolean,
): NoteSet | null {
  const { margin_mm, left_mm, right_mm, size_mm, isCompact } = layout;
  const words = new Map<string, { lines: readonly string[]; nameLines: number }>();
  const bottom = options.height_mm - margin_mm - (isCompact ? COMPACT_STRIP_mm : STRIP_mm);
  const fascia = edge.measures.find((m) => m.id === 'fascia');
  const high = fascia === undefined ? 0 : toPaper(placement, fascia.to).y;
  const low = fascia === undefined ? 0 : toPaper(placement, fascia.from).y;
  const mid = (high + low) / 2;
  const half = wordsHeight(edgeWords, size_mm) / 2 + 1.5;
  const split = { top: Math.min(high, mid - half) - 1, bottom: Math.max(low, mid + half) + 1 };
  const column = (side: 'left' | 'right', top: number, end: number): Column => ({
    side,
    x: side === 'left' ? margin_mm + left_mm : options.width_mm - margin_mm - right_mm,
    width_mm: side === 'left' ? left_mm : right_mm,
    top,
    bottom: end,
    gap_mm: isCompact ? 0.8 : NOTE_GAP_mm,
  });
  const columns = {
    stack: column('right', margin_mm, bottom),
    'edge-above': column('left', margin_mm, split.top),
    'edge-below': column('left', split.bottom, bottom),
  } as const;
  const placed: PlacedNote[] = [];
  for (const side of ['stack', 'edge-above', 'edge-below'] as const) {
    const target = columns[side];
    const list = edge.anchors.flatMap((anchor): Note[] => {
      if (anchor.side !== side) return [];
      const note = notes.find((n) => n.id === anchor.id);
      if (note === undefined) return [];
      const wrapped = isCompact
        ? { lines: [note.mark], nameLines: 1 }
        : wrapNote(note, target.width_mm - 1.5, size_mm, hasDetail);
      words.set(note.id, wrapped);
      const height_mm = isCompact ? BALLOON_mm : wrapped.lines.length * size_mm * LINE_STEP;
      return [
        { id: note.id, layerId: note.layerId, mark: note.mark, at: toPaper(placement, anchor.at), height_mm },
      ];
    });
    if (!fitsColumn(list, target)) return null;
    const result = placeNotes(list, target);
    if (result === null) return null;
    placed.push(...result);
  }
  return { placed, words };
}

function noteShapes(
  set: NoteSet,
  layout: Layout,
  highlight: readonly string[],
): { shapes: Shape[]; texts: TextShape[] } {
  const shapes: Shape[] = [];
  const texts: TextShape[] = [];
  const { size_mm, isCompact } = layout;
  for (const { note, box, port } of set.placed) {
    const isLeft = box.x < note.at.x;
    const isLit = note.layerId !== null && highlight.includes(note.layerId);
    const ink = isLit ? 'highlight' : 'dimension';
    const inner: Shape[] = [];
    const knee = point(port.x + (isLeft ? 0.8 : -0.8), port.y);
    inner.push(line(note.at, knee, pen(0.25, ink)), circle(note.at, 0.5, null, 'solid'));
    if (isCompact) {
      const center = point(isLeft ? port.x - BALLOON_mm / 2 : port.x + BALLOON_mm / 2, port.y);
      const mark = text(point(center.x, center.y + size_mm * 0.33), note.mark, {
        size_mm,
        anchor: 'middle',
        weight: 'bold',
      });
      texts.push(mark);
      inner.push(circle(center, BALLOON_mm / 2, pen(0.35, isLit ? 'highlight' : 'line'), 'paper'), mark);
    } else {
      const words = set.words.get(note.id) ?? { lines: [], nameLines: 0 };
      words.lines.forEach((words_i, i) => {
        const at = point(isLeft ? port.x - 1 : port.x + 1, box.y + size_mm * (0.86 + i * LINE_STEP));
        const shape = text(at, words_i, {
          size_mm,
          anchor: isLeft ? 'end' : 'start',
          ink: isLit ? 'highlight' : i < words.nameLines ? 'text' : 'softText',
        });
        texts.push(shape);
        inner.push(shape);
      });
    }
    shapes.push(group('note', `note-${note.id}`, inner, { layerId: note.layerId, isHighlighted: isLit }));
  }
  return { shapes, texts };
}

function titleStrip(edge: EaveEdge, scale: Scale, options: SheetOptions, layout: Layout): Shape[] {
  const { margin_mm, size_mm, isCompact } = layout;
  const y = options.height_mm - margin_mm;
  const right = point(options.width_mm - margin_mm, y - 2.4);
  if (isCompact) {
    return [
      text(point(margin_mm, y - 1), scale.words, { size_mm }),
      ...scaleBar(right, options.width_mm * 0.4, scale, options.system, size_mm),
    ];
  }
  return [
    line(point(margin_mm, y - STRIP_mm + 3), point(options.width_mm - margin_mm, y - STRIP_mm + 3), pen(0.5)),
    text(point(margin_mm, y - 5.4), `Eave: ${edge.strategyName}`, { size_mm: TITLE_mm, weight: 'bold' }),
    text(
      point(margin_mm, y - 0.8),
      `${scale.words}    ${edge.sectionNote}. Not for construction: structure by an engineer.`,
      {
        size_mm,
        ink: 'softText',
      },
    ),
    ...scaleBar(right, 60, scale, options.system, size_mm),
  ];
}

/**
 * Draws the eave of a candidate to a standard scale.
 *
 * @param evaluation  the evaluation the candidate belongs to
 * @param candidate   what to draw
 * @param options     sheet size in millimeters, unit system, highlighted layers, theme
 * @returns           shapes in millimeters of paper with the list of layers and the drawing in words
 */
export function eaveSheet(evaluation: Evaluation, candidate: Candidate, options: SheetOptions): Drawing {
  const highlight = options.highlight ?? [];
  const attempt = (isCompact: boolean, hasDetail: boolean): Drawing | null => {
    const layout = layoutOf(options, isCompact);
    if (layout.zone.width < 30 || layout.zone.height < 30) return null;
    const { edge, scale } = fitEdge(evaluation, candidate, options, layout.zone);
    const per_m = paperPerMeter_mm(scale);
    const box = boxOf(edgePoints(edge));
    const spareX = (layout.zone.width - box.width * per_m) / 2;
    const spareY = (layout.zone.height - box.height * per_m) / 2;
    const placement: Placement = {
      per_m,
      origin: point(
        layout.zone.x + spareX - box.x * per_m,
        layout.zone.y + spareY + (box.y + box.height) * per_m,
      ),
    };
    const notes = noteTexts(edge, candidate, options.system);
    const fascia = edge.measures.find((m) => m.id === 'fascia');
    const edgeWords = fascia === undefined ? 0 : fasciaWords(fascia, options.system, isCompact).length;
    const set = placeAll(edge, notes, placement, layout, options, edgeWords, hasDetail);
    if (set === null) return null;
    const labels = noteShapes(set, layout, highlight);
    const faceX = toPaper(placement, point(box.x, 0)).x;
    const sheet: Box = {
      x: layout.margin_mm,
      y: layout.margin_mm,
      width: options.width_mm - 2 * layout.margin_mm,
      height: options.height_mm - 2 * layout.margin_mm,
    };
    const dims = measureShapes(
      {
        edge,
        placement,
        system: options.system,
        size_mm: layout.size_mm,
        isCompact,
        sheet,
        edgeLine_x: faceX - layout.dimension_mm * 0.55,
      },
      labels.texts.map(textBox),
    );
    const walks = { 'air-barrier': edge.airWalk, water: edge.waterWalk, drying: edge.dryingWalk };
    return {
      width_mm: options.width_mm,
      height_mm: options.height_mm,
      title: `Eave section, ${edge.strategyName}, ${scale.words}`,
      scaleText: scale.words,
      denominator: scale.denominator,
      theme: options.theme ?? 'light',
      isCompact,
      shapes: [
        ...sectionShapes(edge, placement, highlight),
        group('notes', 'notes', labels.shapes),
        group('dimensions', 'dimensions', dims.shapes),
        ...(options.walk === undefined ? [] : [walkShapes(walks[options.walk], placement, layout.size_mm)]),
        group('title', 'title', titleStrip(edge, scale, options, layout)),
      ],
      layers: sheetLayers(candidate),
      notes,
      description: description(edge, candidate, options.system),
      edge,
    };
  };
  const drawing =
    (options.isCompact === true ? null : (attempt(false, true) ?? attempt(false, false))) ??
    attempt(true, false);
  if (drawing === null)
    throw new RangeError(
      `sheet of ${String(options.width_mm)} by ${String(options.height_mm)} mm is too small for the eave`,
    );
  return drawing;
}

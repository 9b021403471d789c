/** A detail of a candidate as a finished sheet: section, notes, dimensions, scale, title. */
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import { detailNames, type Detail, type DetailModel } from './edge-model.ts';
import type { Box } from './geometry.ts';
import {
  fitsZone,
  fittings,
  layoutOf,
  leastDetail,
  scalesFor,
  type Columns,
  type Fit,
  type Layout,
  type Least,
  type SheetSize,
} from './layout.ts';
import type { Theme } from './palette.ts';
import type { Scale } from './scale.ts';
import type { Picture } from './picture.ts';
import { sequenceOf, stageAt } from './sequence.ts';
import type { Note } from './labels.ts';
import { group } from './shapes.ts';
import { lettered, noteShapes, partings, placeAll, type NoteSet, type NoteWish } from './sheet-labels.ts';
import { fasciaWords, measureShapes } from './sheet-measures.ts';
import { description, noteTexts, sheetLayers, type NoteText, type SheetLayer } from './sheet-notes.ts';
import { signShapes } from './sheet-signs.ts';
import { stripHeight_mm, titleStrip } from './sheet-title.ts';
import { Taken } from './taken.ts';
import { beforeShapes, sectionShapes, walkShapes, type Placement } from './sheet-section.ts';
import { notesAt, showingOf, stageWords } from './sheet-stage.ts';

export type WalkPath = 'air-barrier' | 'water' | 'drying';

export interface SheetOptions extends SheetSize {
  readonly highlight?: readonly string[];
  readonly theme?: Theme;
  /** Marks in the drawing, words outside it: for narrow screens. */
  readonly isCompact?: boolean;
  /** Path to draw over the section with its joints numbered. */
  readonly walk?: WalkPath;
  /** Draw the roof that stands today over it, in outline: before and after a re-roof. */
  readonly before?: boolean;
  /** Id of a step of the work, or `standing`: the roof as it is when that step is done. */
  readonly stage?: string;
}

export interface Drawing extends Picture {
  readonly detail: Detail;
  readonly scaleText: string;
  readonly denominator: number;
  readonly isCompact: boolean;
  readonly layers: readonly SheetLayer[];
  /** Every mark of the drawing with its words, for lists beside it. */
  readonly notes: readonly NoteText[];
  /** The drawing in words, an ordered list: layers inside to outside, measures, air barrier. */
  readonly description: readonly string[];
  readonly edge: DetailModel;
  /** From the building to the sheet, for files in true size. */
  readonly placement: Placement;
}

/** [-] How many standard scales smaller is still better than notes out of their order. */
const SCALES_GIVEN = 2;

interface Plan {
  readonly fit: Fit;
  readonly layout: Layout;
  readonly set: NoteSet;
  readonly notes: readonly NoteText[];
}

/** Notes for one way to place the section, or null. */
function noted(
  fit: Fit,
  layout: Layout,
  candidate: Candidate,
  options: SheetOptions,
  wish: NoteWish,
): Plan | null {
  const notes = noteTexts(fit.edge, candidate, options.system);
  const beside = fit.edge.measures.find((m) => m.way === 'edge');
  const edgeWords = beside === undefined ? 0 : fasciaWords(beside, options.system, layout.isCompact).length;
  const first = placeAll(fit.edge, notes, fit.placement, layout, options, edgeWords, wish);
  if (first === null) return null;
  const marked = lettered(notes, first);
  const set = placeAll(fit.edge, marked, fit.placement, layout, options, edgeWords, wish);
  return set === null ? null : { fit, layout, set, notes: marked };
}

/** Keeps what a generator gave, so that it can be walked again without building anew. */
function remembered<T>(source: Iterator<T>): () => Generator<T> {
  const known: T[] = [];
  return function* again() {
    for (let i = 0; ; i += 1) {
      if (i === known.length) {
        const next = source.next();
        if (next.done === true) return;
        known.push(next.value);
      }
      const value = known[i];
      if (value !== undefined) yield value;
    }
  };
}

interface Ways {
  readonly scale: Scale;
  readonly layout: Layout;
  readonly fits: () => Generator<Fit>;
}

/** Scales, largest first, with the columns that leave the detail enough room at each. */
function waysOf(least: Least, options: SheetOptions, columns: readonly Columns[]): Ways[] {
  const layouts = columns.map((name) =>
    layoutOf(options, least.edge.kind, name, (width_mm, isCompact) =>
      stripHeight_mm(least.edge, width_mm, isCompact),
    ),
  );
  return scalesFor(options).flatMap((scale) =>
    layouts
      .filter((layout) => fitsZone(least, scale, layout.zone))
      .map((layout) => ({ scale, layout, fits: remembered(fittings(least, scale, layout.zone)) })),
  );
}

/**
 * The best way to fit section and notes on the sheet: notes in their order first, then the larger scale,
 * then the wider columns.
 */
function plan(
  least: Least,
  candidate: Candidate,
  options: SheetOptions,
  columns: readonly Columns[],
): Plan | null {
  const ways = waysOf(least, options, columns);
  const scales = [...new Set(ways.map((way) => way.scale))];
  for (const parting of partings) {
    const allowed = parting === 'by-meaning' ? scales.slice(0, SCALES_GIVEN + 1) : scales;
    for (const { scale, layout, fits } of ways) {
      if (!allowed.includes(scale)) continue;
      for (const fit of fits())
        for (const wallSide of ['left', 'right'] as const) {
          const found = noted(fit, layout, candidate, options, { parting, wallSide });
          if (found !== null) return found;
        }
    }
  }
  return null;
}

/**
 * Draws a detail of a candidate to a standard scale.
 *
 * @param evaluation  the evaluation the candidate belongs to, its case with every answer filled in
 * @param candidate   what to draw
 * @param detail      which place of the roof; see `whyNoDetail` for roofs that lack it
 * @param options     sheet size in millimeters, unit system, highlighted layers, theme
 * @returns           shapes in millimeters of paper with the list of layers and the drawing in words
 * @throws            RangeError when the detail does not fit the sheet at any scale, or the roof has no such place
 */
export function detailSheet(
  evaluation: Evaluation,
  candidate: Candidate,
  detail: Detail,
  options: SheetOptions,
): Drawing {
  const least = leastDetail(evaluation, candidate, detail);
  const wide = options.isCompact === true ? null : plan(least, candidate, options, ['roomy', 'narrow']);
  const found = wide ?? plan(least, candidate, options, ['marks']);
  if (found === null) {
    const size = `${String(options.width_mm)} by ${String(options.height_mm)} mm`;
    throw new RangeError(`a sheet of ${size} is too small for the ${detail}`);
  }
  const { fit, layout, set, notes } = found;
  const { edge, scale, placement } = fit;
  const { margin_mm, isCompact } = layout;
  const sequence = sequenceOf(evaluation, candidate);
  const stage = options.stage === undefined ? null : stageAt(sequence, edge, options.stage);
  const showing = showingOf(stage, sequence, edge, options);
  const isNoteLit = (note: Note): boolean =>
    stage === null
      ? note.layerId !== null && (options.highlight ?? []).includes(note.layerId)
      : stage.ofNote(note) === 'new';
  const standing = notesAt(set, stage);
  const labels = noteShapes(standing, layout, isNoteLit);
  const sheet: Box = {
    x: margin_mm,
    y: margin_mm,
    width: options.width_mm - 2 * margin_mm,
    height: options.height_mm - 2 * margin_mm,
  };
  const context = {
    edge,
    placement,
    system: options.system,
    size_mm: layout.size_mm,
    isCompact,
    sheet,
    edgeLine_x: fit.left_mm - layout.edgeLine_mm,
  };
  const title = titleStrip({
    ...context,
    scale,
    margin_mm,
    width_mm: options.width_mm,
    height_mm: options.height_mm,
  });
  const taken = new Taken([...labels.shapes, ...title]);
  const dimensions = stage === null || stage.isWhole ? measureShapes(context, taken) : [];
  const pitch_rise_per_12 = evaluation.requirements.slope.pitch_rise_per_12;
  const signs = isCompact ? [] : signShapes({ ...context, pitch_rise_per_12 }, taken);
  const walks = { 'air-barrier': edge.airWalk, water: edge.waterWalk, drying: edge.dryingWalk };
  const staged = options.stage === undefined ? null : stageWords(sequence, edge, options.stage);
  return {
    detail,
    width_mm: options.width_mm,
    height_mm: options.height_mm,
    title: `${detailNames[detail]} section, ${edge.strategyName}, ${scale.words}${staged === null ? '' : `, ${staged.title}`}`,
    scaleText: scale.words,
    denominator: scale.denominator,
    theme: options.theme ?? 'light',
    isCompact,
    shapes: [
      ...sectionShapes(edge, placement, showing),
      group('notes', 'notes', labels.shapes),
      group('dimensions', 'dimensions', dimensions),
      group('signs', 'signs', signs),
      ...(options.before === true || stage?.isOldCovered === true ? beforeShapes(edge, placement) : []),
      ...(options.walk === undefined ? [] : [walkShapes(walks[options.walk], placement, layout.size_mm)]),
      group('title', 'title', title),
    ],
    layers: sheetLayers(candidate),
    notes:
      standing === set ? notes : notes.filter(({ id }) => standing.placed.some(({ note }) => note.id === id)),
    description: [...(staged?.added ?? []), ...description(edge, candidate, options.system)],
    edge,
    placement,
  };
}

/** The eave as a finished sheet. */
export const eaveSheet = (evaluation: Evaluation, candidate: Candidate, options: SheetOptions): Drawing =>
  detailSheet(evaluation, candidate, 'eave', options);

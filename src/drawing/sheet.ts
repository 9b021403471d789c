/** The eave of a candidate as a finished sheet: section, notes, dimensions, scale, title. */
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import type { EaveEdge } from './edge.ts';
import { point, type Box } from './geometry.ts';
import { fittings, layoutOf, leftEnd, type Fit, type Layout, type SheetSize } from './layout.ts';
import type { Theme } from './palette.ts';
import { scaleBar, type Scale } from './scale.ts';
import { group, line, pen, text, type Shape } from './shapes.ts';
import { lettered, noteShapes, partings, placeAll, type NoteSet, type NoteWish } from './sheet-labels.ts';
import { fasciaWords, measureShapes } from './sheet-measures.ts';
import { description, noteTexts, sheetLayers, type NoteText, type SheetLayer } from './sheet-notes.ts';
import { signShapes } from './sheet-signs.ts';
import { Taken } from './taken.ts';
import { sectionShapes, walkShapes } from './sheet-section.ts';

export type WalkPath = 'air-barrier' | 'water' | 'drying';

export interface SheetOptions extends SheetSize {
  readonly highlight?: readonly string[];
  readonly theme?: Theme;
  /** Marks in the drawing, words outside it: for narrow screens. */
  readonly isCompact?: boolean;
  /** Path to draw over the section with its joints numbered. */
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
  /** The drawing in words, an ordered list: layers inside to outside, measures, air barrier. */
  readonly description: readonly string[];
  readonly edge: EaveEdge;
}

const TITLE_mm = 5;

function titleStrip(edge: EaveEdge, scale: Scale, options: SheetOptions, layout: Layout): Shape[] {
  const { margin_mm, size_mm, isCompact, strip_mm } = layout;
  const y = options.height_mm - margin_mm;
  const right = point(options.width_mm - margin_mm, y - 2.4);
  if (isCompact) {
    return [
      text(point(margin_mm, y - 1), scale.words, { size_mm }),
      ...scaleBar(right, options.width_mm * 0.4, scale, options.system, size_mm),
    ];
  }
  return [
    line(point(margin_mm, y - strip_mm + 3), point(options.width_mm - margin_mm, y - strip_mm + 3), pen(0.5)),
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
  const fascia = fit.edge.measures.find((m) => m.id === 'fascia');
  const edgeWords = fascia === undefined ? 0 : fasciaWords(fascia, options.system, layout.isCompact).length;
  const first = placeAll(fit.edge, notes, fit.placement, layout, options, edgeWords, wish);
  if (first === null) return null;
  const marked = lettered(notes, first);
  const set = placeAll(fit.edge, marked, fit.placement, layout, options, edgeWords, wish);
  return set === null ? null : { fit, layout, set, notes: marked };
}

/** The best way to fit section and notes on the sheet: notes in their order first, then the larger scale. */
function plan(
  evaluation: Evaluation,
  candidate: Candidate,
  options: SheetOptions,
  isCompact: boolean,
): Plan | null {
  const layout = layoutOf(options, isCompact);
  const fits = [...fittings(evaluation, candidate, options, layout.zone)];
  const scales = [...new Set(fits.map((fit) => fit.scale))];
  for (const parting of partings) {
    const allowed = parting === 'by-meaning' ? scales.slice(0, SCALES_GIVEN + 1) : scales;
    for (const fit of fits.filter((f) => allowed.includes(f.scale)))
      for (const wallSide of ['left', 'right'] as const) {
        const found = noted(fit, layout, candidate, options, { parting, wallSide });
        if (found !== null) return found;
      }
  }
  return null;
}

/**
 * Draws the eave of a candidate to a standard scale.
 *
 * @param evaluation  the evaluation the candidate belongs to, its case with every answer filled in
 * @param candidate   what to draw
 * @param options     sheet size in millimeters, unit system, highlighted layers, theme
 * @returns           shapes in millimeters of paper with the list of layers and the drawing in words
 * @throws            RangeError when the eave does not fit the sheet at any scale
 */
export function eaveSheet(evaluation: Evaluation, candidate: Candidate, options: SheetOptions): Drawing {
  const wide = options.isCompact === true ? null : plan(evaluation, candidate, options, false);
  const found = wide ?? plan(evaluation, candidate, options, true);
  if (found === null) {
    const size = `${String(options.width_mm)} by ${String(options.height_mm)} mm`;
    throw new RangeError(`a sheet of ${size} is too small for the eave`);
  }
  const { fit, layout, set, notes } = found;
  const { edge, scale, placement } = fit;
  const { margin_mm, isCompact } = layout;
  const highlight = options.highlight ?? [];
  const labels = noteShapes(set, layout, highlight);
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
    edgeLine_x: leftEnd(fit) - layout.dimension_mm * 0.55,
  };
  const taken = new Taken(labels.shapes);
  const dimensions = measureShapes(context, taken);
  const pitch_rise_per_12 = evaluation.requirements.slope.pitch_rise_per_12;
  const signs = isCompact ? [] : signShapes({ ...context, pitch_rise_per_12 }, taken);
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
      group('dimensions', 'dimensions', dimensions),
      group('signs', 'signs', signs),
      ...(options.walk === undefined ? [] : [walkShapes(walks[options.walk], placement, layout.size_mm)]),
      group('title', 'title', titleStrip(edge, scale, options, layout)),
    ],
    layers: sheetLayers(candidate),
    notes,
    description: description(edge, candidate, options.system),
    edge,
  };
}

/** Drawings of a candidate as blocks of the tree. */
import type { Candidate } from '../../evaluation/evaluation.ts';
import { boxOf, point, type Point } from '../../drawing/geometry.ts';
import { leaves, shapeBox, type Shape } from '../../drawing/shapes.ts';
import { detailsOf } from '../../drawing/details.ts';
import { detailNames, type Detail } from '../../drawing/edge-model.ts';
import { detailSheet, type Drawing } from '../../drawing/sheet.ts';
import type { DrawingBlock } from '../document.ts';
import { strategyNames } from '../names.ts';
import type { Context } from './context.ts';

/** [mm] Width that both Letter and A4 pages hold unscaled within their margins, so that the stated scale stays true. */
const SHEET_WIDTH_mm = 171;
/** [mm] Height of a sheet with its words, and of one with marks only, two of which fill a page. */
const SHEET_HEIGHT_mm = 165;
const COMPACT_HEIGHT_mm = 116;
/** [mm] Taller sheets for edges with more notes than usual; the last still fits a page. */
const TALLER_mm = [15, 30, 50, 70] as const;
/** [mm] Height of the picture on the summary page. */
const PICTURE_HEIGHT_mm = 56;
/** [mm] Air around the picture. */
const PICTURE_MARGIN_mm = 2;
/** [pt] one millimeter: 72 pt to the inch of 25.4 mm, exact. */
const POINTS_PER_MM = 72 / 25.4;

/** The lowest sheet that holds the detail with all its notes; undefined when none does, or the roof has no such place. */
function sheetOf(
  context: Context,
  candidate: Candidate,
  detail: Detail,
  isCompact: boolean,
): Drawing | undefined {
  if (!detailsOf(context.evaluation).includes(detail)) return undefined;
  const least = isCompact ? COMPACT_HEIGHT_mm : SHEET_HEIGHT_mm;
  for (const more of [0, ...TALLER_mm]) {
    try {
      return detailSheet(context.evaluation, candidate, detail, {
        system: context.system,
        width_mm: SHEET_WIDTH_mm,
        height_mm: least + more,
        theme: 'print',
        isCompact,
      });
    } catch (error) {
      // A sheet that is too low says so by RangeError: a taller one is tried.
      if (!(error instanceof RangeError)) throw error;
    }
  }
  return undefined;
}

/** Notes in the order of their marks: numbers, then letters. */
function marksText(shapes: Drawing): string {
  if (!shapes.isCompact) return '';
  const place = (mark: string): number => (/^\d+$/.test(mark) ? Number(mark) : 100 + mark.charCodeAt(0));
  const notes = [...shapes.notes].sort((a, b) => place(a.mark) - place(b.mark));
  return ` ${notes.map((note) => `${note.mark} ${note.name}`).join('; ')}.`;
}

/** The sheet of a detail, to its stated scale; a compact one has marks whose words stand in the caption. */
export function detailBlocks(
  context: Context,
  candidate: Candidate,
  detail: Detail,
  id: string,
  isCompact = false,
): DrawingBlock[] {
  const shapes = sheetOf(context, candidate, detail, isCompact);
  if (shapes === undefined) return [];
  return [
    {
      kind: 'drawing',
      id,
      drawing: detail,
      candidate: candidate.id,
      shapes,
      caption: `${detailNames[detail]} of ${strategyNames[candidate.strategy]}, ${shapes.scaleText} when printed at full size. Not for construction.${marksText(shapes)}`,
      height_pt: shapes.height_mm * POINTS_PER_MM,
    },
  ];
}

function shifted(shape: Shape, by: Point): Shape {
  const move = (from: Point): Point => point(from.x + by.x, from.y + by.y);
  switch (shape.kind) {
    case 'line':
      return { ...shape, from: move(shape.from), to: move(shape.to) };
    case 'polyline':
    case 'polygon':
      return { ...shape, points: shape.points.map(move) };
    case 'circle':
      return { ...shape, center: move(shape.center) };
    case 'text':
      return { ...shape, at: move(shape.at) };
    case 'group':
      return { ...shape, shapes: shape.shapes.map((inner) => shifted(inner, by)) };
  }
}

const withoutWords = (shapes: readonly Shape[]): Shape[] =>
  shapes.flatMap((shape): Shape[] => {
    if (shape.kind === 'text') return [];
    return shape.kind === 'group' ? [{ ...shape, shapes: withoutWords(shape.shapes) }] : [shape];
  });

/** Groups of a sheet that are words around the section, not the section itself. */
const aroundTheSection = new Set(['notes', 'dimensions', 'title']);

/** The bare section without words, small enough for the summary page; its sizes stand in the edge chapter. */
export function pictureBlocks(context: Context, candidate: Candidate, id: string): DrawingBlock[] {
  const sheet = sheetOf(context, candidate, 'eave', false);
  if (sheet === undefined) return [];
  const section = withoutWords(
    sheet.shapes.filter((shape) => shape.kind !== 'group' || !aroundTheSection.has(shape.id)),
  );
  const corners = [...leaves(section)].flatMap((leaf) => {
    const box = shapeBox(leaf);
    return [point(box.x, box.y), point(box.x + box.width, box.y + box.height)];
  });
  const box = boxOf(corners);
  const by = point(PICTURE_MARGIN_mm - box.x, PICTURE_MARGIN_mm - box.y);
  return [
    {
      kind: 'drawing',
      id,
      drawing: 'eave',
      candidate: candidate.id,
      shapes: {
        ...sheet,
        title: `Picture of the eave, ${strategyNames[candidate.strategy]}`,
        width_mm: box.width + 2 * PICTURE_MARGIN_mm,
        height_mm: box.height + 2 * PICTURE_MARGIN_mm,
        shapes: section.map((shape) => shifted(shape, by)),
      },
      caption:
        'The eave at a glance. The drawing to scale, with layers and sizes, is in the chapter on the edge.',
      height_pt: PICTURE_HEIGHT_mm * POINTS_PER_MM,
    },
  ];
}

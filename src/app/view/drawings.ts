/** Sheets for the screen: a roomy one, and a compact one with marks for narrow places. */
import { MediaQuery } from 'svelte/reactivity';
import type { Detail } from '../../drawing/edge-model.ts';
import { detailSheet, type Drawing, type SheetOptions } from '../../drawing/sheet.ts';
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { DrawingBlock } from '../../report/document.ts';
import type { System } from '../../measures.ts';

/** [mm] Sheet sizes at which the drawing's smallest text stays readable at the width the page gives it. */
const roomy = { width_mm: 280, height_mm: 165 } as const;
const compact = { width_mm: 130, height_mm: 118, isCompact: true } as const;

/** What a reader may have drawn over the section. */
export type Overlay = Pick<SheetOptions, 'walk' | 'before' | 'denominator' | 'stage'>;

export function detailDrawing(
  evaluation: Evaluation,
  candidate: Candidate,
  detail: Detail,
  system: System,
  isCompact: boolean,
  overlay: Overlay = {},
): Drawing {
  return detailSheet(evaluation, candidate, detail, {
    system,
    ...(isCompact ? compact : roomy),
    ...overlay,
  });
}

export const eaveDrawing = (
  evaluation: Evaluation,
  candidate: Candidate,
  system: System,
  isCompact: boolean,
): Drawing => detailDrawing(evaluation, candidate, 'eave', system, isCompact);

/** Compact drawings of several candidates at the largest scale at which all of them fit. */
export function sideBySide(
  evaluation: Evaluation,
  candidates: readonly Candidate[],
  detail: Detail,
  system: System,
): Drawing[] {
  const each = candidates.map((one) => detailDrawing(evaluation, one, detail, system, true));
  const denominator = Math.max(...each.map((drawing) => drawing.denominator));
  return each.map((drawing, i) => {
    const candidate = candidates[i];
    if (candidate === undefined || drawing.denominator === denominator) return drawing;
    return detailDrawing(evaluation, candidate, detail, system, true, { denominator });
  });
}

/** Whether the roomy sheet's words would be too small to read here. */
export const narrowScreen = (): MediaQuery => new MediaQuery('width < 52rem');

/** Where the wide plots' words would be too small, and the narrow ones take their place. */
export const narrowPlot = (): MediaQuery => new MediaQuery('width < 40rem');

/** The drawing of a record's block, at the size of the page: the record's own sheet is made for print. */
export function pageDrawing(
  block: DrawingBlock,
  evaluation: Evaluation | null,
  system: System,
  isCompact: boolean,
): Drawing {
  const candidate = evaluation?.candidates.find(({ id }) => id === block.candidate);
  if (!evaluation || !candidate) return block.shapes;
  return detailDrawing(evaluation, candidate, block.drawing, system, isCompact);
}

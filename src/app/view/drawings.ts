/** Sheets for the screen: a roomy one, and a compact one with marks for narrow places. */
import { MediaQuery } from 'svelte/reactivity';
import { eaveSheet, type Drawing } from '../../drawing/sheet.ts';
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { DrawingBlock } from '../../report/document.ts';
import type { System } from '../../measures.ts';

/** [mm] Sheet sizes at which the drawing's smallest text stays readable at the width the page gives it. */
const roomy = { width_mm: 280, height_mm: 165 } as const;
const compact = { width_mm: 130, height_mm: 118, isCompact: true } as const;

export function eaveDrawing(
  evaluation: Evaluation,
  candidate: Candidate,
  system: System,
  isCompact: boolean,
): Drawing {
  return eaveSheet(evaluation, candidate, { system, ...(isCompact ? compact : roomy) });
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
  if (block.drawing !== 'eave' || !evaluation || !candidate) return block.shapes;
  return eaveDrawing(evaluation, candidate, system, isCompact);
}

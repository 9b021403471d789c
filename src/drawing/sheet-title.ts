/** The strip at the foot of a sheet: name, scale bar, scale, what the cut shows. */
import type { System } from '../measures.ts';
import { detailNames, type DetailModel } from './edge-model.ts';
import { point } from './geometry.ts';
import { TEXT_mm } from './layout.ts';
import { scaleBar, type Scale } from './scale.ts';
import { line, pen, text, type Shape } from './shapes.ts';
import { textWidth_mm, wrapText } from './text-metrics.ts';

export interface TitleContext {
  readonly edge: DetailModel;
  readonly scale: Scale;
  readonly system: System;
  readonly isCompact: boolean;
  readonly size_mm: number;
  readonly margin_mm: number;
  readonly width_mm: number;
  readonly height_mm: number;
}

const TITLE_mm = 5;
/** [mm] From the last line's baseline up: descenders below, the title above, the rule above that. */
const FOOT_mm = 0.8;
const TITLE_RISE_mm = 5.2;
const RULE_RISE_mm = 8.2;
const LINE_STEP = 1.14;
/** [mm] Longest scale bar of a wide sheet, and its distance from the title. */
const LONGEST_BAR_mm = 60;
const BAR_GAP_mm = 8;
/** [mm] Air above the rule. */
const ABOVE_RULE_mm = 3;
const COMPACT_STRIP_mm = 9;
const COMPACT_BAR_SHARE = 0.4;
/** Room for the longest wording of a scale, so that the lines do not depend on it. */
const LONGEST_SCALE = `1 1/2" = 1'-0"`;

const about = (edge: DetailModel): string =>
  `${edge.sectionNote}. Not for construction: structure by an engineer.`;

/** The words under the title, broken to the sheet's width. */
const aboutLines = (edge: DetailModel, scaleWords: string, width_mm: number): string[] =>
  wrapText(`${scaleWords}. ${about(edge)}`, width_mm, TEXT_mm);

/** [mm] Height that the strip of an edge takes on a sheet. */
export function stripHeight_mm(edge: DetailModel, width_mm: number, isCompact: boolean): number {
  if (isCompact) return COMPACT_STRIP_mm;
  const count = aboutLines(edge, LONGEST_SCALE, width_mm).length;
  return FOOT_mm + (count - 1) * TEXT_mm * LINE_STEP + TITLE_RISE_mm + RULE_RISE_mm + ABOVE_RULE_mm;
}

export function titleStrip(context: TitleContext): Shape[] {
  const { edge, scale, system, isCompact, size_mm, margin_mm } = context;
  const right_x = context.width_mm - margin_mm;
  const foot_y = context.height_mm - margin_mm;
  const width_mm = right_x - margin_mm;
  if (isCompact) {
    return [
      text(point(margin_mm, foot_y - 1), scale.words, { size_mm }),
      ...scaleBar(point(right_x, foot_y - 2.4), context.width_mm * COMPACT_BAR_SHARE, scale, system, size_mm),
    ];
  }
  const words = aboutLines(edge, scale.words, width_mm);
  const step_mm = size_mm * LINE_STEP;
  const first_y = foot_y - FOOT_mm - (words.length - 1) * step_mm;
  const title_y = first_y - TITLE_RISE_mm;
  const rule_y = title_y - RULE_RISE_mm;
  const title = `${detailNames[edge.kind]}: ${edge.strategyName}`;
  const free_mm = width_mm - textWidth_mm(title, TITLE_mm, 'bold') - BAR_GAP_mm;
  return [
    line(point(margin_mm, rule_y), point(right_x, rule_y), pen(0.5)),
    text(point(margin_mm, title_y), title, { size_mm: TITLE_mm, weight: 'bold' }),
    ...words.map((each, i) =>
      text(point(margin_mm, first_y + i * step_mm), each, { size_mm, ink: 'softText' }),
    ),
    ...scaleBar(point(right_x, title_y - 1.6), Math.min(LONGEST_BAR_mm, free_mm), scale, system, size_mm),
  ];
}

/** `overdeck evaluate --plot`: one plot of the recommended build-up as SVG, or its numbers as CSV. */
import Papa from 'papaparse';
import { toSvg } from '../drawing/svg.ts';
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import type { System } from '../measures.ts';
import { headOf, type Plot, type PlotCell, type PlotName } from '../plot/plot.ts';
import { plotOf } from '../plot/plots.ts';
import { badInput } from './badInput.ts';

export const plotFormats = ['svg', 'csv'] as const;
export type PlotFormat = (typeof plotFormats)[number];

/** A plain minus and no commas, so that a spreadsheet reads a figure as one; a dash is an empty cell. */
const figure = ({ text, value }: PlotCell): string =>
  value === null ? text.replace(/^–$/, '') : text.replace('−', '-').replaceAll(',', '');

/** The table behind a plot; units stand in the heads. */
const csvOf = ({ table }: Plot): string =>
  `${Papa.unparse({
    fields: table.columns.map(headOf),
    data: table.rows.map((row) => row.map(figure)),
  })}\r\n`;

/** @throws BadInput when this roof has nothing to plot under the name */
export function plotText(
  evaluation: Evaluation,
  candidate: Candidate,
  name: PlotName,
  format: PlotFormat,
  system: System,
): string {
  const plot = plotOf(name, evaluation, candidate, { system, size: 'wide', theme: 'print' });
  if (plot === null) throw badInput('--plot', `"${name}": this roof has nothing of the kind`);
  if (format === 'csv' && plot.table.rows.length > 0) return csvOf(plot);
  if (plot.picture === null) throw badInput('--plot', `"${name}": ${plot.sentence}`);
  return `${toSvg(plot.picture)}\n`;
}

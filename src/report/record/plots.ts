/** Plots of a candidate as blocks of the tree. */
import type { Candidate } from '../../evaluation/evaluation.ts';
import { plotOf } from '../../plot/plots.ts';
import type { PlotName, PlotTable } from '../../plot/plot.ts';
import type { Block, Table } from '../document.ts';
import { cell, paragraph } from '../document.ts';
import type { Context } from './context.ts';

/** Share of a table's width for its first column, against each column of figures. */
const FIRST_WIDTH = 1.6;
/** Words of a heading column need more room than months. */
const LONG_WORD = 12;
const WORDS_WIDTH = 3.2;

/** A figure and its unit stay on one line. */
const NO_BREAK = '\u00A0';

/** The table behind a plot; each figure carries its unit. */
export function plotTable(table: PlotTable, id: string): Table {
  const isLong = table.rows.some(([first]) => (first?.text.length ?? 0) > LONG_WORD);
  return {
    kind: 'table',
    id,
    caption: table.caption,
    columns: table.columns.map((column, place) => ({
      id: column.id,
      title: column.title,
      align: column.align,
      width: place > 0 ? 1 : isLong ? WORDS_WIDTH : FIRST_WIDTH,
    })),
    rows: table.rows.map((row) =>
      row.map(({ text, value }, place) => {
        const unit = table.columns[place]?.unit ?? '';
        return cell(value === null || unit === '' ? text : `${text}${NO_BREAK}${unit}`);
      }),
    ),
    dense: true,
  };
}

/** A plot with its table; where there is nothing to draw, the sentence that says so; nothing where it does not apply. */
export function plotBlocks(context: Context, candidate: Candidate, name: PlotName): Block[] {
  const { evaluation, system } = context;
  const wide = plotOf(name, evaluation, candidate, { system, size: 'wide', theme: 'print' });
  if (wide === null) return [];
  const narrow = plotOf(name, evaluation, candidate, { system, size: 'narrow', theme: 'print' });
  if (wide.picture === null || narrow === null || narrow.picture === null) return [paragraph(wide.sentence)];
  return [
    {
      kind: 'plot',
      id: `plot-${name}`,
      plot: name,
      candidate: candidate.id,
      picture: wide.picture,
      narrow: narrow.picture,
      caption: wide.sentence,
      table: plotTable(wide.table, `plot-${name}-table`),
    },
  ];
}

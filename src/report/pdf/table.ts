/** A table as rows that may fall on several pages, its head drawn again on each. */
import type { Cell, Table } from '../document.ts';
import { verdictMarks } from '../document.ts';
import type { Atom } from './flow.ts';
import type { Line, TextStyle } from './lines.ts';
import { drawLine, linesOf } from './lines.ts';
import type { Pen } from './pen.ts';

const text: TextStyle = { size: 8.5, leading: 11.5 };
const headText: TextStyle = { size: 8.5, leading: 11.5, face: 'bold' };
const captionText: TextStyle = { size: 9.5, leading: 13, face: 'bold' };
const noteText: TextStyle = { size: 8, leading: 10.5, face: 'italic', ink: 'soft' };
/** The same for tables that are printed smaller. */
const denseText: TextStyle = { size: 7.2, leading: 8.6 };
const denseHead: TextStyle = { size: 7.2, leading: 8.6, face: 'bold' };
const denseCaption: TextStyle = { size: 8.2, leading: 9.6, face: 'bold' };
const denseNote: TextStyle = { size: 6.8, leading: 8, face: 'italic', ink: 'soft' };
const GUTTER = 8;
const ROW_PADDING = 3;
const DENSE_PADDING = 0.9;
/** Space above a caption. */
const CAPTION_BEFORE = 8;
const DENSE_BEFORE = 4;
/** No row piece is taller than this, so that any text fits on a page. */
const LINES_PER_PIECE = 40;
/** Rows held together with the caption and the head. */
const LEAD_ROWS = 2;

interface Place {
  readonly x: number;
  readonly width: number;
  readonly align: 'left' | 'right';
}

function places(table: Table, x: number, width: number): Place[] {
  const all = table.columns.reduce((sum, column) => sum + column.width, 0);
  const free = width - GUTTER * (table.columns.length - 1);
  let at = x;
  return table.columns.map((column) => {
    const size = (free * column.width) / all;
    const place = { x: at, width: size, align: column.align };
    at += size + GUTTER;
    return place;
  });
}

function cellLines(pen: Pen, cell: Cell, width: number, style: TextStyle): Line[] {
  const verdict =
    cell.verdict === undefined
      ? []
      : [{ text: ` ${verdictMarks[cell.verdict].shape} ${verdictMarks[cell.verdict].word}` }];
  return linesOf(pen, [...cell.text, ...verdict], width, style);
}

function rowAtoms(
  columns: readonly Place[],
  lines: readonly (readonly Line[])[],
  style: TextStyle,
  rule: (spot: { pen: Pen }, y: number) => void,
  padding: number,
): Atom[] {
  const tallest = Math.max(1, ...lines.map((cell) => cell.length));
  const atoms: Atom[] = [];
  for (let from = 0; from < tallest; from += LINES_PER_PIECE) {
    const to = Math.min(tallest, from + LINES_PER_PIECE);
    const height = (to - from) * style.leading + padding * 2;
    atoms.push({
      height,
      before: 0,
      draw: ({ pen, link }, top) => {
        columns.forEach((place, index) => {
          (lines[index] ?? []).slice(from, to).forEach((line, row) => {
            const y = top + padding + row * style.leading;
            const edge = place.align === 'right' ? place.x + place.width : undefined;
            drawLine(pen, line, place.x, y, style, link, edge);
          });
        });
        if (to === tallest) rule({ pen }, top + height);
      },
    });
  }
  return atoms;
}

/** Caption, head, rows and note as atoms of the flow. */
export function tableAtoms(pen: Pen, table: Table, x: number, width: number): Atom[] {
  const columns = places(table, x, width);
  const isDense = table.dense === true;
  const [rowStyle, headStyle, captionStyle, noteStyle] = isDense
    ? [denseText, denseHead, denseCaption, denseNote]
    : [text, headText, captionText, noteText];
  const padding = isDense ? DENSE_PADDING : ROW_PADDING;
  const ruled =
    (weight: number, ink: 'ink' | 'line') =>
    ({ pen: on }: { pen: Pen }, y: number): void =>
      on.line(x, y, x + width, y, weight, ink);
  const caption: Atom[] = linesOf(pen, [{ text: table.caption }], width, captionStyle).map((line, index) => ({
    height: captionStyle.leading,
    before: index > 0 ? 0 : isDense ? DENSE_BEFORE : CAPTION_BEFORE,
    keep: true,
    anchors: index === 0 ? [table.id] : [],
    draw: ({ pen: on, link }, top) => drawLine(on, line, x, top, captionStyle, link),
  }));
  const headLines = table.columns.map((column, index) =>
    linesOf(pen, [{ text: column.title }], columns[index]?.width ?? width, headStyle),
  );
  const head = rowAtoms(columns, headLines, headStyle, ruled(1, 'ink'), padding).map((atom) => ({
    ...atom,
    keep: true,
  }));
  const repeat = head[0];
  const rows = table.rows.flatMap((cells, index) => {
    const strong = table.strongRows?.includes(index) ?? false;
    const lines = cells.map((cell, place) =>
      cellLines(pen, cell, columns[place]?.width ?? width, strong ? headStyle : rowStyle),
    );
    const hold = index < LEAD_ROWS - 1 || index === table.rows.length - 2;
    return rowAtoms(columns, lines, rowStyle, ruled(0.4, 'line'), padding).map((atom) => ({
      ...atom,
      ...(repeat === undefined ? {} : { repeat }),
      ...(hold && table.rows.length > 1 ? { keep: true } : {}),
    }));
  });
  const note: Atom[] =
    table.note === undefined
      ? []
      : linesOf(pen, [{ text: table.note }], width, noteStyle).map((line, index) => ({
          height: noteStyle.leading,
          before: index === 0 ? 3 : 0,
          draw: ({ pen: on, link }, top) => drawLine(on, line, x, top, noteStyle, link),
        }));
  return [...caption, ...head, ...rows, ...note];
}

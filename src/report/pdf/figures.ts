/** Figures with their limits, and short lists side by side. */
import type { Inline, KeyFigure, KeyFigures, Sides } from '../document.ts';
import { citationText, verdictMarks } from '../document.ts';
import type { Atom } from './flow.ts';
import type { Line, TextStyle } from './lines.ts';
import { drawLine, linesOf } from './lines.ts';
import type { Pen } from './pen.ts';
import { bodyText, INDENT, PARAGRAPH_GAP, sideText, textAtoms } from './text.ts';

const figureLabel: TextStyle = { size: 8.5, leading: 11 };
const figureValue: TextStyle = { size: 15, leading: 20, face: 'serif' };
const LEAST_FIGURE = 8;

/** The large figure, smaller when its unit is long. */
function fittedTo(pen: Pen, text: string, width: number): TextStyle {
  const face = figureValue.face ?? 'sans';
  const share = width / Math.max(width, pen.widthOf(text, face, figureValue.size));
  const size = Math.max(LEAST_FIGURE, Math.floor(figureValue.size * share * 10) / 10);
  return { ...figureValue, size };
}

function figureParts(
  pen: Pen,
  figure: KeyFigure,
  width: number,
): readonly { line: Line; style: TextStyle; before: number }[] {
  const mark = verdictMarks[figure.verdict];
  const groups: readonly (readonly [Inline, TextStyle, number])[] = [
    [[{ text: figure.label }], figureLabel, 0],
    [[{ text: figure.value }], fittedTo(pen, figure.value, width), 1],
    [[{ text: `${mark.shape} ${mark.word}`, strong: true }, { text: `: ${figure.limit}` }], figureLabel, 2],
    [[{ text: figure.margin }], figureLabel, 1],
    [
      [
        {
          text: `${citationText(figure.source)} (${figure.source.known})`,
          href: `#source-${figure.source.source}`,
        },
      ],
      { size: 7.5, leading: 9.5 },
      2,
    ],
  ];
  return groups.flatMap(([text, style, before]) =>
    linesOf(pen, text, width, style).map((line, index) => ({
      line,
      style,
      before: index === 0 ? before : 0,
    })),
  );
}

export function figureAtoms(pen: Pen, block: KeyFigures, x: number, width: number): Atom[] {
  const gap = 8;
  const pad = 6;
  const columns = Math.min(4, block.items.length);
  const size = (width - gap * (columns - 1)) / columns;
  const rows: (readonly KeyFigure[])[] = [];
  for (let at = 0; at < block.items.length; at += columns) rows.push(block.items.slice(at, at + columns));
  return rows.map((row) => {
    const parts = row.map((figure) => figureParts(pen, figure, size - pad * 2));
    const tall = Math.max(
      ...parts.map((part) => part.reduce((sum, one) => sum + one.style.leading + one.before, 0)),
    );
    const height = tall + pad * 2;
    return {
      height,
      before: 8,
      draw: ({ pen: on, link }, top) => {
        parts.forEach((part, index) => {
          const left = x + index * (size + gap);
          on.box(left, top, size, height, null, 'line', 0.6);
          on.line(left, top, left + size, top, 1.6);
          let y = top + pad;
          for (const one of part) {
            y += one.before;
            drawLine(on, one.line, left + pad, y, one.style, link);
            y += one.style.leading;
          }
        });
      },
    };
  });
}

/** Lists side by side in one piece: they are short. */
export function sidesAtoms(pen: Pen, block: Sides, x: number, width: number): Atom[] {
  const gap = 18;
  const size = (width - gap * (block.sides.length - 1)) / block.sides.length;
  const columns = block.sides.map((side, index) => {
    const left = x + index * (size + gap);
    return [
      ...textAtoms(pen, [{ text: side.title, strong: true }], left, size, bodyText, { before: 0 }),
      ...side.items.flatMap((item, place) =>
        textAtoms(pen, item, left, size, sideText, { before: 2, indent: INDENT, label: `${place + 1}.` }),
      ),
    ];
  });
  const heights = columns.map((atoms) => atoms.reduce((sum, atom) => sum + atom.height + atom.before, 0));
  return [
    {
      height: Math.max(...heights),
      before: PARAGRAPH_GAP,
      draw: (spot, top) => {
        for (const atoms of columns) {
          let y = top;
          for (const atom of atoms) {
            y += atom.before;
            atom.draw(spot, y);
            y += atom.height;
          }
        }
      },
    },
  ];
}

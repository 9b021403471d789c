/** Every kind of block as atoms of the flow. */
import type { Block, Callout, Card, PlotBlock } from '../document.ts';
import { calloutMarks } from '../document.ts';
import { drawingAtoms, pictureAtoms } from './drawing.ts';
import { figureAtoms, sidesAtoms } from './figures.ts';
import type { Atom } from './flow.ts';
import type { Ink, Pen } from './pen.ts';
import { stepsAtoms, workingAtoms } from './steps.ts';
import { tableAtoms } from './table.ts';
import { bodyText, framed, INDENT, leadText, smallText, textAtoms } from './text.ts';

const CARD_PADDING = 8;

function calloutAtoms(pen: Pen, callout: Callout, x: number, width: number): Atom[] {
  const mark = calloutMarks[callout.level];
  const bar: Readonly<Record<Callout['level'], readonly [number, Ink]>> = {
    stop: [6, 'warn'],
    strong: [5, 'ink'],
    engineer: [3, 'ink'],
    caution: [2, 'ink'],
    note: [1, 'ink'],
  };
  const [thickness, ink] = bar[callout.level];
  const left = x + 14;
  const inner = width - 24;
  const parts: Atom[] = [
    ...textAtoms(
      pen,
      [{ text: `${mark.shape} ${mark.word}: ` }, { text: callout.title, strong: true }],
      left,
      inner,
      bodyText,
      { before: 0 },
    ),
    ...callout.body.flatMap((part) => blockAtoms(pen, part, left, inner)),
    ...(callout.deferTo === undefined
      ? []
      : textAtoms(pen, [{ text: `To settle: ${callout.deferTo}.`, emphasis: true }], left, inner, bodyText, {
          before: 3,
        })),
  ];
  return framed(
    parts,
    (on, top, height) => {
      on.box(x, top, width, height, 'panel', null);
      const dash = callout.level === 'engineer' ? [5, 3] : [];
      on.line(x + thickness / 2, top, x + thickness / 2, top + height, thickness, ink, dash);
    },
    5,
    8,
    [callout.id],
  );
}

function cardAtoms(pen: Pen, card: Card, x: number, width: number): Atom[] {
  const left = x + CARD_PADDING + 2;
  const inner = width - CARD_PADDING * 2 - 4;
  const parts: Atom[] = [
    ...textAtoms(pen, [{ text: card.title, strong: true }], left, inner, leadText, { before: 0 }),
    ...card.facts.flatMap((fact, index) =>
      textAtoms(
        pen,
        [{ text: `${fact.label}: ` }, { text: fact.value, strong: true }],
        left,
        inner,
        smallText,
        {
          before: index === 0 ? 4 : 0,
        },
      ),
    ),
    ...card.questions.flatMap((question, index) =>
      textAtoms(pen, question, left, inner, bodyText, { before: 5, indent: INDENT, label: `${index + 1}.` }),
    ),
  ];
  return framed(
    parts,
    (on, top, height, first, last) => {
      const right = x + width;
      const dash = [4, 3];
      on.line(x, top, x, top + height, 0.8, 'ink', dash);
      on.line(right, top, right, top + height, 0.8, 'ink', dash);
      if (first) on.line(x, top, right, top, 0.8, 'ink', dash);
      if (last) on.line(x, top + height, right, top + height, 0.8, 'ink', dash);
    },
    CARD_PADDING,
    12,
    [card.id],
  );
}

/** A plot at its own size, its caption, and its numbers in small print. */
const plotAtoms = (pen: Pen, block: PlotBlock, x: number, width: number): Atom[] => [
  ...pictureAtoms(pen, block, x, width),
  ...tableAtoms(pen, block.table, x, width),
];

/** The atoms of one block within a column of the page. */
export function blockAtoms(pen: Pen, block: Block, x: number, width: number): Atom[] {
  switch (block.kind) {
    case 'paragraph': {
      const style = block.tone === 'lead' ? leadText : block.tone === 'small' ? smallText : bodyText;
      return textAtoms(pen, block.text, x, width, style);
    }
    case 'list':
      return block.items.flatMap((item, index) =>
        textAtoms(pen, item, x, width, bodyText, {
          before: 3,
          indent: INDENT,
          label: block.ordered ? `${index + 1}.` : '–',
        }),
      );
    case 'sides':
      return sidesAtoms(pen, block, x, width);
    case 'keyFigures':
      return figureAtoms(pen, block, x, width);
    case 'table':
      return tableAtoms(pen, block, x, width);
    case 'drawing':
      return drawingAtoms(pen, block, x, width);
    case 'plot':
      return plotAtoms(pen, block, x, width);
    case 'callout':
      return calloutAtoms(pen, block, x, width);
    case 'steps':
      return stepsAtoms(pen, block, x, width);
    case 'cards':
      return block.items.flatMap((card) => cardAtoms(pen, card, x, width));
    case 'workings':
      return block.items.flatMap((item) => workingAtoms(pen, item, x, width));
    case 'sourceList':
      return block.items.flatMap((item) => {
        const clauses = item.clauses.length === 0 ? '' : ` Used here: ${item.clauses.join('; ')}.`;
        const atoms = textAtoms(
          pen,
          [{ text: `${item.id} `, strong: true }, { text: `${item.text}. Known: ${item.known}.${clauses}` }],
          x,
          width,
          { size: 9, leading: 12 },
          { before: 4 },
        );
        return atoms.map((atom, index) => (index === 0 ? { ...atom, anchors: [`source-${item.id}`] } : atom));
      });
  }
}

/** Every kind of block as atoms of the flow. */
import type {
  Block,
  Callout,
  Card,
  Inline,
  KeyFigure,
  KeyFigures,
  Sides,
  Step,
  Steps,
  WorkedNumber,
} from '../document.ts';
import { calloutMarks, citationText, verdictMarks } from '../document.ts';
import { drawingAtoms } from './drawing.ts';
import type { Atom } from './flow.ts';
import type { Line, TextStyle } from './lines.ts';
import { drawLine, linesOf } from './lines.ts';
import type { Ink, Pen } from './pen.ts';
import { tableAtoms } from './table.ts';

export const bodyText: TextStyle = { size: 10, leading: 14 };
const leadText: TextStyle = { size: 11.5, leading: 16 };
const smallText: TextStyle = { size: 8.5, leading: 11.5, ink: 'soft' };
const sideText: TextStyle = { size: 9.5, leading: 12.5 };
const figureLabel: TextStyle = { size: 8.5, leading: 11 };
const figureValue: TextStyle = { size: 15, leading: 20, face: 'serif' };
const formulaText: TextStyle = { size: 11, leading: 15, face: 'serif' };

const LEAST_FIGURE = 8;
const PARAGRAPH_GAP = 6;
const INDENT = 16;
const CARD_PADDING = 8;
/** Boxes up to this height are kept on one page. */
const KEPT_HEIGHT = 420;

interface TextOptions {
  readonly before?: number;
  readonly indent?: number;
  readonly label?: string;
}

/** Lines of a text; the first two and the last two stay together. */
function textAtoms(
  pen: Pen,
  text: Inline,
  x: number,
  width: number,
  style: TextStyle,
  options: TextOptions = {},
): Atom[] {
  const indent = options.indent ?? 0;
  const lines = linesOf(pen, text, width - indent, style);
  return lines.map((line, index) => ({
    height: style.leading,
    before: index === 0 ? (options.before ?? PARAGRAPH_GAP) : 0,
    ...((index === 0 && lines.length > 1) || index === lines.length - 2 ? { keep: true } : {}),
    draw: ({ pen: on, link }, top) => {
      if (index === 0 && options.label !== undefined) {
        drawLine(on, plainLine(on, options.label, style), x, top, style, link);
      }
      drawLine(on, line, x + indent, top, style, link);
    },
  }));
}

function plainLine(pen: Pen, text: string, style: TextStyle): Line {
  const face = style.face ?? 'sans';
  return {
    pieces: [{ text, face, ink: style.ink ?? 'ink', width: pen.widthOf(text, face, style.size) }],
    width: 0,
  };
}

/** A frame drawn piece by piece, so that a long box may cross pages. */
function framed(
  atoms: readonly Atom[],
  frame: (pen: Pen, top: number, height: number, first: boolean, last: boolean) => void,
  padding: number,
  before: number,
  anchors: readonly string[],
): Atom[] {
  const whole = atoms.reduce((sum, atom) => sum + atom.height + atom.before, padding * 2);
  const isKept = whole <= KEPT_HEIGHT;
  return atoms.map((atom, index) => {
    const first = index === 0;
    const last = index === atoms.length - 1;
    const lead = first ? padding : atom.before;
    const height = atom.height + lead + (last ? padding : 0);
    const keep = last ? false : isKept || (atom.keep ?? false) || first;
    return {
      height,
      before: first ? before : 0,
      ...(keep ? { keep: true } : {}),
      anchors: first ? anchors : [],
      draw: (spot, top) => {
        frame(spot.pen, top, height, first, last);
        atom.draw(spot, top + lead);
      },
    };
  });
}

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

function figureAtoms(pen: Pen, block: KeyFigures, x: number, width: number): Atom[] {
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
function sidesAtoms(pen: Pen, block: Sides, x: number, width: number): Atom[] {
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

function stepAtoms(pen: Pen, step: Step, x: number, width: number): Atom[] {
  const left = x + INDENT + 4;
  const inner = width - INDENT - 4;
  const own: Atom[] = [
    ...textAtoms(
      pen,
      [
        { text: step.title, strong: true },
        { text: `  ${step.who}`, emphasis: true },
      ],
      x,
      width,
      bodyText,
      {
        before: 8,
        indent: INDENT + 4,
        label: `${step.number}.`,
      },
    ).map((atom) => ({ ...atom, keep: true })),
    ...textAtoms(pen, [{ text: step.text }], left, inner, bodyText, { before: 1 }),
    ...(step.weather === undefined
      ? []
      : textAtoms(pen, [{ text: `Weather: ${step.weather}`, emphasis: true }], left, inner, bodyText, {
          before: 1,
        })),
  ];
  if (step.hold === undefined) return own;
  const hold = step.hold;
  const parts: Atom[] = [
    ...textAtoms(
      pen,
      [{ text: `■ Hold point ${hold.id}: ${hold.title}`, strong: true }],
      left + 8,
      inner - 16,
      bodyText,
      { before: 0 },
    ),
    ...textAtoms(pen, [{ text: `Pass: ${hold.pass}` }], left + 8, inner - 16, bodyText, { before: 1 }),
    ...textAtoms(
      pen,
      [{ text: `Who looks: ${hold.who}. Evidence: ${hold.evidence}.` }],
      left + 8,
      inner - 16,
      bodyText,
      { before: 1 },
    ),
    {
      height: 20,
      before: 2,
      draw: ({ pen: on }, top) => {
        const y = top + 15;
        on.text('Signed', left + 8, y, 'sans', 8.5, 'soft');
        on.line(left + 40, y + 2, left + 200, y + 2, 0.5);
        on.text('Date', left + 215, y, 'sans', 8.5, 'soft');
        on.line(left + 238, y + 2, left + 320, y + 2, 0.5);
      },
    },
  ];
  const box = framed(
    parts,
    (on, top, height, first, last) => {
      on.line(left, top, left, top + height, 1.2);
      on.line(left + inner, top, left + inner, top + height, 1.2);
      if (first) on.line(left, top, left + inner, top, 1.2);
      if (last) on.line(left, top + height, left + inner, top + height, 1.2);
    },
    5,
    5,
    [`hold-${hold.id}`],
  );
  return [...own.map((atom) => ({ ...atom, keep: true })), ...box];
}

const stepsAtoms = (pen: Pen, steps: Steps, x: number, width: number): Atom[] =>
  steps.items.flatMap((step) => stepAtoms(pen, step, x, width));

function workingAtoms(pen: Pen, item: WorkedNumber, x: number, width: number): Atom[] {
  const limit =
    item.limit === undefined
      ? []
      : textAtoms(
          pen,
          [
            {
              text: `${verdictMarks[item.limit.meets ? 'meets' : 'misses'].shape} ${verdictMarks[item.limit.meets ? 'meets' : 'misses'].word}: `,
              strong: true,
            },
            { text: `${item.limit.meaning} ${item.limit.value}` },
          ],
          x,
          width,
          bodyText,
          { before: 2 },
        );
  const title: Atom[] = textAtoms(pen, [{ text: item.title, strong: true }], x, width, leadText, {
    before: 14,
  }).map((atom, index) => ({ ...atom, keep: true, anchors: index === 0 ? [`working-${item.id}`] : [] }));
  const formula = textAtoms(pen, [{ text: item.formula }], x, width, formulaText, { before: 2 });
  const inputs = tableAtoms(
    pen,
    {
      kind: 'table',
      id: `inputs-${item.id}`,
      caption: `Inputs of ${item.title}`,
      columns: [
        { id: 'symbol', title: 'Symbol', align: 'left', width: 1 },
        { id: 'meaning', title: 'Meaning', align: 'left', width: 4 },
        { id: 'value', title: 'Value', align: 'right', width: 2 },
      ],
      rows: item.inputs.map((input) => [
        { text: [{ text: input.symbol }] },
        { text: [{ text: input.meaning }] },
        { text: [{ text: input.value }] },
      ]),
    },
    x,
    width,
  );
  return [
    ...title,
    ...formula.map((atom) => ({ ...atom, keep: true })),
    ...inputs,
    ...textAtoms(
      pen,
      [
        { text: `${item.result.symbol} = ` },
        { text: item.result.value, strong: true },
        { text: `  ${item.result.meaning}` },
      ],
      x,
      width,
      bodyText,
    ),
    ...limit,
    ...textAtoms(
      pen,
      [
        { text: 'Source: ' },
        { text: citationText(item.source), citation: item.source },
        { text: ` (${item.source.known})` },
      ],
      x,
      width,
      smallText,
      { before: 2 },
    ),
    ...(item.calculation === undefined
      ? []
      : textAtoms(pen, [{ text: item.calculation }], x, width, smallText, { before: 2 })),
    ...(item.note === undefined
      ? []
      : textAtoms(pen, [{ text: item.note, emphasis: true }], x, width, smallText, { before: 2 })),
  ];
}

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

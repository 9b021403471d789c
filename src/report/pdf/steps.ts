/** The construction sequence and worked numbers. */
import type { Step, Steps, WorkedNumber } from '../document.ts';
import { citationText, verdictMarks } from '../document.ts';
import type { Atom } from './flow.ts';
import type { Pen } from './pen.ts';
import { tableAtoms } from './table.ts';
import { bodyText, formulaText, framed, INDENT, leadText, smallText, textAtoms } from './text.ts';

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
    ...(step.covers === undefined
      ? []
      : textAtoms(pen, [{ text: `Covered for good: ${step.covers}` }], left, inner, bodyText, { before: 1 })),
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

export const stepsAtoms = (pen: Pen, steps: Steps, x: number, width: number): Atom[] =>
  steps.items.flatMap((step) => stepAtoms(pen, step, x, width));

export function workingAtoms(pen: Pen, item: WorkedNumber, x: number, width: number): Atom[] {
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
  const end: Atom[] = [
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
  // Result, limit and source stay with the inputs they come from.
  return [
    ...title,
    ...formula.map((atom) => ({ ...atom, keep: true })),
    ...inputs.map((atom, index) => (index === inputs.length - 1 ? { ...atom, keep: true } : atom)),
    ...end.map((atom, index) => (index < end.length - 1 ? { ...atom, keep: true } : atom)),
  ];
}

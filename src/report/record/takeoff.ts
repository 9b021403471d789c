/** The shopping list of the recommended build-up: quantities, money, hours by trade, carbon, weight. */
import { recordWords, shapeWords } from '../../catalog/record.ts';
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { TakeoffLine, TakeoffList } from '../../evaluation/takeoff.ts';
import type { Block, Cell, Column, Table } from '../document.ts';
import { cell, paragraph } from '../document.ts';
import { capital } from '../names.ts';
import { filled } from '../inline.ts';
import type { Context } from './context.ts';

/** [-] money is shown to ten dollars: the defaults are no better. */
const STEP = 10;

type Range = TakeoffLine['cost_USD'];

const column = (id: string, title: string, width: number, align: Column['align'] = 'right'): Column => ({
  id,
  title,
  align,
  width,
});

const money = ({ say }: Context, value: number): string => say('money', Math.round(value / STEP) * STEP);
const span = (context: Context, { low, high }: Range): string =>
  `${money(context, low)} to ${money(context, high)}`;

const rangeText = (context: Context, range: Range): string =>
  `${money(context, range.mid)} (${span(context, range)})`;

const pieces = ({ say }: Context, count: number): string =>
  `${say('count', count)} ${count === 1 ? 'piece' : 'pieces'}`;

function quantityText(context: Context, { unit, quantity, layout }: TakeoffLine): string {
  const { say } = context;
  if (unit === 'm²') {
    const area = say('area', quantity);
    return layout === undefined ? area : `${pieces(context, layout.count)}, ${area}`;
  }
  if (unit === 'm') return say('span', quantity);
  return unit === 'pieces' ? pieces(context, quantity) : 'once';
}

function nameText({ say }: Context, { what, thickness_m, length_m }: TakeoffLine): string {
  const thick = thickness_m === undefined ? '' : `, ${say('length', thickness_m)}`;
  const long = length_m === undefined ? '' : `, ${say('length', length_m)} long`;
  return `${capital(what)}${thick}${long}`;
}

function linesTable(context: Context, list: TakeoffList): Table {
  const { evaluation, say } = context;
  const { lengths, area_m2 } = evaluation.roofGeometry;
  const edges = lengths
    .filter(({ kind }) => kind !== 'opening' && kind !== 'cheek' && kind !== 'apron')
    .map(({ kind, length_m }) => `${say('span', length_m)} of ${kind === 'high-edge' ? 'high edge' : kind}`);
  const whole = list.material_USD;
  const rows = list.lines.map((line): Cell[] => [
    cell(nameText(context, line)),
    cell(quantityText(context, line)),
    cell(rangeText(context, line.cost_USD)),
  ]);
  return {
    kind: 'table',
    id: 'takeoff-table',
    caption: `Material for ${say('area', area_m2)} of roof: ${edges.join(', ')}`,
    columns: [
      column('what', 'Item', 3.6, 'left'),
      column('quantity', 'Quantity', 1.9),
      column('money', 'Default, low to high', 2.3),
    ],
    rows: [
      ...rows,
      [cell('Material together, likely range'), cell(''), cell(rangeText(context, whole.likely))],
    ],
    strongRows: [rows.length],
    note: recordWords.takeoff.prices,
  };
}

function layoutTable(context: Context, list: TakeoffList): Table {
  const { say } = context;
  const isPlain = context.role === 'builder';
  return {
    kind: 'table',
    id: 'layout-table',
    caption: 'Boards, panels and sheets as laid out',
    columns: [
      column('what', 'Layer', 3.4, 'left'),
      column('count', 'To buy', 1),
      ...(isPlain
        ? []
        : [
            column('whole', 'Laid whole', 1),
            column('cut', 'Cut pieces', 1),
            column('reused', 'From offcuts', 1.1),
          ]),
      column('waste', 'Waste', 0.9),
      column('mass', 'Weight', 1.1),
    ],
    rows: list.lines.flatMap((line): Cell[][] => {
      const { layout } = line;
      if (layout === undefined) return [];
      return [
        [
          cell(nameText(context, line)),
          cell(pieces(context, layout.count)),
          ...(isPlain
            ? []
            : [layout.whole, layout.cut, layout.reused].map((count) => cell(pieces(context, count)))),
          cell(say('share', Math.round(layout.waste_pct))),
          cell(line.mass_kg === undefined ? '–' : say('mass', line.mass_kg)),
        ],
      ];
    }),
    note: recordWords.takeoff.layout,
  };
}

function workTable(context: Context, list: TakeoffList): Table {
  const { say } = context;
  const hours = ({ low, mid, high }: Range): string =>
    `${say('hours', mid)} (${say('count', low)} to ${say('count', high)})`;
  const rows = list.hours.map((row): Cell[] => [
    cell(capital(row.what)),
    cell(capital(row.trade)),
    cell(hours(row.hours)),
  ]);
  return {
    kind: 'table',
    id: 'hours-table',
    caption: 'Hours by trade, with low and high',
    columns: [
      column('what', 'Work', 3.6, 'left'),
      column('trade', 'Trade', 1.4, 'left'),
      column('hours', 'Hours', 2),
    ],
    rows: [...rows, [cell('Hours together, likely range'), cell(''), cell(hours(list.labor_h.likely))]],
    strongRows: [rows.length],
  };
}

function totals(context: Context, best: Candidate, list: TakeoffList): Block[] {
  const { say } = context;
  const { whole_USD, carbon_kg, lift } = list;
  const heaviest = list.lines.find(({ id }) => id === lift.heaviest);
  const { takeoff } = best;
  return [
    paragraph(
      `Material and work together: ${money(context, whole_USD.likely.mid)}, likely ${span(context, whole_USD.likely)}, at the widest ${span(context, whole_USD.straight)}. ${recordWords.takeoff.likely} The figure that compares the ways counts boards, deck, membrane, screws, edges and their hours: ${say('costPerArea', takeoff.cost_USD_m2)} and ${say('hoursPerArea', takeoff.labor_h_m2)}, ${say('days', takeoff.daysOpen)} until watertight.`,
    ),
    paragraph(
      `Embodied carbon of the boards as bought: ${say('mass', carbon_kg.mid)} CO₂e, from ${say('mass', carbon_kg.low)} to ${say('mass', carbon_kg.high)}.`,
    ),
    ...(heaviest === undefined
      ? []
      : [
          paragraph(
            `To lift: ${say('mass', lift.total_kg)} of boards, panels and sheets, ${say('count', lift.loads)} ${lift.loads === 1 ? 'load' : 'loads'} of ${say('mass', lift.load_kg)}. The heaviest piece, ${heaviest.what}, weighs ${say('mass', lift.heaviest_kg)}: ${say('count', lift.people)} ${lift.people === 1 ? 'person' : 'people'} at no more than ${say('mass', lift.person_kg)} each, and a second pair of hands in wind.`,
          ),
        ]),
  ];
}

function assumptionBlocks(context: Context): Block[] {
  const { say, evaluation } = context;
  const items = evaluation.roofGeometry.assumptions.map(({ id, count, size }) => [
    {
      text: filled(shapeWords(id), {
        count: say('count', count),
        size: say('span', size),
        pitch: say('pitch', size),
      }),
    },
  ]);
  return items.length === 0 ? [] : [{ kind: 'list', ordered: false, items }];
}

/** The list with its totals; nothing where no list was made. */
export function takeoffBlocks(context: Context, best: Candidate): Block[] {
  const list = context.evaluation.takeoffs.find(({ candidate }) => candidate === best.id);
  if (list === undefined) return [];
  return [
    linesTable(context, list),
    ...assumptionBlocks(context),
    layoutTable(context, list),
    workTable(context, list),
    ...totals(context, best, list),
  ];
}

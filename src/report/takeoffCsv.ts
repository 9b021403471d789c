/** Shopping lists of the leading candidates as one table for a spreadsheet: quantities, hours, totals. */
import Papa from 'papaparse';
import type { Evaluation } from '../evaluation/evaluation.ts';
import type { TakeoffList } from '../evaluation/takeoff.ts';

type Cell = string | number | null;
type Line = Readonly<Record<string, Cell>>;

const columns = [
  'strategy',
  'candidate',
  'part',
  'id',
  'what',
  'quantity',
  'unit',
  'pieces',
  'cutPieces',
  'fromOffcuts',
  'thickness_m',
  'length_m',
  'covered_m2',
  'waste_pct',
  'mass_kg',
  'carbonLow_kg',
  'carbon_kg',
  'carbonHigh_kg',
  'costLow_USD',
  'cost_USD',
  'costHigh_USD',
  'hoursLow_h',
  'hours_h',
  'hoursHigh_h',
] as const;

function totalLines({ material_USD, labor_h, whole_USD, carbon_kg, lift }: TakeoffList): Line[] {
  const money = (id: string, what: string, { low, mid, high }: TakeoffList['carbon_kg']): Line => ({
    part: 'total',
    id,
    what,
    costLow_USD: low,
    cost_USD: mid,
    costHigh_USD: high,
  });
  return [
    money('material', 'material, root of the sum of squares', material_USD.likely),
    money('material-widest', 'material, all lows and all highs', material_USD.straight),
    {
      part: 'total',
      id: 'labor',
      what: 'hours, root of the sum of squares',
      hoursLow_h: labor_h.likely.low,
      hours_h: labor_h.likely.mid,
      hoursHigh_h: labor_h.likely.high,
    },
    money('whole', 'material and work, root of the sum of squares', whole_USD.likely),
    money('whole-widest', 'material and work, all lows and all highs', whole_USD.straight),
    {
      part: 'total',
      id: 'carbon',
      what: 'embodied carbon of boards as bought, A1-A3',
      carbonLow_kg: carbon_kg.low,
      carbon_kg: carbon_kg.mid,
      carbonHigh_kg: carbon_kg.high,
    },
    {
      part: 'total',
      id: 'lift',
      what: 'boards, panels and sheets to lift',
      quantity: lift.loads,
      unit: 'loads',
      mass_kg: lift.total_kg,
    },
  ];
}

function linesOf(list: TakeoffList, strategy: string): Line[] {
  const quantities = list.lines.map((line): Line => ({
    part: 'material',
    id: line.id,
    what: line.what,
    quantity: line.quantity,
    unit: line.unit,
    pieces: line.layout?.count ?? null,
    cutPieces: line.layout?.cut ?? null,
    fromOffcuts: line.layout?.reused ?? null,
    thickness_m: line.thickness_m ?? null,
    length_m: line.length_m ?? null,
    covered_m2: line.layout?.covered_m2 ?? null,
    waste_pct: line.layout?.waste_pct ?? null,
    mass_kg: line.mass_kg ?? null,
    carbonLow_kg: line.carbon_kg?.low ?? null,
    carbon_kg: line.carbon_kg?.mid ?? null,
    carbonHigh_kg: line.carbon_kg?.high ?? null,
    costLow_USD: line.cost_USD.low,
    cost_USD: line.cost_USD.mid,
    costHigh_USD: line.cost_USD.high,
  }));
  const hours = list.hours.map((row): Line => ({
    part: 'hours',
    id: row.task,
    what: `${row.what} (${row.trade})`,
    hoursLow_h: row.hours.low,
    hours_h: row.hours.mid,
    hoursHigh_h: row.hours.high,
  }));
  return [...quantities, ...hours, ...totalLines(list)].map((line) => ({
    strategy,
    candidate: list.candidate,
    ...line,
  }));
}

/** [-] decimals that a shopping list can use. */
const DECIMALS = 3;
const short = (value: Cell): Cell => (typeof value === 'number' ? Number(value.toFixed(DECIMALS)) : value);
const shortened = (line: Line): Line =>
  Object.fromEntries(Object.entries(line).map(([key, value]) => [key, short(value)]));

/** The lists of an evaluation, best strategy first; only the heading after a stop. SI, money in US dollars. */
export function takeoffCsv(evaluation: Evaluation): string {
  const lines = evaluation.takeoffs.flatMap((list) => {
    const found = evaluation.candidates.find(({ id }) => id === list.candidate);
    return linesOf(list, found?.strategy ?? '').map(shortened);
  });
  return `${Papa.unparse(lines, { columns: [...columns], newline: '\r\n' })}\r\n`;
}

/** Totals of a candidate's shopping list: money, hours by trade, carbon, and what must be lifted. */
import { cost } from '../catalog/costs.ts';
import { dimension } from '../catalog/dimensions.ts';
import type { CompleteCase } from '../case/complete.ts';
import type {
  RoofGeometry,
  TakeoffHours,
  TakeoffLine,
  TakeoffList,
  TakeoffTotal,
} from '../evaluation/takeoff.ts';
import { edgeKinds } from '../evaluation/takeoff.ts';
import { linesOf } from './takeoffLines.ts';
import { added, defaultRange, times, type ListInput, type Range } from './takeoffPrices.ts';
import { planesOf } from './takeoffLayout.ts';

/** Who does what where a crew is hired (common practice). */
const TRADES: Readonly<Record<string, string>> = {
  'lay-boards': 'roofer',
  'screws-and-deck': 'framer',
  'lay-panels': 'panel crew',
  'seal-tail-bay': 'framer',
  outrigger: 'framer',
  'cut-and-wrap': 'framer',
  'eave-trim': 'framer',
};

/**
 * Sum of parts with what it may be off.
 *
 * straight: lows and highs added. likely: mid − √Σ(mid − low)², mid + √Σ(high − mid)²
 *
 * @param parts  [any] ranges
 * @returns      [any] both totals around the same middle
 * @source       COMMON-PRACTICE root of the sum of squares (computed)
 * @assumes      parts are off independently of each other: a dear year moves them together, then the straight range holds
 */
export function totalOf(parts: readonly Range[]): TakeoffTotal {
  const straight = added(parts);
  const root = (pick: (part: Range) => number): number =>
    Math.sqrt(parts.reduce((sum, part) => sum + pick(part) ** 2, 0));
  return {
    straight,
    likely: {
      low: straight.mid - root(({ low, mid }) => mid - low),
      mid: straight.mid,
      high: straight.mid + root(({ mid, high }) => high - mid),
    },
  };
}

function hoursOf({ given, draft }: ListInput): TakeoffHours[] {
  const { parts, roofArea_m2 } = draft.candidate.takeoff;
  return parts
    .filter(({ what }) => what !== 'material')
    .map(({ price, amount_m2 }) => {
      const row = cost(price);
      return {
        task: price,
        what: row.kind === 'board' ? price : row.name,
        trade: given.work.crew === 'self-build' ? 'owner' : (TRADES[price] ?? 'roofer'),
        hours: times({ low: row.low / row.mid, mid: 1, high: row.high / row.mid }, amount_m2 * roofArea_m2),
      };
    });
}

/** [kg] one board, panel or sheet of a line. */
const pieceOf_kg = ({ mass_kg, layout }: TakeoffLine): number =>
  layout === undefined || layout.count === 0 ? 0 : (mass_kg ?? 0) / layout.count;

function liftOf(lines: readonly TakeoffLine[]): TakeoffList['lift'] {
  const laid = lines.filter(({ layout }) => layout !== undefined);
  const heaviest = laid.reduce<TakeoffLine | undefined>(
    (most, line) => (most === undefined || pieceOf_kg(line) > pieceOf_kg(most) ? line : most),
    undefined,
  );
  const heaviest_kg = heaviest === undefined ? 0 : pieceOf_kg(heaviest);
  const total_kg = laid.reduce((sum, { mass_kg }) => sum + (mass_kg ?? 0), 0);
  const person_kg = dimension('person-lift_kg');
  const load_kg = dimension('lift-load_kg');
  return {
    total_kg,
    heaviest: heaviest?.id ?? '',
    heaviest_kg,
    people: Math.ceil(heaviest_kg / person_kg),
    person_kg,
    loads: Math.ceil(total_kg / load_kg),
    load_kg,
    source: 'NIOSH-94-110',
    clause: 'load constant, 23 kg',
    known: 'memory',
  };
}

/**
 * Shopping list of a candidate with its totals.
 *
 * whole = material + hours × rate, each part with its own range
 *
 * @param input  [-] the complete case, a draft, the requirements
 * @returns      [USD, h, kg] lines, hours by trade, totals, lift
 * @source       OUR-JUDGEMENT invented defaults of costs.json and dimensions.json; EPD-RANGES carbon (memory)
 * @assumes      owners' own hours cost nothing; panels are weighed with core and top sheet, without glue
 */
export function takeoffListOf(input: ListInput): TakeoffList {
  const lines = linesOf(input);
  const hours = hoursOf(input);
  const isOwn = input.given.work.crew === 'self-build';
  const rate = isOwn ? { low: 0, mid: 0, high: 0 } : defaultRange('labor-rate_USD_h');
  const money = lines.map(({ cost_USD }) => cost_USD);
  const labor = totalOf(hours.map((row) => row.hours));
  // The rate is one number for all hours: one part, whose ends are both low or both high.
  const wages: Range = {
    low: labor.likely.low * rate.low,
    mid: labor.likely.mid * rate.mid,
    high: labor.likely.high * rate.high,
  };
  const whole = totalOf([...money, wages]);
  return {
    candidate: input.draft.candidate.id,
    lines,
    hours,
    laborRate_USD_h: rate,
    material_USD: totalOf(money),
    labor_h: labor,
    whole_USD: whole,
    carbon_kg: added(lines.flatMap(({ carbon_kg }) => carbon_kg ?? [])),
    lift: liftOf(lines),
  };
}

/**
 * The roof's planes and edges for the evaluation.
 *
 * @param given  [m] the complete case
 * @returns      [m, m², deg] planes, true lengths, what was assumed
 * @source       COMMON-PRACTICE plane geometry (computed)
 */
export function roofGeometryOf(given: CompleteCase): RoofGeometry {
  const { planes, area_m2, lengths_m, assumptions } = planesOf(given);
  return {
    area_m2,
    planes: planes.map(({ id, angle_deg, area_m2: own_m2 }) => ({ id, angle_deg, area_m2: own_m2 })),
    lengths: edgeKinds
      .filter((kind) => lengths_m[kind] > 0)
      .map((kind) => ({ kind, length_m: lengths_m[kind] })),
    assumptions: assumptions.map((row) => ({ ...row, known: 'our judgement' })),
  };
}

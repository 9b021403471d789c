/** The weighted totals of all feasible candidates as a function of what is uncertain: measures, prices, weights. */
import { boardCarbon, cost } from '../../catalog/costs.ts';
import { isBoard, type StrategyId } from '../../catalog/sets.ts';
import { uncertaintiesOf, type Finder, type Spread } from '../../catalog/uncertainties.ts';
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import { criterion, valueOfMeasure } from '../criteria.ts';
import { shaken, valueAtShare } from './spread.ts';

/** One uncertain number. */
export interface Draw {
  /** Row of uncertainties.json, or of costs.json, with the group that shares the draw. */
  readonly id: string;
  readonly name: string;
  readonly target: 'measure' | 'price' | 'weight';
  readonly finder: Finder;
  readonly spread: Spread;
}

export interface Model {
  readonly draws: readonly Draw[];
  readonly options: readonly { readonly id: string; readonly strategy: StrategyId }[];
  /** Totals of all options, 0 to 1, for shares of the draws (each 0 to 1). */
  readonly totals: (shares: Float64Array, into: Float64Array) => void;
}

type Group = 'all' | 'strategy' | 'carrier' | 'board' | 'ventilation';
const groupOf = (candidate: Candidate, by: Group): string => {
  if (by === 'all') return 'all';
  return by === 'ventilation' ? candidate.ventilation.kind : candidate[by];
};

/** A table's low, mid and high as a factor of its mid. */
const asFactor = ({ low, mid, high }: { low: number; mid: number; high: number }): Spread => ({
  shape: 'factor',
  distribution: 'triangular',
  low: low / mid,
  likely: 1,
  high: high / mid,
});

class Draws {
  readonly list: Draw[] = [];
  readonly #places = new Map<string, number>();
  /** The place of a draw, made when it is first asked for. */
  at(draw: Draw): number {
    const known = this.#places.get(draw.id);
    if (known !== undefined) return known;
    this.#places.set(draw.id, this.list.length);
    this.list.push(draw);
    return this.list.length - 1;
  }
}

interface Moved {
  readonly draw: number;
  readonly shape: Spread['shape'];
}
interface Amount {
  readonly amount: number;
  /** -1 where nothing is uncertain about it. */
  readonly draw: number;
}

interface Parts {
  readonly materials: readonly Amount[];
  readonly open: readonly Amount[];
  readonly edge: readonly Amount[];
  readonly carbon: readonly Amount[];
  readonly rate: number;
  readonly rateDraw: number;
}

const costIds = new Map<string, Spread | null>();
function tableSpread(price: string): Spread | null {
  const known = costIds.get(price);
  if (known !== undefined) return known;
  let found: Spread | null = null;
  try {
    const row = cost(price);
    found = row.low < row.high ? asFactor(row) : null;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
  costIds.set(price, found);
  return found;
}

function priceDraw(draws: Draws, price: string): number {
  const row = uncertaintiesOf('price').find((one) => one.price === price);
  if (row) return draws.at({ ...row, spread: row });
  const spread = tableSpread(price);
  if (spread === null) return -1;
  const named = cost(price);
  const name = 'name' in named && typeof named.name === 'string' ? named.name : price.replace(/-/g, ' ');
  return draws.at({
    id: `costs:${price}`,
    name: `Price of ${name}`,
    target: 'price',
    finder: 'quote',
    spread,
  });
}

function carbonDraw(draws: Draws, board: string): number {
  if (!isBoard(board)) return -1;
  const row = boardCarbon(board);
  if (!(row.low < row.high)) return -1;
  return draws.at({
    id: `carbon:${board}`,
    name: `Carbon of ${board} board`,
    target: 'price',
    finder: 'supplier',
    spread: asFactor(row),
  });
}

function partsOf(draws: Draws, candidate: Candidate): Parts {
  const { parts, laborRate_USD_h } = candidate.takeoff;
  const amounts = (what: (typeof parts)[number]['what']): Amount[] =>
    parts
      .filter((part) => part.what === what)
      .map(({ price, amount_m2 }) => ({ amount: amount_m2, draw: priceDraw(draws, price) }));
  return {
    materials: amounts('material'),
    open: amounts('open-hours'),
    edge: amounts('edge-hours'),
    carbon: candidate.layers
      .filter(({ role }) => role === 'insulation')
      .map(({ material, resistance_m2K_W }) => ({
        amount: material !== null && isBoard(material) ? boardCarbon(material).mid * resistance_m2K_W : 0,
        draw: carbonDraw(draws, material ?? ''),
      })),
    rate: laborRate_USD_h,
    rateDraw: laborRate_USD_h > 0 ? priceDraw(draws, 'labor-rate_USD_h') : -1,
  };
}

const summed = (amounts: readonly Amount[], values: Float64Array): number => {
  let sum = 0;
  for (let place = 0; place < amounts.length; place += 1) {
    const { amount, draw } = amounts[place] as Amount;
    sum += amount * (draw < 0 ? 1 : (values[draw] ?? 1));
  }
  return sum;
};
const plain = (amounts: readonly Amount[]): number => amounts.reduce((sum, { amount }) => sum + amount, 0);

interface Term {
  readonly anchors: Parameters<typeof valueOfMeasure>[1];
  readonly base: number;
  readonly moved: readonly Moved[];
  /** How prices and hours move the measure; null for the others. */
  readonly priced: ((values: Float64Array) => number) | null;
  /** Value where nothing moves it. */
  readonly fixed: number | null;
}

function pricedMeasure(id: string, base: number, parts: Parts): Term['priced'] {
  const hours = (values: Float64Array) => summed(parts.open, values) + summed(parts.edge, values);
  switch (id) {
    case 'cost':
      return (values) =>
        summed(parts.materials, values) +
        hours(values) * parts.rate * (parts.rateDraw < 0 ? 1 : (values[parts.rateDraw] ?? 1));
    case 'labor':
      return hours;
    case 'weatherExposure': {
      const usual = plain(parts.open);
      return usual > 0 ? (values) => (base * summed(parts.open, values)) / usual : null;
    }
    case 'carbon': {
      const usual = plain(parts.carbon);
      return usual > 0 ? (values) => (base * summed(parts.carbon, values)) / usual : null;
    }
    default:
      return null;
  }
}

/**
 * The model behind the chances: totals of the feasible candidates with uncertain measures, prices and weights.
 *
 * V_s = sum over criteria of w'_k v_k(x'_sk) / sum of w'_k
 *
 * @param evaluation  [-] with feasible candidates; what is not uncertain stays as computed
 * @returns           [-] draws, options in the order of the ranking, and their totals
 * @source            OUR-JUDGEMENT ranges of uncertainties.json; prices by costs.json (memory)
 * @assumes           draws are independent; candidates that share a carrier, board or strategy share its draw
 */
export function modelOf(evaluation: Evaluation): Model {
  const { ranking, candidates } = evaluation;
  const chosen = ranking.order.flatMap((id) => candidates.find((one) => one.id === id) ?? []);
  const own = evaluation.case.priorities ?? {};
  const draws = new Draws();
  const ids = Object.keys(ranking.weights);
  const weightDraws = ids.map((id) => {
    if (!((ranking.weights[id] ?? 0) > 0)) return -1;
    const of = own[id] === undefined ? 'usual' : 'own';
    const row = uncertaintiesOf('weight').find((one) => one.of === of);
    if (row === undefined) return -1;
    const name = `Weight of ${criterion(id).name.toLowerCase()}`;
    return draws.at({ id: `weight:${id}`, name, target: 'weight', finder: row.finder, spread: row });
  });
  const rows = uncertaintiesOf('measure');
  const terms: Term[][] = chosen.map((candidate) => {
    const parts = partsOf(draws, candidate);
    return ids.map((id) => {
      const { anchors } = criterion(id);
      const base = candidate.attributes.find((one) => one.criterion === id)?.measure ?? 0;
      const moved = rows
        .filter((row) => row.criterion === id)
        .map((row) => {
          const group = groupOf(candidate, row.by);
          const name = row.by === 'all' ? row.name : `${row.name} (${group.replace(/-/g, ' ')})`;
          const draw = draws.at({ ...row, id: `${row.id}:${group}`, name, spread: row });
          return { draw, shape: row.shape };
        });
      const priced = pricedMeasure(id, base, parts);
      const isFixed = moved.length === 0 && priced === null;
      return {
        anchors,
        base,
        moved,
        priced,
        fixed: isFixed ? valueOfMeasure(base, anchors) : null,
      };
    });
  });
  const weights = Float64Array.from(ids, (id) => ranking.weights[id] ?? 0);
  const values = new Float64Array(draws.list.length);
  const shares = new Float64Array(ids.length);
  const valueOf = ({ fixed, base, priced, moved, anchors }: Term): number => {
    if (fixed !== null) return fixed;
    let measure = priced === null ? base : priced(values);
    for (let place = 0; place < moved.length; place += 1) {
      const { draw, shape } = moved[place] as Moved;
      measure = shaken(shape, measure, values[draw] ?? 0);
    }
    return valueOfMeasure(measure, anchors);
  };
  return {
    draws: draws.list,
    options: chosen.map(({ id, strategy }) => ({ id, strategy })),
    totals: (drawn, into) => {
      draws.list.forEach(({ spread }, place) => {
        values[place] = valueAtShare(spread, drawn[place] ?? 0);
      });
      let sum = 0;
      for (let place = 0; place < ids.length; place += 1) {
        const draw = weightDraws[place] ?? -1;
        const weight = (weights[place] ?? 0) * (draw < 0 ? 1 : (values[draw] ?? 1));
        shares[place] = weight;
        sum += weight;
      }
      terms.forEach((list, option) => {
        let total = 0;
        for (let place = 0; place < list.length; place += 1) {
          const weight = shares[place] ?? 0;
          if (weight > 0) total += weight * valueOf(list[place] as Term);
        }
        into[option] = total / sum;
      });
    },
  };
}

/** Swing weights from plain trade-offs: which step from worst to best would you buy first, and what are the others worth beside it? */
import type { Weights } from './weighted.ts';

const HUNDRED = 100;

/**
 * Swing weights that sum to 1.
 *
 * w = points / Σ points, where the swing bought first has 100 points
 *
 * @param points  [-] points of each swing, 0 or more, at least one above 0
 * @returns       [-] the same criteria, sum 1
 * @throws        RangeError when a number is negative or not finite, or none is above 0
 * @source        DCLG-MCA-2009 section 6.2.10 swing weighting; GOODWIN-WRIGHT office location example (memory)
 */
export { normalized as normalizedSwings } from './weighted.ts';

/** One answer to "which would you improve first, from its worst to its best here?". */
export interface TradeOff {
  /** Criterion whose step is worth more. */
  readonly more: string;
  /** Criterion whose step is worth less, or as much. */
  readonly less: string;
  /** Worth of the lesser step beside the greater one, 0 to 100. */
  readonly percent: number;
}

export interface SwingWeights {
  /** 0 to 100 by criterion; the greatest is 100. */
  readonly weights: Weights;
  /** Criteria that no chain of answers ties to the others. */
  readonly loose: readonly string[];
  readonly consistency: Consistency;
}

export interface Consistency {
  /** Answers that cannot all be true: each with what the other answers imply for it. */
  readonly clashes: readonly Clash[];
  /** Typical factor between an answer and what the weights say, 1 where all agree; null with no spare answer. */
  readonly factor: number | null;
}

export interface Clash {
  readonly answer: TradeOff;
  /** Percent that the weights found from all answers say instead. */
  readonly implied: number;
}

/** [-] an answer of 0 % is taken as this: its logarithm must be finite (our judgement). */
const LEAST_PERCENT = 1;
/** [-] an answer that differs from the weights by more than this factor is shown as a clash (our judgement). */
const CLASH_FACTOR = 1.25;

interface Equation {
  readonly more: number;
  readonly less: number;
  readonly logRatio: number;
}

/** Logarithms of the weights that fit all answers best: relaxation, which ends for any connected set of answers. */
const ROUNDS = 2000;
const SMALL = 1e-12;

function fitted(count: number, equations: readonly Equation[]): Float64Array {
  const logs = new Float64Array(count);
  for (let round = 0; round < ROUNDS; round += 1) {
    let moved = 0;
    for (let place = 0; place < count; place += 1) {
      let sum = 0;
      let answers = 0;
      for (const { more, less, logRatio } of equations) {
        if (more === place) sum += (logs[less] ?? 0) - logRatio;
        else if (less === place) sum += (logs[more] ?? 0) + logRatio;
        else continue;
        answers += 1;
      }
      if (answers === 0) continue;
      const next = sum / answers;
      moved = Math.max(moved, Math.abs(next - (logs[place] ?? 0)));
      logs[place] = next;
    }
    if (moved < SMALL) break;
  }
  return logs;
}

/** Criteria that a chain of answers ties to the first one. */
function tied(from: number, equations: readonly Equation[]): Set<number> {
  const seen = new Set([from]);
  const waiting = [from];
  for (let here = waiting.pop(); here !== undefined; here = waiting.pop())
    for (const { more, less } of equations) {
      const next = more === here ? less : less === here ? more : here;
      if (!seen.has(next)) {
        seen.add(next);
        waiting.push(next);
      }
    }
  return seen;
}

/**
 * Weights from trade-offs, and how well the answers agree with each other.
 *
 * least squares of ln w_less - ln w_more - ln(percent / 100) over all answers; the greatest weight is 100
 *
 * @param criteria   [-] every criterion that takes a weight
 * @param tradeOffs  [-] answers; a chain or a star is enough, more show whether they agree
 * @returns          [-] 0 to 100 for the criteria tied to the one named most often; the rest are loose
 * @throws           RangeError when an answer names an unknown criterion, or itself, or a percent outside 0 to 100
 * @source           DCLG-MCA-2009 section 6.2.10 swing weighting (memory); OUR-JUDGEMENT logarithmic least squares
 */
export function weightsOfTradeOffs(
  criteria: readonly string[],
  tradeOffs: readonly TradeOff[],
): SwingWeights {
  const place = (id: string): number => {
    const found = criteria.indexOf(id);
    if (found < 0) throw new RangeError(`no criterion ${id}`);
    return found;
  };
  const equations = tradeOffs.map(({ more, less, percent }): Equation => {
    if (!(percent >= 0 && percent <= HUNDRED))
      throw new RangeError(`percent: ${percent} is not from 0 to 100`);
    if (more === less) throw new RangeError(`${more} is held against itself`);
    const logRatio = Math.log(Math.max(percent, LEAST_PERCENT) / HUNDRED);
    return { more: place(more), less: place(less), logRatio };
  });
  const named = equations.flatMap(({ more, less }) => [more, less]);
  const times = (one: number): number => named.filter((each) => each === one).length;
  const start = [...new Set(named)].sort((a, b) => times(b) - times(a) || a - b)[0];
  if (start === undefined)
    return { weights: {}, loose: [...criteria], consistency: { clashes: [], factor: null } };
  const within = tied(start, equations);
  const used = equations.filter(({ more }) => within.has(more));
  const logs = fitted(criteria.length, used);
  const most = Math.max(...[...within].map((one) => logs[one] ?? 0));
  const weight = (one: number): number => HUNDRED * Math.exp((logs[one] ?? 0) - most);
  const gaps = used.map(({ more, less, logRatio }) => (logs[less] ?? 0) - (logs[more] ?? 0) - logRatio);
  const spare = used.length - (within.size - 1);
  const clashes = tradeOffs.flatMap((answer): Clash[] => {
    const [more, less] = [place(answer.more), place(answer.less)];
    if (!within.has(more)) return [];
    const implied = (HUNDRED * weight(less)) / weight(more);
    const asked = Math.max(answer.percent, LEAST_PERCENT);
    const factor = Math.max(implied / asked, asked / implied);
    return factor > CLASH_FACTOR ? [{ answer, implied }] : [];
  });
  return {
    weights: Object.fromEntries(
      [...within].sort((a, b) => a - b).map((one) => [criteria[one] ?? '', weight(one)]),
    ),
    loose: criteria.filter((_, one) => !within.has(one)),
    consistency: {
      clashes,
      factor: spare > 0 ? Math.exp(Math.sqrt(gaps.reduce((sum, gap) => sum + gap * gap, 0) / spare)) : null,
    },
  };
}

/**
 * Pairs to ask about: every criterion against the heaviest one, and a few neighbors to see whether the answers agree.
 *
 * @param usual  [-] weights that stand before anything is asked
 * @param most   [-] how many criteria to ask about, heaviest first
 * @returns      [-] pairs, the heavier first
 * @source       OUR-JUDGEMENT a star and every third neighbor
 */
export function pairsToAsk(usual: Weights, most: number): { readonly more: string; readonly less: string }[] {
  const order = Object.entries(usual)
    .sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1))
    .map(([id]) => id)
    .slice(0, most);
  const [first, ...others] = order;
  if (first === undefined) return [];
  const star = others.map((less) => ({ more: first, less }));
  // Every third neighbor is asked again, this time against each other.
  const checks = others.flatMap((more, at) => {
    const less = others[at + 1];
    return less !== undefined && at % 3 === 0 ? [{ more, less }] : [];
  });
  return [...star, ...checks];
}

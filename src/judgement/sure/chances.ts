/** How likely each strategy is the best while measures, prices and weights are uncertain. */
import { strategies, type StrategyId } from '../../catalog/sets.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import { haltonSequence } from './halton.ts';
import { informationMeter } from './information.ts';
import { modelOf, type Draw, type Model } from './model.ts';

/** [-] a lead that the pages show as 0.0 points of 100 is a tie, never a win (our judgement). */
export const TIE = 0.0005;

export interface Tally {
  /** Times it was best alone, by strategy. */
  readonly wins: Record<StrategyId, number>;
  /** Times it shared the first place. */
  readonly ties: Record<StrategyId, number>;
  /** Samples with no feasible candidate or a stop. */
  readonly none: number;
  readonly count: number;
}

const zero = (): Record<StrategyId, number> =>
  Object.fromEntries(strategies.map((id) => [id, 0])) as Record<StrategyId, number>;
/**
 * A tally before the first sample.
 *
 * @returns  [-] all counts 0
 * @source   OUR-JUDGEMENT counting
 */
export const emptyTally = (): Tally => ({ wins: zero(), ties: zero(), none: 0, count: 0 });

/**
 * Adds the winner, or those who share the first place, of one sample.
 *
 * @param tally  [-] counts so far; they are added to in place
 * @param best   [-] best total of each strategy that has one
 * @returns      [-] the counts with this sample
 * @source       OUR-JUDGEMENT a lead below TIE is a tie, never a win
 */
export function counted(tally: Tally, best: Readonly<Partial<Record<StrategyId, number>>>): Tally {
  const present = strategies.filter((id) => best[id] !== undefined);
  const most = Math.max(...present.map((id) => best[id] ?? 0));
  const first = present.filter((id) => most - (best[id] ?? 0) < TIE);
  const into = first.length === 1 ? tally.wins : tally.ties;
  for (const id of first) into[id] += 1;
  return { ...tally, count: tally.count + 1 };
}

/**
 * Two tallies together.
 *
 * @param a  [-] counts
 * @param b  [-] counts
 * @returns  [-] their sums
 * @source   OUR-JUDGEMENT counting
 */
export const added = (a: Tally, b: Tally): Tally => ({
  wins: Object.fromEntries(strategies.map((id) => [id, a.wins[id] + b.wins[id]])) as Tally['wins'],
  ties: Object.fromEntries(strategies.map((id) => [id, a.ties[id] + b.ties[id]])) as Tally['ties'],
  none: a.none + b.none,
  count: a.count + b.count,
});

/** Best total of each strategy. */
function bestOf(model: Model, totals: Float64Array): Partial<Record<StrategyId, number>> {
  const best: Partial<Record<StrategyId, number>> = {};
  model.options.forEach(({ strategy }, place) => {
    best[strategy] = Math.max(best[strategy] ?? -Infinity, totals[place] ?? 0);
  });
  return best;
}

/**
 * Runs a model through quasi-random points.
 *
 * @param model  [-] totals as a function of the draws
 * @param count  [-] samples
 * @param seed   [-] same seed, same counts
 * @param each   [-] hears of every sample
 * @returns      [-] wins and ties by strategy
 * @source       OWEN-2017 randomized Halton points (memory)
 */
export function tallyOf(
  model: Model,
  count: number,
  seed: number,
  each: (shares: Float64Array, totals: Float64Array, done: number) => void = () => undefined,
): Tally {
  const sequence = haltonSequence(model.draws.length, seed);
  const shares = new Float64Array(model.draws.length);
  const totals = new Float64Array(model.options.length);
  let tally = emptyTally();
  for (let index = 0; index < count; index += 1) {
    sequence.point(index, shares);
    model.totals(shares, totals);
    tally = counted(tally, bestOf(model, totals));
    each(shares, totals, index + 1);
  }
  return tally;
}

export interface Worth extends Pick<Draw, 'id' | 'name' | 'target' | 'finder'> {
  /** Expected gain in total value, 0 to 1, from knowing it before deciding. */
  readonly value: number;
}

export interface Chances {
  readonly tally: Tally;
  /** Worth of knowing each uncertain number, greatest first. */
  readonly worth: readonly Worth[];
  /** Worth of knowing all of them at once. */
  readonly everything: number;
}

/**
 * Chances of the strategies on the candidates as they stand, and what knowing each uncertain number is worth.
 *
 * chance_s = share of the samples in which the best of s leads every other strategy by more than a tie
 *
 * @param evaluation  [-] with a ranking
 * @param count       [-] samples
 * @param seed        [-] same seed, same result
 * @param onprogress  [-] hears how many samples are done
 * @returns           [-] counts by strategy, and the worth of each unknown in value units
 * @source            OWEN-2017 quasi-random points; STRONG-OAKLEY-BRENNAN-2014 worth (memory)
 * @assumes           the choice is between the leaders of the strategies
 */
export function chancesOf(
  evaluation: Evaluation,
  count: number,
  seed: number,
  onprogress: (done: number) => void = () => undefined,
): Chances {
  const model = modelOf(evaluation);
  const leaders = evaluation.ranking.leaders.flatMap(({ candidate }) => {
    const place = model.options.findIndex(({ id }) => id === candidate);
    return place < 0 ? [] : [place];
  });
  const meter = informationMeter(model.draws.length, leaders.length);
  const ofLeaders = new Float64Array(leaders.length);
  const sums = new Float64Array(leaders.length);
  let knowing = 0;
  const tally = tallyOf(model, count, seed, (shares, totals, done) => {
    leaders.forEach((place, column) => {
      ofLeaders[column] = totals[place] ?? 0;
      sums[column] = (sums[column] ?? 0) + (totals[place] ?? 0);
    });
    knowing += Math.max(...ofLeaders);
    meter.add(shares, ofLeaders);
    onprogress(done);
  });
  const values = leaders.length < 2 ? [] : meter.worth();
  const worth = model.draws
    .map(({ id, name, target, finder }, place) => ({ id, name, target, finder, value: values[place] ?? 0 }))
    .sort((a, b) => b.value - a.value || (a.id < b.id ? -1 : 1));
  const everything = count === 0 ? 0 : Math.max(0, (knowing - Math.max(...sums)) / count);
  return { tally, worth, everything };
}

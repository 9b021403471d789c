/** How sure the ranking is: weights, chances, answers, and what is worth finding out. */
import type { Case } from '../../case/case.ts';
import { withValueAt } from '../../case/paths.ts';
import { strategies } from '../../catalog/sets.ts';
import { uncertainties } from '../../catalog/uncertainties.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import type { ChanceTable, Sure } from '../../evaluation/sure.ts';
import { answersThatFlip, type Evaluate } from './answers.ts';
import { added, chancesOf, emptyTally, tallyOf, type Tally } from './chances.ts';
import { haltonSequence } from './halton.ts';
import { modelOf } from './model.ts';
import { openAnswers } from './space.ts';
import { criticalWeights } from './weights.ts';

/** [-] samples on the candidates as they stand: standard error about a third of a percent at worst. */
export const SAMPLES = 4096;
/** [-] cases evaluated again with other answers. */
export const EVALUATIONS = 32;
/** [-] samples of measures, prices and weights within each of those. */
const INNER = 64;
const PERCENT = 100;

export type Stage = 'samples' | 'answers' | 'cases';
export interface SureOptions {
  readonly samples?: number;
  /** 0 leaves the joint run over answers out. */
  readonly evaluations?: number;
  readonly onprogress?: (stage: Stage, done: number, total: number) => void;
}

function tableOf({ wins, ties, none, count }: Tally, evaluations: number): ChanceTable {
  const share = (times: number): number => (count === 0 ? 0 : (PERCENT * times) / count);
  return {
    samples: count,
    evaluations,
    byStrategy: strategies.map((strategy) => ({
      strategy,
      best_pct: share(wins[strategy]),
      shared_pct: share(ties[strategy]),
    })),
    none_pct: share(none),
  };
}

/**
 * Chances with the answers uncertain too: cases drawn from what the answers could be, each evaluated again, and a few
 * samples of measures, prices and weights within each.
 */
function overAnswers(
  given: Case,
  base: Evaluation,
  evaluate: Evaluate,
  evaluations: number,
  onprogress: (done: number) => void,
): Tally {
  const open = openAnswers(given, base);
  const sequence = haltonSequence(open.length, uncertainties.seed);
  const shares = new Float64Array(open.length);
  let tally = emptyTally();
  for (let index = 0; index < evaluations; index += 1) {
    sequence.point(index, shares);
    const drawn = open.reduce((one, { path, is, at }, place) => {
      const answer = at(shares[place] ?? 1);
      return answer === is ? one : withValueAt(one, path, answer);
    }, given);
    const then = evaluate(drawn);
    tally =
      then.ranking.order.length === 0
        ? { ...tally, none: tally.none + INNER, count: tally.count + INNER }
        : added(tally, tallyOf(modelOf(then), INNER, uncertainties.seed + 1 + index));
    onprogress(index + 1);
  }
  return tally;
}

const valuesOf = ({ candidates }: Evaluation, id: string | undefined): Record<string, number> =>
  Object.fromEntries(
    (candidates.find((one) => one.id === id)?.attributes ?? []).map(({ criterion, value }) => [
      criterion,
      value,
    ]),
  );

/**
 * How sure the ranking of a case is. Pure and seeded: the same case gives the same bytes.
 *
 * @param given     [-] the case as it was answered
 * @param evaluate  [-] the one door, handed in
 * @param options   [-] how many samples and evaluations; who hears of the progress
 * @returns         [-] weights, chances, answers that flip, worth of finding out; null when nothing is ranked
 * @source          OUR-JUDGEMENT ranges and chances of uncertainties.json
 * @assumes         independent uncertainties; one answer at a time for flips and worth
 */
export function sureOf(given: Case, evaluate: Evaluate, options: SureOptions = {}): Sure | null {
  const { samples = SAMPLES, evaluations = EVALUATIONS, onprogress = () => undefined } = options;
  const base = evaluate(given);
  const [first, second] = base.ranking.leaders;
  if (first === undefined) return null;
  const fixed = chancesOf(base, samples, uncertainties.seed, (done) => {
    onprogress('samples', done, samples);
  });
  const study = answersThatFlip(
    given,
    evaluate,
    (done, total) => {
      onprogress('answers', done, total);
    },
    base,
  );
  const joint =
    evaluations === 0
      ? null
      : overAnswers(given, base, evaluate, evaluations, (done) => {
          onprogress('cases', done, evaluations);
        });
  return {
    seed: uncertainties.seed,
    weights:
      second === undefined
        ? []
        : criticalWeights(
            base.ranking.weights,
            valuesOf(base, first.candidate),
            valuesOf(base, second.candidate),
          ),
    fixed: tableOf(fixed.tally, 0),
    answered: joint === null ? null : tableOf(joint, evaluations),
    changes: [...study.changes],
    answerWorth: [...study.worth],
    measureWorth: [...fixed.worth],
    everything: fixed.everything,
  };
}

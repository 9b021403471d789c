/** Which single answer, if it were another one, would change the pick, and what finding out is worth. */
import type { Case } from '../../case/case.ts';
import { withValueAt } from '../../case/paths.ts';
import type { StrategyId } from '../../catalog/sets.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import { TIE } from './chances.ts';
import { openAnswers, type AnswerValue, type OpenAnswer } from './space.ts';

export type Outcome = 'same' | 'other' | 'tie' | 'stop' | 'none-feasible';

/** One answer changed, the others as they are. */
export interface AnswerChange extends Pick<OpenAnswer, 'path' | 'question' | 'finder' | 'is' | 'isAssumed'> {
  readonly would: AnswerValue;
  readonly chance: number;
  readonly outcome: Outcome;
  /** First strategy then; null after a stop or where nothing is feasible. */
  readonly first: StrategyId | null;
  /** Lead of the first over the second strategy, 0 to 1; null without a second. */
  readonly lead: number | null;
  /** What keeping today's pick would lose: value of the best less that of the pick; an excluded pick is worth 0. */
  readonly loss: number;
}

/** What it is worth to know one answer for certain. */
export interface AnswerWorth extends Pick<OpenAnswer, 'path' | 'question' | 'finder' | 'is' | 'isAssumed'> {
  /** Expected gain in total value, 0 to 1. */
  readonly value: number;
  /** One of the other answers stops everything: look before anything else is decided. */
  readonly mayStop: boolean;
  /** Chance that it is another answer than the one that stands. */
  readonly chance: number;
}

export interface AnswerStudy {
  readonly changes: readonly AnswerChange[];
  readonly worth: readonly AnswerWorth[];
  /** Evaluations made. */
  readonly evaluations: number;
}

export type Evaluate = (given: Case) => Evaluation;
export type Progress = (done: number, total: number) => void;

function outcomeOf(
  base: Evaluation,
  then: Evaluation,
): Pick<AnswerChange, 'outcome' | 'first' | 'lead' | 'loss'> {
  const { level } = then.ranking.confidence;
  const [first, second] = then.ranking.leaders;
  if (first === undefined)
    return { outcome: level === 'stop' ? 'stop' : 'none-feasible', first: null, lead: null, loss: 0 };
  const was = base.ranking.leaders[0];
  const lead = second === undefined ? null : first.total - second.total;
  const kept = then.ranking.scores[was?.candidate ?? ''] ?? 0;
  const isTie = lead !== null && lead < TIE;
  const outcome = isTie ? 'tie' : first.strategy === was?.strategy ? 'same' : 'other';
  return { outcome, first: first.strategy, lead, loss: Math.max(0, first.total - kept) };
}

function worthOf(open: OpenAnswer, changes: readonly AnswerChange[]): AnswerWorth {
  const { path, question, finder, is, isAssumed } = open;
  return {
    path,
    question,
    finder,
    is,
    isAssumed,
    value: changes.reduce((sum, { chance, loss }) => sum + chance * loss, 0),
    mayStop: changes.some(({ outcome }) => outcome === 'stop'),
    chance: open.chances.reduce((sum, chance) => sum + chance, 0),
  };
}

/**
 * Changes every answer by itself and looks whether the pick moves.
 *
 * worth(q) = sum over other answers of chance x (value of the best then - value of today's pick then)
 *
 * @param given       [-] the case as it was answered
 * @param evaluate    [-] the one door, handed in so that judgement does not import it
 * @param onprogress  [-] hears how many evaluations are done of how many
 * @returns           [-] one change for each other answer, and the worth of each answer, greatest first
 * @source            OUR-JUDGEMENT chances and ranges of uncertainties.json; expected value of perfect information, textbook form (memory)
 * @assumes           one answer at a time: two that change together are not looked at
 */
export function answersThatFlip(
  given: Case,
  evaluate: Evaluate,
  onprogress: Progress = () => undefined,
  base: Evaluation = evaluate(given),
): AnswerStudy {
  const open = openAnswers(given, base);
  const total = open.reduce((sum, { others }) => sum + others.length, 0);
  let done = 0;
  const studied = open.map((answer) => {
    const changes = answer.others.map((would, place): AnswerChange => {
      const then = evaluate(withValueAt(given, answer.path, would));
      done += 1;
      onprogress(done, total);
      const { path, question, finder, is, isAssumed } = answer;
      const chance = answer.chances[place] ?? 0;
      return { path, question, finder, is, isAssumed, would, chance, ...outcomeOf(base, then) };
    });
    return { changes, worth: worthOf(answer, changes) };
  });
  const worth = studied
    .map((one) => one.worth)
    .sort((a, b) => Number(b.mayStop) - Number(a.mayStop) || b.value - a.value);
  return { changes: studied.flatMap(({ changes }) => changes), worth, evaluations: done };
}

/**
 * The changes that move the first place.
 *
 * @param study  [-] every answer changed by itself
 * @returns      [-] most likely first
 * @source       OUR-JUDGEMENT chances of uncertainties.json
 */
export const flips = ({ changes }: AnswerStudy): AnswerChange[] =>
  changes.filter(({ outcome }) => outcome !== 'same').sort((a, b) => b.chance - a.chance);

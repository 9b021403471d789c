/** What each event does to the interview: pure functions from one context to the next. */
import { answeredPaths, changedPaths, type Answers, type Patch } from './answers.ts';
import { withAnswers } from './consequences.ts';
import { reopenedBy, type Reopened } from './dependencies.ts';
import type { Way } from './progress.ts';
import { pathsOf, type AnswerPath, type StateId } from './questions.ts';

/** What undo and redo bring back. */
export interface Moment {
  readonly answers: Answers;
  /** Pages that were answered with "not sure". */
  readonly notSure: readonly StateId[];
  readonly reopened: readonly Reopened[];
  /** The page whose answer this moment changed; null at the start. */
  readonly question: StateId | null;
}

export interface Interview extends Way, Moment {
  /** Pages seen, in the order of the first visit. */
  readonly visited: readonly StateId[];
  readonly past: readonly Moment[];
  readonly future: readonly Moment[];
}

/** Steps that undo can go back. */
export const LONGEST_HISTORY = 200;

export const newInterview: Interview = {
  answers: {},
  notSure: [],
  reopened: [],
  question: null,
  passed: [],
  visited: [],
  past: [],
  future: [],
};

const momentOf = ({ answers, notSure, reopened, question }: Interview): Moment => ({
  answers,
  notSure,
  reopened,
  question,
});
const withItem = <T>(list: readonly T[], item: T): readonly T[] =>
  list.includes(item) ? list : [...list, item];
const withoutItem = <T>(list: readonly T[], item: T): readonly T[] => list.filter((each) => each !== item);

/** Takes the context to the moment, remembering where it was. */
const changedTo = (context: Interview, moment: Moment): Interview => ({
  ...context,
  ...moment,
  past: [...context.past, momentOf(context)].slice(-LONGEST_HISTORY),
  future: [],
});

/** The pages to look at again: those still waiting, and those that this change re-opens, the page itself not. */
function reopenedNow(context: Interview, after: Answers, question: StateId): readonly Reopened[] {
  const seen = reopenedBy(context.answers, after).filter(
    (each) =>
      each.question !== question &&
      (context.passed.includes(each.question) || isAnswered(context, each.question)),
  );
  const kept = context.reopened.filter(
    (each) => each.question !== question && !seen.some((other) => other.question === each.question),
  );
  return [...kept, ...seen];
}

const isAnswered = ({ answers }: Interview, question: StateId): boolean =>
  answeredPaths(answers, question).length > 0;

/** New answers to one question. An answer that changes nothing leaves no trace in the history. */
export function answered(context: Interview, question: StateId, patch: Patch): Interview {
  const answers = withAnswers(context.answers, patch);
  const isSame = changedPaths(context.answers, answers).length === 0;
  const isSettled =
    !context.notSure.includes(question) && !context.reopened.some((each) => each.question === question);
  if (isSame && isSettled) return context;
  return changedTo(context, {
    answers,
    notSure: withoutItem(context.notSure, question),
    reopened: reopenedNow(context, answers, question),
    question,
  });
}

/** "Not sure": the default stands in, for one field or for the whole question. */
export function leftOpen(context: Interview, question: StateId, path?: AnswerPath): Interview {
  const paths: readonly AnswerPath[] = path === undefined ? pathsOf[question] : [path];
  const answers = withAnswers(context.answers, Object.fromEntries(paths.map((each) => [each, undefined])));
  const isWhole = answeredPaths(answers, question).length === 0;
  const next = changedTo(context, {
    answers,
    notSure: isWhole ? withItem(context.notSure, question) : context.notSure,
    reopened: reopenedNow(context, answers, question),
    question,
  });
  return { ...next, passed: isWhole ? withItem(next.passed, question) : next.passed };
}

/** Left with "next": looked at, whatever was answered. */
export const passedBy = (context: Interview, question: StateId): Interview => ({
  ...context,
  passed: withItem(context.passed, question),
  reopened: context.reopened.filter((each) => each.question !== question),
});

export const seen = (context: Interview, question: StateId): Interview => ({
  ...context,
  visited: withItem(context.visited, question),
});

/** One step back in the history; the same context when there is none. */
export function undone(context: Interview): Interview {
  const moment = context.past.at(-1);
  if (moment === undefined) return context;
  return {
    ...context,
    ...moment,
    past: context.past.slice(0, -1),
    future: [momentOf(context), ...context.future],
  };
}

/** One step forward again. */
export function redone(context: Interview): Interview {
  const [moment, ...future] = context.future;
  if (moment === undefined) return context;
  return { ...context, ...moment, past: [...context.past, momentOf(context)], future };
}

/** What a saved project may hold besides the answers. */
export type SavedWay = Partial<Pick<Interview, 'passed' | 'notSure' | 'reopened'>>;

/** A saved project, or a case file, in place of everything. */
export const loaded = (answers: Answers, saved: SavedWay = {}): Interview => ({
  ...newInterview,
  ...saved,
  answers,
});

/** Honest progress: how many pages are done, of about how many. */
import { answeredPaths, type Answers } from './answers.ts';
import type { Reopened } from './dependencies.ts';
import { questionIds, type QuestionId, type StateId } from './questions.ts';
import { askedFields, questionApplies } from './relevance.ts';

/** What is known about the way through the interview. */
export interface Way {
  readonly answers: Answers;
  /** Pages left with "next", or answered with "not sure". */
  readonly passed: readonly StateId[];
  readonly reopened: readonly Reopened[];
}

export type QuestionStatus = 'open' | 'done' | 'look again' | 'not asked';

/** Where one question stands, for the list of topics. */
export function statusOf({ answers, passed, reopened }: Way, question: QuestionId): QuestionStatus {
  if (!questionApplies(answers, question)) return 'not asked';
  if (reopened.some((each) => each.question === question)) return 'look again';
  const asked = askedFields(answers, question);
  const isAnswered = answeredPaths(answers, question).some((path) => asked.includes(path));
  return isAnswered || passed.includes(question) ? 'done' : 'open';
}

/** Questions done, and about how many there are: later answers may still add or skip some. */
export function progress(way: Way): { readonly done: number; readonly about: number } {
  const asked = questionIds.map((id) => statusOf(way, id)).filter((status) => status !== 'not asked');
  return { done: asked.filter((status) => status === 'done').length, about: asked.length };
}

/** The first question that still waits, in order; undefined when all are done. */
export const firstOpen = (way: Way): QuestionId | undefined =>
  questionIds.find((id) => ['open', 'look again'].includes(statusOf(way, id)));

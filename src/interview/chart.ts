/**
 * The interview as one statechart: a state for each question and one for the review. No clock, no network, no
 * page: results are computed from the answers elsewhere, and saving is the app's subscription.
 */
import { assign, setup } from 'xstate';
import type { Answers, Patch } from './answers.ts';
import { isStopped } from './guards.ts';
import {
  pathsOf,
  questionIds,
  REVIEW,
  stateIds,
  type AnswerPath,
  type QuestionId,
  type StateId,
} from './questions.ts';
import { endsAtStop, ownSkips, questionApplies, STOP_QUESTION } from './relevance.ts';
import {
  answered,
  leftOpen,
  loaded,
  newInterview,
  passedBy,
  redone,
  seen,
  undone,
  type Interview,
  type SavedWay,
} from './steps.ts';

/** Answers are validated (`validate`) before they are sent. */
export type InterviewEvent =
  | { readonly type: 'answer'; readonly question: StateId; readonly patch: Patch }
  | { readonly type: 'notSure'; readonly question: StateId; readonly path?: AnswerPath }
  | { readonly type: 'go.next' }
  | { readonly type: 'go.back' }
  | { readonly type: 'go.to'; readonly question: StateId }
  | { readonly type: 'review.open' }
  | { readonly type: 'undo' }
  | { readonly type: 'redo' }
  | ({ readonly type: 'load'; readonly answers: Answers } & SavedWay);

type Of<T extends InterviewEvent['type']> = Extract<InterviewEvent, { type: T }>;
interface About {
  readonly question: StateId;
}

const belongsTo = (question: StateId, paths: readonly string[]): boolean =>
  paths.every((path) => (pathsOf[question] as readonly string[]).includes(path));

const base = setup({
  types: { context: {} as Interview, events: {} as InterviewEvent },
  guards: {
    isStopped: ({ context }) => isStopped(context.answers),
    applies: ({ context }, { question }: About) => questionApplies(context.answers, question),
    isFor: ({ context, event }, { question }: About) =>
      event.type === 'go.to' && event.question === question && questionApplies(context.answers, question),
    belongsToQuestion: ({ event }) =>
      event.type === 'answer'
        ? belongsTo(event.question, Object.keys(event.patch))
        : event.type === 'notSure' && belongsTo(event.question, event.path === undefined ? [] : [event.path]),
    canUndo: ({ context }) => context.past.length > 0,
    canRedo: ({ context }) => context.future.length > 0,
  },
  actions: {
    keepAnswer: assign(({ context, event }) => {
      const { question, patch } = event as Of<'answer'>;
      return answered(context, question, patch);
    }),
    keepNotSure: assign(({ context, event }) => {
      const { question, path } = event as Of<'notSure'>;
      return leftOpen(context, question, path);
    }),
    markSeen: assign(({ context }, { question }: About) => seen(context, question)),
    markPassed: assign(({ context }, { question }: About) => passedBy(context, question)),
    stepBackInHistory: assign(({ context }) => undone(context)),
    stepForwardInHistory: assign(({ context }) => redone(context)),
    replaceAll: assign(({ event }) => {
      const { answers, passed = [], notSure = [], reopened = [] } = event as Of<'load'>;
      return loaded(answers, { passed, notSure, reopened });
    }),
  },
});

const pass = (question: StateId) => ({ type: 'markPassed', params: { question } }) as const;
const ifApplies = (question: QuestionId) => ({ type: 'applies', params: { question } }) as const;

interface Step {
  readonly target: StateId;
  readonly guard?: 'isStopped' | ReturnType<typeof ifApplies>;
}

/** The nearest pages one way, up to the first that nothing skips by itself. */
function nearest(pages: readonly StateId[]): readonly Step[] {
  const steps: Step[] = [];
  for (const target of pages) {
    if (target === REVIEW || ownSkips[target] === undefined) return [...steps, { target }];
    steps.push({ target, guard: ifApplies(target) });
  }
  return steps;
}

/** The way on: to the review where the interview has ended, else to the next question that is asked. */
function stepsOn(page: StateId): readonly Step[] {
  const on = nearest(stateIds.slice(stateIds.indexOf(page) + 1));
  const canStop = page === STOP_QUESTION || (page !== REVIEW && endsAtStop(page));
  return canStop ? [{ target: REVIEW, guard: 'isStopped' }, ...on] : on;
}

/** The way back: to the question that ended the interview, else to the one before. */
function stepsBack(page: StateId): readonly Step[] {
  const back = nearest(stateIds.slice(0, stateIds.indexOf(page)).reverse());
  return page === REVIEW || endsAtStop(page)
    ? [{ target: STOP_QUESTION, guard: 'isStopped' }, ...back]
    : back;
}

const pageState = (page: StateId) => ({
  entry: { type: 'markSeen', params: { question: page } } as const,
  on: {
    'go.next': stepsOn(page).map((step) => ({ ...step, actions: pass(page) })),
    'go.back': stepsBack(page),
  },
});

const states = Object.fromEntries(stateIds.map((page) => [page, pageState(page)])) as Record<
  StateId,
  ReturnType<typeof pageState>
>;

export const interviewChart = base.createMachine({
  id: 'interview',
  context: newInterview,
  initial: questionIds[0],
  states,
  on: {
    answer: { guard: 'belongsToQuestion', actions: 'keepAnswer' },
    notSure: { guard: 'belongsToQuestion', actions: 'keepNotSure' },
    'go.to': stateIds.map((question) => ({
      target: `.${question}` as const,
      guard: { type: 'isFor', params: { question } } as const,
    })),
    'review.open': { target: `.${REVIEW}` },
    undo: { guard: 'canUndo', actions: 'stepBackInHistory' },
    redo: { guard: 'canRedo', actions: 'stepForwardInHistory' },
    load: { target: `.${questionIds[0]}`, actions: 'replaceAll' },
  },
});

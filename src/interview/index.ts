/** The interview, as the app and the command line see it. */
export { answerAt, answeredPaths, answersOf } from './answers.ts';
export type { Answers, Patch } from './answers.ts';
export { interviewChart } from './chart.ts';
export type { InterviewEvent } from './chart.ts';
export { contradictions } from './contradictions.ts';
export type { Contradiction } from './contradictions.ts';
export { dependenciesOf } from './dependencies.ts';
export type { Reopened } from './dependencies.ts';
export { firstOpen, progress, statusOf } from './progress.ts';
export type { QuestionStatus, Way } from './progress.ts';
export { isQuestion, pathsOf, questionIds, REVIEW, settledBy, stateIds } from './questions.ts';
export type { AnswerPath, QuestionId, StateId } from './questions.ts';
export { askedFields, fieldApplies, lapsed, questionApplies, skipOf, stopNotice } from './relevance.ts';
export type { Lapsed, StopNotice } from './relevance.ts';
export { newInterview } from './steps.ts';
export type { Interview, SavedWay } from './steps.ts';
export { caseOf, validate } from './validate.ts';
export type { CaseReading } from './validate.ts';

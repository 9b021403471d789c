/** The open project: the one adapter between the interview's statechart and the pages. */
import { createSubscriber } from 'svelte/reactivity';
import { words } from 'virtual:words';
import { createActor, type SnapshotFrom } from 'xstate';
import type { Case } from '../../case/case.ts';
import {
  answerAt,
  caseOf,
  contradictions,
  fieldApplies,
  interviewChart,
  lapsed,
  progress,
  settledBy,
  stateIds,
  stopNotice,
  type Answers,
  type AnswerPath,
  type CaseReading,
  type Patch,
  type StateId,
} from '../../interview/index.ts';
import type { SavedProject } from '../storage/projectStore.ts';
import { topicsOf, type Topic } from '../view/topics.ts';

export type { Topic };
export type Role = 'builder' | 'designer' | 'trainer';

const isState = (id: string): id is StateId => (stateIds as readonly string[]).includes(id);

export class Guide {
  readonly id: string;
  readonly #firstName: string;
  readonly #actor = createActor(interviewChart);
  readonly #subscribe = createSubscriber((update) => {
    const subscription = this.#actor.subscribe(update);
    return () => subscription.unsubscribe();
  });

  constructor(project: SavedProject, onchange: () => void) {
    this.id = project.id;
    this.#firstName = project.name;
    this.#actor.start();
    this.#actor.send({ type: 'load', answers: project.answers, passed: project.passed.filter(isState) });
    if (project.question !== null) this.goTo(project.question);
    this.#actor.subscribe(onchange);
  }

  get #snapshot(): SnapshotFrom<typeof interviewChart> {
    this.#subscribe();
    return this.#actor.getSnapshot();
  }

  readonly #answers = $derived(this.#snapshot.context.answers);
  readonly #reading = $derived.by((): CaseReading => caseOf(this.#answers));
  readonly #topics = $derived.by((): readonly Topic[] => topicsOf(this.#snapshot.context, words.questions));
  readonly #contradictions = $derived(contradictions(this.#answers));
  readonly #lapsed = $derived(lapsed(this.#answers));

  get answers(): Answers {
    return this.#answers;
  }
  /** The case that the answers make, or why they make none yet. */
  get reading(): CaseReading {
    return this.#reading;
  }
  get case(): Case | null {
    return this.#reading.ok ? this.#reading.value : null;
  }
  get question(): StateId {
    return this.#snapshot.value as StateId;
  }
  get name(): string {
    return this.#answers.project?.name ?? this.#firstName;
  }
  get role(): Role {
    return this.#answers.project?.role ?? 'builder';
  }
  get topics(): readonly Topic[] {
    return this.#topics;
  }
  get contradictions(): ReturnType<typeof contradictions> {
    return this.#contradictions;
  }
  get lapsed(): ReturnType<typeof lapsed> {
    return this.#lapsed;
  }
  get stop(): ReturnType<typeof stopNotice> {
    return stopNotice(this.#answers);
  }
  get progress(): { readonly done: number; readonly about: number; readonly text: string } {
    const { done, about } = progress(this.#snapshot.context);
    return { done, about, text: `${done} of about ${about} answered` };
  }
  /** Why this question is open again, when an earlier answer has changed. */
  get lookAgain(): string | null {
    const found = this.#snapshot.context.reopened.find(({ question }) => question === this.question);
    return found?.because ?? null;
  }
  get canGoBack(): boolean {
    return this.#snapshot.can({ type: 'go.back' });
  }
  get canUndo(): boolean {
    return this.#snapshot.can({ type: 'undo' });
  }
  get canRedo(): boolean {
    return this.#snapshot.can({ type: 'redo' });
  }

  /** The place as given: `Burlington, VT, zone 6A`; null while there is none. */
  get placeInWords(): string | null {
    const { place } = this.#answers;
    const words = [
      place?.name ?? place?.id ?? place?.countyFips,
      place?.zone ? `zone ${place.zone}` : undefined,
    ];
    return words.filter(Boolean).join(', ') || null;
  }

  valueOf(path: string): unknown {
    return answerAt(this.#answers, path);
  }
  isAsked(path: string): boolean {
    return fieldApplies(this.#answers, path as AnswerPath);
  }
  weightOf(criterion: string): number | undefined {
    return this.#answers.priorities?.[criterion];
  }

  /** New answers, of one question, already validated. */
  answer(patch: Patch): void {
    const question = settledBy(Object.keys(patch)[0] ?? '');
    if (question) this.#actor.send({ type: 'answer', question, patch });
  }
  weigh(criterion: string, weight: number | undefined): void {
    const others = Object.entries(this.#answers.priorities ?? {}).filter(([id]) => id !== criterion);
    const next = Object.fromEntries(weight === undefined ? others : [...others, [criterion, weight]]);
    this.answer({ priorities: Object.keys(next).length === 0 ? undefined : next });
  }
  rename(name: string): void {
    this.answer({ 'project.name': name });
  }
  next(): void {
    this.#actor.send({ type: 'go.next' });
  }
  back(): void {
    this.#actor.send({ type: 'go.back' });
  }
  /** Leaves the whole question to its cautious defaults and goes on. */
  notSure(): void {
    this.#actor.send({ type: 'notSure', question: this.question });
    this.next();
  }
  goTo(question: string): void {
    if (question === 'review') this.#actor.send({ type: 'review.open' });
    else if (isState(question)) this.#actor.send({ type: 'go.to', question });
  }
  undo(): void {
    this.#actor.send({ type: 'undo' });
  }
  redo(): void {
    this.#actor.send({ type: 'redo' });
  }

  saved(changedAt_ms: number): SavedProject {
    const { context, value } = this.#actor.getSnapshot();
    return {
      version: 1,
      id: this.id,
      name: context.answers.project?.name ?? this.#firstName,
      changedAt_ms,
      answers: context.answers,
      passed: context.passed,
      question: value as StateId,
    };
  }
  /** Ends the statechart; called when another project is opened. */
  end(): void {
    this.#actor.stop();
  }
}

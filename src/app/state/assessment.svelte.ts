/** The evaluation of the open project, computed in a worker whenever the answers change; never stored. */
import type { Case } from '../../case/case.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';
import { faultLine } from '../../faults.ts';
import type { CaseReading } from '../../interview/validate.ts';
import { startComputing } from './computing.ts';
import type { Answer, Question } from './evaluate.worker.ts';

export type Outcome =
  | { readonly kind: 'loading' }
  /** Nothing can be computed yet: no place, so no climate. */
  | { readonly kind: 'no-place' }
  | { readonly kind: 'failed'; readonly message: string }
  | { readonly kind: 'ready'; readonly evaluation: Evaluation };

type WorkingsOf = (evaluation: Evaluation, candidate: string) => readonly Working[];

export class Assessment {
  readonly #given: () => CaseReading | null;
  #worker: Worker | null = null;
  #workingsOf = $state.raw<WorkingsOf | null>(null);
  #answer = $state.raw<Answer | null>(null);
  /** What was shown before the answer of now, so that a page can say what changed. */
  #previous = $state.raw<Evaluation | null>(null);
  /** Number of the question asked last; an answer to an older one is shown until its own arrives. */
  #asked = $state(0);
  #isBusy = false;
  #counter = 0;
  /** Answers to questions before this one belong to a project that is no longer open. */
  #oldest = 0;
  #waiting: Question | null = null;
  #lastGiven: Case | null = null;

  constructor(given: () => CaseReading | null) {
    this.#given = given;
  }

  async load(): Promise<void> {
    this.#worker = startComputing();
    this.#worker.onmessage = (event: MessageEvent<Answer>) => this.#take(event.data);
    this.#worker.onerror = (event) =>
      this.#take({ number: this.#asked, message: event.message || 'The computing part stopped.' });
    this.#send();
    const { workingsOf } = await import('../../judgement/workings.ts');
    this.#workingsOf = workingsOf;
  }

  /** Asks for the evaluation of these answers; the newest question wins. */
  request(reading: CaseReading | null): void {
    if (!reading?.ok || reading.value === this.#lastGiven) return;
    this.#lastGiven = reading.value;
    this.#waiting = { number: this.#counter + 1, given: reading.value };
    this.#counter += 1;
    this.#asked = this.#counter;
    this.#send();
  }

  /** Another project: nothing computed for the one before may be shown. */
  forget(): void {
    this.#answer = null;
    this.#previous = null;
    this.#lastGiven = null;
    this.#waiting = null;
    this.#oldest = this.#counter + 1;
  }

  readonly #outcome = $derived.by((): Outcome => {
    const reading = this.#given();
    if (reading === null) return { kind: 'no-place' };
    if (!reading.ok) {
      const others = reading.faults.filter(({ path }) => !path.startsWith('place'));
      if (others.length === 0) return { kind: 'no-place' };
      return { kind: 'failed', message: others.map((fault) => faultLine(fault, 'case')).join('\n') };
    }
    if (this.#answer === null) return { kind: 'loading' };
    if ('message' in this.#answer) return { kind: 'failed', message: this.#answer.message };
    return { kind: 'ready', evaluation: this.#answer.evaluation };
  });

  get outcome(): Outcome {
    return this.#outcome;
  }
  get evaluation(): Evaluation | null {
    return this.#outcome.kind === 'ready' ? this.#outcome.evaluation : null;
  }
  /** The evaluation before the one of now; null for the first of a project. */
  get previous(): Evaluation | null {
    return this.#previous;
  }
  /** False while a newer set of answers is still being computed. */
  get isCurrent(): boolean {
    return this.#answer?.number === this.#asked;
  }

  /** Every worked number of one candidate. */
  workings(evaluation: Evaluation, candidate: string): readonly Working[] {
    return this.#workingsOf?.(evaluation, candidate) ?? [];
  }

  #send(): void {
    const question = this.#waiting;
    if (!this.#worker || question === null) return;
    if (this.#isBusy) return;
    this.#isBusy = true;
    this.#waiting = null;
    this.#worker.postMessage($state.snapshot(question));
  }

  #take(answer: Answer): void {
    this.#isBusy = false;
    if (answer.number >= this.#oldest) {
      if (this.#answer !== null && 'evaluation' in this.#answer) this.#previous = this.#answer.evaluation;
      this.#answer = answer;
    }
    this.#send();
  }
}

/** The evaluation of the open project: loaded once, then derived from the answers and never stored. */
import type { Case } from '../../case/case.ts';
import type { CaseReading } from '../../interview/validate.ts';
import { faultLine } from '../../faults.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';

export type Outcome =
  | { readonly kind: 'loading' }
  /** Nothing can be computed yet: no place, so no climate. */
  | { readonly kind: 'no-place' }
  | { readonly kind: 'failed'; readonly message: string }
  | { readonly kind: 'ready'; readonly evaluation: Evaluation };

type Evaluate = (given: Case) => Evaluation;
type WorkingsOf = (evaluation: Evaluation, candidate: string) => readonly Working[];

export class Assessment {
  #evaluate = $state.raw<Evaluate | null>(null);
  #workingsOf = $state.raw<WorkingsOf | null>(null);
  #loadFault = $state<string | null>(null);
  readonly #given: () => CaseReading | null;

  constructor(given: () => CaseReading | null) {
    this.#given = given;
  }

  /** Fetches the computing part of the app; pages show that they wait until it is there. */
  async load(): Promise<void> {
    try {
      const [{ evaluate }, { workingsOf }] = await Promise.all([
        import('../../evaluate.ts'),
        import('../../judgement/workings.ts'),
      ]);
      this.#evaluate = evaluate;
      this.#workingsOf = workingsOf;
    } catch (fault) {
      this.#loadFault = fault instanceof Error ? fault.message : String(fault);
    }
  }

  readonly #outcome = $derived.by((): Outcome => this.#assess());

  get outcome(): Outcome {
    return this.#outcome;
  }

  get evaluation(): Evaluation | null {
    return this.#outcome.kind === 'ready' ? this.#outcome.evaluation : null;
  }

  /** Every worked number of one candidate. */
  workings(evaluation: Evaluation, candidate: string): readonly Working[] {
    return this.#workingsOf?.(evaluation, candidate) ?? [];
  }

  #assess(): Outcome {
    if (this.#loadFault !== null) return { kind: 'failed', message: this.#loadFault };
    const given = this.#given();
    if (given === null) return { kind: 'no-place' };
    if (!given.ok) {
      const others = given.faults.filter(({ path }) => !path.startsWith('place'));
      if (others.length === 0) return { kind: 'no-place' };
      return { kind: 'failed', message: others.map((fault) => faultLine(fault, 'case')).join('\n') };
    }
    if (this.#evaluate === null) return { kind: 'loading' };
    try {
      return { kind: 'ready', evaluation: this.#evaluate(given.value) };
    } catch (fault) {
      return { kind: 'failed', message: fault instanceof Error ? fault.message : String(fault) };
    }
  }
}

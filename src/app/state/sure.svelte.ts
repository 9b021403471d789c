/** How sure the ranking of the open project is: asked for by the reader, worked out in a worker, dropped when an answer changes. */
import type { Case } from '../../case/case.ts';
import type { Sure } from '../../evaluation/sure.ts';
import type { SureReply, SureRequest } from '../workers/sureMessages.ts';

export type SureState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'working'; readonly stage: string; readonly done: number; readonly total: number }
  | { readonly kind: 'failed'; readonly message: string }
  | { readonly kind: 'ready'; readonly sure: Sure };

/** The part of a worker that is used here; tests bring their own. */
export type SureWorker = Pick<Worker, 'addEventListener' | 'postMessage' | 'terminate'>;

const newWorker = (): SureWorker =>
  new Worker(new URL('../workers/sure.worker.ts', import.meta.url), { type: 'module' });
const IDLE: SureState = { kind: 'idle' };

export class SureStudy {
  #state = $state.raw<SureState>(IDLE);
  /** The answers it was asked for. */
  #given = $state.raw<Case | null>(null);
  #worker: SureWorker | null = null;
  readonly #start: () => SureWorker;

  constructor(start: () => SureWorker = newWorker) {
    this.#start = start;
  }

  /** What is known about these answers; what was found for others does not count. */
  stateFor(given: Case | null): SureState {
    return given !== null && given === this.#given ? this.#state : IDLE;
  }

  begin(given: Case, evaluations: number): void {
    this.cancel();
    const worker = this.#start();
    this.#worker = worker;
    this.#given = given;
    this.#state = { kind: 'working', stage: 'samples', done: 0, total: 1 };
    worker.addEventListener('error', ({ message }) => {
      this.#end({ kind: 'failed', message: message || 'The computing part did not start.' });
    });
    worker.addEventListener('message', ({ data }: MessageEvent<SureReply>) => {
      // A message may still be under way when the reader says stop.
      if (this.#worker !== worker) return;
      if (data.kind === 'progress') this.#state = { ...data, kind: 'working' };
      else if (data.kind === 'failed') this.#end({ kind: 'failed', message: data.message });
      else if (data.sure === null)
        this.#end({ kind: 'failed', message: 'Nothing is ranked for these answers.' });
      else this.#end({ kind: 'ready', sure: data.sure });
    });
    const request: SureRequest = { given: $state.snapshot(given) as Case, evaluations };
    worker.postMessage(request);
  }

  /** Stops; what was found so far is dropped. */
  cancel(): void {
    this.#worker?.terminate();
    this.#worker = null;
    if (this.#state.kind === 'working') this.#state = IDLE;
  }

  #end(state: SureState): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#state = state;
  }
}

/** Computes evaluations away from the page: one takes long enough to be felt while typing. */
import type { Case } from '../../case/case.ts';
import { evaluate } from '../../evaluate.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';

export interface Question {
  readonly number: number;
  readonly given: Case;
}
export type Answer =
  | { readonly number: number; readonly evaluation: Evaluation }
  | { readonly number: number; readonly message: string };

function answer({ number, given }: Question): Answer {
  try {
    return { number, evaluation: evaluate(given) };
  } catch (fault) {
    return { number, message: fault instanceof Error ? fault.message : String(fault) };
  }
}

addEventListener('message', (event: MessageEvent<Question>) => postMessage(answer(event.data)));

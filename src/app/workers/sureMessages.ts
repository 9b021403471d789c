/** What the page and the worker that works out how sure a ranking is say to each other. */
import type { Case } from '../../case/case.ts';
import type { Sure } from '../../evaluation/sure.ts';

/** From the page. Stopping is done by ending the worker. */
export interface SureRequest {
  readonly given: Case;
  /** Cases with several other answers. */
  readonly evaluations: number;
}

export type SureReply =
  | { readonly kind: 'progress'; readonly stage: string; readonly done: number; readonly total: number }
  | { readonly kind: 'done'; readonly sure: Sure | null }
  | { readonly kind: 'failed'; readonly message: string };

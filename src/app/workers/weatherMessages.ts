/** What the page and the weather worker say to each other. */
import type { Reading } from '../../faults.ts';
import type { ReadProgress } from '../../weather/read.ts';
import type { WeatherSummary } from '../../weather/monthly.ts';

/** From the page: the file to read. Stopping is done by ending the worker. */
export interface WeatherRequest {
  readonly file: Blob;
}

export type WeatherReply =
  | ({ readonly kind: 'progress' } & ReadProgress)
  | { readonly kind: 'done'; readonly reading: Reading<WeatherSummary> }
  /** The browser could not read the file, for example since it was moved meanwhile. */
  | { readonly kind: 'failed'; readonly message: string };

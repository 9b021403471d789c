/** Reads a weather file as it comes in, with word of how far it is and a way to stop. */
import type { Reading } from '../faults.ts';
import type { WeatherSummary } from './monthly.ts';
import { weatherReader, weatherSizeFault } from './reader.ts';
import { refused } from './station.ts';

export interface ReadProgress {
  readonly readBytes: number;
  readonly totalBytes: number;
}

export interface ReadOptions {
  readonly onprogress?: (progress: ReadProgress) => void;
  /** Stops between two pieces; the promise then rejects with the signal's reason. */
  readonly signal?: AbortSignal;
}

/** Bytes taken at once: browsers hand over as much as 2 MB, more than a step of the progress should be. */
export const PIECE_BYTES = 262_144;

function* piecesOf(bytes: Uint8Array): Generator<Uint8Array, void> {
  for (let from = 0; from < bytes.length; from += PIECE_BYTES) yield bytes.subarray(from, from + PIECE_BYTES);
}

/**
 * The summary of a file whose bytes come in chunks.
 *
 * @param chunks     [-] bytes in order, for example the stream of a dropped file
 * @param totalBytes [-] size of the whole, for the progress and the limit
 * @param options    [-] progress and stop
 * @returns          [-] the summary, or the faults of the file
 * @throws           the reason of the signal when it says stop
 */
export async function readWeather(
  chunks: AsyncIterable<Uint8Array>,
  totalBytes: number,
  { onprogress, signal }: ReadOptions = {},
): Promise<Reading<WeatherSummary>> {
  signal?.throwIfAborted();
  const tooLarge = weatherSizeFault(totalBytes);
  if (tooLarge !== undefined) return refused({ path: '', message: tooLarge });
  const reader = weatherReader();
  for await (const chunk of chunks) {
    for (const piece of piecesOf(chunk)) {
      signal?.throwIfAborted();
      reader.push(piece);
      if (reader.isStopped()) return reader.end();
      onprogress?.({ readBytes: reader.bytes(), totalBytes });
    }
  }
  signal?.throwIfAborted();
  return reader.end();
}

/** The summary of a file whose bytes are all there. */
export function readWeatherBytes(bytes: Uint8Array): Reading<WeatherSummary> {
  const reader = weatherReader();
  for (const piece of piecesOf(bytes)) {
    if (reader.isStopped()) break;
    reader.push(piece);
  }
  return reader.end();
}

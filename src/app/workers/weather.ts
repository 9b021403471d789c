/** Asks the weather worker for the summary of a file that a person chose or dropped. */
import type { Reading } from '../../faults.ts';
import type { WeatherSummary } from '../../weather/monthly.ts';
import type { ReadOptions } from '../../weather/read.ts';
import { weatherSizeFault } from '../../weather/reader.ts';
import type { WeatherReply, WeatherRequest } from './weatherMessages.ts';

/** The part of a worker that is used here; tests bring their own. */
export type WeatherWorker = Pick<Worker, 'addEventListener' | 'postMessage' | 'terminate'>;

const newWorker = (): WeatherWorker =>
  new Worker(new URL('./weather.worker.ts', import.meta.url), { type: 'module' });

/**
 * Reads a weather file in a worker of its own.
 *
 * Resolves to the summary or to the faults of the file. Rejects with the signal's reason when it is stopped, and with
 * an error when the browser cannot read the file or start the worker. The worker is ended in every case.
 */
export async function readWeatherFile(
  file: Blob,
  { onprogress, signal }: ReadOptions = {},
  startWorker: () => WeatherWorker = newWorker,
): Promise<Reading<WeatherSummary>> {
  signal?.throwIfAborted();
  const tooLarge = weatherSizeFault(file.size);
  if (tooLarge !== undefined) return { ok: false, faults: [{ path: '', message: tooLarge }] };
  const worker = startWorker();
  let stop: (() => void) | undefined;
  try {
    return await new Promise<Reading<WeatherSummary>>((resolve, reject) => {
      stop = () => {
        reject(signal?.reason as Error);
      };
      signal?.addEventListener('abort', stop, { once: true });
      worker.addEventListener('error', ({ message }) => {
        reject(new Error(message || 'the weather worker did not start'));
      });
      worker.addEventListener('message', ({ data }: MessageEvent<WeatherReply>) => {
        switch (data.kind) {
          case 'progress':
            // A message may still be under way when the reader says stop.
            if (!signal?.aborted) onprogress?.({ readBytes: data.readBytes, totalBytes: data.totalBytes });
            return;
          case 'done':
            resolve(data.reading);
            return;
          case 'failed':
            reject(new Error(data.message));
            return;
        }
      });
      const request: WeatherRequest = { file };
      worker.postMessage(request);
    });
  } finally {
    if (stop !== undefined) signal?.removeEventListener('abort', stop);
    worker.terminate();
  }
}

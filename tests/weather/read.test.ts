/** Reading in chunks with progress and a way to stop; the page's side of the worker, with a worker of the test's own. */
import { describe, expect, it } from 'vitest';
import { chunksOf } from '../../src/app/workers/chunks.ts';
import { readWeatherFile, type WeatherWorker } from '../../src/app/workers/weather.ts';
import type { WeatherReply, WeatherRequest } from '../../src/app/workers/weatherMessages.ts';
import { PIECE_BYTES, readWeather, readWeatherBytes, type ReadProgress } from '../../src/weather/read.ts';
import { LARGEST_WEATHER_BYTES } from '../../src/weather/reader.ts';
import { bytesOf, epwText } from './files.ts';

const bytes = bytesOf(epwText());
const PIECES = 20;

async function* pieces(taken: number[] = []): AsyncGenerator<Uint8Array, void> {
  const size = Math.ceil(bytes.length / PIECES);
  for (let from = 0; from < bytes.length; from += size) {
    await Promise.resolve();
    taken.push(from);
    yield bytes.subarray(from, from + size);
  }
}

describe('reading in chunks', () => {
  it('tells of a progress that rises to the whole', async () => {
    const seen: ReadProgress[] = [];
    const reading = await readWeather(pieces(), bytes.length, { onprogress: (step) => seen.push(step) });
    expect(reading).toEqual(readWeatherBytes(bytes));
    expect(seen).toHaveLength(PIECES);
    for (const [index, { readBytes, totalBytes }] of seen.entries()) {
      expect(readBytes).toBeGreaterThan(seen[index - 1]?.readBytes ?? 0);
      expect(totalBytes).toBe(bytes.length);
    }
    expect(seen.at(-1)?.readBytes).toBe(bytes.length);
  });

  it('tells of a large chunk piece by piece', async () => {
    const seen: number[] = [];
    await readWeather(chunksOf(new Blob([bytes.slice()])), bytes.length, {
      onprogress: ({ readBytes }) => seen.push(readBytes),
    });
    expect(seen.length).toBeGreaterThanOrEqual(Math.ceil(bytes.length / PIECE_BYTES));
    expect(seen.at(-1)).toBe(bytes.length);
  });

  it('stops where it is told to, with the reason, and takes no more', async () => {
    const stop = new AbortController();
    const taken: number[] = [];
    let seen = 0;
    const reading = readWeather(pieces(taken), bytes.length, {
      signal: stop.signal,
      onprogress: () => {
        seen += 1;
        if (seen === 3) stop.abort(new Error('stopped by the reader'));
      },
    });
    await expect(reading).rejects.toThrow('stopped by the reader');
    expect(seen).toBe(3);
    expect(taken.length).toBeLessThanOrEqual(4);
  });

  it('does not begin when it is stopped already', async () => {
    const taken: number[] = [];
    await expect(readWeather(pieces(taken), bytes.length, { signal: AbortSignal.abort() })).rejects.toThrow();
    expect(taken).toEqual([]);
  });

  it('gives up at the first fault that ends the file, without taking the rest', async () => {
    const taken: number[] = [];
    async function* wrong(): AsyncGenerator<Uint8Array, void> {
      yield bytesOf('not a weather file\n');
      yield* pieces(taken);
    }
    expect(await readWeather(wrong(), bytes.length)).toMatchObject({
      ok: false,
      faults: [{ path: 'line 1' }],
    });
    expect(taken).toEqual([]);
  });

  it('refuses a file that says it is too large before taking any of it', async () => {
    const taken: number[] = [];
    const reading = await readWeather(pieces(taken), LARGEST_WEATHER_BYTES + 1);
    expect(reading).toMatchObject({ ok: false, faults: [{ path: '' }] });
    expect(taken).toEqual([]);
  });

  it('reads a file of the browser through its stream', async () => {
    const reading = await readWeather(chunksOf(new Blob([bytes.slice()])), bytes.length);
    expect(reading).toEqual(readWeatherBytes(bytes));
  });
});

/** A worker that answers as the test says, and remembers what became of it. */
class TestWorker extends EventTarget {
  isEnded = false;
  readonly requests: WeatherRequest[] = [];
  readonly #answer: (worker: TestWorker) => void;

  constructor(answer: (worker: TestWorker) => void) {
    super();
    this.#answer = answer;
  }

  postMessage(request: WeatherRequest): void {
    this.requests.push(request);
    queueMicrotask(() => {
      this.#answer(this);
    });
  }

  say(data: WeatherReply): void {
    this.dispatchEvent(new MessageEvent('message', { data }));
  }

  terminate(): void {
    this.isEnded = true;
  }
}

const asWorker = (worker: TestWorker): WeatherWorker => worker as unknown as WeatherWorker;

describe("the page's side of the weather worker", () => {
  const file = new Blob([bytes.slice(0, 100)]);
  const reading = { ok: false, faults: [{ path: 'line 1', message: 'x' }] } as const;

  it('hands the file over, passes the progress on and ends the worker', async () => {
    const worker = new TestWorker((self) => {
      self.say({ kind: 'progress', readBytes: 40, totalBytes: 100 });
      self.say({ kind: 'done', reading });
    });
    const seen: ReadProgress[] = [];
    const found = await readWeatherFile(file, { onprogress: (step) => seen.push(step) }, () =>
      asWorker(worker),
    );
    expect(found).toEqual(reading);
    expect(seen).toEqual([{ readBytes: 40, totalBytes: 100 }]);
    expect(worker.requests).toEqual([{ file }]);
    expect(worker.isEnded).toBe(true);
  });

  it('ends the worker when it is stopped, and tells of no more progress', async () => {
    const stop = new AbortController();
    const seen: ReadProgress[] = [];
    const worker = new TestWorker((self) => {
      self.say({ kind: 'progress', readBytes: 40, totalBytes: 100 });
      stop.abort();
      self.say({ kind: 'progress', readBytes: 80, totalBytes: 100 });
    });
    const found = readWeatherFile(file, { onprogress: (step) => seen.push(step), signal: stop.signal }, () =>
      asWorker(worker),
    );
    await expect(found).rejects.toMatchObject({ name: 'AbortError' });
    expect(seen).toHaveLength(1);
    expect(worker.isEnded).toBe(true);
  });

  it.each([
    [
      'a failure of the worker',
      (self: TestWorker) => {
        self.say({ kind: 'failed', message: 'the file was moved' });
      },
      'the file was moved',
    ],
    [
      'a worker that does not start',
      (self: TestWorker) => {
        self.dispatchEvent(new Event('error'));
      },
      'the weather worker did not start',
    ],
  ])('%s is an error, and the worker is ended', async (_, answer, message) => {
    const worker = new TestWorker(answer);
    await expect(readWeatherFile(file, {}, () => asWorker(worker))).rejects.toThrow(message);
    expect(worker.isEnded).toBe(true);
  });

  it('starts no worker for a file that is too large, or when it is stopped already', async () => {
    const never = (): WeatherWorker => {
      throw new Error('a worker was started');
    };
    const large = { size: LARGEST_WEATHER_BYTES + 1 } as Blob;
    expect(await readWeatherFile(large, {}, never)).toMatchObject({ ok: false });
    await expect(readWeatherFile(file, { signal: AbortSignal.abort() }, never)).rejects.toThrow();
  });
});

/** One weather file on its way in: being read, read, or refused. It becomes an answer only when the reader says so. */
import type { Fault, Reading } from '../../faults.ts';
import type { WeatherSummary } from '../../weather/monthly.ts';
import { placeOfWeather, type PlaceOfWeather } from '../../weather/place.ts';
import type { ReadProgress } from '../../weather/read.ts';
import { readWeatherFile } from '../workers/weather.ts';

export type WeatherState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly name: string; readonly progress: ReadProgress }
  | { readonly kind: 'stopped'; readonly name: string }
  | { readonly kind: 'refused'; readonly name: string; readonly faults: readonly Fault[] }
  | {
      readonly kind: 'read';
      readonly name: string;
      readonly summary: WeatherSummary;
      readonly place: PlaceOfWeather;
    };

const NONE: WeatherState = { kind: 'none' };

export class WeatherReading {
  #state = $state.raw<WeatherState>(NONE);
  #stopping: AbortController | null = null;
  readonly #readFile: typeof readWeatherFile;

  constructor(readFile: typeof readWeatherFile = readWeatherFile) {
    this.#readFile = readFile;
  }

  get state(): WeatherState {
    return this.#state;
  }

  /** Takes what was chosen or dropped: one file. Whatever was being read is stopped. */
  async take(files: readonly File[]): Promise<void> {
    this.#stopping?.abort();
    const [file] = files;
    if (file === undefined) return;
    if (files.length > 1) {
      const message = `${files.length} files were given; one weather file at a time is read`;
      this.#state = { kind: 'refused', name: file.name, faults: [{ path: '', message }] };
      return;
    }
    await this.#read(file);
  }

  /** Stops the reading; nothing has been taken. */
  cancel(): void {
    this.#stopping?.abort();
    if (this.#state.kind === 'reading') this.#state = { kind: 'stopped', name: this.#state.name };
  }

  /** Forgets the file and stops its reading. */
  forget(): void {
    this.#stopping?.abort();
    this.#state = NONE;
  }

  async #read(file: File): Promise<void> {
    const stopping = new AbortController();
    const { name } = file;
    this.#stopping = stopping;
    this.#state = { kind: 'reading', name, progress: { readBytes: 0, totalBytes: file.size } };
    const next = await this.#outcome(file, {
      signal: stopping.signal,
      onprogress: (progress) => {
        if (!stopping.signal.aborted) this.#state = { kind: 'reading', name, progress };
      },
    });
    // Another file, or a stop, has come in between.
    if (!stopping.signal.aborted) this.#state = next;
  }

  async #outcome(file: File, options: Parameters<typeof readWeatherFile>[1]): Promise<WeatherState> {
    const { name } = file;
    let reading: Reading<WeatherSummary>;
    try {
      reading = await this.#readFile(file, options);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      const message = `could not be read (${why}); choose a file, not a folder, that is on this computer`;
      return { kind: 'refused', name, faults: [{ path: '', message }] };
    }
    if (!reading.ok) return { kind: 'refused', name, faults: reading.faults };
    return { kind: 'read', name, summary: reading.value, place: placeOfWeather(reading.value, name) };
  }
}

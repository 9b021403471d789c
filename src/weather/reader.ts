/**
 * Reads a weather file (EPW or TMY3) chunk by chunk, so that a caller can show how far it is, and stop.
 * Whatever the bytes are, memory stays bounded and the end is a summary or a list of faults.
 */
import { LISTED_FAULTS, shown, type Fault, type Reading } from '../faults.ts';
import { epwHour, epwStation, headerFault, headerWords, WHOLE_FIELDS, type HeaderLine } from './epw.ts';
import { lineSplitter, LONGEST_LINE_BYTES, type Line } from './lines.ts';
import { summaryOf, type WeatherSummary } from './monthly.ts';
import { lineFault, refused, type Station, type WeatherHour } from './station.ts';
import { isStationLine, tmy3Columns, tmy3Hour, tmy3Station, type Columns } from './tmy3.ts';
import { gatherYear } from './year.ts';

/** Largest weather file read, in bytes: an hourly file has about 1.6 million, one with a record a minute would be larger. */
export const LARGEST_WEATHER_BYTES = 40_000_000;

const MOST_READ = `the ${LARGEST_WEATHER_BYTES} bytes (40 MB) that are read; an hourly year has about 1,700,000`;

/** Why a weather file of this size is not read, or undefined when it may be. */
export function weatherSizeFault(bytes: number): string | undefined {
  return bytes > LARGEST_WEATHER_BYTES ? `has ${bytes} bytes, more than ${MOST_READ}` : undefined;
}

export interface WeatherReader {
  /** Takes the next bytes of the file, in pieces of any size. */
  readonly push: (chunk: Uint8Array) => void;
  /** Ends the file: its summary, or every fault found, up to a limit. */
  readonly end: () => Reading<WeatherSummary>;
  /** Bytes taken so far. */
  readonly bytes: () => number;
  /** True once further bytes cannot change the outcome. */
  readonly isStopped: () => boolean;
}

/** Beginnings of files that people drop by mistake, as Western text, and what to do. */
const MISTAKEN: readonly { readonly start: string; readonly message: string }[] = [
  { start: 'PK', message: 'is a ZIP archive; unpack it and give the .epw or .csv file in it' },
  { start: '\u001f\u008b', message: 'is compressed; unpack it first' },
  { start: '%PDF', message: 'is a PDF, not a weather file' },
  { start: '\u00ff\u00fe', message: 'is UTF-16 text; save it as UTF-8' },
  { start: '\u00fe\u00ff', message: 'is UTF-16 text; save it as UTF-8' },
];

function mistaken(first: Uint8Array): string | undefined {
  return MISTAKEN.find(({ start }) =>
    [...start].every((character, index) => first[index] === character.charCodeAt(0)),
  )?.message;
}

/** How the lines are read: nothing known yet, headers of one format, or records. */
type Stage =
  | { readonly at: 'start' }
  | { readonly at: 'epw-headers'; readonly headers: HeaderLine[] }
  | { readonly at: 'tmy3-columns'; readonly station: Station }
  | { readonly at: 'epw-records'; readonly station: Station }
  | { readonly at: 'tmy3-records'; readonly station: Station; readonly columns: Columns };

const UNFINISHED: Readonly<Record<'start' | 'epw-headers' | 'tmy3-columns', string>> = {
  start: 'is empty; an EPW or TMY3 weather file is needed',
  'epw-headers': `ends before its ${headerWords.length} header lines are complete`,
  'tmy3-columns': 'ends before the line of column names',
};

/** A reader for one file. */
export function weatherReader(): WeatherReader {
  const lines = lineSplitter();
  const gathering = gatherYear();
  const faults: Fault[] = [];
  let stage: Stage = { at: 'start' };
  let bytes = 0;
  let isStopped = false;

  /** Stops at a fault after which the rest of the file means nothing. */
  function stop(...found: readonly Fault[]): void {
    faults.push(...found);
    isStopped = true;
  }

  function begin({ number, text }: Line): void {
    if (headerFault(0, { line: number, text }) === undefined) {
      stage = { at: 'epw-headers', headers: [{ line: number, text }] };
      return;
    }
    if (!isStationLine(text)) {
      const forms = 'an EPW file ("LOCATION,…") nor a TMY3 table (station number, name, state, …)';
      stop(lineFault(number, `${shown(text)} is the first line of neither ${forms}`));
      return;
    }
    const station = tmy3Station(text, number);
    if (station.ok) stage = { at: 'tmy3-columns', station: station.value };
    else stop(...station.faults);
  }

  function takeHeader(headers: HeaderLine[], line: HeaderLine): void {
    const fault = headerFault(headers.length, line);
    if (fault !== undefined) {
      stop(fault);
      return;
    }
    headers.push(line);
    if (headers.length < headerWords.length) return;
    const station = epwStation(headers);
    if (station.ok) stage = { at: 'epw-records', station: station.value };
    else stop(...station.faults);
  }

  function takeHour(station: Station, hour: WeatherHour | string, line: number): void {
    if (typeof hour === 'string') {
      faults.push(lineFault(line, hour));
    } else if (!gathering.take(hour, line, station.recordsPerHour)) {
      const times = station.recordsPerHour === 1 ? 'twice' : `more than ${station.recordsPerHour} times`;
      const moment = `${hour.month}/${hour.day} hour ${hour.hour}`;
      faults.push(lineFault(line, `${moment} comes ${times}; a file of one year is needed`));
    }
    if (faults.length >= LISTED_FAULTS) {
      stop({ path: '', message: `is not read further after ${LISTED_FAULTS} faults` });
    }
  }

  function takeLine({ number, text }: Line): void {
    switch (stage.at) {
      case 'start':
        begin({ number, text });
        return;
      case 'epw-headers':
        takeHeader(stage.headers, { line: number, text });
        return;
      case 'tmy3-columns': {
        const columns = tmy3Columns(text, number);
        if (columns.ok) stage = { at: 'tmy3-records', station: stage.station, columns: columns.value };
        else stop(...columns.faults);
        return;
      }
      case 'epw-records': {
        const hour = epwHour(text);
        if (typeof hour !== 'string' && hour.fields < WHOLE_FIELDS) gathering.note('shortRecord', number);
        takeHour(stage.station, hour, number);
        return;
      }
      case 'tmy3-records':
        takeHour(stage.station, tmy3Hour(text, stage.columns), number);
        return;
    }
  }

  function takeAll(some: Iterable<Line>): void {
    for (const line of some) {
      if (isStopped) return;
      takeLine(line);
    }
    const broken = lines.broken();
    if (broken === undefined || isStopped) return;
    const why =
      broken.why === 'too-long'
        ? `is longer than ${LONGEST_LINE_BYTES} bytes; no weather file has such a line`
        : 'holds a zero byte; a weather file is plain text';
    stop(lineFault(broken.number, why));
  }

  function push(chunk: Uint8Array): void {
    const isFirst = bytes === 0;
    bytes += chunk.length;
    if (isStopped) return;
    const wrong = isFirst ? mistaken(chunk) : undefined;
    if (wrong !== undefined) stop({ path: '', message: wrong });
    else if (bytes > LARGEST_WEATHER_BYTES) stop({ path: '', message: `is longer than ${MOST_READ}` });
    else takeAll(lines.push(chunk));
  }

  function end(): Reading<WeatherSummary> {
    if (!isStopped) takeAll(lines.end());
    isStopped = true;
    if (faults.length > 0) return refused(...faults);
    return stage.at === 'epw-records' || stage.at === 'tmy3-records'
      ? summaryOf(stage.station, gathering.year())
      : refused({ path: '', message: UNFINISHED[stage.at] });
  }

  return { push, end, bytes: () => bytes, isStopped: () => isStopped };
}

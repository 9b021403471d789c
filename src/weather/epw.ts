/**
 * The EPW hourly weather file: eight header lines and records of 35 fields.
 * Layout: US DOE / NREL, EnergyPlus Auxiliary Programs, weather file data dictionary (seen), and real files (seen).
 */
import { shown, type Fault, type Reading } from '../faults.ts';
import {
  amountIn,
  epwFields,
  fieldNames,
  numberIn,
  type Amount,
  type FieldName,
  type FieldRule,
} from './fields.ts';
import {
  lineFault,
  momentIn,
  placeNameOf,
  plainWords,
  positionIn,
  refused,
  wholeIn,
  yearIn,
  type QuotedDesign,
  type Station,
  type WeatherHour,
} from './station.ts';

/** The first words of the header lines; the dictionary spells SAVING, real files SAVINGS. */
export const headerWords = [
  ['LOCATION'],
  ['DESIGN CONDITIONS'],
  ['TYPICAL/EXTREME PERIODS'],
  ['GROUND TEMPERATURES'],
  ['HOLIDAYS/DAYLIGHT SAVINGS', 'HOLIDAYS/DAYLIGHT SAVING'],
  ['COMMENTS 1'],
  ['COMMENTS 2'],
  ['DATA PERIODS'],
] as const;

/** Fields that a record needs at least (data dictionary, seen). */
export const LEAST_FIELDS = 10;
/** Fields from which on a record counts as whole: older files lack the last three (memory). */
export const WHOLE_FIELDS = 32;
/** [1/h] most records an hour: one a minute. */
const MOST_RECORDS = 60;
/** [°C] limits of a quoted design temperature, as the case file has them. */
const DESIGN_LIMITS_C = [-60, 30] as const;
const LAST_MONTH = 12;

const cellsOf = (line: string): string[] => line.split(',').map((cell) => cell.trim());

/** A header line with its number in the file. */
export interface HeaderLine {
  readonly line: number;
  readonly text: string;
}

/** The fault of a line that is not the header line that belongs at this place (0 to 7). */
export function headerFault(index: number, { line, text }: HeaderLine): Fault | undefined {
  const expected: readonly string[] = headerWords[index] ?? [];
  const [word = ''] = cellsOf(text);
  if (expected.includes(word.toUpperCase())) return undefined;
  return lineFault(
    line,
    `${shown(word)} stands where ${expected[0] ?? 'nothing'} belongs, header line ${index + 1} of ${headerWords.length}`,
  );
}

/**
 * The heating design temperatures of a DESIGN CONDITIONS line.
 *
 * Read by the word `Heating`: the count of values after it depends on the handbook's year, their beginning does not.
 * The order is coldest month, 99.6 %, 99 %; a line that does not make sense in that order gives nothing.
 */
export function quotedDesign(text: string): QuotedDesign | undefined {
  const cells = cellsOf(text);
  const heating = cells.findIndex((cell) => cell.toLowerCase() === 'heating');
  if (heating < 0) return undefined;
  const [month, heating996_C, heating99_C] = cells.slice(heating + 1).map(numberIn);
  if (month === undefined || heating996_C === undefined || heating99_C === undefined) return undefined;
  const [least, most] = DESIGN_LIMITS_C;
  const isSound =
    Number.isInteger(month) &&
    month >= 1 &&
    month <= LAST_MONTH &&
    heating996_C >= least &&
    heating996_C <= heating99_C &&
    heating99_C <= most;
  return isSound
    ? { heating996_C, heating99_C, source: plainWords(cells[2] ?? '') || 'the file' }
    : undefined;
}

/** The station from the eight header lines, whose first words are known to be right. */
export function epwStation(headers: readonly HeaderLine[]): Reading<Station> {
  const [location, design, , , , , , periods] = headers;
  if (location === undefined || design === undefined || periods === undefined) {
    return refused({
      path: '',
      message: `ends after ${headers.length} of ${headerWords.length} header lines`,
    });
  }
  const [
    ,
    city = '',
    region = '',
    country = '',
    origin = '',
    ,
    latitude = '',
    longitude = '',
    ,
    elevation = '',
  ] = cellsOf(location.text);
  const position = positionIn([latitude, longitude, elevation], location.line);
  const recordsPerHour = wholeIn(cellsOf(periods.text)[2] ?? '', 'records per hour', 1, MOST_RECORDS);
  const faults = [
    ...(position.ok ? [] : position.faults),
    ...(typeof recordsPerHour === 'string' ? [lineFault(periods.line, recordsPerHour)] : []),
  ];
  if (!position.ok || typeof recordsPerHour === 'string') return { ok: false, faults };
  const value: Station = {
    format: 'epw',
    placeName: placeNameOf([city, region, country]),
    source: plainWords(origin),
    country,
    region,
    ...position.value,
    design: quotedDesign(design.text),
    recordsPerHour,
  };
  return { ok: true, value };
}

/** One data record: every numeric field by name, and the two that are text. */
export interface EpwRecord {
  readonly amounts: Readonly<Record<FieldName, Amount>>;
  readonly flags: string;
  readonly weatherCodes: string;
  /** How many fields the line has: 35 when whole, fewer in older files. */
  readonly fields: number;
}

/** Fields whose text must be a number; a strange text in another field only counts as missing there. */
const MUST_BE_NUMBERS: ReadonlySet<string> = new Set<FieldName>([
  'year',
  'month',
  'day',
  'hour',
  'dryBulb_C',
  'dewPoint_C',
  'relativeHumidity_pct',
  'pressure_Pa',
]);
const FLAGS_COLUMN = 6;
const WEATHER_CODES_COLUMN = 28;

/** Reads one data line; the fault in words when it is none. */
export function epwRecord(text: string): EpwRecord | string {
  const cells = text.split(',');
  if (cells.length < LEAST_FIELDS) {
    return `${shown(text)} is no data record: it has ${cells.length} fields, at least ${LEAST_FIELDS} are needed`;
  }
  const amounts: Partial<Record<FieldName, Amount>> = {};
  for (const name of fieldNames) {
    const rule: FieldRule = epwFields[name];
    const cell = cells[rule.column - 1] ?? '';
    const amount = amountIn(cell, rule);
    if (amount === undefined && MUST_BE_NUMBERS.has(name))
      return `${rule.words}: ${shown(cell)} is not a number`;
    amounts[name] = amount ?? 'missing';
  }
  return {
    amounts: amounts as Record<FieldName, Amount>,
    flags: (cells[FLAGS_COLUMN - 1] ?? '').trim(),
    weatherCodes: (cells[WEATHER_CODES_COLUMN - 1] ?? '').trim(),
    fields: cells.length,
  };
}

/** What the summary needs of a data line; the fault in words when the line is none. */
export function epwHour(text: string): (WeatherHour & { readonly fields: number }) | string {
  const record = epwRecord(text);
  if (typeof record === 'string') return record;
  const { dryBulb_C, dewPoint_C, relativeHumidity_pct, year, month, day, hour } = record.amounts;
  const [inMonth = '', onDay = '', atHour = ''] = [month, day, hour].map((amount) =>
    typeof amount === 'number' ? String(amount) : '',
  );
  const moment = momentIn(inMonth, onDay, atHour);
  if (typeof moment === 'string') return moment;
  return {
    ...moment,
    year: yearIn(typeof year === 'number' ? year : undefined),
    dryBulb_C,
    dewPoint_C,
    relativeHumidity_pct,
    fields: record.fields,
  };
}

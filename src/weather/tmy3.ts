/**
 * The TMY3 table (CSV): a line for the station, a line of column names, then a record for each hour.
 * Columns are found by name, since their number differs between files (seen on a real file); missing is -9900 (memory).
 */
import { shown, type Fault, type Reading } from '../faults.ts';
import { amountIn, HUMIDITY_LIMITS, TEMPERATURE_LIMITS, type Amount, type CellRule } from './fields.ts';
import {
  lineFault,
  momentIn,
  placeNameOf,
  positionIn,
  refused,
  yearIn,
  type Station,
  type WeatherHour,
} from './station.ts';

/** The cells of a line whose texts may stand in quotes and hold commas there. */
export function quotedCells(line: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (const character of line) {
    if (character === '"') isQuoted = !isQuoted;
    else if (character === ',' && !isQuoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += character;
  }
  return [...cells, cell.trim()];
}

const STATION_CELLS = 7;

/** Whether a first line looks like the station line: a number, a name, a state and four numbers. */
export function isStationLine(line: string): boolean {
  const cells = quotedCells(line);
  return cells.length === STATION_CELLS && /^\d+$/.test(cells[0] ?? '');
}

/** The station of the first line. */
export function tmy3Station(text: string, line: number): Reading<Station> {
  const [, name = '', region = '', , latitude = '', longitude = '', elevation = ''] = quotedCells(text);
  const position = positionIn([latitude, longitude, elevation], line);
  if (!position.ok) return position;
  const value: Station = {
    format: 'tmy3',
    placeName: placeNameOf([name, region, 'USA']),
    source: 'TMY3',
    // The set covers the United States and their areas only, so the file names no country.
    country: 'USA',
    region,
    ...position.value,
    design: undefined,
    recordsPerHour: 1,
  };
  return { ok: true, value };
}

const columnNames = {
  date: 'Date (MM/DD/YYYY)',
  time: 'Time (HH:MM)',
  dryBulb_C: 'Dry-bulb (C)',
  dewPoint_C: 'Dew-point (C)',
  relativeHumidity_pct: 'RHum (%)',
} as const;
type ColumnName = keyof typeof columnNames;
export interface Columns extends Readonly<Record<ColumnName, number>> {
  /** Cells of a whole line. */
  readonly count: number;
}

/** Where the columns stand that are needed; every one that is not there is a fault. */
export function tmy3Columns(text: string, line: number): Reading<Columns> {
  const cells = quotedCells(text).map((cell) => cell.toLowerCase());
  const columns: Partial<Record<ColumnName, number>> = {};
  const faults: Fault[] = [];
  for (const [name, words] of Object.entries(columnNames) as [ColumnName, string][]) {
    const at = cells.indexOf(words.toLowerCase());
    if (at < 0) faults.push(lineFault(line, `has no column "${words}", which a TMY3 table needs`));
    else columns[name] = at;
  }
  if (faults.length > 0) return refused(...faults);
  return { ok: true, value: { ...(columns as Record<ColumnName, number>), count: cells.length } };
}

const MISSING_TMY3 = -9900;
const temperatureRule: CellRule = { ...TEMPERATURE_LIMITS, missingDownFrom: MISSING_TMY3 };
const humidityRule: CellRule = { ...HUMIDITY_LIMITS, missingDownFrom: MISSING_TMY3 };

const DATE = /^(\d{1,2})\/(\d{1,2})\/(\d{4})$/;
const TIME = /^(\d{1,2}):00$/;

/** One record; the fault in words when the line is none. 24:00 closes the day of its date. */
export function tmy3Hour(text: string, columns: Columns): WeatherHour | string {
  const cells = quotedCells(text);
  if (cells.length < columns.count) {
    return `${shown(text)} is no whole record: it has ${cells.length} cells, the columns are ${columns.count}`;
  }
  const cellOf = (name: ColumnName): string => cells[columns[name]] ?? '';
  const date = DATE.exec(cellOf('date'));
  if (date === null) return `${shown(cellOf('date'))} is not a date written MM/DD/YYYY`;
  const time = TIME.exec(cellOf('time'));
  if (time === null) return `${shown(cellOf('time'))} is not a full hour from 01:00 to 24:00`;
  const moment = momentIn(date[1] ?? '', date[2] ?? '', time[1] ?? '');
  if (typeof moment === 'string') return moment;
  const amounts: [ColumnName, Amount | undefined][] = [
    ['dryBulb_C', amountIn(cellOf('dryBulb_C'), temperatureRule)],
    ['dewPoint_C', amountIn(cellOf('dewPoint_C'), temperatureRule)],
    ['relativeHumidity_pct', amountIn(cellOf('relativeHumidity_pct'), humidityRule)],
  ];
  const strange = amounts.find(([, amount]) => amount === undefined);
  if (strange !== undefined)
    return `${columnNames[strange[0]]}: ${shown(cellOf(strange[0]))} is not a number`;
  const [dryBulb_C, dewPoint_C, relativeHumidity_pct] = amounts.map(([, amount]) => amount ?? 'missing');
  return {
    ...moment,
    year: yearIn(Number(date[3])),
    dryBulb_C: dryBulb_C ?? 'missing',
    dewPoint_C: dewPoint_C ?? 'missing',
    relativeHumidity_pct: relativeHumidity_pct ?? 'missing',
  };
}

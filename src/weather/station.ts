/** What both kinds of weather file say: the station, and one hour. */
import { shown, type Fault, type Reading } from '../faults.ts';
import { numberIn, type Amount } from './fields.ts';

export type WeatherFormat = 'epw' | 'tmy3';

/** Heating design temperatures that the file quotes for its station. */
export interface QuotedDesign {
  readonly heating996_C: number;
  readonly heating99_C: number;
  /** The handbook that the file names. */
  readonly source: string;
}

export interface Station {
  readonly format: WeatherFormat;
  readonly placeName: string;
  /** The set of data that the file names, such as TMY3; empty where it names none. */
  readonly source: string;
  /** Three letters in an EPW file (USA, CAN); empty where the file names none. */
  readonly country: string;
  /** State or province as the file writes it. */
  readonly region: string;
  /** North positive. */
  readonly latitude_deg: number;
  /** East positive, so negative in North America. */
  readonly longitude_deg: number;
  readonly elevation_m: number;
  readonly design: QuotedDesign | undefined;
  readonly recordsPerHour: number;
}

/** One record of a file. The year is only kept to be shown: in a typical year it changes from month to month. */
export interface WeatherHour {
  readonly year?: number | undefined;
  readonly month: number;
  readonly day: number;
  /** 1 to 24; hour 1 is from 00:01 to 01:00 local standard time. */
  readonly hour: number;
  readonly dryBulb_C: Amount;
  readonly dewPoint_C: Amount;
  readonly relativeHumidity_pct: Amount;
}

/** [d] days of the months of a leap year: a file may hold 29 February. */
export const DAYS_WITH_LEAP = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
/** [h] hours of a day. */
export const HOURS_PER_DAY = 24;

export const lineFault = (line: number, message: string): Fault => ({ path: `line ${line}`, message });
export const refused = (...faults: readonly Fault[]): Reading<never> => ({ ok: false, faults });

/** A whole number within limits as it stands in a cell, or the fault in words. */
export function wholeIn(text: string, words: string, least: number, most: number): number | string {
  if (text.trim() === '') return `${words} is missing`;
  const value = numberIn(text);
  if (value === undefined) return `${words}: ${shown(text)} is not a number`;
  if (!Number.isInteger(value)) return `${words}: ${value} is not a whole number`;
  if (value < least || value > most) return `${words}: ${value} is outside ${least} to ${most}`;
  return value;
}

/** Month, day and hour of a record; they may not be missing. */
export function momentIn(
  month: string,
  day: string,
  hour: string,
): Pick<WeatherHour, 'month' | 'day' | 'hour'> | string {
  const inMonth = wholeIn(month, 'month', 1, DAYS_WITH_LEAP.length);
  if (typeof inMonth === 'string') return inMonth;
  const onDay = wholeIn(day, 'day', 1, DAYS_WITH_LEAP[inMonth - 1] ?? 0);
  if (typeof onDay === 'string') return onDay;
  const atHour = wholeIn(hour, 'hour', 1, HOURS_PER_DAY);
  return typeof atHour === 'string' ? atHour : { month: inMonth, day: onDay, hour: atHour };
}

/** [-] years that a record may have been measured in (our judgement); other numbers are not shown as years. */
const FIRST_YEAR = 1800;
const LAST_YEAR = 2200;

/** The year of a record where it is one; it decides nothing. */
export const yearIn = (value: number | undefined): number | undefined =>
  value !== undefined && Number.isInteger(value) && value >= FIRST_YEAR && value <= LAST_YEAR
    ? value
    : undefined;

/** [°], [°], [m] limits of a position; elevations from the data dictionary (memory), as are those of latitude and longitude. */
const POSITION = [
  ['latitude', 'latitude_deg', -90, 90],
  ['longitude', 'longitude_deg', -180, 180],
  ['elevation', 'elevation_m', -1000, 9999.9],
] as const;

type Position = Pick<Station, 'latitude_deg' | 'longitude_deg' | 'elevation_m'>;

/** Latitude, longitude and elevation in that order; every fault of the three. */
export function positionIn(cells: readonly string[], line: number): Reading<Position> {
  const faults: Fault[] = [];
  const position = { latitude_deg: 0, longitude_deg: 0, elevation_m: 0 };
  for (const [index, [words, name, least, most]] of POSITION.entries()) {
    const cell = cells[index] ?? '';
    const value = numberIn(cell);
    if (value === undefined) faults.push(lineFault(line, `${words}: ${shown(cell)} is not a number`));
    else if (value < least || value > most)
      faults.push(lineFault(line, `${words}: ${value} is outside ${least} to ${most}`));
    else position[name] = value;
  }
  return faults.length === 0 ? { ok: true, value: position } : { ok: false, faults };
}

/** Longest place name kept, in characters. */
const LONGEST_NAME = 80;
const CONTROL = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu;

/** A piece of the file's own words, on one line and short. */
export function plainWords(text: string): string {
  const bare = text.replace(CONTROL, ' ').trim();
  return bare.length > LONGEST_NAME ? `${bare.slice(0, LONGEST_NAME - 1)}…` : bare;
}

/** `Denver Intl Ap, CO, USA`; parts that are empty or a dash are left out. */
export function placeNameOf(parts: readonly string[]): string {
  const said = parts.map((part) => part.trim()).filter((part) => part !== '' && part !== '-');
  return plainWords(said.join(', ')) || 'unnamed place';
}

/** Countries of an EPW file whose longitudes are negative. */
const NORTH_AMERICA: readonly string[] = ['USA', 'CAN', 'MEX'];
/** States and areas of the United States that lie, at least in part, east of the 180th meridian. */
const EAST_OF_DATE_LINE: readonly string[] = ['AK', 'GU', 'MP', 'PW', 'FM', 'MH', 'UM'];

/** A longitude whose minus sign was probably lost. */
export function hasWrongSign({ country, region, longitude_deg }: Station): boolean {
  return (
    longitude_deg > 0 &&
    NORTH_AMERICA.includes(country.toUpperCase()) &&
    !EAST_OF_DATE_LINE.includes(region.toUpperCase())
  );
}

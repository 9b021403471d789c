/** Writing a quantity: number, unit, true minus sign, no negative zero, inches as fractions. */
import { measures } from './scales.ts';
import type { Measure, MeasureKind, Scale, System } from './scales.ts';

export interface ShowOptions {
  /** Decimals instead of the kind's own. Inch fractions become decimals too. */
  readonly digits?: number;
  /** Keep trailing zeros, for columns of figures. */
  readonly fixed?: boolean;
  /** `false` leaves the unit off (a column whose head names it). `R-` and `:12` go as well. */
  readonly unit?: boolean;
}

/** Parts of an inch that a tape shows. */
const SIXTEENTHS = 16;
const INCHES_PER_FOOT = 12;
const MINUS = '\u2212';
/** Thousands are grouped from this number on. */
const GROUP_FROM = 10_000;

/** The unit in which `show` writes and `read` takes a bare number; empty for pure numbers. */
export function unitOf(kind: MeasureKind, system: System): string {
  const { unit, style } = measures[kind][system];
  return style === 'dollars' ? `$${unit}` : unit;
}

function grouped(digits: string): string {
  const [whole = '', fraction] = digits.split('.');
  const withCommas = Number(whole) >= GROUP_FROM ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole;
  return fraction === undefined ? withCommas : `${withCommas}.${fraction}`;
}

function decimalsFor(size: number, significant: number): number {
  if (size === 0) return 0;
  return Math.min(Math.max(significant - 1 - Math.floor(Math.log10(size)), 0), 8);
}

/** The size of a number as text; the sign is put before it by `signed`. */
function figures(size: number, scale: Scale, options: ShowOptions): string {
  const digits =
    options.digits ?? (scale.significant === undefined ? scale.digits : decimalsFor(size, scale.significant));
  const rounded = size.toFixed(digits);
  const trimmed = options.fixed === true || digits === 0 ? rounded : rounded.replace(/\.?0+$/, '');
  return grouped(trimmed);
}

const signed = (value: number, size: string): string =>
  value < 0 && /[1-9]/.test(size) ? `${MINUS}${size}` : size;

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}

/** 5.5 -> `5 1/2`, to the nearest sixteenth. */
function inchFraction(size_in: number): string {
  const parts = Math.round(size_in * SIXTEENTHS);
  const whole = Math.floor(parts / SIXTEENTHS);
  const rest = parts % SIXTEENTHS;
  if (rest === 0) return grouped(String(whole));
  const common = divisor(rest, SIXTEENTHS);
  const fraction = `${rest / common}/${SIXTEENTHS / common}`;
  return whole === 0 ? fraction : `${grouped(String(whole))} ${fraction}`;
}

/** 24.5 -> `24 ft 6 in`, to the nearest inch. */
function feetAndInches(size_ft: number, withUnit: boolean): string {
  const inches = Math.round(size_ft * INCHES_PER_FOOT);
  const whole = grouped(String(Math.floor(inches / INCHES_PER_FOOT)));
  const rest = inches % INCHES_PER_FOOT;
  if (!withUnit) return rest === 0 ? `${whole}'` : `${whole}'-${rest}"`;
  if (rest === 0) return `${whole} ft`;
  return whole === '0' ? `${rest} in` : `${whole} ft ${rest} in`;
}

const joined = (number: string, unit: string): string => {
  if (unit === '') return number;
  return unit === '°' ? `${number}°` : `${number} ${unit}`;
};

/**
 * A quantity as text with its unit: `5 1/2 in`, `140 mm`, `R-26.4`, `4.65 m²·K/W`, `7:12`, `−3.2 °C`.
 * A value that is not finite is written as an en dash: there is nothing to show.
 */
export function show(kind: MeasureKind, value: number, system: System, options: ShowOptions = {}): string {
  if (!Number.isFinite(value)) return '–';
  const measure: Measure = measures[kind];
  const scale = measure[system];
  const shown = scale.shown(value);
  const size = Math.abs(shown);
  const withUnit = options.unit !== false;
  const inFractions = options.digits === undefined && options.fixed !== true;

  if (scale.style === 'feet-and-inches' && inFractions) return signed(shown, feetAndInches(size, withUnit));
  if (scale.style === 'inches' && inFractions) {
    const number = signed(shown, inchFraction(size));
    return withUnit ? `${number} ${scale.unit}` : number;
  }
  const number = figures(size, scale, options);
  if (!withUnit) return signed(shown, number);
  if (scale.style === 'r-value') return `R-${signed(shown, number)}`;
  if (scale.style === 'pitch') return `${signed(shown, number)}:12`;
  if (scale.style === 'dollars') return signed(shown, `$${number}${scale.unit}`);
  return joined(signed(shown, number), dayOrDays(scale.unit, number));
}

const dayOrDays = (unit: string, number: string): string =>
  number === '1' && (unit === 'days' || unit === 'months') ? unit.slice(0, -1) : unit;

/** Lengths as they are written on dimension lines: feet, inches and fractions, or whole millimeters. */
import { METERS_PER_INCH } from '../units.ts';
import type { System } from '../measures.ts';

const INCHES_PER_FOOT = 12;
/** [-] Sixteenths: the finest step that a tape in the field is read to (common practice). */
const STEPS_PER_INCH = 16;
const MILLIMETERS_PER_METER = 1000;

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** Inches with a fraction: 14 1/4". Under one inch the fraction stands alone. */
export function inchesText(length_m: number, steps: number = STEPS_PER_INCH): string {
  const total = Math.round((Math.abs(length_m) / METERS_PER_INCH) * steps);
  const whole = Math.floor(total / steps);
  const rest = total % steps;
  const divisor = commonDivisor(rest, steps);
  const fraction = rest === 0 ? '' : `${String(rest / divisor)}/${String(steps / divisor)}`;
  const figures = whole === 0 && fraction !== '' ? fraction : [String(whole), fraction].join(' ').trim();
  return `${length_m < 0 && total > 0 ? '−' : ''}${figures}"`;
}

/** Feet and inches once the length reaches two feet: 2'-3 1/2". */
export function feetText(length_m: number, steps: number = STEPS_PER_INCH): string {
  const total = Math.round((Math.abs(length_m) / METERS_PER_INCH) * steps);
  if (total < 2 * INCHES_PER_FOOT * steps) return inchesText(length_m, steps);
  const feet = Math.floor(total / (INCHES_PER_FOOT * steps));
  const rest = ((total % (INCHES_PER_FOOT * steps)) / steps) * METERS_PER_INCH;
  return `${length_m < 0 ? '−' : ''}${String(feet)}'-${inchesText(rest, steps)}`;
}

/** [m] to the words of a dimension in the reader's system. */
export function lengthText(length_m: number, system: System): string {
  if (system === 'IP') return feetText(length_m);
  const millimeters = length_m * MILLIMETERS_PER_METER;
  const figures = Math.abs(millimeters) < 10 ? Math.round(millimeters * 10) / 10 : Math.round(millimeters);
  return `${String(figures).replace('-', '−')} mm`;
}

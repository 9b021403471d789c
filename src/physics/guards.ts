/**
 * Guards of the physics functions: a caller's mistake is an error with the value and what is allowed,
 * never a silent number.
 */

/** Throws when a value is not a finite number within [least, greatest]. */
export function requireWithin(name: string, value: number, least: number, greatest: number): void {
  if (!Number.isFinite(value) || value < least || value > greatest) {
    throw new RangeError(`${name}: ${value} is outside ${least} to ${greatest}`);
  }
}

/** Throws when a value is not a finite number above zero. */
export function requirePositive(name: string, value: number): void {
  if (!Number.isFinite(value) || value <= 0) throw new RangeError(`${name}: ${value} is not above 0`);
}

/** Throws when a value is not a finite number of zero or more. */
export function requireNotNegative(name: string, value: number): void {
  if (!Number.isFinite(value) || value < 0) throw new RangeError(`${name}: ${value} is below 0`);
}

/** Throws when a value is not a finite number. */
export function requireFinite(name: string, value: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${name}: ${value} is not a finite number`);
}

/** The entry at an index that the caller knows to exist. */
export function at<T>(list: readonly T[], index: number): T {
  if (index < 0 || index >= list.length) throw new RangeError(`index ${index} of ${list.length} entries`);
  return list[index] as T;
}

/** The last entry of a list that is not empty. */
export function last<T>(list: readonly T[]): T {
  return at(list, list.length - 1);
}

/** Plain sum of a list. */
export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

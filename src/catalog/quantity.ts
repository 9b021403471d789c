/**
 * Schema parts for numbers and texts in inputs, with fault messages in one voice:
 * what is wrong, then what is allowed (`31 is above 24`).
 */
import * as v from 'valibot';
import { notOneOf, shown } from '../faults.ts';

export interface Limits {
  /** Lowest value allowed, itself allowed. */
  readonly atLeast?: number;
  /** Highest value allowed, itself allowed. */
  readonly atMost?: number;
  /** Lower limit, itself not allowed. */
  readonly above?: number;
  /** Upper limit, itself not allowed. */
  readonly below?: number;
}

/** A text of what a range allows: `above 0 and at most 100`. */
export function limitsInWords(limits: Limits): string {
  const parts: string[] = [];
  if (limits.atLeast !== undefined) parts.push(`at least ${limits.atLeast}`);
  if (limits.above !== undefined) parts.push(`above ${limits.above}`);
  if (limits.atMost !== undefined) parts.push(`at most ${limits.atMost}`);
  if (limits.below !== undefined) parts.push(`below ${limits.below}`);
  return parts.join(' and ');
}

function outside(value: number, limits: Limits): string | undefined {
  if (limits.atLeast !== undefined && value < limits.atLeast) return `${value} is below ${limits.atLeast}`;
  if (limits.atMost !== undefined && value > limits.atMost) return `${value} is above ${limits.atMost}`;
  if (limits.above !== undefined && value <= limits.above) return `${value} is not above ${limits.above}`;
  if (limits.below !== undefined && value >= limits.below) return `${value} is not below ${limits.below}`;
  return undefined;
}

/** A finite number within limits; NaN, infinities and texts are faults that name what is allowed. */
export function quantity(limits: Limits) {
  const allowed = limitsInWords(limits);
  const wanted = allowed === '' ? 'a number is needed' : `a number ${allowed} is needed`;
  return v.pipe(
    v.number((issue) =>
      issue.input === undefined
        ? `is missing; ${wanted}`
        : `${shown(issue.input)} is not a number; ${wanted}`,
    ),
    v.finite((issue) => `${shown(issue.input)} is not a finite number; ${wanted}`),
    v.check(
      (value) => outside(value, limits) === undefined,
      (issue) => outside(issue.input as number, limits) ?? wanted,
    ),
  );
}

/** A whole number within limits. */
export function wholeNumber(limits: Limits) {
  return v.pipe(
    quantity(limits),
    v.integer((issue) => `${shown(issue.input)} is not a whole number; ${limitsInWords(limits)} is allowed`),
  );
}

/**
 * A rule that joins several fields. It is asked only when every field by itself is good, so it may calculate
 * with them; valibot's own `check` is asked on faulty fields too.
 */
export function rule<T>(isMet: (input: T) => boolean, message: string | ((input: T) => string)) {
  return v.rawCheck<T>(({ dataset, addIssue }) => {
    if (!dataset.typed || dataset.issues !== undefined || isMet(dataset.value)) return;
    addIssue({ message: typeof message === 'string' ? message : message(dataset.value) });
  });
}

/** One of a closed set of texts. */
export function oneOf<const T extends readonly string[]>(options: T) {
  return v.picklist(options, (issue) =>
    issue.input === undefined
      ? `is missing; one of ${options.join(', ')} is needed`
      : notOneOf(issue.input, options.join(', ')),
  );
}

/** A list with a stated least and greatest length. */
export function listOf<S extends v.GenericSchema>(item: S, least: number, greatest: number) {
  const allowed = least === greatest ? `${least}` : `${least} to ${greatest}`;
  return v.pipe(
    v.array(item, (issue) =>
      issue.input === undefined
        ? `is missing; a list of ${allowed} is needed`
        : `${shown(issue.input)} is not a list; ${allowed} entries are allowed`,
    ),
    v.check(
      (list) => list.length >= least && list.length <= greatest,
      (issue) => `${(issue.input as unknown[]).length} entries; ${allowed} are allowed`,
    ),
  );
}

/** A free name of a layer or part. */
export const shortName = v.pipe(
  v.string((issue) => `${shown(issue.input)} is not a text`),
  v.maxLength(200, (issue) => `${issue.input.length} characters is above 200`),
);

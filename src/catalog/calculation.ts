/**
 * One named calculation of the command `overdeck calc`: a schema for the input and a pure function.
 * Physics and structure each export a record of these; the command, the check printer and the tests
 * all go through the same door.
 */
import type * as v from 'valibot';
import { readWith, type Fault } from '../faults.ts';

export interface Calculation<I = unknown, O = unknown> {
  /** The name on the command line: lower case with hyphens. */
  readonly name: string;
  /** One line for `calc --list`. */
  readonly summary: string;
  /** What is allowed in; faults carry messages such as `31 is above 24`. */
  readonly input: v.GenericSchema<unknown, I>;
  /** The calculation itself, for an input that the schema has passed. */
  run(input: I): O;
}

/** One fault of an input: where, and what is wrong and allowed. */
export type InputFault = Fault;

export type CalculationResult =
  | { readonly ok: true; readonly output: unknown }
  | { readonly ok: false; readonly faults: readonly InputFault[] };

/** Ties the type of the schema to the type of the function. */
export function defineCalculation<I, O>(calculation: Calculation<I, O>): Calculation {
  return calculation as Calculation;
}

/** Checks the input and runs the calculation; a bad input gives every fault, unknown fields included, never a number. */
export function calculate(calculation: Calculation, input: unknown): CalculationResult {
  const read = readWith(calculation.input, input);
  if (!read.ok) return read;
  return { ok: true, output: calculation.run(read.value) };
}

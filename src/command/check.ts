/** `overdeck check`: the whole table of check values, computed again. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as v from 'valibot';
import { calculate } from '../catalog/calculation.ts';
import { readWith } from '../faults.ts';
import { readJson } from '../json.ts';
import { calculations } from './calculations.ts';
import { root } from './place.ts';

const row = v.strictObject({
  id: v.string(),
  calculation: v.string(),
  input: v.unknown(),
  /** Dotted path in the calculation's output. */
  output: v.string(),
  expected: v.union([v.number(), v.string(), v.boolean(), v.null()]),
  tolerance: v.pipe(v.number(), v.minValue(0)),
  toleranceKind: v.picklist(['absolute', 'relative']),
  source: v.string(),
  known: v.string(),
  /** Why this tolerance. */
  why: v.optional(v.string()),
});
export const referenceSchema = v.strictObject({
  title: v.string(),
  source: v.string(),
  rows: v.pipe(v.array(row), v.minLength(1)),
});
export type ReferenceRow = v.InferOutput<typeof row>;
export type Reference = v.InferOutput<typeof referenceSchema>;

/** One row checked: what came out, how far off it is, and whether that is within the tolerance. */
export interface Checked {
  readonly row: ReferenceRow;
  readonly computed: unknown;
  readonly difference: number | null;
  readonly meets: boolean;
}

/** Every file of check values, in the order of their names. */
export function references(): { readonly file: string; readonly reference: Reference }[] {
  const folder = join(root, 'tests', 'reference');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((file) => {
      const json = readJson(readFileSync(join(folder, file), 'utf8'));
      const reading = json.ok ? readWith(referenceSchema, json.value) : json;
      if (reading.ok) return { file, reference: reading.value };
      const faults = reading.faults.map(({ path, message }) => `${path}: ${message}`);
      throw new Error(`tests/reference/${file} is wrong\n${faults.join('\n')}`);
    });
}

function valueAt(output: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (value, key) =>
        typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[key] : undefined,
      output,
    );
}

/** Computes one row and compares. */
export function checked(one: ReferenceRow): Checked {
  const calculation = calculations.find(({ name }) => name === one.calculation);
  if (calculation === undefined) throw new Error(`${one.id}: no calculation is named ${one.calculation}`);
  const result = calculate(calculation, one.input);
  if (!result.ok) {
    const faults = result.faults.map(({ path, message }) => `${path}: ${message}`).join('; ');
    throw new Error(`${one.id}: the input is wrong: ${faults}`);
  }
  const computed = valueAt(result.output, one.output);
  if (typeof one.expected !== 'number' || typeof computed !== 'number') {
    return { row: one, computed, difference: null, meets: computed === one.expected };
  }
  const difference = computed - one.expected;
  const allowed = one.toleranceKind === 'absolute' ? one.tolerance : one.tolerance * Math.abs(one.expected);
  return { row: one, computed, difference, meets: Math.abs(difference) <= allowed };
}

const DIGITS = 7;
const shortest = (value: unknown): string =>
  typeof value === 'number' ? String(Number(value.toPrecision(DIGITS))) : String(value);

function line(one: Checked): string[] {
  const { row: published, computed, difference, meets } = one;
  const tolerance = shortest(published.tolerance);
  return [
    meets ? 'meets' : 'MISSES',
    published.id,
    published.output,
    shortest(computed),
    shortest(published.expected),
    difference === null ? '' : difference.toExponential(1),
    published.toleranceKind === 'relative' ? `${tolerance} of it` : tolerance,
    `${published.source} (${published.known})`,
  ];
}

const HEAD = ['', 'value', 'output', 'computed', 'published', 'difference', 'tolerance', 'source'];

function table(rows: readonly (readonly string[])[]): string {
  const widths = HEAD.map((head, column) =>
    Math.max(head.length, ...rows.map((cells) => (cells[column] ?? '').length)),
  );
  return [HEAD, ...rows]
    .map((cells) =>
      cells
        .map((text, column) => text.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** The table as text, and whether every value is within its tolerance. */
export function check(): { readonly text: string; readonly meets: boolean } {
  const all: Checked[] = [];
  const parts = references().map(({ reference }) => {
    const rows = reference.rows.map(checked);
    all.push(...rows);
    return `${reference.title}\n${reference.source}\n\n${table(rows.map(line))}\n`;
  });
  const misses = all.filter(({ meets }) => !meets).length;
  // A value computed from a formula is a check, but nobody published it: the two are counted apart.
  const worked = all.filter(({ row: { known } }) => known === 'computed').length;
  const summary =
    `${all.length} check values (${all.length - worked} from published sources, ${worked} computed from the printed formulas): ` +
    `${all.length - misses} within their tolerance, ${misses} outside\n`;
  return { text: `${parts.join('\n')}\n${summary}`, meets: misses === 0 && all.length > 0 };
}

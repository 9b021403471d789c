/** Every published or hand-worked value of the physics tables, through the same door as the command line. */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/catalog/calculation.ts';
import { physicsCalculations } from '../../src/physics/calculations.ts';

interface Row {
  readonly id: string;
  readonly calculation: string;
  readonly input: unknown;
  readonly output: string;
  readonly expected: number | string | boolean;
  readonly tolerance: number;
  readonly toleranceKind: 'absolute' | 'relative';
  readonly source: string;
  readonly known: string;
  readonly why: string;
}

const folder = new URL('../reference/', import.meta.url);
const tables = readdirSync(folder)
  .filter((name) => /^physics-.*\.json$/.test(name))
  .map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as { title: string; rows: Row[] });

function outputAt(output: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], output);
}

function computed(row: Row): unknown {
  const calculation = physicsCalculations[row.calculation];
  if (!calculation) throw new Error(`no calculation ${row.calculation}`);
  const result = calculate(calculation, row.input);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return outputAt(result.output, row.output);
}

it('the tables hold rows for every physics calculation', () => {
  const named = new Set(tables.flatMap((table) => table.rows.map((row) => row.calculation)));
  expect([...named].sort()).toEqual(Object.keys(physicsCalculations).sort());
});

it('every row says where it is from, how it is known and why its tolerance', () => {
  for (const row of tables.flatMap((table) => table.rows)) {
    expect([row.id, row.source.length > 0, row.known.length > 0, row.why.length > 0]).toEqual([
      row.id,
      true,
      true,
      true,
    ]);
  }
});

describe.each(tables)('$title', ({ rows }) => {
  it.each(rows)('$id: $output ($source, $known)', (row) => {
    const value = computed(row);
    if (typeof row.expected !== 'number') {
      expect(value).toBe(row.expected);
      return;
    }
    const allowed = row.toleranceKind === 'relative' ? row.tolerance * Math.abs(row.expected) : row.tolerance;
    expect(Math.abs((value as number) - row.expected)).toBeLessThanOrEqual(allowed);
  });
});

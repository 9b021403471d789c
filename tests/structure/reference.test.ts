/** Every published or hand-worked value of the structural tables, through the same door as the command line. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/catalog/calculation.ts';
import { structureCalculations } from '../../src/structure/calculations.ts';

interface Row {
  readonly id: string;
  readonly calculation: string;
  readonly input: unknown;
  readonly output: string;
  readonly expected: number;
  readonly tolerance: number;
  readonly toleranceKind: 'absolute' | 'relative';
  readonly source: string;
  readonly known: string;
}

const folder = new URL('../reference/', import.meta.url);
const tables = readdirSync(folder)
  .filter((name) => /^structure-.*\.json$/.test(name))
  .map((name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as { title: string; rows: Row[] });

function outputAt(output: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], output);
}

function computed(row: Row): number {
  const calculation = structureCalculations[row.calculation];
  if (!calculation) throw new Error(`no calculation ${row.calculation}`);
  const result = calculate(calculation, row.input);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return outputAt(result.output, row.output) as number;
}

it('the tables hold rows for every calculation', () => {
  const named = new Set(tables.flatMap((table) => table.rows.map((row) => row.calculation)));
  expect([...named].sort()).toEqual(Object.keys(structureCalculations).sort());
});

describe.each(tables)('$title', ({ rows }) => {
  it.each(rows)('$id: $output ($source, $known)', (row) => {
    const allowed = row.toleranceKind === 'relative' ? row.tolerance * Math.abs(row.expected) : row.tolerance;
    expect(Math.abs(computed(row) - row.expected)).toBeLessThanOrEqual(allowed);
  });
});

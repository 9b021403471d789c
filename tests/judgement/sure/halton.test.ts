import { describe, expect, it } from 'vitest';
import { haltonSequence, primes, radicalInverse, seeded } from '../../../src/judgement/sure/halton.ts';

/** Points 0 to count - 1 of a sequence. */
function points(dimensions: number, seed: number, count: number): number[][] {
  const { point } = haltonSequence(dimensions, seed);
  return Array.from({ length: count }, (_, index) => {
    const row = new Float64Array(dimensions);
    point(index, row);
    return [...row];
  });
}

describe('the radical inverse', () => {
  // Printed output of a public test program of the Halton sequence (halton_prb, 2011 edition), read 2026-11-25.
  it.each([
    [2, 0, 0],
    [2, 1, 0.5],
    [2, 2, 0.25],
    [2, 3, 0.75],
    [2, 4, 0.125],
    [2, 7, 0.875],
    [2, 1000, 0.0927734],
    [2, 1000000, 0.00883389],
    [3, 1, 0.333333],
    [3, 5, 0.777778],
    [3, 10, 0.37037],
    [3, 11, 0.703704],
  ])('in base %i of %i is %f', (base, index, printed) => {
    expect(Math.abs(radicalInverse(index, base) - printed)).toBeLessThan(1e-6);
  });
});

describe('the primes', () => {
  it('are the bases: the first ten', () => {
    expect(primes(10)).toEqual([2, 3, 5, 7, 11, 13, 17, 19, 23, 29]);
    expect(primes(0)).toEqual([]);
  });
});

describe('the randomized sequence', () => {
  it('gives the same bytes for the same seed, others for another', () => {
    expect(points(90, 7, 50)).toEqual(points(90, 7, 50));
    expect(points(90, 8, 50)).not.toEqual(points(90, 7, 50));
  });

  it('stays in [0, 1) in every one of 120 dimensions', () => {
    const all = points(120, 3, 200).flat();
    expect(Math.min(...all)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...all)).toBeLessThan(1);
  });

  it('puts one point into each of the first b intervals of width 1/b (the first five bases)', () => {
    for (const [column, base] of primes(5).entries()) {
      const cells = points(5, 11, base).map((row) => Math.floor((row[column] ?? 0) * base));
      expect([...cells].sort((a, b) => a - b)).toEqual(Array.from({ length: base }, (_, cell) => cell));
    }
  });

  it('integrates Π(1 + (x − 1/2)) over 12 dimensions better than plain chance: exactly 1', () => {
    const count = 4096;
    const mean = (rows: readonly number[][]): number =>
      rows.reduce((sum, row) => sum + row.reduce((product, x) => product * (x + 0.5), 1), 0) / count;
    const random = seeded(5);
    const plain = Array.from({ length: count }, () => Array.from({ length: 12 }, random));
    const errors = (make: (seed: number) => number[][]) =>
      [1, 2, 3, 4].reduce((sum, seed) => sum + (mean(make(seed)) - 1) ** 2, 0) / 4;
    const even = errors((seed) => points(12, seed, count));
    // Variance of the product is (1 + 1/12)^12 − 1 = 1.61: a plain mean of 4096 has a squared error of 3.9e-4.
    expect(even).toBeLessThan(1e-4);
    expect(even).toBeLessThan(errors(() => plain));
  });

  it('keeps the last two of 90 dimensions apart: their correlation is near 0', () => {
    const rows = points(90, 20261125, 4096);
    const [a, b] = [88, 89].map((column) => rows.map((row) => (row[column] ?? 0) - 0.5)) as [
      number[],
      number[],
    ];
    const dot = (x: number[], y: number[]) => x.reduce((sum, each, index) => sum + each * (y[index] ?? 0), 0);
    expect(Math.abs(dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b)))).toBeLessThan(0.05);
  });
});

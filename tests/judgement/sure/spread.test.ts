import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Spread } from '../../../src/catalog/uncertainties.ts';
import { uncertainties, finderOf } from '../../../src/catalog/uncertainties.ts';
import { shaken, valueAtShare } from '../../../src/judgement/sure/spread.ts';

const triangular: Spread = { shape: 'factor', distribution: 'triangular', low: 0, likely: 1, high: 4 };

describe('the value at a share of the mass', () => {
  it('triangular 0, 1, 4: the mode at a quarter, the ends at 0 and 1, the median at 4 − √6 (worked by hand)', () => {
    expect(valueAtShare(triangular, 0)).toBe(0);
    expect(valueAtShare(triangular, 0.25)).toBeCloseTo(1, 12);
    expect(valueAtShare(triangular, 1)).toBe(4);
    expect(valueAtShare(triangular, 0.5)).toBeCloseTo(4 - Math.sqrt(6), 12);
  });

  it('triangular with the mode at an end stays finite', () => {
    const oneSided: Spread = { ...triangular, low: 0.7, likely: 1, high: 1 };
    expect(valueAtShare(oneSided, 0)).toBeCloseTo(0.7, 12);
    expect(valueAtShare(oneSided, 1)).toBeCloseTo(1, 12);
    expect(valueAtShare({ ...triangular, likely: 0 }, 0)).toBeCloseTo(0, 12);
  });

  it('uniform and log-uniform: the middles are the arithmetic and the geometric mean', () => {
    expect(valueAtShare({ ...triangular, distribution: 'uniform' }, 0.5)).toBe(2);
    const log: Spread = { ...triangular, distribution: 'log-uniform', low: 0.5, high: 2 };
    expect(valueAtShare(log, 0.5)).toBeCloseTo(1, 12);
    expect(() => valueAtShare({ ...log, low: 0 }, 0.5)).toThrow(/not above 0/);
  });

  it('rises with the share and stays between low and high (every row of the table)', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...uncertainties.rows), share, share, (row, a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)].map((u) => valueAtShare(row, u));
        expect(less).toBeLessThanOrEqual((more ?? 0) + 1e-12);
        expect(less).toBeGreaterThanOrEqual(row.low - 1e-12);
        expect(more).toBeLessThanOrEqual(row.high + 1e-12);
      }),
      { numRuns: 300 },
    );
  });
});

describe('a shaken value', () => {
  it('is multiplied, shifted or replaced', () => {
    expect(shaken('factor', 4, 0.5)).toBe(2);
    expect(shaken('shift', 4, -0.5)).toBe(3.5);
    expect(shaken('value', 4, 0.5)).toBe(0.5);
  });
});

describe('who can find out', () => {
  it('is read from the longest path that fits', () => {
    expect(finderOf('overhang.eave_m')).toBe('owner');
    expect(finderOf('overhang.tails')).toBe('site-visit');
    expect(finderOf('framingX.kind')).toBe('owner');
  });
});

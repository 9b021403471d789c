/**
 * Triantaphyllou and Sánchez, Decision Sciences 28(1), 1997: the weighted-sum example. Its figures are from memory; the
 * totals were computed again from the products, and the critical changes are worked by the formula of the paper.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criticalWeights, shareThen } from '../../../src/judgement/sure/weights.ts';
import { overturnOf, totalOf } from '../../../src/judgement/weighted.ts';

const weights = { C1: 0.3277, C2: 0.3058, C3: 0.2876, C4: 0.079 };
const row = (C1: number, C2: number, C3: number, C4: number) => ({ C1, C2, C3, C4 });
const A1 = row(0.3088, 0.2897, 0.3867, 0.1922);
const A2 = row(0.2163, 0.3458, 0.1755, 0.6288);
const A3 = row(0.4509, 0.2473, 0.1194, 0.0575);
const A4 = row(0.024, 0.1172, 0.3184, 0.1215);

describe('the example of Triantaphyllou and Sánchez', () => {
  // The third total prints as .2621 in memory, .2623 by the products: the tolerance is that difference.
  it.each([
    ['A1', A1, 0.3162],
    ['A2', A2, 0.2768],
    ['A3', A3, 0.2621],
    ['A4', A4, 0.1449],
  ])('total of %s', (_, scores, printed) => {
    expect(Math.abs(totalOf(weights, scores) - printed)).toBeLessThan(3e-4);
  });

  it('A1 against A2: criterion 3 by −64.8 %, criterion 4 by +114 %; 1 and 2 by −130 % is not feasible, +230 % is', () => {
    // lead = 0.31617 − 0.27678 = 0.03939; differences a1 − a2: 0.0925, −0.0561, 0.2112, −0.4366.
    const found = criticalWeights(weights, A1, A2);
    const lead = 0.3277 * 0.0925 - 0.3058 * 0.0561 + 0.2876 * 0.2112 - 0.079 * 0.4366;
    expect(lead).toBeCloseTo(0.0394, 4);
    // Criterion 1 would have to fall by 0.426, below 0.
    expect(found[0]).toMatchObject({ level: null, change_pct: null });
    expect(found[1]?.change_pct).toBeCloseTo((100 * lead) / 0.0561 / 0.3058, 6);
    expect(found[1]?.change_pct).toBeCloseTo(229.6, 0);
    expect(found[2]?.change_pct).toBeCloseTo((-100 * lead) / 0.2112 / 0.2876, 6);
    expect(found[2]?.change_pct).toBeCloseTo(-64.8, 0);
    expect(found[3]?.change_pct).toBeCloseTo((100 * lead) / 0.4366 / 0.079, 6);
    expect(found[3]?.change_pct).toBeCloseTo(114.2, 0);
  });

  it('the smallest of them is the overturn of the ranking', () => {
    const smallest = overturnOf(weights, { id: 'A1', scores: A1 }, { id: 'A2', scores: A2 });
    expect(smallest.criterion).toBe('C3');
    expect(smallest.change_pct).toBeCloseTo(criticalWeights(weights, A1, A2)[2]?.change_pct ?? 0, 9);
  });
});

describe('a weight that moved alone', () => {
  it('is a share of all again: 0.2 moved to 0.4 of 1.2 is a third', () => {
    expect(shareThen(0.2, 0.4)).toBeCloseTo(1 / 3, 12);
    expect(shareThen(0.2, 0.2)).toBeCloseTo(0.2, 12);
  });
});

describe('a critical weight', () => {
  const value = fc.integer({ min: 0, max: 100 }).map((x) => x / 100);
  const rows = fc.array(fc.record({ weight: fc.integer({ min: 0, max: 100 }), a: value, b: value }), {
    minLength: 2,
    maxLength: 8,
  });
  const by = <T>(list: readonly T[], pick: (one: T) => number) =>
    Object.fromEntries(list.map((one, index) => [`c${index}`, pick(one)]));

  it('brings the pair level, also after normalizing, and scaling all weights changes no percentage (2 to 8 criteria)', () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: 2, max: 50 }), (list, scale) => {
        const [w, a, b] = [by(list, (one) => one.weight), by(list, (one) => one.a), by(list, (one) => one.b)];
        const scaled = by(list, (one) => one.weight * scale);
        const other = criticalWeights(scaled, a, b);
        criticalWeights(w, a, b).forEach(({ criterion, level, change_pct }, index) => {
          if (level !== null) {
            const moved = { ...w, [criterion]: level };
            expect(totalOf(moved, a)).toBeCloseTo(totalOf(moved, b), 6);
          }
          if (change_pct !== null) expect(other[index]?.change_pct).toBeCloseTo(change_pct, 6);
        });
      }),
    );
  });

  it('does not exist where the first is better in everything: none goes below 0', () => {
    const found = criticalWeights({ x: 3, y: 1 }, { x: 0.9, y: 0.8 }, { x: 0.5, y: 0.1 });
    expect(found.every(({ level, change_pct }) => level === null && change_pct === null)).toBe(true);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  contributionsOf,
  normalized,
  overturnOf,
  totalOf,
  weightedRanking,
} from '../../src/judgement/weighted.ts';

/** Worked by hand: weights 3 to 1; A is better in the first, B in the second. */
const weights = { first: 3, second: 1 };
const scores = { a: { first: 1, second: 0 }, b: { first: 0.5, second: 1 } };

describe('weights', () => {
  it('are scaled to a sum of 1', () => {
    expect(normalized(weights)).toEqual({ first: 0.75, second: 0.25 });
  });

  it.each([
    [{ a: -1, b: 2 }, /weights\.a: -1/],
    [{ a: Number.NaN, b: 2 }, /weights\.a/],
    [{ a: Infinity }, /weights\.a/],
    [{ a: 0, b: 0 }, /none is above 0/],
    [{}, /none is above 0/],
  ])('%j are refused', (given, message) => {
    expect(() => normalized(given)).toThrow(message);
  });
});

describe('the total', () => {
  it('adds weight times value; a criterion without a score gives nothing', () => {
    expect(contributionsOf(weights, { first: 0.5 })).toEqual({ first: 1.5, second: 0 });
    expect(totalOf(weights, { first: 0.5 })).toBe(1.5);
  });
});

describe('the ranking of two, by hand', () => {
  const found = weightedRanking(weights, scores);

  it('A 0.75, B 0.625', () => {
    expect(found.totals).toEqual({ a: 0.75, b: 0.625 });
    expect(found.order).toEqual(['a', 'b']);
  });

  it('lead 0.5 on the given scale: first down to 2 (−33 %) or second up to 1.5 (+50 %); the smaller change counts', () => {
    expect(found.overturns).toEqual([
      {
        criterion: 'first',
        from: 'a',
        to: 'b',
        weight: expect.closeTo(2, 12) as number,
        change_pct: expect.closeTo(-100 / 3, 9) as number,
      },
    ]);
  });

  it('keeps the order given where totals tie', () => {
    expect(weightedRanking({ x: 1 }, { late: { x: 0.5 }, early: { x: 0.5 } }).order).toEqual([
      'late',
      'early',
    ]);
  });

  it('of one or none has nothing to overturn', () => {
    expect(weightedRanking(weights, { a: scores.a }).overturns).toEqual([]);
    expect(weightedRanking(weights, {})).toEqual({ totals: {}, order: [], overturns: [] });
  });
});

describe('an overturn', () => {
  it('is none where the first is better in everything: a weight would fall below 0', () => {
    const none = { criterion: null, from: 'a', to: 'b', weight: null, change_pct: null };
    const ahead = { id: 'a', scores: { first: 1, second: 1 } };
    const behind = { id: 'b', scores: { first: 0.5, second: 0.5 } };
    expect(overturnOf(weights, ahead, behind)).toEqual(none);
  });

  it('leaves criteria of weight 0 alone: no share of nothing moves them', () => {
    const found = overturnOf(
      { first: 1, idle: 0 },
      { id: 'a', scores: { first: 1, idle: 0 } },
      { id: 'b', scores: { first: 0.9, idle: 1 } },
    );
    expect(found.criterion).not.toBe('idle');
  });

  it('brings the two totals level at its weight, and no smaller change of one weight does (2 to 6 criteria)', () => {
    const value = fc.integer({ min: 0, max: 100 }).map((x) => x / 100);
    const rows = fc.array(fc.record({ weight: fc.integer({ min: 1, max: 100 }), a: value, b: value }), {
      minLength: 2,
      maxLength: 6,
    });
    fc.assert(
      fc.property(rows, (list) => {
        const by = (pick: (row: (typeof list)[number]) => number) =>
          Object.fromEntries(list.map((row, index) => [`c${index}`, pick(row)]));
        const given = by(({ weight }) => weight);
        const [a, b] = [by((row) => row.a), by((row) => row.b)];
        const isAhead = totalOf(given, a) >= totalOf(given, b);
        const from = { id: 'from', scores: isAhead ? a : b };
        const to = { id: 'to', scores: isAhead ? b : a };
        const found = overturnOf(given, from, to);
        if (found.criterion === null || found.weight === null || found.change_pct === null) return;
        expect(found.weight).toBeGreaterThanOrEqual(0);
        const moved = { ...given, [found.criterion]: found.weight };
        expect(totalOf(moved, from.scores)).toBeCloseTo(totalOf(moved, to.scores), 9);
        const less = 0.99 * (found.change_pct / 100);
        for (const [id, weight] of Object.entries(given))
          for (const change of [less, -less]) {
            const nudged = { ...given, [id]: Math.max(0, weight * (1 + change)) };
            expect(totalOf(nudged, from.scores) - totalOf(nudged, to.scores)).toBeGreaterThanOrEqual(-1e-9);
          }
      }),
    );
  });

  it('is the same share whatever the scale of the weights', () => {
    const at = (scale: number) =>
      weightedRanking({ first: 3 * scale, second: scale }, scores).overturns[0]?.change_pct;
    expect(at(0.01)).toBeCloseTo(at(1) ?? 0, 9);
  });
});

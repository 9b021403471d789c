import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { criteria, valueOfMeasure, weightsOf } from '../../src/judgement/criteria.ts';
import { measuredIds } from '../../src/judgement/attributes.ts';
import { settingOf, type Changes } from '../support/roofs.ts';

const weights = (changes: Changes = {}) => {
  const { given, climate } = settingOf(changes);
  return weightsOf(given, climate);
};
const weight = (id: string, changes: Changes = {}) =>
  weights(changes).find(({ criterion }) => criterion === id);

describe('the criteria', () => {
  it('are at least twelve, and each has a measure', () => {
    expect(criteria.length).toBeGreaterThanOrEqual(12);
    expect([...measuredIds].sort()).toEqual(criteria.map(({ id }) => id).sort());
  });

  it('have anchors that rise, with values that run one way as the criterion says', () => {
    for (const { anchors, better } of criteria) {
      const rises = anchors.slice(1).map(([at, value], index) => {
        const [before, was] = anchors[index] ?? [0, 0];
        return { step: at - before, change: value - was };
      });
      expect(rises.every(({ step }) => step > 0)).toBe(true);
      expect(rises.every(({ change }) => (better === 'more' ? change >= 0 : change <= 0))).toBe(true);
    }
  });
});

describe.each(criteria)('the value function of $id', ({ anchors, better }) => {
  it('gives the anchors their values and is flat outside', () => {
    for (const [measure, value] of anchors) expect(valueOfMeasure(measure, anchors)).toBeCloseTo(value, 12);
    const [first, last] = [anchors[0], anchors.at(-1)];
    expect(valueOfMeasure((first?.[0] ?? 0) - 1000, anchors)).toBe(first?.[1]);
    expect(valueOfMeasure((last?.[0] ?? 0) + 1000, anchors)).toBe(last?.[1]);
  });

  it('never falls as the measure gets better (any two measures)', () => {
    const measure = fc.double({ min: -100, max: 6000, noNaN: true });
    fc.assert(
      fc.property(measure, measure, (a, b) => {
        const [less, more] = [Math.min(a, b), Math.max(a, b)].map((x) => valueOfMeasure(x, anchors));
        const [worse = 0, good = 0] = better === 'more' ? [less, more] : [more, less];
        expect(good).toBeGreaterThanOrEqual(worse - 1e-12);
        expect(good).toBeLessThanOrEqual(1);
        expect(worse).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 40 },
    );
  });
});

describe('a value between two anchors', () => {
  it('lies on the line: halfway from (0, 1) to (10, 0) is 0.5', () => {
    expect(
      valueOfMeasure(5, [
        [0, 1],
        [10, 0],
      ]),
    ).toBe(0.5);
    expect(
      valueOfMeasure(2.5, [
        [0, 1],
        [10, 0],
      ]),
    ).toBe(0.75);
  });

  it('needs a finite measure', () => {
    expect(() =>
      valueOfMeasure(Number.NaN, [
        [0, 1],
        [1, 0],
      ]),
    ).toThrow(RangeError);
    expect(() =>
      valueOfMeasure(Infinity, [
        [0, 1],
        [1, 0],
      ]),
    ).toThrow(/finite/);
  });
});

describe('the weights', () => {
  it('are the reader’s when nothing moves them', () => {
    const row = criteria.find(({ id }) => id === 'heatLoss');
    for (const role of ['builder', 'designer', 'trainer'] as const)
      expect(weight('heatLoss', { 'project.role': role })?.raw).toBe(row?.weights[role]);
  });

  it('multiply by every modifier that holds, and say why: ice every winter and zone 6', () => {
    const icy = weight('airBarrier', { 'overhang.iceDams': 'every-winter' });
    expect(icy?.raw).toBeCloseTo(55 * 1.4 * 1.25, 9);
    expect(icy?.reasons).toHaveLength(2);
    expect(icy?.isOwn).toBe(false);
    expect(weight('airBarrier', { 'place.zone': '4A' })?.raw).toBe(55);
  });

  it('of the user’s own take the place of default and modifiers, even 0', () => {
    const own = { 'overhang.iceDams': 'every-winter', 'priorities.airBarrier': 12, 'priorities.cost': 0 };
    expect(weight('airBarrier', own)).toEqual({ criterion: 'airBarrier', raw: 12, isOwn: true, reasons: [] });
    expect(weight('cost', own)?.raw).toBe(0);
  });

  it('that are all 0 count alike: nothing would rank otherwise', () => {
    const zeros = Object.fromEntries(criteria.map(({ id }) => [`priorities.${id}`, 0]));
    const found = weights(zeros);
    expect(found.map(({ raw }) => raw)).toEqual(criteria.map(() => 1));
    expect(found.every(({ isOwn, reasons }) => isOwn && reasons.length === 1)).toBe(true);
  });
});

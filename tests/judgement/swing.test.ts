/**
 * Swing weights. Published check: Goodwin and Wright, Decision Analysis for Management Judgment, office location problem:
 * swings 100, 80, 70, 30, 20, 10 become 32, 26, 23, 10, 6, 3 of 100 (figures from memory; their sum, 310, and the shares
 * were computed again). The procedure is that of the UK government's Multi-criteria analysis manual, 2009, section 6.2.10.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalizedSwings, pairsToAsk, weightsOfTradeOffs } from '../../src/judgement/swing.ts';

const office = { closeness: 100, visibility: 80, image: 70, size: 30, comfort: 20, parking: 10 };
const printed = { closeness: 32, visibility: 26, image: 23, size: 10, comfort: 6, parking: 3 };

describe('the office location example', () => {
  it('normalizes to the printed whole percents, which add up to 100', () => {
    const shares = normalizedSwings(office);
    const rounded = Object.fromEntries(
      Object.entries(shares).map(([id, share]) => [id, Math.round(100 * share)]),
    );
    expect(rounded).toEqual(printed);
    expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('asked as trade-offs against the first swing gives the same points', () => {
    const tradeOffs = Object.entries(office)
      .slice(1)
      .map(([less, percent]) => ({ more: 'closeness', less, percent }));
    const { weights, loose, consistency } = weightsOfTradeOffs(Object.keys(office), tradeOffs);
    for (const [id, points] of Object.entries(office)) expect(weights[id]).toBeCloseTo(points, 6);
    expect(loose).toEqual([]);
    expect(consistency).toEqual({ clashes: [], factor: null });
  });
});

const three = ['a', 'b', 'c'];

describe('answers held against each other', () => {
  it('that agree give a factor of 1: half, half of that, a quarter', () => {
    const { weights, consistency } = weightsOfTradeOffs(three, [
      { more: 'a', less: 'b', percent: 50 },
      { more: 'b', less: 'c', percent: 50 },
      { more: 'a', less: 'c', percent: 25 },
    ]);
    expect(weights['a']).toBeCloseTo(100, 6);
    expect(weights['b']).toBeCloseTo(50, 6);
    expect(weights['c']).toBeCloseTo(25, 6);
    expect(consistency.factor).toBeCloseTo(1, 6);
    expect(consistency.clashes).toEqual([]);
  });

  it('that clash are spread evenly, and each is named with what the others imply', () => {
    const { weights, consistency } = weightsOfTradeOffs(three, [
      { more: 'a', less: 'b', percent: 50 },
      { more: 'b', less: 'c', percent: 50 },
      { more: 'a', less: 'c', percent: 100 },
    ]);
    // The chain says a quarter, the last answer says as much: each answer gives way by 4^(1/3) = 1.587.
    expect(weights['b']).toBeCloseTo(50 * 4 ** (1 / 3), 6);
    expect(weights['c']).toBeCloseTo(100 / 4 ** (1 / 3), 6);
    expect(consistency.clashes).toHaveLength(3);
    expect(consistency.factor).toBeCloseTo(Math.exp(Math.sqrt(3) * (Math.log(4) / 3)), 6);
  });

  it('go both ways round: a circle of "first" answers is a clash', () => {
    const circle = three.map((more, at) => ({ more, less: three[(at + 1) % 3] ?? 'a', percent: 50 }));
    const { weights, consistency } = weightsOfTradeOffs(three, circle);
    expect(Object.values(weights).every((weight) => Math.abs(weight - 100) < 1e-6)).toBe(true);
    expect(consistency.clashes).toHaveLength(3);
  });

  it('leave what no answer ties loose', () => {
    const { weights, loose } = weightsOfTradeOffs([...three, 'd'], [{ more: 'a', less: 'b', percent: 40 }]);
    expect(Object.keys(weights)).toEqual(['a', 'b']);
    expect(loose).toEqual(['c', 'd']);
    expect(weightsOfTradeOffs(three, []).loose).toEqual(three);
  });

  it('are refused when they name nothing known, themselves, or a percent past 100', () => {
    expect(() => weightsOfTradeOffs(three, [{ more: 'a', less: 'x', percent: 1 }])).toThrow(/no criterion x/);
    expect(() => weightsOfTradeOffs(three, [{ more: 'a', less: 'a', percent: 1 }])).toThrow(/itself/);
    expect(() => weightsOfTradeOffs(three, [{ more: 'a', less: 'b', percent: 101 }])).toThrow(/101/);
  });

  it('of a person whose weights are known find them again (2 to 8 criteria, a star and checks)', () => {
    const known = fc.array(fc.integer({ min: 5, max: 100 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(known, (list) => {
        const truth = Object.fromEntries(list.map((weight, at) => [`c${at}`, weight]));
        const most = Math.max(...list);
        const tradeOffs = pairsToAsk(truth, 8).map(({ more, less }) => ({
          more,
          less,
          percent: (100 * (truth[less] ?? 0)) / (truth[more] ?? 1),
        }));
        const { weights, consistency } = weightsOfTradeOffs(Object.keys(truth), tradeOffs);
        for (const [id, weight] of Object.entries(truth))
          expect(weights[id]).toBeCloseTo((100 * weight) / most, 4);
        expect(consistency.clashes).toEqual([]);
      }),
    );
  });
});

describe('the pairs to ask', () => {
  it('are the heaviest against all others, and some neighbors', () => {
    const pairs = pairsToAsk(office, 5);
    expect(pairs.slice(0, 4).map(({ more, less }) => [more, less])).toEqual([
      ['closeness', 'visibility'],
      ['closeness', 'image'],
      ['closeness', 'size'],
      ['closeness', 'comfort'],
    ]);
    expect(pairs.slice(4)).toEqual([{ more: 'visibility', less: 'image' }]);
    expect(pairsToAsk({}, 5)).toEqual([]);
  });
});

/** What may never change a ranking: the order of strategies, attributes or rules, and the scale of the weights. */
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { Candidate, Evaluation } from '../../src/evaluation/evaluation.ts';
import { dominates, tradeOffPoints } from '../../src/judgement/dominance.ts';
import { rankingOf } from '../../src/judgement/ranking.ts';
import { rules } from '../../src/judgement/rules.ts';
import { evaluationOf } from '../support/roofs.ts';

vi.setConfig({ testTimeout: 120_000 });

const box = evaluationOf('2-twist-deeper-fascia');
const weights = Object.entries(box.ranking.weights).map(([criterion, raw]) => ({
  criterion,
  raw,
  isOwn: false,
  reasons: [],
}));
const rank = (candidates: readonly Candidate[], given = weights): Evaluation['ranking'] =>
  rankingOf(candidates, given, false);
/** A seeded order of 0 to count - 1. */
const orders = (count: number) =>
  fc.shuffledSubarray(
    Array.from({ length: count }, (_, at) => at),
    { minLength: count },
  );
const by = <T>(list: readonly T[], order: readonly number[]): T[] => order.flatMap((at) => list[at] ?? []);

/** Everything but sums whose last digits hang on the order of adding. */
const gist = ({ order, leaders, recommended, overturns, confidence }: Evaluation['ranking']) => ({
  order,
  leaders: leaders.map(({ strategy, candidate }) => [strategy, candidate]),
  recommended,
  level: confidence.level,
  reasons: confidence.reasons.map(({ criterion, text }) => [criterion, text]),
  overturns: overturns.map(({ criterion, to, change_pct }) => [criterion, to, change_pct.toFixed(6)]),
});
const usual = gist(rank(box.candidates));

describe('the ranking does not change', () => {
  it('with the order of the candidates, so with that of the strategies', () => {
    fc.assert(
      fc.property(orders(box.candidates.length), (order) => {
        expect(gist(rank(by(box.candidates, order)))).toEqual(usual);
      }),
      { numRuns: 15 },
    );
  });

  it('with the order of the attributes', () => {
    const count = box.candidates[0]?.attributes.length ?? 0;
    fc.assert(
      fc.property(orders(count), (order) => {
        const turned = box.candidates.map((one) => ({ ...one, attributes: by(one.attributes, order) }));
        expect(gist(rank(turned))).toEqual(usual);
      }),
      { numRuns: 15 },
    );
  });

  it('when all weights are scaled alike', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1000, noNaN: true }), (scale) => {
        const scaled = weights.map((one) => ({ ...one, raw: one.raw * scale }));
        expect(gist(rank(box.candidates, scaled))).toEqual(usual);
      }),
      { numRuns: 25 },
    );
  });

  it('with the order of the rules: each is asked alone, so which ones hold is a set', () => {
    const excluded = new Set(box.candidates.flatMap(({ excludedBy }) => excludedBy.map(({ rule }) => rule)));
    const known = new Set(rules.filter(({ effect }) => effect === 'exclude').map(({ id }) => id));
    expect([...excluded].filter((id) => !known.has(id))).toEqual([]);
    for (const one of box.candidates) {
      expect(one.feasible).toBe(one.excludedBy.length === 0);
      expect(new Set(one.excludedBy.map(({ rule }) => rule)).size).toBe(one.excludedBy.length);
    }
  });
});

describe('a better attribute', () => {
  it('never lowers its candidate (any candidate, criterion and step)', () => {
    const count = box.candidates[0]?.attributes.length ?? 0;
    const feasible = box.candidates.filter(({ feasible: isFeasible }) => isFeasible);
    fc.assert(
      fc.property(
        fc.constantFrom(...feasible),
        fc.nat({ max: count - 1 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (chosen, at, step) => {
          const better = {
            ...chosen,
            attributes: chosen.attributes.map((one, place) =>
              place === at ? { ...one, value: Math.min(1, one.value + step) } : one,
            ),
          };
          const ranked = rank(box.candidates.map((one) => (one === chosen ? better : one)));
          expect(ranked.order.indexOf(chosen.id)).toBeLessThanOrEqual(box.ranking.order.indexOf(chosen.id));
          expect(ranked.scores[chosen.id]).toBeGreaterThanOrEqual(
            (box.ranking.scores[chosen.id] ?? 0) - 1e-12,
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a dominated candidate', () => {
  const feasible = box.candidates.filter(({ feasible: isFeasible }) => isFeasible);

  it('is never first, whatever the weights', () => {
    const beaten = new Set(
      feasible.filter((one) => feasible.some((other) => dominates(other, one))).map(({ id }) => id),
    );
    expect(beaten.size).toBeGreaterThan(0);
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 100 }), { minLength: weights.length, maxLength: weights.length }),
        (list) => {
          const given = weights.map((one, at) => ({ ...one, raw: list[at] ?? 1 }));
          expect(beaten.has(rank(box.candidates, given).recommended ?? '')).toBe(false);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is told from one that is better somewhere, and from itself', () => {
    const [one] = feasible;
    if (one === undefined) throw new RangeError('nothing is feasible');
    const worse = { ...one, attributes: one.attributes.map((each) => ({ ...each, value: each.value / 2 })) };
    const mixed = {
      ...worse,
      attributes: worse.attributes.map((each, at) => (at === 0 ? { ...each, value: 2 } : each)),
    };
    expect(dominates(one, worse)).toBe(true);
    expect(dominates(worse, one)).toBe(false);
    expect(dominates(one, mixed)).toBe(false);
    expect(dominates(one, one)).toBe(false);
  });
});

describe('the trade-off of cost and durability', () => {
  const found = tradeOffPoints(box);

  it('holds every feasible candidate once, the leaders marked', () => {
    expect(found.map(({ candidate }) => candidate)).toEqual(box.ranking.order);
    expect(found.filter(({ isLeader }) => isLeader)).toHaveLength(box.ranking.leaders.length);
    for (const { durability } of found) {
      expect(durability).toBeGreaterThanOrEqual(0);
      expect(durability).toBeLessThanOrEqual(1);
    }
  });

  it('marks as behind exactly those that another beats in both', () => {
    const front = found.filter(({ isBehind }) => !isBehind);
    expect(front.length).toBeGreaterThan(0);
    for (const a of front)
      for (const b of front) expect(a.cost_USD_m2 < b.cost_USD_m2 && a.durability > b.durability).toBe(false);
  });
});

import { describe, expect, it, vi } from 'vitest';
import type { Candidate, Evaluation } from '../../src/evaluation/evaluation.ts';
import { criteria } from '../../src/judgement/criteria.ts';
import { rankingOf } from '../../src/judgement/ranking.ts';
import { evaluationOf, scenarioNames } from '../support/roofs.ts';

vi.setConfig({ testTimeout: 60_000 });

const ranked = scenarioNames.filter((name) => name !== '6-attic-stays-vented');
const weightsOf = ({ ranking }: Evaluation) =>
  Object.entries(ranking.weights).map(([criterion, raw]) => ({ criterion, raw, isOwn: false, reasons: [] }));
const total = (candidate: Candidate, weights: Readonly<Record<string, number>>): number =>
  candidate.attributes.reduce((sum, { criterion, value }) => sum + (weights[criterion] ?? 0) * value, 0);

describe.each(ranked)('the ranking of %s', (name) => {
  const evaluation = evaluationOf(name);
  const { ranking, candidates } = evaluation;

  it('holds every feasible candidate once, best first', () => {
    const feasible = candidates.filter((candidate) => candidate.feasible).map(({ id }) => id);
    expect([...ranking.order].sort()).toEqual([...feasible].sort());
    const scores = ranking.order.map((id) => ranking.scores[id] ?? 0);
    expect(scores).toEqual([...scores].sort((a, b) => b - a));
  });

  it('has contributions that add up to the scores, and weights that add up to 1', () => {
    for (const id of ranking.order) {
      const parts = Object.values(ranking.contributions[id] ?? {});
      expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(ranking.scores[id] ?? 0, 12);
    }
    expect(Object.values(ranking.weights).reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(Object.keys(ranking.weights)).toEqual(criteria.map(({ id }) => id));
  });

  it('recommends the best leader; leaders are the first of each strategy', () => {
    const strategies = ranking.leaders.map(({ strategy }) => strategy);
    expect(new Set(strategies).size).toBe(strategies.length);
    expect(ranking.recommended).toBe(ranking.order[0]);
    for (const { strategy, candidate } of ranking.leaders)
      expect(ranking.order.find((id) => id.startsWith(`${strategy}/`))).toBe(candidate);
  });

  it('is clear only when no weight moved by a quarter puts another strategy first', () => {
    const first = ranking.leaders[0]?.strategy;
    const winners = Object.entries(ranking.weights).flatMap(([id, weight]) =>
      [0.75, 1.25].map((factor) => {
        const moved = { ...ranking.weights, [id]: weight * factor };
        const feasible = candidates.filter((candidate) => candidate.feasible);
        return feasible.reduce((best, next) => (total(next, moved) > total(best, moved) ? next : best))
          .strategy;
      }),
    );
    const isHeld = winners.every((strategy) => strategy === first);
    expect(ranking.confidence.level).toBe(isHeld ? 'clear' : 'narrow');
  });

  it('an overturn brings the first level with the leader it names', () => {
    for (const { criterion, from, to, change_pct } of ranking.overturns) {
      const moved = {
        ...ranking.weights,
        [criterion]: (ranking.weights[criterion] ?? 0) * (1 + change_pct / 100),
      };
      const of = (id: string) => candidates.find((candidate) => candidate.id === id) as Candidate;
      expect(from).toBe(ranking.recommended);
      expect(total(of(from), moved)).toBeCloseTo(total(of(to), moved), 9);
    }
  });

  it('gives at most three reasons that speak for the first, and three worries that speak against it', () => {
    const { reasons, worries, margin } = ranking.confidence;
    expect(reasons.length).toBeGreaterThan(0);
    for (const list of [reasons, worries]) expect(list.length).toBeLessThanOrEqual(3);
    expect(reasons.every(({ difference }) => difference > 0)).toBe(true);
    expect(worries.every(({ difference }) => difference < 0)).toBe(true);
    expect(reasons.every(({ text }) => text.includes(' against '))).toBe(true);
    expect(margin).toBeGreaterThan(0);
  });
});

describe('a ranking', () => {
  const { candidates, ranking } = evaluationOf('2-twist-deeper-fascia');
  const weights = weightsOf(evaluationOf('2-twist-deeper-fascia'));
  const only = (holds: (candidate: Candidate) => boolean) =>
    candidates.map((candidate) => ({ ...candidate, feasible: candidate.feasible && holds(candidate) }));

  it('after a stop is empty, but keeps the weights', () => {
    const stopped = rankingOf(candidates, weights, true);
    expect(stopped).toMatchObject({
      order: [],
      leaders: [],
      recommended: null,
      scores: {},
      contributions: {},
    });
    expect(stopped.confidence).toEqual({
      level: 'stop',
      margin: 0,
      runnerUp: null,
      reasons: [],
      worries: [],
    });
    expect(stopped.weights['cost']).toBeCloseTo(ranking.weights['cost'] ?? 0, 12);
  });

  it('without a feasible candidate says so', () => {
    const none = rankingOf(
      only(() => false),
      weights,
      false,
    );
    expect(none).toMatchObject({ order: [], recommended: null, overturns: [] });
    expect(none.confidence.level).toBe('none-feasible');
  });

  it('of one strategy is clear; its reasons are held against what was excluded', () => {
    const one = rankingOf(
      only(({ strategy }) => strategy === 'flush-outriggers'),
      weights,
      false,
    );
    expect(one.leaders).toHaveLength(1);
    expect(one.confidence).toMatchObject({ level: 'clear', runnerUp: null });
    expect(one.confidence.margin).toBeCloseTo(one.leaders[0]?.total ?? 0, 12);
    expect(one.confidence.reasons.length).toBeGreaterThan(0);
  });

  it('of one strategy alone has nothing to be held against', () => {
    const alone = candidates.filter(({ strategy }) => strategy === 'flush-outriggers');
    const found = rankingOf(alone, weights, false);
    expect(found.confidence.reasons.every(({ text }) => !text.includes('against'))).toBe(true);
  });

  it('does not depend on the order of the candidates: ties go by id', () => {
    const turned = rankingOf([...candidates].reverse(), weights, false);
    expect(turned.order).toEqual(ranking.order);
    const twins = candidates.slice(0, 1).flatMap((candidate) => [
      { ...candidate, id: 'b', feasible: true },
      { ...candidate, id: 'a', feasible: true },
    ]);
    expect(rankingOf(twins, weights, false).order).toEqual(['a', 'b']);
  });
});

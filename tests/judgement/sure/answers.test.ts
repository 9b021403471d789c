import { describe, expect, it, vi } from 'vitest';
import type { Case } from '../../../src/case/case.ts';
import { valueAt } from '../../../src/case/paths.ts';
import { strategies } from '../../../src/catalog/sets.ts';
import { uncertainties } from '../../../src/catalog/uncertainties.ts';
import type { Evaluation } from '../../../src/evaluation/evaluation.ts';
import { answersThatFlip, flips } from '../../../src/judgement/sure/answers.ts';
import { openAnswers } from '../../../src/judgement/sure/space.ts';
import { sureOf } from '../../../src/judgement/sure/sure.ts';
import { waysToWin } from '../../../src/judgement/sure/win.ts';
import { evaluationOf, scenario } from '../../support/roofs.ts';

vi.setConfig({ testTimeout: 120_000 });

const name = '2-twist-deeper-fascia';
const base = evaluationOf(name);
const given: Case = scenario(name);
const { ranking } = base;
const [first, second] = ranking.leaders;
const known = (value: string | undefined): string => value ?? 'missing';

/** The second strategy first, by as much as it was behind. */
const turned: Evaluation = {
  ...base,
  ranking: {
    ...ranking,
    leaders: ranking.leaders.map((leader, place) =>
      place === 0
        ? { ...leader, strategy: second?.strategy ?? leader.strategy, candidate: known(second?.candidate) }
        : place === 1
          ? { ...leader, strategy: first?.strategy ?? leader.strategy, candidate: known(first?.candidate) }
          : leader,
    ),
    scores: {
      ...ranking.scores,
      [known(first?.candidate)]: second?.total ?? 0,
      [known(second?.candidate)]: first?.total ?? 0,
    },
  },
};
const stopped: Evaluation = {
  ...base,
  ranking: {
    ...ranking,
    leaders: [],
    order: [],
    scores: {},
    confidence: { ...ranking.confidence, level: 'stop' },
  },
};
/** Stands in for the one door: a low budget turns the order, a vented attic stops, the rest changes nothing. */
const stand = (one: Case): Evaluation => {
  if (valueAt(one, 'work.budget') === 'low') return turned;
  if (valueAt(one, 'belowDeck.attic') === 'stays-vented') return stopped;
  return base;
};

describe('the open answers', () => {
  const open = openAnswers(given, base);
  const at = (path: string) => open.find((one) => one.path === path);

  it('name every closed set with a default once, with all its other members', () => {
    expect(new Set(open.map(({ path }) => path)).size).toBe(open.length);
    expect(at('work.budget')?.others).toHaveLength(2);
    expect(at('roof.exhaustEndsInRoof')?.others).toHaveLength(1);
    expect(at('place.zone')).toBeUndefined();
    expect(open.length).toBeGreaterThan(40);
  });

  it('give numbers a low and a high within what the case file allows', () => {
    expect(at('roof.valleys')?.others.every((value) => Number.isInteger(value))).toBe(true);
    const pitch = at('roof.pitch_rise_per_12');
    expect(pitch?.others).toHaveLength(2);
    expect(Math.min(...(pitch?.others as number[]))).toBeLessThan(pitch?.is as number);
  });

  it('put what nobody answered first: a wish is there one time in ten, a fact is another half the time', () => {
    const place = open.findIndex(({ isAssumed }) => !isAssumed);
    expect(open.slice(place).every(({ isAssumed }) => !isAssumed)).toBe(true);
    const asked = openAnswers({ ...given, work: {} }, base).find(({ path }) => path === 'work.budget');
    expect(asked?.isAssumed).toBe(true);
    expect(asked?.chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(
      uncertainties.chances.assumedWishIsOther,
      12,
    );
    const deck = openAnswers({ ...given, framing: {} }, base).find(({ path }) => path === 'framing.deck');
    expect(deck?.chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(
      uncertainties.chances.assumedIsOther,
      12,
    );
  });

  it('draw the standing answer in the share that is left', () => {
    const budget = at('work.budget');
    expect(budget?.at(0.99)).toBe(budget?.is);
    expect(budget?.others).toContain(budget?.at(0.001));
  });
});

describe('answers that flip', () => {
  const asked: Case[] = [];
  const study = answersThatFlip(given, (one) => {
    asked.push(one);
    return stand(one);
  });

  it('evaluate the case once as it stands and once for each other answer', () => {
    const others = openAnswers(given, base).reduce((sum, one) => sum + one.others.length, 0);
    expect(study.evaluations).toBe(others);
    expect(asked).toHaveLength(others + 1);
  });

  it('find the budget that turns the order and the attic that stops everything, and nothing else', () => {
    expect(flips(study).map(({ path, would, outcome }) => [path, would, outcome])).toEqual(
      expect.arrayContaining([
        ['work.budget', 'low', 'other'],
        ['belowDeck.attic', 'stays-vented', 'stop'],
      ]),
    );
    expect(flips(study)).toHaveLength(2);
  });

  it('value finding out: chance times what keeping the pick would lose', () => {
    const budget = study.worth.find(({ path }) => path === 'work.budget');
    const chance = study.changes.find(({ would }) => would === 'low')?.chance ?? 0;
    expect(budget?.value).toBeCloseTo(chance * ((first?.total ?? 0) - (second?.total ?? 0)), 12);
    expect(study.worth[0]).toMatchObject({ path: 'belowDeck.attic', mayStop: true });
  });

  it('call equal totals a tie', () => {
    const level: Evaluation = {
      ...base,
      ranking: { ...ranking, leaders: ranking.leaders.map((one) => ({ ...one, total: 0.5 })) },
    };
    const found = answersThatFlip(given, (one) => (valueAt(one, 'work.budget') === 'low' ? level : base));
    expect(flips(found).map(({ outcome }) => outcome)).toEqual(['tie']);
  });

  it('tell of their progress', () => {
    const seen: number[] = [];
    answersThatFlip(given, stand, (done, total) => seen.push(done / total), base);
    expect(seen.at(-1)).toBe(1);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
  });
});

describe('how sure a case is', () => {
  const options = { samples: 64, evaluations: 3 };
  const sure = sureOf(given, stand, options);

  it('is the same bytes each time', () => {
    expect(JSON.stringify(sureOf(given, stand, options))).toBe(JSON.stringify(sure));
  });

  it('holds percentages that add up: wins, none, and ties shared by two or more', () => {
    for (const table of [sure?.fixed, sure?.answered]) {
      const wins = table?.byStrategy.reduce((sum, one) => sum + one.best_pct, 0) ?? 0;
      const ties = table?.byStrategy.reduce((sum, one) => sum + one.shared_pct, 0) ?? 0;
      expect(table?.byStrategy.map(({ strategy }) => strategy)).toEqual(strategies);
      expect(wins + ties + (table?.none_pct ?? 0)).toBeGreaterThanOrEqual(100 - 1e-9);
      expect(wins + ties / 2 + (table?.none_pct ?? 0)).toBeLessThanOrEqual(100 + 1e-9);
    }
    expect(sure?.answered?.samples).toBe(3 * 64);
    expect(sure?.fixed.samples).toBe(64);
  });

  it('is nothing after a stop', () => {
    expect(sureOf(given, () => stopped, options)).toBeNull();
  });

  it('leaves the joint run out when no evaluations are wanted', () => {
    expect(sureOf(given, stand, { samples: 8, evaluations: 0 })?.answered).toBeNull();
  });
});

describe('ways to win', () => {
  it('name, for each other strategy, the distance, the weights and the answers', () => {
    const { changes } = answersThatFlip(given, stand, undefined, base);
    const ways = waysToWin(base, changes);
    expect(ways.map(({ strategy }) => strategy)).toEqual(strategies.filter((id) => id !== first?.strategy));
    const way = ways.find(({ strategy }) => strategy === second?.strategy);
    expect(way?.behind).toBeCloseTo((first?.total ?? 0) - (second?.total ?? 0), 12);
    expect(way?.answers.map(({ path }) => path)).toEqual(['work.budget']);
    const sizes = way?.weights.map(({ change_pct }) => Math.abs(change_pct ?? 0)) ?? [];
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
  });

  it('name the rules where a strategy is excluded', () => {
    const cottage = evaluationOf('1-ridge-cottage');
    const way = waysToWin(cottage, []).find(({ strategy }) => strategy === 'flush-outriggers');
    expect(way?.behind).toBeNull();
    expect(way?.excludedBy.length).toBeGreaterThan(0);
    expect(way?.weights).toEqual([]);
  });

  it('are none without a first place', () => {
    expect(waysToWin({ ...stopped, ranking: { ...stopped.ranking, recommended: null } }, [])).toEqual([]);
  });
});

import * as v from 'valibot';
import { describe, expect, it, vi } from 'vitest';
import { words } from '../../src/command/content.ts';
import { sureSchema, type Sure } from '../../src/evaluation/sure.ts';
import { markdown } from '../../src/report/markdown.ts';
import { record } from '../../src/report/record.ts';
import {
  chancesInWords,
  changeWords,
  findings,
  percent,
  thenWords,
  turningChanges,
} from '../../src/report/sureWords.ts';
import { evaluationOf } from '../support/roofs.ts';

vi.setConfig({ testTimeout: 120_000 });

const unknown = { finder: 'site-visit', isAssumed: false } as const;
const sure: Sure = {
  seed: 1,
  weights: [],
  fixed: {
    samples: 100,
    evaluations: 0,
    byStrategy: [
      { strategy: 'rafter-overhang', best_pct: 61.6, shared_pct: 4 },
      { strategy: 'flush-outriggers', best_pct: 0.4, shared_pct: 0 },
      { strategy: 'prebonded-panel', best_pct: 34, shared_pct: 4 },
    ],
    none_pct: 0,
  },
  answered: null,
  changes: [
    {
      ...unknown,
      path: 'wall.cladding',
      question: 'wall',
      is: 'stays',
      would: 'comes-off',
      chance: 0.05,
      outcome: 'other',
      first: 'flush-outriggers',
      lead: 0.02,
      loss: 0.02,
    },
    {
      ...unknown,
      path: 'belowDeck.attic',
      question: 'below-deck',
      is: 'cathedral',
      would: 'stays-vented',
      chance: 0.25,
      outcome: 'stop',
      first: null,
      lead: null,
      loss: 0,
    },
    {
      ...unknown,
      path: 'overhang.eave_m',
      question: 'overhang',
      is: 0.6096,
      would: 0.508,
      chance: 0.2,
      outcome: 'same',
      first: 'rafter-overhang',
      lead: 0.05,
      loss: 0,
    },
  ],
  answerWorth: [
    {
      ...unknown,
      path: 'wall.cladding',
      question: 'wall',
      is: 'stays',
      value: 0.001,
      mayStop: false,
      chance: 0.05,
    },
    {
      ...unknown,
      path: 'belowDeck.attic',
      question: 'below-deck',
      is: 'cathedral',
      value: 0,
      mayStop: true,
      chance: 0.25,
    },
    {
      ...unknown,
      path: 'overhang.eave_m',
      question: 'overhang',
      is: 0.6096,
      value: 0.0004,
      mayStop: false,
      chance: 0.4,
    },
  ],
  measureWorth: [
    {
      id: 'handovers:prebonded-panel',
      name: 'Steps and trades (prebonded panel)',
      target: 'measure',
      finder: 'quote',
      value: 0.02,
    },
  ],
  everything: 0.03,
};
const { questions } = words();

describe('how sure, in words', () => {
  it('the invented example fits its schema', () => {
    expect(v.safeParse(sureSchema, sure).success).toBe(true);
  });

  it('chances come likeliest first, ties beside them, and nothing is rounded to never or always', () => {
    expect(chancesInWords(sure.fixed)).toBe(
      'Rafter overhang 62 % (level with another in 4 % more), Prebonded vented panel 34 % (level with another in 4 % more), Flush frame with outriggers less than 1 %',
    );
    expect(percent(99.6)).toBe('more than 99 %');
    expect(percent(100)).toBe('100 %');
    expect(percent(0)).toBe('0 %');
  });

  it('changes name the question, both answers, and what would come of it, likeliest first', () => {
    const turning = turningChanges(sure);
    expect(turning.map(({ path }) => path)).toEqual(['belowDeck.attic', 'wall.cladding']);
    const [stop, other] = turning;
    if (stop === undefined || other === undefined) throw new RangeError('two were expected');
    expect(thenWords(stop)).toBe('everything stops');
    expect(thenWords(other)).toBe('Flush frame with outriggers comes first');
    expect(thenWords({ outcome: 'tie', first: 'rafter-overhang' })).toContain('level');
    expect(thenWords({ outcome: 'none-feasible', first: null })).toContain('no variant');
    expect(changeWords(questions, other, 'IP')).not.toMatch(/comes-off|wall\.cladding/);
  });

  it('numbers are said in the units of the reader', () => {
    const [, , depth] = sure.changes;
    if (depth === undefined) throw new RangeError('a third was expected');
    expect(changeWords(questions, depth, 'IP')).toContain('20 in');
    expect(changeWords(questions, depth, 'SI')).toContain('508 mm');
  });

  it('findings put what may stop everything first, leave out what gains nothing, and stop at the most asked for', () => {
    const found = findings(questions, sure, 8);
    expect(found.map(({ id }) => id)).toEqual([
      'belowDeck.attic',
      'handovers:prebonded-panel',
      'wall.cladding',
    ]);
    expect(found[0]?.gain).toBe('one answer stops everything');
    expect(found[1]).toMatchObject({ gain: '2.0 points', how: 'ask for a quote', question: null });
    expect(findings(questions, sure, 1)).toHaveLength(1);
  });
});

describe('the record', () => {
  const ranch = evaluationOf('3-wide-ranch');
  const text = (evaluation: typeof ranch): string =>
    markdown(record(evaluation, words(), { role: 'builder', system: 'IP' }));

  it('says how sure only where it was worked out', () => {
    expect(text(ranch)).not.toContain('How sure');
    const said = text({ ...ranch, sure });
    expect(said).toContain('How sure');
    expect(said).toContain('everything stops');
    expect(said).toContain('ask for a quote');
  });

  it('opens its summary with the rationale for the reader', () => {
    expect(text(ranch)).toContain(ranch.rationale.builder[0]?.slice(0, 40) ?? 'missing');
  });
});

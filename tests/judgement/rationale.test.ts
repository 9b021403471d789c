import { describe, expect, it, vi } from 'vitest';
import { criteria } from '../../src/catalog/criteria.ts';
import { defaultRows } from '../../src/catalog/defaults.ts';
import { rationale } from '../../src/catalog/rationale.ts';
import type { Evaluation } from '../../src/evaluation/evaluation.ts';
import { rationaleOf } from '../../src/judgement/rationale.ts';
import { evaluationOf } from '../support/roofs.ts';

vi.setConfig({ testTimeout: 120_000 });
const readers = ['builder', 'designer', 'trainer'] as const;
const ranch = evaluationOf('3-wide-ranch');
const box = evaluationOf('2-thin-edge-box');

describe('the sentences', () => {
  it('have phrases for every criterion, with both figures, and name only answers that exist', () => {
    expect(criteria.map(({ id }) => id).filter((id) => !(id in rationale.criteria))).toEqual([]);
    for (const { better, worse } of Object.values(rationale.criteria))
      for (const phrase of [better, worse]) expect(phrase).toMatch(/\{own\}.*\{other\}/);
    const paths = new Set(defaultRows.map(({ path }) => path));
    expect(rationale.decisive.filter(({ path }) => !paths.has(path))).toEqual([]);
  });

  it.each(readers)('leave no slot open for the %s', (role) => {
    for (const evaluation of [ranch, box]) {
      const said = evaluation.rationale[role].join(' ');
      expect(said).not.toMatch(/[{}]/);
      expect(said.length).toBeGreaterThan(80);
    }
  });
});

describe('the rationale of the wide ranch', () => {
  const [first, reasons = '', counter = ''] = ranch.rationale.builder;
  const [one, two] = ranch.ranking.leaders;

  it('names the first, the second and the margin of the ranking', () => {
    expect(first).toContain('The prebonded vented panel');
    expect(first).toContain('the rafter overhang');
    expect(first).toContain((100 * ((one?.total ?? 0) - (two?.total ?? 0))).toFixed(1));
  });

  it('gives the criterion with the greatest lead as its first reason, and the greatest loss against it', () => {
    const { contributions } = ranch.ranking;
    const gaps = criteria
      .map(({ id }) => ({
        id,
        gap:
          (contributions[one?.candidate ?? '']?.[id] ?? 0) - (contributions[two?.candidate ?? '']?.[id] ?? 0),
      }))
      .sort((a, b) => b.gap - a.gap);
    const start = (phrase: string | undefined) => (phrase ?? '').split('{own}')[0] ?? '';
    expect(reasons).toContain(start(rationale.criteria[gaps[0]?.id ?? '']?.better));
    expect(counter).toContain(start(rationale.criteria[gaps.at(-1)?.id ?? '']?.worse));
    expect(counter).toContain((-100 * (gaps.at(-1)?.gap ?? 0)).toFixed(1));
  });

  it('differs between the readers', () => {
    const said = readers.map((role) => ranch.rationale[role].join(' '));
    expect(new Set(said).size).toBe(3);
  });
});

describe('a rationale', () => {
  const leaders = (totals: readonly number[]): Evaluation => ({
    ...ranch,
    ranking: {
      ...ranch.ranking,
      leaders: ranch.ranking.leaders
        .slice(0, totals.length)
        .map((one, at) => ({ ...one, total: totals[at] ?? 0 })),
    },
  });

  it('never calls a tie a win', () => {
    const said = rationaleOf(leaders([0.7, 0.69999])).builder[0] ?? '';
    expect(said).toContain('level');
    expect(said).not.toMatch(/ahead|comes first/);
  });

  it('says so when only one way is left', () => {
    expect(rationaleOf(leaders([0.7])).builder[0]).toContain('only way left');
  });

  it('is empty where nothing is ranked', () => {
    expect(rationaleOf(leaders([]))).toEqual({ builder: [], designer: [], trainer: [] });
  });

  it('says what was assumed, the decisive answers by name, or that nothing was', () => {
    const bare = rationaleOf({ ...ranch, assumptions: [] }).builder.at(-1);
    expect(bare).toContain('Nothing was assumed');
    const [row] = defaultRows.filter(({ path }) => path === 'wall.cladding');
    const open = row === undefined ? [] : [{ ...row, path: 'wall.cladding' }];
    expect(
      rationaleOf({ ...ranch, assumptions: open as Evaluation['assumptions'] }).builder.at(-1),
    ).toContain('cladding');
  });
});

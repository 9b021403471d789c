/** How far answers, measures, prices and weights may be off, from content/tables/uncertainties.json. */
import * as v from 'valibot';
import json from '../../content/tables/uncertainties.json' with { type: 'json' };
import { knownGrades } from './sets.ts';

const finite = v.pipe(v.number(), v.finite());
const share = v.pipe(v.number(), v.minValue(0), v.maxValue(1));
const text = v.pipe(v.string(), v.minLength(1));

/** Who can find out, and so what the finding out costs. */
export const finders = [
  'site-visit',
  'engineer',
  'authority',
  'quote',
  'supplier',
  'owner',
  'test-piece',
] as const;
export type Finder = (typeof finders)[number];

/** `factor` multiplies, `shift` adds, `value` stands in the place of the value. */
const spread = {
  shape: v.picklist(['factor', 'shift', 'value']),
  distribution: v.picklist(['triangular', 'uniform', 'log-uniform']),
  low: finite,
  likely: finite,
  high: finite,
};
const cited = {
  id: v.pipe(v.string(), v.regex(/^[a-z][a-z0-9-]*$/)),
  name: text,
  finder: v.picklist(finders),
  reason: text,
  source: text,
  known: v.picklist(knownGrades),
};
export const measureRow = v.strictObject({
  ...cited,
  ...spread,
  target: v.literal('measure'),
  criterion: text,
  /** Candidates that agree in this share one draw; `all` share one. */
  by: v.picklist(['all', 'strategy', 'carrier', 'board', 'ventilation']),
});
export const priceRow = v.strictObject({ ...cited, ...spread, target: v.literal('price'), price: text });
export const weightRow = v.strictObject({
  ...cited,
  ...spread,
  target: v.literal('weight'),
  of: v.picklist(['usual', 'own']),
});
export const answerRow = v.strictObject({
  ...cited,
  ...spread,
  target: v.literal('answer'),
  path: text,
  question: text,
});

export const uncertaintiesTable = v.strictObject({
  title: text,
  about: text,
  /** Of the sampling: the same seed gives the same bytes. */
  seed: v.pipe(v.number(), v.integer(), v.minValue(0)),
  /** Chance that an answer of a closed set is another one: when assumed, and when given. */
  chances: v.strictObject({
    assumedIsOther: share,
    /** Of a wish that only the owner decides. */
    assumedWishIsOther: share,
    givenIsOther: share,
    reason: text,
    source: text,
    known: v.picklist(knownGrades),
  }),
  /** Who finds out about the answers below a path; the longest path that fits counts. */
  finders: v.record(v.string(), v.picklist(finders)),
  rows: v.pipe(
    v.array(v.variant('target', [measureRow, priceRow, weightRow, answerRow])),
    v.check(
      (rows) => rows.every(({ low, likely, high }) => low <= likely && likely <= high && low < high),
      'low, likely and high of every row must rise',
    ),
  ),
});

export type Uncertainty = v.InferOutput<typeof uncertaintiesTable>['rows'][number];
export type Spread = Pick<Uncertainty, 'shape' | 'distribution' | 'low' | 'likely' | 'high'>;

export const uncertainties = v.parse(uncertaintiesTable, json);

/** The rows of a target, typed. */
export const uncertaintiesOf = <T extends Uncertainty['target']>(
  target: T,
): Extract<Uncertainty, { target: T }>[] =>
  uncertainties.rows.filter((row): row is Extract<Uncertainty, { target: T }> => row.target === target);

/** Who can find out about an answer. */
export function finderOf(path: string): Finder {
  const fitting = Object.keys(uncertainties.finders)
    .filter((key) => path === key || path.startsWith(`${key}.`))
    .sort((a, b) => b.length - a.length);
  return uncertainties.finders[fitting[0] ?? ''] ?? 'owner';
}

/** Calculations of the judgement, for the command line and the check values. */
import * as v from 'valibot';
import { defineCalculation, type Calculation } from '../catalog/calculation.ts';
import { quantity } from '../catalog/quantity.ts';
import { weightedRanking } from './weighted.ts';

/** [-] scores of any scale are taken, up to this size. */
const GREATEST_SCORE = 1e6;
const name = v.pipe(v.string(), v.minLength(1), v.maxLength(200));
const byCriterion = v.record(name, quantity({ atLeast: 0 }));

const ranking = defineCalculation({
  name: 'weighted-ranking',
  summary:
    'Weighted additive value of alternatives and the smallest change of one weight that reverses a pair',
  input: v.pipe(
    v.strictObject({
      weights: v.pipe(
        byCriterion,
        v.check(
          (weights) => Object.values(weights).some((weight) => weight > 0),
          'one weight above 0 is needed',
        ),
      ),
      scores: v.record(name, v.record(name, quantity({ atLeast: -GREATEST_SCORE, atMost: GREATEST_SCORE }))),
    }),
    v.rawCheck(({ dataset, addIssue }) => {
      if (!dataset.typed) return;
      const { weights, scores } = dataset.value;
      for (const [alternative, row] of Object.entries(scores))
        for (const criterion of Object.keys(weights))
          if (row[criterion] === undefined)
            addIssue({
              message: `scores.${alternative}.${criterion}: is missing; a number is needed for every criterion weighted`,
            });
    }),
  ),
  run: ({ weights, scores }) => ({ ...weightedRanking(weights, scores) }),
});

export const judgementCalculations: Readonly<Record<string, Calculation>> = { [ranking.name]: ranking };

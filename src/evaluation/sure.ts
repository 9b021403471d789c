/** How sure an evaluation is: the shape of what `evaluate --sure` adds and the Compare page shows. */
import * as v from 'valibot';
import { strategies } from '../catalog/sets.ts';
import { finders } from '../catalog/uncertainties.ts';

const number = v.number();
const word = v.string();
const answerValue = v.union([v.string(), v.number(), v.boolean()]);
const unknown = {
  path: word,
  question: word,
  finder: v.picklist(finders),
  is: answerValue,
  isAssumed: v.boolean(),
};

const chance = v.object({
  strategy: v.picklist(strategies),
  /** Share of the samples in which it leads alone. */
  best_pct: number,
  /** Share of the samples in which it shares the first place. */
  shared_pct: number,
});

const chances = v.object({
  samples: number,
  /** Cases that were evaluated again with other answers; 0 where only measures, prices and weights were moved. */
  evaluations: number,
  byStrategy: v.array(chance),
  /** Share of the samples in which nothing was feasible, or everything stopped. */
  none_pct: number,
});

export const sureSchema = v.object({
  seed: number,
  /** Single weights that bring the second level with the first; level is on the scale of ranking.weights. */
  weights: v.array(
    v.object({
      criterion: word,
      weight: number,
      level: v.nullable(number),
      change_pct: v.nullable(number),
    }),
  ),
  /** On the candidates as they stand: measures, prices and weights uncertain. */
  fixed: chances,
  /** With the answers uncertain as well; null where it was not asked for. */
  answered: v.nullable(chances),
  /** Single answers, changed one at a time. */
  changes: v.array(
    v.object({
      ...unknown,
      would: answerValue,
      chance: number,
      outcome: v.picklist(['same', 'other', 'tie', 'stop', 'none-feasible']),
      first: v.nullable(v.picklist(strategies)),
      lead: v.nullable(number),
      loss: number,
    }),
  ),
  /** Expected gain in total value, 0 to 1, from knowing an answer before deciding. */
  answerWorth: v.array(v.object({ ...unknown, value: number, mayStop: v.boolean(), chance: number })),
  /** The same for measures, prices and weights. */
  measureWorth: v.array(
    v.object({
      id: word,
      name: word,
      target: v.picklist(['measure', 'price', 'weight']),
      finder: v.picklist(finders),
      value: number,
    }),
  ),
  /** Expected gain from knowing all measures, prices and weights at once: no single one can be worth more. */
  everything: number,
});

export type Sure = v.InferOutput<typeof sureSchema>;
export type ChanceTable = v.InferOutput<typeof chances>;

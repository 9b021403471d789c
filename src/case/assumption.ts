/** One cautious default that stands in for an answer. */
import * as v from 'valibot';

const word = v.string();

export const assumptionSchema = v.object({
  /** Dotted path in the case, e.g. `roof.pitch_rise_per_12`. */
  path: word,
  /** The interview question that would settle it. */
  question: word,
  value: v.unknown(),
  reason: word,
  /** What the caution costs, in words. */
  cost: word,
  source: word,
});

export type Assumption = v.InferOutput<typeof assumptionSchema>;

/** One load with its name, for lists of the evaluation. */
import type { NamedLoad } from '../evaluation/evaluation.ts';

type Rest = Omit<NamedLoad, 'id' | 'what' | 'value' | 'unit'> & { readonly unit?: string };

/**
 * A named load in pascal unless another unit is given; `value` null where no table reaches.
 *
 * @returns  [-] the row of the list
 * @source   OUR-JUDGEMENT
 */
export const namedLoad = (id: string, what: string, value: number | null, rest: Rest): NamedLoad => ({
  id,
  what,
  value,
  unit: 'Pa',
  ...rest,
});

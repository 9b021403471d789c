/** The criteria as a page asks for their weights. */
import table from '../../../content/tables/criteria.json' with { type: 'json' };
import type { Criterion as NamedCriterion } from '../../report/criteria.ts';

export interface Criterion extends NamedCriterion {
  /** The trade-off in plain words: the worse state, or the better one. */
  readonly swing: string;
  /** Usual weight by reader, 0 to 100. */
  readonly weights: Readonly<Record<'builder' | 'designer' | 'trainer', number>>;
}

export const criteria = table.rows as unknown as readonly Criterion[];

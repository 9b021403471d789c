/** Names and kinds of the ranking's criteria, from content/tables/criteria.json. */
import json from '../../content/tables/criteria.json' with { type: 'json' };
import type { MeasureKind } from '../measures.ts';

export interface Criterion {
  readonly id: string;
  readonly name: string;
  /** What is measured, in words. */
  readonly measure: string;
  readonly kind: MeasureKind;
  readonly better: 'more' | 'less';
}

const rows = (json as unknown as { rows: readonly Criterion[] }).rows;

export const allCriteria = (): readonly Criterion[] => rows;
export const criterion = (id: string): Criterion | undefined => rows.find((row) => row.id === id);
export const criterionName = (id: string): string => criterion(id)?.name ?? id;

import type { WorkingInput } from '../../evaluation/working.ts';
import type { MeasureKind } from '../../measures.ts';

/** One named value of a working. */
export const valueIn = (symbol: string, meaning: string, value: number, kind: MeasureKind): WorkingInput => ({
  symbol,
  meaning,
  value,
  kind,
});

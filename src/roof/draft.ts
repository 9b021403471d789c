/** A computed candidate before it is judged. */
import type { Candidate } from '../evaluation/evaluation.ts';
import type { OutriggerPlan } from './overhang.ts';
import type { Variant } from './variant.ts';

/** A candidate without its exclusions and attributes, and what judgement needs beside it. */
export interface Draft {
  readonly candidate: Omit<Candidate, 'feasible' | 'excludedBy' | 'attributes'>;
  readonly variant: Variant;
  readonly outrigger: OutriggerPlan | null;
  readonly windUse: number | null;
  readonly waste_pct: number;
  /** False when no stack of boards that are sold reaches what is asked. */
  readonly reachesGoal: boolean;
}

/** The three candidate strategies, in the order in which they are shown. */
import type { Strategy } from './family.ts';
import { flushOutriggers } from './flushOutriggers.ts';
import { prebondedPanel } from './prebondedPanel.ts';
import { rafterOverhang } from './rafterOverhang.ts';

export const strategies: readonly Strategy[] = [rafterOverhang, flushOutriggers, prebondedPanel];
export { buildCandidate } from './build.ts';

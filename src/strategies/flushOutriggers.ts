import { layeredVentilations, looseBoards, members, type Strategy } from './family.ts';

/** Framing stops at the wall; outriggers screwed down in the insulation zone carry the overhang. */
export const flushOutriggers: Strategy = {
  id: 'flush-outriggers',
  variants: () => members('flush-outriggers', looseBoards, layeredVentilations, ['outriggers']),
};

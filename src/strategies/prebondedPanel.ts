import { members, tailsOf, type Strategy } from './family.ts';
import type { BoardId } from '../catalog/sets.ts';

/** Cores in which panels with bonded spacers and top sheet are made (common practice). */
const cores: readonly BoardId[] = ['polyisocyanurate', 'eps', 'graphite-eps'];

/** A panel alone, or over a base layer of the same board whose joints it covers. */
const withAndWithoutBase = cores.flatMap((core) => [[core, null] as const, [core, core] as const]);

/** Factory panel of board, spacer blocks and nailing sheet over the membrane; its overhang is carried either way. */
export const prebondedPanel: Strategy = {
  id: 'prebonded-panel',
  variants: (given) =>
    members('prebonded-panel', withAndWithoutBase, ['panel-gap', 'unvented'], [tailsOf(given), 'outriggers']),
};

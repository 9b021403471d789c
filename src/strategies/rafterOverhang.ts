import { layeredVentilations, looseBoards, members, tailsOf, type Strategy } from './family.ts';

/** The rafter tails or truss top chords run out and carry the overhang; board in layers over a membrane on the deck. */
export const rafterOverhang: Strategy = {
  id: 'rafter-overhang',
  variants: (given) => members('rafter-overhang', looseBoards, layeredVentilations, [tailsOf(given)]),
};

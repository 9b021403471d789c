/** How long the roof screws must be, in lengths that are sold, and what their tips do below the deck. */
import { screwLengths_m } from '../catalog/lumber.ts';
import { metersFromInches } from '../units.ts';
import type { NotCovered } from '../catalog/notCovered.ts';
import { demandPositive, demandRange } from './guards.ts';

/** [m] 1-1/2 in of thread in solid framing (common practice). */
export const EMBEDMENT_M = metersFromInches(3 / 2);
/** [m] 1/8 in kept between tip and a deck underside that stays in view (our judgement). */
const VISIBLE_CLEARANCE_M = metersFromInches(1 / 8);
/** [m] rounding noise of a sum of thicknesses. */
const LENGTH_NOISE_M = 1e-9;

export interface ScrewLength {
  readonly kind: 'length';
  /** Stack plus embedment. */
  readonly needed_m: number;
  /** The next length sold. */
  readonly length_m: number;
  /** What then sits in the framing below the deck. */
  readonly penetration_m: number;
  /** How far the tip stands out below the deck when the screw misses the framing. */
  readonly standsOutOnMiss_m: number;
  /** Longest screw sold that stays hidden when it misses the framing; null when none does. */
  readonly hiddenLimit_m: number | null;
  /** True when the deck's underside is in view and a miss would show. */
  readonly mayShowBelow: boolean;
  readonly notes: readonly string[];
}

/**
 * Screw length from the stack above the framing.
 *
 * L = top layer + gap + board + deck + 1.5 in, rounded up to a length sold
 *
 * @param input  [m] thickness of all layers the screw crosses above the deck, deck thickness, whether the underside is in view
 * @returns      [m] needed, sold, penetration, tip below the deck; or notCovered when no length sold is long enough
 * @throws       RangeError when a thickness is outside its range
 * @source       COMMON-PRACTICE embedment 1.5 in and lengths sold (common practice)
 * @assumes      driven square to the slope, into framing
 */
export function screwLength(input: {
  readonly aboveDeck_m: number;
  readonly deck_m: number;
  readonly isUndersideVisible: boolean;
  readonly embedment_m?: number;
  /** Lengths sold, shortest first; those commonly sold when absent. */
  readonly sold_m?: readonly number[];
}): ScrewLength | NotCovered {
  demandPositive('aboveDeck_m', input.aboveDeck_m);
  demandRange('deck_m', input.deck_m, 0);
  const embedment_m = input.embedment_m ?? EMBEDMENT_M;
  demandPositive('embedment_m', embedment_m);
  const stack_m = input.aboveDeck_m + input.deck_m;
  const needed_m = stack_m + embedment_m;
  const lengths_m = input.sold_m ?? screwLengths_m;
  const length_m = lengths_m.find((sold_m) => sold_m >= needed_m - LENGTH_NOISE_M);
  if (length_m === undefined)
    return {
      kind: 'notCovered',
      reason: `the stack needs a screw of ${needed_m.toFixed(3)} m; the longest sold is ${(lengths_m.at(-1) ?? 0).toFixed(3)} m`,
      deferTo: 'structural engineer and screw supplier',
    };
  const penetration_m = length_m - stack_m;
  const notes = [
    'A screw that misses the framing is pulled, its hole sealed, and a new one set.',
    'Mark wires, pipes and ducts within reach of the tips before driving.',
  ];
  if (input.isUndersideVisible)
    notes.push('The deck is in view from below: a screw that misses shows. Snap lines on every rafter.');
  return {
    kind: 'length',
    needed_m,
    length_m,
    penetration_m,
    standsOutOnMiss_m: penetration_m,
    hiddenLimit_m: lengths_m.findLast((sold_m) => sold_m <= stack_m - VISIBLE_CLEARANCE_M) ?? null,
    mayShowBelow: input.isUndersideVisible,
    notes,
  };
}

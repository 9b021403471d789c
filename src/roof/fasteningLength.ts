/** How long the screws are, what they cross, what they bite into and what their heads sit on. */
import { dimension } from '../catalog/dimensions.ts';
import { screwLengths_m } from '../catalog/lumber.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Layer } from '../evaluation/evaluation.ts';
import { screwLength } from '../structure/screwLength.ts';
import type { Variant } from './variant.ts';

/** [m] least thread counted in a deck: 1/8 in, so that a screw that hardly bites shows as a hold near nothing. */
const LEAST_BITE_M = 0.003175;
/** [m] lengths past the longest common one come in steps of 1 in (common practice). */
const LONG_STEP_M = 0.0254;
/** [m] rounding noise of a sum of lengths. */
const NOISE_M = 1e-9;

/**
 * A prebonded panel holds in the deck; furring and plain decks are screwed into the framing.
 *
 * @param variant  [-] strategy
 * @returns        [-] what the thread bites into
 * @source         COMMON-PRACTICE of panel makers and framers (common practice)
 */
export const holdsIn = (variant: Variant): 'rafter' | 'deck' =>
  variant.strategy === 'prebonded-panel' ? 'deck' : 'rafter';

/** What the screw goes through above the deck: boards, gap, and the top sheet or the furring. */
function stackAboveDeck(layers: readonly Layer[], variant: Variant): number {
  const through = new Set<Layer['role']>(
    variant.ventilation === 'vented-furring'
      ? ['air-barrier', 'insulation', 'vent-gap']
      : ['air-barrier', 'insulation', 'vent-gap', 'upper-deck'],
  );
  return layers.reduce((sum, layer) => sum + (through.has(layer.role) ? layer.thickness_m : 0), 0);
}

export interface SideMember {
  readonly thickness_m: number;
  readonly specificGravity: number;
  readonly isFurring: boolean;
}

/**
 * What the head sits on: the furring, or the sheet on top.
 *
 * @param layers   [m] of the candidate
 * @param variant  [-] ventilation
 * @returns        [m, -] thickness and specific gravity
 * @source         COMMON-PRACTICE sizes of dimensions.json (common practice); NDS-2018 table 12.3.3A (seen-transcription)
 */
export function sideMember(layers: readonly Layer[], variant: Variant): SideMember {
  if (variant.ventilation === 'vented-furring')
    return {
      thickness_m: dimension('furring-height_m'),
      specificGravity: dimension('wood-gravity'),
      isFurring: true,
    };
  const upper = layers.find((layer) => layer.role === 'upper-deck');
  return {
    thickness_m: upper?.thickness_m ?? dimension('upper-deck_m'),
    specificGravity: dimension('panel-gravity'),
    isFurring: false,
  };
}

/**
 * Specific gravity of the deck for fasteners.
 *
 * @param given  [-] the complete case
 * @returns      [-] G of softwood boards, or of panels
 * @source       NDS-2018 tables 12.3.3A and 12.3.3B (memory)
 */
export const deckGravity = (given: CompleteCase): number =>
  given.framing.deck === 'plank' ? dimension('wood-gravity') : dimension('panel-gravity');

/**
 * Lengths that are sold: those of the report, the common ones up to its longest, or the common ones.
 *
 * @param given  [m] the complete case
 * @returns      [m] shortest first
 * @source       COMMON-PRACTICE lengths commonly sold; past them steps of 1 in (common practice)
 */
export function soldLengths_m({ insulation: { screwReport } }: CompleteCase): readonly number[] {
  if (screwReport?.lengths_m !== undefined) return [...screwReport.lengths_m].sort((a, b) => a - b);
  const longest_m = screwReport?.longest_m;
  if (longest_m === undefined) return screwLengths_m;
  const common_m = screwLengths_m.filter((length_m) => length_m <= longest_m + NOISE_M);
  const last_m = common_m.at(-1) ?? 0;
  const further = Math.max(0, Math.floor((longest_m - last_m + NOISE_M) / LONG_STEP_M));
  return [...common_m, ...Array.from({ length: further }, (_, index) => last_m + (index + 1) * LONG_STEP_M)];
}

export interface Driven {
  readonly length_m: number;
  readonly penetration_m: number;
  readonly isSold: boolean;
  /** Thread that counts: in the rafter past the deck, or in the deck. */
  readonly thread_m: number;
  readonly above_m: number;
  readonly isHidden: boolean;
}

/**
 * How long the screw is, and how deep in what holds it.
 *
 * L = layers above the deck + deck + 1 1/2 in (or the report's least) in the rafter, or 1/2 in past the deck, rounded up
 *
 * @param given    [m] the complete case
 * @param variant  [-] strategy and ventilation
 * @param layers   [m] of the candidate
 * @param sold_m   [m] lengths sold, shortest first
 * @returns        [m] length, penetration, thread that counts
 * @source         COMMON-PRACTICE embedment 1 1/2 in (common practice)
 */
export function drivenOf(
  given: CompleteCase,
  variant: Variant,
  layers: readonly Layer[],
  sold_m: readonly number[],
): Driven {
  const into = holdsIn(variant);
  const deck_m = given.framing.deckThickness_m;
  const least_m = given.insulation.screwReport?.minimumPenetration_m ?? 0;
  const embedment_m =
    into === 'rafter'
      ? Math.max(dimension('screw-embedment_m'), least_m)
      : dimension('screw-tip-below-deck_m');
  const above_m = stackAboveDeck(layers, variant);
  const isSeen = given.framing.deckSeenFromBelow;
  const found = screwLength({
    aboveDeck_m: above_m,
    deck_m,
    isUndersideVisible: isSeen,
    embedment_m,
    sold_m,
  });
  const isSold = found.kind === 'length';
  // A panel over a deck in view: the longest screw sold that ends within the deck.
  const hidden_m = into === 'deck' && isSeen && isSold ? found.hiddenLimit_m : null;
  const bite_m = hidden_m === null ? deck_m : Math.max(LEAST_BITE_M, hidden_m - above_m);
  return {
    length_m: hidden_m ?? (isSold ? found.length_m : above_m + deck_m + embedment_m),
    penetration_m: hidden_m === null ? (isSold ? found.penetration_m : embedment_m) : hidden_m - above_m,
    isSold,
    thread_m: into === 'rafter' ? embedment_m : Math.min(deck_m, bite_m),
    above_m,
    isHidden: hidden_m !== null,
  };
}

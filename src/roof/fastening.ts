/** Long screws of a candidate: length, count, hold in wind and along the slope. Provisional. */
import { dimension } from '../catalog/dimensions.ts';
import { screwOf } from '../catalog/lumber.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Layer } from '../evaluation/evaluation.ts';
import { allowableWithdrawal, headPullThrough } from '../structure/screws.ts';
import { screwLength } from '../structure/screwLength.ts';
import { gapCapacity, slopeScreening } from '../structure/slope.ts';
import { LOAD_DURATION } from '../structure/timber.ts';
import { ALLOWABLE_STRESS_WIND } from '../structure/wind.ts';
import { insulationLayers } from './assembly.ts';
import { alongSlope_Pa, type RoofLoad } from './loads.ts';
import { angleOfPitch_deg } from './geometry.ts';
import type { Variant } from './variant.ts';

const SCREW = 'wood-14';
/** [-] load duration of wind, NDS 2018 table 2.3.2 (seen-transcription). */
const WIND_DURATION = LOAD_DURATION.wind;
/** [m] least thread counted in a deck: 1/8 in, so that a screw that hardly bites shows as a hold near nothing. */
const LEAST_BITE_M = 0.003175;

export interface Fastening {
  readonly fasteners: Candidate['fasteners'];
  /** Uplift of the corner zone over what the usual spacing holds; null when the wind tables do not reach. */
  readonly windUse: number | null;
}

/** A prebonded panel holds in the deck; furring and plain decks are screwed into the framing. */
const holdsIn = (variant: Variant): 'rafter' | 'deck' =>
  variant.strategy === 'prebonded-panel' ? 'deck' : 'rafter';

const thickness_m = (layers: readonly Layer[]): number =>
  layers.reduce((sum, layer) => sum + layer.thickness_m, 0);

/** What the screw goes through above the deck: boards, gap, and the top sheet or the furring. */
function stackAboveDeck(layers: readonly Layer[], variant: Variant): number {
  const through = new Set<Layer['role']>(
    variant.ventilation === 'vented-furring'
      ? ['air-barrier', 'insulation', 'vent-gap']
      : ['air-barrier', 'insulation', 'vent-gap', 'upper-deck'],
  );
  return thickness_m(layers.filter((layer) => through.has(layer.role)));
}

function sideMember(layers: readonly Layer[], variant: Variant): { thickness_m: number; gravity: number } {
  if (variant.ventilation === 'vented-furring')
    return { thickness_m: dimension('furring-height_m'), gravity: dimension('wood-gravity') };
  const upper = layers.find((layer) => layer.role === 'upper-deck');
  return {
    thickness_m: upper?.thickness_m ?? dimension('upper-deck_m'),
    gravity: dimension('panel-gravity'),
  };
}

/**
 * Screw length, count and screening of hold.
 *
 * length = layers above the deck + deck + 1 1/2 in into the rafter (or past the deck), rounded up to a length sold
 * hold = lesser of withdrawal and head pull-through × load duration of wind
 *
 * @param given    [-] the complete case
 * @param variant  [-] strategy and ventilation
 * @param layers   [m] layers of the candidate
 * @param load     [Pa] loads on it
 * @param area_m2  [m²] roof area
 * @returns        [m, 1/m², -] schedule and use ratios
 * @source         NDS-2018 12.2 (seen-transcription); IBC-2018 table 2603.13.2 by calibration (computed)
 * @assumes        generic No. 14 wood screws; values of a proprietary screw's report take their place
 */
export function fasteningOf(
  given: CompleteCase,
  variant: Variant,
  layers: readonly Layer[],
  load: RoofLoad,
  area_m2: number,
): Fastening {
  const into = holdsIn(variant);
  const deck_m = given.framing.deckThickness_m;
  const embedment_m =
    into === 'rafter' ? dimension('screw-embedment_m') : dimension('screw-tip-below-deck_m');
  const found = screwLength({
    aboveDeck_m: stackAboveDeck(layers, variant),
    deck_m,
    isUndersideVisible: given.framing.deckSeenFromBelow,
    embedment_m,
  });
  const isSold = found.kind === 'length';
  // A panel over a deck in view: the longest screw sold that ends within the deck.
  const hidden_m = into === 'deck' && given.framing.deckSeenFromBelow && isSold ? found.hiddenLimit_m : null;
  const above_m = stackAboveDeck(layers, variant);
  const bite_m = hidden_m === null ? deck_m : Math.max(LEAST_BITE_M, hidden_m - above_m);
  const needed_m = above_m + deck_m + embedment_m;
  const step_m = into === 'rafter' ? dimension('screw-step-rafter_m') : dimension('screw-grid-deck_m');
  const across_m = into === 'rafter' ? given.framing.spacing_m : dimension('screw-grid-deck_m');
  const perArea_1_m2 = 1 / (step_m * across_m);
  const screw = screwOf(SCREW);
  const side = sideMember(layers, variant);
  const main =
    into === 'rafter'
      ? { thickness_m: embedment_m, gravity: dimension('wood-gravity') }
      : {
          thickness_m: Math.min(deck_m, bite_m),
          gravity: given.framing.deck === 'plank' ? dimension('wood-gravity') : dimension('panel-gravity'),
        };
  const gap_m = thickness_m(insulationLayers(layers));
  const capacity = gapCapacity({
    screw,
    sideThickness_m: side.thickness_m,
    sideSpecificGravity: side.gravity,
    gap_m,
    mainPenetration_m: main.thickness_m,
    mainSpecificGravity: main.gravity,
  });
  const slope = slopeScreening({
    alongSlope_Pa: alongSlope_Pa(load, angleOfPitch_deg(given.roof.pitch_rise_per_12)),
    design_N: capacity.design_N,
    screwsPerArea_1_m2: perArea_1_m2,
    gap_m,
  });
  const withdrawal_N = allowableWithdrawal({
    kind: screw.kind,
    diameter_m: screw.nominal_m,
    specificGravity: main.gravity,
    threadPenetration_m: main.thickness_m,
    loadDuration: WIND_DURATION,
  });
  const pull_N =
    screw.head_m === undefined
      ? withdrawal_N
      : WIND_DURATION * headPullThrough(screw.head_m, side.gravity, side.thickness_m);
  const hold_Pa = Math.min(withdrawal_N, pull_N) * perArea_1_m2;
  const uplift_Pa = load.cornerUplift_Pa === null ? null : -ALLOWABLE_STRESS_WIND * load.cornerUplift_Pa;
  return {
    fasteners: {
      screwLength_m: hidden_m ?? (isSold ? found.length_m : needed_m),
      sold: isSold,
      into,
      penetration_m: hidden_m === null ? (isSold ? found.penetration_m : embedment_m) : hidden_m - above_m,
      spacing_m: step_m,
      perArea_1_m2,
      count: Math.ceil(perArea_1_m2 * area_m2),
      slopeUse: slope.check.ratio,
      mayShowBelow: given.framing.deckSeenFromBelow && hidden_m === null,
    },
    windUse: uplift_Pa === null ? null : Math.max(0, uplift_Pa) / hold_Pa,
  };
}

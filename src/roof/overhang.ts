/** Screening of what carries the eave overhang. Provisional: the structural engineer decides. */
import { dimension } from '../catalog/dimensions.ts';
import { boards, type BoardId } from '../catalog/sets.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Layer } from '../evaluation/evaluation.ts';
import { insulationLayers } from './assembly.ts';
import { angleOfPitch_deg, cosine, measureRoof, type EdgeCarrier } from './geometry.ts';
import { alongSlope_Pa, namedLoadsOf, type RoofLoad } from './loads.ts';
import { outriggersOutcome } from './outriggers.ts';
import type { OutriggerRoom } from './outriggerSeat.ts';
import { rounded, type OutriggerPlan } from './overhangLimit.ts';
import { tailsOutcome } from './tails.ts';

export type { OutriggerPlan } from './overhangLimit.ts';

/** [-] stands for "past any limit" where nothing passes. */
const NO_LIMIT_USE = 9;

export interface OverhangResult {
  readonly structure: Candidate['structure'];
  readonly outrigger: OutriggerPlan | null;
}

/** The board of a layer: its material is the board or a faced kind of it. */
const boardOf = ({ material }: Layer): BoardId | undefined =>
  boards.find((board) => material === board || material?.startsWith(`${board}-`) === true);

/** Depth in which outriggers can lie: all loose board, but only the base layer under a prebonded panel. */
function roomForOutriggers(layers: readonly Layer[], isPanel: boolean): OutriggerRoom {
  const all = insulationLayers(layers);
  const loose = isPanel ? all.slice(0, -1) : all;
  const [board] = loose.flatMap((layer) => boardOf(layer) ?? []);
  return {
    room_m: loose.reduce((sum, layer) => sum + layer.thickness_m, 0),
    board: board ?? null,
  };
}

/**
 * What the carrier of the eave overhang is asked and what this screening gives it.
 *
 * limit = greatest overhang whose checks all pass, by halving, at most 24 in; use = overhang / limit
 *
 * @param given    [-] the complete case
 * @param carrier  [-] tails or outriggers
 * @param layers   [m] layers of the candidate
 * @param load     [Pa] loads on it
 * @param isPanel  [-] true under a prebonded panel, whose core takes no outrigger
 * @returns        [-] checks with ratios, combinations, the screening limit, advice, and the outrigger chosen
 * @source         NDS-2018 through src/structure (seen-transcription); AWC-WFCM (memory)
 * @assumes        see tailsOutcome and outriggersOutcome
 */
export function overhangOf(
  given: CompleteCase,
  carrier: EdgeCarrier,
  layers: readonly Layer[],
  load: RoofLoad,
  isPanel: boolean,
): OverhangResult {
  const angle_deg = angleOfPitch_deg(given.roof.pitch_rise_per_12);
  const cos = cosine(angle_deg);
  const overhang_m = given.overhang.eave_m / cos;
  const { run_m } = measureRoof({
    ...given.roof,
    angle_deg,
    eaveOverhang_m: given.overhang.eave_m,
    rakeOverhang_m: given.overhang.rake_m,
  });
  const outcome =
    carrier === 'outriggers'
      ? outriggersOutcome(given, load, roomForOutriggers(layers, isPanel), overhang_m, angle_deg)
      : tailsOutcome(given, load, carrier, overhang_m, angle_deg, run_m);
  const horizontalLimit_m = outcome.limit_m * cos;
  const use = horizontalLimit_m > 0 ? rounded(given.overhang.eave_m / horizontalLimit_m) : NO_LIMIT_USE;
  const { outrigger, checks, combinations, plan, rake } = outcome;
  return {
    structure: {
      provisional: true,
      carrier,
      overhang_m: given.overhang.eave_m,
      screeningLimit_m: horizontalLimit_m,
      use,
      advised_m:
        use > 1 && horizontalLimit_m > 0
          ? [
              horizontalLimit_m * dimension('advised-least-share'),
              horizontalLimit_m * dimension('advised-most-share'),
            ]
          : null,
      addedDeadLoad_Pa: load.dead_Pa,
      alongSlope_Pa: alongSlope_Pa(load, angle_deg),
      outrigger: outrigger === null ? null : { ...outrigger },
      checks,
      loads: namedLoadsOf(given, layers, load),
      combinations,
      plan,
      rake,
    },
    outrigger,
  };
}

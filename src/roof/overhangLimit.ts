/** What tails and outriggers share: checks in the evaluation's shape, the loads of an overhang, the deepest that passes. */
import type { CarrierPlan, Combination, RakeScreening, StructureCheck } from '../evaluation/evaluation.ts';
import { loadCaseTexts, type LoadCaseId, type RoofLoads } from '../structure/combinations.ts';
import type { ScreeningCheck } from '../structure/screening.ts';
import type { RoofLoad } from './loads.ts';

/** [m] shortest overhang looked at: 2 in. */
export const SHORTEST_M = 0.0508;
/** [-] steps of the search down to it. */
const STEPS = 8;
/** [m] how near the limit is found. */
const PRECISION_M = 1e-4;
/** [-] rounding noise of a ratio. */
const RATIO_NOISE = 1e-9;

export interface OutriggerPlan {
  readonly size: string;
  readonly orientation: 'flat' | 'on-edge';
  readonly depth_m: number;
  readonly width_m: number;
  readonly backSpan_m: number;
  readonly spacing_m: number;
}

/** What one way of carrying the eave came to. */
export interface Outcome {
  readonly checks: StructureCheck[];
  /** Greatest overhang along the slope. */
  readonly limit_m: number;
  readonly outrigger: OutriggerPlan | null;
  readonly combinations: Combination[];
  readonly plan: CarrierPlan | null;
  readonly rake: RakeScreening | null;
}

/**
 * A check of the structure in the shape of the evaluation, with the combination that governs as its note.
 *
 * @returns  [-] the check
 * @source   OUR-JUDGEMENT
 */
export const asCheck = (check: ScreeningCheck): StructureCheck => ({
  id: check.id,
  what: check.what,
  demand: check.demand,
  capacity: check.capacity,
  unit: check.unit,
  ratio: Number.isFinite(check.ratio) ? check.ratio : null,
  who: check.who,
  source: check.source,
  clause: check.clause,
  known: check.known,
  note: check.governingCase,
});

/**
 * A check that nobody computed here: open, with the one who settles it.
 *
 * @returns  [-] the check without numbers
 * @source   OUR-JUDGEMENT
 */
export const openCheck = (
  check: Pick<StructureCheck, 'id' | 'what' | 'who' | 'source' | 'clause' | 'known'>,
): StructureCheck => ({ ...check, demand: null, capacity: null, unit: '', ratio: null });

/**
 * Takes the rounding noise of conversions out of a ratio, so that an overhang at its limit reads 1.
 *
 * @returns  [-] the ratio to 1e-9
 * @source   OUR-JUDGEMENT
 */
export const rounded = (ratio: number): number => Math.round(ratio / RATIO_NOISE) * RATIO_NOISE;

/**
 * Greatest overhang along the slope whose checks all pass: steps down from the longest, then halving.
 *
 * @param passes     whether an overhang passes
 * @param longest_m  [m] where the search begins; what passes there needs no search
 * @returns          [m] to a tenth of a millimeter; 0 when no step passes
 * @source           OUR-JUDGEMENT
 */
export function limitOf(passes: (overhang_m: number) => boolean, longest_m: number): number {
  if (longest_m <= SHORTEST_M) return passes(longest_m) ? longest_m : 0;
  if (passes(longest_m)) return longest_m;
  const step_m = (longest_m - SHORTEST_M) / STEPS;
  // On board a short stub can fail where a longer one passes, so the search comes from above.
  let steps = 1;
  while (steps <= STEPS && !passes(longest_m - steps * step_m)) steps += 1;
  if (steps > STEPS) return 0;
  let low = longest_m - steps * step_m;
  let high = low + step_m;
  while (high - low > PRECISION_M) {
    const middle = (low + high) / 2;
    if (passes(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * The loads of an overhang; wind is left out where no table reaches.
 *
 * @returns  [Pa] loads of the combinations
 * @source   ASCE-7-16 section 2.4.1 (memory)
 */
export function overhangLoads(load: RoofLoad, edge: 'eave' | 'rake'): RoofLoads {
  const uplift_Pa = edge === 'eave' ? load.overhangUplift_Pa : load.rakeUplift_Pa;
  const downward_Pa = edge === 'eave' ? load.overhangDownward_Pa : load.rakeDownward_Pa;
  return {
    dead_Pa: load.dead_Pa,
    snow_Pa: load.snow_Pa,
    roofLive_Pa: load.live_Pa,
    ...(load.unbalanced_Pa === null ? {} : { unbalanced_Pa: load.unbalanced_Pa }),
    ...(load.drift_Pa === null ? {} : { drift_Pa: load.drift_Pa }),
    ...(load.eaveIce_Pa === null ? {} : { eaveIce_Pa: load.eaveIce_Pa }),
    ...(load.robustIce_Pa === null ? {} : { robustIce_Pa: load.robustIce_Pa }),
    ...(uplift_Pa === null ? {} : { windUplift_Pa: Math.min(0, uplift_Pa) }),
    ...(downward_Pa === null ? {} : { windDownward_Pa: Math.max(0, downward_Pa) }),
  };
}

/**
 * One load case with what it does to the member.
 *
 * @returns  [-] the row of the evaluation
 * @source   ASCE-7-16 section 2.4.1 (memory)
 */
export const combinationOf = (
  load: { readonly id: LoadCaseId; readonly loadDuration: number; readonly counts: boolean },
  does: Omit<Combination, 'id' | 'formula' | 'clause' | 'loadDuration' | 'counts'>,
): Combination => ({
  id: load.id,
  ...loadCaseTexts[load.id],
  loadDuration: load.loadDuration,
  counts: load.counts,
  ...does,
});

/**
 * The check with the greatest ratio among those that a combination governs.
 *
 * @returns  [-] check, combination and ratio; null without checks
 * @source   OUR-JUDGEMENT
 */
export function governingOf(checks: readonly ScreeningCheck[]): CarrierPlan['governs'] {
  const most = checks.reduce<ScreeningCheck | undefined>(
    (best, next) => (best === undefined || next.ratio > best.ratio ? next : best),
    undefined,
  );
  return most === undefined ? null : { check: most.what, combination: most.governingCase, ratio: most.ratio };
}

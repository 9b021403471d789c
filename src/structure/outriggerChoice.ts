/** Turning the outrigger screening round: the smallest member that passes, and the deepest overhang of a member. */
import { lumberSizes } from '../catalog/lumber.ts';
import {
  BACK_SPAN_RATIO,
  ENGINEER_OVERHANG_M,
  FLAT_2X4_OVERHANG_M,
  outriggerScreening,
  outriggerUse,
  type Outrigger,
  type OutriggerScreening,
} from './outrigger.ts';
import { demandPositive } from './guards.ts';
import { sectionOf, type LumberSize, type Orientation } from './timber.ts';

/** [-] halvings of one step: it ends below 1e-10 m. */
const HALVINGS = 30;
/** [m] longest overhang searched (our judgement). */
const LONGEST_M = 3;
/** [m] step of the search from the longest down (our judgement). */
const STEP_M = 0.05;

export interface OutriggerSize {
  readonly size: LumberSize;
  readonly orientation: Orientation;
}

/** Least lumber first; for the same lumber flat before on edge, because it takes less depth. */
const CANDIDATES: readonly OutriggerSize[] = lumberSizes.flatMap((size) => [
  { size, orientation: 'flat' } as const,
  { size, orientation: 'on-edge' } as const,
]);

export interface SmallestOutrigger {
  /** Null when no size within the depth passes. */
  readonly choice: (OutriggerSize & { readonly screening: OutriggerScreening }) | null;
  /** Every size tried, in order, with its greatest ratio. */
  readonly tried: readonly (OutriggerSize & { readonly ratio: number; readonly gates: readonly string[] })[];
}

/**
 * The smallest outrigger that passes this screening.
 *
 * first of 2x4, 2x6, 2x8, 2x10, each flat and then on edge, with every ratio <= 1 and no gate of its size
 *
 * @param outrigger         [m, Pa, N] the wanted outrigger; its size and orientation are replaced
 * @param greatestDepth_m   [m] depth of the zone it must fit into; no limit when absent
 * @param only              [-] the size or orientation that is settled; both are searched when absent
 * @returns                 [-] the choice or null, and what was tried
 * @throws                  RangeError when a value is outside its range
 * @source                  OUR-JUDGEMENT order of sizes; NDS-2018 through the screening (seen-transcription)
 * @assumes                 gates of depth and back span stay open for the engineer: only the flat-2x4 gate rules a size out
 */
export function smallestOutrigger(
  outrigger: Outrigger,
  greatestDepth_m = Infinity,
  only: Partial<OutriggerSize> = {},
): SmallestOutrigger {
  const tried = CANDIDATES.filter(
    (candidate) =>
      (only.size ?? candidate.size) === candidate.size &&
      (only.orientation ?? candidate.orientation) === candidate.orientation &&
      sectionOf({ ...candidate, species: outrigger.member.species }).depth_m <=
        greatestDepth_m + DEPTH_NOISE_M,
  ).map((candidate) => {
    const tried: Outrigger = { ...outrigger, member: { ...outrigger.member, ...candidate } };
    return { ...candidate, outrigger: tried, ...outriggerUse(tried) };
  });
  const choice = tried.find(({ use, gates }) => use <= 1 && !gates.some((gate) => gate.id === 'flat-2x4'));
  return {
    choice:
      choice === undefined
        ? null
        : {
            size: choice.size,
            orientation: choice.orientation,
            screening: outriggerScreening(choice.outrigger),
          },
    tried: tried.map(({ size, orientation, use, gates }) => ({
      size,
      orientation,
      ratio: use,
      gates: gates.map((gate) => gate.id),
    })),
  };
}
/** [m] rounding noise of conversions from inches. */
const DEPTH_NOISE_M = 1e-9;

export interface GreatestOverhang {
  /** Where the first ratio reaches 1, at most the 3 m searched; 0 when nothing from 50 mm on passes. */
  readonly byStrength_m: number;
  /** What the gates leave of it: half the back span, 24 in, 12 in for a flat 2x4. */
  readonly withinGates_m: number;
  /** The check that governs at the limit. */
  readonly governing: string;
}

/**
 * The deepest overhang of a given outrigger with a fixed back span.
 *
 * the greatest a with every ratio <= 1: steps down from 3 m, then halving (on board, a short stub can fail where a longer one passes)
 *
 * @param outrigger  [m, Pa, N] the outrigger; its overhang is the unknown
 * @returns          [m] by strength and sag, and within the gates
 * @throws           RangeError when a value is outside its range
 * @source           NDS-2018 through the screening (seen-transcription); OUR-JUDGEMENT for the gates
 */
export function greatestOverhang(outrigger: Outrigger): GreatestOverhang {
  demandPositive('backSpan_m', outrigger.backSpan_m);
  const governingAt = (overhang_m: number) => outriggerScreening({ ...outrigger, overhang_m }).governing;
  const passesAt = (overhang_m: number): boolean => outriggerUse({ ...outrigger, overhang_m }).use <= 1;
  const isFlat2x4 = outrigger.member.orientation === 'flat' && outrigger.member.size === '2x4';
  const gate_m = Math.min(
    outrigger.backSpan_m / BACK_SPAN_RATIO,
    ENGINEER_OVERHANG_M,
    isFlat2x4 ? FLAT_2X4_OVERHANG_M : Infinity,
  );
  const steps = Math.round(LONGEST_M / STEP_M);
  let step = steps;
  while (step > 0 && !passesAt(step * STEP_M)) step -= 1;
  if (step === 0) return { byStrength_m: 0, withinGates_m: 0, governing: governingAt(STEP_M).id };
  let passes_m = step * STEP_M;
  let fails_m = Math.min(step + 1, steps) * STEP_M;
  for (let halving = 0; halving < HALVINGS && passes_m < fails_m; halving += 1) {
    const middle_m = (passes_m + fails_m) / 2;
    if (passesAt(middle_m)) passes_m = middle_m;
    else fails_m = middle_m;
  }
  return {
    byStrength_m: passes_m,
    withinGates_m: Math.min(passes_m, gate_m),
    governing: governingAt(fails_m).id,
  };
}

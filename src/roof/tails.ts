/** Rafter tails and truss tails that carry the eave. Provisional: the engineer or the truss designer decides. */
import { dimension } from '../catalog/dimensions.ts';
import { lumberOf, type LumberSize } from '../catalog/lumber.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { StructureCheck } from '../evaluation/evaluation.ts';
import { robustCheck } from '../structure/outrigger.ts';
import { prescriptiveOverhang, rafterTailScreening, type RafterTail } from '../structure/rafterTail.ts';
import { sectionOf } from '../structure/timber.ts';
import { cosine, type EdgeCarrier } from './geometry.ts';
import type { RoofLoad } from './loads.ts';
import {
  asCheck,
  combinationOf,
  governingOf,
  limitOf,
  openCheck,
  overhangLoads,
  rounded,
  SHORTEST_M,
  type Outcome,
} from './overhangLimit.ts';

/** Wood of the rafters, which the interview does not ask for (our judgement: soft and common). */
const SPECIES = 'spruce-pine-fir';
/** [m] dressed depths, deepest first, to name a rafter by its lumber. */
const SIZES: readonly (readonly [LumberSize, number])[] = [
  ['2x10', 0.235],
  ['2x8', 0.184],
  ['2x6', 0.1397],
  ['2x4', 0.0889],
];
/** [m] how far a measured depth may fall short of the dressed size. */
const DEPTH_TOLERANCE_M = 0.003;

const lumberOfDepth = (depth_m: number): LumberSize | undefined =>
  SIZES.find(([, dressed_m]) => depth_m >= dressed_m - DEPTH_TOLERANCE_M)?.[0];

const prescriptiveCheck = (overhang_m: number, limit_m: number, carrier: EdgeCarrier): StructureCheck => ({
  id: 'overhang-prescriptive',
  what: 'Prescriptive overhang: lesser of 24 in and a third of span',
  demand: overhang_m,
  capacity: limit_m,
  unit: 'm',
  ratio: rounded(overhang_m / limit_m),
  who: carrier === 'truss-tails' ? 'truss designer' : 'structural engineer',
  source: 'AWC-WFCM',
  clause: 'eave overhang',
  known: 'memory',
});

/** A truss tail is part of a designed product. */
const trussCheck: StructureCheck = openCheck({
  id: 'truss-top-chord',
  what: 'Top chord past the wall in bending, shear, sag and uplift, with the added load: by the truss drawing',
  who: 'truss designer',
  source: 'COMMON-PRACTICE',
  clause: 'truss drawing',
  known: 'common practice',
});

/**
 * The tails as carriers of the eave.
 *
 * prescriptive limit; sawn tails in bending, shear, sag, notch and seat; limit = greatest overhang that passes, by halving
 *
 * @param given       [-] the complete case
 * @param load        [Pa] loads on the candidate
 * @param carrier     [-] rafter or truss tails
 * @param overhang_m  [m] along the slope
 * @param angle_deg   [deg] slope
 * @param run_m       [m] level, wall line to ridge
 * @returns           [-] checks, limit [m] along the slope, combinations, plan
 * @source            NDS-2018 chapter 3 (seen-transcription); AWC-WFCM (memory)
 * @assumes           No. 2 spruce-pine-fir, notched as deep as the code allows
 */
export function tailsOutcome(
  given: CompleteCase,
  load: RoofLoad,
  carrier: EdgeCarrier,
  overhang_m: number,
  angle_deg: number,
  run_m: number,
): Outcome {
  const cos = cosine(angle_deg);
  const prescriptive_m = prescriptiveOverhang(run_m) / cos;
  const prescriptive = prescriptiveCheck(overhang_m * cos, prescriptive_m * cos, carrier);
  const none = { outrigger: null, combinations: [], plan: null, rake: null } as const;
  if (carrier === 'truss-tails')
    return { ...none, combinations: [], checks: [prescriptive, trussCheck], limit_m: prescriptive_m };
  const size = given.framing.kind === 'rafter' ? lumberOfDepth(given.framing.depth_m) : undefined;
  if (size === undefined)
    return { ...none, combinations: [], checks: [prescriptive], limit_m: prescriptive_m };
  const { spacing_m } = given.framing;
  const notch_m =
    sectionOf({ species: SPECIES, size, orientation: 'on-edge' }).depth_m * dimension('notch-share');
  const tailOf = (a_m: number): RafterTail => ({
    species: SPECIES,
    size,
    spacing_m,
    overhang_m: a_m,
    backSpan_m: run_m / cos,
    angle_deg,
    notch_m,
    loads: overhangLoads(load, 'eave'),
    tip_N: dimension('edge-line-load_N_m') * spacing_m,
  });
  const tail = tailOf(Math.max(overhang_m, SHORTEST_M));
  const screening = rafterTailScreening(tail);
  const strength = (a_m: number): boolean => {
    const { bending, shear, deflection } = rafterTailScreening(tailOf(a_m));
    return bending.ratio <= 1 && shear.ratio <= 1 && deflection.ratio <= 1;
  };
  const { bending, shear, deflection, remainingDepth, notchDepth, seatCut } = screening;
  const robust = screening.cases.find((each) => !each.counts);
  return {
    checks: [
      prescriptive,
      ...[bending, shear, deflection, remainingDepth, notchDepth, seatCut].map(asCheck),
      ...(robust === undefined ? [] : [asCheck(robustCheck(robust.ratio, robust.id))]),
    ],
    limit_m: limitOf(strength, prescriptive_m),
    outrigger: null,
    combinations: screening.cases.map((each) =>
      combinationOf(each, {
        normal_Pa: each.normal_Pa,
        moment_Nm: each.moment_Nm,
        shear_N: each.shear_N,
        wall_N: each.wallReaction_N,
        heel_N: each.heelHoldDown_N,
        tip_m: each.tipDeflection_m,
        use: each.ratio,
      }),
    ),
    plan: {
      member: lumberOf(SPECIES, size).name,
      orientation: 'on-edge',
      spacing_m,
      overhang_m: tail.overhang_m,
      backSpan_m: tail.backSpan_m,
      tip_N: tail.tip_N,
      notch_m,
      seat: 'birdsmouth on the wall plate',
      seatRotation_rad: 0,
      screws: null,
      governs: governingOf([bending, shear, deflection]),
      gates: screening.prescriptive.ratio > 1 ? ['The overhang is past the prescriptive limit.'] : [],
      smallest: null,
      nextSmaller: null,
    },
    rake: null,
  };
}

/** What the model of the ridge needs from an evaluation: planes of the left slope, mirrored for the right one. */
import { dimension } from '../catalog/dimensions.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Evaluation, Layer } from '../evaluation/evaluation.ts';
import { stackOf } from './edge-input.ts';
import type { EdgeView, StackBand } from './edge-model.ts';
import { point, roofAxes, type CutPlane, type Point, type RoofAxes } from './geometry.ts';

/** [m] Ridge board, 2x; a ridge beam of three and a half inches, to be sized by the engineer (common practice). */
const RIDGE_BOARD_m = 0.0381;
const RIDGE_BEAM_m = 0.0889;
/** [m] Block between trusses under the deck's upper edge: 2x4 on edge (common practice). */
const TRUSS_BLOCK_m = 0.0889;
/** [m] Joint of the boards at the ridge, wide enough for the foam's nozzle (common practice, 1/2 in). */
const JOINT_m = 0.0127;
/** [m] Least width of the ridge slot on each side, level: 1 in (common practice). */
const LEAST_SLOT_m = 0.0254;
/** [m] Ridge cap on each slope: half of a 12 in piece (common practice), and the least beyond the slot. */
const CAP_m = 0.1524;
const CAP_PAST_SLOT_m = 0.05;
/** [m] Height of a ridge vent: 3/4 in (common practice). */
export const VENT_HEIGHT_m = 0.019;
/** [m] Greatest thickness drawn for the pieces of the cap. */
const MOST_CAP_m = 0.02;

const DEGREES_PER_RADIAN = 180 / Math.PI;

export interface RidgeInput {
  readonly given: CompleteCase;
  readonly candidate: Candidate;
  /** Axes of the left slope, which rises to the right; origin where the tops of the framing meet. */
  readonly axes: RoofAxes;
  readonly stack: readonly StackBand[];
  readonly layerOf: (id: string) => Layer;
  readonly boards: readonly StackBand[];
  readonly gap: StackBand | null;
  /** Plane n of the covering's face. */
  readonly top_m: number;
  /** Plane n under the covering's underlayment: what the long screws' heads lie below. */
  readonly deckTop_m: number;
  readonly framingDepth_m: number;
  readonly isTruss: boolean;
  /** Half the width of the ridge board, beam or block, and its depth square to the slope. */
  readonly member: {
    readonly half_m: number;
    readonly depth_m: number;
    readonly kind: 'board' | 'beam' | 'block';
  };
  /** [m] Half the joint between the boards of both slopes; 0 where they are butted tight. */
  readonly joint_m: number;
  /** [m] Level width of the vent slot on each side; 0 where the covering is not vented. */
  readonly slot_m: number;
  /** [m] Along the slope from the ridge to the end of the cap. */
  readonly cap_m: number;
  readonly capThickness_m: number;
  readonly half_m: number;
  readonly cut: CutPlane;
  readonly ridge: CutPlane;
}

/** The same points on the other slope, still counterclockwise. */
export const mirrored = (points: readonly Point[]): Point[] =>
  [...points].reverse().map((p) => point(-p.x, p.y));

/** A plumb plane on the left slope, level distance from the ridge line. */
export const plumbAt = (level_m: number): CutPlane => ({ kind: 'plumb', x: -level_m });

const isFibrous = (layer: Layer): boolean => /wool|fiber/.test(layer.material ?? '');

/** [m] Level width of the slot on each side: as wide as the gap is high, so that it is no throat (our judgement). */
const slotOf_m = (gap: StackBand | null): number =>
  gap === null ? 0 : Math.max(LEAST_SLOT_m, gap.high_m - gap.low_m);

export function ridgeInput(evaluation: Evaluation, candidate: Candidate, view: EdgeView): RidgeInput {
  const given = evaluation.case as unknown as CompleteCase;
  const axes = roofAxes(evaluation.requirements.slope.angle_deg / DEGREES_PER_RADIAN);
  const { stack, layerOf, boards, gap, top_m: deckTop_m } = stackOf(candidate);
  const isTruss = given.framing.kind === 'truss';
  const framingDepth_m = given.framing.depth_m;
  const kind = isTruss ? 'block' : given.belowDeck.attic === 'cathedral' ? 'beam' : 'board';
  const slot_m = slotOf_m(gap);
  const covering = candidate.layers.find((layer) => layer.role === 'covering');
  const isButted = given.insulation?.foamFree === true || boards.every((b) => isFibrous(layerOf(b.layerId)));
  return {
    given,
    candidate,
    axes,
    stack,
    layerOf,
    boards,
    gap,
    top_m: stack.at(-1)?.high_m ?? 0,
    deckTop_m,
    framingDepth_m,
    isTruss,
    member: {
      kind,
      half_m: (kind === 'beam' ? RIDGE_BEAM_m : RIDGE_BOARD_m) / 2,
      depth_m: isTruss ? Math.min(TRUSS_BLOCK_m, framingDepth_m) : framingDepth_m,
    },
    joint_m: isButted ? 0 : JOINT_m / 2,
    slot_m,
    cap_m: Math.max(CAP_m, (slot_m + CAP_PAST_SLOT_m) / Math.cos(axes.angle_rad)),
    capThickness_m: Math.min(MOST_CAP_m, covering?.thickness_m ?? dimension('asphalt-shingle_m')),
    half_m: view.inside_m,
    cut: plumbAt(view.inside_m),
    ridge: plumbAt(0),
  };
}

/** Plane n of the cap's underside: on the covering, or on the ridge vent. */
export const capLow_m = (input: RidgeInput): number => input.top_m + (input.slot_m > 0 ? VENT_HEIGHT_m : 0);

/** Where the cap begins on the slope, square to it. */
export const capStart = (input: RidgeInput): CutPlane => ({
  kind: 'square',
  s: input.axes.slopeAt(0, input.top_m) - input.cap_m,
});

/** Height of the underside of the ridge board, beam or block. */
export const memberFoot_m = ({ axes, member }: RidgeInput): number =>
  axes.levelAt(-member.half_m, -member.depth_m);

/** [m] Depth of what lies under the framing's top in this view: framing and ceiling. */
export const underside_m = (input: RidgeInput): number => {
  const ceiling = input.candidate.layers.find((layer) => layer.role === 'ceiling');
  return input.framingDepth_m + (input.isTruss ? 0 : (ceiling?.thickness_m ?? 0));
};

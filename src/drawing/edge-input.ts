/** What the models of eave and rake need from an evaluation, read once and with every answer there. */
import { dimension } from '../catalog/dimensions.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Evaluation, Layer } from '../evaluation/evaluation.ts';
import { roofAxes, type CutPlane, type RoofAxes } from './geometry.ts';
import type { EdgeView, StackBand } from './edge-model.ts';

/** [m] Usual sizes of edge parts (common practice, nominal lumber and sheet sizes). */
export const FASCIA_BOARD_m = 0.019;
export const SUB_FASCIA_m = 0.0381;
export const SHEATHING_m = 0.0111;
export const WALL_GYPSUM_m = 0.0127;
export const CLADDING_m = 0.0159;
export const CLADDING_FURRING_m = 0.019;
export const SOFFIT_m = 0.0095;
export const BLOCKING_m = 0.0381;
export const PLATE_m = 0.0381;
export const LEAST_STUD_m = 0.0635;
/** [m] Free air way behind the fascia that feeds the vented gap; never less than the gap of 3/4 in furring. */
export const LEAST_INTAKE_m = 0.019;
/** [m] Covering past the fascia's face (common practice, 1/2 in to 3/4 in). */
export const COVERING_OVERHANG_m = 0.015;
/** [m] Courses of boards and panels up the slope: a 4 ft side lies up the slope (common practice). */
export const COURSE_m = 1.2192;
/** [m] Length of boards and panels along the eave: an 8 ft side (common practice). */
export const LENGTH_m = 2.4384;
/** [m] Lap of the roof membrane on the wall barrier (common practice, 6 in). */
export const WALL_LAP_m = 0.1524;

/** [m] Spacer blocks of a prebonded panel: 4 in wide, one in every 16 in (seen in one specification). */
export const SPACER_m = 0.1016;
export const SPACER_STEP_m = 0.4064;
/** [m] Nailer along a rake: 2x4, 3 1/2 in (common practice). */
export const RAKE_NAILER_m = 0.0889;
/** [m] Lookouts of a rake: 2x4 on edge, flush with the rafters' tops (common practice). */
const LOOKOUT_m = 0.0889;

/** What stands today: new work has nothing, a re-roof keeps its tails or has them cut off. */
export type Existing = 'none' | 'kept' | 'cut';

export interface EdgeInput {
  readonly place: 'eave' | 'rake';
  readonly existing: Existing;
  /** [m] Overhang that is wanted here. */
  readonly overhang_m: number;
  /** [m] Depth of the lookouts that carry the rake; 0 at the eave and where nothing pierces the gable. */
  readonly lookout_m: number;
  readonly given: CompleteCase;
  readonly candidate: Candidate;
  readonly axes: RoofAxes;
  readonly view: EdgeView;
  /** Layers above the framing with the planes between which they lie. */
  readonly stack: readonly StackBand[];
  readonly layerOf: (id: string) => Layer;
  readonly boards: readonly StackBand[];
  readonly gap: StackBand | null;
  readonly carrier: Candidate['carrier'];
  /** [m] Depth behind the fascia or barge board, or of the outrigger within the boards. */
  readonly carrierDepth_m: number;
  readonly framingDepth_m: number;
  readonly iceBarrier_m: number;
  readonly piercings: number;
  /** The wanted overhang is too short to draw its parts, so the drawing shows the least one. */
  readonly isStretched: boolean;
  readonly planes: EdgePlanes;
  readonly wall: WallPlanes;
}

export interface EdgePlanes {
  /** Outer face of the fascia; every other eave plane is measured inward from it. */
  readonly face: CutPlane;
  readonly behindFascia: CutPlane;
  readonly subFascia: CutPlane;
  readonly tailEnd: CutPlane;
  readonly nailerEnd: CutPlane;
  readonly cut: CutPlane;
  /** [m] Free width of the intake behind the fascia; 0 when the covering is not vented. */
  readonly intake_m: number;
  /** Plane n of the top of the fascia: top of the upper deck. */
  readonly fasciaTop_m: number;
}

export interface WallPlanes {
  readonly cladding_m: number;
  readonly insulationOut_m: number;
  readonly studOut_m: number;
  readonly studIn_m: number;
  readonly inner_m: number;
  readonly bottom_m: number;
  /** Top of the top plate. */
  readonly plate_m: number;
}

const framingSide = new Set<Layer['role']>(['ceiling', 'interior-retarder', 'cavity']);
const DEGREES_PER_RADIAN = 180 / Math.PI;

/** Bands of every layer above the framing, from the framing's top outward. */
export function stackBands(layers: readonly Layer[]): StackBand[] {
  let low_m = 0;
  return layers
    .filter((layer) => !framingSide.has(layer.role))
    .map((layer) => {
      const band = { layerId: layer.id, low_m, high_m: low_m + layer.thickness_m };
      low_m = band.high_m;
      return band;
    });
}

/** [m] The part of the rafter's seat on the plate: a third of the depth may be notched away (common practice). */
function seat_m(depth_m: number, stud_m: number, axes: RoofAxes): number {
  const slope = Math.tan(axes.angle_rad);
  const plumbDepth_m = depth_m / Math.cos(axes.angle_rad);
  return Math.min(stud_m, 0.0889, plumbDepth_m / 3 / slope);
}

/** x of the outer face of the cladding. */
function claddingFace_m(given: CompleteCase): number {
  const { exteriorInsulation_m } = given.wall;
  return -(exteriorInsulation_m + (exteriorInsulation_m > 0 ? CLADDING_FURRING_m : 0) + CLADDING_m);
}

/** [m] Top of the top plate: under the rafter's seat, the truss, the lookouts, or the gable's end rafter. */
function plateTop_m(given: CompleteCase, axes: RoofAxes, stud_m: number, rake: Rake | null): number {
  const depth_m = given.framing.depth_m;
  if (rake !== null) return -(rake.lookout_m > 0 ? rake.lookout_m : depth_m);
  return given.framing.kind === 'truss'
    ? axes.levelAt(SHEATHING_m, -depth_m) - dimension('truss-tail-depth_m')
    : axes.levelAt(SHEATHING_m + seat_m(depth_m, stud_m, axes), -depth_m);
}

interface Rake {
  readonly lookout_m: number;
}

function wallPlanes(
  given: CompleteCase,
  axes: RoofAxes,
  view: EdgeView,
  lowest_m: number,
  rake: Rake | null,
): WallPlanes {
  const { thickness_m, exteriorInsulation_m } = given.wall;
  const rest_m = SHEATHING_m + WALL_GYPSUM_m;
  const stud_m = Math.max(LEAST_STUD_m, thickness_m - rest_m);
  const studIn_m = SHEATHING_m + stud_m;
  const plate_m = plateTop_m(given, axes, stud_m, rake);
  // The rake's wall goes on past the rafters beside it, which hang lower than its plate.
  const under_m =
    rake === null ? plate_m - 2 * PLATE_m : Math.min(plate_m - 2 * PLATE_m, -given.framing.depth_m);
  return {
    cladding_m: claddingFace_m(given),
    insulationOut_m: -exteriorInsulation_m,
    studOut_m: SHEATHING_m,
    studIn_m,
    inner_m: studIn_m + WALL_GYPSUM_m,
    plate_m,
    bottom_m: Math.min(under_m, lowest_m) - view.wall_m,
  };
}

/** [m] Least overhang that can be drawn: all of the fascia, intake and sub-fascia outside the cladding. */
function leastOverhang_m(
  given: CompleteCase,
  axes: RoofAxes,
  package_m: number,
  low_m: number,
  top_m: number,
): number {
  const outside_m = package_m - claddingFace_m(given);
  if (given.profile.cut === 'plumb' || axes.angle_rad === 0) return outside_m;
  return (top_m - low_m) * Math.sin(axes.angle_rad) + outside_m;
}

function outerFace(given: CompleteCase, axes: RoofAxes, fasciaTop_m: number, overhang_m: number): CutPlane {
  if (given.profile.cut === 'plumb' || axes.angle_rad === 0) return { kind: 'plumb', x: -overhang_m };
  return { kind: 'square', s: axes.slopeAt(-overhang_m, fasciaTop_m) };
}

const inward = (plane: CutPlane, by: number): CutPlane =>
  plane.kind === 'plumb' ? { kind: 'plumb', x: plane.x + by } : { kind: 'square', s: plane.s + by };

const tailCarriers: readonly string[] = ['rafter-tails', 'truss-tails'];

/** What becomes of tails that stand today. */
export function existingOf(given: CompleteCase, candidate: Candidate): Existing {
  if (given.project.kind !== 're-roof') return 'none';
  if (!tailCarriers.includes(given.overhang.carriedToday)) return 'none';
  return candidate.carrier === 'outriggers' ? 'cut' : 'kept';
}

/** The layers of a candidate by where they lie above the framing. */
export function stackOf(candidate: Candidate): Pick<EdgeInput, 'stack' | 'layerOf' | 'boards' | 'gap'> & {
  readonly top_m: number;
} {
  const stack = stackBands(candidate.layers);
  const byId = new Map(candidate.layers.map((layer) => [layer.id, layer]));
  const layerOf = (id: string): Layer => {
    const layer = byId.get(id);
    if (layer === undefined) throw new RangeError(`no layer ${id} in ${candidate.id}`);
    return layer;
  };
  const ofRole = (role: Layer['role']): StackBand[] => stack.filter((b) => layerOf(b.layerId).role === role);
  const boards = ofRole('insulation');
  const gap = ofRole('vent-gap')[0] ?? null;
  const top_m = ofRole('upper-deck')[0]?.high_m ?? gap?.high_m ?? boards.at(-1)?.high_m ?? 0;
  return { stack, layerOf, boards, gap, top_m };
}

/** [m] Depth of what carries the overhang: the tail's, or the outrigger's as far as it fits the boards. */
function carrierDepthOf_m(candidate: Candidate, boards: readonly StackBand[]): number {
  if (candidate.carrier !== 'outriggers') return candidate.edge.carrierDepth_m;
  const outrigger_m = candidate.structure.outrigger?.depth_m ?? dimension('truss-tail-depth_m');
  return Math.min(outrigger_m, (boards.at(-1)?.high_m ?? 0) - (boards[0]?.low_m ?? 0));
}

/** Whether the framing stops at the wall line, so that the membrane turns down over the corner. */
export const isFlush = ({ carrier, place, lookout_m }: EdgeInput): boolean =>
  carrier === 'outriggers' || (place === 'rake' && lookout_m === 0);

/** Reads one candidate into the planes that its eave or rake is built from. The rake lies level. */
export function edgeInput(
  evaluation: Evaluation,
  candidate: Candidate,
  view: EdgeView,
  place: EdgeInput['place'] = 'eave',
): EdgeInput {
  const given = evaluation.case as unknown as CompleteCase;
  const isRake = place === 'rake';
  const axes = roofAxes(isRake ? 0 : evaluation.requirements.slope.angle_deg / DEGREES_PER_RADIAN);
  const { stack, layerOf, boards, gap, top_m: fasciaTop_m } = stackOf(candidate);
  const isOutrigger = candidate.carrier === 'outriggers';
  const carrierDepth_m = carrierDepthOf_m(candidate, boards);
  const wanted_m = isRake ? given.overhang.rake_m : given.overhang.eave_m;
  const lookout_m = isRake && !isOutrigger && wanted_m > 0 ? Math.min(LOOKOUT_m, given.framing.depth_m) : 0;
  const intake_m = gap === null || isRake ? 0 : Math.max(LEAST_INTAKE_m, gap.high_m - gap.low_m);
  const low_m = isOutrigger ? 0 : -carrierDepth_m;
  const least_m = leastOverhang_m(given, axes, FASCIA_BOARD_m + intake_m + SUB_FASCIA_m, low_m, fasciaTop_m);
  const overhang_m = Math.max(least_m, wanted_m);
  const face = outerFace(given, axes, fasciaTop_m, overhang_m);
  const behindFascia = inward(face, FASCIA_BOARD_m);
  const subFascia = inward(behindFascia, intake_m);
  const tailEnd = inward(subFascia, SUB_FASCIA_m);
  const lowest_m = faceBottom(axes, face, low_m);
  const wall = wallPlanes(given, axes, view, lowest_m, isRake ? { lookout_m } : null);
  return {
    place,
    existing: existingOf(given, candidate),
    overhang_m: wanted_m,
    lookout_m,
    given,
    candidate,
    axes,
    view,
    stack,
    layerOf,
    boards,
    gap,
    carrier: candidate.carrier,
    carrierDepth_m,
    framingDepth_m: given.framing.depth_m,
    iceBarrier_m:
      evaluation.requirements.iceBarrier.required && !isRake
        ? evaluation.requirements.iceBarrier.length_m
        : 0,
    piercings: candidate.airBarrier.piercings,
    isStretched: overhang_m > wanted_m,
    planes: {
      face,
      behindFascia,
      subFascia,
      tailEnd,
      nailerEnd: inward(subFascia, isRake ? RAKE_NAILER_m : dimension('perimeter-nailer-width_m')),
      cut: { kind: 'plumb', x: wall.inner_m + view.inside_m },
      intake_m,
      fasciaTop_m,
    },
    wall,
  };
}

/** Height of the lowest corner of the fascia's face: where the plane n meets it. */
function faceBottom(axes: RoofAxes, face: CutPlane, n: number): number {
  return face.kind === 'plumb' ? axes.levelAt(face.x, n) : axes.at(face.s, n).y;
}

/** What the edge model needs from an evaluation, read once and with every answer there. */
import { dimension } from '../catalog/dimensions.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Evaluation, Layer } from '../evaluation/evaluation.ts';
import { roofAxes, type CutPlane, type RoofAxes } from './geometry.ts';
import type { StackBand } from './edge-model.ts';

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
/** [m] Lap of the roof membrane on the wall barrier (common practice, 6 in). */
export const WALL_LAP_m = 0.1524;

export interface EdgeView {
  /** [m] Level distance from the wall's inner face to the break across the roof. */
  readonly inside_m: number;
  /** [m] Height of wall shown below the lowest roof part. */
  readonly wall_m: number;
}

export interface EdgeInput {
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
  /** [m] Depth of the tail, or of the outrigger within the boards. */
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

function wallPlanes(given: CompleteCase, axes: RoofAxes, view: EdgeView, lowest_m: number): WallPlanes {
  const { thickness_m, exteriorInsulation_m } = given.wall;
  const rest_m = SHEATHING_m + WALL_GYPSUM_m;
  const stud_m = Math.max(LEAST_STUD_m, thickness_m - rest_m);
  const studIn_m = SHEATHING_m + stud_m;
  const depth_m = given.framing.depth_m;
  const isTruss = given.framing.kind === 'truss';
  const plate_m = isTruss
    ? axes.levelAt(SHEATHING_m, -depth_m) - dimension('truss-tail-depth_m')
    : axes.levelAt(SHEATHING_m + seat_m(depth_m, stud_m, axes), -depth_m);
  return {
    cladding_m: claddingFace_m(given),
    insulationOut_m: -exteriorInsulation_m,
    studOut_m: SHEATHING_m,
    studIn_m,
    inner_m: studIn_m + WALL_GYPSUM_m,
    plate_m,
    bottom_m: Math.min(plate_m - 2 * PLATE_m, lowest_m) - view.wall_m,
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
  if (given.profile.cut === 'plumb') return outside_m;
  return (top_m - low_m) * Math.sin(axes.angle_rad) + outside_m;
}

function eaveFace(given: CompleteCase, axes: RoofAxes, fasciaTop_m: number, overhang_m: number): CutPlane {
  if (given.profile.cut === 'plumb') return { kind: 'plumb', x: -overhang_m };
  return { kind: 'square', s: axes.slopeAt(-overhang_m, fasciaTop_m) };
}

const inward = (plane: CutPlane, by: number): CutPlane =>
  plane.kind === 'plumb' ? { kind: 'plumb', x: plane.x + by } : { kind: 'square', s: plane.s + by };

/** Reads one candidate into the planes that its edge is built from. */
export function edgeInput(evaluation: Evaluation, candidate: Candidate, view: EdgeView): EdgeInput {
  const given = evaluation.case as unknown as CompleteCase;
  const axes = roofAxes(evaluation.requirements.slope.angle_deg / DEGREES_PER_RADIAN);
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
  const lastBoard_m = boards.at(-1)?.high_m ?? 0;
  const fasciaTop_m = ofRole('upper-deck')[0]?.high_m ?? gap?.high_m ?? lastBoard_m;
  const firstBoard_m = boards[0]?.low_m ?? 0;
  const isOutrigger = candidate.carrier === 'outriggers';
  const outrigger_m = candidate.structure.outrigger?.depth_m ?? dimension('truss-tail-depth_m');
  const carrierDepth_m = isOutrigger
    ? Math.min(outrigger_m, lastBoard_m - firstBoard_m)
    : candidate.edge.carrierDepth_m;
  const intake_m = gap === null ? 0 : Math.max(LEAST_INTAKE_m, gap.high_m - gap.low_m);
  const low_m = isOutrigger ? 0 : -carrierDepth_m;
  const least_m = leastOverhang_m(given, axes, FASCIA_BOARD_m + intake_m + SUB_FASCIA_m, low_m, fasciaTop_m);
  const overhang_m = Math.max(least_m, given.overhang.eave_m);
  const face = eaveFace(given, axes, fasciaTop_m, overhang_m);
  const behindFascia = inward(face, FASCIA_BOARD_m);
  const subFascia = inward(behindFascia, intake_m);
  const tailEnd = inward(subFascia, SUB_FASCIA_m);
  const lowest_m = faceBottom(axes, face, low_m);
  const wall = wallPlanes(given, axes, view, lowest_m);
  return {
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
    iceBarrier_m: evaluation.requirements.iceBarrier.required
      ? evaluation.requirements.iceBarrier.length_m
      : 0,
    piercings: candidate.airBarrier.piercings,
    isStretched: overhang_m > given.overhang.eave_m,
    planes: {
      face,
      behindFascia,
      subFascia,
      tailEnd,
      nailerEnd: inward(subFascia, dimension('perimeter-nailer-width_m')),
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

/** The wall, the framing and what is below the deck, at eave and rake. */
import { dimension } from '../catalog/dimensions.ts';
import { band, clipToSide, point, slopeOn, type CutPlane, type Point } from './geometry.ts';
import type { EdgePart } from './edge-model.ts';
import { BLOCKING_m, isFlush, PLATE_m, SOFFIT_m, type EdgeInput } from './edge-input.ts';
import { rakeCavity, rakeFraming } from './rake-framing.ts';
import { hatchOf } from './edge-stack.ts';

const rectangle = (x0: number, x1: number, y0: number, y1: number): Point[] => [
  point(x0, y0),
  point(x1, y0),
  point(x1, y1),
  point(x0, y1),
];

/** Corners between two plumb lines, a level bottom and the sloping plane n on top. */
function underSlope(input: EdgeInput, x0: number, x1: number, y0: number, n: number): Point[] {
  const { axes } = input;
  return [point(x0, y0), point(x1, y0), point(x1, axes.levelAt(x1, n)), point(x0, axes.levelAt(x0, n))];
}

const upright = Math.PI / 2;
const isTruss = (input: EdgeInput): boolean => input.given.framing.kind === 'truss';

/** [m] Right end of level members: where the roof's break stands. */
export const viewRight_m = (input: EdgeInput): number => input.wall.inner_m + input.view.inside_m;

/** [m] The lowest height of the soffit's underside, or null when the tails stay open to view. */
export function soffitLevel_m(input: EdgeInput, soffit_m: number): number | null {
  const { planes, axes, given } = input;
  if (given.profile.look === 'exposed-tails' && input.carrier !== 'outriggers') return null;
  if (input.place === 'rake') return rakeSoffit_m(input, soffit_m);
  if (planes.face.kind === 'square') return null;
  const low = input.carrier === 'outriggers' ? 0 : -input.carrierDepth_m;
  const tail_m = planes.tailEnd.kind === 'plumb' ? axes.levelAt(planes.tailEnd.x, low) : Infinity;
  return Math.min(axes.levelAt(planes.face.x, low) + soffit_m * 1.35, tail_m - soffit_m);
}

/** [-] Share of its thickness by which a rake's soffit stands up behind the barge board. */
const RECESS_SHARE = 0.35;

/** [m] Underside of the rake's soffit: within the barge board, below what carries the overhang. */
function rakeSoffit_m(input: EdgeInput, soffit_m: number): number {
  if (input.carrier !== 'outriggers') return -input.carrierDepth_m + soffit_m * RECESS_SHARE;
  return Math.min(soffit_m * RECESS_SHARE, (input.boards[0]?.low_m ?? 0) - soffit_m);
}

/** [m] Height at which cladding stops under the eave. */
function claddingTop_m(input: EdgeInput): number {
  const level = soffitLevel_m(input, SOFFIT_m);
  if (level !== null) return level;
  const under_m = input.lookout_m > 0 ? input.lookout_m : input.carrierDepth_m;
  const low = input.carrier === 'outriggers' ? (input.boards[0]?.low_m ?? 0) : -under_m - SOFFIT_m;
  return input.axes.levelAt(input.wall.cladding_m, low);
}

function outerWall(input: EdgeInput): EdgePart[] {
  const { wall } = input;
  const parts: EdgePart[] = [];
  const top_n = input.carrier === 'outriggers' ? (input.boards[0]?.low_m ?? 0) : 0;
  const add = (part: Omit<EdgePart, 'layerId' | 'view' | 'grain_rad'>): void => {
    parts.push({ ...part, layerId: null, view: 'cut', grain_rad: upright });
  };
  if (wall.insulationOut_m < 0) {
    add({
      id: 'wall-insulation',
      name: 'Exterior wall insulation',
      material: 'foam',
      polygon: underSlope(input, wall.insulationOut_m, 0, wall.bottom_m, top_n),
    });
    add({
      id: 'cladding-furring',
      name: 'Drained space behind the cladding',
      material: 'air',
      polygon: rectangle(wall.cladding_m + 0.0159, wall.insulationOut_m, wall.bottom_m, claddingTop_m(input)),
    });
  }
  add({
    id: 'cladding',
    name: 'Cladding',
    material: 'cladding',
    polygon: rectangle(wall.cladding_m, wall.cladding_m + 0.0159, wall.bottom_m, claddingTop_m(input)),
  });
  add({
    id: 'sheathing',
    name: 'Wall sheathing',
    material: 'panel',
    polygon: isFlush(input)
      ? underSlope(input, 0, wall.studOut_m, wall.bottom_m, 0)
      : rectangle(0, wall.studOut_m, wall.bottom_m, wall.plate_m),
  });
  return parts;
}

function innerWall(input: EdgeInput): EdgePart[] {
  const { wall } = input;
  const plates: EdgePart[] = [1, 2].map((row) => ({
    id: `plate-${String(row)}`,
    layerId: null,
    name: 'Top plate',
    material: 'wood-end',
    view: 'cut',
    polygon: rectangle(
      wall.studOut_m,
      wall.studIn_m,
      wall.plate_m - row * PLATE_m,
      wall.plate_m - (row - 1) * PLATE_m,
    ),
    grain_rad: 0,
  }));
  const ceiling = input.candidate.layers.find((layer) => layer.role === 'ceiling');
  // Beside a rake the rafters and their fill hang lower than the plate under the lookouts.
  const under_m = Math.min(wall.plate_m, -input.framingDepth_m);
  const board: Point[] =
    input.place === 'rake' && (ceiling === undefined || isTruss(input))
      ? rectangle(wall.studIn_m, wall.inner_m, wall.bottom_m, under_m)
      : ceiling === undefined || isTruss(input)
        ? rectangle(wall.studIn_m, wall.inner_m, wall.bottom_m, wall.plate_m - (ceiling?.thickness_m ?? 0))
        : underSlope(
            input,
            wall.studIn_m,
            wall.inner_m,
            wall.bottom_m,
            -input.framingDepth_m - ceiling.thickness_m,
          );
  return [
    {
      id: 'stud',
      layerId: null,
      name: 'Wall framing, beyond',
      material: 'wood-beyond',
      view: 'beyond',
      polygon: rectangle(wall.studOut_m, wall.studIn_m, wall.bottom_m, wall.plate_m - 2 * PLATE_m),
      grain_rad: upright,
    },
    ...plates,
    {
      id: 'wall-gypsum',
      layerId: null,
      name: 'Wall lining',
      material: 'gypsum',
      view: 'cut',
      polygon: board,
      grain_rad: upright,
    },
  ];
}

/** Outline of a rafter with its seat on the plate, tail cut at the wall or at the eave. */
function rafterOutline(input: EdgeInput): Point[] {
  const { axes, planes, wall, framingDepth_m: d } = input;
  const low = (plane: CutPlane): Point => axes.at(slopeOn(plane, -d, axes), -d);
  const high = (plane: CutPlane): Point => axes.at(slopeOn(plane, 0, axes), 0);
  const heel = point(wall.studOut_m, wall.plate_m);
  const seatIn = point(
    (wall.plate_m * Math.cos(axes.angle_rad) + d) / Math.sin(axes.angle_rad),
    wall.plate_m,
  );
  if (input.carrier === 'outriggers') {
    const end: CutPlane = { kind: 'plumb', x: wall.studOut_m };
    return isTruss(input)
      ? [low(end), low(planes.cut), high(planes.cut), high(end)]
      : [heel, seatIn, low(planes.cut), high(planes.cut), high(end)];
  }
  const tail = planes.tailEnd;
  if (isTruss(input)) return [low(tail), low(planes.cut), high(planes.cut), high(tail)];
  const heelTop = point(wall.studOut_m, axes.levelAt(wall.studOut_m, -d));
  const tail_s = slopeOn(tail, -d, axes);
  const heel_s = axes.slopeAt(wall.studOut_m, -d);
  if (tail_s >= heel_s) return [heel, seatIn, low(planes.cut), high(planes.cut), high(tail)];
  return [low(tail), heelTop, heel, seatIn, low(planes.cut), high(planes.cut), high(tail)];
}

function framingParts(input: EdgeInput): EdgePart[] {
  if (input.place === 'rake') return rakeFraming(input);
  const { axes, wall } = input;
  const parts: EdgePart[] = [
    {
      id: 'rafter',
      layerId: null,
      name: isTruss(input) ? 'Truss top chord, beyond' : 'Rafter, beyond',
      material: 'wood-beyond',
      view: 'beyond',
      polygon: rafterOutline(input),
      grain_rad: axes.angle_rad,
    },
  ];
  if (isTruss(input)) {
    parts.push({
      id: 'bottom-chord',
      layerId: null,
      name: 'Truss bottom chord, beyond',
      material: 'wood-beyond',
      view: 'beyond',
      polygon: rectangle(
        wall.studOut_m,
        viewRight_m(input),
        wall.plate_m,
        wall.plate_m + dimension('truss-tail-depth_m'),
      ),
      grain_rad: 0,
    });
  }
  const blockIn_m = input.carrier === 'outriggers' ? wall.studOut_m : 0;
  parts.push({
    id: 'blocking',
    layerId: null,
    name:
      input.carrier === 'outriggers'
        ? 'Blocking between rafters'
        : 'Blocking between tails, sealed on four edges',
    material: 'wood-end',
    view: 'cut',
    polygon: underSlope(input, blockIn_m, blockIn_m + BLOCKING_m, wall.plate_m, 0),
    grain_rad: upright,
  });
  return parts;
}

function cavityParts(input: EdgeInput): EdgePart[] {
  if (input.place === 'rake') return [...rakeCavity(input), ...ceilingParts(input)];
  const { axes, wall, planes, candidate } = input;
  const parts: EdgePart[] = [];
  const cavity = candidate.layers.find((layer) => layer.role === 'cavity');
  const blockIn_m = (input.carrier === 'outriggers' ? wall.studOut_m : 0) + BLOCKING_m;
  if (cavity !== undefined && cavity.thickness_m > 0) {
    const depth_m = isTruss(input) ? cavity.thickness_m : Math.min(cavity.thickness_m, input.framingDepth_m);
    const floor_m = wall.plate_m + (isTruss(input) ? dimension('truss-tail-depth_m') : 0);
    const start: CutPlane = { kind: 'plumb', x: blockIn_m };
    parts.push({
      id: cavity.id,
      layerId: cavity.id,
      name: cavity.name,
      material: hatchOf(cavity.material),
      view: 'cut',
      polygon: clipToSide(band(axes, start, planes.cut, -depth_m, 0), point(0, -1), -floor_m),
      grain_rad: axes.angle_rad,
    });
  }
  return [...parts, ...ceilingParts(input)];
}

/** The ceiling under the rafters; under a truss it hangs at the plate, out of a rake's view. */
function ceilingParts(input: EdgeInput): EdgePart[] {
  const { axes, wall, planes, candidate } = input;
  const parts: EdgePart[] = [];
  const ceiling = candidate.layers.find((layer) => layer.role === 'ceiling');
  if (ceiling !== undefined && !(isTruss(input) && input.place === 'rake')) {
    const d = input.framingDepth_m;
    const start: CutPlane = { kind: 'plumb', x: wall.inner_m };
    parts.push({
      id: ceiling.id,
      layerId: ceiling.id,
      name: ceiling.name,
      material: hatchOf(ceiling.material),
      view: 'cut',
      polygon: isTruss(input)
        ? rectangle(wall.studIn_m, viewRight_m(input), wall.plate_m - ceiling.thickness_m, wall.plate_m)
        : band(axes, start, planes.cut, -d - ceiling.thickness_m, -d),
      grain_rad: isTruss(input) ? 0 : axes.angle_rad,
    });
  }
  return parts;
}

/** Wall, framing, blocking, fill and ceiling; parts beyond the section first. */
export const wallParts = (input: EdgeInput): EdgePart[] => [
  ...framingParts(input).filter((part) => part.view === 'beyond'),
  ...innerWall(input),
  ...outerWall(input),
  ...cavityParts(input),
  ...framingParts(input).filter((part) => part.view === 'cut'),
];

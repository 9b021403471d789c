/** The framing that a rake cuts across: rafters, lookouts seen beyond, blocks, fill between, screws. */
import { point, slopeOn, type Point } from './geometry.ts';
import type { EdgeLine, EdgePart } from './edge-model.ts';
import { BLOCKING_m, type EdgeInput } from './edge-input.ts';
import { hasOutrigger, hatchOf, outriggerShown, outriggerTop_m } from './edge-stack.ts';
import { rafterCenters } from './rake-rafters.ts';

const box = (x0: number, x1: number, y0: number, y1: number): Point[] => [
  point(x0, y0),
  point(x1, y0),
  point(x1, y1),
  point(x0, y1),
];

const end_m = (input: EdgeInput): number => slopeOn(input.planes.cut, 0, input.axes);

/** Level ends of every rafter in view. */
const rafters = (input: EdgeInput): [number, number][] => {
  const half = input.given.framing.width_m / 2;
  return rafterCenters(input).map((x) => [x - half, x + half]);
};

/** Lookout beyond, block over the wall, rafters cut across. */
export function rakeFraming(input: EdgeInput): EdgePart[] {
  const { planes, axes, given, lookout_m, framingDepth_m: d } = input;
  const isTruss = given.framing.kind === 'truss';
  const parts: EdgePart[] = [];
  if (lookout_m > 0) {
    const back = rafters(input)[0]?.[0] ?? end_m(input);
    parts.push({
      id: 'lookout',
      layerId: null,
      name: 'Lookout, beyond',
      material: 'wood-beyond',
      view: 'beyond',
      polygon: box(slopeOn(planes.tailEnd, 0, axes), back, -lookout_m, 0),
      grain_rad: 0,
    });
    parts.push({
      id: 'blocking',
      layerId: null,
      name: 'Block between lookouts, sealed on four edges',
      material: 'wood-end',
      view: 'cut',
      polygon: box(0, BLOCKING_m, -lookout_m, 0),
      grain_rad: 0,
    });
  }
  rafters(input).forEach(([from, to], i) => {
    const isEnd = lookout_m === 0 && i === 0;
    parts.push({
      id: isEnd ? 'end-rafter' : `rafter-${String(i + 1)}`,
      layerId: null,
      name: isEnd
        ? isTruss
          ? 'Gable-end truss, top chord'
          : 'End rafter on the gable wall'
        : isTruss
          ? 'Truss top chord'
          : 'Rafter',
      material: 'wood-end',
      view: 'cut',
      polygon: box(from, to, -d, 0),
      grain_rad: 0,
    });
  });
  return parts;
}

/** The fill between block, rafters and break; over the gable wall it ends on the plate. */
export function rakeCavity(input: EdgeInput): EdgePart[] {
  const { wall, candidate, framingDepth_m, lookout_m } = input;
  const cavity = candidate.layers.find((layer) => layer.role === 'cavity');
  if (cavity === undefined || cavity.thickness_m <= 0) return [];
  const depth_m = Math.min(cavity.thickness_m, framingDepth_m);
  const floor_m = Math.max(-depth_m, wall.plate_m);
  const solids = rafters(input);
  const starts = [...(lookout_m > 0 ? [BLOCKING_m] : []), ...solids.map(([, to]) => to)];
  const ends = [...(lookout_m > 0 ? solids : solids.slice(1)).map(([from]) => from), end_m(input)];
  return starts.flatMap((from, i): EdgePart[] => {
    const to = ends[i] ?? from;
    if (to - from < 1e-6) return [];
    const isStepped = from < wall.studIn_m && to > wall.studIn_m && floor_m > -depth_m;
    const low = to <= wall.studIn_m ? floor_m : -depth_m;
    return [
      {
        id: i === 0 ? cavity.id : `${cavity.id}-${String(i + 1)}`,
        layerId: cavity.id,
        name: cavity.name,
        material: hatchOf(cavity.material),
        view: 'cut',
        polygon: isStepped
          ? [
              point(from, floor_m),
              point(wall.studIn_m, floor_m),
              point(wall.studIn_m, -depth_m),
              point(to, -depth_m),
              point(to, 0),
              point(from, 0),
            ]
          : box(from, to, low, 0),
        grain_rad: 0,
      },
    ];
  });
}

/** Long screws at each rafter; through the outrigger at the first rafters it crosses. */
export function rakeScrews(input: EdgeInput): EdgeLine[] {
  const { axes, planes, candidate, gap } = input;
  const isPanel = candidate.strategy === 'prebonded-panel';
  const head = gap !== null && !isPanel ? gap.high_m : planes.fasciaTop_m;
  const shown = hasOutrigger(input) ? slopeOn(outriggerShown(input), 0, axes) : -Infinity;
  return rafterCenters(input).map((x, i): EdgeLine => {
    const isOnOutrigger = x < shown;
    const top = isOnOutrigger ? outriggerTop_m(input) : head;
    const length_m = isOnOutrigger ? top + input.framingDepth_m / 2 : candidate.fasteners.screwLength_m;
    return {
      id: `${isOnOutrigger ? 'outrigger' : 'long'}-screw-${String(i + 1)}`,
      kind: 'screw',
      layerId: null,
      name: isOnOutrigger ? 'Outrigger screw, gasketed' : 'Long screw',
      points: [axes.at(x, top), axes.at(x, top - length_m)],
    };
  });
}

/** What closes eave and rake: fascia or barge board, sub-fascia or flying rafter, soffit, drip edge, insect screen, gutter. */
import { band, point, shifted, slopeOn, type CutPlane, type Point } from './geometry.ts';
import type { EdgeLine, EdgePart } from './edge-model.ts';
import { SOFFIT_m, type EdgeInput } from './edge-input.ts';
import { hasOutrigger, outriggerTop_m } from './edge-stack.ts';
import { soffitLevel_m } from './edge-wall.ts';

/** [m] Drip edge: 2 in up the deck, 1 1/2 in down the fascia with a kick (legs: IRC R905.2.8.5; known: seen-secondary). */
const DRIP_UP_m = 0.0508;
const DRIP_DOWN_m = 0.0381;
const DRIP_KICK_m = 0.008;

/** Plane n of the bottom of what carries the eave: framing underside, or framing top for outriggers. */
export const carrierLow_m = (input: EdgeInput): number =>
  input.carrier === 'outriggers' ? 0 : -input.carrierDepth_m;

/** Band between two eave planes, plumb ones with a level bottom. */
function faceBand(
  input: EdgeInput,
  from: CutPlane,
  to: CutPlane,
  low: number,
  high: number,
  bottom_m: number,
): Point[] {
  const { axes } = input;
  if (from.kind === 'square' || to.kind === 'square') return band(axes, from, to, low, high);
  return [
    point(from.x, bottom_m),
    point(to.x, bottom_m),
    point(to.x, axes.levelAt(to.x, high)),
    point(from.x, axes.levelAt(from.x, high)),
  ];
}

/** [m] Height of the bottom of the fascia's face (plumb cut). */
const fasciaBottom_m = (input: EdgeInput): number =>
  input.planes.face.kind === 'plumb' ? input.axes.levelAt(input.planes.face.x, carrierLow_m(input)) : 0;

export function trimParts(input: EdgeInput): EdgePart[] {
  const { planes, axes, wall } = input;
  const low = carrierLow_m(input);
  const bottom_m = fasciaBottom_m(input);
  const isRake = input.place === 'rake';
  const soffit_m = soffitLevel_m(input, SOFFIT_m);
  const subBottom_m = soffit_m === null ? bottom_m : soffit_m + SOFFIT_m;
  const subTop = hasOutrigger(input) ? outriggerTop_m(input) : 0;
  const subLow = input.carrier === 'outriggers' ? (input.boards[0]?.low_m ?? 0) : low;
  const parts: EdgePart[] = [
    {
      id: 'fascia',
      layerId: null,
      name: isRake ? 'Barge board' : 'Fascia',
      material: 'wood-end',
      view: 'cut',
      polygon: faceBand(input, planes.face, planes.behindFascia, low, planes.fasciaTop_m, bottom_m),
      grain_rad: Math.PI / 2,
    },
    {
      id: 'sub-fascia',
      layerId: null,
      name: isRake ? 'Flying rafter' : 'Sub-fascia',
      material: 'wood-end',
      view: 'cut',
      polygon: faceBand(input, planes.subFascia, planes.tailEnd, subLow, subTop, subBottom_m),
      grain_rad: Math.PI / 2,
    },
  ];
  const toWall: CutPlane = { kind: 'plumb', x: wall.cladding_m };
  if (soffit_m !== null && planes.subFascia.kind === 'plumb' && planes.subFascia.x < wall.cladding_m) {
    parts.push({
      id: 'soffit',
      layerId: null,
      name: 'Soffit',
      material: 'panel',
      view: 'cut',
      polygon: [
        point(planes.subFascia.x, soffit_m),
        point(wall.cladding_m, soffit_m),
        point(wall.cladding_m, soffit_m + SOFFIT_m),
        point(planes.subFascia.x, soffit_m + SOFFIT_m),
      ],
      grain_rad: 0,
    });
  } else if (planes.face.kind === 'square' && input.given.profile.look !== 'exposed-tails') {
    const under = input.carrier === 'outriggers' ? subLow : low;
    if (slopeOn(toWall, under, axes) > slopeOn(planes.subFascia, under, axes)) {
      parts.push({
        id: 'soffit',
        layerId: null,
        name: 'Soffit along the slope',
        material: 'panel',
        view: 'cut',
        polygon: band(axes, planes.subFascia, toWall, under - SOFFIT_m, under),
        grain_rad: axes.angle_rad,
      });
    }
  }
  return parts;
}

export function trimLines(input: EdgeInput): EdgeLine[] {
  const { planes, axes } = input;
  const on = (plane: CutPlane, n: number): Point => axes.at(slopeOn(plane, n, axes), n);
  const edge = on(shifted(planes.face, -0.003), planes.fasciaTop_m);
  const down = planes.face.kind === 'plumb' ? point(0, -1) : axes.at(0, -1);
  const out = planes.face.kind === 'plumb' ? point(-1, 0) : axes.at(-1, 0);
  const foot = point(edge.x + down.x * DRIP_DOWN_m, edge.y + down.y * DRIP_DOWN_m);
  const edgeSlope = slopeOn(shifted(planes.face, -0.003), planes.fasciaTop_m, axes);
  const lines: EdgeLine[] = [
    {
      id: 'drip-edge',
      kind: 'drip-edge',
      layerId: null,
      name: input.place === 'rake' ? 'Rake edge metal' : 'Drip edge',
      points: [
        axes.at(edgeSlope + DRIP_UP_m, planes.fasciaTop_m),
        edge,
        foot,
        point(foot.x + (down.x + out.x) * DRIP_KICK_m, foot.y + (down.y + out.y) * DRIP_KICK_m),
      ],
    },
  ];
  if (planes.intake_m > 0) {
    const soffit_m = soffitLevel_m(input, SOFFIT_m);
    const low = carrierLow_m(input);
    const level_m = soffit_m ?? fasciaBottom_m(input);
    lines.push({
      id: 'screen',
      kind: 'screen',
      layerId: null,
      name: 'Insect screen over the air intake',
      points:
        planes.behindFascia.kind === 'plumb' && planes.subFascia.kind === 'plumb'
          ? [point(planes.behindFascia.x, level_m), point(planes.subFascia.x, level_m)]
          : [on(planes.behindFascia, low), on(planes.subFascia, low)],
    });
  }
  return [...lines, ...matScreen(input), ...gutter(input, edge)];
}

/** Screen at the side of a drainage mat that ends at the rake. */
function matScreen(input: EdgeInput): EdgeLine[] {
  const mat = input.stack.find((b) => input.layerOf(b.layerId).role === 'drainage-mat');
  if (mat === undefined || input.place !== 'rake') return [];
  const { planes, axes } = input;
  return [
    {
      id: 'mat-screen',
      kind: 'screen',
      layerId: mat.layerId,
      name: 'Insect screen around the edge of the mat',
      points: [mat.low_m, mat.high_m].map((n) => axes.at(slopeOn(planes.face, n, axes), n)),
    },
  ];
}

/** [m] A half-round gutter of 5 in, hung plumb below the drip edge (common practice). */
const GUTTER_RADIUS_m = 0.0635;
/** [m] Its rim below the drip edge's bend, and its back edge off the fascia. */
const GUTTER_DROP_m = 0.03;
const GUTTER_OFF_m = 0.006;
const GUTTER_STEPS = 12;

/** The gutter as its bent sheet. A rake has none; on a square-cut fascia it takes straps of the roofer's choice. */
function gutter(input: EdgeInput, edge: Point): EdgeLine[] {
  if (input.place === 'rake' || input.planes.face.kind === 'square') return [];
  const r = GUTTER_RADIUS_m;
  const rim = point(edge.x - GUTTER_OFF_m - r, edge.y - GUTTER_DROP_m);
  const bowl = Array.from({ length: GUTTER_STEPS + 1 }, (_, i) => {
    const turn = Math.PI * (i / GUTTER_STEPS);
    return point(rim.x + r * Math.cos(turn), rim.y - r * Math.sin(turn));
  });
  const bead = point(rim.x - r + GUTTER_OFF_m, rim.y + GUTTER_OFF_m);
  return [
    {
      id: 'gutter',
      kind: 'gutter',
      layerId: null,
      name: 'Gutter',
      points: [point(rim.x + r, rim.y + GUTTER_DROP_m / 2), ...bowl, bead],
    },
  ];
}

/** Membranes, sheets, screws: everything of eave and rake that a section shows as a line. */
import { point, slopeOn, type CutPlane, type Point } from './geometry.ts';
import type { EdgeLine, Piercing, StackBand } from './edge-model.ts';
import { isFlush, WALL_LAP_m, type EdgeInput } from './edge-input.ts';
import { rakeScrews } from './rake-framing.ts';
import {
  boardJoints,
  hasOutrigger,
  outriggerBack,
  outriggerShown,
  outriggerTop_m,
  panelOutline,
} from './edge-stack.ts';
import { trimLines, carrierLow_m } from './edge-trim.ts';

const on = (input: EdgeInput, plane: CutPlane, n: number): Point =>
  input.axes.at(slopeOn(plane, n, input.axes), n);

/** Middle plane n of the membrane on the deck. */
export function membrane_n(input: EdgeInput): number {
  const layer = input.stack.find((b) => input.layerOf(b.layerId).role === 'air-barrier');
  const deck = input.stack.find((b) => input.layerOf(b.layerId).role === 'deck');
  return layer === undefined ? (deck?.high_m ?? 0) : (layer.low_m + layer.high_m) / 2;
}

/** Foot of the roof membrane where it laps the wall barrier. */
export const lapFoot = (input: EdgeInput): Point =>
  point(0, Math.max(input.wall.bottom_m, input.axes.levelAt(0, membrane_n(input)) - 2 * WALL_LAP_m));

/**
 * The air barrier from wall to roof as one line.
 *
 * Flush framing: up the sheathing, over the corner, up the deck. Tails: up the sheathing and the
 * blocking to the underside of the deck, through the sealed deck joint, up the membrane.
 */
export function airBarrierPoints(input: EdgeInput): Point[] {
  const { wall, planes, axes, given } = input;
  const n = membrane_n(input);
  const corner = point(0, axes.levelAt(0, n));
  const roof = [corner, on(input, planes.cut, n)];
  if (given.wall.airBarrier === 'none') return [lapFoot(input), ...roof];
  if (given.wall.airBarrier === 'interior') {
    return [
      point(wall.studIn_m, wall.bottom_m),
      point(wall.studIn_m, wall.plate_m),
      point(0, wall.plate_m),
      ...roof,
    ];
  }
  return [point(0, wall.bottom_m), ...roof];
}

export function piercings(input: EdgeInput): Piercing[] {
  if (input.place === 'rake') {
    if (isFlush(input)) return [];
    return [{ at: point(0, -input.lookout_m / 2), what: 'lookout', count: null }];
  }
  if (input.carrier === 'outriggers' || input.piercings === 0) return [];
  const mid = (input.axes.levelAt(0, -input.carrierDepth_m) + input.axes.levelAt(0, 0)) / 2;
  return [
    {
      at: point(0, Math.max(mid, input.wall.plate_m)),
      what: input.carrier === 'truss-tails' ? 'truss tail' : 'rafter tail',
      count: input.piercings,
    },
  ];
}

function screws(input: EdgeInput): EdgeLine[] {
  if (input.place === 'rake') return rakeScrews(input);
  const { axes, planes, candidate, gap } = input;
  const lines: EdgeLine[] = [];
  const add = (id: string, s: number, high: number, length_m: number, name: string): void => {
    lines.push({
      id,
      kind: 'screw',
      layerId: null,
      name,
      points: [axes.at(s, high), axes.at(s, high - length_m)],
    });
  };
  const lastBoard = input.boards.at(-1)?.high_m ?? 0;
  const isPanel = candidate.strategy === 'prebonded-panel';
  const head = gap !== null && !isPanel ? gap.high_m : planes.fasciaTop_m;
  const spacing_m = Math.max(0.3, candidate.fasteners.spacing_m);
  const from = Math.max(
    axes.slopeAt(input.wall.studIn_m, head),
    hasOutrigger(input) ? slopeOn(outriggerShown(input), lastBoard, axes) : -Infinity,
  );
  const tip_m = head - candidate.fasteners.screwLength_m;
  const end = Math.min(slopeOn(planes.cut, head, axes), slopeOn(planes.cut, tip_m, axes)) - 0.05;
  for (let s = from + 0.06, i = 1; s < end; s += spacing_m, i += 1) {
    add(`long-screw-${String(i)}`, s, head, candidate.fasteners.screwLength_m, 'Long screw');
  }
  if (hasOutrigger(input)) {
    const top = outriggerTop_m(input);
    const length_m = top + 0.6 * input.framingDepth_m;
    const first = axes.slopeAt(input.wall.studOut_m, 0) + 0.06;
    const back = slopeOn(outriggerShown(input), 0, axes) - 0.05;
    [first, first + 0.09, back].forEach((s, i) => {
      if (i === 0 || s > first + 0.05)
        add(`outrigger-screw-${String(i + 1)}`, s, top, length_m, 'Outrigger screw, gasketed');
    });
  }
  return lines;
}

/** The rest of the outrigger where the section has stepped off it. */
function hiddenOutrigger(input: EdgeInput): EdgeLine[] {
  if (!hasOutrigger(input)) return [];
  const { axes, planes } = input;
  const nearer = (n: number): number =>
    Math.min(slopeOn(outriggerBack(input), n, axes), slopeOn(planes.cut, n, axes));
  return [input.boards[0]?.low_m ?? 0, outriggerTop_m(input)].flatMap((n, i): EdgeLine[] => {
    const start = slopeOn(outriggerShown(input), n, axes);
    if (nearer(n) - start < 1e-6) return [];
    return [
      {
        id: `outrigger-hidden-${String(i + 1)}`,
        kind: 'hidden',
        layerId: null,
        name: 'Outrigger, behind',
        points: [axes.at(start, n), axes.at(nearer(n), n)],
      },
    ];
  });
}

function sheets(input: EdgeInput): EdgeLine[] {
  const { planes, wall, candidate } = input;
  const lines: EdgeLine[] = [];
  const n = membrane_n(input);
  const airLayer = candidate.layers.find((layer) => layer.role === 'air-barrier');
  if (airLayer !== undefined) {
    const eave = isFlush(input)
      ? [lapFoot(input), point(0, input.axes.levelAt(0, n))]
      : [on(input, planes.subFascia, n)];
    lines.push({
      id: 'membrane',
      kind: 'membrane',
      layerId: airLayer.id,
      name: airLayer.name,
      points: [...eave, on(input, planes.cut, n)],
    });
  }
  for (const b of input.stack) {
    const layer = input.layerOf(b.layerId);
    if (layer.role !== 'underlayment') continue;
    const mid = (b.low_m + b.high_m) / 2;
    lines.push({
      id: b.layerId,
      kind: 'underlayment',
      layerId: b.layerId,
      name: layer.name,
      points: [on(input, planes.face, mid), on(input, planes.cut, mid)],
    });
    lines.push(...sheetLaps(input, b, layer.name));
  }
  const retarder = candidate.layers.find((layer) => layer.role === 'interior-retarder');
  const isTruss = input.given.framing.kind === 'truss';
  if (retarder !== undefined && !(isTruss && input.place === 'rake')) {
    const start = point(wall.studIn_m, input.axes.levelAt(wall.studIn_m, -input.framingDepth_m));
    lines.push({
      id: retarder.id,
      kind: 'retarder',
      layerId: retarder.id,
      name: retarder.name,
      points: isTruss
        ? [point(wall.studIn_m, wall.plate_m), point(wall.inner_m + input.view.inside_m, wall.plate_m)]
        : [start, on(input, planes.cut, -input.framingDepth_m)],
    });
  }
  return lines;
}

/** [m] Exposure of a 36 in underlayment with a head lap of 4 in (common practice), and the lap itself. */
const EXPOSURE_m = 0.8128;
const HEAD_LAP_m = 0.1016;
/** [m] How far the upper sheet is drawn above the lower one, so that the lap shows. */
const LAP_RISE_m = 0.006;

/** Head laps of the underlayment: each sheet lies over the one below it, so water runs on. */
function sheetLaps(input: EdgeInput, sheet: StackBand, name: string): EdgeLine[] {
  if (input.place === 'rake') return [];
  const { axes, planes } = input;
  const n = sheet.high_m;
  const end = slopeOn(planes.cut, n, axes) - HEAD_LAP_m;
  const lines: EdgeLine[] = [];
  for (let s = slopeOn(planes.face, n, axes) + EXPOSURE_m, i = 1; s < end; s += EXPOSURE_m, i += 1) {
    lines.push({
      id: `underlayment-lap-${String(i)}`,
      kind: 'lap',
      layerId: sheet.layerId,
      name: `${name}: head lap, the upper sheet over the lower`,
      points: [
        axes.at(s, n + LAP_RISE_m),
        axes.at(s + HEAD_LAP_m, n + LAP_RISE_m),
        axes.at(s + HEAD_LAP_m + LAP_RISE_m, n),
      ],
    });
  }
  return lines;
}

/** [m] Height of the mark at the end of the ice barrier. */
const ICE_MARK_m = 0.03;

/** End of the ice barrier on the slope, and whether it lies within the drawing. */
export function iceBarrierEnd(input: EdgeInput): { s: number; isShown: boolean; start: number } {
  const n = input.planes.fasciaTop_m;
  const start = slopeOn(input.planes.face, n, input.axes);
  const cut = slopeOn(input.planes.cut, n, input.axes);
  const s = start + input.iceBarrier_m;
  return { start, s: Math.min(s, cut), isShown: s <= cut };
}

function iceBarrier(input: EdgeInput): EdgeLine[] {
  if (input.iceBarrier_m <= 0) return [];
  const n = input.planes.fasciaTop_m;
  const { start, s, isShown } = iceBarrierEnd(input);
  return [
    {
      id: 'ice-barrier',
      kind: 'ice-barrier',
      layerId: null,
      name: 'Ice barrier',
      points: isShown
        ? [input.axes.at(start, n), input.axes.at(s, n), input.axes.at(s, n + ICE_MARK_m)]
        : [input.axes.at(start, n), input.axes.at(s, n)],
    },
  ];
}

/** Beads and tape: where blocking meets plate, tail and deck. */
function sealants(input: EdgeInput): EdgeLine[] {
  if (isFlush(input)) return [];
  const { wall, axes } = input;
  return [
    { at: point(0, wall.plate_m), id: 'seal-plate' },
    { at: point(0, axes.levelAt(0, 0)), id: 'seal-deck' },
  ].map(({ at, id }) => ({
    id,
    kind: 'sealant',
    layerId: null,
    name: 'Sealed joint',
    points: [at, point(at.x, at.y - 0.012)],
  }));
}

export function edgeLines(input: EdgeInput): EdgeLine[] {
  const wallLine: EdgeLine[] =
    input.given.wall.airBarrier === 'exterior-membrane' || input.given.wall.airBarrier === 'taped-sheathing'
      ? [
          {
            id: 'wall-barrier',
            kind: 'wall-barrier',
            layerId: null,
            name: 'Wall air barrier',
            points: [
              point(0, input.wall.bottom_m),
              point(0, isFlush(input) ? input.axes.levelAt(0, 0) : input.wall.plate_m),
            ],
          },
        ]
      : [];
  return [
    ...boardJoints(input),
    ...panelOutline(input),
    ...wallLine,
    ...sheets(input),
    ...iceBarrier(input),
    ...trimLines(input),
    ...sealants(input),
    ...hiddenOutrigger(input),
    ...screws(input),
    {
      id: 'air-barrier-line',
      kind: 'air-barrier',
      layerId: 'air-barrier',
      name: 'Air barrier',
      points: airBarrierPoints(input),
    },
  ];
}

export { carrierLow_m };

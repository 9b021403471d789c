/** Which parts of eave and rake get a note, and where on the part its leader ends. */
import type { Candidate } from '../evaluation/evaluation.ts';
import { between, middle, point, slopeOn, type Point } from './geometry.ts';
import type { Anchor, EdgeLine, EdgePart } from './edge-model.ts';
import { removedTail } from './edge-before.ts';
import type { EdgeInput } from './edge-input.ts';
import { iceBarrierEnd, lapFoot } from './edge-lines.ts';
import { hasOutrigger, outriggerTop_m } from './edge-stack.ts';

/** [m] How far before the break the leaders of the layers end. */
const BEFORE_BREAK_m = 0.03;
/** Share of the tail's depth at which its note points: near the underside. */
const TAIL_SHARE = 0.8;

export function stackAnchors(input: EdgeInput, outOfView: readonly string[] = []): Anchor[] {
  const { axes, candidate, framingDepth_m: d } = input;
  const isTruss = input.given.framing.kind === 'truss';
  const x = input.wall.inner_m + input.view.inside_m - BEFORE_BREAK_m;
  const place = (n: number): Point => point(x, axes.levelAt(x, n));
  const level = (y: number): Point => point(x, y);
  const inView = candidate.layers.filter((layer) => !outOfView.includes(layer.id));
  return inView.map((layer): Anchor => {
    const band = input.stack.find((b) => b.layerId === layer.id);
    let at = place(-d / 2);
    if (band !== undefined) at = place((band.low_m + band.high_m) / 2);
    else if (layer.role === 'cavity') at = place(-Math.min(layer.thickness_m, d) / 2);
    else if (layer.role === 'ceiling')
      at = isTruss ? level(input.wall.plate_m - layer.thickness_m / 2) : place(-d - layer.thickness_m / 2);
    else if (layer.role === 'interior-retarder') at = isTruss ? level(input.wall.plate_m) : place(-d);
    return { id: layer.id, layerId: layer.id, name: layer.name, detail: '', at, side: 'stack' };
  });
}

/** The outrigger with its size: `Outrigger, 2x4 on edge`. */
export const outriggerName = (chosen: Candidate['structure']['outrigger']): string =>
  chosen === null
    ? 'Outrigger'
    : `Outrigger, ${chosen.size} ${chosen.orientation === 'flat' ? 'flat' : 'on edge'}`;

/** Which of its points a gutter's leader ends on: on the outer side of the bowl. */
const GUTTER_POINT = 11;

function partAnchors(input: EdgeInput, parts: readonly EdgePart[], lines: readonly EdgeLine[]): Anchor[] {
  const { axes, planes, wall, candidate, given } = input;
  const anchors: Anchor[] = [];
  const add = (id: string, name: string, detail: string, at: Point, side: Anchor['side']): void => {
    anchors.push({ id: `part-${id}`, layerId: null, name, detail, at, side });
  };
  const find = (id: string): EdgePart | undefined => parts.find((part) => part.id === id);
  const on = (s: number, n: number): Point => axes.at(s, n);
  const lineOf = (id: string): readonly Point[] => lines.find((each) => each.id === id)?.points ?? [];
  const face_s = slopeOn(planes.face, planes.fasciaTop_m, axes);
  const isOutrigger = input.carrier === 'outriggers';
  if (input.iceBarrier_m > 0) {
    const ice = iceBarrierEnd(input);
    const s = ice.start + (ice.s - ice.start) * 0.35;
    add(
      'ice-barrier',
      'Ice barrier',
      ice.isShown ? '' : 'past the break',
      on(s, planes.fasciaTop_m),
      'edge-above',
    );
  }
  add('drip-edge', 'Drip edge', 'under the sheets', on(face_s + 0.01, planes.fasciaTop_m), 'edge-above');
  const nailer = [...parts].reverse().find((part) => part.id.startsWith('nailer-'));
  if (nailer !== undefined)
    add('nailer', 'Perimeter nailer', 'as high as the boards', middle(nailer.polygon), 'edge-above');
  if (hasOutrigger(input)) {
    const n = (outriggerTop_m(input) + (input.boards[0]?.low_m ?? 0)) / 2;
    add(
      'outrigger',
      outriggerName(candidate.structure.outrigger),
      candidate.structure.outrigger === null ? 'no size fits between the boards' : 'to be engineered',
      on(slopeOn(planes.tailEnd, n, axes) + 0.05, n),
      'edge-above',
    );
  }
  const fascia = find('fascia');
  if (fascia !== undefined) {
    const [a, b] = fascia.polygon;
    if (a !== undefined && b !== undefined)
      add('fascia', 'Fascia', '', point((a.x + b.x) / 2, (a.y + b.y) / 2 + 0.02), 'edge-below');
  }
  if (planes.intake_m > 0) {
    const low = isOutrigger ? 0 : -input.carrierDepth_m;
    const screen =
      planes.behindFascia.kind === 'plumb' && planes.subFascia.kind === 'plumb'
        ? point(
            (planes.behindFascia.x + planes.subFascia.x) / 2,
            find('soffit')?.polygon[0]?.y ?? axes.levelAt(-given.overhang.eave_m, low),
          )
        : on(slopeOn(planes.behindFascia, low, axes) + planes.intake_m / 2, low);
    add('screen', 'Air intake with insect screen', '', screen, 'edge-below');
  }
  const soffit = find('soffit');
  if (soffit !== undefined) add('soffit', soffit.name, '', middle(soffit.polygon), 'edge-below');
  if (!isOutrigger && !input.isStretched) {
    add(
      'tail',
      tailName(input),
      `${String(candidate.airBarrier.piercings)} pierce the air barrier`,
      on(
        (slopeOn(planes.tailEnd, -TAIL_SHARE * input.carrierDepth_m, axes) +
          axes.slopeAt(Math.min(wall.cladding_m, -0.02), -TAIL_SHARE * input.carrierDepth_m)) /
          2,
        -TAIL_SHARE * input.carrierDepth_m,
      ),
      'edge-below',
    );
  }
  if (!isOutrigger) {
    const blocking = find('blocking');
    if (blocking !== undefined)
      add(
        'blocking',
        'Blocking between tails',
        'sealed on four edges',
        between(middle(blocking.polygon), blocking.polygon[1] ?? middle(blocking.polygon), 0.45),
        'room',
      );
  } else {
    add(
      'lap',
      'Membrane laps the wall',
      'one sheet, not pierced by framing',
      point(0, lapFoot(input).y + 0.02),
      lapFoot(input).y + 0.02 < (soffit?.polygon[0]?.y ?? Infinity) ? 'wall' : 'room',
    );
  }
  const gutter = lineOf('gutter')[GUTTER_POINT];
  if (gutter !== undefined) add('gutter', 'Gutter, hung under the drip edge', '', gutter, 'edge-above');
  const removed = removedTail(input)[0]?.points;
  if (removed?.[1] !== undefined && removed[2] !== undefined)
    add(
      'removed',
      'Existing tail, cut off',
      'at the wall, ends sealed',
      between(removed[1], removed[2], 0.8),
      'edge-below',
    );
  return [...anchors, ...wallAnchors(input, parts)];
}

/** The tail with what becomes of it. */
function tailName(input: EdgeInput): string {
  const isTruss = input.carrier === 'truss-tails';
  if (input.existing === 'kept') return `Existing ${isTruss ? 'truss' : 'rafter'} tail, kept`;
  return isTruss ? 'Truss tail, beyond' : 'Rafter tail, beyond';
}

/** The layers of the wall, from below the soffit down. */
export function wallAnchors(input: EdgeInput, parts: readonly EdgePart[]): Anchor[] {
  const { wall, given } = input;
  const anchors: Anchor[] = [];
  const soffit = parts.find((part) => part.id === 'soffit');
  const rows: [string, string, number][] = [
    ['cladding', 'Cladding', 0.62],
    ['wall-insulation', 'Exterior wall insulation', 0.42],
    [
      'sheathing',
      given.wall.airBarrier === 'none' ? 'Wall sheathing, no air barrier' : 'Wall sheathing',
      0.22,
    ],
  ];
  for (const [id, name, share] of rows) {
    const part = parts.find((each) => each.id === id);
    if (part === undefined) continue;
    const x = middle(part.polygon).x;
    const top = Math.min(wall.plate_m, soffit?.polygon[0]?.y ?? wall.plate_m);
    anchors.push({
      id: `part-${id}`,
      layerId: null,
      name,
      detail: id === 'sheathing' ? wallBarrierWords[given.wall.airBarrier] : '',
      at: point(x, wall.bottom_m + (top - wall.bottom_m) * share),
      side: 'wall',
    });
  }
  return anchors;
}

const wallBarrierWords = {
  'exterior-membrane': 'with air-barrier membrane',
  'taped-sheathing': 'joints taped: the air barrier',
  interior: 'air barrier on the room side',
  none: '',
} as const;

export const edgeAnchors = (
  input: EdgeInput,
  parts: readonly EdgePart[],
  lines: readonly EdgeLine[],
): Anchor[] => [...stackAnchors(input), ...partAnchors(input, parts, lines)];

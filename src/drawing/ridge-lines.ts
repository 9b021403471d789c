/** Membranes, sheets and screws of the ridge, and the walks along its air barrier, water and drying paths. */
import { dimension } from '../catalog/dimensions.ts';
import { OLD_COVERING_m } from './edge-before.ts';
import { WALL_LAP_m } from './edge-input.ts';
import type { EdgeLine, LineKind, Walk } from './edge-model.ts';
import { point, slopeOn, type CutPlane, type Point } from './geometry.ts';
import { capLow_m, capStart, mirrored, plumbAt, VENT_HEIGHT_m, type RidgeInput } from './ridge-input.ts';
import { numbered } from './walks.ts';

/** [m] How far the lapped sheet is drawn above the other, so that the lap shows. */
const LAP_RISE_m = 0.005;

const on = (input: RidgeInput, plane: CutPlane, n: number): Point =>
  input.axes.at(slopeOn(plane, n, input.axes), n);
const apex = (input: RidgeInput, n: number): Point => point(0, input.axes.levelAt(0, n));

/** Middle plane n of the membrane on the deck. */
export function ridgeMembrane_n(input: RidgeInput): number {
  const find = (role: string) => input.stack.find((b) => input.layerOf(b.layerId).role === role);
  const layer = find('air-barrier');
  return layer === undefined ? (find('deck')?.high_m ?? 0) : (layer.low_m + layer.high_m) / 2;
}

/** A sheet that runs over the ridge from the left and laps the sheet of the right slope. */
function lapped(
  input: RidgeInput,
  id: string,
  kind: LineKind,
  layerId: string,
  name: string,
  n: number,
): EdgeLine[] {
  const { axes, cut } = input;
  const lap_m = Math.min(WALL_LAP_m, (0.8 * input.half_m) / Math.cos(axes.angle_rad));
  const foot = (rise: number): Point => axes.at(axes.slopeAt(0, n) - lap_m, n + rise);
  const right = mirrored([on(input, cut, n), apex(input, n)]);
  const over = mirrored([foot(LAP_RISE_m), apex(input, n + LAP_RISE_m)]);
  return [
    { id: `${id}-right`, kind, layerId, name, points: right },
    {
      id,
      kind,
      layerId,
      name: `${name}, lapped over the ridge`,
      points: [
        on(input, cut, n),
        foot(0),
        apex(input, n + LAP_RISE_m),
        ...over.slice(1),
        ...mirrored([foot(0)]),
      ],
    },
  ];
}

function sheets(input: RidgeInput): EdgeLine[] {
  const { candidate, cut, member, isTruss } = input;
  const lines: EdgeLine[] = [];
  const air = candidate.layers.find((layer) => layer.role === 'air-barrier');
  const n = ridgeMembrane_n(input);
  if (air !== undefined) lines.push(...lapped(input, 'membrane', 'membrane', air.id, air.name, n));
  for (const b of input.stack) {
    const layer = input.layerOf(b.layerId);
    if (layer.role !== 'underlayment') continue;
    const mid = (b.low_m + b.high_m) / 2;
    if (input.slot_m === 0) {
      lines.push(...lapped(input, b.layerId, 'underlayment', b.layerId, layer.name, mid));
      continue;
    }
    const left = [on(input, cut, mid), on(input, plumbAt(input.slot_m), mid)];
    const common = { kind: 'underlayment', layerId: b.layerId, name: layer.name } as const;
    lines.push(
      { ...common, id: b.layerId, points: left },
      { ...common, id: `${b.layerId}-right`, points: mirrored(left) },
    );
  }
  const retarder = candidate.layers.find((layer) => layer.role === 'interior-retarder');
  if (retarder !== undefined && !isTruss) {
    const d = input.framingDepth_m;
    const left = [on(input, cut, -d), on(input, plumbAt(member.half_m), -d)];
    lines.push({
      id: retarder.id,
      kind: 'retarder',
      layerId: retarder.id,
      name: retarder.name,
      points: [...left, ...mirrored(left)],
    });
  }
  return lines;
}

/** [m] Clear of the ridge member and of the break. */
const SCREW_CLEAR_m = 0.03;
const LEAST_SPACING_m = 0.3;

function screws(input: RidgeInput): EdgeLine[] {
  const { axes, candidate, gap, member, half_m, slot_m } = input;
  const { screwLength_m } = candidate.fasteners;
  const isPanel = candidate.strategy === 'prebonded-panel';
  const head = gap !== null && !isPanel ? gap.high_m : input.deckTop_m;
  const tip = head - screwLength_m;
  const first = Math.min(
    axes.slopeAt(-member.half_m - SCREW_CLEAR_m, tip),
    axes.slopeAt(-slot_m - SCREW_CLEAR_m, head),
  );
  const last = axes.slopeAt(-half_m + SCREW_CLEAR_m, head);
  const lines: EdgeLine[] = [];
  const spacing_m = Math.max(LEAST_SPACING_m, candidate.fasteners.spacing_m);
  for (let s = first, i = 1; s > last; s -= spacing_m, i += 1) {
    const left = [axes.at(s, head), axes.at(s, tip)];
    const common = { kind: 'screw', layerId: null, name: 'Long screw' } as const;
    lines.push(
      { ...common, id: `long-screw-${String(i)}`, points: left },
      { ...common, id: `long-screw-${String(i)}-right`, points: left.map((p) => point(-p.x, p.y)) },
    );
  }
  return lines;
}

/** Outline of the factory panels, which end at the ridge joint. */
function panels(input: RidgeInput): EdgeLine[] {
  const core = input.boards.at(-1);
  if (input.candidate.strategy !== 'prebonded-panel' || core === undefined) return [];
  const { cut } = input;
  // The top sheet stops at the slot, the core goes on to the ridge joint.
  const end_m = Math.max(input.joint_m, input.slot_m);
  const left = [
    on(input, cut, core.low_m),
    on(input, plumbAt(input.joint_m), core.low_m),
    on(input, plumbAt(input.joint_m), core.high_m),
    on(input, plumbAt(end_m), core.high_m),
    on(input, plumbAt(end_m), input.deckTop_m),
    on(input, cut, input.deckTop_m),
  ];
  const common = { kind: 'panel-outline', layerId: core.layerId, name: 'Factory panel' } as const;
  return [
    { ...common, id: 'panel-outline', points: left },
    { ...common, id: 'panel-outline-right', points: mirrored(left) },
  ];
}

/** Insect screens at both outer ends of the ridge vent. */
function screens(input: RidgeInput): EdgeLine[] {
  if (input.slot_m === 0) return [];
  const left = [input.top_m, input.top_m + VENT_HEIGHT_m].map((n) => on(input, capStart(input), n));
  const common = { kind: 'screen', layerId: null, name: 'Insect screen of the ridge vent' } as const;
  return [
    { ...common, id: 'screen', points: left },
    { ...common, id: 'screen-right', points: mirrored(left) },
  ];
}

/** The air barrier over the ridge: one line. */
export function ridgeAirPoints(input: RidgeInput): Point[] {
  const n = ridgeMembrane_n(input);
  const left = on(input, input.cut, n);
  return [left, apex(input, n), point(-left.x, left.y)];
}

export const ridgeLines = (input: RidgeInput): EdgeLine[] => [
  ...panels(input),
  ...sheets(input),
  ...screens(input),
  ...screws(input),
  {
    id: 'air-barrier-line',
    kind: 'air-barrier',
    layerId: 'air-barrier',
    name: 'Air barrier',
    points: ridgeAirPoints(input),
  },
];

/** The ridge that stands today: old covering on the deck. */
export function ridgeBefore(input: RidgeInput): EdgeLine[] {
  if (input.given.project.kind !== 're-roof') return [];
  const deck = input.stack.find((b) => input.layerOf(b.layerId).role === 'deck');
  const n = (deck?.high_m ?? 0) + OLD_COVERING_m;
  const left = on(input, input.cut, n);
  return [
    {
      id: 'before-roof',
      kind: 'removed',
      layerId: null,
      name: 'Roof before',
      points: [left, apex(input, n), point(-left.x, left.y)],
    },
  ];
}

/**
 * The air barrier walked over the ridge with its joints in order.
 *
 * @param input  [m] a ridge's input
 * @returns      [m] the line and its joints
 */
export function ridgeAirWalk(input: RidgeInput): Walk {
  const n = ridgeMembrane_n(input);
  const left = on(input, plumbAt(0.6 * input.half_m), n);
  const isReroof = input.given.project.kind === 're-roof';
  return {
    path: 'air-barrier',
    points: [ridgeAirPoints(input)],
    joints: numbered([
      {
        at: left,
        name: 'Laps of the deck membrane',
        how: 'Rolled down on a dry deck; no fishmouths, no lap that faces up the slope.',
      },
      ...(isReroof
        ? [
            {
              at: apex(input, 0),
              name: 'Old ridge slot',
              how: 'Where today’s ridge is vented, close the slot with a strip of deck and tape it before the membrane.',
            },
          ]
        : []),
      {
        at: apex(input, n),
        name: 'Lap over the ridge',
        how: 'One slope’s sheet runs over the ridge and laps the other by 6 in; stuck down over an eased edge.',
      },
      {
        at: point(-left.x, left.y),
        name: 'Pipes and shafts near the ridge',
        how: 'Each with a collar sealed to the membrane, before the boards cover it.',
      },
    ]),
  };
}

/** Water: down both slopes from the cap; the sheets below catch what gets through. */
export function ridgeWaterWalk(input: RidgeInput): Walk {
  const cap = capLow_m(input) + input.capThickness_m;
  const start = on(input, capStart(input), cap);
  const n = ridgeMembrane_n(input);
  const under = input.deckTop_m;
  const foot = on(input, input.cut, input.top_m);
  const from = on(input, input.slot_m > 0 ? plumbAt(input.slot_m) : input.ridge, under);
  return {
    path: 'water',
    points: [
      [apex(input, cap), start, on(input, capStart(input), input.top_m), foot],
      [from, on(input, input.cut, under)],
    ],
    joints: numbered([
      { at: apex(input, cap), name: 'Ridge cap', how: 'Sheds to both slopes; laps face away from the wind.' },
      { at: foot, name: 'Covering', how: 'Sheds nearly all water.' },
      {
        at: from,
        name: 'Underlayment',
        how:
          input.slot_m > 0
            ? 'Ends at the slot; the vent’s baffle keeps driven rain out.'
            : 'Runs over the ridge and laps the other slope’s sheet.',
      },
      { at: apex(input, n), name: 'Deck membrane', how: 'Last line while the roof is open and after.' },
    ]),
  };
}

/** Drying: out of the gap through slot and vent, and into the room where the deck is open to it. */
export function ridgeDryingWalk(input: RidgeInput): Walk {
  const { gap, candidate } = input;
  const joints: { at: Point; name: string; how: string }[] = [];
  const points: Point[][] = [];
  if (gap !== null) {
    const mid = (gap.low_m + gap.high_m) / 2;
    const vent = input.top_m + VENT_HEIGHT_m / 2;
    const slot = on(input, plumbAt(input.slot_m / 2), mid);
    points.push([
      on(input, input.cut, mid),
      slot,
      on(input, plumbAt(input.slot_m / 2), vent),
      on(input, capStart(input), vent),
    ]);
    joints.push(
      {
        at: on(input, plumbAt(0.7 * input.half_m), mid),
        name: 'Vented space',
        how: 'Open from eave to ridge; nothing may block it.',
      },
      {
        at: slot,
        name: 'Ridge slot',
        how: 'As wide on each side as the gap is high, so that it is no throat.',
      },
      {
        at: on(input, capStart(input), vent),
        name: 'Ridge vent with insect screen',
        how: 'Its net free area per length is at least that of the intake.',
      },
    );
  }
  if (candidate.drying.path === 'both' || candidate.drying.path === 'inward') {
    const x = -0.45 * input.half_m;
    const room = point(x, input.axes.levelAt(x, -input.framingDepth_m - dimension('gypsum_m')));
    points.push([point(x, input.axes.levelAt(x, 0)), room]);
    joints.push({
      at: point(x, input.axes.levelAt(x, 0)),
      name: 'Deck to room',
      how: 'Inward through fill and ceiling.',
    });
  }
  return { path: 'drying', points, joints: numbered(joints) };
}

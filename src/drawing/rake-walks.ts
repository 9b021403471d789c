/** Numbered walks along the air barrier, the water path and the drying path of a rake. */
import { point, slopeOn, type Point } from './geometry.ts';
import type { Joint, Walk } from './edge-model.ts';
import { isFlush, type EdgeInput } from './edge-input.ts';
import { airBarrierPoints, lapFoot, membrane_n } from './edge-lines.ts';
import { hasOutrigger } from './edge-stack.ts';
import { rafterCenters } from './rake-rafters.ts';
import { numbered, wallStart } from './walks.ts';

type Stop = Omit<Joint, 'number'>;

function flushStops(input: EdgeInput, n: number): Stop[] {
  const stops: Stop[] = [
    wallStart(input, 'Roof membrane laps the gable wall', lapFoot(input)),
    {
      at: point(0, n),
      name: 'Fold over the gable corner',
      how: 'One sheet, no cut, over an eased deck edge; where rake and eave meet, patch the corner.',
    },
  ];
  const screw = rafterCenters(input)[0];
  if (hasOutrigger(input) && screw !== undefined)
    stops.push({
      at: point(screw, n),
      name: 'Screws of the outriggers',
      how: 'Each goes through the membrane: gasket or liquid flashing under the outrigger.',
    });
  return stops;
}

function lookoutStops(input: EdgeInput, n: number): Stop[] {
  return [
    wallStart(input, 'Gable wall barrier to the blocks', point(0, input.wall.plate_m)),
    {
      at: point(0, -input.lookout_m / 2),
      name: 'Block to each lookout',
      how: 'Both sides of every lookout: sealant or foam, then look for light.',
    },
    {
      at: point(0, 0),
      name: 'Block to the underside of the deck',
      how: 'A continuous bead, set before the deck or foamed from outside.',
    },
    {
      at: point(0, n),
      name: 'Deck joints at the gable line to the membrane',
      how: 'Tape or fill every joint of the deck over the blocks; the membrane is stuck down across the line.',
    },
  ];
}

/**
 * The air barrier walked from the gable wall to the roof with its joints in order.
 *
 * @param input  [m] a rake's input
 * @returns      [m] the line and its joints
 */
export function rakeAirWalk(input: EdgeInput): Walk {
  const n = membrane_n(input);
  const field: Stop = {
    at: point(slopeOn(input.planes.cut, n, input.axes) * 0.6, n),
    name: 'Laps of the deck membrane',
    how: 'Rolled down on a dry deck; no fishmouths, no lap that faces up the slope.',
  };
  const stops = isFlush(input) ? flushStops(input, n) : lookoutStops(input, n);
  return { path: 'air-barrier', points: [airBarrierPoints(input)], joints: numbered([...stops, field]) };
}

/** Water: along the covering and down the slope; the edge metal keeps it from running in at the side. */
export function rakeWaterWalk(input: EdgeInput): Walk {
  const { planes, axes } = input;
  const top = input.stack.at(-1)?.high_m ?? planes.fasciaTop_m;
  const under = planes.fasciaTop_m;
  const n = membrane_n(input);
  const on = (plane: typeof planes.cut, level: number): Point => point(slopeOn(plane, level, axes), level);
  return {
    path: 'water',
    points: [
      [on(planes.cut, top), on(planes.face, top)],
      [on(planes.cut, under), on(planes.face, under)],
    ],
    joints: numbered([
      { at: on(planes.cut, top), name: 'Covering', how: 'Sheds nearly all water down the slope.' },
      {
        at: point(0, under),
        name: 'Underlayment',
        how: 'Runs out over the barge board; sheets shingled up the slope.',
      },
      {
        at: on(planes.face, under),
        name: 'Rake edge metal',
        how: 'At the rake the metal lies over the sheets, so that wind cannot drive water under them.',
      },
      { at: point(0, n), name: 'Deck membrane', how: 'Last line while the roof is open and after.' },
    ]),
  };
}

/** Drying: the gap is closed to the side and dries up the slope; the deck dries into the room where it is open. */
export function rakeDryingWalk(input: EdgeInput): Walk {
  const { planes, axes, gap, candidate, wall, view } = input;
  const stops: Stop[] = [];
  const points: Point[][] = [];
  const cut_x = slopeOn(planes.cut, 0, axes);
  if (gap !== null) {
    const mid = (gap.low_m + gap.high_m) / 2;
    const start = slopeOn(planes.nailerEnd, 0, axes) + 0.02;
    points.push([point(start, mid), point(cut_x, mid)]);
    stops.push({
      at: point((start + cut_x) / 2, mid),
      name: 'Vented space',
      how: 'Air runs up the slope, into the sheet; the rake is closed, so it cannot short-cut to the side.',
    });
  }
  if (candidate.drying.path === 'both' || candidate.drying.path === 'inward') {
    const x = wall.inner_m + 0.35 * view.inside_m;
    points.push([point(x, 0), point(x, -input.framingDepth_m - 0.05)]);
    stops.push({ at: point(x, 0), name: 'Deck to room', how: 'Inward through fill and ceiling.' });
  }
  return { path: 'drying', points, joints: numbered(stops) };
}

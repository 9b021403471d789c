/** Numbered walks along the air barrier, the water path and the drying path of an eave. */
import { point, slopeOn, type Point } from './geometry.ts';
import type { Joint, Walk } from './edge-model.ts';
import { isFlush, type EdgeInput } from './edge-input.ts';
import { airBarrierPoints, lapFoot, membrane_n, piercings } from './edge-lines.ts';
import { hasOutrigger } from './edge-stack.ts';

export const numbered = (joints: readonly Omit<Joint, 'number'>[]): Joint[] =>
  joints.map((joint, index) => ({ ...joint, number: index + 1 }));

/** Where the walk begins: the wall's own barrier, or the lack of it. `joins` says how it joins the roof's, and where. */
export function wallStart(input: EdgeInput, joins: string, at: Point): Omit<Joint, 'number'> {
  const { wall, given } = input;
  const foot = lapFoot(input);
  switch (given.wall.airBarrier) {
    case 'none':
      return {
        at: foot,
        name: 'No air barrier in the wall',
        how: 'The roof line ends here. Decide on a wall air barrier before the eave is closed.',
      };
    case 'interior':
      return {
        at: point(wall.studIn_m, wall.plate_m),
        name: 'Inside of the wall to the top plate',
        how: 'Carry the inner sheet over the top plates before the roof framing is set, or seal at each rafter.',
      };
    case 'exterior-membrane':
    case 'taped-sheathing':
      return {
        at,
        name: joins,
        how: isFlush(input)
          ? 'At least 6 in, shingled over the wall sheet where water can reach it, rolled down.'
          : 'Lap the wall sheet up the outer face of the blocking and seal it.',
      };
  }
}

/**
 * The air barrier walked from wall to roof with its joints in order.
 *
 * @param input  [m] an edge's input
 * @returns      [m] the line and its joints
 */
export function airBarrierWalk(input: EdgeInput): Walk {
  const points = airBarrierPoints(input);
  const n = membrane_n(input);
  const corner = point(0, input.axes.levelAt(0, n));
  const roof_s = (slopeOn(input.planes.cut, n, input.axes) + input.axes.slopeAt(0, n)) / 2;
  const field: Omit<Joint, 'number'> = {
    at: input.axes.at(roof_s, n),
    name: 'Laps of the deck membrane',
    how: 'Rolled down on a dry deck; no fishmouths, no lap that faces up the slope.',
  };
  if (input.carrier === 'outriggers') {
    const screws = hasOutrigger(input)
      ? [
          {
            at: input.axes.at(input.axes.slopeAt(input.wall.studOut_m, n) + 0.1, n),
            name: 'Screws of the outriggers',
            how: 'Each goes through the membrane: gasket or liquid flashing under the outrigger.',
          },
        ]
      : [];
    return {
      path: 'air-barrier',
      points: [points],
      joints: numbered([
        wallStart(input, 'Roof membrane laps the wall barrier', lapFoot(input)),
        { at: corner, name: 'Fold over the corner', how: 'One sheet, no cut, over an eased deck edge.' },
        ...screws,
        field,
      ]),
    };
  }
  const tails = piercings(input).map((p) => ({
    at: p.at,
    name: `Blocking to each ${p.what}`,
    how: `Both sides of every tail, ${String(p.count)} tails along the eaves: sealant or foam, then look for light.`,
  }));
  return {
    path: 'air-barrier',
    points: [points],
    joints: numbered([
      wallStart(input, 'Wall barrier to blocking', point(0, input.wall.plate_m)),
      ...tails,
      {
        at: point(0, input.axes.levelAt(0, 0)),
        name: 'Blocking to the underside of the deck',
        how: 'A continuous bead, set before the deck or foamed from outside.',
      },
      {
        at: corner,
        name: 'Deck joints at the wall line to the membrane',
        how: 'Tape or fill every joint of the deck over the blocking; the membrane is stuck down across the line.',
      },
      field,
    ]),
  };
}

/** Water: down the covering, over the drip edge; the underlayment catches what gets through. */
export function waterWalk(input: EdgeInput): Walk {
  const { axes, planes } = input;
  const top = input.stack.at(-1)?.high_m ?? planes.fasciaTop_m;
  const on = (n: number, from: 'cut' | 'face'): Point => axes.at(slopeOn(planes[from], n, axes), n);
  const under = planes.fasciaTop_m;
  const n = membrane_n(input);
  return {
    path: 'water',
    points: [
      [on(top, 'cut'), on(top, 'face')],
      [on(under, 'cut'), on(under, 'face')],
    ],
    joints: numbered([
      { at: on(top, 'cut'), name: 'Covering', how: 'Sheds nearly all water.' },
      {
        at: axes.at(axes.slopeAt(0, under), under),
        name: 'Underlayment and ice barrier',
        how: 'Second line; laps face down the slope.',
      },
      { at: on(under, 'face'), name: 'Drip edge', how: 'At the eave the sheets lie over the metal.' },
      {
        at: axes.at(axes.slopeAt(0, n), n),
        name: 'Deck membrane',
        how: 'Last line while the roof is open and after.',
      },
    ]),
  };
}

/** Drying: out through the vented gap, or through the covering; in through the ceiling where it is open. */
export function dryingWalk(input: EdgeInput): Walk {
  const { axes, planes, gap, candidate } = input;
  const joints: Omit<Joint, 'number'>[] = [];
  const points: Point[][] = [];
  const x = input.wall.inner_m + 0.35 * input.view.inside_m;
  if (gap !== null) {
    const mid = (gap.low_m + gap.high_m) / 2;
    points.push([
      axes.at(slopeOn(planes.behindFascia, -0.02, axes), -0.02),
      axes.at(slopeOn(planes.behindFascia, mid, axes) + 0.01, mid),
      axes.at(slopeOn(planes.cut, mid, axes), mid),
    ]);
    joints.push(
      {
        at: axes.at(slopeOn(planes.behindFascia, 0, axes), 0),
        name: 'Air intake behind the fascia',
        how: 'Clear slot along the whole eave, closed with insect screen.',
      },
      {
        at: axes.at(slopeOn(planes.cut, mid, axes) - 0.1, mid),
        name: 'Vented space',
        how: 'Open from eave to ridge; nothing may block it.',
      },
    );
  }
  if (candidate.drying.path === 'both' || candidate.drying.path === 'inward') {
    const room = point(x, axes.levelAt(x, -input.framingDepth_m) - 0.05);
    points.push([point(x, axes.levelAt(x, 0)), room]);
    joints.push({
      at: point(x, axes.levelAt(x, 0)),
      name: 'Deck to room',
      how: 'Inward through fill and ceiling.',
    });
  }
  return { path: 'drying', points, joints: numbered(joints) };
}

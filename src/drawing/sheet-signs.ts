/** Small signs in free places of the sheet: slope triangle, inside and outside. */
import type { DetailModel, WordPlace } from './edge-model.ts';
import type { System } from '../measures.ts';
import { add, between, boxInside, boxOf, point, times, type Box, type Point } from './geometry.ts';
import { group, pen, polyline, text, textBox, type Shape } from './shapes.ts';
import { toPaper, type Placement } from './sheet-section.ts';
import type { Taken } from './taken.ts';

export interface SignContext {
  readonly edge: DetailModel;
  readonly placement: Placement;
  readonly system: System;
  readonly size_mm: number;
  readonly sheet: Box;
  readonly pitch_rise_per_12: number;
}

/** [-] run to which a roof pitch is stated: rise in 12. */
const PITCH_RUN = 12;
const LONGEST_LEG_mm = 11;
const OFF_ROOF_mm = 3.5;

/** A right triangle on the roof's line with its run and rise; in SI with its angle. */
function slopeTriangle(context: SignContext, at: Point): Shape[] {
  const { edge, placement, system, size_mm, pitch_rise_per_12: rise } = context;
  const up = edge.axes.angle_rad;
  const foot = add(toPaper(placement, at), point(-OFF_ROOF_mm * Math.sin(up), -OFF_ROOF_mm * Math.cos(up)));
  const run_mm = LONGEST_LEG_mm / Math.max(1, rise / PITCH_RUN);
  const top = add(foot, point(run_mm, -run_mm * Math.tan(up)));
  const corner = point(foot.x, top.y);
  const thin = pen(0.25, 'dimension');
  const figure = (value: number): string => String(Math.round(value * 100) / 100);
  const shapes: Shape[] = [polyline([foot, top, corner, foot], thin)];
  if (system === 'SI') {
    const angle = `${figure((up * 180) / Math.PI)}°`;
    return [
      ...shapes,
      text(point(corner.x - 1, corner.y + size_mm * 0.5), angle, { size_mm, anchor: 'end' }),
    ];
  }
  return [
    ...shapes,
    text(point((corner.x + top.x) / 2, corner.y - 1), String(PITCH_RUN), { size_mm, anchor: 'middle' }),
    text(point(corner.x - 1, (corner.y + foot.y) / 2 + size_mm * 0.3), figure(rise), {
      size_mm,
      anchor: 'end',
    }),
  ];
}

/** [mm] Air around the figures of the slope, so that they are not read with a figure beside them. */
const SLOPE_AIR_mm = 3;

const padded = (box: Box, air_mm: number): Box => ({
  x: box.x - air_mm,
  y: box.y - air_mm,
  width: box.width + 2 * air_mm,
  height: box.height + 2 * air_mm,
});

function firstFree(
  choices: readonly (readonly Shape[])[],
  sheet: Box,
  taken: Taken,
  air_mm: number,
): readonly Shape[] {
  return (
    choices.find((shapes) =>
      shapes.every((shape) => {
        const box =
          shape.kind === 'text' ? textBox(shape) : shape.kind === 'polyline' ? boxOf(shape.points) : null;
        return (
          box === null ||
          (boxInside(box, sheet) && !taken.hasText(padded(box, air_mm)) && !taken.hasLine(box))
        );
      }),
    ) ?? []
  );
}

const ROOM_STEPS = [0.5, 0.35, 0.65, 0.2, 0.8];

/** Choices for a word in its strip, from near the wall to far from it. */
function wordChoices(context: SignContext, place: WordPlace): Shape[][] {
  const { placement, size_mm } = context;
  const isRight = place.side === 'right';
  const top = toPaper(placement, point(0, place.top)).y + (isRight ? 0 : 2 * size_mm);
  const bottom = toPaper(placement, point(0, place.bottom)).y;
  const x = toPaper(placement, point(place.x, 0)).x;
  return (isRight ? INSIDE_OFF_mm : OUTSIDE_OFF_mm).flatMap((off_mm) =>
    ROOM_STEPS.map((share) => {
      const at = add(point(isRight ? x + off_mm : x - off_mm, top), times(point(0, bottom - top), share));
      return [text(at, place.words, { size_mm, anchor: 'middle', ink: 'softText' })];
    }),
  );
}

/** [mm] Steps away from the wall. */
const INSIDE_OFF_mm = [14, 22, 32];
const OUTSIDE_OFF_mm = [12, 20, 28];

export function signShapes(context: SignContext, taken: Taken): Shape[] {
  const { edge, sheet } = context;
  const { roofLine } = edge;
  const slopes =
    roofLine === null
      ? []
      : ROOM_STEPS.map((share) => slopeTriangle(context, between(roofLine[0], roofLine[1], share)));
  const sign = (id: string, choices: readonly (readonly Shape[])[], air_mm = 0): Shape[] => {
    const shapes = firstFree(choices, sheet, taken, air_mm);
    taken.add(shapes);
    return shapes.length > 0 ? [group('sign', id, shapes)] : [];
  };
  return [
    ...sign('slope', slopes, SLOPE_AIR_mm),
    ...edge.wordPlaces.flatMap((place) => sign(place.words.toLowerCase(), wordChoices(context, place))),
  ];
}

/** Small signs in free places of the sheet: slope triangle, inside and outside. */
import type { System } from '../measures.ts';
import { add, boxInside, boxOf, point, times, type Box, type Point } from './geometry.ts';
import type { EaveEdge } from './edge.ts';
import { group, pen, polyline, text, textBox, type Shape } from './shapes.ts';
import { toPaper, type Placement } from './sheet-section.ts';
import type { Taken } from './taken.ts';

export interface SignContext {
  readonly edge: EaveEdge;
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
function slopeTriangle(context: SignContext, s: number): Shape[] {
  const { edge, placement, system, size_mm, pitch_rise_per_12: rise } = context;
  const up = edge.axes.angle_rad;
  const foot = add(
    toPaper(placement, edge.axes.at(s, edge.buildUp_m)),
    point(-OFF_ROOF_mm * Math.sin(up), -OFF_ROOF_mm * Math.cos(up)),
  );
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

function firstFree(choices: readonly (readonly Shape[])[], sheet: Box, taken: Taken): readonly Shape[] {
  return (
    choices.find((shapes) =>
      shapes.every((shape) => {
        const box =
          shape.kind === 'text' ? textBox(shape) : shape.kind === 'polyline' ? boxOf(shape.points) : null;
        return box === null || (boxInside(box, sheet) && !taken.hasText(box) && !taken.hasLine(box));
      }),
    ) ?? []
  );
}

const ROOM_STEPS = [0.5, 0.35, 0.65, 0.2, 0.8];

export function signShapes(context: SignContext, taken: Taken): Shape[] {
  const { edge, placement, size_mm, sheet } = context;
  const { input } = edge;
  const start = edge.axes.slopeAt(-input.given.overhang.eave_m, edge.buildUp_m);
  const end = edge.axes.slopeAt(input.wall.inner_m + input.view.inside_m, edge.buildUp_m);
  const slopes = ROOM_STEPS.map((share) => slopeTriangle(context, start + (end - start) * share));
  const words = (name: string, at: Point): Shape[] => [
    text(at, name, { size_mm, anchor: 'middle', ink: 'softText' }),
  ];
  const bottom = toPaper(placement, point(0, input.wall.bottom_m)).y;
  const top = toPaper(placement, point(0, input.wall.plate_m)).y;
  const across = toPaper(placement, point(input.wall.inner_m, 0)).x;
  const sign = (id: string, choices: readonly (readonly Shape[])[]): Shape[] => {
    const shapes = firstFree(choices, sheet, taken);
    taken.add(shapes);
    return shapes.length > 0 ? [group('sign', id, shapes)] : [];
  };
  const inside = [14, 22, 32].flatMap((dx) =>
    ROOM_STEPS.map((share) =>
      words('Inside', add(point(across + dx, top), times(point(0, bottom - top), share))),
    ),
  );
  const fascia = edge.measures.find((m) => m.id === 'fascia');
  const eave = (fascia === undefined ? top : toPaper(placement, fascia.from).y) + 2 * size_mm;
  const outsideEdge = toPaper(placement, point(input.wall.cladding_m, 0)).x;
  const outside = [12, 20, 28].flatMap((dx) =>
    ROOM_STEPS.map((share) =>
      words('Outside', add(point(outsideEdge - dx, eave), times(point(0, bottom - eave), share))),
    ),
  );
  return [...sign('slope', slopes), ...sign('inside', inside), ...sign('outside', outside)];
}

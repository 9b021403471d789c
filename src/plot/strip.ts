/** The section of the roof as a strip of layers to scale by thickness, numbered inside to outside. */
import { fillOf } from '../drawing/sheet-section.ts';
import { hatchOf } from '../drawing/edge-stack.ts';
import { hatch, type HatchName } from '../drawing/hatch.ts';
import { nondecreasing } from '../drawing/labels.ts';
import { point } from '../drawing/geometry.ts';
import { group, line, pen, polygon, text, type Shape } from '../drawing/shapes.ts';
import { rectangle } from './marks.ts';

export interface Band {
  readonly id: string;
  readonly name: string;
  /** Row id of the materials table, or null for an air space. */
  readonly material: string | null;
  /** [m] Depths of its faces from the inside surface. */
  readonly from_m: number;
  readonly to_m: number;
}

/** [mm] Below this thickness on paper a hatch would fill up. */
const LEAST_HATCHED_mm = 1.1;
/** [rad] The layers stand upright in the strip; loops of a fill deeper than the strip is high lie down, to be seen. */
const UPRIGHT = Math.PI / 2;
const grainOf = (sign: HatchName, width_mm: number, height_mm: number): number =>
  sign === 'fibrous' && width_mm > height_mm ? 0 : UPRIGHT;

/** Places of numbers as near to their layers as a spacing allows, within two ends. */
export function spread(wanted: readonly number[], spacing: number, low: number, high: number): number[] {
  const room = wanted.length < 2 ? spacing : Math.min(spacing, (high - low) / (wanted.length - 1));
  const last = high - room * (wanted.length - 1);
  return nondecreasing(wanted.map((value, i) => value - i * room)).map(
    (value, i) => Math.max(low, Math.min(last, value)) + i * room,
  );
}

/** The hatched bands between two heights; `at` gives the place of a depth. */
export const bandShapes = (
  bands: readonly Band[],
  at: (depth_m: number) => number,
  top: number,
  bottom: number,
): Shape[] =>
  bands.map((band) => {
    const left = at(band.from_m);
    const right = at(band.to_m);
    const sign = hatchOf(band.material);
    const corners = rectangle(left, top, right, bottom);
    const isThin = right - left < LEAST_HATCHED_mm;
    return group(
      'part cut',
      band.id,
      right - left < 0.05
        ? [line(point(left, top), point(left, bottom), pen(0.5))]
        : [
            polygon(corners, null, fillOf[sign]),
            ...(isThin ? [] : hatch(sign, corners, grainOf(sign, right - left, bottom - top))),
            polygon(corners, pen(0.25), null),
          ],
      { title: band.name },
    );
  });

/** A row of numbers above the strip, each with a leader to its layer. */
export function bandNumbers(
  bands: readonly Band[],
  at: (depth_m: number) => number,
  baseline: number,
  stripTop: number,
  ends: readonly [number, number],
  size_mm: number,
): Shape[] {
  const middles = bands.map((band) => (at(band.from_m) + at(band.to_m)) / 2);
  const places = spread(middles, size_mm * 1.45, ends[0], ends[1]);
  return bands.flatMap((_, i) => {
    const x = places[i] ?? 0;
    return [
      text(point(x, baseline), String(i + 1), { size_mm, anchor: 'middle' }),
      line(point(x, baseline + 0.6), point(middles[i] ?? 0, stripTop), pen(0.18)),
    ];
  });
}

/** Faces of the layers as hairlines through a panel. */
export const faceLines = (
  bands: readonly Band[],
  at: (depth_m: number) => number,
  top: number,
  bottom: number,
): Shape[] =>
  bands
    .slice(1)
    .map((band) => line(point(at(band.from_m), top), point(at(band.from_m), bottom), pen(0.18, 'hatch')));

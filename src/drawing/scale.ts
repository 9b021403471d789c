/** Standard drawing scales and the scale bar. */
import type { System } from '../measures.ts';
import { METERS_PER_FOOT, METERS_PER_INCH } from '../units.ts';
import { point, type Point } from './geometry.ts';
import { lengthText } from './lengths.ts';
import { line, pen, polygon, text, type Shape } from './shapes.ts';

export interface Scale {
  /** 1 on paper to this many in the building. */
  readonly denominator: number;
  readonly words: string;
}

/** Architect's scales of North America (common practice), largest first. */
export const inchScales: readonly Scale[] = [
  { denominator: 4, words: `3" = 1'-0"` },
  { denominator: 8, words: `1 1/2" = 1'-0"` },
  { denominator: 12, words: `1" = 1'-0"` },
  { denominator: 16, words: `3/4" = 1'-0"` },
  { denominator: 24, words: `1/2" = 1'-0"` },
  { denominator: 32, words: `3/8" = 1'-0"` },
  { denominator: 48, words: `1/4" = 1'-0"` },
  { denominator: 96, words: `1/8" = 1'-0"` },
];

/** Reduction scales of ISO 5455:1979 (known: memory) with 1:25, usual on site. */
export const metricScales: readonly Scale[] = [5, 10, 20, 25, 50, 100].map((denominator) => ({
  denominator,
  words: `1:${String(denominator)}`,
}));

export const scalesOf = (system: System): readonly Scale[] => (system === 'IP' ? inchScales : metricScales);

const MILLIMETERS_PER_METER = 1000;
export const paperPerMeter_mm = (scale: Scale): number => MILLIMETERS_PER_METER / scale.denominator;

/** Steps of the scale bar, largest first. */
const barSteps_m: Readonly<Record<System, readonly number[]>> = {
  IP: [
    10 * METERS_PER_FOOT,
    5 * METERS_PER_FOOT,
    2 * METERS_PER_FOOT,
    METERS_PER_FOOT,
    6 * METERS_PER_INCH,
    3 * METERS_PER_INCH,
    METERS_PER_INCH,
  ],
  SI: [2, 1, 0.5, 0.2, 0.1, 0.05],
};

const BAR_PARTS = 4;
const BAR_HEIGHT_mm = 1.6;

/** A bar of four parts, alternately full and empty, right-aligned at the given point. */
export function scaleBar(
  right: Point,
  longest_mm: number,
  scale: Scale,
  system: System,
  size_mm: number,
): Shape[] {
  const per_m = paperPerMeter_mm(scale);
  const steps = barSteps_m[system];
  const step_m = steps.find((step) => step * per_m * BAR_PARTS <= longest_mm) ?? steps.at(-1) ?? 1;
  const step_mm = step_m * per_m;
  const left = right.x - step_mm * BAR_PARTS;
  const shapes: Shape[] = [];
  for (let i = 0; i < BAR_PARTS; i += 1) {
    const x = left + i * step_mm;
    shapes.push(
      polygon(
        [
          point(x, right.y),
          point(x + step_mm, right.y),
          point(x + step_mm, right.y + BAR_HEIGHT_mm),
          point(x, right.y + BAR_HEIGHT_mm),
        ],
        pen(0.18),
        i % 2 === 0 ? 'solid' : 'paper',
      ),
    );
  }
  const label = (at: number, words: string, anchor: 'start' | 'middle' | 'end'): void => {
    shapes.push(
      line(point(left + at * step_mm, right.y), point(left + at * step_mm, right.y - 0.8), pen(0.18)),
      text(point(left + at * step_mm, right.y - 1.6), words, { size_mm, anchor }),
    );
  };
  label(0, '0', 'start');
  label(BAR_PARTS, lengthText(step_m * BAR_PARTS, system), 'end');
  return shapes;
}

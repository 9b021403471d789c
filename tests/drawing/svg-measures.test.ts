// @vitest-environment jsdom
import { describe, expect, it } from 'vitest';
import { details, type Detail } from '../../src/drawing/edge-model.ts';
import { distance, point, type Point } from '../../src/drawing/geometry.ts';
import { detailSheet, type Drawing } from '../../src/drawing/sheet.ts';
import { toSvg } from '../../src/drawing/svg.ts';
import { ordinary } from './cases.ts';
import { sketch, type Sketch } from './fixture.ts';

const systems = ['IP', 'SI'] as const;
/** [m] The file must agree with the evaluation to a tenth of a millimeter. */
const TENTH_MM = 0.0001;
const MILLIMETERS_PER_METER = 1000;

const drawn = (wanted: Sketch, detail: Detail, system: 'IP' | 'SI'): Drawing => {
  const { evaluation, candidate } = sketch(wanted);
  return detailSheet(evaluation, candidate, detail, { system, width_mm: 300, height_mm: 200 });
};

/** Runs of a path's points in millimeters of paper. */
const runsOf = (path: Element): Point[][] =>
  (path.getAttribute('d') ?? '')
    .split('M')
    .slice(1)
    .map((run) =>
      run
        .replace('Z', '')
        .split('L')
        .map((pair) => {
          const [x = NaN, y = NaN] = pair.trim().split(' ').map(Number);
          return point(x, y);
        }),
    );

const cases = Object.entries(ordinary).flatMap(([name, wanted]) =>
  details.flatMap((detail) => systems.map((system) => [name, detail, system, wanted] as const)),
);

describe.each(cases)('SVG of %s, %s, %s, measured back from the file', (_, detail, system, wanted) => {
  const drawing = drawn(wanted, detail, system);
  const page = new DOMParser().parseFromString(toSvg(drawing), 'image/svg+xml');
  const meters = (paper_mm: number): number => (paper_mm * drawing.denominator) / MILLIMETERS_PER_METER;
  const parts = (id: string): Point[][] =>
    [...page.querySelectorAll(`[data-part="${id}"] > path`)].flatMap(runsOf);

  it('is as large on paper as it says', () => {
    expect(page.documentElement.getAttribute('width')).toBe('300mm');
    expect(page.documentElement.getAttribute('viewBox')).toBe('0 0 300 200');
  });

  it('has layers as thick as in the evaluation within 0.1 mm', () => {
    const { axes } = drawing.edge;
    const across = ({ x, y }: Point): number => -x * Math.sin(axes.angle_rad) - y * Math.cos(axes.angle_rad);
    const { candidate } = sketch(wanted);
    const shown = candidate.layers.filter(({ role }) =>
      ['deck', 'insulation', 'upper-deck', 'covering'].includes(role),
    );
    for (const layer of shown) {
      // A board that lies between outriggers is cut behind the one that is drawn.
      const [outline = []] = [...parts(layer.id), ...parts(`${layer.id}-behind-outrigger`)];
      const heights = outline.map(across);
      const thickness_m = meters(Math.max(...heights) - Math.min(...heights));
      expect(Math.abs(thickness_m - layer.thickness_m), layer.id).toBeLessThan(TENTH_MM);
    }
  });

  it('has dimension lines as long as the values that stand on them within 0.1 mm', () => {
    for (const m of drawing.edge.measures.filter(({ way }) => way !== 'listed')) {
      const ticks = parts(`dimension-${m.id}`).flatMap(([a, b]): Point[] => {
        if (a === undefined || b === undefined) return [];
        const isTick = Math.abs(a.x - b.x + (a.y - b.y)) < 2e-3 && Math.abs(a.x - b.x) > 1;
        return isTick ? [point((a.x + b.x) / 2, (a.y + b.y) / 2)] : [];
      });
      expect(ticks, m.id).toHaveLength(2);
      const [a, b] = ticks;
      if (a !== undefined && b !== undefined)
        expect(Math.abs(meters(distance(a, b)) - m.value_m), m.id).toBeLessThan(TENTH_MM);
    }
  });
});

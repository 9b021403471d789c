/** Read back from the shapes: every point lies where its number says, to a tenth of a millimeter. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxOf, type Point } from '../../src/drawing/geometry.ts';
import { leaves, type CircleShape, type Shape, type TextShape } from '../../src/drawing/shapes.ts';
import { measures, type System } from '../../src/measures/scales.ts';
import { airLeakPlot, drawnSurface, side_mm } from '../../src/plot/airLeak.ts';
import { valueAxis } from '../../src/plot/axis.ts';
import { deckMonthsPlot, wetMonths } from '../../src/plot/deckMonths.ts';
import { dryingPlot, reach_months } from '../../src/plot/drying.ts';
import { heatLossPlot } from '../../src/plot/heatLoss.ts';
import { winterMiddle, type Plot } from '../../src/plot/plot.ts';
import { bandsOf, profilePlot } from '../../src/plot/profile.ts';
import { spread } from '../../src/plot/strip.ts';
import { anyAirLeak, anyDeckMonths, anyDrying, anyHeatLoss, anyProfile } from './fixture.ts';

const TENTH_mm = 0.1;
const systems = fc.constantFrom<System>('IP', 'SI');
const leavesOf = (plot: Plot): Exclude<Shape, { kind: 'group' }>[] => [...leaves(plot.picture?.shapes ?? [])];

const number = (words: string): number => Number(words.replace('−', '-').replaceAll(',', ''));
/** Figures of the vertical axis of a panel: right-aligned texts that are numbers, from one head to the next. */
function figures(plot: Plot): { value: number; y: number; x: number }[] {
  return leavesOf(plot)
    .filter((shape): shape is TextShape => shape.kind === 'text' && shape.anchor === 'end')
    .map((shape) => ({ value: number(shape.text), y: shape.at.y - shape.size_mm / 4, x: shape.at.x }));
}
/** The line through the first and the last figure of an axis: millimeters to the value shown. */
function readerOf(marks: readonly { value: number; y: number }[]): (y: number) => number {
  const first = marks[0];
  const last = marks.at(-1);
  if (first === undefined || last === undefined || first === last) throw new Error('no axis');
  return (y) => first.value + ((y - first.y) / (last.y - first.y)) * (last.value - first.value);
}
/** Figures of each panel, from top to bottom: values fall within a panel and jump up at the next. */
function panels(plot: Plot): { value: number; y: number }[][] {
  const found: { value: number; y: number }[][] = [];
  let low = -Infinity;
  for (const mark of figures(plot)) {
    if (mark.value <= low || found.length === 0) found.push([]);
    found.at(-1)?.push(mark);
    low = mark.value;
  }
  return found;
}
const circlesAt = (plot: Plot, right: number): Point[] =>
  leavesOf(plot)
    .filter((shape): shape is CircleShape => shape.kind === 'circle')
    .map(({ center }) => center)
    .filter(({ x }) => x < right);

/** [mm] Right edge of the panels of a wide plot: the paper less margin and room for names. */
const PANEL_RIGHT_mm = 171 - 3 - 41;

describe('positions read back from the shapes', () => {
  it('the deck’s twelve points stand at its temperatures, the winter in the middle', () => {
    fc.assert(
      fc.property(anyDeckMonths, systems, (data, system) => {
        const plot = deckMonthsPlot(data, { system, size: 'wide' });
        const [upper = [], lower = []] = panels(plot);
        const circles = circlesAt(plot, PANEL_RIGHT_mm);
        expect(circles).toHaveLength(24);
        const perUnit = (marks: readonly { value: number; y: number }[]): number => {
          const [a, b] = [marks[0], marks.at(-1)];
          return Math.abs(((b?.y ?? 0) - (a?.y ?? 0)) / ((b?.value ?? 0) - (a?.value ?? 1)));
        };
        winterMiddle.forEach((month, i) => {
          const wanted = measures.temperature[system].shown(data.plane.temperature_C[month] ?? 0);
          const read = readerOf(upper)(circles[i]?.y ?? 0);
          expect(Math.abs(read - wanted) * perUnit(upper)).toBeLessThan(TENTH_mm);
          const bears = readerOf(lower)(circles[12 + i]?.y ?? 0);
          expect(Math.abs(bears - (data.plane.maximumIndoor_pct[month] ?? 0)) * perUnit(lower)).toBeLessThan(
            TENTH_mm,
          );
        });
        const filled = leavesOf(plot).filter((s) => s.kind === 'circle' && s.fill === 'solid');
        expect(filled).toHaveLength(wetMonths(data).length);
      }),
    );
  });

  it('the squares of leak and diffusion have areas in the ratio of the water', () => {
    fc.assert(
      fc.property(anyAirLeak, systems, (leak, system) => {
        const plot = airLeakPlot(leak, { system, size: 'wide' });
        const squares = leavesOf(plot)
          .filter((s) => s.kind === 'polygon' && s.fill === 'covering')
          .map((s) => boxOf(s.kind === 'polygon' ? s.points : []));
        for (const { width, height } of squares) expect(width).toBeCloseTo(height, 6);
        const { seasonLeak_kg, seasonDiffusion_kg } = drawnSurface(leak);
        if (seasonLeak_kg > 0 && seasonDiffusion_kg > 0) {
          const [a, b] = squares.map(({ width }) => width ** 2);
          expect((a ?? 0) * seasonDiffusion_kg).toBeCloseTo((b ?? 0) * seasonLeak_kg, 3);
        }
      }),
    );
    expect(side_mm(4, 100)).toBe(20);
    expect(side_mm(-1, 100)).toBe(0);
  });

  it('the bars of heat lost follow each other and end at the sum of the shares', () => {
    fc.assert(
      fc.property(anyHeatLoss, fc.constantFrom('wide' as const, 'narrow' as const), (data, size) => {
        const plot = heatLossPlot(data, { system: 'SI', size });
        const bars = leavesOf(plot)
          .filter((s) => s.kind === 'polygon' && s.fill === 'covering')
          .map((s) => boxOf(s.kind === 'polygon' ? s.points : []));
        const per = bars.reduce((sum, { width }) => sum + width, 0) / 100;
        bars.forEach((bar, i) => {
          expect(Math.abs(bar.width - (data.bridges[i]?.share_pct ?? 0) * per)).toBeLessThan(TENTH_mm);
          const before = bars[i - 1];
          if (before) expect(bar.x).toBeCloseTo(before.x + before.width, 6);
        });
      }),
    );
  });

  it('the layers of the strip are to scale by thickness and fill the depth', () => {
    fc.assert(
      fc.property(anyProfile, systems, (data, system) => {
        const plot = profilePlot(data, { system, size: 'wide' });
        const groups = (plot.picture?.shapes ?? []).filter((s) => s.kind === 'group');
        const bands = bandsOf(data);
        expect(groups).toHaveLength(data.layers.length);
        const whole = bands.at(-1)?.to_m ?? 1;
        const left = 3 + 11;
        bands.forEach((band, i) => {
          const group = groups[i];
          if (group?.kind !== 'group') throw new Error('no band');
          const first = [...leaves(group.shapes)][0];
          const box = boxOf(
            first?.kind === 'polygon' ? first.points : first?.kind === 'line' ? [first.from, first.to] : [],
          );
          const at = (depth: number): number => left + (depth / whole) * (PANEL_RIGHT_mm - left);
          expect(Math.abs(box.x - at(band.from_m))).toBeLessThan(TENTH_mm);
          expect(Math.abs(box.x + box.width - at(band.to_m))).toBeLessThan(TENTH_mm);
        });
      }),
    );
  });

  it('a line ends in a filled point where it is dry', () => {
    fc.assert(
      fc.property(anyDrying, (data) => {
        const plot = dryingPlot(data, { system: 'SI', size: 'wide' });
        const [upper = []] = panels(plot);
        const filled = leavesOf(plot).filter(
          (s) => (s.kind === 'circle' || s.kind === 'polygon') && s.fill === 'solid' && s.pen !== null,
        );
        const dry = data.lines.filter(({ drying }) => drying.monthsToDry !== null);
        expect(filled).toHaveLength(dry.length);
        const left = 3 + 11;
        const reach = reach_months(data.lines);
        const zero = upper.find(({ value }) => value === 0)?.y ?? 0;
        dry.forEach(({ drying }, i) => {
          const shape = filled[i];
          const box = boxOf(shape?.kind === 'polygon' ? shape.points : []);
          const center =
            shape?.kind === 'circle' ? shape.center : { x: box.x + box.width / 2, y: box.y + box.height / 2 };
          const wanted = left + ((drying.monthsToDry ?? 0) / reach) * (PANEL_RIGHT_mm - left);
          expect(Math.abs(center.x - wanted)).toBeLessThan(TENTH_mm);
          expect(Math.abs(center.y - zero)).toBeLessThan(2 * TENTH_mm);
        });
      }),
    );
  });
});

describe('an axis', () => {
  it('has ticks at round numbers of the unit shown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 0, noNaN: true }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        systems,
        (low, span, system) => {
          const axis = valueAxis({
            title: 'T',
            kind: 'temperature',
            system,
            values: [low, low + span],
            from: 50,
            to: 0,
            ticks: 5,
          });
          expect(axis.ticks.length).toBeGreaterThanOrEqual(2);
          const step = (axis.ticks[1] ?? 0) - (axis.ticks[0] ?? 0);
          const leading = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
          expect([1, 2, 5, 10].some((each) => Math.abs(each - leading) < 1e-6)).toBe(true);
          for (const tick of axis.ticks) expect(number(axis.label(tick))).toBeCloseTo(tick, 6);
          expect(axis.title).toBe(system === 'IP' ? 'T, °F' : 'T, °C');
        },
      ),
    );
  });

  it('stands when all values are the same', () => {
    const axis = valueAxis({
      title: '',
      kind: 'humidity',
      system: 'SI',
      values: [0, 0],
      from: 10,
      to: 0,
      ticks: 5,
    });
    expect(axis.at(0)).toBeCloseTo(10);
    expect(axis.ticks.every(Number.isFinite)).toBe(true);
  });
});

describe('numbers above the strip', () => {
  it('keep their order, their spacing where there is room, and the ends', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 14 }),
        (at) => {
          const places = spread(
            [...at].sort((a, b) => a - b),
            4,
            0,
            100,
          );
          places.forEach((place, i) => {
            expect(place).toBeGreaterThanOrEqual(-1e-9);
            expect(place).toBeLessThanOrEqual(100 + 1e-9);
            if (i > 0) expect(place - (places[i - 1] ?? 0)).toBeGreaterThanOrEqual(4 - 1e-9);
          });
        },
      ),
    );
  });
});

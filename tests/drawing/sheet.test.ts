import fc from 'fast-check';
import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import {
  boxesOverlap,
  boxInside,
  segmentsCross,
  type Box,
  type Segment,
} from '../../src/drawing/geometry.ts';
import { leaves, shapeBox, textBox, type GroupShape, type Shape } from '../../src/drawing/shapes.ts';
import { eaveSheet, type Drawing, type SheetOptions } from '../../src/drawing/sheet.ts';
import { toSvg } from '../../src/drawing/svg.ts';
import { anySketch, ordinary } from './cases.ts';
import { sketch, type Sketch } from './fixture.ts';

const WIDE: SheetOptions = { system: 'IP', width_mm: 300, height_mm: 200 };
const PHONE: SheetOptions = { system: 'IP', width_mm: 95, height_mm: 120, isCompact: true };

const draw = (wanted: Sketch, options: SheetOptions): Drawing => {
  const { evaluation, candidate } = sketch(wanted);
  return eaveSheet(evaluation, candidate, options);
};

function* groups(shapes: readonly Shape[]): Generator<GroupShape> {
  for (const shape of shapes) {
    if (shape.kind !== 'group') continue;
    yield shape;
    yield* groups(shape.shapes);
  }
}
const ofMeaning = (drawing: Drawing, meaning: string): GroupShape[] =>
  [...groups(drawing.shapes)].filter((g) => g.meaning === meaning);

const textBoxes = (drawing: Drawing): Box[] =>
  [...leaves(drawing.shapes)].flatMap((shape) => (shape.kind === 'text' ? [textBox(shape)] : []));

const leaders = (drawing: Drawing): Segment[] =>
  ofMeaning(drawing, 'note').flatMap((note) => {
    const [first] = note.shapes;
    return first?.kind === 'line' ? [[first.from, first.to] as const] : [];
  });

const RUNS = { numRuns: 150 };
const anyOptions = fc.record({
  system: fc.constantFrom('IP' as const, 'SI' as const),
  isPhone: fc.boolean(),
});
const optionsOf = (o: { system: 'IP' | 'SI'; isPhone: boolean }): SheetOptions => ({
  ...(o.isPhone ? PHONE : WIDE),
  system: o.system,
});

describe('any eave on a wide or a phone sheet', () => {
  it('has no figure that is not a number and nothing outside the sheet', () => {
    fc.assert(
      fc.property(anySketch, anyOptions, (wanted, o) => {
        const drawing = draw(wanted, optionsOf(o));
        const sheet = { x: 0, y: 0, width: drawing.width_mm, height: drawing.height_mm };
        for (const shape of leaves(drawing.shapes)) {
          const box = shapeBox(shape);
          expect([box.x, box.y, box.width, box.height].every(Number.isFinite), JSON.stringify(shape)).toBe(
            true,
          );
          expect(boxInside(box, sheet), JSON.stringify([shape, box])).toBe(true);
        }
      }),
      RUNS,
    );
  });

  it('has no two texts on each other', () => {
    fc.assert(
      fc.property(anySketch, anyOptions, (wanted, o) => {
        const boxes = textBoxes(draw(wanted, optionsOf(o)));
        boxes.forEach((a, i) => {
          for (const b of boxes.slice(i + 1))
            expect(boxesOverlap(a, b, -0.3), JSON.stringify([a, b])).toBe(false);
        });
      }),
      RUNS,
    );
  });

  it('has no two leaders that cross', () => {
    fc.assert(
      fc.property(anySketch, anyOptions, (wanted, o) => {
        const lines = leaders(draw(wanted, optionsOf(o)));
        lines.forEach((a, i) => {
          for (const b of lines.slice(i + 1)) expect(segmentsCross(a, b), JSON.stringify([a, b])).toBe(false);
        });
      }),
      RUNS,
    );
  });

  it('notes every layer once, numbered inside to outside', () => {
    fc.assert(
      fc.property(anySketch, anyOptions, (wanted, o) => {
        const drawing = draw(wanted, optionsOf(o));
        const noted = ofMeaning(drawing, 'note')
          .map((g) => g.layerId)
          .filter((id) => id !== null);
        expect([...noted].sort()).toEqual(drawing.layers.map((l) => l.id).sort());
        expect(drawing.layers.map((l) => l.mark)).toEqual(drawing.layers.map((_, i) => String(i + 1)));
        expect(drawing.description.length).toBeGreaterThan(drawing.layers.length);
      }),
      RUNS,
    );
  });
});

describe('scale', () => {
  it('is a standard one and the drawn build-up measures true', () => {
    const drawing = draw(ordinary['rafter-overhang'], WIDE);
    expect(drawing.scaleText).toBe(`1 1/2" = 1'-0"`);
    const dimension = ofMeaning(drawing, 'dimension').find((g) => g.id === 'dimension-build-up');
    const ticks = (dimension?.shapes ?? []).filter((s) => s.kind === 'line' && s.pen.width_mm === 0.35);
    const centers = ticks.map((s) =>
      s.kind === 'line' ? { x: (s.from.x + s.to.x) / 2, y: (s.from.y + s.to.y) / 2 } : { x: 0, y: 0 },
    );
    const [a, b] = centers;
    const length_mm = a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0;
    expect(length_mm).toBeCloseTo((drawing.edge.buildUp_m * 1000) / 8, 6);
  });

  it('can be fixed, so that strategies stand side by side at one scale', () => {
    const all = Object.values(ordinary).map((wanted) => draw(wanted, { ...WIDE, denominator: 12 }));
    expect(all.map((d) => d.denominator)).toEqual([12, 12, 12]);
  });

  it('uses letters at least 2.5 mm high', () => {
    const CAPITALS_PER_EM = 0.66;
    for (const options of [WIDE, PHONE])
      for (const shape of leaves(draw(ordinary['flush-outriggers'], options).shapes))
        if (shape.kind === 'text') expect(shape.size_mm * CAPITALS_PER_EM).toBeGreaterThanOrEqual(2.3);
  });

  it('refuses a sheet too small for any scale', () => {
    expect(() => draw(ordinary['rafter-overhang'], { ...PHONE, width_mm: 20, height_mm: 20 })).toThrow(
      RangeError,
    );
  });
});

describe('limit of the roof edge', () => {
  it('is drawn and its margin stands in words when there is one', () => {
    const limited = draw({ ...ordinary['rafter-overhang'], fasciaLimit_m: 0.3 }, WIDE);
    const svg = toSvg(limited);
    expect(svg).toContain('over the limit');
    expect([...leaves(limited.shapes)].some((s) => s.kind === 'line' && s.pen.ink === 'limit')).toBe(true);
    const free = draw({ ...ordinary['rafter-overhang'], fasciaLimit_m: null }, WIDE);
    expect([...leaves(free.shapes)].some((s) => s.kind === 'line' && s.pen.ink === 'limit')).toBe(false);
  });
});

describe('SVG', () => {
  const parse = (svg: string): Document => new JSDOM(svg, { contentType: 'image/svg+xml' }).window.document;

  it('is well formed, self-contained and named', () => {
    fc.assert(
      fc.property(anySketch, anyOptions, (wanted, o) => {
        const svg = toSvg(draw(wanted, optionsOf(o)));
        const root = parse(svg).documentElement;
        expect(root.getAttribute('role')).toBe('img');
        expect(root.querySelector(':scope > title')?.textContent).toContain('Eave section');
        expect(root.querySelector(':scope > desc')?.textContent).toContain('1. ');
        expect(svg).not.toMatch(/NaN|Infinity|undefined|href=|url\(/);
      }),
      { numRuns: 25 },
    );
  });

  it('escapes what a user may have typed', () => {
    const { evaluation, candidate } = sketch(ordinary['rafter-overhang']);
    const nasty = '<b>"&\'\u0000x';
    const layers = candidate.layers.map((l) => (l.id === 'deck' ? { ...l, name: nasty } : l));
    const svg = toSvg(eaveSheet(evaluation, { ...candidate, layers }, WIDE));
    expect(svg).not.toContain('<b>');
    expect(parse(svg).documentElement.querySelector('[data-part="deck"] title')?.textContent).toBe(`<b>"&'x`);
  });

  it('marks highlighted layers by class and by a heavier line', () => {
    const drawing = draw(ordinary['rafter-overhang'], { ...WIDE, highlight: ['insulation-2'] });
    const lit = [...groups(drawing.shapes)].filter((g) => g.isHighlighted);
    expect(new Set(lit.map((g) => g.layerId))).toEqual(new Set(['insulation-2']));
    expect(toSvg(drawing)).toContain('is-highlighted');
  });

  it('draws a walk with one numbered stop per joint', () => {
    const drawing = draw(ordinary['flush-outriggers'], { ...WIDE, walk: 'air-barrier' });
    const [walk] = ofMeaning(drawing, 'walk air-barrier');
    expect(walk?.shapes.filter((s) => s.kind === 'text')).toHaveLength(drawing.edge.airWalk.joints.length);
  });
});

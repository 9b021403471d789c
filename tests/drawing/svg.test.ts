// @vitest-environment jsdom
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { details, detailNames, type Detail } from '../../src/drawing/edge-model.ts';
import { detailSheet, eaveSheet, type Drawing, type SheetOptions } from '../../src/drawing/sheet.ts';
import { toSvg } from '../../src/drawing/svg.ts';
import { anySketch, ordinary } from './cases.ts';
import { sketch, type Sketch } from './fixture.ts';
import { groups } from './marks.ts';

const WIDE: SheetOptions = { system: 'IP', width_mm: 300, height_mm: 200 };

const draw = (wanted: Sketch, options: SheetOptions, detail: Detail = 'eave'): Drawing => {
  const { evaluation, candidate } = sketch(wanted);
  return detailSheet(evaluation, candidate, detail, options);
};

describe('SVG', () => {
  const parse = (svg: string): Document => new DOMParser().parseFromString(svg, 'image/svg+xml');

  it('is well formed, self-contained and named', () => {
    fc.assert(
      fc.property(anySketch, fc.constantFrom(...details), (wanted, detail) => {
        const svg = toSvg(draw(wanted, WIDE, detail));
        const root = parse(svg).documentElement;
        expect(root.getAttribute('role')).toBe('img');
        expect(root.querySelector(':scope > title')?.textContent).toContain(`${detailNames[detail]} section`);
        expect(root.querySelector(':scope > desc')?.textContent).toContain('1. ');
        expect(svg).not.toMatch(/NaN|Infinity|undefined|href=|url\(/);
      }),
      { numRuns: 20 },
    );
  }, 60_000);

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
    const walk = [...groups(drawing.shapes)].find((g) => g.meaning === 'walk air-barrier');
    expect(walk?.shapes.filter((s) => s.kind === 'text')).toHaveLength(drawing.edge.airWalk.joints.length);
  });

  const goldens = Object.entries(ordinary).flatMap(([name, wanted]) =>
    details.map((detail) => [`${name}-${detail}`, wanted, detail] as const),
  );
  it.each(goldens)('of %s is the golden one', async (name, wanted, detail) => {
    await expect(toSvg(draw(wanted, WIDE, detail)).replaceAll('><', '>\n<')).toMatchFileSnapshot(
      `golden/${name}.svg`,
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxesOverlap, boxInside } from '../../src/drawing/geometry.ts';
import { leaves, textBox, type Shape } from '../../src/drawing/shapes.ts';
import { measureKinds, show, unitOf, type System } from '../../src/measures.ts';
import { headOf, type Plot, type PlotOptions } from '../../src/plot/plot.ts';
import { anyPlots } from './fixture.ts';

/** As many as the look rules ask for. */
const RUNS = { numRuns: 200 };
const anyOptions: fc.Arbitrary<PlotOptions> = fc.record({
  system: fc.constantFrom<System>('IP', 'SI'),
  size: fc.constantFrom('wide' as const, 'narrow' as const),
});
const shapesOf = (plot: Plot): Exclude<Shape, { kind: 'group' }>[] => [...leaves(plot.picture?.shapes ?? [])];
const textsOf = (plot: Plot) => shapesOf(plot).filter((shape) => shape.kind === 'text');

describe.each(anyPlots)('the plot $name, of any numbers', ({ plot: anyPlot }) => {
  it('keeps every text on its paper and off every other text', () => {
    fc.assert(
      fc.property(anyPlot, anyOptions, (make, options) => {
        const plot = make(options);
        if (plot.picture === null) return;
        const sheet = { x: 0, y: 0, width: plot.picture.width_mm, height: plot.picture.height_mm };
        const texts = textsOf(plot).map((shape) => ({ words: shape.text, box: textBox(shape) }));
        for (const { words, box } of texts)
          expect(boxInside(box, sheet), `${words} runs off the sheet`).toBe(true);
        texts.forEach((a, i) => {
          for (const b of texts.slice(i + 1))
            expect(boxesOverlap(a.box, b.box), `"${a.words}" lies on "${b.words}"`).toBe(false);
        });
      }),
      RUNS,
    );
  });

  it('has finite shapes, a name, a sentence, and a table with a figure for each column', () => {
    fc.assert(
      fc.property(anyPlot, anyOptions, (make, options) => {
        const plot = make(options);
        expect(plot.sentence).toMatch(/[.!]$/);
        expect(plot.sentence).not.toMatch(/undefined|NaN|null/);
        if (plot.picture === null) return;
        expect(plot.picture.title).toBe(plot.title);
        expect(JSON.stringify(plot.picture.shapes)).not.toMatch(/null,"y"|"[xy]":null|NaN/);
        expect(plot.table.rows.length).toBeGreaterThan(0);
        for (const row of plot.table.rows) expect(row).toHaveLength(plot.table.columns.length);
      }),
      RUNS,
    );
  });

  it('says the unit of every axis and of every column of figures', () => {
    fc.assert(
      fc.property(anyPlot, anyOptions, (make, options) => {
        const plot = make(options);
        const units = new Set(measureKinds.map((kind) => unitOf(kind, options.system)));
        for (const [i, column] of plot.table.columns.entries()) {
          const hasFigures = plot.table.rows.some((row) => row[i]?.value !== null);
          if (hasFigures) expect(units.has(column.unit), headOf(column)).toBe(true);
        }
        if (plot.picture === null) return;
        const words = textsOf(plot)
          .map((shape) => shape.text)
          .join(' | ');
        const shown = plot.table.columns.map((column) => column.unit).filter((unit) => unit !== '');
        expect(shown.some((unit) => words.includes(unit))).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('writes in the table what the evaluation holds', () => {
    fc.assert(
      fc.property(anyPlot, anyOptions, (make, options) => {
        const plot = make(options);
        for (const row of plot.table.rows)
          row.forEach(({ text, value }, i) => {
            if (value === null) return;
            const unit = plot.table.columns[i]?.unit ?? '';
            const kinds = measureKinds.filter((kind) => unitOf(kind, options.system) === unit);
            const digits = (text.split('.')[1] ?? '').length;
            const wanted = kinds.map((kind) =>
              show(kind, value, options.system, { unit: false, digits, fixed: true }),
            );
            expect(wanted).toContain(text);
          });
      }),
      { numRuns: 40 },
    );
  });
});

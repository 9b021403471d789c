import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { details, type Detail } from '../../src/drawing/edge-model.ts';
import { leaves } from '../../src/drawing/shapes.ts';
import { detailSheet, type Drawing, type SheetOptions } from '../../src/drawing/sheet.ts';
import { toSvg } from '../../src/drawing/svg.ts';
import { evaluate } from '../../src/evaluate.ts';
import { anySketch, ordinary, steepSquare } from './cases.ts';
import { sketch, type Sketch } from './fixture.ts';
import { markBoxes, marks, ofMeaning } from './marks.ts';
import { RUNS } from './runs.ts';

const WIDE: SheetOptions = { system: 'IP', width_mm: 300, height_mm: 200 };
/** As wide as the pages of the record. */
const PAGE: SheetOptions = { system: 'IP', width_mm: 171, height_mm: 150 };
const PHONE: SheetOptions = { system: 'IP', width_mm: 95, height_mm: 120, isCompact: true };

const draw = (wanted: Sketch, options: SheetOptions, detail: Detail = 'eave'): Drawing => {
  const { evaluation, candidate } = sketch(wanted);
  return detailSheet(evaluation, candidate, detail, options);
};

const anyOptions = fc.record({
  system: fc.constantFrom('IP' as const, 'SI' as const),
  sheet: fc.constantFrom(WIDE, PAGE, PHONE),
});
type AnyOptions = typeof anyOptions extends fc.Arbitrary<infer T> ? T : never;
const optionsOf = ({ system, sheet }: AnyOptions): SheetOptions => ({ ...sheet, system });

describe.each(details)('any %s on a wide sheet, a page or a phone', (detail) => {
  it('has nothing outside, no text on another, no leaders that cross, a note for each layer in view', () => {
    fc.assert(
      fc.property(anySketch, anyOptions, (wanted, o) => {
        expect(marks(draw(wanted, optionsOf(o), detail))).toEqual([]);
      }),
      { ...RUNS, examples: [[steepSquare, { system: 'IP', sheet: PHONE }]] },
    );
  }, 240_000);
});

describe('an eave', () => {
  it('has its scale bar and the words beneath clear of each other on a page', () => {
    for (const wanted of Object.values(ordinary)) {
      const drawing = draw({ ...wanted, case: { overhang: { eave_m: 0.6096 } } }, PAGE);
      expect(drawing.isCompact).toBe(false);
      expect(markBoxes(drawing).length).toBe(4);
      expect(marks(drawing)).toEqual([]);
    }
  });

  it('sets the figure of the roof edge upright, however the edge leans', () => {
    const square = { ...steepSquare, case: { ...steepSquare.case, overhang: { eave_m: 0.4 } } };
    for (const pitch of [3, 7, 12, 17]) {
      const drawing = draw({ ...square, pitch }, PHONE);
      const fascia = ofMeaning(drawing, 'dimension').find((g) => g.id === 'dimension-fascia');
      const figures = [...leaves(fascia?.shapes ?? [])].filter((s) => s.kind === 'text');
      expect(figures).toHaveLength(1);
      for (const { turn_deg } of figures) expect(Math.abs(turn_deg)).toBeLessThanOrEqual(90.001);
    }
  });

  it('says the height of the roof edge on a phone too', () => {
    for (const wanted of Object.values(ordinary))
      for (const pitch of [3, 7, 12])
        expect(
          ofMeaning(draw({ ...wanted, pitch }, PHONE), 'dimension').map((g) => g.id),
          `${wanted.strategy} ${String(pitch)}`,
        ).toContain('dimension-fascia');
  });

  it('names the outrigger that the evaluation chose', () => {
    const words = (wanted: Sketch): string => {
      const note = draw(wanted, WIDE).notes.find(({ id }) => id === 'part-outrigger');
      return note === undefined ? '' : `${note.name}, ${note.detail}`;
    };
    expect(words(ordinary['flush-outriggers'])).toBe('Outrigger, 2x4 on edge, 24" apart, to be engineered');
    expect(words({ ...ordinary['flush-outriggers'], outrigger: null })).toContain('no size fits');
  });

  it('holds for the leading candidates of a real evaluation', () => {
    const evaluation = evaluate({
      overdeck: 1,
      place: { zone: '6A' },
      project: { kind: 'new-roof' },
      profile: { fasciaLimit_m: 0.4 },
    });
    const leading = evaluation.ranking.leaders.flatMap(({ candidate: id }) =>
      evaluation.candidates.filter((c) => c.id === id),
    );
    expect(leading.length).toBeGreaterThanOrEqual(2);
    for (const candidate of leading)
      for (const options of [WIDE, PHONE]) {
        const drawing = detailSheet(evaluation, candidate, 'eave', options);
        expect(marks(drawing)).toEqual([]);
        const fascia = drawing.edge.measures.find((m) => m.id === 'fascia');
        expect(fascia?.value_m).toBe(candidate.edge.fascia_m);
        expect(drawing.edge.buildUp_m).toBeCloseTo(candidate.edge.buildUp_m, 12);
      }
  }, 120_000);

  it('says its layers in words, numbered inside to outside', () => {
    const drawing = draw(ordinary['rafter-overhang'], WIDE);
    expect(drawing.layers.map((l) => l.mark)).toEqual(drawing.layers.map((_, i) => String(i + 1)));
    drawing.layers.forEach((layer, i) => expect(drawing.description[i]).toContain(layer.name));
    expect(drawing.description.join(' ')).toContain('pierced by');
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
    for (const options of [WIDE, PHONE, { ...WIDE, walk: 'air-barrier' as const }])
      for (const shape of leaves(draw(ordinary['flush-outriggers'], options).shapes))
        if (shape.kind === 'text') expect(shape.size_mm * CAPITALS_PER_EM).toBeGreaterThanOrEqual(2.5);
  });

  it('refuses a sheet too small for any scale', () => {
    expect(() => draw(ordinary['rafter-overhang'], { ...PHONE, width_mm: 20, height_mm: 20 })).toThrow(
      RangeError,
    );
  });
});

describe('stops of a walk', () => {
  it.each(details)('stand clear of each other at the %s', (detail) => {
    for (const wanted of Object.values(ordinary))
      for (const walk of ['air-barrier', 'water', 'drying'] as const)
        for (const sheet of [WIDE, PHONE]) {
          const drawing = draw(
            { ...wanted, case: { project: { kind: 're-roof' } } },
            { ...sheet, walk },
            detail,
          );
          const group = drawing.shapes.find((s) => s.kind === 'group' && s.id === `walk-${walk}`);
          const stops = [...leaves(group === undefined ? [] : [group])].flatMap((s) =>
            s.kind === 'circle' && s.radius_mm > 1 ? [s] : [],
          );
          stops.forEach((a, i) => {
            for (const b of stops.slice(i + 1))
              expect(Math.hypot(a.center.x - b.center.x, a.center.y - b.center.y)).toBeGreaterThan(
                2 * a.radius_mm,
              );
          });
        }
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

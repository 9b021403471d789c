import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { placed, type Atom } from '../../src/report/pdf/flow.ts';

const paper = { top: 50, bottom: 750 };
const nothing = (): void => undefined;
const atoms = fc.array(
  fc.record({
    height: fc.integer({ min: 1, max: 300 }),
    before: fc.integer({ min: 0, max: 20 }),
    keep: fc.boolean(),
    breakBefore: fc.boolean(),
  }),
  { minLength: 1, maxLength: 60 },
);
const atomsOf = (list: { height: number; before: number; keep: boolean; breakBefore: boolean }[]): Atom[] =>
  list.map(({ keep, breakBefore, ...rest }) => ({
    ...rest,
    ...(keep ? { keep } : {}),
    ...(breakBefore ? { breakBefore } : {}),
    draw: nothing,
  }));

describe('pieces on pages, heights 1 to 300 on a page of 700', () => {
  it('stay on the paper, in order, without overlap', () => {
    fc.assert(
      fc.property(atoms, (list) => {
        const places = placed(atomsOf(list), paper);
        expect(places).toHaveLength(list.length);
        places.forEach((place, at) => {
          expect(place.top).toBeGreaterThanOrEqual(paper.top);
          expect(place.top + place.atom.height).toBeLessThanOrEqual(paper.bottom);
          const last = places[at - 1];
          if (last === undefined) return;
          if (last.page === place.page) expect(place.top).toBeGreaterThanOrEqual(last.top + last.atom.height);
          else expect(place.page).toBe(last.page + 1);
        });
      }),
    );
  });

  it('a piece that is kept shares its page with the next, when both fit and no break is asked for', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 5, max: 300 }), { minLength: 2, maxLength: 40 }), (heights) => {
        // Pairs: each even piece is the heading of the odd piece after it.
        const list = heights.map((height, at): Atom => ({
          height,
          before: 4,
          ...(at % 2 === 0 ? { keep: true } : {}),
          draw: nothing,
        }));
        const places = placed(list, paper);
        places.forEach((place, at) => {
          const next = places[at + 1];
          if (at % 2 === 0 && next !== undefined) expect(next.page).toBe(place.page);
        });
      }),
    );
  });

  it('a break is obeyed', () => {
    const list: Atom[] = [10, 10].map((height, at) => ({
      height,
      before: 0,
      ...(at === 1 ? { breakBefore: true } : {}),
      draw: nothing,
    }));
    expect(placed(list, paper).map((place) => place.page)).toEqual([1, 2]);
  });

  it('the head of a table is drawn again at the top of each page', () => {
    const head: Atom = { height: 20, before: 0, draw: nothing };
    const rows = Array.from({ length: 30 }, (): Atom => ({
      height: 60,
      before: 0,
      repeat: head,
      draw: nothing,
    }));
    const places = placed([head, ...rows], paper);
    const pages = new Set(places.map((place) => place.page));
    for (const page of pages) {
      const first = places.find((place) => place.page === page);
      expect(first?.atom.height).toBe(20);
      expect(first?.top).toBe(paper.top);
    }
    expect(places).toHaveLength(30 + pages.size);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  afterKey,
  MOST_ZOOM,
  panned,
  whole,
  zoomed,
  zoomOf,
  type SheetExtent,
  type ViewBox,
} from '../../src/app/view/viewBox.ts';

const sheet: SheetExtent = { width: 280, height: 165 };
const share = fc.double({ min: 0, max: 1, noNaN: true });
const move = fc.double({ min: -3, max: 3, noNaN: true });
const factor = fc.double({ min: 0.1, max: 20, noNaN: true });
const anyBox: fc.Arbitrary<ViewBox> = fc
  .record({ factor, x: share, y: share, right: move, down: move })
  .map(({ factor: by, x, y, right, down }) =>
    panned(zoomed(whole(sheet), sheet, by, { x, y }), sheet, right, down),
  );

const isOnSheet = (box: ViewBox): boolean =>
  box.x >= 0 &&
  box.y >= 0 &&
  box.x + box.width <= sheet.width + 1e-9 &&
  box.y + box.height <= sheet.height + 1e-9;

describe('the shown part of a drawing', () => {
  it('never leaves the sheet, keeps its proportions, and stays between whole and the most', () => {
    fc.assert(
      fc.property(anyBox, factor, share, share, move, move, (box, by, x, y, right, down) => {
        const next = panned(zoomed(box, sheet, by, { x, y }), sheet, right, down);
        expect(isOnSheet(next)).toBe(true);
        expect(next.width / next.height).toBeCloseTo(sheet.width / sheet.height, 9);
        expect(zoomOf(next, sheet)).toBeGreaterThanOrEqual(1 - 1e-9);
        expect(zoomOf(next, sheet)).toBeLessThanOrEqual(MOST_ZOOM + 1e-9);
      }),
    );
  });

  it('keeps the place under the pointer while it grows', () => {
    fc.assert(
      fc.property(anyBox, fc.double({ min: 1, max: 20, noNaN: true }), share, share, (box, by, x, y) => {
        const next = zoomed(box, sheet, by, { x, y });
        expect(next.x + x * next.width).toBeCloseTo(box.x + x * box.width, 6);
        expect(next.y + y * next.height).toBeCloseTo(box.y + y * box.height, 6);
      }),
    );
  });

  it('comes back to the whole with 0 from anywhere', () => {
    fc.assert(
      fc.property(anyBox, (box) => {
        expect(afterKey(box, sheet, '0')).toEqual(whole(sheet));
      }),
    );
  });

  it('comes back to where it was with + and −, away from the edges and the limits', () => {
    const start: ViewBox = { x: 100, y: 60, width: 70, height: 41.25 };
    const there = afterKey(start, sheet, '+');
    const back = there === null ? null : afterKey(there, sheet, '-');
    expect(back?.x).toBeCloseTo(start.x, 9);
    expect(back?.width).toBeCloseTo(start.width, 9);
  });

  it('leaves arrows to the page when there is nowhere to go, and every other key always', () => {
    expect(afterKey(whole(sheet), sheet, 'ArrowDown')).toBeNull();
    expect(afterKey(zoomed(whole(sheet), sheet, 2), sheet, 'ArrowDown')?.y).toBeGreaterThan(41);
    for (const key of ['Tab', 'Enter', 'Escape', 'a']) expect(afterKey(whole(sheet), sheet, key)).toBeNull();
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roofShapes } from '../../src/case/case.ts';
import {
  piecesOn,
  regionArea_m2,
  regionOf,
  type Piece,
  type Region,
  type Stock,
} from '../../src/roof/layout.ts';
import { stockCount } from '../../src/roof/layoutStock.ts';
import { roofPlanes } from '../../src/roof/planes.ts';
import { sharedArea_m2, unionArea_m2 } from '../support/clipping.ts';

const board: Stock = { length_m: 2.4, width_m: 1.2, handed: false };
const panel: Stock = { ...board, handed: true };
const straight = { along: 0, up: 0 };
const offset = { along: 0.25, up: 0.5 };
const noNailers = { eave_m: 0, rake_m: 0 };
const rectangle = (length_m: number, width_m: number): Region => ({
  cells: [
    [
      { u: 0, v: 0 },
      { u: length_m, v: 0 },
      { u: length_m, v: width_m },
      { u: 0, v: width_m },
    ],
  ],
  holes: [],
});
const counts = (pieces: readonly Piece[], stock: Stock, least_m = 0.3) => stockCount(pieces, stock, least_m);

describe('boards of 2.4 by 1.2 m on a rectangle, by hand', () => {
  it('12 by 4.8 m: four rows; five whole boards, or four and two halves that make one', () => {
    const pieces = piecesOn(rectangle(12, 4.8), board, straight);
    expect(pieces).toHaveLength(5 + 6 + 5 + 6);
    expect(counts(pieces, board)).toEqual({ count: 20, whole: 18, cut: 4, reused: 2 });
    // Without reuse each half takes a board.
    expect(counts(pieces, board, Infinity).count).toBe(22);
    // A panel's left half leaves the right half, which fits the left end of the row above.
    expect(counts(pieces, panel)).toEqual({ count: 20, whole: 18, cut: 4, reused: 2 });
  });

  it('the second layer moved by a quarter and half a row: five rows, half boards high at both ends', () => {
    const pieces = piecesOn(rectangle(12, 4.8), board, offset);
    // Six boards in every row; three rows full, two of half the width.
    expect(pieces.map(({ width_m }) => Math.round(width_m * 10) / 10).filter((w) => w === 0.6)).toHaveLength(
      12,
    );
    const ends = pieces.filter(({ length_m }) => length_m < 2.3).map(({ length_m }) => length_m);
    for (const length_m of ends) expect([0.6, 1.8].some((one) => Math.abs(one - length_m) < 1e-9)).toBe(true);
  });

  it('joints of the layers are nowhere nearer than a quarter of the length', () => {
    const joints = (shift: typeof offset, v: number): number[] =>
      piecesOn(rectangle(12, 4.8), board, shift).flatMap(({ parts }) => {
        const us = parts.flat().map(({ u }) => u);
        const vs = parts.flat().map((at) => at.v);
        return Math.min(...vs) < v && v < Math.max(...vs) ? [Math.min(...us)] : [];
      });
    for (const v of [0.3, 0.9, 1.5, 2.1, 2.7])
      for (const below of joints(straight, v).filter((u) => u > 0))
        for (const above of joints(offset, v).filter((u) => u > 0))
          expect(Math.abs(below - above)).toBeGreaterThanOrEqual(0.6 - 1e-9);
  });

  it('a hole takes the board that lies in it wholly, and none that it only cuts', () => {
    const hole = (low: number, high: number) => [
      { u: 2.4 - low, v: 0 },
      { u: 4.8 + high, v: 0 },
      { u: 4.8 + high, v: 1.2 },
      { u: 2.4 - low, v: 1.2 },
    ];
    const whole = rectangle(12, 1.2);
    expect(piecesOn({ ...whole, holes: [hole(0, 0)] }, board, straight)).toHaveLength(4);
    expect(piecesOn({ ...whole, holes: [hole(-0.2, -0.2)] }, board, straight)).toHaveLength(5);
    expect(regionArea_m2({ ...whole, holes: [hole(0, 0)] })).toBeCloseTo(4 * 2.88, 9);
  });
});

const anyRoof = fc
  .record({
    shape: fc.constantFrom(...roofShapes),
    pitch: fc.double({ min: 2, max: 24, noNaN: true }),
    length_m: fc.double({ min: 2, max: 40, noNaN: true }),
    width_m: fc.double({ min: 2, max: 20, noNaN: true }),
    eaveOverhang_m: fc.double({ min: 0, max: 1.5, noNaN: true }),
    rakeOverhang_m: fc.double({ min: 0, max: 1.5, noNaN: true }),
    valleys: fc.integer({ min: 0, max: 8 }),
    dormers: fc.integer({ min: 0, max: 4 }),
    skylights: fc.integer({ min: 0, max: 4 }),
    chimneys: fc.integer({ min: 0, max: 3 }),
  })
  .map(({ pitch, valleys, dormers, skylights, chimneys, ...rest }) =>
    roofPlanes(
      { ...rest, angle_deg: (Math.atan(pitch / 12) * 180) / Math.PI },
      { valleys, dormers, skylights, chimneys },
    ),
  );
const anyStock = fc.constantFrom(board, panel, { length_m: 1.2, width_m: 1.2, handed: false });
const anyShift = fc.constantFrom(straight, offset);
const anyNailers = fc.constantFrom(noNailers, { eave_m: 0.14, rake_m: 0.089 });

describe('boards and panels laid out cover each plane exactly once', () => {
  it('no two pieces overlap, together they are the plane, none is larger than its board', () => {
    fc.assert(
      fc.property(anyRoof, anyStock, anyShift, anyNailers, (roof, stock, shift, nailers) => {
        for (const plane of roof.planes) {
          const region = regionOf(plane, nailers);
          const pieces = piecesOn(region, stock, shift);
          const parts = pieces.flatMap((piece) => piece.parts);
          const each_m2 = parts.reduce((sum, part) => sum + unionArea_m2([part]), 0);
          // Boards that fall in a hole are left out, so cover is compared outside the holes.
          const outside = (polygons: readonly (typeof parts)[number][]): number =>
            unionArea_m2(polygons) - sharedArea_m2(polygons, plane.holes);
          expect(Math.abs(unionArea_m2(parts) - each_m2)).toBeLessThan(1e-3);
          expect(Math.abs(outside(parts) - outside(region.cells))).toBeLessThan(1e-3);
          const net_m2 = pieces.reduce((sum, { area_m2 }) => sum + area_m2, 0);
          expect(Math.abs(net_m2 - regionArea_m2(region))).toBeLessThan(1e-3);
          for (const { length_m, width_m } of pieces) {
            expect(length_m).toBeLessThanOrEqual(stock.length_m + 1e-6);
            expect(width_m).toBeLessThanOrEqual(stock.width_m + 1e-6);
          }
        }
      }),
      { numRuns: 120 },
    );
  });

  it('without nailers the cells are the plane itself', () => {
    fc.assert(
      fc.property(anyRoof, (roof) => {
        for (const plane of roof.planes)
          expect(
            Math.abs(unionArea_m2(regionOf(plane, noNailers).cells) - unionArea_m2([plane.outline])),
          ).toBeLessThan(1e-4);
      }),
      { numRuns: 60 },
    );
  });
});

describe('counts of any roof', () => {
  it('stock covers the area; keeping offcuts never takes more than keeping none', () => {
    fc.assert(
      fc.property(anyRoof, anyStock, anyShift, (roof, stock, shift) => {
        const regions = roof.planes.map((plane) => regionOf(plane, noNailers));
        const pieces = regions.flatMap((region) => piecesOn(region, stock, shift));
        const area_m2 = regions.reduce((sum, region) => sum + regionArea_m2(region), 0);
        const of = (least_m: number) => counts(pieces, stock, least_m);
        const kept = [Infinity, 1, 0.6, 0.3].map((least_m) => of(least_m).count);
        for (const count of kept) {
          expect(count * stock.length_m * stock.width_m).toBeGreaterThanOrEqual(area_m2 - 1e-6);
          expect(count).toBeLessThanOrEqual(kept[0] as number);
        }
        expect(of(0.3).whole + of(0.3).cut).toBe(pieces.length);
        expect(of(0.3).count).toBe(pieces.length - of(0.3).reused);
      }),
      { numRuns: 120 },
    );
  });
});

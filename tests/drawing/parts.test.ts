import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { area, clipToSide, isInside, lineInside, point, segmentsCross } from '../../src/drawing/geometry.ts';
import { hatch, materials, parallelLines } from '../../src/drawing/hatch.ts';
import { leaderOf, nondecreasing, placeNotes, type Column, type Note } from '../../src/drawing/labels.ts';
import { inchesText, lengthText } from '../../src/drawing/lengths.ts';
import { contrast, inkNames, palettes, themes } from '../../src/drawing/palette.ts';
import { shapeBox } from '../../src/drawing/shapes.ts';
import { advance, textWidth_mm, wrapText } from '../../src/drawing/text-metrics.ts';

vi.setConfig({ testTimeout: 60_000 });

const square = [point(0, 0), point(10, 0), point(10, 10), point(0, 10)];
const notch = [point(0, 0), point(10, 0), point(10, 10), point(5, 3), point(0, 10)];

describe('geometry', () => {
  it('cuts a square in half', () => {
    expect(area(clipToSide(square, point(1, 0), 5))).toBeCloseTo(50, 12);
    expect(clipToSide(square, point(1, 0), -1)).toEqual([]);
  });

  it('finds both pieces of a line across a notched polygon', () => {
    const pieces = lineInside(point(0, 6), point(1, 0), notch);
    expect(pieces).toHaveLength(2);
  });
});

describe('hatches', () => {
  it('keep inside their polygon, for every material and direction', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...materials),
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        (material, angle) => {
          for (const shape of hatch(material, notch, angle)) {
            const box = shapeBox(shape as never);
            expect(box.x).toBeGreaterThanOrEqual(-1e-6);
            expect(box.y).toBeGreaterThanOrEqual(-1e-6);
            expect(box.x + box.width).toBeLessThanOrEqual(10 + 1e-6);
            expect(isInside(point(box.x + box.width / 2, box.y + box.height / 2), notch)).toBe(true);
          }
        },
      ),
    );
  });

  it('space parallel lines evenly', () => {
    expect(parallelLines(square, 0, 2.5, 1).map(([a]) => a.y)).toEqual([1, 3.5, 6, 8.5]);
  });
});

describe('label columns', () => {
  const column: Column = { side: 'right', x: 100, width_mm: 50, top: 0, bottom: 200, gap_mm: 1 };
  const anyNotes = fc.array(
    fc.record({
      x: fc.double({ min: 0, max: 90, noNaN: true }),
      y: fc.double({ min: 0, max: 200, noNaN: true }),
      height_mm: fc.double({ min: 4, max: 12, noNaN: true }),
    }),
    { minLength: 1, maxLength: 14 },
  );
  const notesOf = (rows: readonly { x: number; y: number; height_mm: number }[]): Note[] =>
    rows.map((row, i) => ({
      id: String(i),
      layerId: null,
      mark: String(i),
      at: point(row.x, row.y),
      height_mm: row.height_mm,
      portDrop_mm: 2,
    }));

  it('never overlap, never leave the column, never cross their leaders', () => {
    fc.assert(
      fc.property(anyNotes, (rows) => {
        const placed = placeNotes(notesOf(rows), column);
        expect(placed).not.toBeNull();
        (placed ?? []).forEach((a, i, all) => {
          expect(a.box.y).toBeGreaterThanOrEqual(column.top - 1e-9);
          expect(a.box.y + a.box.height).toBeLessThanOrEqual(column.bottom + 1e-9);
          const next = all[i + 1];
          if (next !== undefined)
            expect(next.box.y - a.box.y - a.box.height).toBeGreaterThanOrEqual(1 - 1e-9);
          for (const b of all.slice(i + 1)) expect(segmentsCross(leaderOf(a), leaderOf(b))).toBe(false);
        });
      }),
      { numRuns: 500 },
    );
  });

  it('say so when the words are higher than the column', () => {
    expect(
      placeNotes(notesOf(Array.from({ length: 30 }, () => ({ x: 1, y: 1, height_mm: 10 }))), column),
    ).toBeNull();
  });

  it('stay at their parts when there is room', () => {
    const placed = placeNotes(
      notesOf([
        { x: 1, y: 50, height_mm: 5 },
        { x: 1, y: 90, height_mm: 5 },
      ]),
      column,
    );
    expect(placed?.map((p) => p.port.y)).toEqual([50, 90]);
  });

  it('pool neighbors to the nearest rising sequence', () => {
    expect(nondecreasing([1, 3, 2, 4])).toEqual([1, 2.5, 2.5, 4]);
  });
});

describe('dimension figures', () => {
  it.each([
    [0.0127, 'IP', '1/2"'],
    [0.36195, 'IP', '14 1/4"'],
    [0.6096, 'IP', `2'-0"`],
    [1.3843, 'IP', `4'-6 1/2"`],
    [0, 'IP', '0"'],
    [-0.0254, 'IP', '−1"'],
    [0.0127, 'SI', '13 mm'],
    [0.0061, 'SI', '6.1 mm'],
    [1.2, 'SI', '1200 mm'],
  ] as const)('%f m in %s is %s', (length_m, system, words) => {
    expect(lengthText(length_m, system)).toBe(words);
  });

  it('carry a rounded fraction to the next inch', () => {
    expect(inchesText(0.02539)).toBe('1"');
  });
});

describe('palette', () => {
  it.each(themes)('%s: text 4.5:1 and marks 3:1 on every fill they may stand on', (theme) => {
    const { inks, fills } = palettes[theme];
    for (const ink of inkNames) {
      const isText = ink !== 'hatch' && ink !== 'line';
      expect(contrast(inks[ink], fills.paper), ink).toBeGreaterThanOrEqual(isText ? 4.5 : 3);
    }
    for (const [name, fill] of Object.entries(fills))
      if (name !== 'solid')
        for (const ink of ['hatch', 'line', 'airBarrier', 'waterPath', 'dryingPath', 'limit'] as const)
          expect(contrast(inks[ink], fill), `${ink} on ${name}`).toBeGreaterThanOrEqual(3);
  });

  it('computes contrast as defined: black on white is 21:1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });
});

/** Advance widths straight from a TrueType file: tables hhea, hmtx, cmap format 4. */
function readAdvances(path: URL): (character: string) => number {
  const bytes = readFileSync(path);
  const tables = new Map<string, number>();
  for (let i = 0; i < bytes.readUInt16BE(4); i += 1) {
    const at = 12 + 16 * i;
    tables.set(bytes.toString('latin1', at, at + 4), bytes.readUInt32BE(at + 8));
  }
  const start = (name: string): number => tables.get(name) ?? 0;
  const metrics = bytes.readUInt16BE(start('hhea') + 34);
  let map = 0;
  for (let i = 0; i < bytes.readUInt16BE(start('cmap') + 2); i += 1) {
    const offset = start('cmap') + bytes.readUInt32BE(start('cmap') + 8 + 8 * i);
    if (bytes.readUInt16BE(offset) === 4) map = offset;
  }
  const segments = bytes.readUInt16BE(map + 6) / 2;
  const glyph = (code: number): number => {
    for (let i = 0; i < segments; i += 1) {
      if (code > bytes.readUInt16BE(map + 14 + 2 * i)) continue;
      const at = map + 16 + 2 * segments + 2 * i;
      const first = bytes.readUInt16BE(at);
      if (code < first) return 0;
      const delta = bytes.readInt16BE(at + 2 * segments);
      const range = bytes.readUInt16BE(at + 4 * segments);
      if (range === 0) return (code + delta) & 0xffff;
      return (bytes.readUInt16BE(at + 4 * segments + range + 2 * (code - first)) + delta) & 0xffff;
    }
    return 0;
  };
  return (character) =>
    bytes.readUInt16BE(start('hmtx') + 4 * Math.min(glyph(character.codePointAt(0) ?? 0), metrics - 1));
}

describe('text metrics', () => {
  const font = '../../node_modules/@expo-google-fonts/source-sans-3/';
  const files = {
    regular: new URL(`${font}400Regular/SourceSans3_400Regular.ttf`, import.meta.url),
    bold: new URL(`${font}600SemiBold/SourceSans3_600SemiBold.ttf`, import.meta.url),
  } as const;

  it.each(['regular', 'bold'] as const)('%s widths are those of the font file', (weight) => {
    const inFile = readAdvances(files[weight]);
    for (const character of `ABCxyz019 .,-"'()/%&·×°²½″−≤`)
      expect(advance(character, weight), character).toBe(inFile(character));
  });

  it('add up: twice the words, twice the width', () => {
    expect(textWidth_mm('roofroof', 4)).toBeCloseTo(2 * textWidth_mm('roof', 4), 12);
  });

  it('break words into lines that fit', () => {
    fc.assert(
      fc.property(
        fc.lorem({ maxCount: 12 }),
        fc.double({ min: 12, max: 60, noNaN: true }),
        (words, limit) => {
          const lines = wrapText(words, limit, 3.8);
          for (const l of lines) expect(textWidth_mm(l, 3.8)).toBeLessThanOrEqual(limit);
          expect(lines.join('').replaceAll(/[\s-]/g, '')).toBe(words.replaceAll(/\s/g, ''));
        },
      ),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LARGEST_CASE_BYTES, readCase, readCaseText } from '../../src/case/read.ts';
import { faultLine, LISTED_FAULTS } from '../../src/faults.ts';

const smallest = { overdeck: 1, place: { zone: '6A' } };

function lines(input: unknown): string[] {
  const reading = readCase(input);
  return reading.ok ? [] : reading.faults.map((fault) => faultLine(fault, 'CASE'));
}

function textLines(text: string): string[] {
  const reading = readCaseText(text);
  return reading.ok ? [] : reading.faults.map((fault) => faultLine(fault, 'CASE'));
}

describe('a case', () => {
  it('needs no more than its format version and a place', () => {
    expect(readCase(smallest)).toEqual({ ok: true, value: smallest });
  });

  it.each([
    [{ roof: { pitch_rise_per_12: 31 } }, 'roof.pitch_rise_per_12: 31 is above 24'],
    [{ roof: { pitch_rise_per_12: 1.5 } }, 'roof.pitch_rise_per_12: 1.5 is below 2'],
    [{ roof: { pitch_rise_per_12: 'abc' } }, 'roof.pitch_rise_per_12: expected a number, got text "abc"'],
    [{ roof: { pitch_rise_per_12: null } }, 'roof.pitch_rise_per_12: expected a number, got null'],
    [{ roof: { pitch_rise_per_12: [6] } }, 'roof.pitch_rise_per_12: expected a number, got a list of 1'],
    [{ roof: { valleys: 1.5 } }, 'roof.valleys: 1.5 is not a whole number'],
    [{ roof: [] }, 'roof: expected an object, got a list of 0'],
    [{ roof: 7 }, 'roof: expected an object, got the number 7'],
    [
      { framing: { deckSeenFromBelow: 'yes' } },
      'framing.deckSeenFromBelow: expected true or false, got text "yes"',
    ],
    [
      { codes: { edition: 2021 } },
      'codes.edition: expected text, one of 2015, 2018, 2021, 2024; got the number 2021',
    ],
    [{ notes: 5 }, 'notes: expected text, got the number 5'],
    [{ project: { date: 'yesterday' } }, 'project.date: "yesterday" is not a date written like 2026-11-24'],
    [
      { project: { revision: 'x'.repeat(41) } },
      'project.revision: has 41 characters; at most 40 are allowed',
    ],
    [{ insulation: { refusedBoards: 'xps' } }, 'insulation.refusedBoards: expected a list, got text "xps"'],
    [
      { insulation: { refusedBoards: ['xps', 'straw'] } },
      'insulation.refusedBoards.1: "straw" is not one of polyisocyanurate, xps, eps, graphite-eps, stone-wool, wood-fiber',
    ],
    [{ priorities: { cost: 101 } }, 'priorities.cost: 101 is above 100'],
    [{ roof: { pitch: 6 } }, 'roof.pitch: is not a known field; nearest known name is "pitch_rise_per_12"'],
    [
      { priorities: { airBarier: 50 } },
      'priorities.airBarier: is not a known criterion; nearest known name is "airBarrier"',
    ],
    [
      { place: { countyFips: '99999' } },
      'place.countyFips: "99999" is not a listed county; five digits of content/tables/counties.json',
    ],
    [{ rofo: {} }, 'rofo: is not a known field; nearest known name is "roof"'],
    [{ place: {} }, 'place: needs at least one of id, countyFips, zone, monthlyTemperature_C'],
    [{ place: { countyFips: '12' } }, 'place.countyFips: "12" is not five digits'],
    [
      { place: { zone: '6A', monthlyTemperature_C: [1, 2] } },
      'place.monthlyTemperature_C: has 2 entries; exactly 12 are needed',
    ],
    [{ place: undefined }, 'place: is missing; an object is needed'],
  ])('%j is refused in one line', (change, line) => {
    const found = lines({ ...smallest, ...change });
    expect(found).toHaveLength(1);
    expect(found[0]).toBe(line);
  });

  it('stands on a place that is listed', () => {
    expect(lines({ ...smallest, place: { id: 'us-xx-nowhere' } })[0]).toMatch(
      /^place\.id: "us-xx-nowhere" is not a listed place/,
    );
  });

  it('names the coverings that there are', () => {
    expect(lines({ ...smallest, covering: { kind: 'vinyl' } })[0]).toMatch(
      /^covering\.kind: "vinyl" is not one of asphalt-shingle, .*slate$/,
    );
  });

  it('says what a missing part of a stock is', () => {
    expect(lines({ ...smallest, insulation: { stock: { board: 'xps', area_m2: 40 } } })).toEqual([
      'insulation.stock.thickness_m: is missing; a number is needed',
    ]);
  });

  it.each([
    [
      { ...smallest, overdeck: 2 },
      'overdeck: 2 is a newer format than this program knows; it reads version 1',
    ],
    [{ ...smallest, overdeck: '1' }, 'overdeck: "1" is not a format version; this program reads version 1'],
    [{ place: { zone: '6A' } }, 'overdeck: is missing; the format version 1 is needed'],
  ])('of another format version %j says which versions are read', (input, line) => {
    expect(lines({ ...input, rofo: 1 })).toEqual([line]);
  });

  it.each([[null], [5], ['text'], [[]], [undefined], [Number.NaN]])('is one object, not %j', (input) => {
    expect(lines(input)[0]).toMatch(/^CASE: a case file is one JSON object; this is /);
  });

  it('collects every fault, and counts those past the fiftieth', () => {
    const many = Object.fromEntries(Array.from({ length: 70 }, (_, index) => [`strange${index}`, 1]));
    const found = lines({ ...smallest, ...many });
    expect(found).toHaveLength(LISTED_FAULTS + 1);
    expect(found.at(-1)).toBe('CASE: 20 more faults are not listed');
  });

  it('takes names of the language itself for unknown fields, and changes no object by them', () => {
    const found = textLines(
      '{"overdeck":1,"place":{"zone":"6A","__proto__":{"id":"x"}},"__proto__":{"a":1},"constructor":1,"priorities":{"__proto__":2}}',
    );
    expect(found.map((line) => line.split(':')[0])).toEqual([
      'place.__proto__',
      '__proto__',
      'constructor',
      'priorities.__proto__',
    ]);
    expect(({} as Record<string, unknown>)['a']).toBeUndefined();
  });

  it('keeps one line for each fault, whatever a name holds', () => {
    const [line] = lines({ ...smallest, ['a\nb'.repeat(100)]: 1 });
    expect(line).not.toMatch(/[\r\n]/);
    expect((line ?? '').length).toBeLessThan(200);
  });
});

describe('the text of a case', () => {
  it('may start with a byte order mark and hold any space', () => {
    expect(readCaseText(`\ufeff \r\n${JSON.stringify(smallest, null, '\t')}\n`)).toEqual({
      ok: true,
      value: smallest,
    });
  });

  it.each([
    ['', 'CASE: is empty; a JSON object is needed'],
    ['  \n', 'CASE: is empty; a JSON object is needed'],
    [
      '{"overdeck": 1,\n "place": {"zone": "6A",}}',
      'CASE: is not JSON at line 2, column 25: expected a name in double quotes, found "}"',
    ],
    [
      '{"overdeck": 1',
      'CASE: is not JSON at line 1, column 15: expected a comma or "}", found the end of the file',
    ],
    ['{"overdeck": 1} x', 'CASE: is not JSON at line 1, column 17: expected the end of the file, found "x"'],
    [
      "{'overdeck': 1}",
      `CASE: is not JSON at line 1, column 2: expected a name in double quotes or "}", found "'"`,
    ],
    ['{"overdeck": 01}', 'CASE: is not JSON at line 1, column 15: expected a comma or "}", found "1"'],
    ['{"overdeck" 1}', 'CASE: is not JSON at line 1, column 13: expected a colon, found "1"'],
    ['[1 2]', 'CASE: is not JSON at line 1, column 4: expected a comma or "]", found "2"'],
    ['{"a": NaN}', 'CASE: is not JSON at line 1, column 7: expected a value, found "N"'],
    [
      '{"a": "b\nc"}',
      'CASE: is not JSON at line 1, column 7: expected a text closed by a double quote on its line, found "\\""',
    ],
    ['{"a": 1, "a": 2}', 'CASE: is not JSON at line 1, column 10: the name "a" is given twice'],
  ])('%j is refused with the place', (text, line) => {
    expect(textLines(text)).toEqual([line]);
  });

  it('over 2 MB is not read', () => {
    expect(textLines(' '.repeat(LARGEST_CASE_BYTES + 1))).toEqual([
      'CASE: has 2000001 bytes; at most 2000000 (2 MB) are read',
    ]);
  });

  it.each([
    ['lists never closed', '['.repeat(900_000)],
    ['lists closed', '['.repeat(900_000) + ']'.repeat(900_000)],
    ['objects', `{"overdeck":1,"place":${'{"x":'.repeat(200_000)}1${'}'.repeat(200_000)}}`],
    ['a text never closed', `{"a":"${'\\\\'.repeat(500_000)}`],
  ])('nested or stretched without end is refused safely: %s', (_, text) => {
    expect(textLines(text)).toHaveLength(1);
  });

  it('is JSON exactly when the parser says so, except for repeated names', () => {
    const parses = (text: string): boolean => {
      try {
        JSON.parse(text);
        return true;
      } catch {
        return false;
      }
    };
    const broken = fc
      .tuple(fc.json(), fc.nat(), fc.constantFrom('', ',', '"', '}', '0', '\\', ' ', '-'))
      .map(([text, at, piece]) => {
        const place = at % (text.length + 1);
        return text.slice(0, place) + piece + text.slice(place + 1);
      });
    fc.assert(
      fc.property(fc.oneof(fc.json(), broken), (text) => {
        const reading = readCaseText(text);
        const notJson = !reading.ok && /^is (not JSON|empty)/.test(reading.faults[0]?.message ?? '');
        const twice = !reading.ok && /given twice/.test(reading.faults[0]?.message ?? '');
        // A repeated name ends the reading, whatever stands behind it: refused either way.
        if (twice) return;
        expect(notJson).toBe(!parses(text));
      }),
      { numRuns: 500, examples: [['{"":{"a":null},""   ":null}']] },
    );
  });

  it('of any JSON value is read or refused, never thrown at', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const reading = readCase({ ...smallest, roof: value, place: value });
        expect(reading.ok || reading.faults.every(({ message }) => message.length > 0)).toBe(true);
      }),
    );
  });
});

/** Every check value of the reference tables is held somewhere, or said to have no function. */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ELSEWHERE, TABLES, WITHOUT_FUNCTION } from './coverage.ts';

const tests = new URL('../', import.meta.url);
const read = (file: string): string => readFileSync(new URL(file, tests), 'utf8');
const inReference = new Set(
  readdirSync(new URL('reference/', tests)).flatMap((file) =>
    (JSON.parse(read(`reference/${file}`)) as { rows: { id: string }[] }).rows.map(
      ({ id }) => /^[A-Z]\d+/.exec(id)?.[0] ?? '',
    ),
  ),
);
const ids = Object.entries(TABLES).flatMap(([letter, numbers]) =>
  numbers.map((number) => `${letter}${number}`),
);

describe('check values of the reference tables', () => {
  it.each(Object.entries(ELSEWHERE))('%s is held by %j', (_, [file, words]) => {
    expect(read(file).includes(words)).toBe(true);
  });

  it(`${ids.length} rows: ${Object.keys(WITHOUT_FUNCTION).length} have no function, all others are held`, () => {
    const held = (id: string) => inReference.has(id) || id in ELSEWHERE;
    expect(ids.filter((id) => !held(id) && !(id in WITHOUT_FUNCTION))).toEqual([]);
    // A row that has gained a test leaves the list.
    expect(ids.filter((id) => held(id) && id in WITHOUT_FUNCTION)).toEqual([]);
  });

  it('names no row that the tables do not have', () => {
    const known = new Set(ids);
    expect(
      [...Object.keys(ELSEWHERE), ...Object.keys(WITHOUT_FUNCTION)].filter((id) => !known.has(id)),
    ).toEqual([]);
  });
});

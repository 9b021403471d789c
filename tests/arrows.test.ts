import { describe, expect, it } from 'vitest';
import { allowed, roomOf, sourcesBelow, wrongArrows, type Source } from './support/arrows.ts';
import { impurities } from './support/purity.ts';

const sources = sourcesBelow('src');
const isPure = ({ path }: Source): boolean => !['app', 'command'].includes(roomOf(path));

describe('the arrows between the rooms of the source', () => {
  it('all run the right way', () => {
    expect(sources.length).toBeGreaterThan(20);
    expect(wrongArrows(sources)).toEqual([]);
  });

  it('start and end in rooms that are written down', () => {
    expect(
      [...new Set(sources.map(({ path }) => roomOf(path)))].filter((room) => !(room in allowed)),
    ).toEqual([]);
  });

  it.each([
    ['src/physics/planted.ts', "import { eaves } from '../roof/geometry.ts';", 'roof'],
    ['src/physics/planted.ts', "import type { Case } from '../case/case.ts';", 'case'],
    ['src/structure/planted.ts', "export { x } from '../physics/thermal.ts';", 'physics'],
    ['src/roof/planted.ts', "import { all } from '../strategies/all.ts';", 'strategies'],
    ['src/case/planted.ts', "import { readWeather } from '../weather/read.ts';", 'weather'],
    ['src/roof/planted.ts', "import { readWeather } from '../weather/read.ts';", 'weather'],
    ['src/physics/planted.ts', "import { readWeather } from '../weather/read.ts';", 'weather'],
    ['src/weather/planted.ts', "import type { Case } from '../case/case.ts';", 'case'],
    ['src/weather/planted.ts', "import { readFileSync } from 'node:fs';", 'node:fs'],
    ['src/evaluate.ts', "import Page from './app/Page.svelte';", 'app'],
    ['src/report/planted.ts', "const late = import('../app/state.ts');", 'app'],
    [
      'src/app/Planted.svelte',
      '<script lang="ts">import { run } from "../command/main.ts";</script>',
      'command',
    ],
    ['src/drawing/planted.ts', "import { readFileSync } from 'node:fs';", 'node:fs'],
    ['src/judgement/planted.ts', "import { writable } from 'svelte/store';", 'svelte/store'],
    [
      'src/roof/planted.ts',
      "import table from '../../content/tables/x.json' with { type: 'json' };",
      'content',
    ],
    ['src/case/planted.ts', "import x from '../../tests/support/arrows.ts';", 'tests'],
  ])('a planted wrong arrow in %s is named: %s', (path, text, named) => {
    const [sentence, ...more] = wrongArrows([{ path, text }]);
    expect(more).toEqual([]);
    expect(sentence).toContain(path);
    expect(sentence).toContain(named);
  });
});

describe('what lies below the app and the command', () => {
  it('touches no page, clock, chance, network, storage or process', () => {
    expect(sources.filter(isPure).flatMap(impurities)).toEqual([]);
  });

  it.each([
    ['document.title', 'document'],
    ['export const width = window.innerWidth;', 'window'],
    ['const t = Date.now();', 'Date.now'],
    ['const t = new Date();', 'new Date()'],
    ['const x = Math.random();', 'Math.random'],
    ["await fetch('/x');", 'fetch'],
    ["localStorage.getItem('x');", 'localStorage'],
    ['const p = { process };', 'process'],
    ['const m = import.meta.url;', 'import.meta'],
  ])('a planted use is found: %s', (text, what) => {
    expect(impurities({ path: 'src/roof/planted.ts', text })).toEqual([
      `src/roof/planted.ts:1 touches ${what}`,
    ]);
  });

  it.each([
    'export function title(document: { title: string }): string { return document.title; }',
    'const { location } = place; export const name = location.name;',
    'export const fields = { window: 1, process: 2 }; fields.window;',
    "export const day = new Date('2026-11-24').toISOString();",
    "import { fetch } from './own.ts'; fetch();",
  ])('a harmless use of the same name is left alone: %s', (text) => {
    expect(impurities({ path: 'src/roof/planted.ts', text })).toEqual([]);
  });
});

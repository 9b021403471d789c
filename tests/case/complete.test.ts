import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultRows } from '../../src/catalog/defaults.ts';
import { source } from '../../src/catalog/sources.ts';
import type { Zone } from '../../src/catalog/sets.ts';
import { caseSchema, type Case } from '../../src/case/case.ts';
import { complete } from '../../src/case/complete.ts';
import { valueAt } from '../../src/case/paths.ts';
import { zoneOf } from '../../src/case/place.ts';
import { readCase } from '../../src/case/read.ts';
import { anyCase } from '../support/anyCase.ts';
import { changed, type Changes } from '../support/roofs.ts';

const smallest: Case = { overdeck: 1, place: { zone: '6A' } };
const filled = (changes: Changes = {}, zone: Zone = '6A') => complete(changed(smallest, changes), zone);
const at = (path: string, changes: Changes = {}, zone: Zone = '6A'): unknown =>
  valueAt(filled(changes, zone).completed as unknown as Case, path);

const allPaths = [...new Set(defaultRows.map(({ path }) => path))];

describe('a case without answers', () => {
  it('takes every default once', () => {
    const paths = filled().assumptions.map(({ path }) => path);
    expect([...paths].sort()).toEqual([...allPaths].sort());
  });

  it('becomes a valid case with no gap that a default fills', () => {
    const { completed } = filled();
    expect(readCase(completed).ok).toBe(true);
    expect(complete(completed as unknown as Case, '6A').assumptions).toEqual([]);
  });

  it('lists for each what was assumed, why, what it costs and where it comes from', () => {
    for (const { path, value, question, reason, cost, source: id } of filled().assumptions) {
      expect(value).toEqual(at(path));
      expect([question, reason, cost, source(id).title].every((text) => text.length > 0)).toBe(true);
    }
  });
});

describe('conditional defaults', () => {
  it.each([
    ['framing.depth_m', {}, 0.1397],
    ['framing.depth_m', { 'project.kind': 'new-roof' }, 0.23495],
    ['framing.depth_m', { 'framing.kind': 'truss' }, 0.0889],
    ['framing.spacing_m', { 'framing.kind': 'truss' }, 0.6096],
    ['framing.deck', { 'project.kind': 'new-roof' }, 'osb'],
    ['framing.deck', {}, 'plank'],
    ['framing.deckThickness_m', {}, 0.019],
    ['framing.deckThickness_m', { 'framing.deck': 'osb' }, 0.0119],
    ['belowDeck.ceiling', { 'framing.deckSeenFromBelow': true }, 'deck-in-view'],
    ['overhang.carriedToday', { 'framing.kind': 'truss' }, 'truss-tails'],
    ['overhang.carriedToday', { 'project.kind': 'addition' }, 'none'],
    ['wall.cladding', {}, 'stays'],
    ['wall.cladding', { 'project.kind': 'new-roof' }, 'new'],
  ])('%s after %j is %s', (path, changes, value) => {
    expect(at(path, changes)).toBe(value);
  });

  it('lean on defaults above them: a deck not named is planks, so 3/4 in thick', () => {
    expect([at('framing.deck'), at('framing.deckThickness_m')]).toEqual(['plank', 0.019]);
  });

  it('lean on the zone: snow, ice barrier', () => {
    expect(at('loads.groundSnow_Pa', {}, '8')).toBeGreaterThan(at('loads.groundSnow_Pa', {}, '2A') as number);
    expect(at('codes.iceBarrierRequired', {}, '3A')).toBe(false);
    expect(at('codes.iceBarrierRequired', {}, '4A')).toBe(true);
  });
});

describe('any case', () => {
  it('keeps every answer given, even false, 0 and empty lists, and assumes nothing twice', () => {
    fc.assert(
      fc.property(anyCase, (given) => {
        const { completed, assumptions } = complete(given, zoneOf(given).zone);
        const paths = assumptions.map(({ path }) => path);
        expect(new Set(paths).size).toBe(paths.length);
        for (const path of paths) expect(valueAt(given, path)).toBeUndefined();
        for (const section of Object.keys(given) as (keyof Case)[])
          if (section !== 'overdeck' && section !== 'notes')
            expect(completed[section]).toMatchObject(given[section] as object);
        expect(allPaths.filter((path) => valueAt(completed as unknown as Case, path) === undefined)).toEqual(
          [],
        );
      }),
    );
  });

  it('is left as it was', () => {
    fc.assert(
      fc.property(anyCase, (given) => {
        const before = JSON.stringify(given);
        complete(given, '5A');
        expect(JSON.stringify(given)).toBe(before);
      }),
      { numRuns: 20 },
    );
  });
});

describe('the schema of the case', () => {
  it('has only sections that completing knows: the rest is optional by design', () => {
    const sections = Object.keys(caseSchema.entries);
    expect(sections).toEqual(
      expect.arrayContaining([...new Set(allPaths.map((path) => path.split('.')[0]))]),
    );
  });
});

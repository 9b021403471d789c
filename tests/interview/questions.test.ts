import { describe, expect, it } from 'vitest';
import { defaultRows } from '../../src/catalog/defaults.ts';
import { neverAsked, pathsOf, questionIds, settledBy, stateIds } from '../../src/interview/questions.ts';
import { fieldPaths, fieldSchema } from '../../src/interview/validate.ts';
import type { QuestionField } from '../../src/catalog/wordSchemas.ts';
import { figureNames } from './figures.ts';
import { questionFiles, questionWords } from './words.ts';

const fields: readonly (readonly [string, QuestionField])[] = Object.values(questionWords).flatMap((words) =>
  words.fields.map((field) => [field.path, field] as const),
);
const setPaths = (field: QuestionField): readonly string[] => [field.path, ...(field.alsoSets ?? [])];

/** The closed set of a picklist, or of a list of them. */
function closedSet(path: string): readonly string[] | undefined {
  const schema = fieldSchema(path) as {
    options?: readonly string[];
    pipe?: unknown;
    item?: { options?: readonly string[] };
  };
  return schema.options ?? schema.item?.options;
}

/**
 * School grade of a text by the Flesch-Kincaid formula: 0.39 words/sentences + 11.8 syllables/words - 15.59
 * (Kincaid, Fishburne, Rogers, Chissom: Research Branch Report 8-75, Naval Technical Training, 1975; memory).
 * Syllables are counted as groups of vowels, less a silent e; close enough for an average over many words.
 */
function readingGrade(text: string): number {
  const sentences = text.split(/[.!?]+\s/).filter((part) => /[a-z]/i.test(part)).length;
  const words = text.match(/[a-z]+/gi) ?? [];
  const syllables = words.reduce((sum, word) => {
    const groups =
      word
        .toLowerCase()
        .replace(/e$/, '')
        .match(/[aeiouy]+/g)?.length ?? 0;
    return sum + Math.max(groups, 1);
  }, 0);
  return 0.39 * (words.length / sentences) + 11.8 * (syllables / words.length) - 15.59;
}

describe('questions of the interview', () => {
  it('are 24, then the review; each has its file and each file its place in the order', () => {
    expect(questionIds).toHaveLength(24);
    expect(questionFiles.map((name) => name.replace('.md', '')).sort()).toEqual([...stateIds].sort());
    expect(Object.keys(pathsOf)).toEqual([...stateIds]);
  });

  it.each([...stateIds])('%s sets in its front matter the paths of the order list', (id) => {
    expect(questionWords[id]?.fields.flatMap(setPaths)).toEqual([...pathsOf[id]]);
  });

  it('ask every field of the case exactly once, except those with a reason not to', () => {
    const asked = fields.flatMap(([, field]) => setPaths(field));
    expect([...asked, ...Object.keys(neverAsked)].sort()).toEqual([...fieldPaths()].sort());
  });

  it.each(fields.filter(([, field]) => field.options !== undefined))(
    '%s offers the closed set of the case, in one order',
    (path, field) => {
      expect(field.options?.map((option) => option.value)).toEqual([...(closedSet(path) ?? [])]);
    },
  );

  it('use a choice for every closed set and yes-no for every true or false', () => {
    const kinds = fields.map(([path, field]): [string, string, string] => {
      const schema = fieldSchema(path);
      const wanted =
        schema?.type === 'picklist'
          ? path === 'place.zone'
            ? 'place'
            : 'choice'
          : schema?.type === 'boolean'
            ? 'yes-no'
            : field.kind;
      return [path, field.kind, wanted];
    });
    expect(kinds.filter(([, kind, wanted]) => kind !== wanted)).toEqual([]);
  });

  it('measure a field in a kind whose base unit is that of the field name', () => {
    const suffixes: Readonly<Record<string, readonly string[]>> = {
      _m: ['length', 'span', 'elevation'],
      _N_m: ['lineLoad'],
      _N: ['force'],
      _m2: ['area'],
      _m2K_W: ['resistance'],
      _C: ['temperature', 'months'],
      _pct: ['humidity', 'share', 'months'],
      _Pa: ['load'],
      _m_s: ['speed'],
      _per_12: ['pitch'],
    };
    for (const [path, field] of fields) {
      const suffix = /_(per_12|N_m|m2K_W|m_s|m2|m|C|pct|Pa|N)$/.exec(path)?.[0];
      if (suffix !== undefined) expect(suffixes[suffix], path).toContain(field.kind);
    }
  });

  it('name only help drawings that the app has', () => {
    const used = Object.values(questionWords).flatMap((words) => words.figure ?? []);
    expect(used.filter((name) => !figureNames.includes(name))).toEqual([]);
    expect(used.length).toBeGreaterThanOrEqual(8);
  });

  it('have titles of one line', () => {
    for (const words of Object.values(questionWords))
      expect(words.title.length, words.id).toBeLessThanOrEqual(90);
  });

  it('read at grade 8 or below, taken together (Flesch-Kincaid)', () => {
    const prose = Object.values(questionWords).map((words) =>
      [words.title, words.why, words.notSure, words.body].join(' '),
    );
    expect(readingGrade(prose.join(' '))).toBeLessThanOrEqual(8);
  });
});

describe('settledBy names the page that settles a path', () => {
  it.each([
    ['roof.pitch_rise_per_12', 'roof-shape'],
    ['covering.kind', 'covering'],
    ['covering.ventWish', 'venting'],
    ['priorities.cost', 'priorities'],
    ['insulation.stock', 'insulation'],
    ['place', 'place'],
    ['notes', 'review'],
    ['overdeck', undefined],
    ['nothing.like_this', undefined],
  ])('%s -> %s', (path, page) => {
    expect(settledBy(path)).toBe(page);
  });

  it('agrees with the question that each row of the defaults names', () => {
    expect(defaultRows.filter((row) => settledBy(row.path) !== row.question)).toEqual([]);
  });
});

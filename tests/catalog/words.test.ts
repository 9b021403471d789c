import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { parseWords } from '../../src/catalog/words.ts';

const root = new URL('../../content/', import.meta.url);
const filesOf = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(new URL(`${folder}/`, root))
      .filter((name) => name.endsWith('.md'))
      .map((name) => [`content/${folder}/${name}`, readFileSync(new URL(`${folder}/${name}`, root), 'utf8')]),
  );

const glossary = (text: string, path = 'content/glossary/eave.md') => parseWords({ [path]: text });
const faultOf = (text: string, path?: string): string => {
  const read = glossary(text, path);
  return read.ok ? '' : read.faults.map((fault) => `${fault.path}: ${fault.message}`).join('\n');
};
const GOOD = '---\nid: eave\nterm: Eave\nshort: The lower edge of a roof.\n---\n\nA *long* edge.\n';

describe('parseWords', () => {
  it('reads front matter and body', () => {
    const read = glossary(GOOD);
    expect(read).toMatchObject({
      ok: true,
      words: {
        glossary: { eave: { term: 'Eave', short: 'The lower edge of a roof.', body: 'A *long* edge.' } },
      },
    });
  });

  it('reads files with Windows line ends and a byte order mark alike', () => {
    expect(glossary(`\uFEFF${GOOD.replaceAll('\n', '\r\n')}`)).toEqual(glossary(GOOD));
  });

  it.each([
    ['raw HTML', GOOD.replace('*long*', '<b>long</b>'), 'raw HTML'],
    ['an HTML comment', GOOD.replace('*long*', '<!-- x -->'), 'raw HTML'],
    ['a script link', GOOD.replace('*long*', '[a](javascript:alert(1))'), 'only https addresses'],
    ['a plain http link', GOOD.replace('*long*', '[a](http://example.com)'), 'only https addresses'],
    ['a reference link elsewhere', `${GOOD}\n[a]: data:text/html,x\n`, 'only https addresses'],
    ['a picture', GOOD.replace('*long*', '![a](https://example.com/a.png)'), 'picture'],
    ['a wrong id', GOOD.replace('id: eave', 'id: rake'), 'differs from the file name "eave"'],
    ['an unknown field', GOOD.replace('term:', 'trem:'), 'nearest known name is "term"'],
    ['no front matter', 'Just text', 'needs front matter'],
    ['broken YAML', '---\nid: [eave\n---\n\nText', 'front matter is not YAML'],
    ['an alias bomb', '---\nid: &a [eave]\nterm: [*a, *a, *a]\n---\n\nText', 'front matter is not YAML'],
    ['no body', GOOD.replace('A *long* edge.', ''), 'at least one sentence'],
  ])('refuses %s and names the file', (_, text, message) => {
    const fault = faultOf(text);
    expect(fault).toContain('content/glossary/eave.md');
    expect(fault).toContain(message);
  });

  it('lets code show what prose may not', () => {
    expect(glossary(GOOD.replace('*long*', '`<b>`')).ok).toBe(true);
  });

  it('refuses a folder it does not know and leaves other files alone', () => {
    expect(faultOf(GOOD, 'content/poems/eave.md')).toContain('is in no known folder');
    expect(parseWords({ 'content/tables/a.txt': 'x', 'content/README.md': 'x' })).toMatchObject({ ok: true });
  });

  it('collects the faults of all files', () => {
    const read = parseWords({ 'content/glossary/a.md': 'x', 'content/glossary/b.md': 'y' });
    expect(read.ok ? [] : read.faults.map((fault) => fault.path)).toEqual([
      'content/glossary/a.md',
      'content/glossary/b.md',
    ]);
  });

  it(
    'never throws (any text of at most 30 characters as front matter and as body)',
    { timeout: 30_000 },
    () => {
      const any = fc.string({ unit: 'binary', maxLength: 30 });
      fc.assert(
        fc.property(any, any, (front, body) => {
          expect(() => glossary(`---\n${front}\n---\n${body}`)).not.toThrow();
        }),
        { numRuns: 50 },
      );
    },
  );
});

describe('content as it is', () => {
  it.each(['questions', 'strategies', 'cautions', 'glossary'])('%s have no fault', (folder) => {
    const read = parseWords(filesOf(folder));
    expect(read.ok ? [] : read.faults).toEqual([]);
  });

  it('the glossary has at least 25 terms, no term twice', () => {
    const read = parseWords(filesOf('glossary'));
    const terms = read.ok ? Object.values(read.words.glossary).map((word) => word.term.toLowerCase()) : [];
    expect(terms.length).toBeGreaterThanOrEqual(25);
    expect(new Set(terms).size).toBe(terms.length);
  });

  it('every source named by a strategy or caution stands in the table of sources', () => {
    const table = JSON.parse(readFileSync(new URL('tables/sources.json', root), 'utf8')) as {
      rows: { id: string }[];
    };
    const known = new Set(table.rows.map((row) => row.id));
    const read = parseWords({ ...filesOf('strategies'), ...filesOf('cautions') });
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const named = [...Object.values(read.words.strategies), ...Object.values(read.words.cautions)].flatMap(
      (word) => word.sources.map((source) => `${word.id} ${source}`),
    );
    expect(named.filter((each) => !known.has(each.split(' ')[1] ?? ''))).toEqual([]);
  });
});

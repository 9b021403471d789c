import { marked, type Token, type Tokens } from 'marked';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { markdown, safeMarkdown, tableCsv } from '../../src/report/markdown.ts';
import { plainText } from '../../src/report/document.ts';
import { blocksOf, inlineOf } from '../../src/report/inline.ts';
import { recommending, recordOf, roles, scenarios, stopping, tableOf } from './support.ts';

const headingsOf = (text: string): [number, string][] =>
  marked
    .lexer(text)
    .filter((token): token is Tokens.Heading => token.type === 'heading')
    .map((token) => [token.depth, plainText(inlineOf(token.text))]);

function typesIn(tokens: readonly Token[]): string[] {
  return tokens.flatMap((token) => {
    const inner = 'tokens' in token ? (token.tokens ?? []) : [];
    const items = token.type === 'list' ? (token as Tokens.List).items : [];
    const cells =
      token.type === 'table'
        ? [...(token as Tokens.Table).header, ...(token as Tokens.Table).rows.flat()].flatMap(
            (cell) => cell.tokens,
          )
        : [];
    return [token.type, ...typesIn(inner), ...typesIn(items), ...typesIn(cells)];
  });
}

describe('the record as Markdown', () => {
  it.each(
    [recommending('rafter-overhang'), stopping()].flatMap((name) =>
      roles.map((role) => [name, role] as const),
    ),
  )('%s for the %s: parses back to the same outline', (name, role) => {
    const document = recordOf(name, { role });
    expect(headingsOf(markdown(document))).toEqual([
      [1, document.title],
      ...document.sections.map((section) => [section.level + 1, section.title]),
    ]);
  });

  it.each(scenarios)('%s: holds no HTML and no picture', (name) => {
    const types = typesIn(marked.lexer(markdown(recordOf(name))));
    expect(types.filter((type) => type === 'html' || type === 'image')).toEqual([]);
  });

  it('keeps every table with all its rows', () => {
    const document = recordOf(recommending('flush-outriggers'));
    const tables = marked
      .lexer(markdown(document))
      .filter((token): token is Tokens.Table => token.type === 'table');
    const wanted = document.sections.flatMap((section) =>
      section.blocks.flatMap((block) =>
        block.kind === 'table'
          ? [block.rows.length]
          : block.kind === 'plot'
            ? [block.table.rows.length]
            : block.kind === 'keyFigures'
              ? [block.items.length]
              : [],
      ),
    );
    expect(tables.map((table) => table.rows.length)).toEqual(wanted);
  });

  it('any text comes back as plain text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (text) => {
        const back = inlineOf(`x${safeMarkdown(text)}x`);
        const flat = (one: string): string => one.replace(/\s+/g, ' ');
        expect(flat(plainText(back))).toBe(flat(`x${text}x`));
        expect(back.every((run) => !run.strong && !run.emphasis && run.href === undefined && !run.code)).toBe(
          true,
        );
      }),
      { numRuns: 300 },
    );
  });
});

describe('Markdown of the content', () => {
  it('becomes runs with marks', () => {
    expect(inlineOf('a **b** *c* [d](https://example.org) [e](#f)')).toEqual([
      { text: 'a ' },
      { text: 'b', strong: true },
      { text: ' ' },
      { text: 'c', emphasis: true },
      { text: ' ' },
      { text: 'd', href: 'https://example.org' },
      { text: ' ' },
      { text: 'e', href: '#f' },
    ]);
  });

  it('loses HTML, pictures and unsafe addresses, keeps the words', () => {
    expect(
      blocksOf('<script>x</script>\n\n![a](b.png)\n\n[k](javascript:alert(1)) [l](data:text/html,x)'),
    ).toEqual([
      { kind: 'paragraph', text: [] },
      { kind: 'paragraph', text: [{ text: 'k' }, { text: ' ' }, { text: 'l' }] },
    ]);
  });

  it('headings become strong lines and nested lists flat ones', () => {
    expect(blocksOf('# A\n\n- b\n  - c\n\n1. d')).toEqual([
      { kind: 'paragraph', text: [{ text: 'A', strong: true }] },
      { kind: 'list', ordered: false, items: [[{ text: 'b' }], [{ text: 'c' }]] },
      { kind: 'list', ordered: true, items: [[{ text: 'd' }]] },
    ]);
  });
});

describe('a table as comma-separated values', () => {
  it('quotes every field and disarms formulas', () => {
    const text = tableCsv(
      [{ title: 'A' }, { title: '=B' }],
      [[{ text: [{ text: 'x "y"' }] }, { text: [{ text: '+1' }] }]],
    );
    expect(text).toBe('"A","\'=B"\r\n"x ""y""","\'+1"\r\n');
  });

  it('holds a row for each row of the table', () => {
    const table = tableOf(recordOf(recommending('rafter-overhang')), 'layers-table');
    expect(tableCsv(table.columns, table.rows).trimEnd().split('\r\n')).toHaveLength(table.rows.length + 1);
  });
});

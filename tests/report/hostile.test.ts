import { JSDOM } from 'jsdom';
import { marked, type Token } from 'marked';
import { describe, expect, it } from 'vitest';
import { html } from '../../src/report/html.ts';
import { markdown } from '../../src/report/markdown.ts';
import { record } from '../../src/report/record.ts';
import { hostile } from './hostile.ts';
import { evaluationOf, named, recommending, words } from './support.ts';

const evaluation = evaluationOf(recommending('rafter-overhang'));
const options = { role: 'builder', system: 'IP', size: 'summary' } as const;
const plain = record(named('Plain name', evaluation), words, options);
const parser = new new JSDOM('').window.DOMParser();
/** Tags with how often they occur: what a name must not change. */
const tagsOf = (text: string): Record<string, number> => {
  const counts: Record<string, number> = {};
  for (const element of parser.parseFromString(text, 'text/html').querySelectorAll('*')) {
    counts[element.tagName] = (counts[element.tagName] ?? 0) + 1;
  }
  return counts;
};
const typesOf = (tokens: readonly Token[]): string[] =>
  tokens.flatMap((token) => [token.type, ...('tokens' in token ? typesOf(token.tokens ?? []) : [])]);

describe('a hostile name of the project', () => {
  it.each(hostile)('%s: adds no element and no attribute to the page', (_kind, name) => {
    const text = html(record(named(name, evaluation), words, options));
    expect(tagsOf(text)).toEqual(tagsOf(html(plain)));
    const page = parser.parseFromString(text, 'text/html');
    const events = [...page.querySelectorAll('*')].flatMap((element) =>
      [...element.attributes].filter((attribute) => attribute.name.startsWith('on')),
    );
    expect(events).toEqual([]);
    // eslint-disable-next-line no-control-regex -- the point is to find them
    expect(text).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/);
    expect(text).not.toMatch(/\p{Cs}/u);
  });

  it.each(hostile)('%s: adds no heading, link, picture or HTML to the Markdown', (_kind, name) => {
    const types = (text: string): string[] =>
      typesOf(marked.lexer(text)).filter((type) =>
        ['heading', 'link', 'image', 'html', 'code', 'table'].includes(type),
      );
    expect(types(markdown(record(named(name, evaluation), words, options)))).toEqual(types(markdown(plain)));
  });
});

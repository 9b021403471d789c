import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { escaped, html } from '../../src/report/html.ts';
import { recommending, recordOf, roles, stopping } from './support.ts';

const parser = new new JSDOM('').window.DOMParser();
const pages = new Map<string, Document>();
/** Parsing takes longest: each page once. */
function pageOf(text: string): Document {
  const found = pages.get(text) ?? parser.parseFromString(text, 'text/html');
  pages.set(text, found);
  return found;
}
const some = [recommending('flush-outriggers'), recommending('prebonded-panel'), stopping()];

describe('the record as a page', () => {
  it.each(some.flatMap((name) => roles.map((role) => [name, role] as const)))(
    '%s for the %s: one h1, levels in order, the outline of the tree',
    (name, role) => {
      const document = recordOf(name, { role });
      const page = pageOf(html(document));
      const headings = [...page.querySelectorAll('h1,h2,h3,h4,h5,h6')];
      const levels = headings.map((heading) => Number(heading.tagName.slice(1)));
      expect(levels.filter((level) => level === 1)).toHaveLength(1);
      levels.slice(1).forEach((level, at) => expect(level - (levels[at] ?? 0)).toBeLessThanOrEqual(1));
      expect(headings.slice(1).map((heading) => heading.textContent)).toEqual(
        document.sections.map((section) => section.title),
      );
    },
  );

  it.each(some)('%s: ids are unique and every inner link has its target', (name) => {
    const page = pageOf(html(recordOf(name)));
    const ids = [...page.querySelectorAll('[id]')].map((element) => element.id);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
    const targets = [...page.querySelectorAll('a[href^="#"]')].map(
      (link) => link.getAttribute('href')?.slice(1) ?? '',
    );
    expect(targets.length).toBeGreaterThan(0);
    expect(targets.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('asks nothing of any other address and runs no script', () => {
    const page = pageOf(html(recordOf(some[0] ?? '')));
    expect(page.querySelectorAll('script, link, img, iframe, object, form')).toHaveLength(0);
    expect(page.querySelectorAll('[src], [onclick], [onload]')).toHaveLength(0);
    expect(html(recordOf(some[0] ?? ''))).not.toMatch(/url\(|@import/);
    expect(page.documentElement.lang).toBe('en-US');
  });

  it.each(['IP', 'SI'] as const)('no number of a table stands without its unit in %s', (system) => {
    const page = pageOf(html(recordOf(recommending('flush-outriggers'), { system })));
    // Counts of things named in the row's heading need none: assumptions such as "Valleys: 0".
    const bare = [...page.querySelectorAll('table:not(#assumptions-table) td, .figures .value')]
      .map((cell) => cell.textContent.trim())
      .filter((text) => /^[−-]?[\d.,]+$/.test(text));
    expect(bare).toEqual([]);
  });

  it('says each verdict in a word beside its shape', () => {
    const page = pageOf(html(recordOf(recommending('flush-outriggers'))));
    const verdicts = [...page.querySelectorAll('.verdict')];
    expect(verdicts.length).toBeGreaterThan(8);
    for (const verdict of verdicts) expect(verdict.textContent).toMatch(/^[●▲◆] (meets|misses|open)$/);
  });

  it('every table has a caption and headings, every drawing a name', () => {
    const page = pageOf(html(recordOf(recommending('flush-outriggers'))));
    for (const table of page.querySelectorAll('table')) {
      expect(table.querySelector('caption')?.textContent).toBeTruthy();
      expect(table.querySelectorAll('thead th[scope="col"]').length).toBeGreaterThan(1);
      expect(table.querySelectorAll('tbody tr > th[scope="row"]').length).toBe(table.tBodies[0]?.rows.length);
    }
    for (const drawing of page.querySelectorAll('svg')) {
      expect(drawing.getAttribute('role')).toBe('img');
      expect(drawing.querySelector('title')?.textContent).toBeTruthy();
    }
  });

  it('any text comes back as it went in, without what HTML forbids', () => {
    const holder = new JSDOM('').window.document.createElement('div');
    // The parser makes every line end a line feed.
    const flat = (text: string): string => text.replace(/\r\n?/g, '\n');
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
        holder.innerHTML = `<p title="${escaped(text)}">${escaped(text)}</p>`;
        const allowed = [...text]
          .filter((letter) => !/[^\P{Cc}\t\n\r]|[\uFFFE\uFFFF]/u.test(letter))
          .join('');
        const paragraph = holder.querySelector('p');
        expect(flat(paragraph?.textContent ?? '')).toBe(flat(allowed));
        expect(flat(paragraph?.title ?? '')).toBe(flat(allowed));
        expect(paragraph?.childElementCount).toBe(0);
        expect(holder.childNodes).toHaveLength(1);
      }),
      { numRuns: 200 },
    );
  });
});

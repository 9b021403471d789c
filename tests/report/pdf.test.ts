import { beforeAll, describe, expect, it } from 'vitest';
import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { ReportDocument } from '../../src/report/document.ts';
import { pdf, type PageSize } from '../../src/report/pdf.ts';
import { record } from '../../src/report/record.ts';
import { hostile } from './hostile.ts';
import { evaluationOf, fonts, named, recommending, recordOf, scenarios, stopping, words } from './support.ts';

interface Item {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
}

const FOOT = 54;
const TWO_MEGABYTES = 2_000_000;

const bytesOf = (document: ReportDocument, page: PageSize = 'letter'): Uint8Array =>
  pdf(document, { page, fonts });
const open = (bytes: Uint8Array): Promise<PDFDocumentProxy> =>
  getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 }).promise;

async function itemsOf(file: PDFDocumentProxy): Promise<Item[][]> {
  const pages: Item[][] = [];
  for (let number = 1; number <= file.numPages; number += 1) {
    const content = await (await file.getPage(number)).getTextContent();
    pages.push(
      content.items.flatMap((item) => {
        if (!('str' in item) || item.str.trim() === '') return [];
        const [a = 0, b = 0, , , x = 0, y = 0] = item.transform as number[];
        // Turned texts belong to drawings; their boxes are the drawing's business.
        return b === 0 ? [{ text: item.str, x, y, width: item.width, size: a }] : [];
      }),
    );
  }
  return pages;
}

const flat = (text: string): string => text.replace(/\s+/g, ' ');
const textOf = (pages: readonly Item[][]): string =>
  flat(pages.map((items) => items.map((item) => item.text).join(' ')).join(' '));

describe('the record as a PDF', () => {
  const name = recommending('rafter-overhang');
  const document = recordOf(name);
  let bytes: Uint8Array;
  let file: PDFDocumentProxy;
  let pages: Item[][];
  beforeAll(async () => {
    bytes = bytesOf(document);
    file = await open(bytes);
    pages = await itemsOf(file);
  }, 120_000);

  it('has the same bytes each time and stays small', () => {
    expect(Buffer.compare(bytesOf(document), bytes)).toBe(0);
    expect(bytes.length).toBeLessThan(TWO_MEGABYTES);
  });

  it('has its title, language and pages of the size asked for', async () => {
    const { info } = await file.getMetadata();
    expect((info as { Title?: string }).Title).toBe(document.title);
    expect((info as { Language?: string }).Language).toBe('en-US');
    expect((await file.getPage(1)).view).toEqual([0, 0, 612, 792]);
  });

  it('reads back the sections in the order of the tree', () => {
    const text = textOf(pages.slice(2));
    let from = 0;
    for (const section of document.sections.slice(2)) {
      const at = text.indexOf(flat(section.title), from);
      expect(at, section.title).toBeGreaterThanOrEqual(from);
      from = at;
    }
  });

  it('reads back the key figures with limit and margin, in reading order, on the first page', () => {
    const figures = document.sections[0]?.blocks.find((block) => block.kind === 'keyFigures');
    if (figures?.kind !== 'keyFigures') throw new Error('no figures');
    const text = textOf(pages.slice(0, 1)).replaceAll(' ', '');
    let from = 0;
    for (const figure of figures.items) {
      for (const part of [figure.label, figure.value, figure.limit, figure.margin]) {
        const at = text.indexOf(part.replace(/\s/g, ''), from);
        expect(at, part).toBeGreaterThanOrEqual(from);
        from = at;
      }
    }
  });

  it('reads back letters outside the standard fonts', () => {
    const text = textOf(pages);
    for (const letter of ['²', '°', '·', '’', '×', '–']) expect(text).toContain(letter);
  });

  it('has a bookmark for each chapter that leads to its page', async () => {
    // Parts of a chapter hang below it.
    type Bookmark = Awaited<ReturnType<typeof file.getOutline>>[number];
    const flattened = (items: readonly Bookmark[]): Bookmark[] =>
      items.flatMap((item) => [item, ...flattened(item.items as Bookmark[])]);
    const outline = flattened(await file.getOutline());
    expect(outline.map((item) => item.title)).toEqual(document.sections.map((section) => section.title));
    for (const item of outline) {
      const [target] = item.dest as [{ num: number; gen: number }];
      const index = await file.getPageIndex(target);
      expect(textOf(pages.slice(index, index + 1))).toContain(flat(item.title));
    }
  });

  it('has a contents page whose links lead to the chapters', async () => {
    const at = pages.findIndex((items) => items.some((item) => item.text === 'Contents'));
    const links = (await (await file.getPage(at + 1)).getAnnotations()).filter(
      (one) => one.subtype === 'Link',
    );
    const targets = await Promise.all(
      links.map((link) => file.getPageIndex((link.dest as [{ num: number; gen: number }])[0])),
    );
    expect(links.length).toBeGreaterThanOrEqual(document.sections.length);
    document.sections.forEach((section, place) => {
      const index = targets[place] ?? -1;
      expect(textOf(pages.slice(index, index + 1))).toContain(flat(section.title));
    });
  });

  it('numbers its pages and names project on each', () => {
    pages.forEach((items, at) => {
      const text = items.map((item) => item.text).join(' ');
      expect(text).toContain(`page ${at + 1} of ${pages.length}`);
      expect(text).toContain(document.project);
    });
  });

  it('embeds every font', async () => {
    const raw = Buffer.from(bytes).toString('latin1');
    expect(raw.match(/\/FontFile2/g)?.length).toBe(4);
    expect(raw).not.toMatch(/\/BaseFont \/Helvetica/);
    await file.getPage(1);
  });
});

/** Whether two pieces of text run into each other by more than a hair. */
function overlaps(a: Item, b: Item): boolean {
  const high = Math.min(a.size, b.size) * 0.6;
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  return across > 1 && Math.abs(a.y - b.y) < high;
}

// Laying out takes a second each: A4, the narrower page, is tried where a strategy first wins.
const narrow = new Set([recommending('flush-outriggers'), recommending('prebonded-panel')]);

describe.each(scenarios)('the pages of %s', (name) => {
  it.each<PageSize>(narrow.has(name) ? ['letter', 'a4'] : ['letter'])(
    'on %s: nothing cut off, nothing overlapping, no orphaned heading, the summary on one page',
    async (page) => {
      const document = recordOf(name);
      // Words of a drawing have their own tests; here the text around them counts.
      const without: ReportDocument = {
        ...document,
        sections: document.sections.map((section) => ({
          ...section,
          blocks: section.blocks.map((block) =>
            block.kind === 'drawing' ? { ...block, shapes: { ...block.shapes, shapes: [] } } : block,
          ),
        })),
      };
      const file = await open(bytesOf(without, page));
      const view = (await file.getPage(1)).view;
      const width = view[2] ?? 0;
      const pages = await itemsOf(file);
      for (const items of pages) {
        for (const item of items) {
          expect(item.x, item.text).toBeGreaterThan(50);
          expect(item.x + item.width, item.text).toBeLessThan(width - 50);
          expect(item.y, item.text).toBeGreaterThan(25);
        }
        items.forEach((one, at) => {
          const other = items.slice(at + 1).find((two) => overlaps(one, two));
          expect(other?.text, `over ${one.text}`).toBeUndefined();
        });
        const titles = new Set(document.sections.map((section) => section.title));
        for (const heading of items.filter((item) => item.size > 15 && titles.has(item.text))) {
          const below = items.filter((item) => item.y < heading.y - 5 && item.y > FOOT - 10);
          expect(below.length, heading.text).toBeGreaterThan(1);
        }
      }
      if (evaluationOf(name).ranking.recommended !== null) {
        expect(pages[1]?.some((item) => item.text === 'Contents')).toBe(true);
      }
    },
    120_000,
  );
});

describe('a hostile name of the project in a PDF', () => {
  it.each(hostile)(
    '%s',
    async (_kind, name) => {
      const evaluation = named(name, evaluationOf(recommending('rafter-overhang')));
      const document = record(evaluation, words, { role: 'builder', system: 'SI', size: 'summary' });
      const file = await open(bytesOf(document));
      const pages = await itemsOf(file);
      expect(await file.getJSActions()).toBeNull();
      const raw = await file.getMetadata();
      expect(JSON.stringify(raw.info)).not.toContain('\\u0000');
      for (const item of pages.flat()) {
        expect(item.x + item.width, item.text).toBeLessThan(612 - 50);
      }
      expect(textOf(pages)).toContain('page 1 of');
    },
    60_000,
  );
});

describe('other sizes', () => {
  it('a stopped case is a short record', async () => {
    const file = await open(bytesOf(recordOf(stopping(), { role: 'builder' })));
    expect(file.numPages).toBeLessThan(15);
  }, 60_000);
  it('tells its progress from 0 to 1', () => {
    const shares: number[] = [];
    pdf(recordOf(stopping()), { page: 'a4', fonts, onProgress: (share) => shares.push(share) });
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  }, 60_000);
});

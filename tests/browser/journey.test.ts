/** One person, one roof, from the first question to the PDF: with the mouse, then with the keyboard alone. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { stateIds } from '../../src/interview/questions.ts';
import { placeFound, roofName } from './answers.ts';
import { pdfPages } from './pdfText.ts';
import { axeFindings, desktop, openSite, phone, sidewaysFindings, type Site, type Visit } from './site.ts';
import { keyboard, mouse, walk, type Hand } from './walk.ts';

let site: Site;
beforeAll(async () => {
  site = await openSite();
  process.stdout.write(`Browser tests run in Chromium ${site.browser.version()} from ${site.from}\n`);
});
afterAll(async () => {
  await site.close();
});

const STRATEGIES = ['Rafter overhang', 'Flush frame with outriggers', 'Prebonded vented panel'];
/** The sentence that says which way comes first, whoever reads. */
const firstOf = (page: Page) => page.getByText(/^The .* (comes|ranks) first,/).first();

/** The pages in the order in which they are opened, with what must stand on them. */
const pages: readonly { readonly name: string; seen(page: Page): Promise<void> }[] = [
  {
    name: 'Compare',
    async seen(page) {
      for (const strategy of STRATEGIES) await page.getByText(strategy).first().waitFor();
      await firstOf(page).waitFor();
    },
  },
  {
    name: 'Section',
    async seen(page) {
      await page.locator('svg[role="img"]').first().waitFor();
    },
  },
  {
    name: 'Workings',
    async seen(page) {
      await page
        .getByRole('navigation', { name: 'Numbers on this page' })
        .getByRole('link')
        .first()
        .waitFor();
    },
  },
  {
    name: 'Record',
    async seen(page) {
      await page.getByRole('button', { name: 'Download PDF' }).waitFor();
    },
  },
];

/** Places whose layout differs on a narrow page: one question of each kind of field, and all pages. */
const CHECKED_NARROW = new Set([
  'Projects',
  'place',
  'roof-shape',
  'priorities',
  'review',
  ...pages.map(({ name }) => name),
]);

async function open(page: Page, hand: Hand, name: string): Promise<void> {
  await hand.follow(
    page,
    page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name }),
    'before',
  );
  await page.waitForURL(new RegExp(`#/${name.toLowerCase()}`));
  // A page loaded on demand takes the title over when it stands.
  await page.waitForFunction((start) => document.title.startsWith(start), `${name} – `);
  expect(await page.title()).toMatch(/ – Overdeck$/);
}

async function recommendedOn(page: Page): Promise<string> {
  const lead = ((await firstOf(page).textContent()) ?? '').trim().toLowerCase();
  const name = STRATEGIES.find((strategy) => lead.startsWith(`the ${strategy.toLowerCase()} `));
  expect(name, lead).toBeDefined();
  return name as string;
}

async function downloadedPdf(page: Page, hand: Hand): Promise<string[]> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    hand.follow(page, page.getByRole('button', { name: 'Download PDF' }), 'after'),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.pdf$/);
  return pdfPages(readFileSync(await download.path()));
}

async function journey(hand: Hand, visit: Visit, check: (where: string) => Promise<void>): Promise<void> {
  const { page } = visit;
  await check('Projects');
  const asked = await walk(page, hand, check);
  expect(asked).toEqual([...stateIds]);
  let recommended = '';
  for (const { name, seen } of pages) {
    await open(page, hand, name);
    await seen(page);
    if (name === 'Compare') recommended = await recommendedOn(page);
    await check(name);
  }
  const sheets = await downloadedPdf(page, hand);
  expect(sheets.length).toBeGreaterThan(3);
  const text = sheets.join(' ');
  expect(sheets[0]).toContain(roofName);
  expect(text).toContain(recommended);
  expect(text).toContain(placeFound);
  expect(text).toMatch(/approves nothing/i);
  expect(visit.troubles).toEqual([]);
}

/** A slow machine shared with others is no fault of the page. */
const GENEROUS_MS = 600_000;

describe.each([
  { size: desktop, isEveryStateChecked: true },
  // The questions have the same parts at either width; a narrow page is checked where the layout differs.
  { size: phone, isEveryStateChecked: false },
])('$size.width px wide', { timeout: GENEROUS_MS }, ({ size, isEveryStateChecked }) => {
  it('the mouse leads through every question and page to the PDF; axe finds nothing, nothing runs off the side', async () => {
    const visit = await site.visit(size);
    const found: string[] = [];
    await journey(mouse, visit, async (where) => {
      const isChecked = isEveryStateChecked || CHECKED_NARROW.has(where);
      if (isChecked) found.push(...(await axeFindings(visit.page, where)));
      found.push(...(await sidewaysFindings(visit.page, where)));
    });
    expect(found).toEqual([]);
    await visit.context.close();
  });

  it('the keyboard alone leads there as well', async () => {
    const visit = await site.visit(size);
    await journey(keyboard, visit, async () => undefined);
    await visit.context.close();
  });
});

/** What a person relies on while working: the work is kept, and a bad file changes nothing. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answers, fieldId } from './answers.ts';
import { axeFindings, desktop, openSite, type Site } from './site.ts';
import { mouse, questionOn } from './walk.ts';

/** A slow machine shared with others is no fault of the page. */
const GENEROUS_MS = 600_000;

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => {
  await site.close();
});

/** Starts a roof and answers the first questions. */
async function begun() {
  const visit = await site.visit(desktop);
  const { page } = visit;
  await mouse.start(page);
  for (const question of ['reader', 'job', 'place']) {
    await page.locator(`[data-question="${question}"]`).waitFor();
    for (const answer of answers[question] ?? []) await mouse.answer(page, answer);
    await mouse.next(page);
  }
  await page.locator('[data-question="code"]').waitFor();
  return visit;
}

/** Name of the file, what it holds, and words of its refusal. */
const badFiles: readonly (readonly [string, string, string])[] = [
  [
    'range.json',
    '{"overdeck":1,"place":{"zone":"6A"},"roof":{"pitch_rise_per_12":31}}',
    'roof.pitch_rise_per_12: 31 is above 24',
  ],
  ['broken.json', '{"overdeck":1', 'is not JSON at line 1, column 14'],
  [
    'strange.json',
    '{"overdeck":1,"place":{"zone":"6A"},"rofo":{}}',
    'rofo: is not a known field; nearest known name is "roof"',
  ],
  ['huge.json', `{"overdeck":1,"notes":"${'x'.repeat(2_000_000)}"}`, 'at most 2000000 (2 MB) are read'],
];

describe('a project', { timeout: GENEROUS_MS }, () => {
  it('is there again after a reload, at the same question, with its answers', async () => {
    const { page, context, troubles } = await begun();
    await page
      .locator('label')
      .filter({ has: page.locator('input[value="2018"]') })
      .click();
    await page.reload();
    await page.locator('[data-question]').waitFor();
    expect(await questionOn(page)).toBe('code');
    expect(await page.locator(`input[name="${fieldId('codes.edition')}"][value="2018"]`).isChecked()).toBe(
      true,
    );
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    await page.getByText(/^Chosen: Duluth/).waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });

  it('is left as it is by bad case files, each refused in words', async () => {
    const { page, context, troubles } = await begun();
    await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name: 'Projects' }).click();
    const cards = page.locator('ul.cards > li');
    await cards.first().waitFor();
    const before = await cards.allInnerTexts();
    for (const [name, content, words] of badFiles) {
      await page
        .getByLabel('Bring a case file')
        .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
      await page.getByRole('alert').filter({ hasText: name }).filter({ hasText: words }).waitFor();
      expect(await cards.allInnerTexts()).toEqual(before);
    }
    expect(await axeFindings(page, 'Projects with faults')).toEqual([]);
    await page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name: 'Brief' }).click();
    await page.locator('[data-question="code"]').waitFor();
    expect(troubles).toEqual([]);
    await context.close();
  });
});

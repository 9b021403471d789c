/** A weather file of 9 MB on the page: read while the page lives, used with the keyboard; a bad one changes nothing. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { epwText, headers, hoursOfYear } from '../weather/files.ts';
import { fieldId } from './answers.ts';
import { axeFindings, desktop, openSite, sidewaysFindings, type Site } from './site.ts';
import { mouse } from './walk.ts';

/** A slow machine shared with others is no fault of the page. */
const GENEROUS_MS = 600_000;
/** Six records an hour make a file of 9 MB. */
const RECORDS = 6;

const folder = mkdtempSync(join(tmpdir(), 'overdeck-weather-page-'));
const large = join(folder, 'field.epw');
let site: Site;
beforeAll(async () => {
  writeFileSync(
    large,
    epwText({
      headers: headers({ 7: `DATA PERIODS,1,${RECORDS},Data,Sunday, 1/ 1,12/31` }),
      hours: hoursOfYear().flatMap((hour) => Array.from({ length: RECORDS }, () => hour)),
    }),
  );
  site = await openSite();
});
afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true });
});

/** Counts on the page, every 20 ms, how often it came to run while the progress was shown. */
const COUNT_TICKS = `window.ticks = 0; setInterval(() => { if (document.querySelector('form progress')) window.ticks += 1; }, 20);`;
/** A page that is frozen by the reading gets one turn at most while it is shown. */
const FEWEST_TICKS = 5;

describe('a weather file', { timeout: GENEROUS_MS }, () => {
  it('of 9 MB leaves the page alive, and is used by keyboard; a bad one after it changes nothing', async () => {
    const { page, context, troubles } = await site.visit(desktop);
    await mouse.start(page);
    for (const question of ['reader', 'job']) {
      await page.locator(`[data-question="${question}"]`).waitFor();
      await mouse.next(page);
    }
    await page.locator('[data-question="place"]').waitFor();
    await page.getByLabel('Climate zone', { exact: true }).selectOption('4A');
    await page.getByLabel('Climate zone', { exact: true }).focus();
    await page.keyboard.press('Tab');
    const input = page.locator(`#${fieldId('place.weatherFile')}`);
    expect(await input.evaluate((element) => element === document.activeElement)).toBe(true);

    await page.evaluate(COUNT_TICKS);
    await input.setInputFiles(large);
    await page.getByText('field.epw has been read').waitFor();
    expect(await page.evaluate('window.ticks')).toBeGreaterThanOrEqual(FEWEST_TICKS);
    const read = page.getByRole('region', { name: 'What field.epw holds' });
    expect(await read.innerText()).toContain('5256 °F·d');

    // The focus is on what was found; the next control uses it.
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    const used = page.getByRole('region', { name: 'The weather file in use' });
    await used.waitFor();
    expect(await sidewaysFindings(page, 'a file in use')).toEqual([]);

    await input.setInputFiles({ name: 'bad.csv', mimeType: 'text/csv', buffer: Buffer.from('a,b\n1,2\n') });
    await page
      .getByRole('alert')
      .filter({ hasText: 'bad.csv was not taken. Nothing has changed.' })
      .waitFor();
    expect(await axeFindings(page, 'a file in use, another refused')).toEqual([]);
    expect(await used.innerText()).toContain('In use: field.epw');
    expect(troubles).toEqual([]);
    await context.close();
  });
});

/** The Section page: the work step by step, the drawing closer, a layer in the drawing, before and after; by keyboard. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, desktop, openSite, sidewaysFindings, type Site } from './site.ts';

/** A slow machine shared with others is no fault of the page. */
const GENEROUS_MS = 300_000;

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => {
  await site.close();
});

describe('the drawing on the Section page', { timeout: GENEROUS_MS }, () => {
  it('is built up, looked at closely, asked about and compared with today, without a pointer', async () => {
    const { page, context, troubles } = await site.visit(desktop);
    // A re-roof: it has a roof before.
    await page.getByRole('button', { name: 'Open' }).first().click();
    await page
      .getByRole('link', { name: /Section/ })
      .first()
      .click();
    const drawing = page.getByRole('img', { name: /^Eave section/ });
    await drawing.waitFor();
    const bodies = () => drawing.locator('.part').count();
    const finished = await bodies();

    // Zoom and move with keys; Tab leaves the drawing.
    const frame = page.getByRole('group', { name: /^The drawing: plus and minus zoom/ });
    const whole = await drawing.getAttribute('viewBox');
    await frame.focus();
    await page.keyboard.press('+');
    await page.keyboard.press('+');
    const near = await drawing.getAttribute('viewBox');
    expect(near).not.toBe(whole);
    await page.keyboard.press('ArrowRight');
    expect(await drawing.getAttribute('viewBox')).not.toBe(near);
    await page.keyboard.press('Tab');
    expect(await frame.evaluate((element) => element === document.activeElement)).toBe(false);
    await page.getByRole('button', { name: 'Whole' }).press('Enter');
    expect(await drawing.getAttribute('viewBox')).toBe(whole);

    // A layer touched in the drawing says what it is; its neighbor is one button away.
    await drawing.locator('.part[data-layer="deck"]').first().dispatchEvent('click');
    const card = page.getByRole('region', { name: 'The layer touched in the drawing' });
    await card.getByText('Permeance, wet cup').waitFor();
    const deck = await card.getByRole('heading').innerText();
    await card.getByRole('button', { name: 'Next layer outward' }).press('Enter');
    expect(await card.getByRole('heading').innerText()).not.toBe(deck);
    expect(
      await card.getByRole('link', { name: /^Change the answer that set it/ }).getAttribute('href'),
    ).toMatch(/^#\/brief\//);
    expect(await axeFindings(page, 'a layer of the drawing')).toEqual([]);
    await card.getByRole('button', { name: 'Close' }).press('Enter');

    // Before and after.
    const slider = page.getByRole('slider', { name: 'Before and after' });
    await slider.focus();
    await page.keyboard.press('Home');
    expect(await slider.getAttribute('aria-valuetext')).toBe('the roof before');
    expect(await drawing.locator('.before').count()).toBe(1);
    expect(await drawing.locator('.part.added').count()).toBeGreaterThan(0);
    await page.keyboard.press('End');
    expect(await drawing.locator('.before').count()).toBe(0);

    // Step by step: from what stands to the finished roof.
    await page.getByRole('radio', { name: 'Finished' }).focus();
    await page.keyboard.press('ArrowRight');
    const work = page.getByRole('region', { name: 'The work, step by step' });
    await work.getByRole('button', { name: 'Next step' }).focus();
    expect(await bodies()).toBeLessThan(finished);
    await page.keyboard.press('ArrowRight');
    await work.getByRole('heading', { name: /^1\./ }).waitFor();
    const place = await work.getByText(/^Step 1 of/).innerText();
    const total = Number(/of (\d+)/.exec(place)?.[1]);
    expect(total).toBeGreaterThan(10);
    for (const key of ['ArrowRight', 'ArrowLeft', 'End']) await page.keyboard.press(key);
    await work.getByRole('heading', { name: new RegExp(`^${String(total)}\\.`) }).waitFor();
    expect(await bodies()).toBe(finished);
    expect(await work.getByRole('listitem').count()).toBe(0);
    await work.getByText('All steps as a list').click();
    expect(await work.getByRole('listitem').count()).toBe(total);
    await work.getByRole('button', { name: 'Air and vapor layer on the deck' }).press('Enter');
    await work.getByText(/Hold point H1/).waitFor();
    expect(await work.getByText('Covered for good').count()).toBe(1);
    expect(await drawing.locator('.sheet-line.chosen').count()).toBeGreaterThan(0);
    expect(await axeFindings(page, 'a step of the work')).toEqual([]);
    expect(await sidewaysFindings(page, 'a step of the work')).toEqual([]);

    // An answer shows in the drawing beside its question, in words and as a mark that needs no motion.
    await page.goto(page.url().replace(/#.*/, '#/brief/covering'));
    await page.locator('aside').getByRole('img').waitFor();
    expect(await page.locator('aside .changed').count()).toBe(0);
    await page.getByRole('radio', { name: /Standing-seam metal/ }).press('Space');
    await page.getByText(/^Changed: .*standing-seam metal/).waitFor();
    expect(await page.locator('aside .changed').count()).toBeGreaterThan(0);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

/** The Section page: the three places by keyboard, a path walked, and the drawing taken away as SVG, DXF and PNG. */
import { readFileSync } from 'node:fs';
import DxfParser from 'dxf-parser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, desktop, openSite, sidewaysFindings, type Site } from './site.ts';

/** A slow machine shared with others is no fault of the page. */
const GENEROUS_MS = 300_000;
/** The first bytes of every PNG file (ISO/IEC 15948, 5.2). */
const PNG_SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];

let site: Site;
beforeAll(async () => {
  site = await openSite();
});
afterAll(async () => {
  await site.close();
});

describe('the Section page', { timeout: GENEROUS_MS }, () => {
  it('shows eave, rake and ridge by keyboard, walks a path, and saves the drawing', async () => {
    const { page, context, troubles } = await site.visit(desktop);
    await page.getByRole('button', { name: 'Open' }).first().click();
    await page
      .getByRole('link', { name: /Section/ })
      .first()
      .click();
    const places = page.getByRole('group', { name: 'Place drawn' });
    await places.getByRole('radio', { name: 'Eave' }).focus();
    for (const place of ['rake', 'ridge']) {
      await page.keyboard.press('ArrowRight');
      await page.getByRole('heading', { level: 1, name: `The ${place}, drawn to scale` }).waitFor();
      expect(page.url()).toMatch(new RegExp(`#/section/[a-z-]+\\.${place}$`));
    }

    await page
      .getByRole('group', { name: 'Path drawn over it' })
      .getByRole('radio', { name: 'Air barrier' })
      .focus();
    await page.keyboard.press('Space');
    const stops = page.getByRole('region', { name: 'Air barrier, stop by stop' }).getByRole('listitem');
    expect(await stops.count()).toBeGreaterThanOrEqual(3);

    await page.getByText('The drawing in words').first().click();
    expect(await page.locator('details ol > li').first().innerText()).not.toMatch(/^\d/);
    expect(await axeFindings(page, 'the ridge with a path')).toEqual([]);
    expect(await sidewaysFindings(page, 'the ridge with a path')).toEqual([]);

    const saved = async (format: string): Promise<Buffer> => {
      const waiting = page.waitForEvent('download');
      await page.getByRole('button', { name: `Save as ${format}` }).click();
      const file = await waiting;
      expect(file.suggestedFilename()).toMatch(new RegExp(`ridge.*\\.${format.toLowerCase()}$`));
      return readFileSync(await file.path());
    };
    expect((await saved('SVG')).toString('utf8')).toContain('<title>Ridge section');
    const dxf = new DxfParser().parseSync((await saved('DXF')).toString('utf8'));
    expect(Object.keys(dxf?.tables.layer.layers ?? {})).toContain('AIR-BARRIER');
    expect([...(await saved('PNG')).subarray(0, PNG_SIGNATURE.length)]).toEqual(PNG_SIGNATURE);

    await page.getByText('All strategies side by side at one scale').click();
    await page.getByRole('article').nth(2).waitFor();
    expect(await axeFindings(page, 'side by side')).toEqual([]);
    expect(troubles).toEqual([]);
    await context.close();
  });
});

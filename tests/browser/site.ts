/** The built site on a plain static host, in a sub-folder, and a browser that tells what goes wrong on a page. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { root } from '../support/arrows.ts';
import { launchChromium } from './chromium.mjs';

const FOLDER = '/tools/roof/';
/** How long one step may take on a slow, busy machine. */
const PATIENCE_MS = 90_000;
const dist = join(root, 'dist');
const kinds: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
};

function fileFor(address: string): string | undefined {
  const path = decodeURIComponent(new URL(address, 'http://host').pathname);
  if (!path.startsWith(FOLDER)) return undefined;
  const file = join(dist, normalize(path.slice(FOLDER.length) || 'index.html'));
  return file.startsWith(dist) && existsSync(file) && statSync(file).isFile() ? file : undefined;
}

async function serve(): Promise<Server> {
  const server = createServer((request, response) => {
    const file = fileFor(request.url ?? '');
    if (file === undefined) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': kinds[extname(file)] ?? 'application/octet-stream' });
    response.end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return server;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}
export const desktop: Size = { width: 1440, height: 900 };
export const phone: Size = { width: 390, height: 844 };

/** One visitor with a fresh profile. */
export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors on the console, uncaught errors, failed loads, requests to another host: one sentence each. */
  readonly troubles: string[];
}

export interface Site {
  readonly address: string;
  readonly browser: Browser;
  /** Where the browser came from, for the run's output. */
  readonly from: string;
  visit(size: Size): Promise<Visit>;
  close(): Promise<void>;
}

function watch(page: Page, host: string, troubles: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => troubles.push(`uncaught: ${error.message}`));
  page.on('request', (request) => {
    const { protocol, host: asked } = new URL(request.url());
    if (['http:', 'https:', 'ws:', 'wss:'].includes(protocol) && asked !== host) {
      troubles.push(`request to another host: ${request.url()}`);
    }
  });
  page.on('response', (response) => {
    if (response.status() >= 400) troubles.push(`${response.status()} for ${response.url()}`);
  });
}

export async function openSite(): Promise<Site> {
  if (!existsSync(join(dist, 'index.html'))) {
    throw new Error('dist/ holds no built site; run "npm run build" before the browser tests');
  }
  const server = await serve();
  const { browser, from } = await launchChromium();
  const host = `127.0.0.1:${(server.address() as AddressInfo).port}`;
  const address = `http://${host}${FOLDER}`;
  return {
    address,
    browser,
    from,
    async visit(size) {
      const context = await browser.newContext({
        viewport: size,
        acceptDownloads: true,
        reducedMotion: 'reduce',
      });
      context.setDefaultTimeout(PATIENCE_MS);
      const page = await context.newPage();
      const troubles: string[] = [];
      watch(page, host, troubles);
      await page.goto(address);
      await page.getByRole('heading', { level: 1 }).waitFor();
      return { page, context, troubles };
    },
    async close() {
      await browser.close();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What axe finds at WCAG 2.2 AA in the state that the page is in: one sentence each. */
export async function axeFindings(page: Page, where: string): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .options({ resultTypes: ['violations'] })
    .withTags(WCAG)
    // One frame only, so that no second page is needed to gather the findings.
    .setLegacyMode()
    .analyze();
  return violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${where}: ${id} (${help}) at ${target.join(' ')}`),
  );
}

/** What makes the page wider than the window, from outside to inside: one sentence, or none when all fits. */
export function sidewaysFindings(page: Page, where: string): Promise<string[]> {
  return page.evaluate((place) => {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    const scrolls = (element: Element | null): boolean =>
      element !== null &&
      (getComputedStyle(element).overflowX !== 'visible' || scrolls(element.parentElement));
    const wide = [...document.querySelectorAll('main *')]
      .filter(
        (element) => element.getBoundingClientRect().right > clientWidth && !scrolls(element.parentElement),
      )
      .map(
        (element) => `${element.tagName.toLowerCase()} ${(element.textContent ?? '').trim().slice(0, 40)}`,
      );
    return [`${place}: ${scrollWidth - clientWidth} px run off the side: ${wide.slice(0, 6).join(' > ')}`];
  }, where);
}

/**
 * Finds a Chromium to drive: CHROMIUM_PATH, else a usual name on the path, else the one that the registry
 * package @sparticuz/chromium ships together with the shared libraries it needs.
 * Run alone it starts the browser once and says which one it is; exit 1 when none starts.
 */
import { accessSync, constants, mkdirSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--disable-dev-shm-usage',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

function canRun(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch (error) {
    if (['ENOENT', 'EACCES', 'ENOTDIR'].includes(error.code)) return false;
    throw error;
  }
}

function onPath() {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return NAMES.flatMap((name) => folders.map((folder) => join(folder, name))).find(canRun);
}

/** Unpacks the packaged browser below node_modules; its libraries come along only when asked for by this variable. */
async function packaged() {
  const folder = join(root, 'node_modules', '.cache', 'chromium');
  mkdirSync(folder, { recursive: true });
  const { TMPDIR, CODEBUILD_BUILD_IMAGE } = process.env;
  Object.assign(process.env, { TMPDIR: folder, CODEBUILD_BUILD_IMAGE: 'nodejs20' });
  try {
    const { default: sparticuz } = await import('@sparticuz/chromium');
    const executablePath = await sparticuz.executablePath();
    const left = sparticuz.args.filter((flag) => !/web-security|insecure-content|single-process/.test(flag));
    return { executablePath, args: [...left, ...FLAGS] };
  } finally {
    if (TMPDIR === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = TMPDIR;
    if (CODEBUILD_BUILD_IMAGE === undefined) delete process.env.CODEBUILD_BUILD_IMAGE;
    else process.env.CODEBUILD_BUILD_IMAGE = CODEBUILD_BUILD_IMAGE;
  }
}

/** What to start: the program, its flags, and where it was found. */
export async function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (!canRun(named)) throw new Error(`CHROMIUM_PATH names "${named}", which cannot be run`);
    return { executablePath: named, args: FLAGS, from: 'CHROMIUM_PATH' };
  }
  const installed = process.env.BROWSER_FROM === 'package' ? undefined : onPath();
  if (installed !== undefined) return { executablePath: installed, args: FLAGS, from: 'the path' };
  return { ...(await packaged()), from: 'the package @sparticuz/chromium' };
}

/** Starts the browser with a fresh profile; the caller closes it. */
export async function launchChromium() {
  const { executablePath, args, from } = await findChromium();
  const browser = await chromium.launch({ executablePath, args, headless: true });
  return { browser, from };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    const { browser, from } = await launchChromium();
    process.stdout.write(`Chromium ${browser.version()} from ${from}\n`);
    await browser.close();
  } catch (error) {
    process.stderr.write(`No Chromium starts: ${error.message}\n`);
    process.exit(1);
  }
}

/** Names of the help drawings, read from the app's list without loading its components. */
import { readFileSync } from 'node:fs';

const text = readFileSync(new URL('../../src/app/figures/index.ts', import.meta.url), 'utf8');
const list = /=\s*\{([\s\S]*?)\};/.exec(text)?.[1] ?? '';
export const figureNames: readonly string[] = [...list.matchAll(/^\s*'?([a-z-]+)'?:/gm)].map(
  (match) => match[1] ?? '',
);

/**
 * Vite plugin: reads the Markdown of content/, checks words and tables, and serves `virtual:words`.
 * A fault in any of them ends the build with file, place and rule; nothing wrong is ever shipped.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Plugin } from 'vite';
import { checkTables } from '../catalog/check.ts';
import { parseWords, type Words } from '../catalog/words.ts';
import { faultLine } from '../faults.ts';

const moduleName = 'virtual:words';
const resolvedName = `\0${moduleName}`;
const folders = ['questions', 'strategies', 'cautions', 'glossary'] as const;

/** Path within the repository (with slashes) to text, for every Markdown file of the folders. */
function markdownFiles(repository: string): Record<string, string> {
  const files: Record<string, string> = {};
  for (const folder of folders) {
    const place = join(repository, 'content', folder);
    for (const name of readdirSync(place).filter((each) => each.endsWith('.md'))) {
      const path = join(place, name);
      files[relative(repository, path).replaceAll('\\', '/')] = readFileSync(path, 'utf8');
    }
  }
  return files;
}

/** The checked words. @throws Error that lists every fault, one a line */
export function checkedWords(repository: string): Words {
  const faults = checkTables().map(
    ({ file, path, rule, hint }) => `content/tables/${file} ${path}: ${rule}: ${hint}`,
  );
  const reading = parseWords(markdownFiles(repository));
  if (!reading.ok) faults.push(...reading.faults.map((fault) => faultLine(fault, 'content')));
  if (faults.length > 0 || !reading.ok)
    throw new Error(`Content is not as it must be:\n${faults.join('\n')}`);
  return reading.words;
}

export function wordsPlugin(repository: string): Plugin {
  return {
    name: 'overdeck-words',
    resolveId: (id) => (id === moduleName ? resolvedName : undefined),
    load(id) {
      if (id !== resolvedName) return undefined;
      const words = checkedWords(repository);
      for (const path of Object.keys(markdownFiles(repository))) this.addWatchFile(join(repository, path));
      return `export const words = ${JSON.stringify(words)};`;
    },
  };
}

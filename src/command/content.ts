/** The words of content/, read from disk once. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseWords, type Words } from '../catalog/words.ts';
import { root } from './place.ts';

const FOLDERS = ['questions', 'strategies', 'cautions', 'glossary'];

let read: Words | undefined;

/** Every word file by its path from the root. */
export function wordFiles(): Record<string, string> {
  return Object.fromEntries(
    FOLDERS.flatMap((folder) =>
      readdirSync(join(root, 'content', folder))
        .filter((name) => name.endsWith('.md'))
        .map((name) => `content/${folder}/${name}`),
    ).map((path) => [path, readFileSync(join(root, path), 'utf8')]),
  );
}

export function words(): Words {
  if (read !== undefined) return read;
  const reading = parseWords(wordFiles());
  if (!reading.ok) {
    throw new Error(
      `content is wrong:\n${reading.faults.map(({ path, message }) => `${path}: ${message}`).join('\n')}`,
    );
  }
  read = reading.words;
  return read;
}

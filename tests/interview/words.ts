/** The question words of content/questions, read once for the tests of this folder. */
import { readdirSync, readFileSync } from 'node:fs';
import { parseWords } from '../../src/catalog/words.ts';
import type { QuestionWords } from '../../src/catalog/wordSchemas.ts';

const folder = new URL('../../content/questions/', import.meta.url);
export const questionFiles = readdirSync(folder).filter((name) => name.endsWith('.md'));
const read = parseWords(
  Object.fromEntries(
    questionFiles.map((name) => [`content/questions/${name}`, readFileSync(new URL(name, folder), 'utf8')]),
  ),
);
if (!read.ok) throw new Error(read.faults.map((fault) => `${fault.path}: ${fault.message}`).join('\n'));
export const questionWords: Readonly<Record<string, QuestionWords>> = read.words.questions;

/** From the Markdown files of content/ to typed words, or every fault with its file. Pure: the files come as text. */
import type * as v from 'valibot';
import { parse, YAMLParseError } from 'yaml';
import { readWith, type Fault } from '../faults.ts';
import {
  cautionFront,
  glossaryFront,
  questionFront,
  strategyFront,
  type CautionWords,
  type GlossaryWords,
  type QuestionWords,
  type StrategyWords,
} from './wordSchemas.ts';

export interface Words {
  readonly questions: Readonly<Record<string, QuestionWords>>;
  readonly strategies: Readonly<Record<string, StrategyWords>>;
  readonly cautions: Readonly<Record<string, CautionWords>>;
  readonly glossary: Readonly<Record<string, GlossaryWords>>;
}
export type WordsReading =
  { readonly ok: true; readonly words: Words } | { readonly ok: false; readonly faults: readonly Fault[] };

type Folder = keyof Words;
const fronts: Readonly<Record<Folder, v.GenericSchema<unknown, { id: string }>>> = {
  questions: questionFront,
  strategies: strategyFront,
  cautions: cautionFront,
  glossary: glossaryFront,
};
const isFolder = (name: string | undefined): name is Folder =>
  name !== undefined && Object.hasOwn(fronts, name);

/** Only a question may do with its front matter alone. */
const mayBeBare: readonly Folder[] = ['questions'];

const withoutCode = (body: string): string =>
  body.replace(/```[\s\S]*?(```|$)/g, '').replace(/`[^`\n]*`/g, '');

/** What the body must not have, because the pages show it as it is. */
function bodyFaults(body: string): string[] {
  const prose = withoutCode(body);
  const found: string[] = [];
  const tag = /<[a-z/!?][^\n]{0,20}/i.exec(prose);
  if (tag !== null) found.push(`${JSON.stringify(tag[0])} is raw HTML; only Markdown is allowed`);
  if (/!\[/.test(prose)) found.push('has a picture; name a help drawing with `figure` instead');
  const targets = [...prose.matchAll(/\]\(\s*([^)\s]+)/g), ...prose.matchAll(/^\s*\[[^\]]+\]:\s*(\S+)/gm)];
  for (const [, target = ''] of targets) {
    if (!/^(https:\/\/|#)/.test(target)) {
      found.push(`links to ${JSON.stringify(target)}; only https addresses and #places are allowed`);
    }
  }
  return found;
}

interface Split {
  readonly front: string;
  readonly body: string;
}

function split(text: string): Split | undefined {
  const parts = /^---\n([\s\S]*?)\n---(?:\n([\s\S]*))?$/.exec(
    text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n'),
  );
  return parts === null ? undefined : { front: parts[1] ?? '', body: (parts[2] ?? '').trim() };
}

function frontMatter(text: string): { value: unknown } | { message: string } {
  try {
    return { value: parse(text, { maxAliasCount: 0 }) };
  } catch (error) {
    if (error instanceof YAMLParseError || error instanceof ReferenceError) {
      return { message: `front matter is not YAML: ${error.message.split('\n')[0] ?? ''}` };
    }
    throw error;
  }
}

/** One file: its words, or what is wrong with it. */
function readOne(
  path: string,
  folder: Folder,
  text: string,
): { id: string; body: string } | readonly Fault[] {
  const fault = (message: string): readonly Fault[] => [{ path, message }];
  const parts = split(text);
  if (parts === undefined) return fault('needs front matter between two lines of ---, then Markdown');
  const front = frontMatter(parts.front);
  if ('message' in front) return fault(front.message);
  const read = readWith(fronts[folder], front.value);
  if (!read.ok) {
    return read.faults.map((each) => ({
      path: each.path === '' ? path : `${path} ${each.path}`,
      message: each.message,
    }));
  }
  const name = path.split('/').at(-1)?.replace(/\.md$/, '');
  const faults = bodyFaults(parts.body).map((message) => ({ path, message }));
  if (read.value.id !== name) {
    faults.push({
      path,
      message: `id ${JSON.stringify(read.value.id)} differs from the file name ${JSON.stringify(name)}`,
    });
  }
  if (parts.body === '' && !mayBeBare.includes(folder)) {
    faults.push({ path, message: 'has no text below the front matter; at least one sentence is needed' });
  }
  return faults.length > 0 ? faults : { ...read.value, body: parts.body };
}

/**
 * Reads all files, given as path (`content/questions/place.md`) and text. The folder before the file name
 * decides the schema; READMEs and files that are not
 * Markdown are left alone.
 */
export function parseWords(files: Readonly<Record<string, string>>): WordsReading {
  const words = { questions: {}, strategies: {}, cautions: {}, glossary: {} } as Record<
    Folder,
    Record<string, unknown>
  >;
  const faults: Fault[] = [];
  for (const path of Object.keys(files).sort()) {
    if (!path.endsWith('.md') || path.endsWith('README.md')) continue;
    const folder = path.split('/').at(-2);
    if (!isFolder(folder)) {
      faults.push({ path, message: `is in no known folder; ${Object.keys(fronts).join(', ')} are allowed` });
      continue;
    }
    const one = readOne(path, folder, files[path] ?? '');
    if ('body' in one) words[folder][one.id] = one;
    else faults.push(...one);
  }
  return faults.length > 0 ? { ok: false, faults } : { ok: true, words: words as unknown as Words };
}

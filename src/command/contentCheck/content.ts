/** Everything below content/ as the check sees it, so that a test can plant a fault without touching a file. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from '../place.ts';

/** One fault: file, place in the file, the rule that is broken, and what to do. */
export interface Fault {
  readonly file: string;
  readonly path: string;
  readonly rule: string;
  readonly hint: string;
}

export interface Content {
  /** Parsed JSON of content/tables by file name. */
  readonly tables: Readonly<Record<string, unknown>>;
  /** Parsed content/rules/rules.json. */
  readonly rules: unknown;
  /** Markdown by path from the repository's root. */
  readonly markdown: Readonly<Record<string, string>>;
  /** Whether the repository holds a file at this path. */
  readonly holds: (path: string) => boolean;
}

const read = (path: string): string => readFileSync(join(root, path), 'utf8');

function markdownBelow(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.md'))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'));
}

const markdownAtTop = (): string[] => readdirSync(root).filter((name) => name.endsWith('.md'));

/** The content as it lies on disk. */
export function readContent(): Content {
  const tables = readdirSync(join(root, 'content/tables')).filter((name) => name.endsWith('.json'));
  const markdown = [...markdownAtTop(), ...markdownBelow('content')].sort();
  return {
    tables: Object.fromEntries(tables.map((name) => [name, JSON.parse(read(`content/tables/${name}`))])),
    rules: JSON.parse(read('content/rules/rules.json')),
    markdown: Object.fromEntries(markdown.map((path) => [path, read(path)])),
    holds: (path) => existsSync(join(root, path)),
  };
}

/** Paths of the Markdown files of one folder of content/, by their id. */
export const idsIn = ({ markdown }: Content, folder: string): string[] =>
  Object.keys(markdown).flatMap((path) => {
    const found = new RegExp(`^content/${folder}/([^/]+)\\.md$`).exec(path);
    return found === null ? [] : [found[1] ?? ''];
  });

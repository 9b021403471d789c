/**
 * Reads JSON text and says in words where it stops being JSON, by line and column, the same in every
 * browser. Two entries with one name are a fault too: the parser would silently keep the last.
 * No recursion, so that no depth of nesting can exhaust the stack.
 */
import { shown, type Reading } from './faults.ts';

/** Where the text goes wrong, and how. */
interface Break {
  readonly offset: number;
  readonly message: string;
}

const SPACE = /[ \t\n\r]*/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;

function match(pattern: RegExp, text: string, offset: number): string | undefined {
  pattern.lastIndex = offset;
  return pattern.exec(text)?.[0];
}

/** A text in double quotes at the offset; a control character or a wrong escape ends the attempt. */
function quoted(text: string, offset: number): string | undefined {
  if (text[offset] !== '"') return undefined;
  let end = offset + 1;
  while (end < text.length) {
    const character = text[end] as string;
    if (character === '"') return text.slice(offset, end + 1);
    if (character < ' ') return undefined;
    const escape = character === '\\' ? match(ESCAPE, text, end) : character;
    if (escape === undefined) return undefined;
    end += escape.length;
  }
  return undefined;
}

function found(text: string, offset: number): string {
  return offset >= text.length
    ? 'the end of the file'
    : shown(String.fromCodePoint(text.codePointAt(offset) as number));
}

/** The first place where the text is not JSON, or repeats a name within one object. */
export function firstBreak(text: string): Break | undefined {
  /** One entry per open bracket: the names seen so far in an object, or null in a list. */
  const open: (Set<string> | null)[] = [];
  let offset = 0;
  let expects: 'value' | 'first-value' | 'name' | 'first-name' | 'after' = 'value';
  const skip = (): void => {
    offset += match(SPACE, text, offset)?.length ?? 0;
  };
  const wrong = (wanted: string): Break => ({
    offset,
    message: `expected ${wanted}, found ${found(text, offset)}`,
  });
  for (;;) {
    skip();
    const next = text[offset];
    if (expects === 'after') {
      const names = open.at(-1);
      if (names === undefined) return offset >= text.length ? undefined : wrong('the end of the file');
      const closing = names === null ? ']' : '}';
      if (next === closing) open.pop();
      else if (next === ',') expects = names === null ? 'value' : 'name';
      else return wrong(`a comma or "${closing}"`);
      offset += 1;
    } else if (expects === 'name' || expects === 'first-name') {
      if (next === '}' && expects === 'first-name') {
        open.pop();
        offset += 1;
        expects = 'after';
        continue;
      }
      const name = quoted(text, offset);
      if (name === undefined)
        return wrong(expects === 'name' ? 'a name in double quotes' : 'a name in double quotes or "}"');
      const names = open.at(-1) as Set<string>;
      const key = JSON.parse(name) as string;
      if (names.has(key)) return { offset, message: `the name ${shown(key)} is given twice` };
      names.add(key);
      offset += name.length;
      skip();
      if (text[offset] !== ':') return wrong('a colon');
      offset += 1;
      expects = 'value';
    } else if (next === ']' && expects === 'first-value') {
      open.pop();
      offset += 1;
      expects = 'after';
    } else if (next === '{' || next === '[') {
      open.push(next === '{' ? new Set() : null);
      offset += 1;
      expects = next === '{' ? 'first-name' : 'first-value';
    } else {
      const value = quoted(text, offset) ?? match(NUMBER, text, offset) ?? match(WORD, text, offset);
      if (value === undefined)
        return wrong(next === '"' ? 'a text closed by a double quote on its line' : 'a value');
      offset += value.length;
      expects = 'after';
    }
  }
}

function placeOf(text: string, offset: number): string {
  const before = text.slice(0, offset).split('\n');
  return `line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`;
}

/** The value that a JSON text stands for, or the one fault with its place. A byte order mark is passed over. */
export function readJson(text: string): Reading<unknown> {
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  if (body.trim() === '')
    return { ok: false, faults: [{ path: '', message: 'is empty; a JSON object is needed' }] };
  const stop = firstBreak(body);
  if (stop !== undefined) {
    return {
      ok: false,
      faults: [{ path: '', message: `is not JSON at ${placeOf(body, stop.offset)}: ${stop.message}` }],
    };
  }
  return { ok: true, value: JSON.parse(body) as unknown };
}

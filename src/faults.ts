/**
 * Faults of an input, in one voice: where, what is wrong, what is allowed (`31 is above 24`).
 * Reads any plain value against a valibot schema and collects every fault, unknown fields included.
 */
import { distance } from 'fastest-levenshtein';
import * as v from 'valibot';

/** One fault: a dotted path (empty for the whole input) and a sentence. */
export interface Fault {
  readonly path: string;
  readonly message: string;
}

export type Reading<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly Fault[] };

/** Faults listed at most; the rest are counted in one last line. */
export const LISTED_FAULTS = 50;
/** Longest piece of a person's own text that a message repeats, in characters. */
const SHOWN_CHARACTERS = 60;
const HALF_A_CHANGE = 0.5;
/** Names that JavaScript objects carry themselves; never a field of ours. */
const RESERVED = new Set(['__proto__', 'prototype', 'constructor']);

type Path = readonly (string | number)[];

/** A value as a message repeats it: short, on one line, whatever its depth. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') {
    return JSON.stringify(
      value.length > SHOWN_CHARACTERS ? `${value.slice(0, SHOWN_CHARACTERS - 1)}…` : value,
    );
  }
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

function received(value: unknown): string {
  if (typeof value === 'string') return `text ${shown(value)}`;
  if (typeof value === 'number') return `the number ${value}`;
  return shown(value);
}

/** `roof.pitch_rise_per_12`, `layers.0.name`; a name that is not a plain word is quoted. */
export function dotted(path: Path): string {
  return path.map((key) => (/^\w+(-\w+)*$/.test(String(key)) ? String(key) : shown(String(key)))).join('.');
}

/** A name and its beginnings at each underscore: people leave the unit and the qualifier off. */
const beginnings = (name: string): string[] =>
  name.split('_').map((_, index, words) => words.slice(0, words.length - index).join('_'));

/** The known name that needs the fewest changes of a letter; a bare beginning counts as half a change. */
export function nearestName(name: string, known: readonly string[]): string | undefined {
  const short = name.slice(0, SHOWN_CHARACTERS).toLowerCase();
  let nearest: string | undefined;
  let least = Infinity;
  for (const candidate of known) {
    const changes = Math.min(
      ...beginnings(candidate).map(
        (beginning, left) => distance(short, beginning.toLowerCase()) + (left > 0 ? HALF_A_CHANGE : 0),
      ),
    );
    if (changes < least) [nearest, least] = [candidate, changes];
  }
  return nearest;
}

/** Message for a name that no one knows. */
export function unknownName(name: string, known: readonly string[], what = 'a known field'): string {
  const nearest = nearestName(name, known);
  return nearest === undefined
    ? `is not ${what}; nothing is allowed here`
    : `is not ${what}; nearest known name is "${nearest}"`;
}

const wanted: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'an object',
  strict_object: 'an object',
  loose_object: 'an object',
  record: 'an object',
};

/** The options of a closed set, read back from valibot's `("a" | "b")`. */
function optionsOf(expected: string): string {
  return expected
    .replace(/^\(|\)$/g, '')
    .split(' | ')
    .map((option) => option.replace(/^"|"$/g, ''))
    .join(', ');
}

/** A value outside a closed set; a number is named as such, since a set may hold its text. */
export function notOneOf(input: unknown, options: string): string {
  return typeof input === 'string'
    ? `${shown(input)} is not one of ${options}`
    : `expected text, one of ${options}; got ${received(input)}`;
}

function counted(input: unknown): string {
  return typeof input === 'string'
    ? `${input.length} characters`
    : `${(input as ArrayLike<unknown>).length} entries`;
}

/** What a schema's own message says; valibot's stock messages are put into our words. */
function messageOf(issue: v.BaseIssue<unknown>): string {
  const { type, input, requirement, message } = issue;
  if (!message.startsWith('Invalid ')) {
    return type === 'regex' ? `${shown(input)} is not ${message}` : message;
  }
  const limit = String(requirement);
  switch (type) {
    case 'min_value':
      return `${shown(input)} is below ${limit}`;
    case 'max_value':
      return `${shown(input)} is above ${limit}`;
    case 'gt_value':
      return `${shown(input)} is not above ${limit}`;
    case 'lt_value':
      return `${shown(input)} is not below ${limit}`;
    case 'integer':
      return `${shown(input)} is not a whole number`;
    case 'finite':
      return `${shown(input)} is not a finite number`;
    case 'length':
      return `has ${counted(input)}; exactly ${limit} are needed`;
    case 'min_length':
      return `has ${counted(input)}; at least ${limit} are needed`;
    case 'max_length':
      return `has ${counted(input)}; at most ${limit} are allowed`;
    case 'iso_date':
      return `${shown(input)} is not a date written like 2026-11-24`;
    case 'literal':
      return `${shown(input)} is not ${issue.expected ?? ''}`;
    case 'picklist':
      return input === undefined
        ? `is missing; ${optionsOf(issue.expected ?? '')} is needed`
        : notOneOf(input, optionsOf(issue.expected ?? ''));
  }
  const kind = wanted[type];
  if (input === undefined) return `is missing; ${kind ?? 'a value'} is needed`;
  return kind === undefined
    ? `${shown(input)} is not allowed here`
    : `expected ${kind}, got ${received(input)}`;
}

/** Of several allowed forms, the faults of the one that the input comes nearest to. */
function nearestForm(issue: v.BaseIssue<unknown>, schema: v.GenericSchema, at: Path): Fault[] | undefined {
  if (issue.type !== 'union' || !('options' in schema) || !Array.isArray(schema.options)) return undefined;
  let best: Fault[] | undefined;
  for (const option of schema.options as v.GenericSchema[]) {
    const reading = faultsOf(option, issue.input, at);
    if (best === undefined || reading.length < best.length) best = reading;
  }
  return best;
}

interface Opened {
  readonly type: string;
  readonly entries?: Record<string, v.GenericSchema>;
  readonly wrapped?: v.GenericSchema;
  readonly item?: v.GenericSchema;
  readonly items?: v.GenericSchema[];
  readonly value?: v.GenericSchema;
  readonly options?: unknown[];
}

function unwrapped(schema: v.GenericSchema): v.GenericSchema {
  let inner = schema as unknown as Opened;
  while (inner.wrapped !== undefined) inner = inner.wrapped as unknown as Opened;
  return inner as unknown as v.GenericSchema;
}

/** The schema at a path below `schema`, as far as it can be followed. */
function schemaAt(schema: v.GenericSchema, path: Path): v.GenericSchema {
  let here = unwrapped(schema);
  for (const key of path) {
    const open = here as unknown as Opened;
    const next = open.entries?.[key] ?? open.item ?? open.items?.[Number(key)] ?? open.value;
    if (next === undefined) return here;
    here = unwrapped(next);
  }
  return here;
}

/** Fields that the schema does not name, and lists where an object belongs: valibot passes over some of both. */
function strangers(schema: v.GenericSchema, input: unknown, at: Path): Fault[] {
  const open = unwrapped(schema) as unknown as Opened;
  if (typeof input !== 'object' || input === null) return [];
  if (Array.isArray(input)) {
    if (open.entries !== undefined || open.type === 'record') {
      return [{ path: dotted(at), message: `expected an object, got ${received(input)}` }];
    }
    return input.flatMap((entry, index) => {
      const item = open.item ?? open.items?.[index];
      return item === undefined ? [] : strangers(item, entry, [...at, index]);
    });
  }
  if (open.type === 'union') {
    const fitting = (open.options as v.GenericSchema[]).find((option) => v.is(option, input));
    return fitting === undefined ? [] : strangers(fitting, input, at);
  }
  const found: Fault[] = [];
  for (const [key, value] of Object.entries(input)) {
    const path = [...at, key];
    if (open.entries !== undefined) {
      const known = Object.keys(open.entries);
      if (Object.hasOwn(open.entries, key)) {
        found.push(...strangers(open.entries[key] as v.GenericSchema, value, path));
      } else if (open.type !== 'loose_object') {
        found.push({ path: dotted(path), message: unknownName(key, known) });
      }
    } else if (open.type === 'record') {
      if (RESERVED.has(key))
        found.push({ path: dotted(path), message: 'is a reserved name; choose another' });
      else if (open.value !== undefined) found.push(...strangers(open.value, value, path));
    }
  }
  return found;
}

const valueAt = (input: unknown, path: Path): unknown =>
  path.reduce<unknown>((value, key) => (value as Record<string | number, unknown> | undefined)?.[key], input);

const isUnknownField = (issue: v.BaseIssue<unknown>): boolean =>
  issue.type === 'strict_object' && issue.expected === 'never';

/** A field that is not there is described by what its own schema asks for. */
function missing(schema: v.GenericSchema): string {
  const parsed = v.safeParse(schema, undefined);
  return parsed.success ? 'is missing' : messageOf(parsed.issues[0]);
}

const isMissing = (issue: v.BaseIssue<unknown>): boolean =>
  issue.input === undefined && issue.path?.at(-1)?.origin === 'key';

/** Every fault of an input, unknown fields first: a misspelled name often explains a missing one. */
function faultsOf(schema: v.GenericSchema, input: unknown, at: Path = []): Fault[] {
  const parsed = v.safeParse(schema, input);
  const found = strangers(schema, input, at);
  const seen = new Set<string>();
  const isInsideList = (path: Path): boolean =>
    path.some(
      (_, depth) => typeof path[depth] === 'string' && Array.isArray(valueAt(input, path.slice(0, depth))),
    );
  for (const issue of parsed.success ? [] : parsed.issues) {
    const below = (issue.path ?? []).map((item) => item.key as string | number);
    const repeated = seen.has(dotted(below));
    seen.add(dotted(below));
    if (repeated || isUnknownField(issue) || isInsideList(below)) continue;
    const path = [...at, ...below];
    found.push(
      ...(nearestForm(issue, schemaAt(schema, below), path) ?? [
        {
          path: dotted(path),
          message: isMissing(issue) ? missing(schemaAt(schema, below)) : messageOf(issue),
        },
      ]),
    );
  }
  return found;
}

/** The first faults, and one line that counts the rest. */
export function listed(faults: readonly Fault[]): readonly Fault[] {
  const rest = faults.length - LISTED_FAULTS;
  if (rest <= 0) return faults;
  return [...faults.slice(0, LISTED_FAULTS), { path: '', message: `${rest} more faults are not listed` }];
}

/** Reads a plain value against a schema: the typed value, or every fault. */
export function readWith<T>(schema: v.GenericSchema<unknown, T>, input: unknown): Reading<T> {
  const faults = faultsOf(schema, input);
  if (faults.length > 0) return { ok: false, faults: listed(faults) };
  return { ok: true, value: v.parse(schema, input) };
}

/** A fault as one line: `roof.pitch_rise_per_12: 31 is above 24`. */
export function faultLine(fault: Fault, whole: string): string {
  return `${fault.path === '' ? whole : fault.path}: ${fault.message}`;
}

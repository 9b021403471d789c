/** Any valid case: a generator that reads the schema of the case file, with gaps, both ends of every range and between. */
import fc from 'fast-check';
import { criterionIds } from '../../src/catalog/criterionIds.ts';
import { caseSchema, type Case } from '../../src/case/case.ts';
import { readCase } from '../../src/case/read.ts';

/** What the generator looks at in a schema of valibot. */
interface Seen {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Seen>>;
  readonly wrapped?: Seen;
  readonly options?: readonly string[];
  readonly item?: Seen;
  readonly literal?: unknown;
  readonly requirement?: unknown;
  readonly pipe?: readonly Seen[];
}

const numberIn = (schema: Seen, action: string): number | undefined => {
  const found = schema.pipe?.find(({ type }) => type === action)?.requirement;
  return typeof found === 'number' ? found : undefined;
};

function anyNumber(schema: Seen): fc.Arbitrary<number> {
  const min = numberIn(schema, 'min_value');
  const max = numberIn(schema, 'max_value');
  if (min === undefined || max === undefined) throw new RangeError('a number of the case has no range');
  const isWhole = schema.pipe?.some(({ type }) => type === 'integer') ?? false;
  const inside = isWhole ? fc.integer({ min, max }) : fc.double({ min, max, noNaN: true });
  return fc.oneof({ weight: 1, arbitrary: fc.constantFrom(min, max) }, { weight: 4, arbitrary: inside });
}

/** Texts that only some values fit. */
const texts: Readonly<Record<string, readonly string[]>> = {
  'place.id': ['us-mn-duluth', 'us-fl-miami', 'ca-yt-whitehorse'],
  'place.countyFips': ['50007', '12086', '08097'],
  'project.date': ['2026-11-24'],
};

function anyValue(schema: Seen, path: string): fc.Arbitrary<unknown> {
  switch (schema.type) {
    case 'optional':
      return anyValue(schema.wrapped as Seen, path);
    case 'strict_object':
      return anyObject(schema, path);
    case 'picklist':
      return fc.constantFrom(...(schema.options ?? []));
    case 'literal':
      return fc.constant(schema.literal);
    case 'boolean':
      return fc.boolean();
    case 'number':
      return anyNumber(schema);
    case 'string':
      return fc.constantFrom(...(texts[path] ?? ['a word']));
    case 'record':
      return fc.dictionary(fc.constantFrom(...criterionIds), fc.integer({ min: 0, max: 100 }));
    case 'array': {
      const item = anyValue(schema.item as Seen, path);
      const length = numberIn(schema, 'length');
      return length === undefined
        ? fc.uniqueArray(item, { maxLength: 3 })
        : fc.array(item, { minLength: length, maxLength: length });
    }
    default:
      throw new RangeError(`no generator for ${schema.type} at ${path}`);
  }
}

function anyObject(schema: Seen, path: string): fc.Arbitrary<unknown> {
  const entries = Object.entries(schema.entries ?? {});
  const values = entries.map(
    ([key, entry]) => [key, anyValue(entry, path === '' ? key : `${path}.${key}`)] as const,
  );
  const requiredKeys = entries.filter(([, entry]) => entry.type !== 'optional').map(([key]) => key);
  return fc.record(Object.fromEntries(values), { requiredKeys });
}

/** Cases that a person could hand in: the program reads them without a fault. */
export const anyCase: fc.Arbitrary<Case> = anyObject(caseSchema as unknown as Seen, '')
  .filter((input) => readCase(input).ok)
  .map((input) => input as Case);

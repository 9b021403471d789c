/** Generators of answers and events for the property tests of this folder. */
import fc from 'fast-check';
import type * as v from 'valibot';
import { withPatch, type Answers, type Patch } from '../../src/interview/answers.ts';
import type { InterviewEvent } from '../../src/interview/chart.ts';
import { pathsOf, stateIds, type AnswerPath, type StateId } from '../../src/interview/questions.ts';
import { fieldSchema } from '../../src/interview/validate.ts';

export const allPaths: readonly AnswerPath[] = stateIds.flatMap(
  (page) => pathsOf[page] as readonly AnswerPath[],
);

interface Seen {
  readonly type: string;
  readonly options?: readonly string[];
  readonly item?: Seen;
  readonly wrapped?: Seen;
  readonly entries?: Readonly<Record<string, Seen>>;
  readonly requirement?: unknown;
  readonly pipe?: readonly Seen[];
}
const limit = (schema: Seen, type: string): number | undefined => {
  const found = schema.pipe?.find((action) => action.type === type)?.requirement;
  return typeof found === 'number' ? found : undefined;
};

/** A value that the field's schema allows: every option, both truth values, both ends of a range and between. */
function valueOf(schema: Seen): fc.Arbitrary<unknown> {
  if (schema.type === 'picklist') return fc.constantFrom(...(schema.options ?? []));
  if (schema.type === 'boolean') return fc.boolean();
  if (schema.type === 'string') return fc.constant('a word');
  if (schema.type === 'optional') return valueOf(schema.wrapped as Seen);
  if (schema.type === 'strict_object') {
    const entries = Object.entries(schema.entries ?? {});
    return fc.record(Object.fromEntries(entries.map(([key, entry]) => [key, valueOf(entry)])), {
      requiredKeys: entries.filter(([, entry]) => entry.type !== 'optional').map(([key]) => key),
    });
  }
  if (schema.type === 'number') {
    const least = limit(schema, 'min_value') ?? 0;
    const greatest = limit(schema, 'max_value') ?? 100;
    const isWhole = schema.pipe?.some((action) => action.type === 'integer') ?? false;
    return fc.oneof(
      fc.constantFrom(least, greatest),
      isWhole
        ? fc.integer({ min: least, max: greatest })
        : fc.double({ min: least, max: greatest, noNaN: true }),
    );
  }
  if (schema.type === 'array') {
    const length = limit(schema, 'length');
    const item = valueOf(schema.item as Seen);
    return length === undefined
      ? fc.uniqueArray(item, { maxLength: 4 })
      : fc.array(item, { minLength: length, maxLength: length });
  }
  if (schema.type === 'record')
    return fc.dictionary(fc.constantFrom('cost', 'drying'), fc.integer({ min: 0, max: 100 }));
  throw new Error(`no generator for ${schema.type}`);
}

const texts: Readonly<Partial<Record<AnswerPath, readonly string[]>>> = {
  'place.id': ['us-mn-duluth', 'us-fl-miami'],
  'place.countyFips': ['50007', '12086'],
  'project.date': ['2026-11-24'],
};

/** A valid value for a path. */
export function valueAtPath(path: AnswerPath): fc.Arbitrary<unknown> {
  const schema = fieldSchema(path) as (v.GenericSchema & Seen) | undefined;
  if (schema === undefined) throw new Error(`no field ${path}`);
  return schema.type === 'string' ? fc.constantFrom(...(texts[path] ?? ['a word'])) : valueOf(schema);
}

/** Any valid answers, with gaps. */
export const anyAnswers: fc.Arbitrary<Answers> = fc
  .record(Object.fromEntries(allPaths.map((path) => [path, valueAtPath(path)])), { requiredKeys: [] })
  .map((patch) => withPatch({}, patch as Patch));

/** Any valid answer to one page: some of its paths, some of them taken back. */
export const anyPatch = (page: StateId): fc.Arbitrary<Patch> =>
  fc.record(
    Object.fromEntries(
      pathsOf[page].map((path) => [path, fc.option(valueAtPath(path), { nil: undefined, freq: 5 })]),
    ),
    { requiredKeys: [] },
  ) as fc.Arbitrary<Patch>;

const anyPage = fc.constantFrom(...stateIds);
export const anyAnswerEvent: fc.Arbitrary<InterviewEvent> = anyPage.chain((question) =>
  anyPatch(question).map((patch) => ({ type: 'answer' as const, question, patch })),
);
export const anyEvent: fc.Arbitrary<InterviewEvent> = fc.oneof(
  { weight: 4, arbitrary: anyAnswerEvent },
  { weight: 1, arbitrary: anyPage.map((question) => ({ type: 'notSure' as const, question })) },
  { weight: 2, arbitrary: anyPage.map((question) => ({ type: 'go.to' as const, question })) },
  {
    weight: 4,
    arbitrary: fc.constantFrom<InterviewEvent>(
      { type: 'go.next' },
      { type: 'go.back' },
      { type: 'review.open' },
      { type: 'undo' },
      { type: 'redo' },
    ),
  },
);

/** Front matter of the Markdown files in content/: questions, strategies, cautions, glossary. */
import * as v from 'valibot';
import { measureKinds } from '../measures.ts';
import { cautionLevels, deciders } from './sets.ts';

const sentence = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(600));
const label = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(160));
const id = v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower case words with hyphens'));
const casePath = v.pipe(v.string(), v.regex(/^[a-zA-Z]+(\.\w+)*$/, 'a dotted path of the case'));
const some = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.minLength(1));

/** A second wording for one reader, shown instead of (or after) the common one. */
const forReaders = {
  forBuilder: v.optional(sentence),
  forDesigner: v.optional(sentence),
  forTrainer: v.optional(sentence),
};

/** The groups of the topic list, in the order in which they are shown. */
export const topics = [
  'start',
  'place and code',
  'the roof',
  'below the deck',
  'edges and walls',
  'layers above the deck',
  'loads and hazards',
  'the work',
  'what matters',
] as const;

/** Kinds of fields that are not a quantity. */
export const fieldKinds = [
  'choice',
  'choices',
  'yes-no',
  'text',
  'place',
  'weather',
  'months',
  'weights',
] as const;

const option = v.strictObject({
  /** A value of the case's closed set. */
  value: v.string(),
  label,
  help: v.optional(sentence),
});

const field = v.pipe(
  v.strictObject({
    path: casePath,
    label,
    kind: v.picklist([...fieldKinds, ...measureKinds]),
    /** What the twelve numbers of `months` measure. */
    measure: v.optional(v.picklist(measureKinds)),
    /** Further paths that the one control sets, for `place`. */
    alsoSets: v.optional(some(casePath)),
    /** Options of `choice` and `choices`, in the order shown. */
    options: v.optional(some(option)),
    hint: v.optional(sentence),
    /** Asked only of those who open it: the usual case leaves it. */
    more: v.optional(v.boolean()),
  }),
  v.check(
    (f) => (f.kind === 'choice' || f.kind === 'choices') === (f.options !== undefined),
    'options belong to choice and choices, and only to them',
  ),
  v.check(
    (f) => (f.kind === 'months') === (f.measure !== undefined),
    'measure belongs to months, and only to months',
  ),
  v.check((f) => f.alsoSets === undefined || f.kind === 'place', 'alsoSets belongs to place only'),
);

export const questionFront = v.strictObject({
  id,
  /** The question itself, in plain words. */
  title: v.pipe(sentence, v.endsWith('?', 'a question that ends with a question mark')),
  /** Why it is asked, one or two sentences. */
  why: sentence,
  topic: v.picklist(topics),
  fields: some(field),
  /** Which cautious default "not sure" uses, and what that costs. */
  notSure: sentence,
  /** Name of a help drawing of the app. */
  figure: v.optional(id),
  ...forReaders,
});

export const cautionFront = v.strictObject({
  id,
  title: label,
  level: v.picklist(cautionLevels),
  deferTo: v.optional(v.picklist(deciders)),
  /** Ids of content/tables/sources.json. */
  sources: some(v.string()),
  ...forReaders,
});

export const strategyFront = v.strictObject({
  id,
  title: label,
  oneLine: sentence,
  goodWhen: some(sentence),
  badWhen: some(sentence),
  sources: some(v.string()),
  ...forReaders,
});

export const glossaryFront = v.strictObject({ id, term: label, short: sentence });

type WithBody<S extends v.GenericSchema> = v.InferOutput<S> & {
  /** Markdown; raw HTML, pictures and other than web or in-page links have been refused. */
  readonly body: string;
};

export type QuestionWords = WithBody<typeof questionFront>;
export type QuestionField = QuestionWords['fields'][number];
export type CautionWords = WithBody<typeof cautionFront>;
export type StrategyWords = WithBody<typeof strategyFront>;
export type GlossaryWords = WithBody<typeof glossaryFront>;

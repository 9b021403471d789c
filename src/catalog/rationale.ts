/** Sentences that say why the first comes first, for each reader, from content/tables/rationale.json. */
import * as v from 'valibot';
import json from '../../content/tables/rationale.json' with { type: 'json' };

const text = v.pipe(v.string(), v.minLength(1));
const forReaders = v.strictObject({ builder: text, designer: text, trainer: text });

export const rationaleTable = v.strictObject({
  title: text,
  about: text,
  sources: v.array(text),
  sentences: v.strictObject({
    clear: forReaders,
    narrow: forReaders,
    tie: forReaders,
    alone: forReaders,
    reasons: forReaders,
    noReasons: forReaders,
    counter: forReaders,
    noCounter: forReaders,
    overturn: forReaders,
    assumed: forReaders,
    assumedMinor: forReaders,
    noneAssumed: forReaders,
  }),
  /** Phrases for a first that is better, or worse, than the second in a criterion. */
  criteria: v.record(text, v.strictObject({ better: text, worse: text })),
  /** Answers that can turn the pick by themselves, and what each is about. */
  decisive: v.array(v.strictObject({ path: text, words: text })),
});

export type SentenceId = keyof v.InferOutput<typeof rationaleTable>['sentences'];
export const rationale = v.parse(rationaleTable, json);

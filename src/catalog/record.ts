/** Typed access to content/tables/record.json: the words of the record's sections for each reader. */
import * as v from 'valibot';
import json from '../../content/tables/record.json' with { type: 'json' };
import { workCondition } from './sequence.ts';

const text = v.pipe(v.string(), v.minLength(1));
const some = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.minLength(1));
const forReaders = v.strictObject({ builder: text, designer: text, trainer: text });

export const recordTable = v.strictObject({
  title: text,
  about: text,
  sources: some(text),
  sections: some(v.strictObject({ id: text, title: forReaders, lead: forReaders })),
  /** What the method leaves out. */
  limits: some(text),
  /** What to do when the ranking stops. */
  instead: some(text),
  cards: some(
    v.strictObject({
      id: v.picklist(['structural-engineer', 'roofer', 'code-official']),
      title: text,
      questions: some(v.strictObject({ text, when: v.optional(workCondition) })),
    }),
  ),
});

export type RecordTable = v.InferOutput<typeof recordTable>;
export type CardRow = RecordTable['cards'][number];

export const recordWords = json as RecordTable;

/** @throws RangeError when the table lacks the section: a slip in content or code. */
export function sectionWords(id: string): RecordTable['sections'][number] {
  const found = recordWords.sections.find((section) => section.id === id);
  if (!found) throw new RangeError(`no section ${id} in record.json`);
  return found;
}

/** Typed access to content/tables/sequence.json: the order of work and its hold points. */
import * as v from 'valibot';
import json from '../../content/tables/sequence.json' with { type: 'json' };
import { knownGrades, strategies, ventilations } from './sets.ts';

const text = v.pipe(v.string(), v.minLength(1));
const some = <S extends v.GenericSchema>(item: S) => v.pipe(v.array(item), v.minLength(1));

/** When a step or a question applies; every part that is given must hold. */
export const workCondition = v.strictObject({
  kinds: v.optional(some(v.picklist(['new-roof', 're-roof', 'addition']))),
  strategies: v.optional(some(v.picklist(strategies))),
  ventilations: v.optional(some(v.picklist(ventilations))),
  carriers: v.optional(some(v.picklist(['rafter-tails', 'truss-tails', 'outriggers']))),
  /** The panel lies on a base layer of board. */
  baseBoard: v.optional(v.boolean()),
});
export type WorkCondition = v.InferOutput<typeof workCondition>;

export const holdRow = v.strictObject({
  id: v.pipe(v.string(), v.regex(/^H\d+$/, 'H and a number')),
  title: text,
  pass: text,
  who: text,
  evidence: text,
  source: text,
  clause: text,
  known: v.picklist(knownGrades),
});

export const stepRow = v.strictObject({
  id: v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'lower case words with hyphens')),
  title: text,
  text,
  who: text,
  weather: v.optional(text),
  when: v.optional(workCondition),
  /** Id of the hold point that closes this step. */
  hold: v.optional(text),
});

export const sequenceTable = v.strictObject({
  title: text,
  about: text,
  sources: some(text),
  holds: some(holdRow),
  steps: some(stepRow),
});

export type HoldRow = v.InferOutput<typeof holdRow>;
export type StepRow = v.InferOutput<typeof stepRow>;
export type SequenceTable = v.InferOutput<typeof sequenceTable>;

const table = json as SequenceTable;

export const sequenceSteps = (): readonly StepRow[] => table.steps;

/** @throws RangeError when a step names a hold point that the table lacks: a slip in content. */
export function holdPoint(id: string): HoldRow {
  const found = table.holds.find((row) => row.id === id);
  if (!found) throw new RangeError(`no hold point ${id} in sequence.json`);
  return found;
}

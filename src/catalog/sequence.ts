/** Typed access to content/tables/sequence.json: the order of work and its hold points. */
import * as v from 'valibot';
import json from '../../content/tables/sequence.json' with { type: 'json' };
import { knownGrades, strategies, ventilations, type StrategyId, type Ventilation } from './sets.ts';

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

/** What a step's conditions are asked about: the work and the build-up chosen, if one is. */
export interface WorkFacts {
  readonly kind: 'new-roof' | 're-roof' | 'addition';
  readonly strategy?: StrategyId | undefined;
  readonly ventilation?: Ventilation | undefined;
  readonly carrier?: 'rafter-tails' | 'truss-tails' | 'outriggers' | undefined;
  /** The panel lies on a base layer of board. */
  readonly hasBaseBoard: boolean;
}

/** Whether every condition that is given holds. */
export function appliesTo(when: WorkCondition | undefined, facts: WorkFacts): boolean {
  if (when === undefined) return true;
  const has = <T>(set: readonly T[] | undefined, value: T | undefined): boolean =>
    set === undefined || (value !== undefined && set.includes(value));
  return (
    has(when.kinds, facts.kind) &&
    has(when.strategies, facts.strategy) &&
    has(when.ventilations, facts.ventilation) &&
    has(when.carriers, facts.carrier) &&
    (when.baseBoard === undefined || when.baseBoard === facts.hasBaseBoard)
  );
}

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
  /** What nobody can see or reach again once the next step has begun; absent where nothing is hidden. */
  covers: v.optional(text),
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

/** The steps of one piece of work, in order. */
export const stepsFor = (facts: WorkFacts): StepRow[] =>
  table.steps.filter((step) => appliesTo(step.when, facts));

/** @throws RangeError when a step names a hold point that the table lacks: a slip in content. */
export function holdPoint(id: string): HoldRow {
  const found = table.holds.find((row) => row.id === id);
  if (!found) throw new RangeError(`no hold point ${id} in sequence.json`);
  return found;
}

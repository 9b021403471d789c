/** Checks answers against the case schema, field by field, before they are sent to the chart. */
import type * as v from 'valibot';
import { caseSchema, type Case } from '../case/case.ts';
import { placeFaults } from '../case/place.ts';
import { readCase } from '../case/read.ts';
import { readWith, type Fault } from '../faults.ts';
import { without, withPatch, type Answers, type Patch } from './answers.ts';
import { isAnswerPath } from './questions.ts';
import { impliedValues, lapsedPaths } from './relevance.ts';

type Entries = Readonly<Record<string, v.GenericSchema>>;

function unwrapped(schema: v.GenericSchema): v.GenericSchema {
  return schema.type === 'optional'
    ? unwrapped((schema as unknown as { wrapped: v.GenericSchema }).wrapped)
    : schema;
}

const entriesOf = (schema: v.GenericSchema): Entries | undefined => (schema as { entries?: Entries }).entries;

/** The schema of one field of the case, by dotted path; undefined when the case has no such field. */
export function fieldSchema(path: string): v.GenericSchema | undefined {
  let schema: v.GenericSchema | undefined = caseSchema;
  for (const key of path.split('.')) {
    const entries: Entries | undefined = schema && entriesOf(schema);
    const next: v.GenericSchema | undefined =
      entries && Object.hasOwn(entries, key) ? entries[key] : undefined;
    schema = next && unwrapped(next);
  }
  return schema;
}

/** Every field of the case that holds a value, as dotted paths; an object that the interview takes as one answer is one. */
export function fieldPaths(schema: v.GenericSchema = caseSchema, above = ''): readonly string[] {
  return Object.entries(entriesOf(schema) ?? {}).flatMap(([key, wrapped]) => {
    const inner = unwrapped(wrapped);
    const path = above === '' ? key : `${above}.${key}`;
    return entriesOf(inner) === undefined || isAnswerPath(path) ? [path] : fieldPaths(inner, path);
  });
}

/** Faults of an id or county that no table lists. */
function listedPlaceFaults(path: string, value: unknown): readonly Fault[] {
  if (path !== 'place.id' && path !== 'place.countyFips') return [];
  const place = { [path.replace('place.', '')]: value } as Case['place'];
  return placeFaults({ place }).filter((fault) => fault.path === path);
}

/** The faults of a patch, each with its path; none when it may be sent. A value of undefined is always allowed. */
export function validate(patch: Patch): readonly Fault[] {
  return Object.entries(patch).flatMap(([path, value]): readonly Fault[] => {
    const schema = isAnswerPath(path) ? fieldSchema(path) : undefined;
    if (schema === undefined) return [{ path, message: 'is not asked in the interview' }];
    if (value === undefined) return [];
    const reading = readWith(schema, value);
    if (reading.ok) return listedPlaceFaults(path, value);
    return reading.faults.map((fault) => ({
      path: fault.path === '' ? path : `${path}.${fault.path}`,
      message: fault.message,
    }));
  });
}

const stockPaths = ['insulation.stock.board', 'insulation.stock.thickness_m', 'insulation.stock.area_m2'];
const isWhole = (stock: object | undefined): boolean =>
  stock !== undefined && Object.keys(stock).length === stockPaths.length;

/** A weather file is named beside the months that were read from it, or not at all. */
const hasMonths = ({ place }: Answers): boolean =>
  place?.monthlyTemperature_C !== undefined && place.monthlyRelativeHumidity_pct !== undefined;

export type CaseReading =
  { readonly ok: true; readonly value: Case } | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * The case that the answers make: those that no longer apply, a half described stock of board and a weather file without
 * its months are left out, and what follows from the others is put in.
 * Fails with faults while the place is missing, because nothing can be computed without one.
 */
export function caseOf(answers: Answers): CaseReading {
  const halfStock = isWhole(answers.insulation?.stock) ? [] : stockPaths;
  const lostFile = hasMonths(answers) ? [] : ['place.weatherFile'];
  const counting = withPatch(
    without(answers, [...lapsedPaths(answers), ...halfStock, ...lostFile]),
    impliedValues(answers),
  );
  return readCase({ overdeck: 1, ...counting });
}

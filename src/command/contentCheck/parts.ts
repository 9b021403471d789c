/** What several parts of the check share. */
import type * as v from 'valibot';
import { readWith } from '../../faults.ts';
import type { Fault } from './content.ts';
import { mayHold, partsOf } from './logic.ts';

export const tablePath = (name: string): string => `content/tables/${name}`;

/** What a schema finds wrong, under the file's name. */
export function schemaFaults(file: string, schema: v.GenericSchema, value: unknown): Fault[] {
  const reading = readWith(schema, value);
  if (reading.ok) return [];
  return reading.faults.map(({ path, message }) => ({ file, path, rule: 'schema', hint: message }));
}

/** Ids that stand more than once in a list. */
export function idFaults(file: string, ids: readonly string[]): Fault[] {
  const twice = ids.filter((id, place) => ids.indexOf(id) < place);
  return twice.map((id) => ({ file, path: id, rule: 'id-once', hint: `${id} occurs more than once` }));
}

/** The names of a condition about the case, and the values it sets against them. */
export function conditionFaults(file: string, path: string, condition: unknown): Fault[] {
  const { compared, unknownOperators } = partsOf(condition);
  return [
    ...unknownOperators.map((operator) => ({
      file,
      path,
      rule: 'operator-known',
      hint: `${JSON.stringify(operator)} is no operator that the conditions use`,
    })),
    ...compared
      .filter((comparison) => mayHold(comparison) === false)
      .map(({ path: name, value }) => ({
        file,
        path,
        rule: 'value-possible',
        hint: `${name} can never be ${JSON.stringify(value)}`,
      })),
  ];
}

/** Conditions in JSON Logic: which names they look up, and which values they compare them with. */
import * as v from 'valibot';
import { caseSchema } from '../../case/case.ts';
import { candidateSchema, climateSchema, requirementsSchema } from '../../evaluation/evaluation.ts';

/** Operators that the conditions of content/ may use. */
const operators = ['and', 'or', '!', '==', '!=', '<', '<=', '>', '>=', 'in', '+', 'var'];
const comparisons = ['==', '!=', '<', '<=', '>', '>=', 'in'];

export interface Comparison {
  readonly path: string;
  readonly value: unknown;
}

export interface ConditionParts {
  readonly paths: readonly string[];
  readonly compared: readonly Comparison[];
  readonly unknownOperators: readonly string[];
}

const isBranch = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The name behind `{"var": name}`, or undefined. */
const nameIn = (value: unknown): string | undefined =>
  isBranch(value) && typeof value['var'] === 'string' ? value['var'] : undefined;

/** Literals set against a name by one comparison; null stands for "not given" and is no value. */
function literalsOf(operator: string, operands: readonly unknown[]): Comparison[] {
  if (!comparisons.includes(operator)) return [];
  const [left, right] = operands;
  const [path, other] = nameIn(left) !== undefined ? [nameIn(left), right] : [nameIn(right), left];
  if (path === undefined || isBranch(other)) return [];
  return [other]
    .flat()
    .filter((value) => value !== null && !isBranch(value))
    .map((value) => ({ path, value }));
}

/** Takes a condition apart. */
export function partsOf(condition: unknown): ConditionParts {
  const paths = new Set<string>();
  const compared: Comparison[] = [];
  const unknownOperators: string[] = [];
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(walk);
    if (!isBranch(value)) return;
    for (const [operator, given] of Object.entries(value)) {
      if (!operators.includes(operator)) unknownOperators.push(operator);
      if (operator === 'var') paths.add(String(given));
      else {
        const operands = [given].flat();
        compared.push(...literalsOf(operator, operands));
        operands.forEach(walk);
      }
    }
  };
  walk(condition);
  return { paths: [...paths], compared, unknownOperators };
}

const rooms: Readonly<Record<string, v.GenericSchema>> = {
  case: caseSchema,
  climate: climateSchema,
  requirements: requirementsSchema,
  candidate: candidateSchema,
};

interface Opened {
  readonly wrapped?: v.GenericSchema;
  readonly entries?: Readonly<Record<string, v.GenericSchema>>;
}

function entryOf(schema: v.GenericSchema, key: string): v.GenericSchema | undefined {
  let here = schema as unknown as Opened;
  while (here.wrapped !== undefined) here = here.wrapped as unknown as Opened;
  return here.entries !== undefined && Object.hasOwn(here.entries, key) ? here.entries[key] : undefined;
}

/**
 * Whether a name could ever hold a value. Undefined when no schema describes the name.
 * `case.framing.kind` may be `truss`; it may never be `trus`.
 */
export function mayHold({ path, value }: Comparison): boolean | undefined {
  const [room = '', ...keys] = path.split('.');
  let schema = rooms[room];
  for (const key of keys) schema = schema && entryOf(schema, key);
  return schema && v.safeParse(schema, value).success;
}

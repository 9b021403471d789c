/** `overdeck schema case|evaluation`: the JSON Schema (2020-12) of what goes in and what comes out. */
import { toJsonSchema, type JsonSchema } from '@valibot/to-json-schema';
import type * as v from 'valibot';
import { caseSchema } from '../case/case.ts';
import { evaluationSchema } from '../evaluation/evaluation.ts';

export const schemaNames = ['case', 'evaluation'] as const;
export type SchemaName = (typeof schemaNames)[number];

const titles: Readonly<Record<SchemaName, string>> = {
  case: 'Overdeck case file, format version 1',
  evaluation: 'Overdeck evaluation, format version 1',
};

/** What a place needs besides the form of each field; the case's own checks say the same in code. */
const placeNeeds: Pick<JsonSchema, 'anyOf' | 'allOf'> = {
  anyOf: ['id', 'countyFips', 'zone', 'monthlyTemperature_C'].map((name) => ({ required: [name] })),
  allOf: [
    {
      if: { required: ['monthlyTemperature_C'] },
      then: { anyOf: ['zone', 'id', 'countyFips'].map((name) => ({ required: [name] })) },
    },
    {
      if: { required: ['weatherFile'] },
      then: { required: ['monthlyTemperature_C', 'monthlyRelativeHumidity_pct'] },
    },
  ],
};

const isCasePlace = (schema: v.GenericSchema): boolean =>
  'entries' in schema && Object.hasOwn(schema.entries as object, 'countyFips');

/** A schema as JSON Schema. Checks in code have no counterpart there; those of a place are written out. */
export function jsonSchema(name: SchemaName): JsonSchema {
  const schema = name === 'case' ? caseSchema : evaluationSchema;
  const converted = toJsonSchema(schema as v.GenericSchema, {
    target: 'draft-2020-12',
    ignoreActions: ['check', 'finite', 'trim'],
    overrideSchema: ({ valibotSchema, jsonSchema: made }) =>
      isCasePlace(valibotSchema as v.GenericSchema) ? { ...made, ...placeNeeds } : undefined,
  });
  const { $schema, ...rest } = converted;
  return { ...($schema === undefined ? {} : { $schema }), title: titles[name], ...rest };
}

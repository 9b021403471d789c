/** Tables: each file against its schema, then what holds across files. */
import type * as v from 'valibot';
import { checkTables } from '../../catalog/check.ts';
import { namedSources } from '../../catalog/consistency.ts';
import { defaultsTable } from '../../catalog/defaults.ts';
import { dimensionsTable } from '../../catalog/dimensions.ts';
import { furringSchema } from '../../catalog/furring.ts';
import { lumberSchema, screwsSchema } from '../../catalog/lumber.ts';
import { rationaleTable } from '../../catalog/rationale.ts';
import { recordTable } from '../../catalog/record.ts';
import { sequenceTable } from '../../catalog/sequence.ts';
import { knownGrades } from '../../catalog/sets.ts';
import { tableSchemas, type TableName } from '../../catalog/tables.ts';
import { uncertaintiesTable } from '../../catalog/uncertainties.ts';
import { windCoefficientsSchema } from '../../catalog/windCoefficients.ts';
import { criteriaTable } from '../../catalog/criteria.ts';
import type { Content, Fault } from './content.ts';
import { criteriaFaults, sizeFaults } from './criteria.ts';
import { defaultFaults } from './defaults.ts';
import { schemaFaults, tablePath } from './parts.ts';

/** Schemas of the tables that the check of the catalog does not go through. */
export const furtherSchemas = {
  'defaults.json': defaultsTable,
  'criteria.json': criteriaTable,
  'dimensions.json': dimensionsTable,
  'furring-over-foam.json': furringSchema,
  'lumber.json': lumberSchema,
  'screws.json': screwsSchema,
  'wind-gcp.json': windCoefficientsSchema,
  'rationale.json': rationaleTable,
  'record.json': recordTable,
  'sequence.json': sequenceTable,
  'uncertainties.json': uncertaintiesTable,
} as const;
export type Further = { [Name in keyof typeof furtherSchemas]: v.InferOutput<(typeof furtherSchemas)[Name]> };

export function sourceIds({ tables }: Content): ReadonlySet<string> {
  const { rows = [] } = (tables['sources.json'] ?? {}) as { rows?: { id: string }[] };
  return new Set(rows.map(({ id }) => id));
}

/** Every grade that a table names, with its path. */
function namedGrades(value: unknown, path = ''): { path: string; grade: unknown }[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => {
    const here = path === '' ? key : `${path}.${key}`;
    return key === 'known' ? [{ path: here, grade: each }] : namedGrades(each, here);
  });
}

function sourcesAndGrades(content: Content): Fault[] {
  const ids = sourceIds(content);
  return Object.keys(furtherSchemas).flatMap((name) => [
    ...namedSources(content.tables[name])
      .filter(({ id }) => !ids.has(id))
      .map(({ path, id }) => ({
        file: tablePath(name),
        path,
        rule: 'source-exists',
        hint: `add ${id} to sources.json or correct it`,
      })),
    ...namedGrades(content.tables[name])
      .filter(({ grade }) => !(knownGrades as readonly unknown[]).includes(grade))
      .map(({ path, grade }) => ({
        file: tablePath(name),
        path,
        rule: 'grade-known',
        hint: `${JSON.stringify(grade)} is not one of ${knownGrades.join(', ')}`,
      })),
  ]);
}

/** Every fault of content/tables. Rules across files are asked only when every file has its shape. */
export function tableFaults(content: Content): Fault[] {
  const schemas: Readonly<Record<string, v.GenericSchema>> = { ...tableSchemas, ...furtherSchemas };
  const strange: Fault[] = Object.keys(content.tables)
    .filter((name) => schemas[name] === undefined)
    .map((name) => ({
      file: tablePath(name),
      path: '',
      rule: 'file-known',
      hint: 'has no schema; add one beside its user',
    }));
  const shape = Object.entries(schemas).flatMap(([name, schema]): Fault[] => {
    const file = tablePath(name);
    if (!(name in content.tables)) return [{ file, path: '', rule: 'file-there', hint: 'is missing' }];
    return name in tableSchemas ? [] : schemaFaults(file, schema, content.tables[name]);
  });
  const ofCatalog = checkTables(content.tables as Record<TableName, unknown>).map((fault) => ({
    ...fault,
    file: tablePath(fault.file),
  }));
  const misshapen = shape.length > 0 || ofCatalog.some(({ rule }) => rule === 'schema');
  if (misshapen) return [...strange, ...shape, ...ofCatalog];
  const tables = content.tables as unknown as Further;
  return [
    ...strange,
    ...ofCatalog,
    ...sourcesAndGrades(content),
    ...defaultFaults(content, tables['defaults.json']),
    ...criteriaFaults(tables['criteria.json']),
    ...sizeFaults(tables),
  ];
}

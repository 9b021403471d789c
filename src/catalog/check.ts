/** Checks content/tables: first each file against its schema, then the rules across files. */
import * as v from 'valibot';
import { rules, type Fault } from './consistency.ts';
import { shippedTables, tableSchemas, type TableName, type Tables } from './tables.ts';

export type { Fault };

/**
 * Every fault of the tables; empty when all is well. Files that fail their schema are reported alone,
 * because the rules across files need the shape.
 */
export function checkTables(tables: Readonly<Record<TableName, unknown>> = shippedTables): Fault[] {
  const faults: Fault[] = [];
  for (const [file, schema] of Object.entries(tableSchemas) as [TableName, v.GenericSchema][]) {
    const parsed = v.safeParse(schema, tables[file]);
    if (parsed.success) continue;
    for (const issue of parsed.issues) {
      faults.push({ file, path: v.getDotPath(issue) ?? '', rule: 'schema', hint: issue.message });
    }
  }
  if (faults.length > 0) return faults;
  for (const rule of rules) {
    rule(tables as Tables, (file, path, name, hint) => faults.push({ file, path, rule: name, hint }));
  }
  return faults;
}

/** Typed access to content/tables/sources.json. */
import json from '../../content/tables/sources.json' with { type: 'json' };
import type { Source } from './schemas.ts';

export type { Source };

/** Its rows are checked by checkTables; not at every load, because many tables lean on this one. */
const table = json as { rows: Source[] };
const byId = new Map(table.rows.map((row) => [row.id, row]));

export const allSources = (): readonly Source[] => table.rows;

export const hasSource = (id: string): boolean => byId.has(id);

/** The source of an id. @throws RangeError when the id is not in the table: a slip in content or code. */
export function source(id: string): Source {
  const found = byId.get(id);
  if (!found) throw new RangeError(`no source ${id} in sources.json`);
  return found;
}

/** A source as one line of a list of references. */
export function citation(id: string): string {
  const { publisher, title, edition, year } = source(id);
  const when = edition !== undefined ? `, ${edition} edition` : year !== undefined ? `, ${year}` : '';
  return `${publisher}: ${title}${when}`;
}

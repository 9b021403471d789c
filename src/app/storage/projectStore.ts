/** Projects kept in this browser's IndexedDB, one entry each. The only file that touches the database. */
import type { Answers } from '../../interview/answers.ts';
import { createStore, del, entries, get, promisifyRequest, type UseStore } from 'idb-keyval';

export interface SavedProject {
  /** Version of this record, not of the case file. */
  readonly version: 1;
  readonly id: string;
  readonly name: string;
  /** [ms] since 1970, for the order of the list. */
  readonly changedAt_ms: number;
  /** The case as far as it is answered; may still lack a place. */
  readonly answers: Answers;
  /** Questions left with "next" or "not sure". */
  readonly passed: readonly string[];
  /** The question that was open last. */
  readonly question: string | null;
}

const openStore = (): UseStore => createStore('overdeck', 'projects');
let store: UseStore | undefined;
const database = (): UseStore => (store ??= openStore());

/** Every project, the one changed last first. */
export async function listProjects(): Promise<SavedProject[]> {
  const rows = await entries<string, SavedProject>(database());
  return rows.map(([, project]) => project).sort((a, b) => b.changedAt_ms - a.changedAt_ms);
}

export function readProject(id: string): Promise<SavedProject | undefined> {
  return get<SavedProject>(id, database());
}

/** Committed at once: a page that is left before the database answers must not lose the last answer. */
export function writeProject(project: SavedProject): Promise<void> {
  return database()('readwrite', (rows) => {
    rows.put(structuredClone(project), project.id);
    rows.transaction.commit();
    return promisifyRequest(rows.transaction);
  });
}

export function removeProject(id: string): Promise<void> {
  return del(id, database());
}

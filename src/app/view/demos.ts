/** The demo library: the case files of content/scenarios, each fetched when it is opened. All invented. */
import type { Case } from '../../case/case.ts';
import { readCase } from '../../case/read.ts';
import type { Reading } from '../../faults.ts';
import { inWords } from './names.ts';

export interface Demo {
  readonly id: string;
  readonly name: string;
  readonly about: string | null;
  read(): Promise<Reading<Case>>;
}

const files = import.meta.glob<unknown>('../../../content/scenarios/*.json', { import: 'default' });

export const demos: readonly Demo[] = Object.entries(files).map(([path, load]) => {
  const id = path.replace(/^.*\/|\.json$/g, '');
  return { id, name: inWords(id), about: null, read: async () => readCase(await load()) };
});

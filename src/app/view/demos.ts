/** The demo library: the case files of content/scenarios. All invented. */
import type { Case } from '../../case/case.ts';
import type { Reading } from '../../faults.ts';

export interface Demo {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  read(): Promise<Reading<Case>>;
}

interface Labeled {
  readonly project?: { readonly name?: string };
  readonly notes?: string;
}

const files = import.meta.glob<Labeled>('../../../content/scenarios/*.json', {
  import: 'default',
  eager: true,
});

export const demos: readonly Demo[] = Object.entries(files).map(([path, file]) => {
  const id = path.replace(/^.*\/|\.json$/g, '');
  const read = async (): Promise<Reading<Case>> => (await import('../../case/read.ts')).readCase(file);
  return { id, name: file.project?.name ?? id, about: file.notes ?? '', read };
});

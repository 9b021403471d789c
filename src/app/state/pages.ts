/** The pages in their order: name, key, and what each is for. */
import type { Page } from './route.svelte.ts';

export interface PageEntry {
  readonly id: Page;
  readonly name: string;
  /** Typed after `g`, or the digit alone. */
  readonly key: string;
  readonly digit: string;
  readonly purpose: string;
}

export const pageList: readonly PageEntry[] = [
  { id: 'projects', name: 'Projects', key: 'p', digit: '0', purpose: 'open, copy, import or delete a roof' },
  { id: 'brief', name: 'Brief', key: 'b', digit: '1', purpose: 'the questions, one at a time' },
  {
    id: 'section',
    name: 'Section',
    key: 's',
    digit: '2',
    purpose: 'the eave drawn to scale, layer by layer',
  },
  { id: 'compare', name: 'Compare', key: 'c', digit: '3', purpose: 'three ways to build it, side by side' },
  { id: 'workings', name: 'Workings', key: 'w', digit: '4', purpose: 'every number with formula and source' },
  { id: 'record', name: 'Record', key: 'r', digit: '5', purpose: 'the report, to read, print or download' },
];

export function pageEntry(id: Page): PageEntry {
  const entry = pageList.find((page) => page.id === id);
  if (!entry) throw new Error(`No entry for page ${id}`);
  return entry;
}

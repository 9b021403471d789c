/** The address: `#/page/detail`. Works from any folder of any static host, and with the browser's back button. */
import { createSubscriber } from 'svelte/reactivity';
import { on } from 'svelte/events';

export const pages = ['projects', 'brief', 'section', 'compare', 'workings', 'record'] as const;
export type Page = (typeof pages)[number];

export interface Address {
  readonly page: Page;
  readonly detail: string | null;
}

const isPage = (word: string | undefined): word is Page => (pages as readonly string[]).includes(word ?? '');

/** `#/brief/roof-shape` -> page `brief`, detail `roof-shape`; anything unknown is the list of projects. */
export function readAddress(hash: string): Address {
  const [, page, ...rest] = hash.split('/');
  if (!isPage(page)) return { page: 'projects', detail: null };
  const detail = decodeURIComponent(rest.join('/'));
  return { page, detail: detail === '' ? null : detail };
}

/** The link to a page, for `href`. */
export function linkTo(page: Page, detail?: string | null): string {
  return detail ? `#/${page}/${encodeURIComponent(detail)}` : `#/${page}`;
}

export class Route {
  #subscribe = createSubscriber((update) => on(window, 'hashchange', update));

  get current(): Address {
    this.#subscribe();
    return readAddress(location.hash);
  }

  go(page: Page, detail?: string | null): void {
    location.hash = linkTo(page, detail);
  }

  /** Changes the address without a new step in the browser's history. */
  replace(page: Page, detail?: string | null): void {
    history.replaceState(null, '', linkTo(page, detail));
    window.dispatchEvent(new HashChangeEvent('hashchange'));
  }
}

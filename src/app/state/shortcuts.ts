/** Which page, if any, a key press asks for: `g` then a letter, or one digit. No page while someone is typing. */
import { pageList } from './pages.ts';
import type { Page } from './route.svelte.ts';

export type Request =
  { readonly page: Page } | { readonly sheet: true } | { readonly undo: true } | { readonly redo: true };

/** [ms] longest pause between `g` and the letter; a usual value for key sequences. */
const SEQUENCE_PAUSE_ms = 1500;

const typingInputs = new Set(['text', 'number', 'search', 'email', 'url', 'tel', 'password', 'date']);

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.isContentEditable) return true;
  if (target instanceof HTMLInputElement) return typingInputs.has(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}

/** One listener's memory of the last key; call `read` with each key press. */
export class ShortcutReader {
  #waitingSince_ms: number | null = null;

  read(event: KeyboardEvent): Request | null {
    if (isTyping(event.target)) return null;
    const key = event.key.toLowerCase();
    if ((event.ctrlKey || event.metaKey) && key === 'z')
      return event.shiftKey ? { redo: true } : { undo: true };
    if (event.ctrlKey || event.metaKey || event.altKey) return null;
    const waits =
      this.#waitingSince_ms !== null && event.timeStamp - this.#waitingSince_ms < SEQUENCE_PAUSE_ms;
    this.#waitingSince_ms = null;
    if (event.key === '?') return { sheet: true };
    const entry = pageList.find((page) => page.digit === key || (waits && page.key === key));
    if (entry) return { page: entry.id };
    if (key === 'g') this.#waitingSince_ms = event.timeStamp;
    return null;
  }
}

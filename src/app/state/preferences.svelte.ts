/** What a reader prefers on this device: units, colors, single-key shortcuts. Kept in localStorage. */
import type { System } from '../../measures.ts';

export type Theme = 'device' | 'light' | 'dark';

const storageKey = 'overdeck-preferences';

interface Saved {
  system: System;
  theme: Theme;
  shortcuts: boolean;
}

const usual: Saved = { system: 'IP', theme: 'device', shortcuts: true };

function readSaved(): Saved {
  try {
    const saved = JSON.parse(localStorage.getItem(storageKey) ?? '{}') as Partial<Saved>;
    return { ...usual, ...saved };
  } catch (fault) {
    console.warn('Preferences could not be read; the usual ones are used.', fault);
    return usual;
  }
}

export class Preferences {
  #saved = $state<Saved>(readSaved());

  get system(): System {
    return this.#saved.system;
  }
  set system(system: System) {
    this.#keep({ system });
  }
  get theme(): Theme {
    return this.#saved.theme;
  }
  set theme(theme: Theme) {
    this.#keep({ theme });
  }
  get shortcuts(): boolean {
    return this.#saved.shortcuts;
  }
  set shortcuts(shortcuts: boolean) {
    this.#keep({ shortcuts });
  }

  #keep(change: Partial<Saved>): void {
    this.#saved = { ...this.#saved, ...change };
    try {
      localStorage.setItem(storageKey, JSON.stringify(this.#saved));
    } catch (fault) {
      console.warn('Preferences could not be kept.', fault);
    }
  }
}

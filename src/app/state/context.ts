/** The desk of the running app, for every component below App. */
import { createContext } from 'svelte';
import type { Desk } from './desk.svelte.ts';

export const [useDesk, provideDesk] = createContext<Desk>();

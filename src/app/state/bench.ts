/** Everything that an open project needs: fetched after the list of projects is on the screen. */
export { Guide } from './guide.svelte.ts';
export { default as Pages } from '../pages/Pages.svelte';

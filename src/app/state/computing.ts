/** Starts the worker that computes evaluations. */
export const startComputing = (): Worker =>
  new Worker(new URL('./evaluate.worker.ts', import.meta.url), { type: 'module' });

/** Remembers results of pure functions for as long as a completed case lives: variants share most of their parts. */
import type { CompleteCase } from '../case/complete.ts';

const memory = new WeakMap<CompleteCase, Map<string, unknown>>();

/**
 * The value of a pure computation, made once for a case and key.
 *
 * @param given  the complete case that every input besides the key comes from
 * @param key    names the computation and the inputs that differ within the case
 * @param make   the computation
 */
export function once<T>(given: CompleteCase, key: string, make: () => T): T {
  const known = memory.get(given) ?? new Map<string, unknown>();
  memory.set(given, known);
  if (!known.has(key)) known.set(key, make());
  return known.get(key) as T;
}

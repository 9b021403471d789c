/** Reading and writing a case by dotted path, without ever changing the case that was given. */
import type { Case } from './case.ts';

type Branch = Record<string, unknown>;
const isBranch = (value: unknown): value is Branch =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The value at a dotted path (`roof.pitch_rise_per_12`), or undefined when any part is missing. */
export function valueAt(given: Case, path: string): unknown {
  let value: unknown = given;
  for (const key of path.split('.')) {
    if (!isBranch(value) || !Object.hasOwn(value, key)) return undefined;
    value = value[key];
  }
  return value;
}

/** A copy of the case with the value put at the path; `undefined` takes the answer away. */
export function withValueAt(given: Case, path: string, value: unknown): Case {
  const put = (branch: Branch, keys: readonly string[]): Branch => {
    const [key, ...rest] = keys;
    if (key === undefined) return branch;
    if (rest.length === 0 && value === undefined)
      return Object.fromEntries(Object.entries(branch).filter(([name]) => name !== key));
    const below = Object.hasOwn(branch, key) ? branch[key] : undefined;
    return { ...branch, [key]: rest.length === 0 ? value : put(isBranch(below) ? below : {}, rest) };
  };
  return put(given as Branch, path.split('.')) as unknown as Case;
}

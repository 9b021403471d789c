/** Facts for the rules: on which a rule must hold, and just past its limit, on which it must not. */

export type Branch = { readonly [name: string]: unknown };

export interface Pair {
  readonly holds: readonly Branch[];
  readonly not: readonly Branch[];
}

/** `at('case.roof.valleys', 3)` is `{ case: { roof: { valleys: 3 } } }`; several pairs are put together. */
export function at(...named: readonly unknown[]): Branch {
  const whole: Record<string, unknown> = {};
  for (let index = 0; index < named.length; index += 2) {
    const keys = String(named[index]).split('.');
    let here = whole;
    for (const key of keys.slice(0, -1)) here = (here[key] ??= {}) as Record<string, unknown>;
    here[keys.at(-1) ?? ''] = named[index + 1];
  }
  return whole;
}

/** Each value at one path. */
export const each = (path: string, ...values: readonly unknown[]): Branch[] =>
  values.map((value) => at(path, value));

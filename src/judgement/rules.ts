/** Rules as data: conditions in JSON Logic, effects and words in content/rules/rules.json. */
import jsonLogic from 'json-logic-js';
import { rules, type Rule } from '../catalog/rules.ts';
import type { StrategyId } from '../catalog/sets.ts';
import { show, type MeasureKind } from '../measures.ts';

export { rules, rulesTable, type Rule } from '../catalog/rules.ts';

export type Effect = Rule['effect'];

/** What a rule may look at. */
export type Facts = Readonly<Record<string, unknown>>;
export type FilledFacts = Record<string, string | number | boolean | null>;

export interface Finding<R extends Rule = Rule> {
  readonly rule: R;
  readonly text: string;
  readonly facts: FilledFacts;
}

function valueOf(facts: Facts, path: string): FilledFacts[string] {
  const value: unknown = jsonLogic.apply({ var: path }, facts);
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? value : null;
}

/** Inch-pound first, SI in brackets; once where both are the same. */
export function inBothUnits(kind: MeasureKind, value: number): string {
  const ip = show(kind, value, 'IP');
  const si = show(kind, value, 'SI');
  return ip === si ? ip : `${ip} (${si})`;
}

function shown(value: FilledFacts[string], kind: MeasureKind | 'text'): string {
  if (value === null) return 'not known';
  return kind !== 'text' && typeof value === 'number' ? inBothUnits(kind, value) : String(value);
}

/** The finding of a rule whose condition holds, its text filled in. */
function findingOf<R extends Rule>(rule: R, facts: Facts): Finding<R> {
  const filled: FilledFacts = {};
  let text = rule.text;
  for (const [name, { path, kind }] of Object.entries(rule.facts)) {
    const value = valueOf(facts, path);
    filled[name] = value;
    text = text.replaceAll(`{${name}}`, shown(value, kind));
  }
  return { rule, text, facts: filled };
}

/**
 * All rules of an effect and scope whose condition holds.
 *
 * @param effect    [-] stop, exclude, caution or defer
 * @param scope     [-] case or candidate
 * @param facts     [-] the objects that conditions may name
 * @param strategy  [-] leaves out rules written for other strategies
 * @returns         [-] findings in the order of the file
 */
export function findings<E extends Effect>(
  effect: E,
  scope: Rule['scope'],
  facts: Facts,
  strategy?: StrategyId,
): Finding<Extract<Rule, { effect: E }>>[] {
  return rules
    .filter((rule): rule is Extract<Rule, { effect: E }> => rule.effect === effect && rule.scope === scope)
    .filter(
      (rule) => strategy === undefined || rule.strategies === undefined || rule.strategies.includes(strategy),
    )
    .filter((rule) => jsonLogic.truthy(jsonLogic.apply(rule.when as never, facts)))
    .map((rule) => findingOf(rule, facts));
}

/**
 * The answers of the question that is open, as they are typed. Good answers go to the guide at once, so that the
 * drawing follows; faults stay here until the reader asks to go on.
 */
import { untrack } from 'svelte';
import type { Patch } from '../../interview/answers.ts';
import type { AnswerPath } from '../../interview/questions.ts';
import { validate } from '../../interview/validate.ts';
import type { QuestionField } from '../../catalog/wordSchemas.ts';
import type { FieldFault } from '../view/fieldFault.ts';
import type { System } from '../../measures.ts';
import { fieldId } from '../view/fields.ts';
import { faultInUnits } from '../view/faultInUnits.ts';
import type { Guide } from './guide.svelte.ts';

export class Draft {
  readonly #guide: Guide;
  readonly #system: () => System;
  /** Message by path. */
  #faults = $state.raw<Readonly<Record<string, string>>>({});
  #isShown = $state(false);
  #attempt = $state(0);
  #round = $state(0);

  constructor(guide: Guide, system: () => System) {
    this.#guide = guide;
    this.#system = system;
  }

  get attempt(): number {
    return this.#attempt;
  }

  valueOf(path: string): unknown {
    return this.#guide.valueOf(path);
  }

  /** Shown only after a try to go on: nobody is corrected while still typing. */
  faultOf(path: string): string | undefined {
    return this.#isShown ? this.#faults[path] : undefined;
  }

  /** Message by criterion. */
  get weightFaults(): Readonly<Record<string, string>> {
    const own = Object.entries(this.#faults).filter(
      ([path]) => this.#isShown && path.startsWith('priorities.'),
    );
    return Object.fromEntries(own.map(([path, message]) => [path.replace('priorities.', ''), message]));
  }

  get answers(): Guide['answers'] {
    return this.#guide.answers;
  }

  get place(): Readonly<Record<'id' | 'name' | 'countyFips' | 'zone', string>> {
    return (this.#guide.answers.place ?? {}) as Record<'id' | 'name' | 'countyFips' | 'zone', string>;
  }

  /** Takes one field's value: true when it was allowed and sent on, false when it is kept as a fault. */
  take(path: string, value: unknown, textFault: string | null = null): boolean {
    const key = path as AnswerPath;
    const fault = textFault ?? this.#faultOf(key, value);
    this.#note(path, fault);
    if (fault === null) this.#guide.answer({ [key]: value });
    return fault === null;
  }

  takeAll(patch: Patch): void {
    for (const path of Object.keys(patch)) this.#note(path, null);
    this.#guide.answer(patch);
  }

  /** Counts up when answers came in that stand in place of whatever was being typed. */
  get round(): number {
    return this.#round;
  }

  /** Takes answers that replace what is typed in their fields, such as the months of a file. */
  replaceAll(patch: Patch): void {
    this.takeAll(patch);
    this.#round += 1;
  }

  weigh(criterion: string, weight: number | undefined, textFault: string | null): void {
    const fault = textFault ?? (weight !== undefined && weight > 100 ? `${weight} is above 100` : null);
    this.#note(`priorities.${criterion}`, fault);
    if (fault === null) this.#guide.weigh(criterion, weight);
  }

  get role(): Guide['role'] {
    return this.#guide.role;
  }

  /** Shows the faults of the fields asked; true when there are none and the way is free. */
  check(fields: readonly QuestionField[]): boolean {
    this.#isShown = true;
    this.#attempt += 1;
    return this.faults(fields).length === 0;
  }

  faults(fields: readonly QuestionField[]): readonly FieldFault[] {
    if (!this.#isShown) return [];
    return Object.entries(this.#faults).flatMap(([path, message]) => {
      const field = fields.find((each) => each.path === path || path.startsWith(`${each.path}.`));
      if (!field) return [];
      const isWeight = path.startsWith('priorities.');
      return [{ id: fieldId(isWeight ? field.path : path), label: field.label, message }];
    });
  }

  /** Forgets what was typed wrong; the answers already taken stay. */
  clear(): void {
    untrack(() => {
      this.#faults = {};
      this.#isShown = false;
      this.#attempt = 0;
    });
  }

  #faultOf(path: AnswerPath, value: unknown): string | null {
    const fault = validate({ [path]: value })[0];
    return fault ? faultInUnits(path, value, fault.message, this.#system()) : null;
  }

  #note(path: string, fault: string | null): void {
    const others = Object.entries(this.#faults).filter(([each]) => each !== path);
    this.#faults = Object.fromEntries(fault === null ? others : [...others, [path, fault]]);
  }
}

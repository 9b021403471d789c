/** What else each answer could be: the other members of closed sets, and numbers within documented ranges. */
import type { GenericSchema } from 'valibot';
import { caseSchema, type Case } from '../../case/case.ts';
import { valueAt } from '../../case/paths.ts';
import { defaultRows } from '../../catalog/defaults.ts';
import { finderOf, uncertainties, uncertaintiesOf, type Finder } from '../../catalog/uncertainties.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import { shaken, valueAtShare } from './spread.ts';

export type AnswerValue = string | number | boolean;

/** One answer, and what it could be instead. */
export interface OpenAnswer {
  readonly path: string;
  readonly question: string;
  readonly finder: Finder;
  readonly is: AnswerValue;
  /** Nobody answered: the cautious default stands. */
  readonly isAssumed: boolean;
  readonly others: readonly AnswerValue[];
  /** Chance of each of the others. */
  readonly chances: readonly number[];
  /** The answer for a share from 0 to 1. */
  readonly at: (share: number) => AnswerValue;
}

/** The parts of a valibot schema that are read here. */
interface Parts {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Parts>>;
  readonly options?: readonly string[];
  readonly wrapped?: Parts;
  readonly pipe?: readonly (Parts & { readonly requirement?: unknown })[];
}

function partsAt(path: string): Parts | undefined {
  let parts: Parts | undefined = caseSchema as GenericSchema as unknown as Parts;
  for (const key of path.split('.')) {
    while (parts?.wrapped) parts = parts.wrapped;
    parts = parts?.entries?.[key];
  }
  while (parts?.wrapped) parts = parts.wrapped;
  return parts;
}

function closedSet(path: string): readonly AnswerValue[] {
  const parts = partsAt(path);
  if (parts?.type === 'boolean') return [false, true];
  return parts?.type === 'picklist' ? (parts.options ?? []) : [];
}

/** A number that the case file allows at a path. */
function allowed(path: string, value: number): number {
  let result = value;
  for (const step of partsAt(path)?.pipe ?? []) {
    const limit = typeof step.requirement === 'number' ? step.requirement : Number.NaN;
    if (step.type === 'integer') result = Math.round(result);
    if (step.type === 'min_value') result = Math.max(result, limit);
    if (step.type === 'max_value') result = Math.min(result, limit);
  }
  return result;
}

/** Each closed set that has a default: every question that the interview asks. */
function closedAnswers(given: Case, evaluation: Evaluation): OpenAnswer[] {
  const { assumedIsOther, assumedWishIsOther, givenIsOther } = uncertainties.chances;
  const seen = new Set<string>();
  return defaultRows.flatMap(({ path, question }): OpenAnswer[] => {
    const options = closedSet(path);
    const is = valueAt(evaluation.case, path) as AnswerValue | undefined;
    if (seen.has(path) || options.length < 2 || is === undefined) return [];
    seen.add(path);
    const isAssumed = valueAt(given, path) === undefined;
    const others = options.filter((option) => option !== is);
    const finder = finderOf(path);
    const ifAssumed = finder === 'owner' ? assumedWishIsOther : assumedIsOther;
    const chance = isAssumed ? ifAssumed : givenIsOther;
    return [
      {
        path,
        question,
        finder,
        is,
        isAssumed,
        others,
        chances: others.map(() => chance / others.length),
        at: (share) => (share >= chance ? is : (others[Math.floor((share / chance) * others.length)] ?? is)),
      },
    ];
  });
}

/** [-] a low and a high answer stand for the tails: a fifth of the mass each (our judgement). */
const TAIL = 0.2;
/** [-] the middle of a tail of that mass: its tenth. */
const TAIL_MIDDLE = 0.1;

function openNumbers(given: Case, evaluation: Evaluation): OpenAnswer[] {
  return uncertaintiesOf('answer').flatMap((row): OpenAnswer[] => {
    const is = valueAt(evaluation.case, row.path);
    if (typeof is !== 'number') return [];
    const at = (share: number): number => allowed(row.path, shaken(row.shape, is, valueAtShare(row, share)));
    const tails = [at(TAIL_MIDDLE), at(1 - TAIL_MIDDLE)].filter((value) => value !== is);
    const others = [...new Set(tails)];
    if (others.length === 0) return [];
    return [
      {
        path: row.path,
        question: row.question,
        finder: row.finder,
        is,
        isAssumed: valueAt(given, row.path) === undefined,
        others,
        chances: others.map(() => TAIL),
        at,
      },
    ];
  });
}

/**
 * Every answer that could be another one.
 *
 * @param given       [-] the case as it was answered
 * @param evaluation  [-] its evaluation, whose case has the defaults filled in
 * @returns           [-] what nobody answered first, then the rest, each in the order of the interview
 * @source            OUR-JUDGEMENT chances and ranges of uncertainties.json
 */
export function openAnswers(given: Case, evaluation: Evaluation): OpenAnswer[] {
  const all = [...closedAnswers(given, evaluation), ...openNumbers(given, evaluation)];
  return [...all.filter(({ isAssumed }) => isAssumed), ...all.filter(({ isAssumed }) => !isAssumed)];
}

/** The answers so far: a case with gaps, in which even the place may be missing. */
import type { Case } from '../case/case.ts';
import { valueAt, withValueAt } from '../case/paths.ts';
import { pathsOf, stateIds, type AnswerPath, type StateId } from './questions.ts';

type Section = Exclude<keyof Case, 'overdeck' | 'insulation'>;
type Insulation = NonNullable<Case['insulation']>;
type Stock = NonNullable<Insulation['stock']>;

/** Every part of a case optional; parts that the case wants whole (place, stock) may be half answered. */
export type Answers = {
  readonly [S in Section]?: S extends 'place' ? Partial<Case['place']> : NonNullable<Case[S]>;
} & { readonly insulation?: Omit<Insulation, 'stock'> & { stock?: Partial<Stock> } };

/** New values by dotted path; `undefined` takes an answer away ("not sure"). */
export type Patch = Readonly<Partial<Record<AnswerPath, unknown>>>;

/** The path functions of a case hold for a case with gaps as well: they only follow names. */
const asCase = (answers: Answers): Case => answers as unknown as Case;
const asAnswers = (given: Case): Answers => given as unknown as Answers;

/** The answer at a path, or undefined. */
export const answerAt = (answers: Answers, path: string): unknown => valueAt(asCase(answers), path);

function isEmpty(value: unknown): boolean {
  return (
    typeof value === 'object' && value !== null && !Array.isArray(value) && Object.keys(value).length === 0
  );
}

/** Sections without any answer are left out, so that taking an answer back leaves no trace. */
function pruned(answers: Answers): Answers {
  const prune = (branch: object): object =>
    Object.fromEntries(
      Object.entries(branch)
        .map(([key, value]): [string, unknown] => [
          key,
          typeof value === 'object' && value !== null && !Array.isArray(value) ? prune(value) : value,
        ])
        .filter(([, value]) => !isEmpty(value)),
    );
  return prune(answers) as Answers;
}

/** A copy of the answers with the patch applied. */
export function withPatch(answers: Answers, patch: Patch): Answers {
  const changed = Object.entries(patch).reduce(
    (given, [path, value]) => withValueAt(given, path, value),
    asCase(answers),
  );
  return pruned(asAnswers(changed));
}

/** The answers without those at the given paths. */
export const without = (answers: Answers, paths: readonly string[]): Answers =>
  withPatch(answers, Object.fromEntries(paths.map((path) => [path, undefined])));

/** Whether two answers at a path say the same (lists and weights by content). */
const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The asked paths whose answers differ between two sets of answers. */
export const changedPaths = (before: Answers, after: Answers): readonly AnswerPath[] =>
  stateIds
    .flatMap((page) => pathsOf[page] as readonly AnswerPath[])
    .filter((path) => !same(answerAt(before, path), answerAt(after, path)));

/** The paths of a page that have an answer. */
export const answeredPaths = (answers: Answers, page: StateId): readonly AnswerPath[] =>
  (pathsOf[page] as readonly AnswerPath[]).filter((path) => answerAt(answers, path) !== undefined);

/** The answers that a case file holds. */
export function answersOf(given: Case): Answers {
  return pruned(asAnswers(withValueAt(given, 'overdeck', undefined)));
}

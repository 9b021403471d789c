/** What each empty field of a question stands for, in words, with what that costs. */
import type { QuestionWords } from '../../catalog/wordSchemas.ts';
import type { Evaluation } from '../../evaluation/evaluation.ts';
import type { System } from '../../measures.ts';
import { answerInWords } from './fields.ts';

export function assumedFor(
  question: QuestionWords,
  evaluation: Evaluation | null,
  system: System,
): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { path, value, cost } of evaluation?.assumptions ?? []) {
    const field = question.fields.find((each) => each.path === path);
    if (field) found.set(path, `${answerInWords(field, value, system)}. ${cost}`);
  }
  return found;
}

/** Source of figures that are listed for a place and still have to be confirmed. */
const LISTED = 'IBC-1608-2';

/** A figure listed for the place, by path: offered, never taken as an answer by itself. */
export const listedFor = (evaluation: Evaluation | null): ReadonlyMap<string, number> =>
  new Map(
    (evaluation?.assumptions ?? []).flatMap(({ path, value, source }) =>
      source === LISTED && typeof value === 'number' ? [[path, value] as const] : [],
    ),
  );

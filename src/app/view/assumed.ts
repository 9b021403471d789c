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

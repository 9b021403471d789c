/** What a changed answer takes with it at once: things that can no longer be true beside it. */
import { answerAt, changedPaths, withPatch, type Answers, type Patch } from './answers.ts';
import type { AnswerPath } from './questions.ts';

/** The months that a weather file stands for. */
const MONTHS: readonly AnswerPath[] = ['place.monthlyTemperature_C', 'place.monthlyRelativeHumidity_pct'];
const FILE: AnswerPath = 'place.weatherFile';

/**
 * The answers with new ones. Months that are changed by hand are a person's own, so the entry of the weather file that
 * they were read from goes; undo brings both back. A patch that names the file itself is taken as it is.
 */
export function withAnswers(before: Answers, patch: Patch): Answers {
  const after = withPatch(before, patch);
  if (FILE in patch || answerAt(after, FILE) === undefined) return after;
  const isEdited = changedPaths(before, after).some((path) => MONTHS.includes(path));
  return isEdited ? withPatch(after, { [FILE]: undefined }) : after;
}

/** `evaluate --sure N`: how sure the ranking is, added to the evaluation. */
import type { Case } from '../case/case.ts';
import { evaluate } from '../evaluate.ts';
import type { Evaluation } from '../evaluation/evaluation.ts';
import { sureOf, type Stage } from '../judgement/sure/sure.ts';
import { badInput } from './badInput.ts';

/** Most cases with other answers that are evaluated again: at half a second each this is some minutes. */
const MOST = 1000;

/** The number after `--sure`, or undefined without the option. */
export function sureCount(option: string | undefined): number | undefined {
  if (option === undefined) return undefined;
  const count = /^\d+$/.test(option) ? Number(option) : Number.NaN;
  if (!(count <= MOST))
    throw badInput('--sure', `${JSON.stringify(option)} is not a whole number from 0 to ${MOST}`);
  return count;
}

const stages: Readonly<Record<Stage, string>> = {
  samples: 'samples of measures, prices and weights',
  answers: 'other answers, one at a time',
  cases: 'cases with other answers',
};

/** Says how far it is, on a terminal only. */
function progress(stage: Stage, done: number, total: number): void {
  if (!process.stderr.isTTY || (stage === 'samples' && done < total)) return;
  process.stderr.write(`\r${stages[stage]}: ${done} of ${total}${done === total ? '\n' : ''}`);
}

/** The evaluation with `sure`; as it is where nothing is ranked. */
export function withSure(evaluation: Evaluation, given: Case, evaluations: number): Evaluation {
  const sure = sureOf(given, evaluate, { evaluations, onprogress: progress });
  return sure === null ? evaluation : { ...evaluation, sure };
}

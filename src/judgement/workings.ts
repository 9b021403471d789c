/** The worked numbers of one candidate: formula, inputs, result, limit, source. Nothing new is computed here. */
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import type { Working } from '../evaluation/working.ts';
import { deckWorkings } from './workings/deck.ts';
import { edgeWorkings } from './workings/edge.ts';
import { fasteningWorkings } from './workings/fastening.ts';
import { heatWorkings } from './workings/heat.ts';
import { loadWorkings } from './workings/loads.ts';
import { moistureWorkings } from './workings/moisture.ts';
import { rankWorkings } from './workings/rank.ts';
import { strengthWorkings } from './workings/strength.ts';

/**
 * Every number behind one candidate, worked.
 *
 * @param evaluation  the evaluation
 * @param id          a candidate of it
 * @returns           workings in the order in which a reader would follow them
 * @throws            RangeError when the evaluation has no such candidate
 */
export function workingsOf(evaluation: Evaluation, id: string): Working[] {
  const candidate: Candidate | undefined = evaluation.candidates.find((each) => each.id === id);
  if (candidate === undefined) throw new RangeError(`no candidate ${id} in this evaluation`);
  return [
    ...deckWorkings(evaluation, candidate),
    ...moistureWorkings(evaluation, candidate),
    ...heatWorkings(evaluation, candidate),
    ...edgeWorkings(evaluation, candidate),
    ...loadWorkings(evaluation, candidate),
    ...strengthWorkings(candidate),
    ...fasteningWorkings(evaluation, candidate),
    ...rankWorkings(evaluation, candidate),
  ];
}

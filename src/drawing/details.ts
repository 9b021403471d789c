/** The places of a roof that can be drawn, and the model of each. */
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import { details, type Detail, type DetailModel, type EdgeView } from './edge-model.ts';
import { eaveEdge } from './edge.ts';
import { rakeEdge } from './rake.ts';
import { ridgeDetail } from './ridge.ts';

/**
 * Why a roof has no such place.
 *
 * @param evaluation  the evaluation, its case with every answer filled in
 * @param detail      the place
 * @returns           one sentence; null when the roof has it
 */
export function whyNoDetail(evaluation: Evaluation, detail: Detail): string | null {
  const { shape, length_m, width_m } = (evaluation.case as unknown as CompleteCase).roof;
  if (detail === 'rake' && shape === 'hip') return 'A hip roof has eaves all around and no rake.';
  if (detail === 'ridge' && shape === 'shed') return 'A shed roof has one slope and no ridge.';
  if (detail === 'ridge' && shape === 'hip' && length_m <= width_m)
    return 'This hip roof is as wide as it is long: its slopes meet in a point, not in a ridge.';
  return null;
}

/** The places that this roof has, in the order of the building. */
export const detailsOf = (evaluation: Evaluation): Detail[] =>
  details.filter((detail) => whyNoDetail(evaluation, detail) === null);

const builders: Readonly<
  Record<Detail, (evaluation: Evaluation, candidate: Candidate, view: EdgeView) => DetailModel>
> = { eave: eaveEdge, rake: rakeEdge, ridge: ridgeDetail };

/**
 * Builds one place of a candidate's roof.
 *
 * @param evaluation  the evaluation the candidate belongs to
 * @param candidate   the candidate to draw
 * @param detail      which place
 * @param view        [m] how much of it to show
 * @returns           [m] its geometry
 * @throws            RangeError when the roof has no such place
 */
export function detailModel(
  evaluation: Evaluation,
  candidate: Candidate,
  detail: Detail,
  view: EdgeView,
): DetailModel {
  const reason = whyNoDetail(evaluation, detail);
  if (reason !== null) throw new RangeError(reason);
  return builders[detail](evaluation, candidate, view);
}

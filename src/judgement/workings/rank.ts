/** The working of a candidate's place in the ranking. */
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';
import { criterion } from '../criteria.ts';
import { valueIn } from './value.ts';

export function rankWorkings({ ranking, candidates }: Evaluation, candidate: Candidate): Working[] {
  const total = ranking.scores[candidate.id];
  if (total === undefined) return [];
  const values = (one: Candidate) =>
    Object.fromEntries(one.attributes.map(({ criterion: id, value }) => [id, value]));
  const leaders = ranking.leaders.flatMap(({ candidate: id }) => candidates.filter((one) => one.id === id));
  const compared = leaders.includes(candidate) ? leaders : [candidate, ...leaders];
  return [
    {
      id: 'total-value',
      title: 'Total value in the ranking',
      formula: 'V = Σ w · v',
      formulaTex: 'V = \\sum_i w_i v_i',
      inputs: candidate.attributes.map(({ criterion: id, value }) =>
        valueIn(
          criterion(id).name,
          `weight ${(ranking.weights[id] ?? 0).toFixed(3)} × value ${value.toFixed(3)}`,
          ranking.contributions[candidate.id]?.[id] ?? 0,
          'ratio',
        ),
      ),
      result: valueIn('V', 'total, 0 to 1', total, 'ratio'),
      source: 'OUR-JUDGEMENT',
      clause: 'additive value model; anchors and default weights in content/tables/criteria.json',
      known: 'our judgement',
      calculation: {
        name: 'weighted-ranking',
        input: {
          weights: ranking.weights,
          scores: Object.fromEntries(compared.map((one) => [one.id, values(one)])),
        },
      },
    },
  ];
}

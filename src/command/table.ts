/** Every build-up that was tried as one line of a table, for a spreadsheet. */
import Papa from 'papaparse';
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';

type Cell = string | number | boolean | null;

function lineOf(candidate: Candidate, evaluation: Evaluation): Record<string, Cell> {
  const { ranking } = evaluation;
  const rank = ranking.order.indexOf(candidate.id);
  const { thermal, condensationControl, edge, takeoff } = candidate;
  return {
    candidate: candidate.id,
    strategy: candidate.strategy,
    rank: rank < 0 ? null : rank + 1,
    score: ranking.scores[candidate.id] ?? null,
    recommended: ranking.recommended === candidate.id,
    feasible: candidate.feasible,
    excludedBy: candidate.excludedBy.map(({ rule }) => rule).join(' '),
    board: candidate.board,
    baseBoard: candidate.baseBoard,
    ventilation: candidate.ventilation.kind,
    underlayment: candidate.underlayment,
    carrier: candidate.carrier,
    aboveDeck_m2K_W: thermal.aboveDeck_m2K_W,
    total_m2K_W: thermal.total_m2K_W,
    transmittance_W_m2K: thermal.transmittance_W_m2K,
    deck_C: condensationControl.temperature.deck_C,
    maximumIndoor_pct: condensationControl.humidity.maximumIndoor_pct,
    monthsToDryDeck: candidate.drying.monthsToDryDeck,
    jointLength_m: candidate.airBarrier.jointLength_m,
    buildUp_m: edge.buildUp_m,
    fascia_m: edge.fascia_m,
    ridgeRise_m: edge.ridgeRise_m,
    screwLength_m: candidate.fasteners.screwLength_m,
    roofArea_m2: takeoff.roofArea_m2,
    waste_pct: takeoff.waste_pct,
    cost_USD_m2: takeoff.cost_USD_m2,
    labor_h_m2: takeoff.labor_h_m2,
    carbon_kg_m2: takeoff.carbon_kg_m2,
    trades: takeoff.trades,
    ...Object.fromEntries(candidate.attributes.map(({ criterion, value }) => [`value ${criterion}`, value])),
  };
}

/** All candidates of an evaluation, feasible or not, in their own order. */
export function candidateCsv(evaluation: Evaluation): string {
  const lines = evaluation.candidates.map((candidate) => lineOf(candidate, evaluation));
  const columns = [...new Set(lines.flatMap((line) => Object.keys(line)))];
  return `${Papa.unparse(lines, { columns, newline: '\r\n' })}\r\n`;
}

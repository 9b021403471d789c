/** The ranking of the feasible candidates, how sure it is, and why the first is first. */
import type { StrategyId } from '../catalog/sets.ts';
import type { Candidate, Ranking } from '../evaluation/evaluation.ts';
import { criterion, type Weight } from './criteria.ts';
import { contributionsOf, normalized, overturnOf, type Scores } from './weighted.ts';

/** [%] a first place that survives every single weight moving by this much is clear (product acceptance scenarios). */
const CLEAR_PCT = 25;
/** How many reasons and worries the summary shows. */
const SHOWN = 3;

const scoresOf = (candidate: Candidate): Scores =>
  Object.fromEntries(candidate.attributes.map(({ criterion: id, value }) => [id, value]));

interface Ranked {
  readonly candidate: Candidate;
  readonly scores: Scores;
  readonly contributions: Readonly<Record<string, number>>;
  readonly total: number;
}

function ranked(candidates: readonly Candidate[], weights: Readonly<Record<string, number>>): Ranked[] {
  return candidates
    .filter((candidate) => candidate.feasible)
    .map((candidate) => {
      const scores = scoresOf(candidate);
      const contributions = contributionsOf(weights, scores);
      const total = Object.values(contributions).reduce((sum, part) => sum + part, 0);
      return { candidate, scores, contributions, total };
    })
    .sort((a, b) => b.total - a.total || (a.candidate.id < b.candidate.id ? -1 : 1));
}

function leadersOf(all: readonly Ranked[]): Ranked[] {
  const seen = new Set<StrategyId>();
  return all.filter(({ candidate }) => !seen.has(candidate.strategy) && seen.add(candidate.strategy));
}

/** What speaks most for the first against the second, or with nobody else against the middle of the scale. */
function differences(first: Ranked, second: Ranked | undefined): { criterion: string; difference: number }[] {
  return Object.entries(first.contributions).map(([id, part]) => {
    const weight = part / (first.scores[id] || 1);
    const other = second === undefined ? weight / 2 : (second.contributions[id] ?? 0);
    return { criterion: id, difference: part - other };
  });
}

const inWords = ({ criterion: id, difference }: { criterion: string; difference: number }) => ({
  criterion: id,
  difference,
  text: criterion(id).name,
});

function confidenceOf(
  leaders: readonly Ranked[],
  raw: Readonly<Record<string, number>>,
): Pick<Ranking, 'confidence' | 'overturns'> {
  const [first, second] = leaders;
  if (first === undefined)
    return {
      overturns: [],
      confidence: { level: 'none-feasible', margin: 0, runnerUp: null, reasons: [], worries: [] },
    };
  const overturns = leaders.slice(1).map((other) =>
    overturnOf(
      raw,
      { id: first.candidate.id, scores: first.scores },
      { id: other.candidate.id, scores: other.scores },
    ),
  );
  const isClear = overturns.every(
    ({ change_pct }) => change_pct === null || Math.abs(change_pct) > CLEAR_PCT,
  );
  const gaps = differences(first, second);
  const falling = [...gaps].sort((a, b) => b.difference - a.difference);
  return {
    overturns: overturns.flatMap(({ criterion: id, from, to, weight, change_pct }) =>
      id === null || weight === null || change_pct === null
        ? []
        : [{ criterion: id, from, to, weight, change_pct }],
    ),
    confidence: {
      level: isClear ? 'clear' : 'narrow',
      margin: first.total - (second?.total ?? 0),
      runnerUp: second?.candidate.id ?? null,
      reasons: falling.slice(0, SHOWN).filter((gap) => gap.difference > 0).map(inWords),
      worries: falling.slice(-SHOWN).reverse().filter((gap) => gap.difference < 0).map(inWords),
    },
  };
}

/**
 * Ranks all feasible candidates.
 *
 * @param candidates  [-] with feasibility and attributes
 * @param weights     [-] raw swing weights
 * @param isStopped   [-] true when a stop rule holds: then nothing is ranked
 * @returns           [-] order, leaders, scores, contributions, overturns, confidence
 */
export function rankingOf(
  candidates: readonly Candidate[],
  weights: readonly Weight[],
  isStopped: boolean,
): Ranking {
  const raw = Object.fromEntries(weights.map(({ criterion: id, raw: weight }) => [id, weight]));
  const shares = normalized(raw);
  if (isStopped)
    return {
      order: [],
      leaders: [],
      recommended: null,
      weights: shares,
      scores: {},
      contributions: {},
      overturns: [],
      confidence: { level: 'stop', margin: 0, runnerUp: null, reasons: [], worries: [] },
    };
  const all = ranked(candidates, shares);
  const leaders = leadersOf(all);
  return {
    order: all.map(({ candidate }) => candidate.id),
    leaders: leaders.map(({ candidate, total }) => ({
      strategy: candidate.strategy,
      candidate: candidate.id,
      total,
    })),
    recommended: leaders[0]?.candidate.id ?? null,
    weights: shares,
    scores: Object.fromEntries(all.map(({ candidate, total }) => [candidate.id, total])),
    contributions: Object.fromEntries(
      all.map(({ candidate, contributions }) => [candidate.id, { ...contributions }]),
    ),
    ...confidenceOf(leaders, raw),
  };
}

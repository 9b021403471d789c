/** The ranking of the feasible candidates, how sure it is, and why the first is first. */
import { strategyNames, type StrategyId } from '../catalog/sets.ts';
import type { Candidate, Ranking } from '../evaluation/evaluation.ts';
import { criterion, type Weight } from './criteria.ts';
import { inBothUnits } from './rules.ts';
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

/** The best member of every other strategy, excluded or not: what the first is held against in words. */
function rivalsOf(first: Ranked, everyone: readonly Ranked[]): Ranked[] {
  return leadersOf(everyone).filter(({ candidate }) => candidate.strategy !== first.candidate.strategy);
}

interface Gap {
  readonly criterion: string;
  readonly difference: number;
}

/** Weighted value of the first less the mean of its rivals, by criterion, greatest lead first. */
function gapsOf(first: Ranked, rivals: readonly Ranked[]): Gap[] {
  return Object.entries(first.contributions)
    .map(([id, part]) => {
      const others = rivals.reduce((sum, rival) => sum + (rival.contributions[id] ?? 0), 0);
      return { criterion: id, difference: part - others / Math.max(1, rivals.length) };
    })
    .sort((a, b) => b.difference - a.difference);
}

const measureOf = ({ candidate }: Ranked, id: string): number =>
  candidate.attributes.find((attribute) => attribute.criterion === id)?.measure ?? 0;

/** `Unbroken air barrier: 1 against 2.33 (Rafter overhang) and 1 (Prebonded vented panel)`. */
function inWords(first: Ranked, rivals: readonly Ranked[], { criterion: id, difference }: Gap) {
  const { name, kind } = criterion(id);
  const shown = (one: Ranked): string => inBothUnits(kind, measureOf(one, id));
  const against = rivals
    .map((rival) => `${shown(rival)} (${strategyNames[rival.candidate.strategy]})`)
    .join(' and ');
  return {
    criterion: id,
    difference,
    text: `${name}: ${shown(first)}${against === '' ? '' : ` against ${against}`}`,
  };
}

function confidenceOf(
  leaders: readonly Ranked[],
  everyone: readonly Ranked[],
  raw: Readonly<Record<string, number>>,
): Pick<Ranking, 'confidence' | 'overturns'> {
  const [first, second] = leaders;
  if (first === undefined)
    return {
      overturns: [],
      confidence: { level: 'none-feasible', margin: 0, runnerUp: null, reasons: [], worries: [] },
    };
  const overturns = leaders
    .slice(1)
    .map((other) =>
      overturnOf(
        raw,
        { id: first.candidate.id, scores: first.scores },
        { id: other.candidate.id, scores: other.scores },
      ),
    );
  const isClear = overturns.every(
    ({ change_pct }) => change_pct === null || Math.abs(change_pct) > CLEAR_PCT,
  );
  const rivals = rivalsOf(first, everyone);
  const gaps = gapsOf(first, rivals);
  const words = (gap: Gap) => inWords(first, rivals, gap);
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
      reasons: gaps
        .slice(0, SHOWN)
        .filter((gap) => gap.difference > 0)
        .map(words),
      worries: gaps
        .slice(-SHOWN)
        .reverse()
        .filter((gap) => gap.difference < 0)
        .map(words),
    },
  };
}

/**
 * Ranks all feasible candidates.
 *
 * score = Σ weight × value, weights normalized to sum 1; clear when no weight alone, moved by 25 %, overturns the first
 *
 * @param candidates  [-] with feasibility and attributes
 * @param weights     [-] raw swing weights
 * @param isStopped   [-] true when a stop rule holds: then nothing is ranked
 * @returns           [-] order, leaders, scores, contributions, overturns, confidence
 * @source            OUR-JUDGEMENT additive value model; the 25 % of the acceptance scenarios
 * @assumes           criteria are independent in preference; ties go by id
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
  const everyone = ranked(candidates, shares);
  const all = everyone.filter(({ candidate }) => candidate.feasible);
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
    ...confidenceOf(leaders, everyone, raw),
  };
}

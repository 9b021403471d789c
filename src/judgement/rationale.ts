/** Why the first comes first, in words, from the numbers of the ranking and the sentences of content/tables/rationale.json. */
import { rationale, type SentenceId } from '../catalog/rationale.ts';
import { strategyNames, type StrategyId } from '../catalog/sets.ts';
import type { Assumption, Candidate, Evaluation, Ranking } from '../evaluation/evaluation.ts';
import { criterion, type Role } from './criteria.ts';
import { inBothUnits } from './rules.ts';

const HUNDRED = 100;
/** How many reasons, and open answers, a sentence names. */
const SHOWN = 3;
/** [-] a difference that shows as less than half a point of 100 carries nothing (our judgement). */
const LEAST = 0.005;
/** [-] a lead that shows as 0.0 points is a tie. */
const TIE = 0.0005;

const roles: readonly Role[] = ['builder', 'designer', 'trainer'];

const points = (share: number): string => (HUNDRED * Math.abs(share)).toFixed(1);
const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')}, and ${words.at(-1) ?? ''}`;

function filled(id: SentenceId, role: Role, slots: Readonly<Record<string, string>>): string {
  const text = rationale.sentences[id][role].replace(
    /\{(\w+)\}/g,
    (slot, name: string) => slots[name] ?? slot,
  );
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** `the rafter overhang`. */
const named = (strategy: StrategyId): string => {
  const name = strategyNames[strategy];
  return `the ${name.slice(0, 1).toLowerCase()}${name.slice(1)}`;
};

interface Gap {
  readonly criterion: string;
  readonly difference: number;
}

/** Weighted value of the first less that of the second, greatest lead first. */
function gapsOf({ contributions }: Ranking, first: string, second: string): Gap[] {
  return Object.entries(contributions[first] ?? {})
    .map(([id, part]) => ({ criterion: id, difference: part - (contributions[second]?.[id] ?? 0) }))
    .sort((a, b) => b.difference - a.difference || (a.criterion < b.criterion ? -1 : 1));
}

const measureOf = ({ attributes }: Candidate, id: string): number =>
  attributes.find((one) => one.criterion === id)?.measure ?? 0;

function phrase({ criterion: id, difference }: Gap, first: Candidate, second: Candidate): string {
  const { kind, name } = criterion(id);
  const words = rationale.criteria[id];
  const own = inBothUnits(kind, measureOf(first, id));
  const other = inBothUnits(kind, measureOf(second, id));
  const template = (difference > 0 ? words?.better : words?.worse) ?? `${name}: {own} against {other}`;
  return template.replace('{own}', own).replace('{other}', other);
}

function assumedWords(assumptions: readonly Assumption[], role: Role): string {
  const open = new Set(assumptions.map(({ path }) => path));
  const decisive = rationale.decisive.filter(({ path }) => open.has(path)).slice(0, SHOWN);
  const count = String(assumptions.length);
  if (assumptions.length === 0) return filled('noneAssumed', role, {});
  return decisive.length === 0
    ? filled('assumedMinor', role, { count })
    : filled('assumed', role, { count, list: listed(decisive.map(({ words }) => words)) });
}

function overturnWords(ranking: Ranking, second: string, role: Role): string[] {
  const turn = ranking.overturns.find(({ to }) => to === second);
  const now = ranking.weights[turn?.criterion ?? ''];
  if (turn === undefined || now === undefined) return [];
  // The one weight moves, then all are scaled to 100 again.
  const moved = now * (1 + turn.change_pct / HUNDRED);
  const then = moved / (1 - now + moved);
  return [
    filled('overturn', role, {
      criterion: criterion(turn.criterion).name,
      now: points(now),
      then: points(then),
    }),
  ];
}

/** The rationale of one reader, sentence by sentence. */
function wordsFor(parts: Pick<Evaluation, 'ranking' | 'candidates' | 'assumptions'>, role: Role): string[] {
  const { ranking, candidates, assumptions } = parts;
  const [one, two] = ranking.leaders;
  const first = candidates.find(({ id }) => id === one?.candidate);
  if (one === undefined || first === undefined) return [];
  const names = { first: named(one.strategy) };
  const assumed = assumedWords(assumptions, role);
  const second = candidates.find(({ id }) => id === two?.candidate);
  if (two === undefined || second === undefined) return [filled('alone', role, names), assumed];
  const margin = one.total - two.total;
  const slots = { ...names, second: named(two.strategy), margin: points(margin) };
  const standing = margin < TIE ? 'tie' : ranking.confidence.level === 'clear' ? 'clear' : 'narrow';
  const gaps = gapsOf(ranking, first.id, second.id);
  const reasons = gaps.filter(({ difference }) => difference >= LEAST).slice(0, SHOWN);
  const worst = gaps.at(-1);
  const counter = worst !== undefined && worst.difference <= -LEAST ? worst : undefined;
  return [
    filled(standing, role, slots),
    reasons.length === 0
      ? filled('noReasons', role, slots)
      : filled('reasons', role, {
          ...slots,
          reasons: reasons.map((gap) => phrase(gap, first, second)).join('; '),
        }),
    counter === undefined
      ? filled('noCounter', role, slots)
      : filled('counter', role, {
          ...slots,
          counter: phrase(counter, first, second),
          cost: points(counter.difference),
        }),
    ...overturnWords(ranking, second.id, role),
    assumed,
  ];
}

/**
 * Reasons that carried most weight, the strongest counter-argument, what would turn it, what was assumed.
 *
 * @param parts  [-] ranking, candidates and assumptions of an evaluation
 * @returns      [-] sentences for each reader; empty after a stop or with nothing feasible
 * @source       OUR-JUDGEMENT sentences of rationale.json; the numbers are those of the ranking
 * @assumes      the first is held against the second, not against all
 */
export const rationaleOf = (
  parts: Pick<Evaluation, 'ranking' | 'candidates' | 'assumptions'>,
): Evaluation['rationale'] =>
  Object.fromEntries(roles.map((role) => [role, wordsFor(parts, role)])) as Evaluation['rationale'];

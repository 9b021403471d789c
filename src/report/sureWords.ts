/** Words for how sure a ranking is: answers, chances and findings, for the record and the Compare page alike. */
import type { Words } from '../catalog/words.ts';
import type { Finder } from '../catalog/uncertainties.ts';
import type { ChanceTable, Sure } from '../evaluation/sure.ts';
import { measureKinds, show, type MeasureKind, type System } from '../measures.ts';
import { kindOfName, points } from './figures.ts';
import { capital, spaced, strategyNames } from './names.ts';

type Questions = Words['questions'];
type Change = Sure['changes'][number];

/** What finding out takes. */
export const finderWords: Readonly<Record<Finder, string>> = {
  'site-visit': 'look on site',
  engineer: 'an hour of the engineer',
  authority: 'ask the authority',
  quote: 'ask for a quote',
  supplier: 'ask the supplier',
  owner: 'decide it',
  'test-piece': 'build a test piece',
};

const isKind = (kind: string): kind is MeasureKind => (measureKinds as readonly string[]).includes(kind);

const fieldAt = (questions: Questions, path: string, question: string) =>
  questions[question]?.fields.find((one) => one.path === path);

/** Labels shorter than this say too little away from their question: `Your wish`. */
const SHORT = 10;

/** What an answer is about, in the words of its question. */
export function answerName(questions: Questions, path: string, question: string): string {
  const label =
    fieldAt(questions, path, question)?.label ??
    capital(spaced(path.split('.').at(-1)?.replace(/_.*$/, '') ?? path));
  const title = questions[question]?.title;
  return label.length < SHORT && title !== undefined ? `${label} (“${title}”)` : label;
}

/** An answer as a person would say it. */
export function answerWords(
  questions: Questions,
  { path, question }: Pick<Change, 'path' | 'question'>,
  value: Change['is'],
  system: System,
): string {
  const field = fieldAt(questions, path, question);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') {
    const kind = field !== undefined && isKind(field.kind) ? field.kind : kindOfName(path);
    return show(kind ?? 'ratio', value, system);
  }
  return field?.options?.find((each) => each.value === value)?.label ?? spaced(value);
}

/** What happens to the first place. */
export function thenWords({ outcome, first }: Pick<Change, 'outcome' | 'first'>): string {
  switch (outcome) {
    case 'stop':
      return 'everything stops';
    case 'none-feasible':
      return 'no variant is left';
    case 'tie':
      return 'the first two are level';
    case 'same':
      return 'the first place stays';
    case 'other':
      return first === null ? 'another way comes first' : `${strategyNames[first]} comes first`;
  }
}

/** `What carries the eave today: Outriggers instead of Rafter tails (nobody answered)`. */
export const changeWords = (questions: Questions, change: Change, system: System): string =>
  `${answerName(questions, change.path, change.question)}: “${answerWords(questions, change, change.would, system)}” instead of “${answerWords(questions, change, change.is, system)}”${change.isAssumed ? ', which nobody answered' : ''}`;

export const percent = (value: number): string => {
  if (value > 0 && value < 1) return 'less than 1 %';
  if (value > 99 && value < 100) return 'more than 99 %';
  return `${value.toFixed(0)} %`;
};

/** `Rafter overhang 62 %, Prebonded vented panel 35 % (level with another in 3 %)`; strategies that never lead are named last. */
export function chancesInWords({ byStrategy, none_pct }: ChanceTable): string {
  const parts = byStrategy
    .toSorted((a, b) => b.best_pct - a.best_pct)
    .map(
      ({ strategy, best_pct, shared_pct }) =>
        `${strategyNames[strategy]} ${percent(best_pct)}${shared_pct >= 1 ? ` (level with another in ${percent(shared_pct)} more)` : ''}`,
    );
  return `${parts.join(', ')}${none_pct >= 1 ? `; nothing to choose in ${percent(none_pct)}` : ''}`;
}

/** [-] worth below this shows as 0.0 points of 100: not worth a visit. */
const LEAST = 0.0005;

export interface Finding {
  readonly id: string;
  readonly name: string;
  readonly how: string;
  readonly gain: string;
  /** Question that takes the answer; null for measures, prices and weights. */
  readonly question: string | null;
}

/** What is worth finding out before deciding, greatest gain first; what may stop everything before all. */
export function findings(questions: Questions, sure: Sure, most: number): Finding[] {
  const answers = sure.answerWorth.map(({ path, question, finder, value, mayStop }) => ({
    id: path,
    name: answerName(questions, path, question),
    how: finderWords[finder],
    question,
    value,
    mayStop,
  }));
  const measures = sure.measureWorth.map(({ id, name, finder, value }) => ({
    id,
    name,
    how: finderWords[finder],
    question: null,
    value,
    mayStop: false,
  }));
  return [...answers, ...measures]
    .filter(({ value, mayStop }) => mayStop || value >= LEAST)
    .sort((a, b) => Number(b.mayStop) - Number(a.mayStop) || b.value - a.value)
    .slice(0, most)
    .map(({ id, name, how, question, value, mayStop }) => ({
      id,
      name,
      how,
      question,
      gain: mayStop ? 'one answer stops everything' : `${points(value)} points`,
    }));
}

/** Answers that move the first place, likeliest first. */
export const turningChanges = (sure: Sure): Change[] =>
  sure.changes.filter(({ outcome }) => outcome !== 'same').toSorted((a, b) => b.chance - a.chance);

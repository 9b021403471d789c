/** From drafts to candidates with exclusions and attributes, and the cautions and deferrals of a case. */
import type { CompleteCase } from '../case/complete.ts';
import { strategies, type StrategyId } from '../catalog/sets.ts';
import type {
  Candidate,
  Caution,
  Climate,
  Deferral,
  Ranking,
  Requirements,
} from '../evaluation/evaluation.ts';
import type { Draft } from '../roof/draft.ts';
import { attributesOf } from './attributes.ts';
import { findings, type Facts, type Finding } from './rules.ts';

const PERCENT = 100;
const levels: readonly Caution['level'][] = ['stop', 'strong', 'engineer', 'caution'];

export interface Setting {
  readonly given: CompleteCase;
  readonly climate: Climate;
  readonly requirements: Requirements;
}

const caseFacts = ({ given, climate, requirements }: Setting): Facts => ({
  case: given,
  climate,
  requirements,
});

/** What a rule about one candidate may look at. */
export const candidateFacts = (setting: Setting, draft: Draft): Facts => ({
  ...caseFacts(setting),
  candidate: draft.candidate,
  draft: {
    reachesGoal: draft.reachesGoal,
    use_pct: PERCENT * draft.candidate.structure.use,
    hasUpperDeck: draft.candidate.layers.some(({ role }) => role === 'upper-deck'),
  },
});

export interface Judged {
  readonly candidate: Candidate;
  readonly draft: Draft;
}

/** Adds exclusions and attributes to a draft. An excluded candidate stays in the list, with its rules. */
export function judge(setting: Setting, draft: Draft): Judged {
  const excludedBy = findings(
    'exclude',
    'candidate',
    candidateFacts(setting, draft),
    draft.candidate.strategy,
  );
  return {
    draft,
    candidate: {
      ...draft.candidate,
      feasible: excludedBy.length === 0,
      excludedBy: excludedBy.map(({ rule, text, facts }) => ({ rule: rule.id, reason: text, facts })),
      attributes: attributesOf(draft, setting.given, setting.requirements),
    },
  };
}

const asCaution = (
  { rule, text, facts }: Finding,
  level: Caution['level'],
  concerned: Caution['strategies'],
): Caution => ({
  id: rule.id,
  level,
  rule: rule.id,
  text,
  strategies: concerned,
  question: rule.question,
  facts,
  source: rule.source,
});

export const stopsOf = (setting: Setting): Caution[] =>
  findings('stop', 'case', caseFacts(setting)).map((finding) => asCaution(finding, 'stop', [...strategies]));

/** Cautions of the leaders: one for each rule, with the strategies it concerns and the facts of the best of them. */
function leaderCautions(setting: Setting, leaders: readonly Judged[]): Caution[] {
  const byRule = new Map<string, Caution>();
  for (const { draft } of leaders) {
    const { strategy } = draft.candidate;
    for (const finding of findings('caution', 'candidate', candidateFacts(setting, draft), strategy)) {
      const known = byRule.get(finding.rule.id);
      if (known) known.strategies.push(strategy);
      else byRule.set(finding.rule.id, asCaution(finding, finding.rule.level, [strategy]));
    }
  }
  return [...byRule.values()];
}

/**
 * All cautions of a case, gravest first; those of the case and those of each strategy's leader.
 */
export function cautionsOf(setting: Setting, ranking: Ranking, judged: readonly Judged[]): Caution[] {
  const leading = ranking.leaders.flatMap(({ candidate: id }) =>
    judged.filter(({ candidate }) => candidate.id === id),
  );
  const ofCase = findings('caution', 'case', caseFacts(setting)).map((finding) =>
    asCaution(finding, finding.rule.level, [...(finding.rule.strategies ?? strategies)] as StrategyId[]),
  );
  const all = [...stopsOf(setting), ...ofCase, ...leaderCautions(setting, leading)];
  return all.sort((a, b) => levels.indexOf(a.level) - levels.indexOf(b.level));
}

export const deferralsOf = (setting: Setting): Deferral[] =>
  findings('defer', 'case', caseFacts(setting)).map(({ rule, text }) => ({
    id: rule.id,
    to: rule.to,
    item: rule.item,
    reason: text,
    source: rule.source,
  }));

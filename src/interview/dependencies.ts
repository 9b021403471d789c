/** What a changed answer re-opens: pages that now ask more, and answers that were given for other circumstances. */
import { answeredPaths, answerAt, changedPaths, type Answers } from './answers.ts';
import { isQuestion, settledBy, stateIds, type AnswerPath, type StateId } from './questions.ts';
import { askedFields, endsAtStop, fieldRelevance, ownSkips, ZONE_PATHS } from './relevance.ts';

/** Answers whose worth hangs on other answers, though they are still asked. */
export interface ValueDependency {
  readonly question: StateId;
  /** The answers that may have become wrong. */
  readonly paths: readonly AnswerPath[];
  readonly dependsOn: readonly AnswerPath[];
  readonly because: string;
}

const PLACE: readonly AnswerPath[] = ['place.zone', 'place.countyFips', 'place.id'];

export const valueDependencies: readonly ValueDependency[] = [
  {
    question: 'code',
    paths: ['codes.localCeiling_m2K_W', 'codes.localAboveDeck_m2K_W', 'codes.iceBarrierRequired'],
    dependsOn: PLACE,
    because: 'The local rules were given for another place.',
  },
  {
    question: 'below-deck',
    paths: ['belowDeck.fillDepth_m'],
    dependsOn: ['framing.depth_m'],
    because: 'The depth of the framing has changed.',
  },
  {
    question: 'overhang',
    paths: ['overhang.carriedToday', 'overhang.tails'],
    dependsOn: ['framing.kind'],
    because: 'The framing that carries the overhang has changed.',
  },
  {
    question: 'insulation',
    paths: ['insulation.aboveDeckTarget_m2K_W', 'insulation.totalTarget_m2K_W'],
    dependsOn: ZONE_PATHS,
    because: 'The wanted R was set for another climate zone or code edition.',
  },
  {
    question: 'venting',
    paths: ['covering.ventWish', 'covering.refusedVentilations'],
    dependsOn: ['covering.kind'],
    because: 'The wish was given for another covering.',
  },
  {
    question: 'snow',
    paths: ['loads.groundSnow_Pa', 'loads.snowLevel'],
    dependsOn: PLACE,
    because: 'The snow load was given for another place.',
  },
  {
    question: 'wind',
    paths: ['loads.basicWindSpeed_m_s', 'loads.exposure', 'loads.onHill', 'loads.topographicFactor'],
    dependsOn: PLACE,
    because: 'The wind was given for another place.',
  },
  {
    question: 'hazards',
    paths: ['loads.wildfire', 'loads.seismicCategory', 'loads.insects'],
    dependsOn: PLACE,
    because: 'The hazards were given for another place.',
  },
];

/** Every path that a page hangs on: through what it asks, or through what its answers are worth. */
export function dependenciesOf(page: StateId): readonly AnswerPath[] {
  const own = isQuestion(page) ? (ownSkips[page]?.dependsOn ?? []) : [];
  const stop: readonly AnswerPath[] = isQuestion(page) && endsAtStop(page) ? ['belowDeck.attic'] : [];
  const fields = fieldRelevance.filter((row) => settledBy(row.path) === page).flatMap((row) => row.dependsOn);
  const values = valueDependencies.filter((row) => row.question === page).flatMap((row) => row.dependsOn);
  return [...new Set([...own, ...stop, ...fields, ...values])];
}

export interface Reopened {
  readonly question: StateId;
  readonly because: string;
}

/**
 * The pages to look at again after a change. A page re-opens when it now asks something that has no answer, or
 * when an answer it holds was given while another answer, now changed, was different.
 */
export function reopenedBy(before: Answers, after: Answers): readonly Reopened[] {
  const changed = changedPaths(before, after);
  const changedHere = new Set(changed.map((path) => settledBy(path)));
  return stateIds.flatMap((question): readonly Reopened[] => {
    const askedBefore = askedFields(before, question);
    const isNew = askedFields(after, question).some(
      (path) => !askedBefore.includes(path) && answerAt(after, path) === undefined,
    );
    if (isNew && !changedHere.has(question)) {
      return [{ question, because: 'It now asks something that was not needed before.' }];
    }
    const answered = answeredPaths(after, question).filter((path) => !changed.includes(path));
    const stale = valueDependencies.find(
      (row) =>
        row.question === question &&
        row.paths.some((path) => answered.includes(path)) &&
        row.dependsOn.some((path) => changed.includes(path) && answerAt(before, path) !== undefined),
    );
    return stale === undefined ? [] : [{ question, because: stale.because }];
  });
}

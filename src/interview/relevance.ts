/**
 * Which questions and fields an earlier answer has made pointless. Answers that lapse are kept; they come
 * back when the reason goes away.
 */
import { answerAt, type Answers, type Patch } from './answers.ts';
import {
  pathsOf,
  questionIds,
  REVIEW,
  settledBy,
  stateIds,
  type AnswerPath,
  type QuestionId,
  type StateId,
} from './questions.ts';
import {
  deckIsSeen,
  goesOn,
  hasCeiling,
  hasEave,
  hasFill,
  hasOldOverhang,
  hasOldRoof,
  hasRake,
  hasReportShear,
  hasStock,
  hasTailsToCut,
  isStopped,
  mayBeOnHill,
  mayNeedOutriggers,
  snowCanLie,
  type Guard,
} from './guards.ts';

/** One field that may lapse. `dependsOn` lists every path that the guard reads. */
export interface Relevance {
  readonly path: AnswerPath;
  readonly applies: Guard;
  readonly dependsOn: readonly AnswerPath[];
  /** Why it does not apply, in words. */
  readonly because: string;
  /** The value that follows when it does not apply, so that no default is assumed in its place. */
  readonly implies?: string | number | boolean;
}

const OLD: readonly AnswerPath[] = ['project.kind'];
const OVERHANG: readonly AnswerPath[] = ['project.kind', 'roof.shape', 'overhang.eave_m', 'overhang.rake_m'];

export const fieldRelevance: readonly Relevance[] = [
  {
    path: 'roof.exhaustEndsInRoof',
    applies: hasOldRoof,
    dependsOn: OLD,
    because: 'The roof is new: no old duct ends in it.',
    implies: false,
  },
  {
    path: 'framing.deckCondition',
    applies: hasOldRoof,
    dependsOn: OLD,
    because: 'The deck is new.',
    implies: 'sound',
  },
  {
    path: 'framing.deckMoisture_pct',
    applies: hasOldRoof,
    dependsOn: OLD,
    because: 'The deck is new; measure it before it is covered.',
  },
  {
    path: 'belowDeck.fill',
    applies: (a) => !deckIsSeen(a),
    dependsOn: ['framing.deckSeenFromBelow'],
    because: 'The deck is seen from below, so nothing lies between the rafters.',
    implies: 'none',
  },
  {
    path: 'belowDeck.fillDepth_m',
    applies: hasFill,
    dependsOn: ['framing.deckSeenFromBelow', 'belowDeck.fill'],
    because: 'There is no insulation between the rafters.',
  },
  {
    path: 'belowDeck.fillResistance_m2K_W',
    applies: hasFill,
    dependsOn: ['framing.deckSeenFromBelow', 'belowDeck.fill'],
    because: 'There is no insulation between the rafters.',
  },
  {
    path: 'belowDeck.ceiling',
    applies: (a) => !deckIsSeen(a),
    dependsOn: ['framing.deckSeenFromBelow'],
    because: 'The deck is seen from below, so it is the ceiling.',
    implies: 'deck-in-view',
  },
  {
    path: 'belowDeck.interiorRetarder',
    applies: hasCeiling,
    dependsOn: ['framing.deckSeenFromBelow', 'belowDeck.ceiling'],
    because: 'There is no ceiling that could hold one.',
    implies: 'none',
  },
  {
    path: 'belowDeck.recessedLights',
    applies: hasCeiling,
    dependsOn: ['framing.deckSeenFromBelow', 'belowDeck.ceiling'],
    because: 'There is no ceiling that lights could be set into.',
    implies: 0,
  },
  {
    path: 'overhang.rake_m',
    applies: hasRake,
    dependsOn: ['roof.shape'],
    because: 'A hip roof has no rake.',
    implies: 0,
  },
  {
    path: 'overhang.carriedToday',
    applies: hasOldOverhang,
    dependsOn: OVERHANG,
    because: 'There is no old overhang.',
    implies: 'none',
  },
  {
    path: 'overhang.tails',
    applies: hasTailsToCut,
    dependsOn: ['project.kind', 'overhang.eave_m', 'framing.kind', 'overhang.carriedToday'],
    because: 'There are no rafter tails that could be cut.',
  },
  {
    path: 'overhang.iceDams',
    applies: hasOldRoof,
    dependsOn: OLD,
    because: 'A new roof has no history of ice.',
    implies: 'never',
  },
  {
    path: 'loads.topographicFactor',
    applies: mayBeOnHill,
    dependsOn: ['loads.onHill'],
    because: 'The house stands on no hill, ridge or bluff.',
  },
  {
    path: 'profile.cut',
    applies: hasEave,
    dependsOn: ['overhang.eave_m'],
    because: 'Without an eave overhang there is no tail to cut.',
  },
  {
    path: 'wall.cladding',
    applies: hasOldRoof,
    dependsOn: OLD,
    because: 'The wall is new as well.',
    implies: 'new',
  },
  {
    path: 'insulation.screwReport.lateralGap_m',
    applies: hasReportShear,
    dependsOn: ['insulation.screwReport.lateral_N'],
    because: 'No sideways load of the screw is given.',
  },
  {
    path: 'insulation.stock.thickness_m',
    applies: hasStock,
    dependsOn: ['insulation.stock.board'],
    because: 'No board is in stock.',
  },
  {
    path: 'insulation.stock.area_m2',
    applies: hasStock,
    dependsOn: ['insulation.stock.board'],
    because: 'No board is in stock.',
  },
];
const byPath = new Map<string, Relevance>(fieldRelevance.map((row) => [row.path, row]));

/** One whole question that may be skipped. */
export interface Skip {
  readonly applies: Guard;
  readonly dependsOn: readonly AnswerPath[];
  readonly because: string;
}

const STOP: Skip = {
  applies: goesOn,
  dependsOn: ['belowDeck.attic'],
  because: 'The attic stays vented, so nothing above the deck is decided here.',
};
/** The question that may end the interview. */
export const STOP_QUESTION: QuestionId = 'below-deck';
/** Whether a question comes after the one that may end the interview. */
export const endsAtStop = (question: QuestionId): boolean =>
  questionIds.indexOf(question) > questionIds.indexOf(STOP_QUESTION);

/** Paths that settle the climate zone. */
export const ZONE_PATHS: readonly AnswerPath[] = [
  'place.zone',
  'place.countyFips',
  'place.id',
  'codes.edition',
];

/** Questions that an earlier answer skips by themselves. */
export const ownSkips: Readonly<Partial<Record<QuestionId, Skip>>> = {
  outriggers: {
    applies: mayNeedOutriggers,
    dependsOn: ['project.kind', 'overhang.eave_m', 'overhang.tails', 'overhang.carriedToday', 'framing.kind'],
    because: 'The overhang that stays needs no added pieces.',
  },
  snow: {
    applies: snowCanLie,
    dependsOn: [...ZONE_PATHS, 'place.elevation_m'],
    because: 'Snow does not lie in this climate zone.',
  },
};

/** Why a page is not asked; undefined when it is. The review always is. */
export function skipOf(answers: Answers, page: StateId): Skip | undefined {
  if (page === REVIEW) return undefined;
  if (endsAtStop(page) && isStopped(answers)) return STOP;
  const own = ownSkips[page];
  return own === undefined || own.applies(answers) ? undefined : own;
}

/** Whether a page is still asked. */
export const questionApplies = (answers: Answers, page: StateId): boolean =>
  skipOf(answers, page) === undefined;

/** Whether one field is still asked: its question is, and nothing has made the field itself pointless. */
export function fieldApplies(answers: Answers, path: AnswerPath): boolean {
  const page = settledBy(path);
  return page !== undefined && questionApplies(answers, page) && (byPath.get(path)?.applies(answers) ?? true);
}

/** The fields of a page that are asked now. */
export const askedFields = (answers: Answers, page: StateId): readonly AnswerPath[] =>
  (pathsOf[page] as readonly AnswerPath[]).filter((path) => fieldApplies(answers, path));

export interface Lapsed {
  readonly path: AnswerPath;
  readonly question: StateId;
  readonly value: unknown;
  readonly because: string;
}

/** Answers that are kept but no longer apply, with the reason. */
export function lapsed(answers: Answers): readonly Lapsed[] {
  return stateIds.flatMap((question) =>
    (pathsOf[question] as readonly AnswerPath[]).flatMap((path): readonly Lapsed[] => {
      const value = answerAt(answers, path);
      if (value === undefined || fieldApplies(answers, path)) return [];
      const skip = skipOf(answers, question);
      const because = skip?.because ?? byPath.get(path)?.because ?? '';
      return [{ path, question, value, because }];
    }),
  );
}

/** Values that follow from the answers for fields that are not asked. */
export const impliedValues = (answers: Answers): Patch =>
  Object.fromEntries(
    fieldRelevance
      .filter((row) => row.implies !== undefined && !row.applies(answers))
      .map((row) => [row.path, row.implies]),
  );

/** Paths of the answers that no longer apply. */
export const lapsedPaths = (answers: Answers): readonly AnswerPath[] =>
  lapsed(answers).map((each) => each.path);

export interface StopNotice {
  readonly question: QuestionId;
  readonly text: string;
  readonly instead: readonly string[];
}

/** What to say when the interview ends early; undefined when it goes on. */
export function stopNotice(answers: Answers): StopNotice | undefined {
  if (!isStopped(answers)) return undefined;
  return {
    question: STOP_QUESTION,
    text: 'Board above the deck of an attic that stays vented does nothing useful: outdoor air moves below it.',
    instead: [
      'Insulate and seal the attic floor, and keep the vents.',
      'Or close the vents, bring the attic inside the heated shell, and change the answer to "An attic inside the heated shell".',
    ],
  };
}

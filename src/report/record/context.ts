/** What every section of the record needs: the evaluation, the reader, the units, and the slots of the texts. */
import type { Words } from '../../catalog/words.ts';
import { appliesTo, type WorkCondition } from '../../catalog/sequence.ts';
import { workFacts } from '../../drawing/sequence.ts';
import { sectionWords } from '../../catalog/record.ts';
import type { CompleteCase } from '../../case/complete.ts';
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';
import type { MeasureKind, System } from '../../measures.ts';
import { show } from '../../measures.ts';
import type { Block, Citation, Role, Run, Section } from '../document.ts';
import { citationText, paragraph } from '../document.ts';
import { filled } from '../inline.ts';
import { points } from '../figures.ts';
import { strategyNames, variantName } from '../names.ts';

export type RecordSize = 'full' | 'summary' | 'site';

export interface RecordOptions {
  readonly role: Role;
  readonly system: System;
  /** One page, everything, or the sheet that the crew carries. */
  readonly size?: RecordSize;
  /** ISO date handed in by the shell; the core has no clock. */
  readonly date?: string;
  /** Worked numbers of the recommended candidate, from judgement/workings.ts. */
  readonly workings?: readonly Working[];
}

export interface Context {
  readonly evaluation: Evaluation;
  readonly given: CompleteCase;
  readonly words: Words;
  readonly options: RecordOptions;
  readonly role: Role;
  readonly system: System;
  /** The recommended candidate; null after a stop. */
  readonly best: Candidate | null;
  readonly leaders: readonly Candidate[];
  /** Texts of the slots. */
  readonly slots: Readonly<Record<string, string>>;
  readonly say: (kind: MeasureKind, value: number) => string;
}

function candidateSlots(best: Candidate, say: Context['say'], score: number): Record<string, string> {
  return {
    strategy: strategyNames[best.strategy],
    variant: variantName(best),
    score: points(score),
    aboveDeckR: say('resistance', best.thermal.aboveDeck_m2K_W),
    layerCount: numberWord(best.layers.filter((layer) => layer.role === 'insulation').length),
    screwLength: say('length', best.fasteners.screwLength_m),
    screwSpacing: say('length', best.fasteners.spacing_m),
    screwTarget: best.fasteners.into === 'rafter' ? 'rafter' : 'deck',
    ventGap: say('length', best.ventilation.gap_m),
    buildUp: say('length', best.edge.buildUp_m),
    ridgeRise: say('length', best.edge.ridgeRise_m),
  };
}

const smallNumbers = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];
export const numberWord = (count: number): string => smallNumbers[count] ?? String(count);

/** Texts of the slots about the place, the answers and one build-up. */
export function slotsOf(
  evaluation: Evaluation,
  candidate: Candidate | null,
  say: Context['say'],
): Record<string, string> {
  const given = evaluation.case as unknown as CompleteCase;
  const { ranking, requirements } = evaluation;
  const ice = requirements.iceBarrier;
  return {
    place: evaluation.climate.placeName,
    zone: evaluation.climate.zone,
    edition: requirements.edition,
    pitch: say('pitch', requirements.slope.pitch_rise_per_12),
    overhang: say('length', given.overhang.eave_m),
    iceBarrier: ice.required
      ? `The ice barrier runs ${say('span', ice.length_m)} up the slope from the edge of the eave, ${ice.courses === 1 ? 'one course' : `${numberWord(ice.courses)} courses`} of a ${say('length', ICE_ROLL_m)} roll.`
      : 'No ice barrier is required by the answers given; ask the code official.',
    ...(candidate === null ? {} : candidateSlots(candidate, say, ranking.scores[candidate.id] ?? 0)),
  };
}

export function contextOf(evaluation: Evaluation, words: Words, options: RecordOptions): Context {
  const say = (kind: MeasureKind, value: number): string => show(kind, value, options.system);
  const given = evaluation.case as unknown as CompleteCase;
  const find = (id: string): Candidate | undefined => evaluation.candidates.find((one) => one.id === id);
  const { ranking } = evaluation;
  const best = (ranking.recommended === null ? undefined : find(ranking.recommended)) ?? null;
  return {
    evaluation,
    given,
    words,
    options,
    role: options.role,
    system: options.system,
    best,
    leaders: ranking.leaders.flatMap((leader) => find(leader.candidate) ?? []),
    slots: slotsOf(evaluation, best, say),
    say,
  };
}

/** [m] Width of the roll that `courses` counts: 36 in (common practice). */
const ICE_ROLL_m = 0.9144;

/** A margin as a person says it: `R-5`, or `R-1.8 short`. */
export const marginText = (context: Context, kind: MeasureKind, margin: number): string =>
  margin < 0 ? `${context.say(kind, -margin)} short` : context.say(kind, margin);

/** Source id of what the person answered. */
export const givenSource = 'USER';

/** A section with its title and lead-in for the reader. */
export function section(
  context: Context,
  id: string,
  blocks: readonly Block[],
  more: { level?: 1 | 2; newPage?: true } = {},
): Section {
  const row = sectionWords(id);
  const lead = filled(row.lead[context.role], context.slots);
  return {
    id,
    title: row.title[context.role],
    level: more.level ?? 1,
    blocks: [paragraph(lead), ...blocks],
    ...(more.newPage === undefined ? {} : { newPage: more.newPage }),
  };
}

/** A citation as a run that links to the source list. */
export const cited = (citation: Citation): Run => ({
  text: `${citationText(citation)} (${citation.known})`,
  citation,
});

export const citationOf = (from: {
  source: string;
  clause?: string | undefined;
  known: string;
}): Citation => ({
  source: from.source,
  known: from.known,
  ...(from.clause === undefined ? {} : { clause: from.clause }),
});

/** Whether a step or question applies to the recommended candidate. */
export function applies(when: WorkCondition | undefined, context: Context): boolean {
  return appliesTo(when, workFacts(context.given, context.best));
}

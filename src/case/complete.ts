/** From a case with gaps to a case in which every question has an answer, and the list of what was assumed. */
import { defaultRows, type DefaultRow } from '../catalog/defaults.ts';
import type { Zone } from '../catalog/sets.ts';
import type { Assumption } from './assumption.ts';
import type { Case } from './case.ts';
import { valueAt, withValueAt } from './paths.ts';

type Part<K extends keyof Case> = NonNullable<Case[K]>;
/** T with every key present. */
type Whole<T> = { [K in keyof T]-?: NonNullable<T[K]> };
/** T with the named keys present. */
type With<T, K extends keyof T> = Omit<T, K> & { [P in K]-?: NonNullable<T[P]> };

/** A case whose every answer is there; the few keys left optional mean "no limit" or "no wish". */
export interface CompleteCase {
  readonly overdeck: 1;
  readonly project: With<Part<'project'>, 'role' | 'kind'>;
  readonly place: Part<'place'>;
  readonly codes: With<Part<'codes'>, 'edition' | 'iceBarrierRequired'>;
  readonly roof: Whole<Part<'roof'>>;
  readonly framing: With<
    Part<'framing'>,
    | 'kind'
    | 'depth_m'
    | 'width_m'
    | 'spacing_m'
    | 'deck'
    | 'deckThickness_m'
    | 'deckSeenFromBelow'
    | 'deckCondition'
  >;
  readonly belowDeck: With<
    Part<'belowDeck'>,
    'attic' | 'fill' | 'ceiling' | 'interiorRetarder' | 'recessedLights' | 'wiringNearDeck'
  >;
  readonly indoor: With<
    Part<'indoor'>,
    'temperature_C' | 'relativeHumidity_pct' | 'airtightness' | 'appliances'
  >;
  readonly overhang: With<
    Part<'overhang'>,
    | 'eave_m'
    | 'rake_m'
    | 'carriedToday'
    | 'tails'
    | 'iceDams'
    | 'outriggerSpecies'
    | 'outriggerGrade'
    | 'outriggerSpacing_m'
    | 'outriggerSeat'
  >;
  readonly profile: With<Part<'profile'>, 'heritage' | 'look' | 'cut'>;
  readonly wall: Whole<Part<'wall'>>;
  readonly insulation: With<Part<'insulation'>, 'refusedBoards' | 'foamFree'>;
  readonly covering: Whole<Part<'covering'>>;
  readonly loads: With<
    Part<'loads'>,
    | 'groundSnow_Pa'
    | 'snowLevel'
    | 'snowExposureFactor'
    | 'thermalFactor'
    | 'importanceFactor'
    | 'basicWindSpeed_m_s'
    | 'exposure'
    | 'onHill'
    | 'topographicFactor'
    | 'wildfire'
    | 'seismicCategory'
    | 'insects'
  >;
  readonly work: Whole<Part<'work'>>;
  readonly priorities: Part<'priorities'>;
  readonly notes: string;
}

const holds = (row: DefaultRow, zone: Zone, filled: Case): boolean =>
  Object.entries(row.when ?? {}).every(([path, allowed]) =>
    allowed.includes(path === 'zone' ? zone : valueAt(filled, path)),
  );

/**
 * Fills every unanswered question with its cautious default.
 *
 * @param given  a valid case
 * @param zone   the climate zone found for its place
 * @returns      [-] the complete case and one assumption for each value that was filled in
 */
export function complete(given: Case, zone: Zone): { completed: CompleteCase; assumptions: Assumption[] } {
  let filled = given;
  const assumptions: Assumption[] = [];
  for (const row of defaultRows) {
    if (valueAt(filled, row.path) !== undefined || !holds(row, zone, filled)) continue;
    filled = withValueAt(filled, row.path, row.value);
    const { path, question, value, reason, cost, source } = row;
    assumptions.push({ path, question, value, reason, cost, source });
  }
  const completed = { ...filled, priorities: filled.priorities ?? {}, notes: filled.notes ?? '' };
  return { completed: completed as unknown as CompleteCase, assumptions };
}

/**
 * The closed sets of the case file, in the order in which they are shown.
 * Every other module takes its spelling from here.
 */

export const zones = [
  '0A',
  '0B',
  '1A',
  '1B',
  '2A',
  '2B',
  '3A',
  '3B',
  '3C',
  '4A',
  '4B',
  '4C',
  '5A',
  '5B',
  '5C',
  '6A',
  '6B',
  '7',
  '8',
] as const;
export type Zone = (typeof zones)[number];

export const coverings = [
  'asphalt-shingle',
  'standing-seam-metal',
  'metal-panel',
  'clay-tile',
  'concrete-tile',
  'wood-shingle',
  'wood-shake',
  'slate',
] as const;
export type CoveringId = (typeof coverings)[number];

export const strategies = ['rafter-overhang', 'flush-outriggers', 'prebonded-panel'] as const;
export type StrategyId = (typeof strategies)[number];

/** The names under which the strategies are shown. */
export const strategyNames: Readonly<Record<StrategyId, string>> = {
  'rafter-overhang': 'Rafter overhang',
  'flush-outriggers': 'Flush frame with outriggers',
  'prebonded-panel': 'Prebonded vented panel',
};

export const boards = ['polyisocyanurate', 'xps', 'eps', 'graphite-eps', 'stone-wool', 'wood-fiber'] as const;
export type BoardId = (typeof boards)[number];

export const ventilations = ['unvented', 'vented-furring', 'drainage-mat', 'panel-gap'] as const;
export type Ventilation = (typeof ventilations)[number];

export const editions = ['2015', '2018', '2021', '2024'] as const;
export type Edition = (typeof editions)[number];

/**
 * How a number is known: the grade that travels with it to the screen and the report. `seen-primary`: a copy of
 * the code or standard was read; `seen-transcription`: a public transcription of it; `seen-secondary`: an article,
 * handout or note that quotes it.
 */
export const knownGrades = [
  'seen',
  'seen-primary',
  'seen-transcription',
  'seen-secondary',
  'computed',
  'memory',
  'common practice',
  'our judgement',
] as const;
export type Known = (typeof knownGrades)[number];

/** How grave a caution is, gravest first. */
export const cautionLevels = ['stop', 'strong', 'engineer', 'caution'] as const;
export type CautionLevel = (typeof cautionLevels)[number];

/** Who decides what the product must leave to others. */
export const deciders = [
  'structural-engineer',
  'code-official',
  'roofer',
  'energy-reviewer',
  'fire-official',
  'electrician',
  'specialist',
  'owner',
] as const;

const isIn =
  <T extends string>(set: readonly T[]) =>
  (text: unknown): text is T =>
    typeof text === 'string' && (set as readonly string[]).includes(text);

export const isZone = isIn(zones);
export const isCovering = isIn(coverings);
export const isStrategy = isIn(strategies);
export const isBoard = isIn(boards);
export const isVentilation = isIn(ventilations);
export const isEdition = isIn(editions);

/**
 * The closed sets of the case file, in the order in which they are shown.
 * Every other module takes its spelling from here.
 */

export const ZONES = [
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
export type Zone = (typeof ZONES)[number];

export const COVERINGS = [
  'asphalt-shingle',
  'standing-seam-metal',
  'metal-panel',
  'clay-tile',
  'concrete-tile',
  'wood-shingle',
  'wood-shake',
  'slate',
] as const;
export type CoveringId = (typeof COVERINGS)[number];

export const STRATEGIES = ['rafter-overhang', 'flush-outriggers', 'prebonded-panel'] as const;
export type StrategyId = (typeof STRATEGIES)[number];

export const BOARDS = ['polyisocyanurate', 'xps', 'eps', 'graphite-eps', 'stone-wool', 'wood-fiber'] as const;
export type BoardId = (typeof BOARDS)[number];

export const VENTILATIONS = ['unvented', 'vented-furring', 'drainage-mat', 'panel-gap'] as const;
export type Ventilation = (typeof VENTILATIONS)[number];

export const EDITIONS = ['2015', '2018', '2021', '2024'] as const;
export type Edition = (typeof EDITIONS)[number];

/** How a number is known: the grade that travels with it to the screen and the report. */
export const KNOWN_GRADES = [
  'seen',
  'seen-secondary',
  'computed',
  'memory',
  'common practice',
  'our judgement',
] as const;
export type Known = (typeof KNOWN_GRADES)[number];

const isIn =
  <T extends string>(set: readonly T[]) =>
  (text: unknown): text is T =>
    typeof text === 'string' && (set as readonly string[]).includes(text);

export const isZone = isIn(ZONES);
export const isCovering = isIn(COVERINGS);
export const isStrategy = isIn(STRATEGIES);
export const isBoard = isIn(BOARDS);
export const isVentilation = isIn(VENTILATIONS);
export const isEdition = isIn(EDITIONS);

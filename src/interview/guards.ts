/** The guards: pure questions about the answers, each true or false. A gap ("not sure") never skips anything. */
import type { Answers } from './answers.ts';
import { knownZone } from './zone.ts';

/** A question about the answers, true or false. */
export type Guard = (answers: Answers) => boolean;

/** [m] height from which even the hottest zones may see snow; our judgement. */
const SNOW_FREE_BELOW_M = 1000;
const snowFreeZones: readonly string[] = ['0A', '0B', '1A', '1B'];

/** An attic that stays vented ends the interview: board above its deck does nothing. */
export const isStopped: Guard = ({ belowDeck }) => belowDeck?.attic === 'stays-vented';
/** True unless the work is known to be new: "not sure" is taken as an old roof. */
export const hasOldRoof: Guard = ({ project }) => project?.kind === undefined || project.kind === 're-roof';
export const isTrussRoof: Guard = ({ framing }) => framing?.kind === 'truss';
export const deckIsSeen: Guard = ({ framing }) => framing?.deckSeenFromBelow === true;
/** A ceiling below the deck, as far as is known. */
export const hasCeiling: Guard = (answers) =>
  !deckIsSeen(answers) &&
  answers.belowDeck?.ceiling !== 'deck-in-view' &&
  answers.belowDeck?.ceiling !== 'none';
export const hasFill: Guard = (answers) => !deckIsSeen(answers) && answers.belowDeck?.fill !== 'none';
/** A hip roof has eaves all around and no rake. */
export const hasRake: Guard = ({ roof }) => roof?.shape !== 'hip';
export const hasEave: Guard = ({ overhang }) => overhang?.eave_m !== 0;
/** False only when both overhangs are known to be none. */
export const hasOverhang: Guard = (answers) =>
  hasEave(answers) || (hasRake(answers) && answers.overhang?.rake_m !== 0);
export const hasOldOverhang: Guard = (answers) => hasOldRoof(answers) && hasOverhang(answers);
/** Tails of solid rafters (or I-joists) that somebody could cut. */
export const hasTailsToCut: Guard = (answers) =>
  hasOldRoof(answers) &&
  hasEave(answers) &&
  !isTrussRoof(answers) &&
  (answers.overhang?.carriedToday === undefined || answers.overhang.carriedToday === 'rafter-tails');
/** False where there is no eave to carry, or old tails that stay carry it. */
export const mayNeedOutriggers: Guard = (answers) =>
  hasEave(answers) && !(hasTailsToCut(answers) && answers.overhang?.tails === 'keep');
/** False only where the house is known to stand on no hill. */
export const mayBeOnHill: Guard = ({ loads }) => loads?.onHill !== false;
/** False only in the hottest zones, low down. */
export const snowCanLie: Guard = (answers) => {
  const zone = knownZone(answers);
  return (
    zone === undefined ||
    !snowFreeZones.includes(zone) ||
    (answers.place?.elevation_m ?? 0) >= SNOW_FREE_BELOW_M
  );
};
/** False while no sideways load of a screw's report is given. */
export const hasReportShear: Guard = ({ insulation }) => insulation?.screwReport?.lateral_N !== undefined;
export const hasStock: Guard = ({ insulation }) => insulation?.stock?.board !== undefined;
export const goesOn: Guard = (answers) => !isStopped(answers);

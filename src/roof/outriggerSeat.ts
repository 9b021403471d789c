/** What outriggers rest on at the wall line, as the case says. */
import { dimension } from '../catalog/dimensions.ts';
import type { BoardId } from '../catalog/sets.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Seat } from '../structure/outrigger.ts';
import { sectionOf, type Member } from '../structure/timber.ts';

export interface OutriggerRoom {
  /** Loose board in which an outrigger may lie. */
  readonly room_m: number;
  readonly board: BoardId | null;
}

export const seatWords: Readonly<Record<CompleteCase['overhang']['outriggerSeat'], string>> = {
  deck: 'on the deck over the wall plate',
  blocking: 'on wood blocking over the wall plate',
  board: 'on the insulation board',
};

/**
 * What lies below the outrigger: nothing on the deck, else what is left of the room, at least one layer.
 *
 * @returns  [m] thickness
 * @source   COMMON-PRACTICE one layer at least (common practice)
 */
export function below_m(given: CompleteCase, member: Member, room: OutriggerRoom): number {
  const left_m = room.room_m - sectionOf(member).depth_m;
  switch (given.overhang.outriggerSeat) {
    case 'deck':
      return 0;
    case 'blocking':
      return Math.max(left_m, dimension('blocking-least_m'));
    case 'board':
      return Math.max(left_m, dimension('board-least_m'));
  }
}

/**
 * What the outrigger rests on at the wall line.
 *
 * @returns  [m, Pa] seat
 * @source   COMMON-PRACTICE plate and board strengths (memory)
 */
export function seatOf(given: CompleteCase, member: Member, room: OutriggerRoom): Seat {
  const bearingLength_m = dimension('outrigger-bearing_m');
  switch (given.overhang.outriggerSeat) {
    case 'deck':
      return { on: 'wood', bearingLength_m };
    case 'blocking':
      return { on: 'blocking', bearingLength_m, blockingHeight_m: below_m(given, member, room) };
    case 'board':
      return {
        on: 'board',
        bearingLength_m: dimension('outrigger-bearing-on-board_m'),
        boardThickness_m: below_m(given, member, room),
        boardStrength_Pa: dimension(`board-strength-${room.board ?? 'eps'}_Pa`),
      };
  }
}

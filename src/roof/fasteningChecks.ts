/** The checks behind the schedule, for its worst screw, and what a screw that misses the rafter still holds. */
import { screwOf } from '../catalog/lumber.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { FasteningCheck, RafterMiss, ScheduleRow, SlopePath } from '../evaluation/fastening.ts';
import type { Candidate } from '../evaluation/evaluation.ts';
import type { WindGap } from './windEdition.ts';
import { ENGINEER } from '../structure/screening.ts';
import { holdUse } from '../structure/screwHold.ts';
import { allowableWithdrawal } from '../structure/screws.ts';

/** [-] screws below 1/4 in, wood not prebored: edge and spacing along the grain, in diameters, NDS 2018 commentary. */
const DIAMETERS = { edge: 2.5, row: 15 } as const;

export interface CheckSetting {
  readonly given: CompleteCase;
  readonly hold: Candidate['fasteners']['hold'];
  readonly into: 'rafter' | 'deck';
  readonly worst: { readonly pull_N: number; readonly shear_N: number };
  readonly slopePath: SlopePath;
  readonly rows: readonly ScheduleRow[];
  readonly windGap: WindGap | null;
}

/** Whether any wind at all is known, of this roof or of one that stands in. */
const hasWind = ({ windGap }: CheckSetting): boolean => windGap === null || windGap.standIn !== null;

const NDS = { source: 'NDS-2018', known: 'seen-transcription' } as const;
const REPORT = { source: 'USER', clause: 'report of the screw', known: 'seen-secondary' } as const;

/**
 * The checks of one candidate's screws, for the screw that is used most.
 *
 * withdrawal, head, both loads at once, least penetration, edge and spacing in the rafter, slip across the insulation
 *
 * @param setting  [N, m] the screw's hold, its load, the schedule, the way against sliding
 * @returns        [N, m, -] demand over capacity; above 1 the screening fails
 * @source         NDS-2018 sections 12.1.5, 12.2, 12.4, commentary on spacing (seen-transcription)
 */
export function checksOf(setting: CheckSetting): FasteningCheck[] {
  const { hold, worst, given, into, slopePath, rows } = setting;
  const { pull_N, shear_N } = worst;
  const use = holdUse(hold, pull_N, shear_N, hold.windDuration);
  const load_N = Math.hypot(pull_N, shear_N);
  const check = (
    id: string,
    what: string,
    [demand, capacity, unit]: readonly [number, number, FasteningCheck['unit']],
    clause: string,
    more: Partial<FasteningCheck> = {},
  ): FasteningCheck => ({
    id,
    what,
    demand,
    capacity,
    unit,
    ratio: demand / capacity,
    open: false,
    who: ENGINEER,
    ...NDS,
    clause,
    ...more,
  });
  const inWind: Partial<FasteningCheck> =
    setting.windGap === null
      ? {}
      : { open: true, ...(hasWind(setting) ? {} : { demand: null, ratio: null }) };
  const reported = (name: (typeof hold.fromReport)[number]): Partial<FasteningCheck> =>
    hold.fromReport.includes(name) ? REPORT : {};
  const row_m = Math.min(...rows.map((row) => row.spacing_m));
  return [
    check(
      'screw-withdrawal',
      'Pull on the worst screw against its thread',
      [pull_N, hold.withdrawal_N * hold.windDuration, 'N'],
      'section 12.2.2',
      { ...reported('withdrawal'), ...inWind },
    ),
    ...(hold.pullThrough_N === null
      ? []
      : [
          check(
            'head-pull-through',
            'Pull on the worst screw against its head',
            [pull_N, hold.pullThrough_N * hold.windDuration, 'N'],
            'section 12.2.5',
            { ...reported('pull-through'), ...inWind },
          ),
        ]),
    check(
      'screw-combined',
      'Pull and push down the slope at once on the worst screw',
      [load_N, use.ratios.combined > 0 ? load_N / use.ratios.combined : hold.lateral_N, 'N'],
      'eq. 12.4-1',
      inWind,
    ),
    check(
      'screw-penetration',
      'Least thread in what holds the screw',
      [hold.leastPenetration_m, hold.thread_m, 'm'],
      'section 12.1.5',
      reported('penetration'),
    ),
    ...(into === 'deck'
      ? []
      : [
          check(
            'screw-edge',
            'Edge distance on the center line of the rafter',
            [DIAMETERS.edge * hold.nominal_m, given.framing.width_m / 2, 'm'],
            'commentary, screws below 1/4 in',
          ),
          check(
            'screw-row',
            'Spacing along the rafter, not prebored',
            [DIAMETERS.row * hold.nominal_m, row_m, 'm'],
            'commentary, screws below 1/4 in',
          ),
        ]),
    check(
      'slope-slip',
      'Slip of the upper layers if the plain screws held them alone',
      [slopePath.slip_m, slopePath.slipLimit_m, 'm'],
      'bar between two faces; 0.015 in behind the wall table',
      { source: 'IBC-2018', known: 'memory' },
    ),
  ];
}

/**
 * What is left of a screw's hold when it finds no rafter: the thread in the deck alone.
 *
 * W t CD with the deck's specific gravity, against the pull on the worst screw
 *
 * @param setting  [N] the schedule's worst screw
 * @param deck     [-, m] specific gravity of the deck, length of the tip below it
 * @returns        [N, -, m] hold, demand, ratio, tip
 * @source         NDS-2018 eq. 12.2-2 (seen-transcription)
 * @assumes        the full deck thickness holds thread; the standard's least penetration is not met, so an estimate
 */
export function missOf(
  setting: CheckSetting,
  deck: { readonly deckGravity: number; readonly standsOut_m: number },
): RafterMiss {
  const { given, hold, worst } = setting;
  const hold_N = allowableWithdrawal({
    kind: screwOf('wood-14').kind,
    diameter_m: hold.nominal_m,
    specificGravity: deck.deckGravity,
    threadPenetration_m: given.framing.deckThickness_m,
    loadDuration: hold.windDuration,
  });
  return {
    hold_N,
    demand_N: hasWind(setting) ? worst.pull_N : null,
    ratio: hasWind(setting) ? worst.pull_N / hold_N : null,
    standsOut_m: deck.standsOut_m,
    shows: given.framing.deckSeenFromBelow,
    ...NDS,
    clause: 'eq. 12.2-2 in the deck alone, below the least penetration',
  };
}

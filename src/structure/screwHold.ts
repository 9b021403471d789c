/** What one roof screw holds: by the equations, or by the report of the screw that is bought. Reference values, CD 1. */
import type { Screw } from '../catalog/lumber.ts';
import { demandRange } from './guards.ts';
import { combinedScrewLoad, headPullThrough, penetrationStanding, withdrawalPerLength } from './screws.ts';
import { gapCapacity, type GapCapacity } from './slope.ts';

/** [deg] a half turn over pi. */
const DEGREES_PER_RADIAN = 180 / Math.PI;

/** Allowable values of a screw's own report at load duration 1; each one given goes before the equations. */
export interface ScrewReport {
  /** For each length of thread in the main member. */
  readonly withdrawal_N_m?: number | undefined;
  /** Of one screw as it is driven here; goes before the value by length. */
  readonly allowableWithdrawal_N?: number | undefined;
  readonly pullThrough_N?: number | undefined;
  /** Shear across insulation of at most `lateralGap_m`. */
  readonly lateral_N?: number | undefined;
  readonly lateralGap_m?: number | undefined;
  readonly minimumPenetration_m?: number | undefined;
}

export const reportValues = ['withdrawal', 'pull-through', 'lateral', 'penetration'] as const;
export type ReportValue = (typeof reportValues)[number];

export interface HoldInput {
  readonly screw: Screw;
  /** What the head sits on. */
  readonly side: { readonly thickness_m: number; readonly specificGravity: number };
  /** What the thread bites into. */
  readonly main: { readonly thread_m: number; readonly specificGravity: number };
  /** Insulation between the two. */
  readonly gap_m: number;
  readonly report?: ScrewReport;
}

export interface ScrewHold {
  readonly withdrawal_N: number;
  /** Null for a lag screw, whose washer decides. */
  readonly pullThrough_N: number | null;
  /** Sustained shear across the insulation. */
  readonly lateral_N: number;
  /** By the equations, whatever the report says. */
  readonly gap: GapCapacity;
  readonly leastPenetration_m: number;
  readonly fromReport: readonly ReportValue[];
}

/** Shear of the report, unless the insulation here is thicker than the report's: then the lesser of both. */
function lateralOf(report: ScrewReport, computed_N: number, gap_m: number): number | undefined {
  if (report.lateral_N === undefined) return undefined;
  const isWithin = report.lateralGap_m === undefined || gap_m <= report.lateralGap_m;
  return isWithin ? report.lateral_N : Math.min(report.lateral_N, computed_N);
}

/**
 * Reference values of one screw: withdrawal, head pull-through, shear across the insulation, least penetration.
 *
 * withdrawal W p; pull-through of the head; shear 0.72 Z(gap); each replaced by the report's value where it gives one
 *
 * @param input  [m, -, N] screw, side and main member, insulation, report
 * @returns      [N, m] values at load duration 1, and which of them came from the report
 * @throws       RangeError when a value is outside its range
 * @source       NDS-2018 sections 12.1.5, 12.2 (seen-transcription); AWC-TR12 and IBC-2018 for the shear (memory)
 * @assumes      driven square to the slope; a report's shear holds up to its own insulation thickness
 */
export function screwHold(input: HoldInput): ScrewHold {
  const { screw, side, main, gap_m, report = {} } = input;
  demandRange('thread_m', main.thread_m, 0);
  const gap = gapCapacity({
    screw,
    sideThickness_m: side.thickness_m,
    sideSpecificGravity: side.specificGravity,
    gap_m,
    mainPenetration_m: main.thread_m,
    mainSpecificGravity: main.specificGravity,
  });
  const perLength_N_m =
    report.withdrawal_N_m ?? withdrawalPerLength(screw.kind, screw.nominal_m, main.specificGravity);
  const computedPull_N =
    screw.head_m === undefined ? null : headPullThrough(screw.head_m, side.specificGravity, side.thickness_m);
  const lateral_N = lateralOf(report, gap.design_N, gap_m);
  const given: readonly (readonly [ReportValue, unknown])[] = [
    ['withdrawal', report.allowableWithdrawal_N ?? report.withdrawal_N_m],
    ['pull-through', report.pullThrough_N],
    ['lateral', lateral_N],
    ['penetration', report.minimumPenetration_m],
  ];
  return {
    withdrawal_N: report.allowableWithdrawal_N ?? perLength_N_m * main.thread_m,
    pullThrough_N: report.pullThrough_N ?? computedPull_N,
    lateral_N: lateral_N ?? gap.design_N,
    gap,
    leastPenetration_m:
      report.minimumPenetration_m ?? penetrationStanding(screw.kind, screw.nominal_m, main.thread_m).least_m,
    fromReport: given.filter(([, value]) => value !== undefined).map(([name]) => name),
  };
}

export const holdChecks = ['withdrawal', 'pull-through', 'combined'] as const;
export type HoldCheck = (typeof holdChecks)[number];

export interface HoldUse {
  readonly ratios: Readonly<Record<HoldCheck, number>>;
  readonly governing: HoldCheck;
  /** The greatest of the three. */
  readonly ratio: number;
}

/**
 * Use of one screw that is pulled, and pushed along the slope, at once.
 *
 * withdrawal T/(W' p); head T/W_H'; together sqrt(T^2 + V^2)/Z_alpha with alpha = atan(T/V)
 *
 * @param hold      [N] reference values
 * @param pull_N    [N] along the screw (T) >= 0
 * @param shear_N   [N] along the slope (V) >= 0
 * @param duration  [-] CD of the pull; shear across insulation keeps CD 1
 * @returns         [-] ratios, the greatest and its name
 * @throws          RangeError when a value is outside its range
 * @source          NDS-2018 eq. 12.4-1 and table 11.3.1 (seen-transcription)
 * @assumes         dry service, ordinary temperature
 */
export function holdUse(
  hold: Pick<ScrewHold, 'withdrawal_N' | 'pullThrough_N' | 'lateral_N'>,
  pull_N: number,
  shear_N: number,
  duration: number,
): HoldUse {
  demandRange('pull_N', pull_N, 0);
  demandRange('shear_N', shear_N, 0);
  const withdrawal_N = hold.withdrawal_N * duration;
  const load_N = Math.hypot(pull_N, shear_N);
  const angle_deg = Math.atan2(pull_N, shear_N) * DEGREES_PER_RADIAN;
  const ratios = {
    withdrawal: pull_N / withdrawal_N,
    'pull-through': hold.pullThrough_N === null ? 0 : pull_N / (hold.pullThrough_N * duration),
    combined: load_N === 0 ? 0 : load_N / combinedScrewLoad(withdrawal_N, hold.lateral_N, angle_deg),
  };
  const governing = holdChecks.reduce((worst, id) => (ratios[id] > ratios[worst] ? id : worst));
  return { ratios, governing, ratio: ratios[governing] };
}

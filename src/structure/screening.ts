/**
 * The frame around every structural result: provisional, with the one who decides. A screening may say
 * "within the screening limits"; it never says that a thing is approved.
 */

export type Standing = 'within-screening-limits' | 'beyond-screening-limits' | 'needs-design';

export interface Screening {
  readonly provisional: true;
  /** Who settles it. */
  readonly decidedBy: string;
  readonly standing: Standing;
  /** Plain sentences for the report. */
  readonly notes: readonly string[];
}

/** One demand against one limit. */
export interface ScreeningCheck {
  readonly id: string;
  readonly what: string;
  readonly demand: number;
  readonly capacity: number;
  readonly unit: string;
  /** demand / capacity; above 1 the screening fails. */
  readonly ratio: number;
  /** The load case that gave the greatest ratio. */
  readonly governingCase: string;
  readonly who: string;
  readonly source: string;
  readonly clause: string;
  readonly known: string;
}

/** A normal answer when a method does not reach: never a number. */
export interface NotCovered {
  readonly kind: 'notCovered';
  readonly reason: string;
  readonly deferTo: string;
}

export const ENGINEER = 'structural engineer';
export const AUTHORITY = 'authority having jurisdiction';

/** For every value that is known from a transcription only. */
export const CONFIRM_IN_STANDARD = 'Read from a transcription: confirm in the standard.';

/** Throws when a number is not finite or not inside its range: the caller's mistake. */
export function demandRange(name: string, value: number, least: number, greatest = Infinity): void {
  if (!Number.isFinite(value) || value < least || value > greatest) {
    const limit = greatest === Infinity ? `at least ${least}` : `${least} to ${greatest}`;
    throw new RangeError(`${name}: ${value} is outside what is allowed (${limit})`);
  }
}

/** Throws when a number is not finite and above zero. */
export function demandPositive(name: string, value: number): void {
  if (!Number.isFinite(value) || value <= 0) throw new RangeError(`${name}: ${value} is not above 0`);
}

/** The standing that follows from the checks and from reasons to call for a design. */
export function standingOf(checks: readonly { readonly ratio: number }[], needsDesign: boolean): Standing {
  if (needsDesign) return 'needs-design';
  return checks.some((check) => !(check.ratio <= 1)) ? 'beyond-screening-limits' : 'within-screening-limits';
}

/** [deg] half a turn (definition). */
const HALF_TURN_DEG = 180;
/** Degrees to radians. */
export const radians = (angle_deg: number): number => (angle_deg * Math.PI) / HALF_TURN_DEG;

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

export const ENGINEER = 'structural engineer';
export const AUTHORITY = 'authority having jurisdiction';

/** For every value that is known from a transcription only. */
export const CONFIRM_IN_STANDARD = 'Read from a transcription: confirm in the standard.';

/**
 * The standing that follows from the checks and from reasons to call for a design.
 *
 * @param checks       [-] ratios of demand to limit
 * @param needsDesign  true when a rule sends it to a designer whatever the ratios
 * @returns            [-] one of three standings; none of them is an approval
 * @source             OUR-JUDGEMENT
 */
export function standingOf(checks: readonly { readonly ratio: number }[], needsDesign: boolean): Standing {
  if (needsDesign) return 'needs-design';
  return checks.some((check) => !(check.ratio <= 1)) ? 'beyond-screening-limits' : 'within-screening-limits';
}

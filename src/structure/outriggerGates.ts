/** Reasons why an outrigger goes to the engineer whatever its numbers say. */
import { metersFromInches } from '../units.ts';
import type { Outrigger } from './outriggerCases.ts';

/** [-] back span over overhang that the screening asks for, common carpentry rule (seen-secondary). */
export const BACK_SPAN_RATIO = 2;
/** [m] 24 in: deeper overhangs on outriggers go to the engineer, WFCM rake rule (memory). */
export const ENGINEER_OVERHANG_M = metersFromInches(24);
/** [m] 12 in: flat 2x4 beyond it sags too much (computed). */
export const FLAT_2X4_OVERHANG_M = metersFromInches(12);
/** [m] 24 in: repetitive use up to this spacing, NDS 2018 section 4.3.9. */
export const REPETITIVE_SPACING_M = metersFromInches(24);
/** [m] rounding noise of conversions from inches. */
export const GATE_NOISE_M = 1e-9;

export interface Gate {
  readonly id: 'back-span' | 'deep-overhang' | 'flat-2x4' | 'spacing';
  readonly text: string;
}

/**
 * Reasons why an outrigger goes to the engineer whatever its numbers say.
 *
 * b < 2a; a > 24 in; flat 2x4 with a > 12 in; spacing > 24 in
 *
 * @param outrigger  [m] overhang (a), back span (b), spacing, member
 * @returns          [-] the list, empty when none applies
 * @source           COMMON-PRACTICE back span 2:1 (seen-secondary); AWC-WFCM rake rule (memory); OUR-JUDGEMENT for the rest
 */
export function engineerGates(
  outrigger: Pick<Outrigger, 'member' | 'overhang_m' | 'backSpan_m' | 'spacing_m'>,
): Gate[] {
  const { member, overhang_m, backSpan_m, spacing_m } = outrigger;
  const gates: Gate[] = [];
  if (backSpan_m < BACK_SPAN_RATIO * overhang_m - GATE_NOISE_M)
    gates.push({ id: 'back-span', text: 'The back span is shorter than twice the overhang.' });
  if (overhang_m > ENGINEER_OVERHANG_M + GATE_NOISE_M)
    gates.push({ id: 'deep-overhang', text: 'The overhang is deeper than 24 in (610 mm): engineer only.' });
  if (
    member.orientation === 'flat' &&
    member.size === '2x4' &&
    overhang_m > FLAT_2X4_OVERHANG_M + GATE_NOISE_M
  )
    gates.push({ id: 'flat-2x4', text: 'A flat 2x4 sags too much beyond a 12 in (305 mm) overhang.' });
  if (spacing_m > REPETITIVE_SPACING_M + GATE_NOISE_M)
    gates.push({ id: 'spacing', text: 'Outriggers stand farther apart than 24 in (610 mm).' });
  return gates;
}

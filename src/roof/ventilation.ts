/** Whether and how the covering is vented, and what the rule of the covering says to that. */
import { dimension } from '../catalog/dimensions.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Layer } from '../evaluation/evaluation.ts';
import type { RoofMeasures } from './geometry.ts';
import type { Variant } from './variant.ts';

/**
 * The ventilation of a candidate.
 *
 * net free area per length of eave = slope length / 300 / 2: half low, half high
 *
 * @param given    [-] the complete case
 * @param variant  [-] strategy, ventilation and underlayment
 * @param layers   [m] layers of the candidate
 * @param roof     [m] its measures
 * @returns        [m, m²/m] clear gap, status and net free area of the intake
 * @source         IRC-2018-R806.1 ratio as a yardstick (seen-secondary); asphalt trade guidance on insulated decks (seen-secondary)
 * @assumes        R806 governs vented attics, not a gap above board: the ratio is a yardstick only
 */
export function ventilationOf(
  given: CompleteCase,
  variant: Variant,
  layers: readonly Layer[],
  roof: RoofMeasures,
): Candidate['ventilation'] {
  const gap = layers.find((layer) => layer.role === 'vent-gap' || layer.role === 'drainage-mat');
  const { status, rule } = verdict(given, variant);
  return {
    kind: variant.ventilation,
    gap_m: gap?.thickness_m ?? 0,
    status,
    rule,
    netFreeArea_m2_m: (roof.slopeLength_m * dimension('vent-area-share')) / 2,
  };
}

function verdict(
  given: CompleteCase,
  { strategy, ventilation, underlayment }: Variant,
): Pick<Candidate['ventilation'], 'status' | 'rule'> {
  const isShingle = given.covering.kind === 'asphalt-shingle';
  if (ventilation === 'vented-furring' || ventilation === 'panel-gap')
    return {
      status: 'preferred',
      rule: 'A vented nailing deck: cooler, drier, and what shingle makers ask for.',
    };
  if (strategy === 'prebonded-panel')
    return { status: 'caution', rule: 'A panel without its gap: the top sheet dries only outward.' };
  if (ventilation === 'drainage-mat')
    return underlayment === 'vapor-open'
      ? { status: 'allowed', rule: 'Dries through the vapor-open underlayment into the mat.' }
      : {
          status: 'caution',
          rule: 'The mat drains, but a tight underlayment keeps the wood from drying into it.',
        };
  return isShingle
    ? {
        status: 'caution',
        rule: 'Unvented shingles: allowed by the code, not preferred; ask the shingle maker.',
      }
    : { status: 'caution', rule: 'Unvented: allowed, but water that gets in leaves slowly.' };
}

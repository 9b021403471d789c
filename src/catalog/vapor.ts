/** Vapor resistance of catalog materials in the terms of ISO 13788. */
import { notCovered, type NotCovered } from './notCovered.ts';
import { material } from './materials.ts';

/** [ng/(Pa·s·m)] vapor permeability of still air (delta0). @source ISO-13788-2012 clause 4 (seen-secondary) */
export const AIR_PERMEABILITY_NG_PASM = 200;

export interface VaporResistance {
  readonly kind: 'vaporResistance';
  /** [m] equivalent air layer thickness (s_d) with the dry-cup and the wet-cup value. */
  readonly dry_m: number;
  readonly wet_m: number;
}

/**
 * Equivalent air layer thickness of a material: s_d = mu * d, or delta0 / permeance
 *
 * @param id material of materials.json
 * @param thickness_m [m] thickness; the row's own when left out
 * @returns [m] s_d with dry-cup and wet-cup values, or a typed not-covered value
 * @range a sheet keeps its permeance whatever its thickness; boards of uniform stuff scale with thickness
 * @throws RangeError when the thickness is not > 0 where one is needed
 * @source ISO-13788-2012 clause 4 (seen-secondary)
 * @assumes vented air layers do not limit the flow
 */
export function equivalentAirLayer(id: string, thickness_m?: number): VaporResistance | NotCovered {
  const row = material(id);
  const { vapor } = row;
  const result = (dry_m: number, wet_m: number): VaporResistance => ({
    kind: 'vaporResistance',
    dry_m,
    wet_m,
  });
  const used = (): number => {
    const used_m = thickness_m ?? row.thickness_m;
    if (used_m === null || !(used_m > 0)) throw new RangeError(`${id}: the thickness must be above 0`);
    return used_m;
  };
  switch (vapor.kind) {
    case 'not-limiting':
      return result(0, 0);
    case 'unknown':
      return notCovered(`no vapor permeance is known for ${row.name}`, 'the maker');
    case 'sheet':
      return result(
        AIR_PERMEABILITY_NG_PASM / vapor.dry_ng_Pasm2,
        AIR_PERMEABILITY_NG_PASM / vapor.wet_ng_Pasm2,
      );
    case 'scaled-sheet': {
      const share = row.thickness_m === null ? 1 : used() / row.thickness_m;
      return result(
        (share * AIR_PERMEABILITY_NG_PASM) / vapor.dry_ng_Pasm2,
        (share * AIR_PERMEABILITY_NG_PASM) / vapor.wet_ng_Pasm2,
      );
    }
    case 'permeability':
      return result(
        (used() * AIR_PERMEABILITY_NG_PASM) / vapor.dry_ng_Pasm,
        (used() * AIR_PERMEABILITY_NG_PASM) / vapor.wet_ng_Pasm,
      );
    case 'factor':
      return result(vapor.dry * used(), vapor.wet * used());
    default: {
      const never: never = vapor;
      return never;
    }
  }
}

/**
 * Vapor permeance of a material as laid: the reciprocal of its vapor resistance
 *
 * @param id material of materials.json
 * @param thickness_m [m] thickness; the row's own when left out
 * @returns [ng/(Pa·s·m²)] dry-cup and wet-cup permeance (Infinity when the layer does not limit), or not covered
 * @throws RangeError when the thickness is not > 0 where one is needed
 * @source ISO-13788-2012 clause 4 (seen-secondary)
 * @assumes as equivalentAirLayer
 */
export function permeance(
  id: string,
  thickness_m?: number,
): { kind: 'permeance'; dry_ng_Pasm2: number; wet_ng_Pasm2: number } | NotCovered {
  const layer = equivalentAirLayer(id, thickness_m);
  if (layer.kind === 'notCovered') return layer;
  const of = (air_m: number): number => (air_m === 0 ? Infinity : AIR_PERMEABILITY_NG_PASM / air_m);
  return { kind: 'permeance', dry_ng_Pasm2: of(layer.dry_m), wet_ng_Pasm2: of(layer.wet_m) };
}

/** What sources disagree about: the lowest and the highest dry-cup permeance, and which one is used and why. */
export interface PermeanceDoubt {
  readonly low_ng: number;
  readonly high_ng: number;
  readonly used_ng: number;
  readonly reason: string;
  readonly sources: string[];
}

/**
 * The span of dry-cup permeances that sources print for a material, beside the one used.
 *
 * P(d) = P(row) d(row) / d for boards of uniform stuff; sheets keep theirs
 *
 * @param id material of materials.json
 * @param thickness_m [m] thickness; the row's own when left out
 * @returns [ng/(Pa·s·m²)] lowest, highest and used value, or null where no conflict is known
 * @throws RangeError when the thickness is not > 0 where one is needed
 * @source OUR-JUDGEMENT the cautious value of the sources that the row names
 * @assumes the span scales with thickness as the used value does
 */
export function permeanceDoubt(id: string, thickness_m?: number): PermeanceDoubt | null {
  const { permeanceDoubt: doubt } = material(id);
  if (doubt === undefined) return null;
  const used = permeance(id, thickness_m);
  if (used.kind === 'notCovered') return null;
  const at = permeance(id, doubt.thickness_m ?? undefined);
  const scale = at.kind === 'notCovered' ? 1 : used.dry_ng_Pasm2 / at.dry_ng_Pasm2;
  return {
    low_ng: doubt.low_ng * scale,
    high_ng: doubt.high_ng * scale,
    used_ng: used.dry_ng_Pasm2,
    reason: doubt.reason,
    sources: [...doubt.source],
  };
}

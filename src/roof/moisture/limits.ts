/** How much condensate the materials at a plane may take. */
import { isBoard } from '../../catalog/sets.ts';
import type { Layer } from '../../evaluation/evaluation.ts';

/** [kg/m²] general limit, DIN 4108-3 (seen-secondary). */
const GENERAL_KG_M2 = 1;
/** [kg/m²] limit where one face takes up no water: foil, metal, foam, mineral wool, DIN 4108-3 (seen-secondary). */
const NO_UPTAKE_KG_M2 = 0.5;
/** [-] greatest rise of mass of wood and of wood-based panels, DIN 4108-3 (seen-secondary). */
const WOOD_RISE = 0.05;
const PANEL_RISE = 0.03;
/** [%] fractions in words. */
const PERCENT = 100;

const woods = new Set(['plank', 'softwood', 'wood-boards']);
const panels = new Set(['plywood', 'osb', 'wood-fiber']);
const takesUp = new Set([
  ...woods,
  ...panels,
  'gypsum',
  'gypsum-5-8',
  'cellulose',
  'wood-shingle',
  'wood-shake',
]);

export interface MaterialLimit {
  readonly limit_kg_m2: number;
  readonly reason: string;
}

function limitsAt(layer: Layer): MaterialLimit[] {
  const id = layer.material;
  if (id === null) return [];
  const rise = woods.has(id) ? WOOD_RISE : panels.has(id) ? PANEL_RISE : null;
  if (rise !== null && layer.mass_kg_m2 > 0)
    return [
      {
        limit_kg_m2: rise * layer.mass_kg_m2,
        reason: `${layer.name} may gain ${Math.round(PERCENT * rise)} % of its mass`,
      },
    ];
  if (takesUp.has(id)) return [];
  return [
    {
      limit_kg_m2: NO_UPTAKE_KG_M2,
      reason: `${isBoard(id) ? 'the board' : layer.name} takes up no water: 0.5 kg/m²`,
    },
  ];
}

/**
 * Limit of the condensate at a plane: the lowest of what its two faces allow.
 *
 * 1.0 kg/m² in general; 0.5 where a face takes up no water; 5 % of the mass of wood, 3 % of a wood-based panel
 *
 * @param faces  [kg/m²] the layers on both sides of the plane, or the one that holds it
 * @returns      [kg/m²] limit and its reason
 * @source       DIN-4108-3 limits of condensate (seen-secondary)
 * @assumes      a wood fiber board counts as a wood-based panel; all of a layer's mass shares the water
 */
export function materialLimit(faces: readonly Layer[]): MaterialLimit {
  const general: MaterialLimit = { limit_kg_m2: GENERAL_KG_M2, reason: '1 kg/m² in general' };
  return faces
    .flatMap(limitsAt)
    .reduce((lowest, limit) => (limit.limit_kg_m2 < lowest.limit_kg_m2 ? limit : lowest), general);
}

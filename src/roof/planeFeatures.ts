/** What stands on a plane of the roof: cross gables, dormers, skylights and chimneys, evenly along the eave. */
import { dimension } from '../catalog/dimensions.ts';
import { cosine, sine, type RoofPlan } from './geometry.ts';
import {
  dormerHole,
  dormerSide,
  gableNotch,
  gableSide,
  openingHole,
  type BarePlane,
  type Corner,
} from './planeShapes.ts';
import { onSlope, type Plane } from './slopePlane.ts';

/** [-] share of a slot or of a plane's depth that what stands in it may take: the rest is roof between (our judgement). */
const MOST_OF_SLOT = 0.45;
const MOST_OF_DEPTH = 0.9;
/** [-] where dormers and openings stand and how far they reach, as shares of the level depth (our judgement). */
const DORMER = { front: 0.15, cheek: 0.35, half: 0.4 } as const;
const OPENING = { bottom: 0.15, depth: 0.3 } as const;

export type Feature = 'gable' | 'dormer' | 'skylight' | 'chimney';

/**
 * Features in turn over the planes that carry them.
 *
 * @param list    [-] what stands on the roof
 * @param planes  [-] how many planes carry
 * @returns       [-] features by plane
 * @source        OUR-JUDGEMENT nobody said where they stand
 */
export function shared(list: readonly Feature[], planes: number): Feature[][] {
  const rows: Feature[][] = Array.from({ length: planes }, () => []);
  list.forEach((feature, index) => rows[index % planes]?.push(feature));
  return rows;
}

export interface Carried {
  readonly planes: readonly Plane[];
  readonly gable_m: number;
  readonly dormer_m: number;
  readonly opening_m: number;
}

/**
 * A plane with what stands on it, and the planes of that itself.
 *
 * each feature in the middle of its slot along the eave; sizes of dimensions.json, smaller where the slot is
 *
 * @param bare      [m, deg] the plane
 * @param features  [-] what stands on it, from left to right
 * @param plan      [m] the house
 * @returns         [m] planes, and the sizes taken
 * @source          OUR-JUDGEMENT sizes and places; plane geometry (computed)
 */
export function carried(bare: BarePlane, features: readonly Feature[], plan: RoofPlan): Carried {
  const { angle_deg, depth_m, room, id } = bare;
  const [from_m, to_m] = room ?? [0, 0];
  const slot_m = features.length > 0 ? (to_m - from_m) / features.length : 0;
  const notches: Corner[] = [];
  const holes: (readonly Corner[])[] = [];
  const own: Plane[] = [];
  let gable_m = 0;
  let dormer_m = 0;
  let opening_m = 0;
  features.forEach((feature, index) => {
    const x = from_m + (index + 1 / 2) * slot_m;
    const name = `${id}-${feature}-${index + 1}`;
    if (feature === 'gable') {
      const wanted_m = (plan.width_m * dimension('cross-gable-share')) / 2 + plan.eaveOverhang_m;
      const half_m = Math.min(wanted_m, MOST_OF_SLOT * slot_m, MOST_OF_DEPTH * depth_m);
      gable_m = 2 * Math.max(0, half_m - plan.eaveOverhang_m);
      notches.push(...gableNotch(x, half_m));
      for (const side of ['left', 'right']) {
        const bareSide = gableSide(`${name}-${side}`, angle_deg, half_m);
        own.push(onSlope(bareSide, bareSide.outline, []));
      }
    } else if (feature === 'dormer') {
      const tan = sine(angle_deg) / cosine(angle_deg);
      const half_m = Math.min(dimension('dormer-width_m') / 2, MOST_OF_SLOT * slot_m, DORMER.half * depth_m);
      const cheek_m = Math.min(dimension('dormer-cheek_m') / tan, DORMER.cheek * depth_m);
      dormer_m = 2 * half_m;
      holes.push(dormerHole(x, DORMER.front * depth_m, cheek_m, half_m));
      for (const side of ['left', 'right']) {
        const bareSide = dormerSide(`${name}-${side}`, angle_deg, cheek_m, half_m);
        own.push(onSlope(bareSide, bareSide.outline, []));
      }
    } else {
      const width_m = Math.min(dimension(`${feature}-width_m`), 2 * MOST_OF_SLOT * slot_m);
      const long_m = Math.min(dimension(`${feature}-length_m`) * cosine(angle_deg), OPENING.depth * depth_m);
      opening_m = width_m;
      holes.push(openingHole(x, OPENING.bottom * depth_m, width_m, long_m));
    }
  });
  const [first, ...rest] = bare.outline as readonly [Corner, ...Corner[]];
  return {
    planes: [onSlope(bare, [first, ...notches, ...rest], holes), ...own],
    gable_m,
    dormer_m,
    opening_m,
  };
}

/** Which layers count for heat, their films, and their resistance at the temperature of a cold month. */
import { boardResistance } from '../../catalog/materials.ts';
import { isBoard } from '../../catalog/sets.ts';
import type { Climate, Layer } from '../../evaluation/evaluation.ts';
import { insideSurface_m2K_W, OUTSIDE_SURFACE_M2K_W, type HeatFlow } from '../../physics/airLayers.ts';
import { solveTemperatureDependentResistance } from '../../physics/thermal.ts';

/**
 * Whether a layer is moving air: a vented gap or a drainage mat.
 *
 * @param layer [-] any layer
 * @returns [-] true for both
 * @source OUR-JUDGEMENT roles of the evaluation
 */
export const isGap = (layer: Layer): boolean => layer.role === 'vent-gap' || layer.role === 'drainage-mat';

/** [deg] slope from which heat flow counts as horizontal, ISO 6946:2017 table 7 (memory). */
const STEEP_DEG = 60;

/**
 * Direction of the winter heat flow through a roof.
 *
 * @param angle_deg  [deg] slope
 * @returns          [-] up; horizontal from 60 degrees
 * @source           ISO-6946-2017 table 7 (memory)
 */
export const heatFlowOf = (angle_deg: number): HeatFlow => (angle_deg >= STEEP_DEG ? 'horizontal' : 'up');

export interface CountedLayers {
  /** From the room to the vented space, or all when there is none. */
  readonly layers: readonly Layer[];
  readonly isVented: boolean;
  readonly insideFilm_m2K_W: number;
  readonly outsideFilm_m2K_W: number;
}

/**
 * Layers and films that count for heat: a well-ventilated layer and all outside it are dropped.
 *
 * @param layers  [-] inside to outside
 * @param flow    [-] direction of heat flow
 * @returns       [m²·K/W] counted layers and both films; still air under a vented covering counts as the inside film
 * @source        ISO-6946-2017 6.9.4 and table 7 (memory)
 */
export function countedLayers(layers: readonly Layer[], flow: HeatFlow = 'up'): CountedLayers {
  const gap = layers.findIndex(isGap);
  const film_m2K_W = insideSurface_m2K_W(flow);
  return gap < 0
    ? { layers, isVented: false, insideFilm_m2K_W: film_m2K_W, outsideFilm_m2K_W: OUTSIDE_SURFACE_M2K_W }
    : {
        layers: layers.slice(0, gap),
        isVented: true,
        insideFilm_m2K_W: film_m2K_W,
        outsideFilm_m2K_W: film_m2K_W,
      };
}

/**
 * Gives every layer its resistance at its own mean temperature in the three coldest months.
 *
 * R(T) by iteration: temperatures from the resistances, resistances from the mean temperatures
 *
 * @param layers   [-] inside to outside, labelled resistance
 * @param climate  [°C] outdoor mean of the three coldest months
 * @param inside_C [°C] indoor temperature
 * @returns        [m²·K/W] the same layers with winterResistance_m2K_W set; layers beyond a gap keep theirs
 * @source         FOAM-PRODUCER-NOTE polyisocyanurate against mean temperature (seen)
 * @assumes        steady one-dimensional flow through the cavity; only polyisocyanurate changes
 */
export function withWinterResistance(
  layers: readonly Layer[],
  climate: Pick<Climate, 'coldestMean_C'>,
  inside_C: number,
): Layer[] {
  const counted = countedLayers(layers);
  const fixed = (resistance_m2K_W: number) => ({ resistanceAt: () => resistance_m2K_W });
  const solution = solveTemperatureDependentResistance(
    [
      fixed(counted.insideFilm_m2K_W),
      ...counted.layers.map((layer) => {
        const { material: id, role, thickness_m, resistance_m2K_W } = layer;
        return role === 'insulation' && id !== null && isBoard(id)
          ? { resistanceAt: (mean_C: number) => boardResistance(id, thickness_m, mean_C) }
          : fixed(resistance_m2K_W);
      }),
      fixed(counted.outsideFilm_m2K_W),
    ],
    inside_C,
    climate.coldestMean_C,
  );
  return layers.map((layer, index) =>
    index < counted.layers.length
      ? { ...layer, winterResistance_m2K_W: solution.resistances_m2K_W[index + 1] ?? layer.resistance_m2K_W }
      : layer,
  );
}

/** Layers as vapor sees them, and the twelve months on both of their sides. */
import { AIR_PERMEABILITY_NG_PASM } from '../../catalog/vapor.ts';
import type { CompleteCase } from '../../case/complete.ts';
import type { Climate, IndoorAir, Layer } from '../../evaluation/evaluation.ts';
import type { MonthConditions } from '../../physics/moistureBalance.ts';
import type { MoistureAssembly, MoistureLayer } from '../../physics/vaporPlanes.ts';
import { angleOfPitch_deg } from '../geometry.ts';
import { countedLayers, heatFlowOf, isGap } from '../heat/winter.ts';

/** [m] resistance given to a layer that is no obstacle, so that planes stay apart (our judgement). */
const OPEN_M = 0.001;

/**
 * Equivalent air layer of a permeance; a layer that is no obstacle keeps a millimeter.
 *
 * @param permeance_ng [ng/(Pa·s·m²)] null where vapor is no obstacle
 * @returns [m] s_d
 * @source ISO-13788-2012 clause 4 (seen-secondary)
 */
export const airLayerOf_m = (permeance_ng: number | null): number =>
  permeance_ng === null ? OPEN_M : Math.max(OPEN_M, AIR_PERMEABILITY_NG_PASM / permeance_ng);

/**
 * A layer at its dry-cup permeance and winter resistance.
 *
 * @param layer [-] a layer of the candidate
 * @returns [m²·K/W, m] as the monthly method sees it
 * @source ISO-13788-2012 clause 4 (memory)
 */
export const moistureLayer = (layer: Layer): MoistureLayer => ({
  resistance_m2K_W: layer.winterResistance_m2K_W,
  equivalentAirLayer_m: airLayerOf_m(layer.permeance_ng),
});

/**
 * A layer while it is wet: at its wet-cup permeance.
 *
 * @param layer [-] a layer of the candidate
 * @returns [m²·K/W, m] as the monthly method sees it
 * @source ISO-10456-2007 wet-cup values (memory)
 */
export const wetMoistureLayer = (layer: Layer): MoistureLayer => ({
  resistance_m2K_W: layer.winterResistance_m2K_W,
  equivalentAirLayer_m: airLayerOf_m(layer.permeanceWet_ng),
});

/**
 * Layers from the room to the first moving air: the vented gap, or the weather.
 *
 * @param layers [-] inside to outside
 * @returns [-] those inside the moving air
 * @source ISO-6946-2017 6.9.4 (memory)
 */
export function roomSide(layers: readonly Layer[]): Layer[] {
  const gap = layers.findIndex(isGap);
  return gap < 0 ? [...layers] : layers.slice(0, gap);
}

/**
 * Layers that end at moving air as an assembly with its films.
 *
 * @param given    [deg] the complete case
 * @param layers   [-] inside to outside
 * @param isVented [-] true when they end at a vented space
 * @returns [m²·K/W, m] films and layers
 * @source ISO-6946-2017 table 7 and 6.9.4 (memory)
 */
export function assemblyOf(
  given: CompleteCase,
  layers: readonly Layer[],
  isVented: boolean,
): MoistureAssembly {
  const flow = heatFlowOf(angleOfPitch_deg(given.roof.pitch_rise_per_12));
  const { insideFilm_m2K_W, outsideFilm_m2K_W } = countedLayers([], flow);
  return {
    insideSurface_m2K_W: insideFilm_m2K_W,
    outsideSurface_m2K_W: isVented ? insideFilm_m2K_W : outsideFilm_m2K_W,
    layers: layers.map(moistureLayer),
  };
}

/**
 * January to December on both sides of the roof.
 *
 * @param given   [°C] indoor temperature, all year
 * @param climate [°C, %] outdoors
 * @param indoor  [%] indoor humidity by month
 * @returns [°C, %] twelve months
 * @source ISO-13788-2012 clause 4 (memory)
 */
export const monthsOf = (given: CompleteCase, climate: Climate, indoor: IndoorAir): MonthConditions[] =>
  climate.monthlyTemperature_C.map((outdoorTemperature_C, month) => ({
    outdoorTemperature_C,
    outdoorRelativeHumidity_pct: climate.monthlyRelativeHumidity_pct[month] ?? 0,
    indoorTemperature_C: given.indoor.temperature_C,
    indoorRelativeHumidity_pct: indoor.relativeHumidity_pct[month] ?? 0,
  }));

/**
 * The same months with another one first.
 *
 * @param months     [-] January to December
 * @param firstMonth [-] 1 to 12
 * @returns [-] twelve months in a row
 * @source COMMON-PRACTICE calendar (computed)
 */
export const startingIn = <T>(months: readonly T[], firstMonth: number): T[] => [
  ...months.slice(firstMonth - 1),
  ...months.slice(0, firstMonth - 1),
];

/**
 * Permeance of layers in series; as open as a millimeter of air where nothing limits: 1 / P = sum(1 / Pi).
 *
 * @param layers  [ng/(Pa·s·m²)] layers of the candidate
 * @param more_ng [ng/(Pa·s·m²)] further permeances
 * @returns [ng/(Pa·s·m²)] of all together
 * @source ASTM-E96 definition of permeance (memory)
 */
export function inSeries_ng(layers: readonly Layer[], more_ng: readonly number[] = []): number {
  const closed = layers.flatMap((layer) => (layer.permeance_ng === null ? [] : [layer.permeance_ng]));
  const resistance = [...closed, ...more_ng].reduce((sum, permeance) => sum + 1 / permeance, 0);
  return resistance > 0 ? 1 / resistance : AIR_PERMEABILITY_NG_PASM / OPEN_M;
}

/**
 * Heat through plane layers, steady state: series resistance, plane temperatures, parallel path,
 * and layers whose conductivity depends on their own temperature.
 */
import { at, requireFinite, requireNotNegative, requirePositive, requireWithin, sum } from './guards.ts';

/**
 * Thermal resistance of layers in series.
 *
 * R = R1 + R2 + ...
 *
 * @param resistances_m2K_W [m2·K/W] one per layer, each 0 or more
 * @returns                 [m2·K/W] total
 * @range                   any number of layers, none gives 0
 * @throws                  RangeError when a resistance is negative or not finite
 * @source                  ISO-6946-2017 clause 6.7.1 (memory)
 * @assumes                 one-dimensional heat flow
 */
export function seriesResistance_m2K_W(resistances_m2K_W: readonly number[]): number {
  for (const resistance of resistances_m2K_W) requireNotNegative('resistance_m2K_W', resistance);
  return sum(resistances_m2K_W);
}

/**
 * Thermal resistance of a homogeneous layer.
 *
 * R = d / lambda
 *
 * @param thickness_m       [m] thickness (d), > 0
 * @param conductivity_W_mK [W/(m·K)] thermal conductivity (lambda), > 0
 * @returns                 [m2·K/W] resistance
 * @range                   positive finite values
 * @throws                  RangeError when an input is not above 0
 * @source                  ISO-6946-2017 clause 6.7.1.1 (memory)
 * @assumes                 one-dimensional heat flow
 */
export function layerResistance_m2K_W(thickness_m: number, conductivity_W_mK: number): number {
  requirePositive('thickness_m', thickness_m);
  requirePositive('conductivity_W_mK', conductivity_W_mK);
  return thickness_m / conductivity_W_mK;
}

/**
 * Temperatures at the planes of a layered assembly, steady state.
 *
 * t(x) = ti - (ti - te) R(x) / Rtotal
 *
 * @param inside_C          [°C] indoor temperature (ti)
 * @param outside_C         [°C] outdoor temperature (te)
 * @param resistances_m2K_W [m2·K/W] layers and films from inside to outside, each 0 or more, total > 0
 * @returns                 [°C] one value per plane, length resistances.length + 1, first ti, last te
 * @range                   one-dimensional steady heat flow; not beside framing members
 * @throws                  RangeError when a resistance is negative, the total is 0 or a value is not finite
 * @source                  ISO-13788-2012 clause 6.4.2 (memory)
 * @assumes                 film resistances are among the resistances when they are wanted
 */
export function interfaceTemperatures_C(
  inside_C: number,
  outside_C: number,
  resistances_m2K_W: readonly number[],
): number[] {
  requireFinite('inside_C', inside_C);
  requireFinite('outside_C', outside_C);
  const total = seriesResistance_m2K_W(resistances_m2K_W);
  requirePositive('total resistance_m2K_W', total);
  const temperatures_C = [inside_C];
  let passed = 0;
  for (const resistance of resistances_m2K_W) {
    passed += resistance;
    temperatures_C.push(inside_C - ((inside_C - outside_C) * passed) / total);
  }
  temperatures_C[resistances_m2K_W.length] = outside_C;
  return temperatures_C;
}

/** One heat path through an assembly: its share of the area and its resistance from air to air. */
export interface HeatPath {
  readonly share: number;
  readonly resistance_m2K_W: number;
}

/** [-] how far shares may miss a sum of 1: rounding of shares given to five digits, our judgement. */
export const SHARE_SUM_TOLERANCE = 1e-4;

export function requireSharesSumToOne(shares: readonly number[]): void {
  for (const share of shares) requireWithin('share', share, 0, 1);
  const total = sum(shares);
  if (Math.abs(total - 1) > SHARE_SUM_TOLERANCE) throw new RangeError(`shares: sum ${total} is not 1`);
}

/**
 * Resistance of heat paths side by side (parallel path; the upper limit of ISO 6946).
 *
 * 1 / R = f1 / R1 + f2 / R2 + ...
 *
 * @param paths [-, m2·K/W] share of area (f, together 1) and resistance (R > 0) of each path
 * @returns     [m2·K/W] effective resistance
 * @range       wood framing; not metal members across the insulation
 * @throws      RangeError when shares do not add to 1 or a resistance is not above 0
 * @source      ASHRAE-HOF-2017 ch. 27 parallel path (memory); ISO-6946-2017 clause 6.7.2.3 (memory)
 * @assumes     no heat flow between the paths
 */
export function parallelPath_m2K_W(paths: readonly HeatPath[]): number {
  requireSharesSumToOne(paths.map((path) => path.share));
  for (const path of paths) requirePositive('resistance_m2K_W', path.resistance_m2K_W);
  return 1 / sum(paths.map((path) => path.share / path.resistance_m2K_W));
}

/** A zone of a roof with its own transmittance. */
export interface AreaZone {
  readonly area_m2: number;
  readonly transmittance_W_m2K: number;
}

/**
 * Mean transmittance of zones (eave band, rake band, field) weighted by area.
 *
 * U = sum(A U) / sum(A)
 *
 * @param zones [m2, W/(m2·K)] area (> 0 in total) and transmittance of each zone
 * @returns     [W/(m2·K)] mean transmittance
 * @range       zones that cover the roof without overlap
 * @throws      RangeError when the area is not above 0 or a value is negative
 * @source      ISO-6946-2017 clause 6.7.2 (memory)
 * @assumes     no heat flow between zones
 */
export function areaWeightedTransmittance_W_m2K(zones: readonly AreaZone[]): number {
  for (const zone of zones) {
    requireNotNegative('area_m2', zone.area_m2);
    requireNotNegative('transmittance_W_m2K', zone.transmittance_W_m2K);
  }
  const area = sum(zones.map((zone) => zone.area_m2));
  requirePositive('total area_m2', area);
  return sum(zones.map((zone) => zone.area_m2 * zone.transmittance_W_m2K)) / area;
}

/**
 * Mean temperature of one layer of an assembly.
 *
 * @param temperatures_C [°C] plane temperatures of the assembly, length layers + 1
 * @param layer          [-] index of the layer
 * @returns              [°C] mean of the two faces
 * @range                layer within the assembly
 * @throws               RangeError when the layer does not exist
 * @source               ISO-13788-2012 clause 6.4.2 (memory)
 * @assumes              conductivity constant within the layer, so the profile is a straight line
 */
export function meanLayerTemperature_C(temperatures_C: readonly number[], layer: number): number {
  return (at(temperatures_C, layer) + at(temperatures_C, layer + 1)) / 2;
}

/** A layer whose resistance may depend on its own mean temperature. */
export interface TemperatureDependentLayer {
  resistanceAt(meanTemperature_C: number): number;
}

export interface TemperatureDependentSolution {
  readonly resistances_m2K_W: readonly number[];
  readonly meanTemperatures_C: readonly number[];
  readonly temperatures_C: readonly number[];
  readonly iterations: number;
}

/** [K] largest move of any mean temperature at which the iteration stops: a hundredth of what a table of k resolves. */
const MEAN_TEMPERATURE_TOLERANCE_K = 1e-6;
/** [-] most iterations before the search is called failed; a smooth k(T) needs fewer than ten. */
const GREATEST_ITERATIONS = 200;

/**
 * Resistances of layers at their own mean temperatures, found by repeated substitution with half steps.
 *
 * Start: every layer at the mean of inside and outside. Repeat: resistances -> plane temperatures -> layer
 * means, moving half of the way, until no mean moves more than 1e-6 K.
 *
 * @param layers    [m2·K/W at °C] layers and films from inside to outside
 * @param inside_C  [°C] indoor temperature
 * @param outside_C [°C] outdoor temperature
 * @returns         [m2·K/W, °C, -] resistances, mean temperatures, plane temperatures, iterations used
 * @range           resistance a continuous function of temperature
 * @throws          Error when it does not settle; RangeError when a resistance is out of range
 * @source          OUR-JUDGEMENT fixed-point iteration on ISO-13788-2012 clause 6.4.2 temperatures (computed)
 * @assumes         steady state at the two mean temperatures; conductivity taken at the mean of the layer
 */
export function solveTemperatureDependentResistance(
  layers: readonly TemperatureDependentLayer[],
  inside_C: number,
  outside_C: number,
): TemperatureDependentSolution {
  let means = layers.map(() => (inside_C + outside_C) / 2);
  for (let iterations = 1; iterations <= GREATEST_ITERATIONS; iterations++) {
    const resistances_m2K_W = layers.map((layer, index) => layer.resistanceAt(at(means, index)));
    const temperatures_C = interfaceTemperatures_C(inside_C, outside_C, resistances_m2K_W);
    const wanted = layers.map((_, index) => meanLayerTemperature_C(temperatures_C, index));
    const move = Math.max(...wanted.map((mean, index) => Math.abs(mean - at(means, index))));
    if (move <= MEAN_TEMPERATURE_TOLERANCE_K) {
      return { resistances_m2K_W, meanTemperatures_C: wanted, temperatures_C, iterations };
    }
    means = means.map((mean, index) => (mean + at(wanted, index)) / 2);
  }
  throw new Error(`resistance at mean temperature: not settled after ${GREATEST_ITERATIONS} iterations`);
}

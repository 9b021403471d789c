/**
 * Surface films and air layers by direction of heat flow, for ISO 6946.
 */
import { KELVIN_AT_ZERO_C } from './psychrometrics.ts';
import { at, last, requireNotNegative, requirePositive, requireWithin } from './guards.ts';

export type HeatFlow = 'up' | 'horizontal' | 'down';

/** [m2·K/W] inside surface by direction of heat flow, ISO 6946:2017 table 7 (memory; 0.13 seen). */
const INSIDE_SURFACE: Readonly<Record<HeatFlow, number>> = { up: 0.1, horizontal: 0.13, down: 0.17 };
/** [m2·K/W] outside surface, ISO 6946:2017 table 7 (memory; seen in Scottish guidance). */
export const OUTSIDE_SURFACE_M2K_W = 0.04;

/**
 * Resistance of the inside surface film.
 *
 * @param heatFlow [-] direction of heat flow; up for a roof in winter, horizontal within 30° of level flow
 * @returns        [m2·K/W] surface resistance
 * @range          still indoor air, surfaces of high emissivity
 * @throws         never
 * @source         ISO-6946-2017 table 7 (memory)
 * @assumes        emissivity 0.9
 */
export function insideSurface_m2K_W(heatFlow: HeatFlow): number {
  return INSIDE_SURFACE[heatFlow];
}

/** [m, m2·K/W] unventilated air layers, ISO 6946:2017 table 8 (memory): thickness, up, horizontal, down. */
const AIR_LAYER_TABLE: readonly (Readonly<Record<HeatFlow, number>> & { readonly thickness_m: number })[] = [
  { thickness_m: 0, up: 0, horizontal: 0, down: 0 },
  { thickness_m: 0.005, up: 0.11, horizontal: 0.11, down: 0.11 },
  { thickness_m: 0.007, up: 0.13, horizontal: 0.13, down: 0.13 },
  { thickness_m: 0.01, up: 0.15, horizontal: 0.15, down: 0.15 },
  { thickness_m: 0.015, up: 0.16, horizontal: 0.17, down: 0.17 },
  { thickness_m: 0.025, up: 0.16, horizontal: 0.18, down: 0.19 },
  { thickness_m: 0.05, up: 0.16, horizontal: 0.18, down: 0.21 },
  { thickness_m: 0.1, up: 0.16, horizontal: 0.18, down: 0.22 },
  { thickness_m: 0.3, up: 0.16, horizontal: 0.18, down: 0.23 },
];
/** [m] thickest air layer of the table. */
export const THICKEST_AIR_LAYER_M = last(AIR_LAYER_TABLE).thickness_m;

/**
 * Resistance of an unventilated air layer between faces of high emissivity.
 *
 * @param thickness_m [m] thickness across the heat flow, 0 to 0.3
 * @param heatFlow    [-] direction of heat flow
 * @returns           [m2·K/W] resistance, linear between the rows of the table
 * @range             0 to 0.3 m
 * @throws            RangeError outside the range
 * @source            ISO-6946-2017 table 8 (memory)
 * @assumes           faces parallel, no exchange with indoor or outdoor air
 */
export function unventilatedAirLayer_m2K_W(thickness_m: number, heatFlow: HeatFlow): number {
  requireWithin('thickness_m', thickness_m, 0, THICKEST_AIR_LAYER_M);
  const next = Math.max(
    1,
    AIR_LAYER_TABLE.findIndex((row) => row.thickness_m >= thickness_m),
  );
  const thin = at(AIR_LAYER_TABLE, next - 1);
  const thick = at(AIR_LAYER_TABLE, next);
  const way = (thickness_m - thin.thickness_m) / (thick.thickness_m - thin.thickness_m);
  return thin[heatFlow] + way * (thick[heatFlow] - thin[heatFlow]);
}

/** [W/(m2·K4)] Stefan-Boltzmann constant, CODATA 2018 (memory). */
const STEFAN_BOLTZMANN = 5.670374419e-8;
/** [-] radiation linearized about the mean temperature: h = 4 sigma T^3. */
const RADIATION_FACTOR = 4;
/** [W/(m·K)] conduction of still air in the convection terms of annex D (memory). */
const AIR_CONDUCTION = 0.025;
/** [W/(m2·K)] least convection for a difference of at most 5 K, ISO 6946:2017 annex D table D.1 (memory). */
const CONVECTION_UP = 1.95;
const CONVECTION_HORIZONTAL = 1.25;
/** [W/(m2·K)], [-] downward convection 0.12 d^-0.44, ISO 6946:2017 annex D table D.1 (memory). */
const CONVECTION_DOWN = 0.12;
const CONVECTION_DOWN_EXPONENT = -0.44;

function airConvection_W_m2K(thickness_m: number, heatFlow: HeatFlow): number {
  const still = AIR_CONDUCTION / thickness_m;
  if (heatFlow === 'up') return Math.max(CONVECTION_UP, still);
  if (heatFlow === 'horizontal') return Math.max(CONVECTION_HORIZONTAL, still);
  return Math.max(CONVECTION_DOWN * Math.pow(thickness_m, CONVECTION_DOWN_EXPONENT), still);
}

/**
 * Resistance of an unventilated air layer between faces of stated emissivity.
 *
 * Rg = 1 / (ha + hr); hr = 4 sigma Tm^3 / (1/e1 + 1/e2 - 1)
 *
 * @param thickness_m       [m] thickness, above 0 to 0.3
 * @param heatFlow          [-] direction of heat flow
 * @param emissivities      [-] of the two faces (e1, e2), above 0 to 1
 * @param meanTemperature_C [°C] mean temperature of the layer (Tm in kelvin); 10 °C unless said otherwise
 * @returns                 [m2·K/W] resistance
 * @range                   temperature difference across the layer at most 5 K
 * @throws                  RangeError outside the range
 * @source                  ISO-6946-2017 annex D.2 (memory)
 * @assumes                 dust and condensation have not dulled a bright face
 */
export function airLayerByEmissivity_m2K_W(
  thickness_m: number,
  heatFlow: HeatFlow,
  emissivities: readonly [number, number],
  meanTemperature_C = 10,
): number {
  requirePositive('thickness_m', thickness_m);
  requireWithin('thickness_m', thickness_m, 0, THICKEST_AIR_LAYER_M);
  for (const emissivity of emissivities) {
    requirePositive('emissivity', emissivity);
    requireWithin('emissivity', emissivity, 0, 1);
  }
  const T = meanTemperature_C + KELVIN_AT_ZERO_C;
  requirePositive('meanTemperature in kelvin', T);
  const blackBody = RADIATION_FACTOR * STEFAN_BOLTZMANN * T * T * T;
  const radiation = blackBody / (1 / emissivities[0] + 1 / emissivities[1] - 1);
  return 1 / (airConvection_W_m2K(thickness_m, heatFlow) + radiation);
}

/** [mm2 per m or per m2] openings up to which an air layer counts as unventilated, ISO 6946:2017 clause 6.9.2 (memory). */
const UNVENTILATED_MOST_MM2 = 500;
/** [mm2 per m or per m2] openings from which an air layer is well ventilated, ISO 6946:2017 clause 6.9.4 (memory). */
const WELL_VENTILATED_LEAST_MM2 = 1500;

export type AirLayerVentilation = 'unventilated' | 'slightly-ventilated' | 'well-ventilated';

/**
 * How well an air layer is ventilated by its openings.
 *
 * @param openings_mm2 [mm2] per meter of length for steep layers, per square meter of surface for level ones
 * @returns            [-] unventilated, slightly ventilated or well ventilated
 * @range              0 or more
 * @throws             RangeError when negative or not finite
 * @source             ISO-6946-2017 clause 6.9 (memory)
 * @assumes            openings spread so that air moves through the whole layer
 */
export function airLayerVentilation(openings_mm2: number): AirLayerVentilation {
  requireNotNegative('openings_mm2', openings_mm2);
  if (openings_mm2 <= UNVENTILATED_MOST_MM2) return 'unventilated';
  return openings_mm2 >= WELL_VENTILATED_LEAST_MM2 ? 'well-ventilated' : 'slightly-ventilated';
}

/**
 * Total resistance of an element with an air layer of any ventilation.
 *
 * R = ((1500 - A) / 1000) Rclosed + ((A - 500) / 1000) Ropen between the limits
 *
 * @param closed_m2K_W [m2·K/W] total with the air layer as unventilated
 * @param open_m2K_W   [m2·K/W] total with the layer and all outside it dropped and the outside film equal to
 *                     the inside film of the same direction
 * @param openings_mm2 [mm2] as airLayerVentilation (A)
 * @returns            [m2·K/W] total resistance
 * @range              0 or more
 * @throws             RangeError when a value is negative or not finite
 * @source             ISO-6946-2017 clause 6.9.3 (memory; the 1996 edition took half of the closed layer)
 * @assumes            as airLayerVentilation
 */
export function resistanceWithAirLayer_m2K_W(
  closed_m2K_W: number,
  open_m2K_W: number,
  openings_mm2: number,
): number {
  requireNotNegative('closed_m2K_W', closed_m2K_W);
  requireNotNegative('open_m2K_W', open_m2K_W);
  const kind = airLayerVentilation(openings_mm2);
  if (kind === 'unventilated') return closed_m2K_W;
  if (kind === 'well-ventilated') return open_m2K_W;
  const openShare =
    (openings_mm2 - UNVENTILATED_MOST_MM2) / (WELL_VENTILATED_LEAST_MM2 - UNVENTILATED_MOST_MM2);
  return (1 - openShare) * closed_m2K_W + openShare * open_m2K_W;
}

/**
 * Resistances of an element behind a well-ventilated air layer, inside to outside.
 *
 * @param heatFlow          [-] direction of heat flow
 * @param resistances_m2K_W [m2·K/W] layers inside to outside, without films
 * @param ventilatedLayer   [-] index of the well-ventilated air layer
 * @returns                 [m2·K/W] inside film, layers up to the air layer, still film in place of the outside
 * @range                   openings of 1500 mm2 per m or m2 and more
 * @throws                  RangeError when the layer does not exist
 * @source                  ISO-6946-2017 clause 6.9.4 (memory)
 * @assumes                 the covering outside the gap gives no thermal resistance
 */
export function resistancesBehindVentilation_m2K_W(
  heatFlow: HeatFlow,
  resistances_m2K_W: readonly number[],
  ventilatedLayer: number,
): number[] {
  at(resistances_m2K_W, ventilatedLayer);
  const film = insideSurface_m2K_W(heatFlow);
  return [film, ...resistances_m2K_W.slice(0, ventilatedLayer), film];
}

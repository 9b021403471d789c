/**
 * Thermal transmittance by ISO 6946: upper and lower limit, their mean, the error of the method,
 * corrections for mechanical fasteners and for air voids.
 */
import { at, requireNotNegative, requirePositive, requireWithin, sum } from './guards.ts';
import { type HeatPath, parallelPath_m2K_W, requireSharesSumToOne } from './thermal.ts';

/**
 * A thermal layer: its heat paths side by side, shares together 1. A homogeneous layer is one path of
 * share 1. Paths of different layers are taken as crossing (every combination), not as aligned.
 */
export interface ThermalLayer {
  readonly paths: readonly HeatPath[];
}

/**
 * A homogeneous layer as a thermal layer.
 *
 * @param resistance_m2K_W [m2·K/W] resistance, 0 or more
 * @returns                [-] layer with one path of share 1
 * @range                  0 or more
 * @throws                 RangeError when the resistance is negative or not finite
 * @source                 ISO-6946-2017 clause 6.7.1 (memory)
 * @assumes                homogeneous in its plane
 */
export function homogeneousLayer(resistance_m2K_W: number): ThermalLayer {
  requireNotNegative('resistance_m2K_W', resistance_m2K_W);
  return { paths: [{ share: 1, resistance_m2K_W }] };
}

export interface Element {
  readonly insideSurface_m2K_W: number;
  readonly outsideSurface_m2K_W: number;
  /** Inside to outside. */
  readonly layers: readonly ThermalLayer[];
}

export interface ElementResistance {
  readonly upperLimit_m2K_W: number;
  readonly lowerLimit_m2K_W: number;
  /** Mean of the two limits. */
  readonly resistance_m2K_W: number;
  readonly transmittance_W_m2K: number;
  /** Greatest relative error of the mean, (upper - lower) / (2 mean). */
  readonly error_pct: number;
  /** False where upper / lower is above 1.5: the element then needs a numerical calculation. */
  readonly methodApplies: boolean;
}

/** [-] greatest upper / lower at which the combined method may be used, ISO 6946:2017 clause 6.7.2 (memory). */
const GREATEST_LIMIT_RATIO = 1.5;
/** [-] most combinations of paths that are summed; above it the input is refused (our judgement: 0.1 s of work). */
export const GREATEST_COMBINATIONS = 65536;
/** [%] percent of one. */
const PERCENT = 100;

function checkLayer(layer: ThermalLayer): void {
  if (layer.paths.length === 0) throw new RangeError('layer: 0 paths is below 1');
  requireSharesSumToOne(layer.paths.map((path) => path.share));
  for (const path of layer.paths) {
    if (layer.paths.length === 1) requireNotNegative('resistance_m2K_W', path.resistance_m2K_W);
    else requirePositive('resistance_m2K_W', path.resistance_m2K_W);
  }
}

function everyPath(element: Element): HeatPath[] {
  const combinations = element.layers.reduce((count, layer) => count * layer.paths.length, 1);
  if (combinations > GREATEST_COMBINATIONS) {
    throw new RangeError(`combinations of paths: ${combinations} is above ${GREATEST_COMBINATIONS}`);
  }
  let paths: HeatPath[] = [
    { share: 1, resistance_m2K_W: element.insideSurface_m2K_W + element.outsideSurface_m2K_W },
  ];
  for (const layer of element.layers) {
    paths = paths.flatMap((before) =>
      layer.paths.map((path) => ({
        share: before.share * path.share,
        resistance_m2K_W: before.resistance_m2K_W + path.resistance_m2K_W,
      })),
    );
  }
  return paths;
}

/** Isothermal planes: each layer by itself as its paths side by side. */
function layerIsothermal_m2K_W(layer: ThermalLayer): number {
  return layer.paths.length === 1 ? at(layer.paths, 0).resistance_m2K_W : parallelPath_m2K_W(layer.paths);
}

/**
 * Resistance of an element with layers of side-by-side parts, by the combined method.
 *
 * upper: 1/R' = sum(f / R) over every path from air to air; lower: R" = Rsi + sum(Rj) + Rse with
 * 1/Rj = sum(f / R) per layer; R = (R' + R") / 2; e = (R' - R") / (2 R)
 *
 * @param element [m2·K/W] films and layers, inside to outside
 * @returns       [m2·K/W, W/(m2·K), %] both limits, their mean, transmittance, error, whether the method applies
 * @range         upper / lower at most 1.5; no metal across the insulation
 * @throws        RangeError when shares do not add to 1, a resistance is out of range or the total is 0
 * @source        ISO-6946-2017 clauses 6.7.2.2 to 6.7.2.5 (memory)
 * @assumes       parts of different layers cross each other: shares multiply
 */
export function elementResistance(element: Element): ElementResistance {
  requireNotNegative('insideSurface_m2K_W', element.insideSurface_m2K_W);
  requireNotNegative('outsideSurface_m2K_W', element.outsideSurface_m2K_W);
  element.layers.forEach(checkLayer);
  const upperLimit_m2K_W =
    1 /
    sum(
      everyPath(element).map((path) => {
        requirePositive('total resistance_m2K_W', path.resistance_m2K_W);
        return path.share / path.resistance_m2K_W;
      }),
    );
  const lowerLimit_m2K_W =
    element.insideSurface_m2K_W +
    sum(element.layers.map(layerIsothermal_m2K_W)) +
    element.outsideSurface_m2K_W;
  const resistance_m2K_W = (upperLimit_m2K_W + lowerLimit_m2K_W) / 2;
  return {
    upperLimit_m2K_W,
    lowerLimit_m2K_W,
    resistance_m2K_W,
    transmittance_W_m2K: 1 / resistance_m2K_W,
    error_pct: (PERCENT * (upperLimit_m2K_W - lowerLimit_m2K_W)) / (2 * resistance_m2K_W),
    methodApplies: upperLimit_m2K_W / lowerLimit_m2K_W <= GREATEST_LIMIT_RATIO,
  };
}

/** The path of a layer that covers most of the area: what is left when bridging is left out. */
function mainPath(layer: ThermalLayer): HeatPath {
  return layer.paths.reduce((main, path) => (path.share > main.share ? path : main));
}

/**
 * Total resistance of an element with every bridging part left out.
 *
 * @param element [m2·K/W] films and layers, inside to outside
 * @returns       [m2·K/W] resistance along the largest part of each layer (RT,h)
 * @range         as elementResistance
 * @throws        RangeError when a share or resistance is out of range
 * @source        ISO-6946-2017 annex F, definition of RT,h (memory)
 * @assumes       the part with the largest share is the unbridged one
 */
export function unbridgedResistance_m2K_W(element: Element): number {
  element.layers.forEach(checkLayer);
  return (
    element.insideSurface_m2K_W +
    sum(element.layers.map((layer) => mainPath(layer).resistance_m2K_W)) +
    element.outsideSurface_m2K_W
  );
}

/**
 * Resistance of the penetrated layer with its bridging parts left out.
 *
 * @param layer [-, m2·K/W] the layer
 * @returns     [m2·K/W] resistance of its largest part (R1)
 * @range       as elementResistance
 * @throws      RangeError when a share or resistance is out of range
 * @source      ISO-6946-2017 annex F, definition of R1 (memory)
 * @assumes     the part with the largest share is the unbridged one
 */
export function unbridgedLayer_m2K_W(layer: ThermalLayer): number {
  checkLayer(layer);
  return mainPath(layer).resistance_m2K_W;
}

/** [-] factor for a fastener through the whole insulation layer, ISO 6946:2017 annex F (memory). */
const FASTENER_FACTOR = 0.8;

/** [W/(m·K)] fasteners below it need no correction, ISO 6946:2017 annex F.3 (memory). */
const LEAST_FASTENER_CONDUCTIVITY = 1;

export interface Fastener {
  readonly crossSection_m2: number;
  readonly conductivity_W_mK: number;
  /** Length inside the insulation layer (d1); shorter than the layer when the head is recessed. */
  readonly lengthInLayer_m: number;
  /** Thickness of the insulation layer (d0). */
  readonly layerThickness_m: number;
  /** Resistance of the insulation layer (R1). */
  readonly layerResistance_m2K_W: number;
  /** Total resistance of the element without bridging (RT,h). */
  readonly totalResistance_m2K_W: number;
}

/**
 * Point transmittance of one mechanical fastener through an insulation layer.
 *
 * chi = alpha (lambda A / d0) (R1 / RT,h)^2; alpha = 0.8, or 0.8 d1/d0 for a recessed head
 *
 * @param fastener [m2, W/(m·K), m, m2·K/W] section (A), conductivity (lambda), length in the layer (d1),
 *                 layer thickness (d0) and resistance (R1), total resistance without bridging (RT,h)
 * @returns        [W/K] heat flow per fastener and kelvin
 * @range          fasteners of lambda >= 1 W/(m·K); not where both ends touch metal sheet
 * @throws         RangeError when a value is not above 0 or R1 is above RT,h
 * @source         ISO-6946-2017 annex F.3 (memory)
 * @assumes        an upper estimate for screws that end in wood, which adds a spreading resistance
 */
export function fastenerPointTransmittance_W_K(fastener: Fastener): number {
  requirePositive('crossSection_m2', fastener.crossSection_m2);
  requirePositive('conductivity_W_mK', fastener.conductivity_W_mK);
  requirePositive('lengthInLayer_m', fastener.lengthInLayer_m);
  requirePositive('layerThickness_m', fastener.layerThickness_m);
  requirePositive('totalResistance_m2K_W', fastener.totalResistance_m2K_W);
  requireWithin('layerResistance_m2K_W', fastener.layerResistance_m2K_W, 0, fastener.totalResistance_m2K_W);
  const alpha = FASTENER_FACTOR * Math.min(1, fastener.lengthInLayer_m / fastener.layerThickness_m);
  return (
    ((alpha * fastener.conductivity_W_mK * fastener.crossSection_m2) / fastener.layerThickness_m) *
    (fastener.layerResistance_m2K_W / fastener.totalResistance_m2K_W) ** 2
  );
}

/**
 * Increase of transmittance by mechanical fasteners.
 *
 * dUf = n chi
 *
 * @param fastener    [see fastenerPointTransmittance_W_K] one fastener
 * @param perArea_1_m2 [1/m2] fasteners per area (n), 0 or more
 * @returns           [W/(m2·K)] correction to add to the transmittance
 * @range             as fastenerPointTransmittance_W_K
 * @throws            RangeError when a value is out of range
 * @source            ISO-6946-2017 annex F.3 (memory)
 * @assumes           the standard lets corrections below 3 % of U be left out; here they are kept
 */
export function fastenerCorrection_W_m2K(fastener: Fastener, perArea_1_m2: number): number {
  requireNotNegative('perArea_1_m2', perArea_1_m2);
  if (fastener.conductivity_W_mK < LEAST_FASTENER_CONDUCTIVITY) return 0;
  return perArea_1_m2 * fastenerPointTransmittance_W_K(fastener);
}

/** Level of air voids in the insulation: 0 none across it, 1 gaps without circulation, 2 with circulation. */
export type AirVoidLevel = 0 | 1 | 2;
/** [W/(m2·K)] correction by level, ISO 6946:2017 annex F.2 table F.1 (memory). */
const AIR_VOID_CORRECTION: Readonly<Record<AirVoidLevel, number>> = { 0: 0, 1: 0.01, 2: 0.04 };

/**
 * Increase of transmittance by air voids in the insulation.
 *
 * dUg = dU" (R1 / RT,h)^2
 *
 * @param level                 [-] 0, 1 or 2: two staggered layers are level 0
 * @param layerResistance_m2K_W [m2·K/W] resistance of the layer with the gaps (R1)
 * @param totalResistance_m2K_W [m2·K/W] total resistance without bridging (RT,h)
 * @returns                     [W/(m2·K)] correction to add to the transmittance
 * @range                       R1 at most RT,h
 * @throws                      RangeError when a value is out of range
 * @source                      ISO-6946-2017 annex F.2 (memory)
 * @assumes                     level judged from the drawing, not measured
 */
export function airVoidCorrection_W_m2K(
  level: AirVoidLevel,
  layerResistance_m2K_W: number,
  totalResistance_m2K_W: number,
): number {
  requirePositive('totalResistance_m2K_W', totalResistance_m2K_W);
  requireWithin('layerResistance_m2K_W', layerResistance_m2K_W, 0, totalResistance_m2K_W);
  return AIR_VOID_CORRECTION[level] * (layerResistance_m2K_W / totalResistance_m2K_W) ** 2;
}

/**
 * Transmittance of insulation cut to a fall, rectangular area from zero to full thickness.
 *
 * U = ln(1 + R2 / R0) / R2
 *
 * @param rest_m2K_W    [m2·K/W] resistance of everything else with both films (R0), > 0
 * @param thickest_m2K_W [m2·K/W] greatest resistance of the tapered layer (R2), > 0
 * @returns             [W/(m2·K)] mean transmittance of the area
 * @range               slope of the taper at most 5 %
 * @throws              RangeError when a value is not above 0
 * @source              ISO-6946-2017 annex E.2 (memory)
 * @assumes             heat flow across the area, none along the taper
 */
export function taperedRectangleTransmittance_W_m2K(rest_m2K_W: number, thickest_m2K_W: number): number {
  requirePositive('rest_m2K_W', rest_m2K_W);
  requirePositive('thickest_m2K_W', thickest_m2K_W);
  return Math.log(1 + thickest_m2K_W / rest_m2K_W) / thickest_m2K_W;
}

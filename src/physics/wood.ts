/**
 * Wood: conductivity by density and moisture, and the water that a rise of moisture content takes.
 */
import { requireNotNegative, requirePositive, requireWithin } from './guards.ts';

/** [W/(m·K)] Wood Handbook eq. 4-15 for specific gravity above 0.3, moisture content below 25 % (seen). */
const CONDUCTIVITY_BASE = 0.01864;
const CONDUCTIVITY_PER_GRAVITY = 0.1941;
const CONDUCTIVITY_PER_GRAVITY_AND_PERCENT = 0.004064;
/** [-], [%] range of the equation (seen). */
const GRAVITY_RANGE = [0.3, 1] as const;
const MOISTURE_RANGE_PCT = [0, 25] as const;
/** [-] percent of one. */
const PERCENT = 100;

/**
 * Thermal conductivity of wood across the grain.
 *
 * k = G (0.1941 + 0.004064 M) + 0.01864
 *
 * @param specificGravity     [-] oven-dry mass over volume at the moisture content (G), 0.3 to 1
 * @param moistureContent_pct [%] moisture content by dry mass (M), 0 to 25
 * @returns                   [W/(m·K)] conductivity
 * @range                     near 24 °C
 * @throws                    RangeError outside the range
 * @source                    FPL-WOOD-HANDBOOK eq. 4-15 (seen)
 * @assumes                   across the grain; along it about twice
 */
export function woodConductivity_W_mK(specificGravity: number, moistureContent_pct: number): number {
  requireWithin('specificGravity', specificGravity, GRAVITY_RANGE[0], GRAVITY_RANGE[1]);
  requireWithin('moistureContent_pct', moistureContent_pct, MOISTURE_RANGE_PCT[0], MOISTURE_RANGE_PCT[1]);
  return (
    specificGravity *
      (CONDUCTIVITY_PER_GRAVITY + CONDUCTIVITY_PER_GRAVITY_AND_PERCENT * moistureContent_pct) +
    CONDUCTIVITY_BASE
  );
}

/**
 * Water that raises the moisture content of a wood layer.
 *
 * m = d rho (M2 - M1) / 100
 *
 * @param thickness_m    [m] thickness (d), > 0
 * @param density_kg_m3  [kg/m3] dry density (rho), > 0
 * @param from_pct       [%] moisture content at the start (M1), 0 or more
 * @param to_pct         [%] moisture content at the end (M2)
 * @returns              [kg/m2] water, negative when it dries
 * @range                any thickness
 * @throws               RangeError when an input is out of range
 * @source               FPL-WOOD-HANDBOOK definition of moisture content (memory)
 * @assumes              spread evenly over the thickness
 */
export function storedWater_kg_m2(
  thickness_m: number,
  density_kg_m3: number,
  from_pct: number,
  to_pct: number,
): number {
  requirePositive('thickness_m', thickness_m);
  requirePositive('density_kg_m3', density_kg_m3);
  requireNotNegative('from_pct', from_pct);
  requireNotNegative('to_pct', to_pct);
  return (thickness_m * density_kg_m3 * (to_pct - from_pct)) / PERCENT;
}

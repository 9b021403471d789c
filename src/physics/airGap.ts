/**
 * The ventilated gap under a roof covering: what it carries away, as a permeance, and how fast air rises in it.
 */
import { requireNotNegative, requirePositive, requireWithin } from './guards.ts';
import { GAS_CONSTANT_VAPOR, KELVIN_AT_ZERO_C } from './psychrometrics.ts';

/** [s] one hour. */
const SECONDS_PER_HOUR = 3600;
/** [ng] one kilogram. */
const NANOGRAMS_PER_KILOGRAM = 1e12;
/** [°C] air temperature when none is given: the reference value of the permeance table (our judgement). */
const GAP_TEMPERATURE_C = 20;
/** [m/s2] standard gravity, exact (3rd CGPM). */
export const GRAVITY_M_S2 = 9.80665;
/** [kg/m3] air near 5 °C at sea level; [Pa·s] its dynamic viscosity (handbook values, memory). */
const AIR_DENSITY_KG_M3 = 1.25;
const AIR_VISCOSITY_PAS = 1.75e-5;
/** [-] laminar flow between parallel plates: dp = 12 mu L v / h2 (textbook, memory). */
const PLATE_FACTOR = 12;
/** [°] a half turn, for radians. */
const HALF_TURN_DEG = 180;
/** [°] steepest roof the estimate is for. */
const VERTICAL_DEG = 90;

/**
 * Moving air in a gap as a vapor permeance to the outdoors.
 *
 * P = ACH h / (3600 Rv T)
 *
 * @param airChanges_1_h [1/h] air changes of the gap (ACH), 0 or more
 * @param height_m       [m] clear height of the gap (h), > 0
 * @param temperature_C  [°C] air temperature (T in kelvin); 20 °C unless said otherwise
 * @returns              [ng/(Pa·s·m2)] permeance per area of roof
 * @range                air well mixed over the height
 * @throws               RangeError when an input is out of range
 * @source               ISO-13788-2012 annex E vapor concentration (memory), mass balance of the gap (computed)
 * @assumes              the gap exchanges with outdoor air alone
 */
export function equivalentPermeance_ng(
  airChanges_1_h: number,
  height_m: number,
  temperature_C = GAP_TEMPERATURE_C,
): number {
  requireNotNegative('airChanges_1_h', airChanges_1_h);
  requirePositive('height_m', height_m);
  requirePositive('temperature in kelvin', temperature_C + KELVIN_AT_ZERO_C);
  const flow_m_s = (airChanges_1_h * height_m) / SECONDS_PER_HOUR;
  return (NANOGRAMS_PER_KILOGRAM * flow_m_s) / (GAS_CONSTANT_VAPOR * (temperature_C + KELVIN_AT_ZERO_C));
}

export interface Gap {
  readonly height_m: number;
  /** Along the slope from the lower to the upper opening. */
  readonly length_m: number;
  readonly angle_deg: number;
  /** Sum of the local losses: openings, screens, bends. */
  readonly lossCoefficient: number;
}

export interface GapFlow {
  readonly pressure_Pa: number;
  readonly velocity_m_s: number;
  readonly airChanges_1_h: number;
}

/**
 * Air that rises in a gap because it is warmer than outdoors.
 *
 * dp = rho g L sin(a) dT / T = 12 mu L v / h2 + zeta rho v2 / 2; ACH = 3600 v / L
 *
 * @param gap         [m, m, °, -] clear height (h), length along the slope (L), slope (a), local losses (zeta)
 * @param excess_K    [K] how much warmer the air in the gap is (dT), 0 or more
 * @param outdoor_C   [°C] outdoor temperature (T in kelvin)
 * @returns           [Pa, m/s, 1/h] driving pressure, mean velocity (v), air changes
 * @range             laminar flow, no wind: a low estimate
 * @throws            RangeError when an input is out of range
 * @source            OUR-JUDGEMENT estimate from textbook parallel-plate flow with stated local losses (computed)
 * @assumes           gap straight and clear from eave to ridge; rho 1.25 kg/m3, mu 1.75e-5 Pa·s
 */
export function buoyancyFlow(gap: Gap, excess_K: number, outdoor_C: number): GapFlow {
  requirePositive('height_m', gap.height_m);
  requirePositive('length_m', gap.length_m);
  requireWithin('angle_deg', gap.angle_deg, 0, VERTICAL_DEG);
  requirePositive('lossCoefficient', gap.lossCoefficient);
  requireNotNegative('excess_K', excess_K);
  const T = outdoor_C + KELVIN_AT_ZERO_C;
  requirePositive('outdoor temperature in kelvin', T);
  const rise_m = gap.length_m * Math.sin((gap.angle_deg * Math.PI) / HALF_TURN_DEG);
  const pressure_Pa = (AIR_DENSITY_KG_M3 * GRAVITY_M_S2 * rise_m * excess_K) / T;
  const local = (gap.lossCoefficient * AIR_DENSITY_KG_M3) / 2;
  const friction = (PLATE_FACTOR * AIR_VISCOSITY_PAS * gap.length_m) / (gap.height_m * gap.height_m);
  // Root of local v2 + friction v - dp = 0 in the form that keeps its digits when dp is small.
  const velocity_m_s =
    (2 * pressure_Pa) / (friction + Math.sqrt(friction * friction + 2 * 2 * local * pressure_Pa));
  return { pressure_Pa, velocity_m_s, airChanges_1_h: (SECONDS_PER_HOUR * velocity_m_s) / gap.length_m };
}

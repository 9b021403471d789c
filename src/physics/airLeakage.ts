/**
 * Water carried to a cold surface by leaking air, beside what diffusion carries.
 */
import { GRAVITY_M_S2 } from './airGap.ts';
import { requireNotNegative, requirePositive, requireWithin } from './guards.ts';
import {
  KELVIN_AT_ZERO_C,
  STANDARD_PRESSURE_PA,
  type SaturationMethod,
  humidityRatio_kg_kg,
  saturationVaporPressure_Pa,
  vaporPressure_Pa,
} from './psychrometrics.ts';

/** [-] discharge coefficient of a sharp-edged hole (textbook, memory). */
const DISCHARGE = 0.6;
/** [kg/m3] air near 20 °C at sea level (handbook value, memory). */
const AIR_DENSITY_KG_M3 = 1.2;
/** [s] one day. */
const SECONDS_PER_DAY = 86400;
/** [kg] one nanogram. */
const KILOGRAMS_PER_NANOGRAM = 1e-12;
const FORMULA: SaturationMethod = 'ashrae';

/**
 * Air through a hole.
 *
 * Q = Cd A sqrt(2 dp / rho)
 *
 * @param area_m2     [m2] area of the hole (A), 0 or more
 * @param pressure_Pa [Pa] pressure difference (dp), 0 or more
 * @returns           [m3/s] flow
 * @range             sharp-edged hole, turbulent
 * @throws            RangeError when a value is negative or not finite
 * @source            OUR-JUDGEMENT orifice equation of the textbooks, Cd 0.6, rho 1.2 kg/m3 (computed)
 * @assumes           one hole, no resistance of layers behind it
 */
export function orificeFlow_m3_s(area_m2: number, pressure_Pa: number): number {
  requireNotNegative('area_m2', area_m2);
  requireNotNegative('pressure_Pa', pressure_Pa);
  return DISCHARGE * area_m2 * Math.sqrt((2 * pressure_Pa) / AIR_DENSITY_KG_M3);
}

export interface LeakingAir {
  readonly indoorTemperature_C: number;
  readonly indoorRelativeHumidity_pct: number;
  readonly surfaceTemperature_C: number;
}

/**
 * Water that leaking indoor air leaves on a cold surface.
 *
 * m = Q rho (Wi - Wsat(Ts)) t, 0 where the surface is above the dew point
 *
 * @param flow_m3_s [m3/s] air that reaches the surface (Q), 0 or more
 * @param air       [°C, %, °C] indoor air (Wi) and surface (Ts)
 * @param days      [d] duration (t), > 0
 * @returns         [kg] water
 * @range           sea level
 * @throws          RangeError when an input is out of range
 * @source          ASHRAE-HOF-2017-CH1 humidity ratio eq. 20 (memory), mass balance (computed)
 * @assumes         all air cools to the surface, nothing evaporates again: an upper estimate
 */
export function leakageWater_kg(flow_m3_s: number, air: LeakingAir, days: number): number {
  requireNotNegative('flow_m3_s', flow_m3_s);
  requirePositive('days', days);
  const indoor = humidityRatio_kg_kg(
    vaporPressure_Pa(air.indoorTemperature_C, air.indoorRelativeHumidity_pct, FORMULA),
  );
  const surface = humidityRatio_kg_kg(saturationVaporPressure_Pa(air.surfaceTemperature_C, FORMULA));
  return flow_m3_s * AIR_DENSITY_KG_M3 * Math.max(0, indoor - surface) * days * SECONDS_PER_DAY;
}

/**
 * Water that diffuses through a layer onto a cold surface.
 *
 * m = P A dp t
 *
 * @param permeance_ng [ng/(Pa·s·m2)] permeance of the layer (P), 0 or more
 * @param area_m2      [m2] area (A), 0 or more
 * @param pressure_Pa  [Pa] vapor pressure difference (dp), 0 or more
 * @param days         [d] duration (t), > 0
 * @returns            [kg] water
 * @range              any
 * @throws             RangeError when a value is out of range
 * @source             ASTM-E96 definition of permeance (memory)
 * @assumes            steady pressures
 */
export function diffusionWater_kg(
  permeance_ng: number,
  area_m2: number,
  pressure_Pa: number,
  days: number,
): number {
  requireNotNegative('permeance_ng', permeance_ng);
  requireNotNegative('area_m2', area_m2);
  requireNotNegative('pressure_Pa', pressure_Pa);
  requirePositive('days', days);
  return permeance_ng * KILOGRAMS_PER_NANOGRAM * area_m2 * pressure_Pa * days * SECONDS_PER_DAY;
}

/** [J/(kg·K)] gas constant of dry air, ASHRAE 2017 ch. 1 (memory). */
const GAS_CONSTANT_AIR = 287.042;
/** [°C] temperatures between which the stack estimate is meant, our judgement. */
const STACK_RANGE_C = [-60, 60] as const;

/**
 * Stack pressure at a height above the neutral plane.
 *
 * dp = (p / Ra) g dh (1 / To - 1 / Ti), outward above the neutral plane when positive
 *
 * @param height_m  [m] height above the neutral plane (dh)
 * @param indoor_C  [°C] indoor temperature (Ti in kelvin)
 * @param outdoor_C [°C] outdoor temperature (To in kelvin)
 * @returns         [Pa] pressure difference, indoors less outdoors
 * @range           -60 to 60 °C, sea level
 * @throws          RangeError outside the range
 * @source          ASHRAE-HOF-2017-CH1 ideal gas relation of dry air (memory), hydrostatics (computed)
 * @assumes         no wind, no fans, still columns of air
 */
export function stackPressure_Pa(height_m: number, indoor_C: number, outdoor_C: number): number {
  requireNotNegative('height_m', height_m);
  requireWithin('indoor_C', indoor_C, STACK_RANGE_C[0], STACK_RANGE_C[1]);
  requireWithin('outdoor_C', outdoor_C, STACK_RANGE_C[0], STACK_RANGE_C[1]);
  const difference = 1 / (outdoor_C + KELVIN_AT_ZERO_C) - 1 / (indoor_C + KELVIN_AT_ZERO_C);
  return (STANDARD_PRESSURE_PA / GAS_CONSTANT_AIR) * GRAVITY_M_S2 * height_m * difference;
}

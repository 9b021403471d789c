/**
 * Mold and condensation at an inside surface by ISO 13788 clause 5.
 */
import { requireNotNegative, requirePositive, requireWithin } from './guards.ts';
import { dewPoint_C } from './psychrometrics.ts';

/** [m2·K/W] inside surface for checks of mold at opaque elements, ISO 13788:2012 clause 4.4 (memory). */
export const MOLD_SURFACE_M2K_W = 0.25;
/** [-] greatest relative humidity at the surface: mold 0.8, condensation 1, ISO 13788:2012 clause 5 (memory). */
const SURFACE_HUMIDITY = { mold: 0.8, condensation: 1 } as const;
export type SurfaceCriterion = keyof typeof SURFACE_HUMIDITY;

/**
 * Lowest surface temperature that keeps an inside surface free of mold or of condensation.
 *
 * psat(tsi,min) = pi / 0.8 (mold) or pi (condensation)
 *
 * @param vaporPressure_Pa [Pa] indoor vapor pressure (pi), > 0
 * @param criterion        [-] mold or condensation
 * @returns                [°C] lowest surface temperature
 * @range                  as dewPoint_C
 * @throws                 RangeError outside the range
 * @source                 ISO-13788-2012 clause 5.3 (memory)
 * @assumes                monthly means
 */
export function lowestSurfaceTemperature_C(vaporPressure_Pa: number, criterion: SurfaceCriterion): number {
  return dewPoint_C(vaporPressure_Pa / SURFACE_HUMIDITY[criterion], 'iso13788');
}

/**
 * Temperature factor that a surface needs.
 *
 * fRsi,min = (tsi,min - te) / (ti - te)
 *
 * @param surface_C [°C] lowest surface temperature (tsi,min)
 * @param indoor_C  [°C] indoor temperature (ti), above outdoors
 * @param outdoor_C [°C] outdoor temperature (te)
 * @returns         [-] factor; 0 when outdoors is warm enough, above 1 when no construction can meet it
 * @range           indoors warmer than outdoors
 * @throws          RangeError when indoors is not warmer than outdoors
 * @source          ISO-13788-2012 clause 5.3 (memory)
 * @assumes         steady state
 */
export function requiredTemperatureFactor(surface_C: number, indoor_C: number, outdoor_C: number): number {
  requirePositive('indoor less outdoor temperature', indoor_C - outdoor_C);
  return Math.max(0, (surface_C - outdoor_C) / (indoor_C - outdoor_C));
}

/**
 * Temperature factor of a plane element.
 *
 * fRsi = 1 - U Rsi
 *
 * @param transmittance_W_m2K [W/(m2·K)] transmittance with this surface resistance (U), 0 or more
 * @param surface_m2K_W       [m2·K/W] surface resistance (Rsi); 0.25 unless said otherwise
 * @returns                   [-] factor from 0 to 1
 * @range                     away from thermal bridges
 * @throws                    RangeError when U times Rsi is above 1
 * @source                    ISO-13788-2012 clause 5.2 (memory)
 * @assumes                   one-dimensional heat flow
 */
export function temperatureFactor(transmittance_W_m2K: number, surface_m2K_W = MOLD_SURFACE_M2K_W): number {
  requireNotNegative('transmittance_W_m2K', transmittance_W_m2K);
  requirePositive('surface_m2K_W', surface_m2K_W);
  requireWithin('U times Rsi', transmittance_W_m2K * surface_m2K_W, 0, 1);
  return 1 - transmittance_W_m2K * surface_m2K_W;
}

/**
 * Moist air: saturation pressure, dew point, relative humidity, humidity ratio.
 *
 * Two formulas, never mixed inside one calculation: `iso13788` for the monthly condensation method
 * (so that results match the standard's own numbers), `ashrae` for dew points shown to people.
 */
import { requireNotNegative, requirePositive, requireWithin } from './guards.ts';

export type SaturationMethod = 'iso13788' | 'ashrae';
export const SATURATION_METHODS = ['iso13788', 'ashrae'] as const;

/** [K] 0 °C on the kelvin scale, exact (SI definition). */
export const KELVIN_AT_ZERO_C = 273.15;
/** [-] percent of one. */
const PERCENT = 100;
/** [Pa] standard atmosphere at sea level, exact by definition (ASHRAE 2017 ch. 1 table 1, seen). */
export const STANDARD_PRESSURE_PA = 101325;
/** [J/(kg·K)] gas constant of water vapor (EN ISO standards round to 462; ASHRAE: 461.5; memory). */
export const GAS_CONSTANT_VAPOR = 461.5;
/** [-] ratio of molar masses, water to dry air (ASHRAE 2017 ch. 1 eq. 20; older editions 0.62198; memory). */
export const MOLAR_MASS_RATIO = 0.621945;

/**
 * [°C] where each formula is used here. Hyland-Wexler: -100 to 200 (ASHRAE 2017 ch. 1 eqs 5 and 6, memory).
 * ISO 13788 states no limits; -60 to 80 is our judgement: it spans roof surfaces, and outside it the
 * formula drifts by more than 3 % from IAPWS.
 */
export const SATURATION_RANGE_C: Readonly<Record<SaturationMethod, readonly [number, number]>> = {
  iso13788: [-60, 80],
  ashrae: [-100, 200],
};

/** [Pa], [-], [°C] ISO 13788:2012 annex E eqs E.7 to E.10 (memory): over water, then over ice. */
const ISO_AT_ZERO_PA = 610.5;
const ISO_WATER = { factor: 17.269, offset_C: 237.3 } as const;
const ISO_ICE = { factor: 21.875, offset_C: 265.5 } as const;

/** [°C] triple point of water: ice below, liquid at and above (ASHRAE 2017 ch. 1; memory). */
const TRIPLE_POINT_C = 0.01;

/** [ln Pa, T in K] Hyland-Wexler over ice, ASHRAE 2017 ch. 1 eq. 5, C1 to C7 (memory; reproduces table 3, seen). */
const ICE = {
  C1: -5.6745359e3,
  C2: 6.3925247,
  C3: -9.677843e-3,
  C4: 6.2215701e-7,
  C5: 2.0747825e-9,
  C6: -9.484024e-13,
  C7: 4.1635019,
} as const;
/** [ln Pa, T in K] Hyland-Wexler over liquid water, ASHRAE 2017 ch. 1 eq. 6, C8 to C13 (memory; as above). */
const WATER = {
  C8: -5.8002206e3,
  C9: 1.3914993,
  C10: -4.8640239e-2,
  C11: 4.1764768e-5,
  C12: -1.4452093e-8,
  C13: 6.5459673,
} as const;

function hylandWexler_Pa(temperature_C: number): number {
  const T = temperature_C + KELVIN_AT_ZERO_C;
  const lnP =
    temperature_C < TRIPLE_POINT_C
      ? ICE.C1 / T + ICE.C2 + T * (ICE.C3 + T * (ICE.C4 + T * (ICE.C5 + T * ICE.C6))) + ICE.C7 * Math.log(T)
      : WATER.C8 / T + WATER.C9 + T * (WATER.C10 + T * (WATER.C11 + T * WATER.C12)) + WATER.C13 * Math.log(T);
  return Math.exp(lnP);
}

/**
 * Saturation vapor pressure over water (at and above freezing) or ice (below).
 *
 * iso13788: p = 610.5 exp(17.269 t / (237.3 + t)), t >= 0; 610.5 exp(21.875 t / (265.5 + t)), t < 0.
 * ashrae: Hyland-Wexler, ice below 0.01 °C, liquid from there on.
 *
 * @param temperature_C [°C] air or surface temperature (t)
 * @param method        [-] which formula; iso13788 unless said otherwise
 * @returns             [Pa] saturation vapor pressure
 * @range               iso13788 -60 to 80 °C; ashrae -100 to 200 °C
 * @throws              RangeError outside the range
 * @source              ISO-13788-2012 annex E (memory); ASHRAE-HOF-2017-CH1 ch. 1 eqs 5 and 6 (memory, table 3 seen)
 * @assumes             plane surface of pure water or ice, no enhancement factor for air
 */
export function saturationVaporPressure_Pa(
  temperature_C: number,
  method: SaturationMethod = 'iso13788',
): number {
  const [least, greatest] = SATURATION_RANGE_C[method];
  requireWithin('temperature_C', temperature_C, least, greatest);
  if (method === 'ashrae') return hylandWexler_Pa(temperature_C);
  const { factor, offset_C } = temperature_C >= 0 ? ISO_WATER : ISO_ICE;
  return ISO_AT_ZERO_PA * Math.exp((factor * temperature_C) / (offset_C + temperature_C));
}

/** [-] halvings of the 300 K range of Hyland-Wexler: 300 / 2^50 is below 1e-12 K, finer than doubles resolve. */
const DEW_POINT_HALVINGS = 50;

function hylandWexlerInverse_C(vaporPressure_Pa: number): number {
  let [low, high] = SATURATION_RANGE_C.ashrae;
  for (let step = 0; step < DEW_POINT_HALVINGS; step++) {
    const middle = (low + high) / 2;
    if (hylandWexler_Pa(middle) < vaporPressure_Pa) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Dew point of a vapor pressure; below freezing the frost point (ice branch).
 *
 * The inverse of saturationVaporPressure_Pa: closed for iso13788, by bisection for ashrae. ASHRAE prints a
 * regression (eqs 37 and 38) that is good to some hundredths of a kelvin; bisection of the formula itself
 * makes the round trip exact and cannot fail to converge at the join of ice and water.
 *
 * @param vaporPressure_Pa [Pa] partial pressure of water vapor, > 0
 * @param method           [-] which formula; iso13788 unless said otherwise
 * @returns                [°C] dew point, or frost point below freezing
 * @range                  pressures whose dew point lies in the range of saturationVaporPressure_Pa
 * @throws                 RangeError outside the range
 * @source                 ISO-13788-2012 annex E (memory); ASHRAE-HOF-2017-CH1 ch. 1 eqs 5 and 6 (memory)
 * @assumes                as saturationVaporPressure_Pa
 */
export function dewPoint_C(vaporPressure_Pa: number, method: SaturationMethod = 'iso13788'): number {
  const [least, greatest] = SATURATION_RANGE_C[method];
  requireWithin(
    'vaporPressure_Pa',
    vaporPressure_Pa,
    saturationVaporPressure_Pa(least, method),
    saturationVaporPressure_Pa(greatest, method),
  );
  if (method === 'ashrae') return hylandWexlerInverse_C(vaporPressure_Pa);
  const L = Math.log(vaporPressure_Pa / ISO_AT_ZERO_PA);
  const { factor, offset_C } = L >= 0 ? ISO_WATER : ISO_ICE;
  return (offset_C * L) / (factor - L);
}

/**
 * Partial pressure of water vapor in air of a temperature and relative humidity.
 *
 * p = RH * psat(t)
 *
 * @param temperature_C        [°C] air temperature
 * @param relativeHumidity_pct [%] relative humidity, 0 to 100
 * @param method               [-] which saturation formula; iso13788 unless said otherwise
 * @returns                    [Pa] vapor pressure
 * @range                      as saturationVaporPressure_Pa
 * @throws                     RangeError outside the range
 * @source                     ISO-13788-2012 annex E (memory)
 * @assumes                    below freezing the humidity is meant over ice, as ISO-13788-2012 does
 */
export function vaporPressure_Pa(
  temperature_C: number,
  relativeHumidity_pct: number,
  method: SaturationMethod = 'iso13788',
): number {
  requireWithin('relativeHumidity_pct', relativeHumidity_pct, 0, PERCENT);
  return (relativeHumidity_pct / PERCENT) * saturationVaporPressure_Pa(temperature_C, method);
}

/**
 * Dew point of air of a temperature and relative humidity.
 *
 * @param temperature_C        [°C] air temperature
 * @param relativeHumidity_pct [%] relative humidity, > 0, at most 100
 * @param method               [-] which saturation formula; iso13788 unless said otherwise
 * @returns                    [°C] dew point, or frost point below freezing
 * @range                      as dewPoint_C
 * @throws                     RangeError outside the range
 * @source                     ISO-13788-2012 annex E (memory); ASHRAE-HOF-2017-CH1 ch. 1 (memory)
 * @assumes                    as saturationVaporPressure_Pa
 */
export function dewPointFromHumidity_C(
  temperature_C: number,
  relativeHumidity_pct: number,
  method: SaturationMethod = 'iso13788',
): number {
  return dewPoint_C(vaporPressure_Pa(temperature_C, relativeHumidity_pct, method), method);
}

/**
 * Relative humidity of air from its temperature and dew point.
 *
 * RH = psat(td) / psat(t)
 *
 * @param temperature_C [°C] air temperature
 * @param dewPoint_C    [°C] dew point, at most the air temperature
 * @param method        [-] which saturation formula; iso13788 unless said otherwise
 * @returns             [%] relative humidity
 * @range               as saturationVaporPressure_Pa
 * @throws              RangeError outside the range or when the dew point is above the air temperature
 * @source              ASHRAE-HOF-2017-CH1 ch. 1 eq. 22 (memory)
 * @assumes             below freezing over ice
 */
export function relativeHumidityFromDewPoint_pct(
  temperature_C: number,
  dewPoint_C: number,
  method: SaturationMethod = 'iso13788',
): number {
  requireWithin('dewPoint_C', dewPoint_C, SATURATION_RANGE_C[method][0], temperature_C);
  return (
    (PERCENT * saturationVaporPressure_Pa(dewPoint_C, method)) /
    saturationVaporPressure_Pa(temperature_C, method)
  );
}

/**
 * Humidity ratio of moist air: mass of water over mass of dry air.
 *
 * W = 0.621945 pv / (p - pv)
 *
 * @param vaporPressure_Pa [Pa] vapor pressure (pv), below the total pressure
 * @param pressure_Pa      [Pa] total pressure (p); the standard atmosphere unless said otherwise
 * @returns                [kg/kg] humidity ratio
 * @range                  0 <= pv < p
 * @throws                 RangeError outside the range
 * @source                 ASHRAE-HOF-2017-CH1 ch. 1 eq. 20 (memory)
 * @assumes                ideal gases
 */
export function humidityRatio_kg_kg(vaporPressure_Pa: number, pressure_Pa = STANDARD_PRESSURE_PA): number {
  requirePositive('pressure_Pa', pressure_Pa);
  requireNotNegative('vaporPressure_Pa', vaporPressure_Pa);
  if (vaporPressure_Pa >= pressure_Pa) {
    throw new RangeError(`vaporPressure_Pa: ${vaporPressure_Pa} is not below ${pressure_Pa}`);
  }
  return (MOLAR_MASS_RATIO * vaporPressure_Pa) / (pressure_Pa - vaporPressure_Pa);
}

/**
 * Mass of water vapor in a volume of air.
 *
 * v = pv / (Rv T)
 *
 * @param vaporPressure_Pa [Pa] vapor pressure (pv)
 * @param temperature_C    [°C] air temperature (T in kelvin)
 * @returns                [kg/m3] vapor concentration
 * @range                  temperature above absolute zero
 * @throws                 RangeError when an input is out of range
 * @source                 ISO-13788-2012 annex E (memory)
 * @assumes                ideal gas
 */
export function vaporConcentration_kg_m3(vaporPressure_Pa: number, temperature_C: number): number {
  requireNotNegative('vaporPressure_Pa', vaporPressure_Pa);
  requirePositive('temperature in kelvin', temperature_C + KELVIN_AT_ZERO_C);
  return vaporPressure_Pa / (GAS_CONSTANT_VAPOR * (temperature_C + KELVIN_AT_ZERO_C));
}

/** [1/m], [-] standard atmosphere below 11 km, ASHRAE 2017 ch. 1 eq. 3 (memory; reproduces table 1, seen). */
const PRESSURE_LAPSE_1_M = 2.25577e-5;
const PRESSURE_EXPONENT = 5.2559;
/** [m] lowest and highest altitude of ASHRAE 2017 ch. 1 table 1 (seen: -500 to 10 000). */
const ALTITUDE_RANGE_M = [-500, 10000] as const;

/**
 * Air pressure of the standard atmosphere at an altitude.
 *
 * p = 101325 (1 - 2.25577e-5 Z)^5.2559
 *
 * @param altitude_m [m] height above sea level (Z)
 * @returns          [Pa] pressure
 * @range            -500 to 10 000 m
 * @throws           RangeError outside the range
 * @source           ASHRAE-HOF-2017-CH1 ch. 1 eq. 3 (memory; table 1 seen)
 * @assumes          standard atmosphere, no weather
 */
export function stationPressure_Pa(altitude_m: number): number {
  requireWithin('altitude_m', altitude_m, ALTITUDE_RANGE_M[0], ALTITUDE_RANGE_M[1]);
  return STANDARD_PRESSURE_PA * Math.pow(1 - PRESSURE_LAPSE_1_M * altitude_m, PRESSURE_EXPONENT);
}

/**
 * Indoor humidity for the monthly method: humidity classes or a controlled relative humidity.
 */
import { requireFinite, requireNotNegative, requireWithin } from './guards.ts';
import { saturationVaporPressure_Pa } from './psychrometrics.ts';

/** Humidity class: 1 storage, 2 offices and dwellings with normal use, 3 unknown use, 4 sports halls and kitchens. */
export type HumidityClass = 1 | 2 | 3 | 4;
const isClass = (value: number): value is HumidityClass => Object.hasOwn(CLASS_EXCESS_PA, value);
/** [Pa] upper limit of the vapor pressure excess at 0 °C outdoors, ISO 13788:2012 figure A.1 (memory). */
const CLASS_EXCESS_PA: Readonly<Record<HumidityClass, number>> = { 1: 270, 2: 540, 3: 810, 4: 1080 };
/** [°C] outdoor mean at which the excess has fallen to zero, ISO 13788:2012 figure A.1 (memory). */
const NO_EXCESS_FROM_C = 20;
/** [-] margin on the excess of a class, ISO 13788:2012 clause 4.3 (memory). */
const CLASS_MARGIN = 1.1;
/** [-] margin on a controlled relative humidity: five points, ISO 13788:2012 clause 4.3 (memory). */
const CONTROLLED_MARGIN = 0.05;
/** [-] percent of one. */
const PERCENT = 100;

/**
 * Indoor vapor pressure of a humidity class.
 *
 * pi = pe + 1.10 dp; dp from its class limit at 0 °C and below, linearly to 0 at 20 °C outdoors
 *
 * @param humidityClass      [-] class 1 to 4
 * @param outdoorMean_C      [°C] monthly mean outdoors
 * @param outdoorPressure_Pa [Pa] monthly mean vapor pressure outdoors (pe), 0 or more
 * @param indoor_C           [°C] indoor temperature, which caps the pressure at saturation
 * @returns                  [Pa] indoor vapor pressure, at most saturated
 * @range                    maritime and continental climates without indoor cooling
 * @throws                   RangeError when an input is out of range
 * @source                   ISO-13788-2012 clause 4.3 and annex A (memory)
 * @assumes                  upper limit of the class
 */
export function classVaporPressure_Pa(
  humidityClass: number,
  outdoorMean_C: number,
  outdoorPressure_Pa: number,
  indoor_C: number,
): number {
  if (!isClass(humidityClass)) throw new RangeError(`humidityClass: ${humidityClass} is not one of 1 to 4`);
  requireFinite('outdoorMean_C', outdoorMean_C);
  requireNotNegative('outdoorPressure_Pa', outdoorPressure_Pa);
  const fall = Math.min(1, Math.max(0, 1 - outdoorMean_C / NO_EXCESS_FROM_C));
  const pressure = outdoorPressure_Pa + CLASS_MARGIN * CLASS_EXCESS_PA[humidityClass] * fall;
  return Math.min(pressure, saturationVaporPressure_Pa(indoor_C, 'iso13788'));
}

/**
 * Relative humidity that the method takes for a controlled indoor climate.
 *
 * RH = set point + 5 points, at most 100
 *
 * @param setPoint_pct [%] relative humidity that the equipment holds, 0 to 100
 * @returns            [%] relative humidity with the margin
 * @range              0 to 100 %
 * @throws             RangeError outside the range
 * @source             ISO-13788-2012 clause 4.3 (memory)
 * @assumes            constant over the month
 */
export function controlledRelativeHumidity_pct(setPoint_pct: number): number {
  requireWithin('setPoint_pct', setPoint_pct, 0, PERCENT);
  return Math.min(PERCENT, setPoint_pct + PERCENT * CONTROLLED_MARGIN);
}

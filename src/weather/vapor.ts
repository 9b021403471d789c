/** The vapor pressure of one hour of a weather file: from its dew point, else from its relative humidity. */
import { requireWithin } from '../physics/guards.ts';
import { TEMPERATURE_LIMITS } from './fields.ts';
import type { WeatherHour } from './station.ts';

/** [Pa], [-], [°C] Magnus form over a plane surface of water, WMO-No. 8 annex 4.B (memory). */
const MAGNUS_AT_ZERO_PA = 611.2;
const MAGNUS_FACTOR = 17.62;
const MAGNUS_OFFSET_C = 243.12;

/**
 * Saturation vapor pressure over liquid water, below freezing over supercooled water.
 *
 * e = 611.2 exp(17.62 t / (243.12 + t))
 *
 * Weather stations give dew point and relative humidity over water at every temperature, so that a file's humidity
 * must be read with this form and not with the ice branch of src/physics/psychrometrics.ts.
 *
 * @param temperature_C [°C] air temperature or dew point (t)
 * @returns             [Pa] vapor pressure
 * @range               -45 to 60 °C as published; used to -70 °C, where it lies 2.8 % over MURPHY-KOOP-2005 (computed)
 * @throws              RangeError outside -70 to 70 °C
 * @source              WMO-8 annex 4.B (memory)
 * @assumes             plane surface of pure water, no enhancement factor for air (0.4 % at sea level)
 */
export function saturationOverWater_Pa(temperature_C: number): number {
  requireWithin('temperature_C', temperature_C, TEMPERATURE_LIMITS.above, TEMPERATURE_LIMITS.below);
  return MAGNUS_AT_ZERO_PA * Math.exp((MAGNUS_FACTOR * temperature_C) / (MAGNUS_OFFSET_C + temperature_C));
}

/** [K] dew points above the air temperature by up to this are rounding (our judgement). */
export const DEW_POINT_SLACK_K = 0.5;
/** [%] humidity is written up to 110 in fog; air holds no more than saturation. */
const SATURATED_PCT = 100;

export interface HourVapor {
  readonly vaporPressure_Pa: number;
  readonly saturation_Pa: number;
}

/** Things that an hour may show and that the summary counts. */
export interface HourSigns {
  readonly dewPointAbove: boolean;
  readonly zeroHumidity: boolean;
  readonly fromHumidity: boolean;
}

/** Dew point and humidity of one hour, seen for what they are worth. */
export function signsOf({ dryBulb_C, dewPoint_C, relativeHumidity_pct }: WeatherHour): HourSigns {
  return {
    dewPointAbove:
      typeof dryBulb_C === 'number' &&
      typeof dewPoint_C === 'number' &&
      dewPoint_C > dryBulb_C + DEW_POINT_SLACK_K,
    zeroHumidity: relativeHumidity_pct === 0,
    fromHumidity:
      typeof dryBulb_C === 'number' &&
      typeof dewPoint_C !== 'number' &&
      typeof relativeHumidity_pct === 'number' &&
      relativeHumidity_pct > 0,
  };
}

/**
 * Vapor pressure of an hour, and the saturation pressure at its air temperature.
 *
 * pv = psat(td), else RH psat(t); at most psat(t)
 *
 * @param hour [-] one hour of a weather file
 * @returns    [Pa] vapor pressure and saturation pressure; undefined without temperature or without any humidity
 * @range      temperatures above -70 and below 70 °C, relative humidity above 0 to 110 %
 * @source     EPW-DICTIONARY fields 7 to 9 (seen)
 * @assumes    a dew point above the air temperature is an error of the file and stands for saturated air; a relative
 *             humidity of 0 is no measurement
 */
export function vaporOfHour(hour: WeatherHour): HourVapor | undefined {
  const { dryBulb_C, dewPoint_C, relativeHumidity_pct } = hour;
  if (typeof dryBulb_C !== 'number') return undefined;
  const saturation_Pa = saturationOverWater_Pa(dryBulb_C);
  if (typeof dewPoint_C === 'number') {
    return { vaporPressure_Pa: saturationOverWater_Pa(Math.min(dewPoint_C, dryBulb_C)), saturation_Pa };
  }
  if (typeof relativeHumidity_pct !== 'number' || relativeHumidity_pct === 0) return undefined;
  const share = Math.min(relativeHumidity_pct, SATURATED_PCT) / SATURATED_PCT;
  return { vaporPressure_Pa: share * saturation_Pa, saturation_Pa };
}

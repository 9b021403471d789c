/** Indoor air of the monthly method: the humidity of the case all year, or its humidity class. */
import type { CompleteCase } from '../../case/complete.ts';
import type { Climate, IndoorAir } from '../../evaluation/evaluation.ts';
import { classVaporPressure_Pa } from '../../physics/internalHumidity.ts';
import { dewPoint_C, saturationVaporPressure_Pa, vaporPressure_Pa } from '../../physics/psychrometrics.ts';
import { rounded } from '../rounding.ts';

const PERCENT = 100;
/** [K, %] step to which a month's value is kept. */
const STEP = 1e-4;

/**
 * Indoor humidity and dew point, January to December.
 *
 * By class: pi = pe + 1.10 dp; fixed: the humidity of the case in every month.
 *
 * @param given    [°C, %] the complete case
 * @param climate  [°C, %] twelve months
 * @returns        [%, °C] relative humidity and dew point at the indoor temperature
 * @source         ISO-13788-2012 clause 4.3 and annex A (memory)
 * @assumes        the five points of margin that clause 4.3 puts on a controlled humidity are left out: the figure of
 *                 the case is a reading or a default on the damp side, not a set point
 */
export function indoorAirOf(given: CompleteCase, climate: Climate): IndoorAir {
  const { temperature_C, relativeHumidity_pct, humidityClass } = given.indoor;
  const saturation_Pa = saturationVaporPressure_Pa(temperature_C, 'iso13788');
  const humidity_pct = climate.monthlyTemperature_C.map((outdoor_C, month) => {
    if (humidityClass === undefined) return relativeHumidity_pct;
    const outdoor_Pa = vaporPressure_Pa(outdoor_C, climate.monthlyRelativeHumidity_pct[month] ?? 0);
    const indoor_Pa = classVaporPressure_Pa(humidityClass, outdoor_C, outdoor_Pa, temperature_C);
    return rounded((PERCENT * indoor_Pa) / saturation_Pa, STEP);
  });
  return {
    basis: humidityClass === undefined ? 'fixed' : 'humidity-class',
    humidityClass: humidityClass ?? null,
    relativeHumidity_pct: humidity_pct,
    dewPoint_C: humidity_pct.map((value) =>
      rounded(dewPoint_C((value / PERCENT) * saturation_Pa, 'iso13788'), STEP),
    ),
  };
}

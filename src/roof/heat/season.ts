/** Heat lost through the roof in a heating season. */
import type { Candidate, Climate } from '../../evaluation/evaluation.ts';

const HOURS_PER_DAY = 24;
const WATTS_PER_KILOWATT = 1000;

/**
 * Heat through the roof over the heated rooms in a heating season.
 *
 * Q = U HDD18 24 h; whole = Q A
 *
 * @param climate             [°C·d] heating degree days to base 18 °C
 * @param transmittance_W_m2K [W/(m²·K)] of the whole roof (U)
 * @param area_m2             [m²] roof over the heated rooms (A)
 * @returns                   [°C·d, kWh/m², kWh] degree days, for each square meter, for the whole
 * @source                    ASHRAE-HOF-2017 chapter 26, steady transmission (memory); degree days from the monthly means (computed)
 * @assumes                   sun and gains make up for what the rooms are warmer than 18 °C; no heat storage
 */
export function seasonOf(
  climate: Pick<Climate, 'heatingDegreeDays18_Cd'>,
  transmittance_W_m2K: number,
  area_m2: number,
): Candidate['thermal']['season'] {
  const { heatingDegreeDays18_Cd } = climate;
  const perArea_kWh_m2 = (transmittance_W_m2K * heatingDegreeDays18_Cd * HOURS_PER_DAY) / WATTS_PER_KILOWATT;
  return {
    heatingDegreeDays18_Cd,
    perArea_kWh_m2,
    whole_kWh: perArea_kWh_m2 * area_m2,
    basis:
      'Whole-roof transmittance × heating degree days to 18 °C (64.4 °F) from the monthly means × 24 h, over the roof above the heated rooms; sun, gains and air leakage left out.',
  };
}

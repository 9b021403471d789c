/** Water that leaking room air carries to the deck's underside, beside what diffusion carries. */
import { dimension } from '../../catalog/dimensions.ts';
import type { AirLeakage, IndoorAir, Layer, PlaneMonths } from '../../evaluation/evaluation.ts';
import { diffusionWater_kg, leakageWater_kg, orificeFlow_m3_s } from '../../physics/airLeakage.ts';
import { DAYS_OF_MONTHS } from '../../physics/climate.ts';
import { saturationVaporPressure_Pa } from '../../physics/psychrometrics.ts';
import { rounded } from '../rounding.ts';
import { inSeries_ng } from './layers.ts';

const PERCENT = 100;
/** [kg] step to which a month's water is kept. */
const STEP_KG = 1e-6;

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

/**
 * Water to the deck's underside through a stated hole, by diffusion through a sheet of ceiling, and at a stated
 * leakage rate.
 *
 * hole: Q = Cd A sqrt(2 dp / rho); rate at the same pressure: q = q75 (dp / 75)^n; water = flow (Wi - Wsat(Tdeck)) t
 *
 * @param layers  [ng/(Pa·s·m²)] layers of the candidate
 * @param indoor  [%] indoor air by month
 * @param inside_C [°C] indoor temperature
 * @param deck    [°C] the deck's underside by month
 * @returns       [m², Pa, m³/s, kg] January to December and their sums; null where no layer lies under the deck
 * @source        OUR-JUDGEMENT hole, pressure and rate of dimensions.json; ASHRAE-HOF-2017-CH1 eq. 20 (memory)
 * @assumes       all air cools to the deck and none of the water leaves again: an upper estimate
 */
export function airLeakageOf(
  layers: readonly Layer[],
  indoor: IndoorAir,
  inside_C: number,
  deck: PlaneMonths,
): AirLeakage | null {
  const under = layers.slice(
    0,
    layers.findIndex((layer) => layer.role === 'deck'),
  );
  if (under.length === 0) return null;
  const hole_m2 = dimension('leak-hole_m2');
  const pressure_Pa = dimension('leak-pressure_Pa');
  const flow_m3_s = orificeFlow_m3_s(hole_m2, pressure_Pa);
  const rate_m3_sm2 =
    dimension('leak-rate-at-75-Pa_m3_sm2') *
    (pressure_Pa / dimension('leak-rate-pressure_Pa')) ** dimension('leak-exponent');
  const sheet_m2 = dimension('leak-sheet_m2');
  const permeance_ng = inSeries_ng(under);
  const leak_kg = (flow: number): number[] =>
    DAYS_OF_MONTHS.map((days, month) =>
      leakageWater_kg(
        flow,
        {
          indoorTemperature_C: inside_C,
          indoorRelativeHumidity_pct: indoor.relativeHumidity_pct[month] ?? 0,
          surfaceTemperature_C: deck.temperature_C[month] ?? inside_C,
        },
        days,
      ),
    );
  const saturation_Pa = saturationVaporPressure_Pa(inside_C, 'iso13788');
  const diffusion_kg = DAYS_OF_MONTHS.map((days, month) => {
    const indoor_Pa = (saturation_Pa * (indoor.relativeHumidity_pct[month] ?? 0)) / PERCENT;
    const deck_Pa = saturationVaporPressure_Pa(deck.temperature_C[month] ?? inside_C, 'iso13788');
    return diffusionWater_kg(permeance_ng, sheet_m2, Math.max(0, indoor_Pa - deck_Pa), days);
  });
  const hole_kg = leak_kg(flow_m3_s);
  return {
    hole_m2,
    pressure_Pa,
    flow_m3_s,
    after: deck.after,
    monthlyLeak_kg: hole_kg.map((water) => rounded(water, STEP_KG)),
    seasonLeak_kg: rounded(total(hole_kg), STEP_KG),
    sheet_m2,
    monthlyDiffusion_kg: diffusion_kg.map((water) => rounded(water, STEP_KG)),
    seasonDiffusion_kg: rounded(total(diffusion_kg), STEP_KG),
    rate_m3_sm2,
    seasonRate_kg_m2: rounded(total(leak_kg(rate_m3_sm2)), STEP_KG),
    known: 'our judgement',
    source: 'OUR-JUDGEMENT',
  };
}

/** Water that leaking room air carries to the deck and to the cold side of the board, beside what diffusion carries. */
import { dimension } from '../../catalog/dimensions.ts';
import type {
  AirLeakage,
  Climate,
  IndoorAir,
  Layer,
  LeakSurface,
  PlaneMonths,
} from '../../evaluation/evaluation.ts';
import { diffusionWater_kg, leakageWater_kg, orificeFlow_m3_s } from '../../physics/airLeakage.ts';
import { DAYS_OF_MONTHS } from '../../physics/climate.ts';
import { saturationVaporPressure_Pa } from '../../physics/psychrometrics.ts';
import { rounded } from '../rounding.ts';
import { inSeries_ng } from './layers.ts';

const PERCENT = 100;
/** [kg] step to which a month's water is kept. */
const STEP_KG = 1e-6;

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
const kept = (values: readonly number[]): number[] => values.map((water) => rounded(water, STEP_KG));

/** What brings water: air at two rates, and the indoor air by month. */
interface Leak {
  readonly indoor: IndoorAir;
  readonly inside_C: number;
  readonly flow_m3_s: number;
  readonly rate_m3_sm2: number;
  readonly sheet_m2: number;
}

interface Surface {
  readonly id: LeakSurface['id'];
  readonly after: string;
  readonly temperature_C: readonly number[];
  /** Of all layers between the room and the surface. */
  readonly permeance_ng: number;
}

function waterAt(leak: Leak, { id, after, temperature_C, permeance_ng }: Surface): LeakSurface {
  const { indoor, inside_C } = leak;
  const humidity_pct = (month: number): number => indoor.relativeHumidity_pct[month] ?? 0;
  const surface_C = (month: number): number => temperature_C[month] ?? inside_C;
  const carried_kg = (flow: number): number[] =>
    DAYS_OF_MONTHS.map((days, month) =>
      leakageWater_kg(
        flow,
        {
          indoorTemperature_C: inside_C,
          indoorRelativeHumidity_pct: humidity_pct(month),
          surfaceTemperature_C: surface_C(month),
        },
        days,
      ),
    );
  const saturation_Pa = saturationVaporPressure_Pa(inside_C, 'iso13788');
  const diffusion_kg = DAYS_OF_MONTHS.map((days, month) => {
    const indoor_Pa = (saturation_Pa * humidity_pct(month)) / PERCENT;
    const surface_Pa = saturationVaporPressure_Pa(surface_C(month), 'iso13788');
    return diffusionWater_kg(permeance_ng, leak.sheet_m2, Math.max(0, indoor_Pa - surface_Pa), days);
  });
  const hole_kg = carried_kg(leak.flow_m3_s);
  return {
    id,
    after,
    monthlyLeak_kg: kept(hole_kg),
    seasonLeak_kg: rounded(total(hole_kg), STEP_KG),
    monthlyDiffusion_kg: kept(diffusion_kg),
    seasonDiffusion_kg: rounded(total(diffusion_kg), STEP_KG),
    seasonRate_kg_m2: rounded(total(carried_kg(leak.rate_m3_sm2)), STEP_KG),
  };
}

/**
 * Water to the deck's underside, and to the cold side of the board for air that finds a way past the deck: through a
 * stated hole, by diffusion through a sheet, and at a stated leakage rate.
 *
 * hole: Q = Cd A sqrt(2 dp / rho); rate at the same pressure: q = q75 (dp / 75)^n; water = flow (Wi - Wsat(T)) t
 *
 * @param layers   [ng/(Pa·s·m²)] layers of the candidate
 * @param indoor   [%] indoor air by month
 * @param inside_C [°C] indoor temperature
 * @param planes   [°C] planes of planeMonthsOf
 * @param climate  [°C] outdoor means: the temperature of a cold side in moving air
 * @returns        [m², Pa, m³/s, kg] January to December and their sums; null where no layer lies under the deck
 * @source         OUR-JUDGEMENT hole, pressure and rate of dimensions.json; ASHRAE-HOF-2017-CH1 eq. 20 (memory)
 * @assumes        all air cools to the surface and none of the water leaves again: an upper estimate
 */
export function airLeakageOf(
  layers: readonly Layer[],
  indoor: IndoorAir,
  inside_C: number,
  planes: readonly PlaneMonths[],
  climate: Pick<Climate, 'monthlyTemperature_C'>,
): AirLeakage | null {
  const deck = planes.find(({ id }) => id === 'deck-underside');
  const under = layers.slice(
    0,
    layers.findIndex((layer) => layer.role === 'deck'),
  );
  if (deck === undefined || under.length === 0) return null;
  const board = layers.findLastIndex((layer) => layer.role === 'insulation');
  const sheet = planes.find(({ id }) => id === 'under-underlayment');
  const hole_m2 = dimension('leak-hole_m2');
  const pressure_Pa = dimension('leak-pressure_Pa');
  const leak: Leak = {
    indoor,
    inside_C,
    flow_m3_s: orificeFlow_m3_s(hole_m2, pressure_Pa),
    rate_m3_sm2:
      dimension('leak-rate-at-75-Pa_m3_sm2') *
      (pressure_Pa / dimension('leak-rate-pressure_Pa')) ** dimension('leak-exponent'),
    sheet_m2: dimension('leak-sheet_m2'),
  };
  return {
    hole_m2,
    pressure_Pa,
    flow_m3_s: leak.flow_m3_s,
    sheet_m2: leak.sheet_m2,
    rate_m3_sm2: leak.rate_m3_sm2,
    deck: waterAt(leak, {
      id: 'deck',
      after: deck.after,
      temperature_C: deck.temperature_C,
      permeance_ng: inSeries_ng(under),
    }),
    coldSide: waterAt(leak, {
      id: 'cold-side',
      after: layers[board]?.id ?? deck.after,
      temperature_C: sheet?.temperature_C ?? climate.monthlyTemperature_C,
      permeance_ng: inSeries_ng(layers.slice(0, board + 1)),
    }),
    known: 'our judgement',
    source: 'OUR-JUDGEMENT',
  };
}

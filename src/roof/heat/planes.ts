/** Temperatures of the planes that matter, month by month, and the indoor humidity that would condense there. */
import type { CompleteCase } from '../../case/complete.ts';
import type { Climate, Layer, PlaneMonths } from '../../evaluation/evaluation.ts';
import { maximumIndoorRelativeHumidity_pct } from '../../physics/condensationControl.ts';
import { interfaceTemperatures_C } from '../../physics/thermal.ts';
import { angleOfPitch_deg } from '../geometry.ts';
import { rounded } from '../rounding.ts';
import { countedLayers, heatFlowOf } from './winter.ts';

/** [K, %] step to which a month's value is kept. */
const STEP = 1e-4;

interface Place {
  readonly id: PlaneMonths['id'];
  /** Index of the layer inside the plane; -1 is the inside surface. */
  readonly after: number;
}

/** The planes of a list of layers that ends at moving air. */
function placesOf(layers: readonly Layer[]): Place[] {
  const index = (role: Layer['role']): number => layers.findIndex((layer) => layer.role === role);
  const deck = index('deck');
  const boards = layers.flatMap((layer, at) => (layer.role === 'insulation' ? [at] : []));
  const joint = boards.at(-2);
  const sheet = index('underlayment');
  return [
    { id: 'deck-underside', after: deck - 1 },
    { id: 'deck-top', after: deck },
    ...(joint === undefined ? [] : [{ id: 'insulation-joint' as const, after: joint }]),
    ...(sheet < 0 ? [] : [{ id: 'under-underlayment' as const, after: sheet - 1 }]),
  ];
}

/**
 * Temperature of the deck's faces, the outermost joint between boards and the plane under the underlayment.
 *
 * t(x) = ti - (ti - te) R(x) / Rtotal; highest indoor humidity = psat(t) / psat(ti)
 *
 * @param given    [°C] the complete case: its own indoor temperature, all year
 * @param layers   [m²·K/W] layers with winter resistance
 * @param climate  [°C] twelve months
 * @returns        [°C, %] twelve values each; planes beyond a vented space are left out, they are at outdoor temperature
 * @source         ISO-13788-2012 clause 6.4.2 (memory); ASHRAE-HOF-2017-CH1 eqs 5 and 6 (memory)
 * @assumes        beside the framing, films and every layer counted; winter resistance in every month
 */
export function planeMonthsOf(
  given: CompleteCase,
  layers: readonly Layer[],
  climate: Pick<Climate, 'monthlyTemperature_C'>,
): PlaneMonths[] {
  const counted = countedLayers(layers, heatFlowOf(angleOfPitch_deg(given.roof.pitch_rise_per_12)));
  const inside_C = given.indoor.temperature_C;
  const resistances = [
    counted.insideFilm_m2K_W,
    ...counted.layers.map((layer) => layer.winterResistance_m2K_W),
    counted.outsideFilm_m2K_W,
  ];
  const profiles = climate.monthlyTemperature_C.map((outside_C) =>
    interfaceTemperatures_C(inside_C, outside_C, resistances),
  );
  return placesOf(counted.layers).map(({ id, after }) => {
    // Plane 0 of a profile is the indoor air, plane 1 the inside surface.
    const exact_C = profiles.map((profile) => profile[after + 2] ?? inside_C);
    return {
      id,
      after: counted.layers[after]?.id ?? 'inside-surface',
      temperature_C: exact_C.map((value) => rounded(value, STEP)),
      maximumIndoor_pct: exact_C.map((value) =>
        rounded(maximumIndoorRelativeHumidity_pct(value, inside_C), STEP),
      ),
    };
  });
}

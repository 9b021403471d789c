/** Winter condensation in a candidate roof by the monthly method: planes, limits, profile, leakage beside it. */
import type { CompleteCase } from '../../case/complete.ts';
import type {
  Candidate,
  Climate,
  CondensationPlane,
  Layer,
  PlaneMonths,
} from '../../evaluation/evaluation.ts';
import { condensationYear, type CondensationYear } from '../../physics/iso13788.ts';
import { rounded } from '../rounding.ts';
import { indoorAirOf } from './indoorAir.ts';
import { airLeakageOf } from './leakage.ts';
import { assemblyOf, monthsOf, roomSide } from './layers.ts';
import { materialLimit } from './limits.ts';
import { profileOf } from './profile.ts';

/** [kg/m²] step to which a month's water is kept: a thousandth of a milligram. */
const STEP_KG_M2 = 1e-9;

const general = [
  'Air that leaks through holes, which brings far more water than diffusion (shown beside).',
  'Storage of water in the materials, and water that creeps in them.',
  'Rain and snow that get in.',
  'Sun on the covering and cold nights that cool it below the air.',
  'Heat of melting and of evaporation.',
  'Vapor resistance and conductivity that change with moisture: dry-cup values throughout.',
];
const fixedHumidity =
  'Seasons indoors: the indoor humidity is held all year, without the margin of five points that the standard puts on a controlled climate; damp summers indoors slow the drying inward.';
const classHumidity =
  'Air conditioning and drying indoors: the humidity class is meant for rooms without them.';
const ventedSide = 'Everything beyond the vented space, which is taken as outdoor air.';

function planeOf(plane: CondensationYear['planes'][number], counted: readonly Layer[]): CondensationPlane {
  const { afterLayer, within_pct, monthly_kg_m2, accumulated_kg_m2 } = plane;
  const faces = within_pct === undefined ? [afterLayer, afterLayer + 1] : [afterLayer];
  const limit = materialLimit(faces.flatMap((index) => counted[index] ?? []));
  const peak_kg_m2 = Math.max(...accumulated_kg_m2);
  return {
    after: counted[afterLayer]?.id ?? 'inside-surface',
    within_pct: within_pct ?? null,
    monthly_kg_m2: monthly_kg_m2.map((value) => rounded(value, STEP_KG_M2)),
    accumulated_kg_m2: accumulated_kg_m2.map((value) => rounded(value, STEP_KG_M2)),
    peak_kg_m2,
    limit_kg_m2: limit.limit_kg_m2,
    meetsLimit: peak_kg_m2 <= limit.limit_kg_m2,
    limitReason: limit.reason,
    source: 'DIN-4108-3',
  };
}

const greatest = (
  planes: readonly CondensationPlane[],
  of: (plane: CondensationPlane) => number,
): CondensationPlane | undefined =>
  planes.reduce<CondensationPlane | undefined>(
    (worst, plane) => (worst && of(worst) >= of(plane) ? worst : plane),
    undefined,
  );

/**
 * Condensation over a year, room to moving air.
 *
 * @param given    [-] the complete case (indoor climate held all year, or by humidity class)
 * @param layers   [-] layers of the candidate with winter resistance
 * @param climate  [°C, %] twelve months
 * @param planes   [°C] temperatures of planeMonthsOf
 * @returns        [kg/m²] verdict, every plane by month with its limit, profile of the coldest month, leakage
 * @source         ISO-13788-2012 clause 6 (memory); DIN-4108-3 limits (seen-secondary)
 * @assumes        diffusion only: no air leakage, storage, sun or night sky; dry-cup permeance
 */
export function moistureOf(
  given: CompleteCase,
  layers: readonly Layer[],
  climate: Climate,
  planes: readonly PlaneMonths[],
): Candidate['moisture'] {
  const counted = roomSide(layers);
  const isVented = counted.length < layers.length;
  const assembly = assemblyOf(given, counted, isVented);
  const indoorAir = indoorAirOf(given, climate);
  const months = monthsOf(given, climate, indoorAir);
  const year = condensationYear(assembly, months);
  const found = year.planes.map((plane) => planeOf(plane, counted));
  const wettest = greatest(found, (plane) => plane.peak_kg_m2);
  const nearest = greatest(found, (plane) => plane.peak_kg_m2 / plane.limit_kg_m2);
  const coldest = climate.monthlyTemperature_C.indexOf(Math.min(...climate.monthlyTemperature_C)) + 1;
  return {
    method: 'ISO 13788:2012 clause 6, monthly diffusion; leaves out air leakage, storage, sun and rain',
    verdict: year.verdict,
    peak_kg_m2: year.maximum_kg_m2,
    plane: wettest?.after ?? null,
    planes: found,
    meetsLimit: found.every((plane) => plane.meetsLimit),
    limit_kg_m2: nearest?.limit_kg_m2 ?? null,
    limitPeak_kg_m2: nearest?.peak_kg_m2 ?? null,
    startMonth: found.length === 0 ? null : year.startIndex + 1,
    indoorAir,
    profile: profileOf(assembly, counted, months, coldest),
    leavesOut: [
      ...general,
      indoorAir.basis === 'fixed' ? fixedHumidity : classHumidity,
      ...(isVented ? [ventedSide] : []),
    ],
    airLeakage: airLeakageOf(layers, indoorAir, given.indoor.temperature_C, planes, climate),
  };
}

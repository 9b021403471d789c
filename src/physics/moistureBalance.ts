/**
 * One month of the interstitial balance: water held at sites, vapor pressures that follow, water after it.
 */
import { at, requireNotNegative, requirePositive } from './guards.ts';
import { vaporPressure_Pa } from './psychrometrics.ts';
import { condensationRates_kg_m2s, type VaporPoint } from './vaporLine.ts';
import {
  type MoistureAssembly,
  type PlaneSet,
  type Site,
  planeSaturation_Pa,
  planesOf,
  sitesOf,
} from './vaporPlanes.ts';

/** Mean conditions of a month. */
export interface MonthConditions {
  readonly outdoorTemperature_C: number;
  readonly outdoorRelativeHumidity_pct: number;
  readonly indoorTemperature_C: number;
  readonly indoorRelativeHumidity_pct: number;
}

/** [s] one day. */
const SECONDS_PER_DAY = 86400;

/**
 * What happens when the water at a site runs out inside a month. `month-end` is the standard's rule: the site
 * stays at saturation to the end of the month and its water is then set to 0 (not conserving). `split` cuts the
 * month where the water runs out and conserves mass.
 */
export type Exhaustion = 'month-end' | 'split';

/** An assembly made ready for many months. */
export interface MoistureModel {
  readonly set: PlaneSet;
  readonly sites: readonly Site[];
}

/**
 * An assembly made ready for the monthly balance.
 *
 * @param assembly [m2·K/W, m] films and layers, inside to outside
 * @param centered [-] index of a layer cut in two halves (drying); none when absent
 * @returns        [-] planes and sites
 * @range          as planesOf
 * @throws         RangeError as planesOf
 * @source         ISO-13788-2012 clauses 6.4.2 and 7.2 (memory)
 * @assumes        as planesOf
 */
export function moistureModel(assembly: MoistureAssembly, centered?: number): MoistureModel {
  const set = planesOf(assembly, centered);
  return { set, sites: sitesOf(set) };
}

/**
 * The points of the vapor line in a month for water held at sites.
 *
 * @param model      [-] planes and sites
 * @param month      [°C, %] conditions
 * @param held_kg_m2 [kg/m2] water at each site; a site with water is held at saturation
 * @returns          [m, Pa] indoor face, sites, outdoor face
 * @range            -60 to 80 °C, 0 to 100 %
 * @throws           RangeError outside the range
 * @source           ISO-13788-2012 clause 6.4.3 (memory)
 * @assumes          a site of several planes is at the saturation of its coldest
 */
export function vaporPoints(
  model: MoistureModel,
  month: MonthConditions,
  held_kg_m2: readonly number[],
): readonly VaporPoint[] {
  const points = pointsWithoutWater(model, month);
  if (!held_kg_m2.some((mass) => mass > 0)) return points;
  return points.map((point, index) => {
    const isWet = index > 0 && index <= model.sites.length && at(held_kg_m2, index - 1) > 0;
    return isWet ? { ...point, held: true } : point;
  });
}

/** A drying run asks for the same month year after year: its points are kept while the model lives. */
const remembered = new WeakMap<MoistureModel, Map<MonthConditions, readonly VaporPoint[]>>();

function pointsWithoutWater(model: MoistureModel, month: MonthConditions): readonly VaporPoint[] {
  const months = remembered.get(model) ?? new Map<MonthConditions, readonly VaporPoint[]>();
  remembered.set(model, months);
  const known = months.get(month);
  if (known !== undefined) return known;
  const saturation = planeSaturation_Pa(model.set, month.indoorTemperature_C, month.outdoorTemperature_C);
  const points: VaporPoint[] = [
    {
      airLayer_m: 0,
      pressure_Pa: vaporPressure_Pa(month.indoorTemperature_C, month.indoorRelativeHumidity_pct),
      held: true,
    },
    ...model.sites.map((site) => ({
      airLayer_m: site.airLayerFromInside_m,
      pressure_Pa: site.planes.reduce((least, plane) => Math.min(least, at(saturation, plane)), Infinity),
      held: false,
    })),
    {
      airLayer_m: model.set.totalAirLayer_m,
      pressure_Pa: vaporPressure_Pa(month.outdoorTemperature_C, month.outdoorRelativeHumidity_pct),
      held: true,
    },
  ];
  months.set(month, points);
  return points;
}

export interface MonthBalance {
  /** [kg/m2] what the rate of the month would add (positive) or take away (negative) at each site. */
  readonly change_kg_m2: readonly number[];
  /** [kg/m2] water at each site at the end of the month, never below 0. */
  readonly held_kg_m2: readonly number[];
}

function siteRates_kg_m2s(
  model: MoistureModel,
  month: MonthConditions,
  held_kg_m2: readonly number[],
): number[] {
  return condensationRates_kg_m2s(vaporPoints(model, month, held_kg_m2)).slice(1, -1);
}

/** Time until the first site runs out, at most the time left. */
function timeToExhaustion_s(held: readonly number[], rates: readonly number[], left_s: number): number {
  let time = left_s;
  held.forEach((mass, index) => {
    const rate = at(rates, index);
    if (mass > 0 && rate < 0) time = Math.min(time, mass / -rate);
  });
  return time;
}

/** [-] share of the mass below which a site that has just run out counts as empty (rounding). */
const EMPTY_SHARE = 1e-12;

function splitMonth(
  model: MoistureModel,
  month: MonthConditions,
  start_kg_m2: readonly number[],
  duration_s: number,
): MonthBalance {
  let held = [...start_kg_m2];
  let left = duration_s;
  // A site can run out once and fill once for each change of its neighbors: two visits per site and one spare.
  const mostPieces = 2 * model.sites.length + 2;
  for (let piece = 0; left > 0; piece++) {
    if (piece > mostPieces) throw new Error(`month: not settled after ${mostPieces} pieces`);
    const rates = siteRates_kg_m2s(model, month, held);
    const time = timeToExhaustion_s(held, rates, left);
    held = held.map((mass, index) => {
      const after = mass + at(rates, index) * time;
      return after <= EMPTY_SHARE * mass ? 0 : after;
    });
    left -= time;
  }
  return { change_kg_m2: held.map((mass, index) => mass - at(start_kg_m2, index)), held_kg_m2: held };
}

/**
 * The balance of one month.
 *
 * M(end) = max(0, M(start) + g * days * 86400) at each site
 *
 * @param model      [-] planes and sites
 * @param month      [°C, %] conditions
 * @param held_kg_m2 [kg/m2] water at each site at the start of the month
 * @param days       [d] length of the month, > 0
 * @param exhaustion [-] month-end (the standard) unless said otherwise
 * @returns          [kg/m2] change by the rate of the month, and water at its end
 * @range            as vaporPoints
 * @throws           RangeError outside the range; Error when a split month does not settle
 * @source           ISO-13788-2012 clauses 6.4.3 and 6.4.4 (memory)
 * @assumes          month-end: a site stays saturated to the end of the month in which it dries
 */
export function monthBalance(
  model: MoistureModel,
  month: MonthConditions,
  held_kg_m2: readonly number[],
  days: number,
  exhaustion: Exhaustion = 'month-end',
): MonthBalance {
  requirePositive('days', days);
  for (const mass of held_kg_m2) requireNotNegative('held_kg_m2', mass);
  const duration_s = days * SECONDS_PER_DAY;
  if (exhaustion === 'split') return splitMonth(model, month, held_kg_m2, duration_s);
  const change_kg_m2 = siteRates_kg_m2s(model, month, held_kg_m2).map((rate) => rate * duration_s);
  return {
    change_kg_m2,
    held_kg_m2: change_kg_m2.map((change, index) => Math.max(0, at(held_kg_m2, index) + change)),
  };
}

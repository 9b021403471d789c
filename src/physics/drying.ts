/**
 * Drying of a wetted layer by ISO 13788 clause 7.
 */
import { MONTHS } from './climate.ts';
import { at, requirePositive, requireWithin, sum } from './guards.ts';
import { daysOfMonthAt } from './iso13788.ts';
import {
  type Exhaustion,
  type MoistureModel,
  type MonthConditions,
  monthBalance,
  moistureModel,
} from './moistureBalance.ts';
import { type MoistureAssembly } from './vaporPlanes.ts';

/** [kg/m2] water put into the layer, ISO 13788:2012 clause 7.2 (memory). */
export const INITIAL_WATER_KG_M2 = 1;
/** [-] months after which the search ends, ten years, ISO 13788:2012 clause 7.2 (memory). */
export const DRYING_LIMIT_MONTHS = 120;
/** [%] the center of a layer. */
const CENTER_PCT = 50;
/** [-] most months that may be asked for: a century, our judgement. */
export const LONGEST_LIMIT_MONTHS = 1200;

export interface DryingOptions {
  readonly initial_kg_m2?: number;
  readonly limit_months?: number;
  /** Calendar month (1 to 12) of the first entry of months, in which the drying begins; 1 unless said otherwise. */
  readonly firstMonth?: number;
  readonly exhaustion?: Exhaustion;
}

export interface Drying {
  /** Water at the center of the wet layer at the end of each month, to the month it is dry or to the limit. */
  readonly remaining_kg_m2: readonly number[];
  /** Water at all other planes at the end of the same months. */
  readonly elsewhere_kg_m2: readonly number[];
  /** Months until the center is dry; null when not within the limit. A dry center is not a dry assembly. */
  readonly monthsToDry: number | null;
  /** The other plane that holds most at the end, by the layer inside it; null when nothing sits elsewhere. */
  readonly mostElsewhereAfter: number | null;
}

/** The layer inside the site that holds most beside the wetted one. */
function mostElsewhere(model: MoistureModel, held: readonly number[], wetted: number): number | null {
  let most = -1;
  held.forEach((mass, site) => {
    if (site !== wetted && mass > 0 && (most < 0 || mass > at(held, most))) most = site;
  });
  if (most < 0) return null;
  const [first] = at(model.sites, most).planes;
  return first === undefined ? null : at(model.set.planes, first).afterLayer;
}

function dryingOfSite(
  model: MoistureModel,
  wetted: number,
  months: readonly MonthConditions[],
  options: DryingOptions,
): Drying {
  const initial_kg_m2 = options.initial_kg_m2 ?? INITIAL_WATER_KG_M2;
  const limit_months = options.limit_months ?? DRYING_LIMIT_MONTHS;
  const firstMonth = options.firstMonth ?? 1;
  requirePositive('initial_kg_m2', initial_kg_m2);
  requireWithin('limit_months', limit_months, 1, LONGEST_LIMIT_MONTHS);
  requireWithin('firstMonth', firstMonth, 1, MONTHS);
  if (months.length !== MONTHS) throw new RangeError(`months: ${months.length} is not ${MONTHS}`);
  let held: readonly number[] = model.sites.map((_, site) => (site === wetted ? initial_kg_m2 : 0));
  const remaining_kg_m2: number[] = [];
  const elsewhere_kg_m2: number[] = [];
  let monthsToDry: number | null = null;
  for (let month = 0; month < limit_months && monthsToDry === null; month++) {
    const index = month % MONTHS;
    const days = daysOfMonthAt(index, firstMonth);
    held = monthBalance(model, at(months, index), held, days, options.exhaustion).held_kg_m2;
    const remaining = at(held, wetted);
    remaining_kg_m2.push(remaining);
    elsewhere_kg_m2.push(sum(held.filter((_, site) => site !== wetted)));
    if (remaining === 0) monthsToDry = month + 1;
  }
  return {
    remaining_kg_m2,
    elsewhere_kg_m2,
    monthsToDry,
    mostElsewhereAfter: mostElsewhere(model, held, wetted),
  };
}

/**
 * Months until water at the center of a layer has gone, and what sits elsewhere meanwhile.
 *
 * The layer is cut into two halves; the plane between them holds the water and stays at saturation while wet;
 * other planes may take up water and give it back.
 *
 * @param assembly [m2·K/W, m] films and layers, inside to outside
 * @param months   [°C, %] twelve months in a row, the first is the month of wetting; they repeat
 * @param wetLayer [-] index of the wet layer; it needs some vapor resistance
 * @param options  [kg/m2, -] water at the start (1), months until the search ends (120), first calendar month (1)
 * @returns        [kg/m2, -] water at the center and elsewhere by month, months to dry or null
 * @range          as condensationYear
 * @throws         RangeError when an input is out of range or the center of the layer is open to a face
 * @source         ISO-13788-2012 clause 7 (memory)
 * @assumes        no storage but at planes; no liquid flow, no air flow
 */
export function drying(
  assembly: MoistureAssembly,
  months: readonly MonthConditions[],
  wetLayer: number,
  options: DryingOptions = {},
): Drying {
  const model = moistureModel(assembly, wetLayer);
  const center = model.sites.findIndex((site) =>
    site.planes.some((index) => {
      const plane = at(model.set.planes, index);
      return plane.afterLayer === wetLayer && plane.within_pct === CENTER_PCT;
    }),
  );
  if (center < 0) throw new RangeError(`wetLayer: ${wetLayer} has no vapor resistance to a face`);
  return dryingOfSite(model, center, months, options);
}

/**
 * Months until water at the plane between two layers has gone, and what sits elsewhere meanwhile.
 *
 * As drying, but the water starts between two layers, and no layer is cut for it.
 *
 * @param assembly   [m2·K/W, m] films and layers, inside to outside
 * @param months     [°C, %] twelve months in a row, the first is the month of wetting; they repeat
 * @param afterLayer [-] index of the layer inside the plane
 * @param options    [kg/m2, -] as drying
 * @returns          [kg/m2, -] water at the plane and elsewhere by month, months to dry or null
 * @range            as condensationYear
 * @throws           RangeError when an input is out of range or the plane is open to a face
 * @source           ISO-13788-2012 clause 7 (memory), water at a joint in place of the center of a layer (our judgement)
 * @assumes          as drying
 */
export function dryingAtPlane(
  assembly: MoistureAssembly,
  months: readonly MonthConditions[],
  afterLayer: number,
  options: DryingOptions = {},
): Drying {
  const model = moistureModel(assembly);
  const wetted = model.sites.findIndex((site) =>
    site.planes.some((index) => {
      const plane = at(model.set.planes, index);
      return plane.afterLayer === afterLayer && plane.within_pct === undefined;
    }),
  );
  if (wetted < 0) throw new RangeError(`afterLayer: ${afterLayer} is open to a face`);
  return dryingOfSite(model, wetted, months, options);
}

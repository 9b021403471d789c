/**
 * Monthly interstitial condensation over a year by ISO 13788: start month, year, verdict.
 *
 * What the method leaves out: air leakage, capillary flow, storage in the materials, latent heat, sun and sky
 * radiation, conductivity and vapor resistance that depend on moisture.
 */
import { DAYS_OF_MONTHS, MONTHS } from './climate.ts';
import { at, requireWithin } from './guards.ts';
import {
  type Exhaustion,
  type MonthBalance,
  type MonthConditions,
  type MoistureModel,
  monthBalance,
  moistureModel,
} from './moistureBalance.ts';
import { type MoistureAssembly, type Plane, planeTemperature_C } from './vaporPlanes.ts';

export interface CondensationPlane {
  readonly afterLayer: number;
  readonly within_pct?: number;
  /** Change by the rate of each month, months as given. */
  readonly monthly_kg_m2: readonly number[];
  /** Water at the end of each month, months as given. */
  readonly accumulated_kg_m2: readonly number[];
}

export type CondensationVerdict = 'none' | 'dries-out' | 'accumulates';

export interface CondensationYear {
  readonly planes: readonly CondensationPlane[];
  /** Index of the month in which the year of the method begins. */
  readonly startIndex: number;
  /** Greatest amount at any one plane. */
  readonly maximum_kg_m2: number;
  /** Greatest amount at all planes together at the end of one month. */
  readonly maximumTotal_kg_m2: number;
  /** Water left at all planes after twelve months. */
  readonly residual_kg_m2: number;
  readonly verdict: CondensationVerdict;
  readonly driesOut: boolean;
}

/**
 * Days of a month in a list of months in a row.
 *
 * @param index      [-] place in the list, from 0; beyond eleven the year repeats
 * @param firstMonth [-] calendar month of the first entry, 1 to 12
 * @returns          [d] days of that month in a common year
 * @range            index of 0 or more
 * @throws           RangeError when the month does not exist
 * @source           COMMON-PRACTICE calendar (common practice)
 * @assumes          no leap day
 */
export function daysOfMonthAt(index: number, firstMonth: number): number {
  return at(DAYS_OF_MONTHS, (firstMonth - 1 + index) % MONTHS);
}

function requireTwelve(months: readonly MonthConditions[], firstMonth: number): void {
  if (months.length !== MONTHS) throw new RangeError(`months: ${months.length} is not ${MONTHS}`);
  if (!Number.isInteger(firstMonth)) throw new RangeError(`firstMonth: ${firstMonth} is not a whole number`);
  requireWithin('firstMonth', firstMonth, 1, MONTHS);
}

function runYear(
  model: MoistureModel,
  months: readonly MonthConditions[],
  firstMonth: number,
  startIndex: number,
  exhaustion: Exhaustion,
): MonthBalance[] {
  const balances: MonthBalance[] = [];
  let held: readonly number[] = model.sites.map(() => 0);
  for (let step = 0; step < MONTHS; step++) {
    const index = (startIndex + step) % MONTHS;
    const days = daysOfMonthAt(index, firstMonth);
    const balance = monthBalance(model, at(months, index), held, days, exhaustion);
    balances[index] = balance;
    held = balance.held_kg_m2;
  }
  return balances;
}

function total(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0);
}

function lastOfYear(balances: readonly MonthBalance[], startIndex: number): readonly number[] {
  return at(balances, (startIndex + MONTHS - 1) % MONTHS).held_kg_m2;
}

/**
 * Months in which the year of the method may begin: the first with condensation after one without.
 *
 * @param model  [-] planes and sites
 * @param months [°C, %] twelve months
 * @returns      [-] indices into months; empty when no month condenses; 0 when all do
 * @range        twelve months
 * @throws       RangeError as vaporPoints
 * @source       ISO-13788-2012 clause 6.4.4 (memory)
 * @assumes      each month tried by itself with no water present
 */
export function startCandidates(model: MoistureModel, months: readonly MonthConditions[]): number[] {
  const dry = model.sites.map(() => 0);
  const condenses = months.map((month) =>
    monthBalance(model, month, dry, 1).change_kg_m2.some((change) => change > 0),
  );
  if (condenses.every((each) => each)) return [0];
  return condenses.flatMap((each, index) =>
    each && !at(condenses, (index + MONTHS - 1) % MONTHS) ? [index] : [],
  );
}

/** Index of the plane of a site that is coldest in the month when the site holds most. */
function coldestPlane(
  model: MoistureModel,
  site: number,
  months: readonly MonthConditions[],
  balances: readonly MonthBalance[],
): Plane {
  const planes = at(model.sites, site).planes.map((index) => at(model.set.planes, index));
  let most = 0;
  balances.forEach((balance, index) => {
    if (at(balance.held_kg_m2, site) > at(at(balances, most).held_kg_m2, site)) most = index;
  });
  const { indoorTemperature_C, outdoorTemperature_C } = at(months, most);
  const temperature = (plane: Plane) =>
    planeTemperature_C(model.set, plane, indoorTemperature_C, outdoorTemperature_C);
  return planes.reduce((coldest, plane) => (temperature(plane) < temperature(coldest) ? plane : coldest));
}

function yearOf(
  model: MoistureModel,
  months: readonly MonthConditions[],
  balances: readonly MonthBalance[],
  startIndex: number,
): CondensationYear {
  const planes: CondensationPlane[] = [];
  model.sites.forEach((_, site) => {
    const accumulated_kg_m2 = balances.map((balance) => at(balance.held_kg_m2, site));
    const monthly_kg_m2 = balances.map((balance) => at(balance.change_kg_m2, site));
    if (!monthly_kg_m2.some((change) => change > 0)) return;
    const { afterLayer, within_pct } = coldestPlane(model, site, months, balances);
    planes.push({
      afterLayer,
      ...(within_pct === undefined ? {} : { within_pct }),
      monthly_kg_m2,
      accumulated_kg_m2,
    });
  });
  const residual_kg_m2 = total(lastOfYear(balances, startIndex));
  const driesOut = residual_kg_m2 === 0;
  const drying: CondensationVerdict = driesOut ? 'dries-out' : 'accumulates';
  return {
    planes,
    startIndex,
    maximum_kg_m2: Math.max(0, ...planes.flatMap((plane) => plane.accumulated_kg_m2)),
    maximumTotal_kg_m2: Math.max(...balances.map((balance) => total(balance.held_kg_m2))),
    residual_kg_m2,
    verdict: planes.length === 0 ? 'none' : drying,
    driesOut,
  };
}

export interface CondensationOptions {
  /** Calendar month (1 to 12) of the first entry of months; 1 unless said otherwise. */
  readonly firstMonth?: number;
  /** Index of the month to begin with; found by the rule when absent. */
  readonly startIndex?: number;
  readonly exhaustion?: Exhaustion;
}

/**
 * Condensation inside an assembly over a year.
 *
 * Begins in the first month with condensation after one without, with no water present, and runs twelve
 * months. Where several months qualify, one whose year ends dry is taken (it is then the steady yearly cycle);
 * if none ends dry, the one with most water left.
 *
 * @param assembly [m2·K/W, m] films and layers, inside to outside
 * @param months   [°C, %] twelve months in a row
 * @param options  [-] calendar month of the first entry, month to begin with, rule when water runs out
 * @returns        [kg/m2] change and water by plane and month, greatest amounts, residual, verdict
 * @range          -60 to 80 °C, 0 to 100 % relative humidity
 * @throws         RangeError when an input is out of range
 * @source         ISO-13788-2012 clause 6 (memory; scope seen)
 * @assumes        steady state in each month; only diffusion carries water
 */
export function condensationYear(
  assembly: MoistureAssembly,
  months: readonly MonthConditions[],
  options: CondensationOptions = {},
): CondensationYear {
  const firstMonth = options.firstMonth ?? 1;
  const exhaustion = options.exhaustion ?? 'month-end';
  requireTwelve(months, firstMonth);
  const model = moistureModel(assembly);
  const run = (startIndex: number): CondensationYear =>
    yearOf(model, months, runYear(model, months, firstMonth, startIndex, exhaustion), startIndex);
  if (options.startIndex !== undefined) return run(options.startIndex);
  const years = startCandidates(model, months).map(run);
  const dry = years.find((year) => year.driesOut);
  if (dry) return dry;
  return (
    years.reduce<CondensationYear | undefined>(
      (worst, year) => (worst && worst.residual_kg_m2 >= year.residual_kg_m2 ? worst : year),
      undefined,
    ) ?? run(0)
  );
}

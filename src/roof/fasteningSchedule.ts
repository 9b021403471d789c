/** The spacing of the long screws zone by zone. */
import type { CompleteCase } from '../case/complete.ts';
import type { ScheduleRow } from '../evaluation/fastening.ts';
import { holdUse, type HoldUse, type ScrewHold } from '../structure/screwHold.ts';
import { LOAD_DURATION } from '../structure/timber.ts';
import { ALLOWABLE_STRESS_WIND, type WindZone } from '../structure/wind.ts';
import { metersFromInches, squareMetersFromSquareFeet } from '../units.ts';
import { zonesOfRoof, zoneSuction_Pa, type ZoneArea } from './fasteningZones.ts';
import { angleOfPitch_deg, cosine, sine } from './geometry.ts';
import { windGapOf } from './windEdition.ts';

/** [m] spacings that are laid out and drawn: 24, 16, 12, 8, 6 in (common practice). */
const STEPS_M = [24, 16, 12, 8, 6].map(metersFromInches);
/** [m] rounding noise of a spacing. */
const STEP_NOISE_M = 1e-6;
/** [-] dead load that resists uplift, ASCE/SEI 7-16 section 2.4.1 combination 7 (memory). */
const RESISTING_DEAD = 0.6;
/** [m²] one roofing square, 100 ft² by trade definition. */
const SQUARE_M2 = squareMetersFromSquareFeet(100);

export interface Grid {
  /** Usual spacing along a line. */
  readonly usual_m: number;
  /** Between lines; null when screws stand on a square grid. */
  readonly across_m: number | null;
}

export interface ScheduleInput {
  readonly given: CompleteCase;
  readonly hold: ScrewHold;
  readonly grid: Grid;
  /** Weight of what the screws hold down, per slope area. */
  readonly dead_Pa: number;
}

interface Trial {
  readonly step_m: number;
  readonly across_m: number;
  readonly suction_Pa: number | null;
  readonly uplift_Pa: number | null;
  readonly pull_N: number;
  readonly shear_N: number;
  readonly use: HoldUse | null;
}

/**
 * Load on one screw and its use at a spacing.
 *
 * T = (0.6 W - 0.6 D cos) A, V = 0.6 D sin A, A = spacing x spacing between lines
 *
 * @param input   [-, Pa, m] the screw's hold, dead load, grid, case
 * @param zone    as the edition names it
 * @param step_m  [m] along the line
 * @returns       [Pa, N, -] net uplift, pull and shear of one screw, ratios; no ratio where the tables do not reach
 * @source        ASCE-7-16 section 2.4.1 (memory); NDS-2018 eq. 12.4-1 (seen-transcription)
 * @assumes       the screw's own area is its effective wind area; the insulation's weight is left out
 */
export function trialAt(input: ScheduleInput, zone: WindZone, step_m: number): Trial {
  const { given, hold, grid, dead_Pa } = input;
  const across_m = grid.across_m ?? step_m;
  const area_m2 = step_m * across_m;
  const angle_deg = angleOfPitch_deg(given.roof.pitch_rise_per_12);
  const shear_N = RESISTING_DEAD * dead_Pa * sine(angle_deg) * area_m2;
  const suction_Pa = zoneSuction_Pa(given, zone, area_m2);
  if (suction_Pa === null)
    return { step_m, across_m, suction_Pa, uplift_Pa: null, pull_N: 0, shear_N, use: null };
  const net_Pa = ALLOWABLE_STRESS_WIND * suction_Pa - RESISTING_DEAD * dead_Pa * cosine(angle_deg);
  const uplift_Pa = Math.max(0, net_Pa);
  const pull_N = uplift_Pa * area_m2;
  return {
    step_m,
    across_m,
    suction_Pa,
    uplift_Pa,
    pull_N,
    shear_N,
    use: holdUse(hold, pull_N, shear_N, LOAD_DURATION.wind),
  };
}

const placeOf = (zone: WindZone): ScheduleRow['place'] =>
  zone === '1' ? 'field' : zone.startsWith('2') ? 'edge' : 'corner';

/** The widest usual spacing that holds; the closest when none does. */
function chosenTrial(input: ScheduleInput, zone: WindZone): Trial {
  const { usual_m } = input.grid;
  const steps_m = [usual_m, ...STEPS_M.filter((step_m) => step_m < usual_m - STEP_NOISE_M)];
  let last = trialAt(input, zone, usual_m);
  for (const step_m of steps_m) {
    last = trialAt(input, zone, step_m);
    if (last.use === null || last.use.ratio <= 1) return last;
  }
  return last;
}

function rowOf({ zone, area_m2 }: ZoneArea, trial: Trial, isCovered: boolean): ScheduleRow {
  const perArea_1_m2 = 1 / (trial.step_m * trial.across_m);
  return {
    zone,
    place: placeOf(zone),
    area_m2,
    suction_Pa: trial.suction_Pa,
    uplift_Pa: trial.uplift_Pa,
    spacing_m: trial.step_m,
    across_m: trial.across_m,
    count: Math.ceil(area_m2 * perArea_1_m2),
    perArea_1_m2,
    perSquare: perArea_1_m2 * SQUARE_M2,
    ratio: trial.use?.ratio ?? null,
    governing: trial.use?.governing ?? 'not-covered',
    standIn: !isCovered && trial.use !== null,
    needsDesign: !isCovered || trial.use === null || trial.use.ratio > 1,
  };
}

export interface Schedule {
  readonly rows: readonly ScheduleRow[];
  /** The zone whose screw is used most, or the first one where the tables do not reach. */
  readonly worst: Trial;
  readonly count: number;
  /** Weighted by area. */
  readonly perArea_1_m2: number;
  /** Greatest suction over the hold at the usual spacing, dead load left out; null where the tables do not reach. */
  readonly usualUse: number | null;
}

/** Suction of the worst zone over what the usual spacing holds, without help from dead load. */
function usualUseOf(input: ScheduleInput, zones: readonly ZoneArea[]): number | null {
  const { hold, grid, given } = input;
  const area_m2 = grid.usual_m * (grid.across_m ?? grid.usual_m);
  const held_N = Math.min(hold.withdrawal_N, hold.pullThrough_N ?? Infinity) * LOAD_DURATION.wind;
  const suctions_Pa = zones.map(({ zone }) => zoneSuction_Pa(given, zone, area_m2));
  if (suctions_Pa.some((suction_Pa) => suction_Pa === null)) return null;
  const most_Pa = Math.max(...suctions_Pa.map((suction_Pa) => suction_Pa ?? 0));
  return (ALLOWABLE_STRESS_WIND * most_Pa * area_m2) / held_N;
}

/**
 * Fastening schedule: for each zone the widest spacing laid out in practice at which one screw holds.
 *
 * spacings tried: the usual one, then 16, 12, 8, 6 in; count = area / (spacing x spacing between lines), rounded up
 *
 * @param input  [-, Pa, m] see ScheduleInput
 * @returns      [m, -, 1/m²] rows by zone, the worst screw, totals
 * @source       ASCE-7-16 chapter 30 (seen-transcription); NDS-2018 section 12 (seen-transcription)
 * @assumes      where the tables do not cover the roof, its stand-in gives a spacing to begin from, marked and never a pass
 */
export function scheduleOf(input: ScheduleInput): Schedule {
  const { zones } = zonesOfRoof(input.given);
  const trials = zones.map((zone) => ({ zone, trial: chosenTrial(input, zone.zone) }));
  const isCovered = windGapOf(input.given) === null;
  const rows = trials.map(({ zone, trial }) => rowOf(zone, trial, isCovered));
  const [first] = trials;
  if (first === undefined) throw new RangeError('a roof without any zone');
  const worst = trials.reduce(
    (most, { trial }) => ((trial.use?.ratio ?? 0) > (most.use?.ratio ?? 0) ? trial : most),
    first.trial,
  );
  const area_m2 = rows.reduce((sum, row) => sum + row.area_m2, 0);
  return {
    rows,
    worst,
    count: rows.reduce((sum, row) => sum + row.count, 0),
    perArea_1_m2: rows.reduce((sum, row) => sum + row.perArea_1_m2 * row.area_m2, 0) / area_m2,
    usualUse: usualUseOf(input, zones),
  };
}

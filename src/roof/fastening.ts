/** Long screws of a candidate: length, schedule by zone, hold along the slope, what a miss leaves. Provisional. */
import { dimension } from '../catalog/dimensions.ts';
import { screwOf, type Screw } from '../catalog/lumber.ts';
import { isBoard } from '../catalog/sets.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Layer } from '../evaluation/evaluation.ts';
import { screwHold, type ScrewHold, type ScrewReport } from '../structure/screwHold.ts';
import { LOAD_DURATION } from '../structure/timber.ts';
import { insulationLayers } from './assembly.ts';
import { checksOf, missOf } from './fasteningChecks.ts';
import {
  deckGravity,
  drivenOf,
  holdsIn,
  sideMember,
  soldLengths_m,
  type SideMember,
} from './fasteningLength.ts';
import { noteOf } from './fasteningNote.ts';
import { scheduleOf } from './fasteningSchedule.ts';
import { slopePathOf } from './fasteningSlope.ts';
import { zonesOfRoof } from './fasteningZones.ts';
import { angleOfPitch_deg, type RoofMeasures } from './geometry.ts';
import { slidingSnowCase, type RoofLoad } from './loads.ts';
import { once } from './memo.ts';
import type { Variant } from './variant.ts';
import { windGapOf } from './windEdition.ts';

const SCREW = 'wood-14';
/** [m] rounding noise of a sum of lengths. */
const NOISE_M = 1e-9;

/** [-] figures kept of what the schedule shows: more are rounding noise and make the evaluation long (our judgement). */
const FIGURES = 6;

/** [any] smaller numbers are rounding noise, and their power of ten may not fit a number. */
const LEAST = 1e-200;

/** A number to the figures that are kept: a whole multiple of a power of ten. */
function shortened(value: number): number {
  if (Math.abs(value) < LEAST) return 0;
  const places = FIGURES - 1 - Math.floor(Math.log10(Math.abs(value)));
  const scale = 10 ** Math.abs(places);
  return places >= 0 ? Math.round(value * scale) / scale : Math.round(value / scale) * scale;
}

/** Every number below a value to the figures that are kept. */
function kept<T>(value: T): T {
  if (typeof value === 'number') return shortened(value) as T;
  if (Array.isArray(value)) return value.map(kept) as T;
  if (typeof value !== 'object' || value === null) return value;
  const short: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) short[key] = kept(inner);
  return short as T;
}

export interface Fastening {
  readonly fasteners: Candidate['fasteners'];
  /** Suction of the worst zone over what the usual spacing holds; null when the wind tables do not reach. */
  readonly windUse: number | null;
}

const total_m = (layers: readonly Layer[]): number =>
  layers.reduce((sum, layer) => sum + layer.thickness_m, 0);

const shownHold = (
  hold: ScrewHold,
  screw: Screw,
  side: SideMember,
  shared: { thread_m: number; gap_m: number; mainGravity: number; name: string | undefined },
): Candidate['fasteners']['hold'] => ({
  name: shared.name ?? screw.name,
  fromReport: [...hold.fromReport],
  nominal_m: screw.nominal_m,
  root_m: screw.root_m,
  head_m: screw.head_m ?? null,
  thread_m: shared.thread_m,
  side_m: side.thickness_m,
  gap_m: shared.gap_m,
  mainGravity: shared.mainGravity,
  sideGravity: side.specificGravity,
  withdrawal_N: hold.withdrawal_N,
  pullThrough_N: hold.pullThrough_N,
  lateral_N: hold.lateral_N,
  mode: hold.gap.lateral.governing,
  leastPenetration_m: hold.leastPenetration_m,
  meetsPenetration: shared.thread_m >= hold.leastPenetration_m - NOISE_M,
  windDuration: LOAD_DURATION.wind,
});

/**
 * Screw length, schedule by zone, hold along the slope, and the checks behind them.
 *
 * length = layers above the deck + deck + 1 1/2 in into the rafter (or past the deck), rounded up to a length sold
 *
 * @param given    [-] the complete case
 * @param variant  [-] strategy and ventilation
 * @param layers   [m] layers of the candidate
 * @param load     [Pa] loads on it
 * @param roof     [m, m²] its measures
 * @returns        [m, 1/m², -] schedule, ways against sliding, checks; and the use of the usual spacing in wind
 * @source         NDS-2018 section 12 (seen-transcription); ASCE-7-16 chapter 30 (seen-transcription); AWC-TR12 (memory)
 * @assumes        No. 14 wood screws where no report is given; panel screws go through the spacer blocks, which count as wood
 */
export const fasteningOf = (
  given: CompleteCase,
  variant: Variant,
  layers: readonly Layer[],
  load: RoofLoad,
  roof: RoofMeasures,
): Fastening =>
  once(given, fasteningKey(variant, layers, load), () => computed(given, variant, layers, load, roof));

/** What differs within a case: what holds the screw, what it crosses, and the loads; not the carrier. */
const fasteningKey = (variant: Variant, layers: readonly Layer[], load: RoofLoad): string =>
  [
    'fastening',
    holdsIn(variant),
    variant.ventilation,
    load.upper_Pa,
    load.slidingSnow_Pa,
    ...layers.map(({ role, material, thickness_m }) => `${role}:${material ?? ''}:${thickness_m}`),
  ].join('/');

function computed(
  given: CompleteCase,
  variant: Variant,
  layers: readonly Layer[],
  load: RoofLoad,
  roof: RoofMeasures,
): Fastening {
  const into = holdsIn(variant);
  const sold_m = soldLengths_m(given);
  const driven = drivenOf(given, variant, layers, sold_m);
  const screw = screwOf(SCREW);
  const report: ScrewReport = given.insulation.screwReport ?? {};
  const side = sideMember(layers, variant);
  const boards = insulationLayers(layers);
  const gap_m = total_m(boards);
  const mainGravity = into === 'rafter' ? dimension('wood-gravity') : deckGravity(given);
  const main = { thread_m: driven.thread_m, specificGravity: mainGravity };
  const hold = screwHold({ screw, side, main, gap_m, report });
  const grid =
    into === 'rafter'
      ? { usual_m: dimension('screw-step-rafter_m'), across_m: given.framing.spacing_m }
      : { usual_m: dimension('screw-grid-deck_m'), across_m: null };
  const schedule = scheduleOf({ given, hold, grid, dead_Pa: load.upper_Pa });
  const angle_deg = angleOfPitch_deg(given.roof.pitch_rise_per_12);
  const slopePath = slopePathOf({
    angle_deg,
    dead_Pa: load.upper_Pa,
    snow_Pa: load.slidingSnow_Pa,
    snowCase: slidingSnowCase(load),
    slopeLength_m: roof.slopeLength_m,
    rafterSpacing_m: given.framing.spacing_m,
    screw,
    report,
    hold,
    perArea_1_m2: schedule.perArea_1_m2,
    gap_m,
    boards: boards.map(({ material }) => material).filter((id) => id !== null && isBoard(id)),
    side,
    stack_m: driven.above_m + given.framing.deckThickness_m,
    soldLength: (length_m) => sold_m.find((one_m) => one_m >= length_m - NOISE_M) ?? null,
    eaveLength_m: roof.eaveLength_m,
    area_m2: roof.area_m2,
  });
  const shown = shownHold(hold, screw, side, {
    thread_m: driven.thread_m,
    gap_m,
    mainGravity,
    name: given.insulation.screwReport?.name,
  });
  const ratios = schedule.rows.map((row) => row.ratio);
  const windGap = windGapOf(given);
  const base = {
    screwLength_m: driven.length_m,
    sold: driven.isSold,
    into,
    penetration_m: driven.penetration_m,
    spacing_m: schedule.rows[0]?.spacing_m ?? grid.usual_m,
    perArea_1_m2: schedule.perArea_1_m2,
    count: schedule.count,
    slopeUse: slopePath.ways[0]?.ratio ?? slopePath.ratio,
    mayShowBelow: given.framing.deckSeenFromBelow && !driven.isHidden,
    hold: kept(shown),
    edition: zonesOfRoof(given).edition,
    edgeWidth_m: zonesOfRoof(given).edge_m,
    schedule: kept([...schedule.rows]),
    windGap,
    upliftUse:
      windGap !== null || ratios.includes(null) ? null : Math.max(...ratios.map((ratio) => ratio ?? 0)),
    upliftNeedsDesign: schedule.rows.some((row) => row.needsDesign),
    slopePath: kept(slopePath),
  };
  const setting = {
    given,
    hold: shown,
    into,
    worst: schedule.worst,
    slopePath,
    rows: schedule.rows,
    windGap,
  } as const;
  return {
    fasteners: {
      ...base,
      checks: kept(checksOf(setting)),
      missesRafter:
        into === 'deck'
          ? null
          : kept(missOf(setting, { deckGravity: deckGravity(given), standsOut_m: driven.penetration_m })),
      note: noteOf({ ...base, isFurring: side.isFurring }),
    },
    windUse: schedule.usualUse,
  };
}

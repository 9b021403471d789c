/** Long screws of a candidate: length, schedule by zone, hold along the slope, what a miss leaves. Provisional. */
import { dimension } from '../catalog/dimensions.ts';
import { screwLengths_m, screwOf, type Screw } from '../catalog/lumber.ts';
import { isBoard } from '../catalog/sets.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Layer } from '../evaluation/evaluation.ts';
import { screwHold, type ScrewHold, type ScrewReport } from '../structure/screwHold.ts';
import { screwLength } from '../structure/screwLength.ts';
import { LOAD_DURATION } from '../structure/timber.ts';
import { insulationLayers } from './assembly.ts';
import { checksOf, missOf } from './fasteningChecks.ts';
import { noteOf } from './fasteningNote.ts';
import { scheduleOf } from './fasteningSchedule.ts';
import { slopePathOf } from './fasteningSlope.ts';
import { zonesOfRoof } from './fasteningZones.ts';
import { angleOfPitch_deg, type RoofMeasures } from './geometry.ts';
import type { RoofLoad } from './loads.ts';
import type { Variant } from './variant.ts';

const SCREW = 'wood-14';
/** [m] least thread counted in a deck: 1/8 in, so that a screw that hardly bites shows as a hold near nothing. */
const LEAST_BITE_M = 0.003175;
/** [m] lengths past the longest common one come in steps of 1 in (common practice). */
const LONG_STEP_M = 0.0254;
/** [m] rounding noise of a sum of lengths. */
const NOISE_M = 1e-9;

/** [-] figures kept of what the schedule shows: more are rounding noise and make the evaluation long (our judgement). */
const FIGURES = 6;

/** Every number below a value to the figures that are kept. */
function kept<T>(value: T): T {
  if (typeof value === 'number') return Number(value.toPrecision(FIGURES)) as T;
  if (Array.isArray(value)) return value.map(kept) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, kept(inner)])) as T;
}

export interface Fastening {
  readonly fasteners: Candidate['fasteners'];
  /** Suction of the worst zone over what the usual spacing holds; null when the wind tables do not reach. */
  readonly windUse: number | null;
}

/** A prebonded panel holds in the deck; furring and plain decks are screwed into the framing. */
const holdsIn = (variant: Variant): 'rafter' | 'deck' =>
  variant.strategy === 'prebonded-panel' ? 'deck' : 'rafter';

const thickness_m = (layers: readonly Layer[]): number =>
  layers.reduce((sum, layer) => sum + layer.thickness_m, 0);

/** What the screw goes through above the deck: boards, gap, and the top sheet or the furring. */
function stackAboveDeck(layers: readonly Layer[], variant: Variant): number {
  const through = new Set<Layer['role']>(
    variant.ventilation === 'vented-furring'
      ? ['air-barrier', 'insulation', 'vent-gap']
      : ['air-barrier', 'insulation', 'vent-gap', 'upper-deck'],
  );
  return thickness_m(layers.filter((layer) => through.has(layer.role)));
}

export interface SideMember {
  readonly thickness_m: number;
  readonly specificGravity: number;
  readonly isFurring: boolean;
}

function sideMember(layers: readonly Layer[], variant: Variant): SideMember {
  if (variant.ventilation === 'vented-furring')
    return {
      thickness_m: dimension('furring-height_m'),
      specificGravity: dimension('wood-gravity'),
      isFurring: true,
    };
  const upper = layers.find((layer) => layer.role === 'upper-deck');
  return {
    thickness_m: upper?.thickness_m ?? dimension('upper-deck_m'),
    specificGravity: dimension('panel-gravity'),
    isFurring: false,
  };
}

/** Specific gravity of the deck for fasteners. */
const deckGravity = (given: CompleteCase): number =>
  given.framing.deck === 'plank' ? dimension('wood-gravity') : dimension('panel-gravity');

/** Lengths of the report, its longest in the usual steps, or the lengths commonly sold. */
function soldLengths_m({ insulation: { screwReport } }: CompleteCase): readonly number[] {
  if (screwReport?.lengths_m !== undefined) return [...screwReport.lengths_m].sort((a, b) => a - b);
  const longest_m = screwReport?.longest_m;
  if (longest_m === undefined) return screwLengths_m;
  const common_m = screwLengths_m.filter((length_m) => length_m <= longest_m + NOISE_M);
  const last_m = common_m.at(-1) ?? 0;
  const further = Math.max(0, Math.floor((longest_m - last_m + NOISE_M) / LONG_STEP_M));
  return [...common_m, ...Array.from({ length: further }, (_, index) => last_m + (index + 1) * LONG_STEP_M)];
}

interface Driven {
  readonly length_m: number;
  readonly penetration_m: number;
  readonly isSold: boolean;
  /** Thread that counts: in the rafter past the deck, or in the deck. */
  readonly thread_m: number;
  readonly above_m: number;
  readonly isHidden: boolean;
}

/** How long, and how deep in what holds it. */
function drivenOf(
  given: CompleteCase,
  variant: Variant,
  layers: readonly Layer[],
  sold_m: readonly number[],
): Driven {
  const into = holdsIn(variant);
  const deck_m = given.framing.deckThickness_m;
  const least_m = given.insulation.screwReport?.minimumPenetration_m ?? 0;
  const embedment_m =
    into === 'rafter'
      ? Math.max(dimension('screw-embedment_m'), least_m)
      : dimension('screw-tip-below-deck_m');
  const above_m = stackAboveDeck(layers, variant);
  const isSeen = given.framing.deckSeenFromBelow;
  const found = screwLength({
    aboveDeck_m: above_m,
    deck_m,
    isUndersideVisible: isSeen,
    embedment_m,
    sold_m,
  });
  const isSold = found.kind === 'length';
  // A panel over a deck in view: the longest screw sold that ends within the deck.
  const hidden_m = into === 'deck' && isSeen && isSold ? found.hiddenLimit_m : null;
  const bite_m = hidden_m === null ? deck_m : Math.max(LEAST_BITE_M, hidden_m - above_m);
  return {
    length_m: hidden_m ?? (isSold ? found.length_m : above_m + deck_m + embedment_m),
    penetration_m: hidden_m === null ? (isSold ? found.penetration_m : embedment_m) : hidden_m - above_m,
    isSold,
    thread_m: into === 'rafter' ? embedment_m : Math.min(deck_m, bite_m),
    above_m,
    isHidden: hidden_m !== null,
  };
}

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
export function fasteningOf(
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
  const gap_m = thickness_m(boards);
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
    snow_Pa: load.snow_Pa,
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
    upliftUse: ratios.includes(null) ? null : Math.max(...ratios.map((ratio) => ratio ?? 0)),
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

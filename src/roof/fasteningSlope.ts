/** What keeps the layers above the insulation from sliding down the slope: four ways, compared. */
import { dimension } from '../catalog/dimensions.ts';
import { lumberOf, screwOf, type Screw } from '../catalog/lumber.ts';
import type { BoardId } from '../catalog/sets.ts';
import type { SlopePath, SlopeWay } from '../evaluation/fastening.ts';
import { eaveCleat } from '../structure/eaveCleat.ts';
import { screwHold, type ScrewHold, type ScrewReport } from '../structure/screwHold.ts';
import { SLANT_DEG, slantedLength, slantedScrews } from '../structure/slantedScrews.ts';
import { gapSlip } from '../structure/slopeTruss.ts';
import { slopeScreening } from '../structure/slope.ts';
import { LOAD_DURATION } from '../structure/timber.ts';
import { metersFromInches } from '../units.ts';
import { cosine, sine } from './geometry.ts';

/** [m] taller blocks and longer slanted screws want a drawing of their own: 8 in (our judgement). */
const TALL_M = metersFromInches(8);
/** [m] spacings of slanted screws along a rafter that are tried: 48 to 8 in (our judgement). */
const SLANTED_STEPS_M = [48, 32, 24, 16, 12, 8].map(metersFromInches);
/** [m] strip of a sheet that presses on board beside a line of screws: 12 in (our judgement). */
const PRESSED_M = metersFromInches(12);
/** [m] blocks are cut to the next half inch (our judgement). */
const BLOCK_STEP_M = metersFromInches(1 / 2);
/** [m] 0.015 in: the movement that the wall table is believed to allow (memory). */
const SLIP_LIMIT_M = metersFromInches(0.015);
/** [m] 1 1/2 in: the block at the foot is a 2x laid flat (common practice). */
const BLOCK_M = metersFromInches(3 / 2);

export interface SlopeInput {
  readonly angle_deg: number;
  /** Above the insulation, per slope area. */
  readonly dead_Pa: number;
  readonly snow_Pa: number;
  /** Which case of snow that is. */
  readonly snowCase: SlopePath['snowCase'];
  /** Eave edge to ridge. */
  readonly slopeLength_m: number;
  readonly rafterSpacing_m: number;
  readonly screw: Screw;
  readonly report: ScrewReport;
  readonly hold: ScrewHold;
  readonly perArea_1_m2: number;
  readonly gap_m: number;
  readonly boards: readonly BoardId[];
  readonly side: {
    readonly thickness_m: number;
    readonly specificGravity: number;
    readonly isFurring: boolean;
  };
  /** Everything a screw crosses above the framing. */
  readonly stack_m: number;
  /** The next length sold; null when none is long enough. */
  readonly soldLength: (length_m: number) => number | null;
  readonly eaveLength_m: number;
  readonly area_m2: number;
}

interface SlopeCase {
  readonly along_Pa: number;
  readonly pressing_Pa: number;
  readonly loadDuration: number;
}

function casesOf({ dead_Pa, snow_Pa, angle_deg }: SlopeInput): SlopeCase[] {
  const of = (load_Pa: number, loadDuration: number): SlopeCase => ({
    along_Pa: load_Pa * sine(angle_deg),
    pressing_Pa: load_Pa * cosine(angle_deg),
    loadDuration,
  });
  const dead = of(dead_Pa, LOAD_DURATION.permanent);
  return snow_Pa > 0 ? [dead, of(dead_Pa + snow_Pa, LOAD_DURATION.snow)] : [dead];
}

function screwsAcross(input: SlopeInput, demand_Pa: number): SlopeWay {
  const { hold, perArea_1_m2, gap_m } = input;
  const screening = slopeScreening({
    alongSlope_Pa: demand_Pa,
    design_N: hold.lateral_N,
    screwsPerArea_1_m2: perArea_1_m2,
    gap_m,
  });
  const needsDesign = screening.standing === 'needs-design';
  return {
    id: 'screws-across',
    ratio: screening.check.ratio,
    needsDesign,
    because:
      needsDesign && screening.check.ratio <= 1 ? 'more than 4 in (102 mm) between the wood faces' : '',
    count: null,
    spacing_m: null,
    length_m: null,
    pull_N: null,
    push_N: demand_Pa / perArea_1_m2,
    governing: 'shear',
    source: 'IBC-2018',
    clause: 'Table 2603.13.2 by calibration, AWC-TR12 gap equations',
    known: 'computed',
  };
}

function eaveBlock(input: SlopeInput): SlopeWay {
  const screw = screwOf('wood-14');
  const gravity = dimension('wood-gravity');
  const foot = screwHold({
    screw,
    side: { thickness_m: BLOCK_M, specificGravity: gravity },
    main: { thread_m: dimension('screw-embedment_m'), specificGravity: gravity },
    gap_m: 0,
  });
  const lever_m = input.gap_m + input.side.thickness_m / 2;
  const design = eaveCleat({
    cases: casesOf(input).map(({ along_Pa, loadDuration }) => ({
      force_N: along_Pa * input.slopeLength_m * input.rafterSpacing_m,
      loadDuration,
    })),
    lever_m,
    hold: { ...foot, shear_N: foot.gap.lateral.reference_N },
    nominal_m: screw.nominal_m,
    bearingArea_m2: input.side.thickness_m * dimension('furring-width_m'),
    bearing_Pa: lumberOf('spruce-pine-fir', '2x4').bearing_Pa,
  });
  const isTall = lever_m > TALL_M;
  return {
    id: 'eave-block',
    ratio: design.ratio,
    needsDesign: isTall || design.ratio > 1,
    because: isTall ? 'a block taller than 8 in (203 mm)' : '',
    count: design.count,
    spacing_m: input.rafterSpacing_m,
    length_m: Math.ceil(design.length_m / BLOCK_STEP_M) * BLOCK_STEP_M,
    pull_N: design.tension_N,
    push_N: design.shear_N * design.count,
    governing: design.governing,
    source: 'NDS-2018',
    clause: 'sections 12.2 to 12.4, statics of a rigid block',
    known: 'computed',
  };
}

/** The weakest board of the stack decides what it may carry. */
const boardStrength_Pa = (boards: readonly BoardId[]): number =>
  Math.min(...boards.map((id) => dimension(`board-strength-${id}_Pa`)));

function slanted(input: SlopeInput, strut: 'board' | 'screw'): SlopeWay {
  const { screw, report, side, gap_m } = input;
  const thread_m = dimension('screw-embedment_m');
  const into = screwHold({
    screw,
    side,
    main: { thread_m, specificGravity: dimension('wood-gravity') },
    gap_m,
    report,
  });
  const design = slantedScrews({
    cases: casesOf(input),
    across_m: input.rafterSpacing_m,
    steps_m: SLANTED_STEPS_M,
    withdrawal_N: into.withdrawal_N,
    pullThrough_N: into.pullThrough_N,
    strut:
      strut === 'board'
        ? {
            kind: 'board',
            width_m: side.isFurring
              ? dimension('furring-width_m')
              : Math.min(PRESSED_M, input.rafterSpacing_m),
            strength_Pa: boardStrength_Pa(input.boards),
          }
        : { kind: 'screw', root_m: screw.root_m, yield_Pa: screw.bendingYield_Pa, gap_m },
  });
  const needed_m = slantedLength(input.stack_m) + thread_m;
  const sold_m = input.soldLength(needed_m);
  const because =
    strut === 'screw'
      ? 'the pushing screw needs thread under its head and a report for it'
      : gap_m > TALL_M
        ? 'more than 8 in (203 mm) of board'
        : sold_m === null
          ? 'longer than the screws that are sold'
          : '';
  return {
    id: strut === 'board' ? 'slanted-and-board' : 'slanted-pairs',
    ratio: design.ratio,
    needsDesign: because !== '' || design.ratio > 1,
    because,
    count: null,
    spacing_m: design.step_m,
    length_m: sold_m ?? needed_m,
    pull_N: design.tension_N,
    push_N: design.compression_N,
    governing: design.governing,
    source: 'EN-1995-1-1-2004',
    clause: `clause 8.7.2 at ${SLANT_DEG}° to the slope, statics of two pinned bars`,
    known: 'memory',
  };
}

/** Screws that the chosen way asks for beside the schedule. */
function furtherScrews({ id, count, spacing_m }: SlopeWay, input: SlopeInput): number {
  if (id === 'eave-block') return (count ?? 0) * (Math.ceil(input.eaveLength_m / input.rafterSpacing_m) + 1);
  if (spacing_m === null) return 0;
  const each = id === 'slanted-pairs' ? 2 : 1;
  return Math.ceil((each * input.area_m2) / (spacing_m * input.rafterSpacing_m));
}

/** The first way that holds without design; else the one that comes nearest. */
function chosenOf(ways: readonly SlopeWay[]): SlopeWay {
  const [first] = ways;
  if (first === undefined) throw new RangeError('no way against sliding');
  return (
    ways.find((way) => !way.needsDesign) ??
    ways.reduce((best, next) => (next.ratio < best.ratio ? next : best), first)
  );
}

/**
 * Ways to keep the upper layers from sliding, each against the pull down the slope.
 *
 * demand (D + S) sin; screws across the gap, block at the eave, slanted screws against board, slanted pairs
 *
 * @param input  [Pa, m, N, 1/m²] loads, roof, screws, layers
 * @returns      [Pa, N/m, -, m] demand, four ways with ratios, the first that holds without design, slip of plain screws
 * @source       ASCE-FORENSIC-2012 abstract (seen-secondary); NDS-2018 section 12 (seen-transcription); EN-1995-1-1-2004 (memory)
 * @assumes      no friction, no shear through board; each way carries all of it; snow on the slope area; a strip is stiff along
 *               itself, so the lee side counts with its mean from eave to ridge; drift counts whole, as at the step
 */
export function slopePathOf(input: SlopeInput): SlopePath {
  const demand_Pa = (input.dead_Pa + input.snow_Pa) * sine(input.angle_deg);
  const ways = [
    screwsAcross(input, demand_Pa),
    eaveBlock(input),
    slanted(input, 'board'),
    slanted(input, 'screw'),
  ];
  const chosen = chosenOf(ways);
  return {
    dead_Pa: input.dead_Pa,
    snow_Pa: input.snow_Pa,
    snowCase: input.snowCase,
    demand_Pa,
    atEave_N_m: demand_Pa * input.slopeLength_m,
    ways,
    chosen: chosen.id,
    ratio: chosen.ratio,
    needsDesign: chosen.needsDesign,
    screws: furtherScrews(chosen, input),
    slip_m: gapSlip(demand_Pa / input.perArea_1_m2, input.gap_m, input.screw.root_m),
    slipLimit_m: SLIP_LIMIT_M,
  };
}

/**
 * The shape of the fastening of one candidate: a schedule by wind zone, what holds the upper layers back from sliding,
 * the checks behind both, and what is left when a screw misses the rafter. Everything is provisional.
 */
import * as v from 'valibot';
import { windEditions, windZones } from '../catalog/windCoefficients.ts';

const number = v.number();
const maybe = v.nullable(v.number());
const word = v.string();
const flag = v.boolean();
const citation = { source: word, clause: word, known: word } as const;

export const zonePlaces = ['field', 'edge', 'corner'] as const;
export const holdGoverns = ['withdrawal', 'pull-through', 'combined', 'not-covered'] as const;

/** One zone of the roof with the spacing that holds in it. */
export const scheduleRowSchema = v.object({
  /** As the wind standard names it. */
  zone: v.picklist(windZones),
  place: v.picklist(zonePlaces),
  area_m2: number,
  /** Of the wind alone, strength level; null where the wind tables do not reach the slope. */
  suction_Pa: maybe,
  /** Net, allowable-stress level, 0.6 W less 0.6 D; null where the wind tables do not reach the slope. */
  uplift_Pa: maybe,
  /** Along the line of screws, and between lines. */
  spacing_m: number,
  across_m: number,
  count: number,
  perArea_1_m2: number,
  /** For each roofing square of 100 ft². */
  perSquare: number,
  ratio: maybe,
  governing: v.picklist(holdGoverns),
  /** True where the wind is that of another roof, which stands in: a spacing to begin from, never a pass. */
  standIn: flag,
  /** True where no spacing tried holds, or the tables do not reach this roof. */
  needsDesign: flag,
});

/** One screw, reference values at load duration 1. */
export const screwHoldSchema = v.object({
  name: word,
  /** Which values came from the report of the screw; empty when all are by the equations. */
  fromReport: v.array(v.picklist(['withdrawal', 'pull-through', 'lateral', 'penetration'])),
  nominal_m: number,
  root_m: number,
  head_m: maybe,
  thread_m: number,
  side_m: number,
  gap_m: number,
  mainGravity: number,
  sideGravity: number,
  withdrawal_N: number,
  pullThrough_N: maybe,
  lateral_N: number,
  /** Yield mode of the shear across the insulation. */
  mode: word,
  leastPenetration_m: number,
  meetsPenetration: flag,
  /** Load duration factor of wind. */
  windDuration: number,
});

export const slopeWayIds = ['screws-across', 'eave-block', 'slanted-and-board', 'slanted-pairs'] as const;

/** One way to keep the upper layers from sliding. */
export const slopeWaySchema = v.object({
  id: v.picklist(slopeWayIds),
  ratio: number,
  needsDesign: flag,
  /** Why it needs design whatever the ratio; empty when the ratio decides. */
  because: word,
  /** Screws on each rafter (block), or nothing. */
  count: maybe,
  /** Along each rafter (slanted screws). */
  spacing_m: maybe,
  /** Of the block along the rafter, or of the slanted screw. */
  length_m: maybe,
  /** Pull in the worst screw and push in block, board or strut. */
  pull_N: maybe,
  push_N: maybe,
  governing: word,
  ...citation,
});

/** Even snow, the mean of the lee side after wind over the ridge, or drift below a higher roof. */
export const snowCases = ['balanced', 'unbalanced', 'drift'] as const;

export const slopePathSchema = v.object({
  /** Weight above the insulation, and the snow that pulls most down the slope. */
  dead_Pa: number,
  snow_Pa: number,
  snowCase: v.picklist(snowCases),
  /** (D + S) sin of what lies above the insulation, for each slope area. */
  demand_Pa: number,
  /** Collected at the eave over the whole slope. */
  atEave_N_m: number,
  ways: v.array(slopeWaySchema),
  chosen: v.picklist(slopeWayIds),
  ratio: number,
  needsDesign: flag,
  /** Screws that the chosen way asks for on the whole roof beside the schedule. */
  screws: number,
  /** Bend of the plain screws alone under that pull, and the movement that the wall table is believed to allow. */
  slip_m: number,
  slipLimit_m: number,
});

export const fasteningCheckSchema = v.object({
  id: word,
  what: word,
  /** Null where it comes from a wind that no table gives. */
  demand: maybe,
  capacity: number,
  unit: v.picklist(['N', 'm', 'Pa']),
  ratio: maybe,
  /** True where the demand is of a wind that stands in, or of none: neither a pass nor a miss. */
  open: flag,
  who: word,
  ...citation,
});

/** A screw that finds no rafter holds in the deck alone. */
export const missSchema = v.object({
  hold_N: number,
  /** Null where the wind tables do not reach. */
  demand_N: maybe,
  ratio: maybe,
  /** How far its tip stands out below the deck, and whether that shows. */
  standsOut_m: number,
  shows: flag,
  ...citation,
});

/** Why the wind tables do not reach this roof, and the roof whose figures are shown instead. */
export const windGapSchema = v.object({ reason: word, standIn: v.nullable(word) });

export const fasteningEntries = {
  hold: screwHoldSchema,
  /** Null where the wind tables reach. */
  windGap: v.nullable(windGapSchema),
  edition: v.picklist(windEditions),
  /** Width a of the edge strips. */
  edgeWidth_m: number,
  schedule: v.array(scheduleRowSchema),
  /** Greatest ratio of the schedule; null where the wind tables do not reach, whatever stands in. */
  upliftUse: maybe,
  /** True when any row of the schedule needs design. */
  upliftNeedsDesign: flag,
  slopePath: slopePathSchema,
  checks: v.array(fasteningCheckSchema),
  /** Null where the screws hold in the deck by design. */
  missesRafter: v.nullable(missSchema),
  /** One sentence for the drawing, both unit systems. */
  note: word,
} as const;

export type ScheduleRow = v.InferOutput<typeof scheduleRowSchema>;
export type SlopePath = v.InferOutput<typeof slopePathSchema>;
export type SlopeWay = v.InferOutput<typeof slopeWaySchema>;
export type FasteningCheck = v.InferOutput<typeof fasteningCheckSchema>;
export type RafterMiss = v.InferOutput<typeof missSchema>;

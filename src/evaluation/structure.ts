/** The shape of loads, combinations and screening of the structure. Everything is provisional: others decide. */
import * as v from 'valibot';

const number = v.number();
const maybe = v.nullable(v.number());
const word = v.string();
const flag = v.boolean();

const citation = v.object({ source: word, clause: word, known: word, note: v.optional(word) });

/** One load or factor with its name; `value` is null where no table reaches. */
export const namedLoadSchema = v.object({
  /** Unique within its list: `sloped-snow`. */
  id: word,
  what: word,
  value: maybe,
  /** `Pa`, `m`, `m/s` or `ratio`. */
  unit: word,
  /** `strength` (factored hazard), `allowable` (in allowable-stress combinations as it is), `service`, or `factor`. */
  level: v.picklist(['strength', 'allowable', 'service', 'factor']),
  /** True where the figure was read from a transcription or remembered: confirm in the standard. */
  confirm: flag,
  ...citation.entries,
});

/** Wind on one zone of the roof or of an overhang, strength level, square to the surface. */
export const windZoneSchema = v.object({
  id: v.picklist(['field', 'edge', 'corner', 'eave-overhang', 'rake-overhang']),
  /** As the edition names them: `2n`, `3r`. */
  zones: v.array(word),
  effectiveArea_m2: number,
  uplift_Pa: maybe,
  downward_Pa: maybe,
});

/** What no table covers here, and what the engineer has to do. */
export const notCoveredSchema = v.object({ what: word, reason: word, todo: word });

/** Loads that all candidates share. */
export const siteLoadsSchema = v.object({
  provisional: v.literal(true),
  standard: v.picklist(['asce7-16', 'asce7-22']),
  standardReason: word,
  snowStandard: v.picklist(['asce7-16', 'asce7-22']),
  snowStandardReason: word,
  meanRoofHeight_m: number,
  /** Width of edge and corner zones; null where the wind tables do not reach. */
  edgeWidth_m: maybe,
  loads: v.array(namedLoadSchema),
  windZones: v.array(windZoneSchema),
  notCovered: v.array(notCoveredSchema),
  /** Questions that the loads leave open. */
  open: v.array(word),
});

export const checkSchema = v.object({
  id: word,
  what: word,
  demand: maybe,
  capacity: maybe,
  unit: word,
  /** demand / capacity; above 1 the screening fails. */
  ratio: maybe,
  who: word,
  ...citation.entries,
});

/** The outrigger chosen by the screening: the smallest that passes, or the strongest that fits. */
export const outriggerSchema = v.object({
  size: word,
  orientation: v.picklist(['flat', 'on-edge']),
  depth_m: number,
  width_m: number,
  backSpan_m: number,
  spacing_m: number,
});

/** One combination and what it does to the one member that carries the overhang. Forces down and up as named. */
export const combinationSchema = v.object({
  /** See `combinationTexts` of the table that the report reads: `dead-snow`. */
  id: word,
  formula: word,
  clause: word,
  /** Square to the slope, down positive. */
  normal_Pa: number,
  loadDuration: number,
  /** False for a robust check, which is shown and governs nothing. */
  counts: flag,
  moment_Nm: number,
  shear_N: number,
  /** What the wall line must push up with; negative is uplift on the tie. */
  wall_N: number,
  /** What the heel must be held down with; negative presses. */
  heel_N: number,
  tip_m: number,
  /** Greatest use of the member and its seat and screws in this case. */
  use: number,
});

/** How the carrier was looked at: its member, its screws, and the sizes that would work. */
export const carrierPlanSchema = v.object({
  /** Such as `2x6 Spruce-Pine-Fir No. 2`. */
  member: word,
  orientation: v.picklist(['flat', 'on-edge']),
  spacing_m: number,
  /** Along the member. */
  overhang_m: number,
  backSpan_m: number,
  tip_N: number,
  /** Depth cut away at the wall line. */
  notch_m: number,
  seat: word,
  /** Turn of the seat in the governing gravity case, [rad]. */
  seatRotation_rad: number,
  screws: v.nullable(
    v.object({
      heel: number,
      wall: number,
      heelNeeded: number,
      wallNeeded: number,
      length_m: number,
      sold: flag,
    }),
  ),
  /** Check with the greatest ratio, and its combination. */
  governs: v.nullable(v.object({ check: word, combination: word, ratio: number })),
  /** Reasons why it goes to the engineer whatever the ratios. */
  gates: v.array(word),
  /** The smallest that passes for the wanted overhang within the room there is; null when none does. */
  smallest: v.nullable(word),
  /** The next smaller size tried, and its ratio: it fails. */
  nextSmaller: v.nullable(v.object({ member: word, ratio: number })),
});

/** The rake, where the same carrier runs level past the gable wall. */
export const rakeSchema = v.object({
  overhang_m: number,
  limit_m: number,
  member: word,
  governs: word,
  ratio: number,
});

export const structureSchema = v.object({
  provisional: v.literal(true),
  carrier: v.picklist(['rafter-tails', 'truss-tails', 'outriggers']),
  overhang_m: number,
  /** Deepest overhang that passes this screening with the carrier's usual size. */
  screeningLimit_m: number,
  /** Wanted overhang over the screening limit. */
  use: number,
  /** Advised range of overhang when the wanted one fails, [m]. */
  advised_m: v.nullable(v.tuple([number, number])),
  addedDeadLoad_Pa: number,
  alongSlope_Pa: number,
  /** Null for tails, and where no outrigger fits between the boards. */
  outrigger: v.nullable(outriggerSchema),
  checks: v.array(checkSchema),
  /** Loads of this build-up alone; those of the place are in `siteLoads`. */
  loads: v.array(namedLoadSchema),
  combinations: v.array(combinationSchema),
  /** Null for truss tails and where nothing fits. */
  plan: v.nullable(carrierPlanSchema),
  /** Null without a rake overhang on outriggers. */
  rake: v.nullable(rakeSchema),
});

export type NamedLoad = v.InferOutput<typeof namedLoadSchema>;
export type WindZoneLoad = v.InferOutput<typeof windZoneSchema>;
export type NotCoveredLoad = v.InferOutput<typeof notCoveredSchema>;
export type SiteLoads = v.InferOutput<typeof siteLoadsSchema>;
export type StructureCheck = v.InferOutput<typeof checkSchema>;
export type Combination = v.InferOutput<typeof combinationSchema>;
export type CarrierPlan = v.InferOutput<typeof carrierPlanSchema>;
export type RakeScreening = v.InferOutput<typeof rakeSchema>;

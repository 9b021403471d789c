/** Screening of what carries the eave overhang. Provisional: the structural engineer decides. */
import { dimension } from '../catalog/dimensions.ts';
import type { LumberSize } from '../catalog/lumber.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Layer, StructureCheck } from '../evaluation/evaluation.ts';
import { ENGINEER_OVERHANG_M, outriggerScreening, type Outrigger } from '../structure/outrigger.ts';
import { smallestOutrigger } from '../structure/outriggerChoice.ts';
import { prescriptiveOverhang, rafterTailScreening } from '../structure/rafterTail.ts';
import type { ScreeningCheck } from '../structure/screening.ts';
import { sectionOf } from '../structure/timber.ts';
import { insulationLayers } from './assembly.ts';
import { angleOfPitch_deg, cosine, measureRoof, type EdgeCarrier } from './geometry.ts';
import { alongSlope_Pa, type RoofLoad } from './loads.ts';
import { screwOf } from '../catalog/lumber.ts';

const SPECIES = 'spruce-pine-fir';
/** [-] screws at each end of an outrigger (common practice). */
const SCREWS_AN_END = 2;
const SCREW = 'wood-14';
/** [-] stands for "past any limit" where nothing passes. */
const NO_LIMIT_USE = 9;
/** [-] rounding noise of a ratio. */
const RATIO_NOISE = 1e-9;
/** [m] overhangs between which the limit is sought: 2 in to 5 ft. */
const SHORTEST_M = 0.0508;
const LONGEST_M = 1.524;
/** [-] halvings of the search: 5 ft / 2^14 is a tenth of a millimeter. */
const HALVINGS = 14;
/** [m] dressed depths, deepest first, to name a rafter by its lumber. */
const SIZES: readonly (readonly [LumberSize, number])[] = [
  ['2x10', 0.235],
  ['2x8', 0.184],
  ['2x6', 0.1397],
  ['2x4', 0.0889],
];
/** [m] how far a measured depth may fall short of the dressed size. */
const DEPTH_TOLERANCE_M = 0.003;

export interface OutriggerPlan {
  readonly size: LumberSize;
  readonly orientation: 'flat' | 'on-edge';
  readonly depth_m: number;
  readonly width_m: number;
  readonly backSpan_m: number;
  readonly spacing_m: number;
}

export interface OverhangResult {
  readonly structure: Candidate['structure'];
  readonly outrigger: OutriggerPlan | null;
}

const asCheck = (check: ScreeningCheck): StructureCheck => ({
  id: check.id,
  what: check.what,
  demand: check.demand,
  capacity: check.capacity,
  unit: check.unit,
  ratio: Number.isFinite(check.ratio) ? check.ratio : null,
  who: check.who,
  source: check.source,
  clause: check.clause,
  known: check.known,
  note: check.governingCase,
});

/** Takes the rounding noise of conversions out of a ratio, so that an overhang at its limit reads 1. */
const rounded = (ratio: number): number => Math.round(ratio / RATIO_NOISE) * RATIO_NOISE;

/** Greatest overhang along the slope whose checks all pass, by halving. */
function limit_m(passes: (overhang_m: number) => boolean): number {
  if (!passes(SHORTEST_M)) return 0;
  if (passes(LONGEST_M)) return LONGEST_M;
  let low = SHORTEST_M;
  let high = LONGEST_M;
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (passes(middle)) low = middle;
    else high = middle;
  }
  return low;
}

const windOn = (load: RoofLoad) => ({
  ...(load.overhangUplift_Pa === null ? {} : { windUplift_Pa: Math.min(0, load.overhangUplift_Pa) }),
  ...(load.overhangDownward_Pa === null ? {} : { windDownward_Pa: Math.max(0, load.overhangDownward_Pa) }),
});

const lumberOfDepth = (depth_m: number): LumberSize | undefined =>
  SIZES.find(([, dressed_m]) => depth_m >= dressed_m - DEPTH_TOLERANCE_M)?.[0];

function outriggerOf(load: RoofLoad, overhang_m: number, angle_deg: number): Outrigger {
  const screw = screwOf(SCREW);
  const spacing_m = dimension('outrigger-spacing_m');
  return {
    member: { species: SPECIES, size: '2x4', orientation: 'on-edge' },
    spacing_m,
    overhang_m,
    backSpan_m: dimension('outrigger-back-span-ratio') * overhang_m,
    angle_deg,
    loads: { dead_Pa: load.dead_Pa, snow_Pa: load.snow_Pa, ...windOn(load) },
    tip_N: dimension('edge-line-load_N_m') * spacing_m,
    screw: {
      kind: screw.kind,
      diameter_m: screw.nominal_m,
      ...(screw.head_m === undefined ? {} : { headDiameter_m: screw.head_m }),
      threadPenetration_m: dimension('screw-embedment_m'),
      specificGravity: dimension('wood-gravity'),
      heelCount: SCREWS_AN_END,
      wallCount: SCREWS_AN_END,
    },
  };
}

interface Outcome {
  readonly checks: StructureCheck[];
  /** Greatest overhang along the slope. */
  readonly limit_m: number;
  readonly outrigger: OutriggerPlan | null;
}

function outriggersOutcome(load: RoofLoad, room_m: number, overhang_m: number, angle_deg: number): Outcome {
  const wanted = outriggerOf(load, Math.max(overhang_m, SHORTEST_M), angle_deg);
  const { choice, tried } = smallestOutrigger(wanted, room_m);
  const strongest = tried.reduce<(typeof tried)[number] | undefined>(
    (best, next) => (best === undefined || next.ratio < best.ratio ? next : best),
    undefined,
  );
  const size = choice ?? strongest;
  if (size === undefined) {
    return { checks: [noRoom(room_m)], limit_m: 0, outrigger: null };
  }
  const member = { species: SPECIES, size: size.size, orientation: size.orientation } as const;
  const screening = outriggerScreening({ ...wanted, member });
  const section = sectionOf(member);
  const strong = {
    species: SPECIES,
    size: strongest?.size ?? size.size,
    orientation: strongest?.orientation ?? size.orientation,
  } as const;
  const passes = (a_m: number): boolean => {
    const tried = outriggerScreening({ ...outriggerOf(load, a_m, angle_deg), member: strong });
    return tried.governing.ratio <= 1 && tried.gates.every((gate) => gate.id === 'deep-overhang');
  };
  const { bending, shear, deflection, heelScrews, wallTie } = screening;
  return {
    checks: [bending, shear, deflection, heelScrews, wallTie].map(asCheck),
    // The 24 in gate is a horizontal projection, as the published limits are; strength goes along the slope.
    limit_m: Math.min(limit_m(passes), ENGINEER_OVERHANG_M / cosine(angle_deg)),
    outrigger: {
      size: size.size,
      orientation: size.orientation,
      depth_m: section.depth_m,
      width_m: section.width_m,
      backSpan_m: wanted.backSpan_m,
      spacing_m: wanted.spacing_m,
    },
  };
}

const noRoom = (room_m: number): StructureCheck => ({
  id: 'outrigger-room',
  what: 'Depth of the insulation against the thinnest outrigger',
  demand: sectionOf({ species: SPECIES, size: '2x4', orientation: 'flat' }).depth_m,
  capacity: room_m,
  unit: 'm',
  ratio: null,
  who: 'structural engineer',
  source: 'COMMON-PRACTICE',
  clause: 'a 2x4 laid flat is 1 1/2 in deep',
  known: 'common practice',
});

function tailsOutcome(
  given: CompleteCase,
  load: RoofLoad,
  carrier: EdgeCarrier,
  overhang_m: number,
  angle_deg: number,
  run_m: number,
): Outcome {
  const cos = cosine(angle_deg);
  const prescriptive_m = prescriptiveOverhang(run_m) / cos;
  const size =
    carrier === 'rafter-tails' && given.framing.kind === 'rafter'
      ? lumberOfDepth(given.framing.depth_m)
      : undefined;
  const prescriptive: StructureCheck = {
    id: 'overhang-prescriptive',
    what: 'Overhang against the prescriptive limit: the lesser of 24 in and a third of the span',
    demand: overhang_m * cos,
    capacity: prescriptive_m * cos,
    unit: 'm',
    ratio: rounded(overhang_m / prescriptive_m),
    who: carrier === 'truss-tails' ? 'truss designer' : 'structural engineer',
    source: 'AWC-WFCM',
    clause: 'eave overhang',
    known: 'memory',
  };
  if (size === undefined) return { checks: [prescriptive], limit_m: prescriptive_m, outrigger: null };
  const tail = (a_m: number) =>
    rafterTailScreening({
      species: SPECIES,
      size,
      spacing_m: given.framing.spacing_m,
      overhang_m: a_m,
      backSpan_m: run_m / cos,
      angle_deg,
      notch_m:
        sectionOf({ species: SPECIES, size, orientation: 'on-edge' }).depth_m * dimension('notch-share'),
      loads: { dead_Pa: load.dead_Pa, snow_Pa: load.snow_Pa, ...windOn(load) },
      tip_N: dimension('edge-line-load_N_m') * given.framing.spacing_m,
    });
  const screening = tail(Math.max(overhang_m, SHORTEST_M));
  const strength = (a_m: number): boolean => {
    const { bending, shear, deflection } = tail(a_m);
    return bending.ratio <= 1 && shear.ratio <= 1 && deflection.ratio <= 1;
  };
  const { bending, shear, deflection, remainingDepth, notchDepth } = screening;
  return {
    checks: [prescriptive, ...[bending, shear, deflection, remainingDepth, notchDepth].map(asCheck)],
    limit_m: Math.min(prescriptive_m, limit_m(strength)),
    outrigger: null,
  };
}

/** Depth in which outriggers can lie: all loose board, but only the base layer under a prebonded panel. */
function roomForOutriggers_m(layers: readonly Layer[], isPanel: boolean): number {
  const boards = insulationLayers(layers);
  return (isPanel ? boards.slice(0, -1) : boards).reduce((sum, layer) => sum + layer.thickness_m, 0);
}

/**
 * What the carrier of the eave overhang is asked and what this screening gives it.
 *
 * limit = greatest overhang whose checks all pass, by halving, at most 24 in; use = overhang / limit
 *
 * @param given    [-] the complete case
 * @param carrier  [-] tails or outriggers
 * @param layers   [m] layers of the candidate
 * @param load     [Pa] loads on it
 * @param isPanel  [-] true under a prebonded panel, whose core takes no outrigger
 * @returns        [-] checks with ratios, the screening limit, advice, and the outrigger chosen
 * @source         NDS-2018 through src/structure (seen-transcription); AWC-WFCM (memory)
 * @assumes        No. 2 spruce-pine-fir; two No. 14 wood screws at each end of an outrigger, 1 1/2 in thread
 */
export function overhangOf(
  given: CompleteCase,
  carrier: EdgeCarrier,
  layers: readonly Layer[],
  load: RoofLoad,
  isPanel: boolean,
): OverhangResult {
  const angle_deg = angleOfPitch_deg(given.roof.pitch_rise_per_12);
  const cos = cosine(angle_deg);
  const overhang_m = given.overhang.eave_m / cos;
  const room_m = roomForOutriggers_m(layers, isPanel);
  const { run_m } = measureRoof({
    ...given.roof,
    angle_deg,
    eaveOverhang_m: given.overhang.eave_m,
    rakeOverhang_m: given.overhang.rake_m,
  });
  const outcome =
    carrier === 'outriggers'
      ? outriggersOutcome(load, room_m, overhang_m, angle_deg)
      : tailsOutcome(given, load, carrier, overhang_m, angle_deg, run_m);
  const horizontalLimit_m = outcome.limit_m * cos;
  const use = horizontalLimit_m > 0 ? rounded(given.overhang.eave_m / horizontalLimit_m) : NO_LIMIT_USE;
  return {
    structure: {
      provisional: true,
      carrier,
      overhang_m: given.overhang.eave_m,
      screeningLimit_m: horizontalLimit_m,
      use,
      advised_m:
        use > 1 && horizontalLimit_m > 0
          ? [
              horizontalLimit_m * dimension('advised-least-share'),
              horizontalLimit_m * dimension('advised-most-share'),
            ]
          : null,
      addedDeadLoad_Pa: load.dead_Pa,
      alongSlope_Pa: alongSlope_Pa(load, angle_deg),
      outrigger: outcome.outrigger === null ? null : { ...outcome.outrigger },
      checks: outcome.checks,
    },
    outrigger: outcome.outrigger,
  };
}

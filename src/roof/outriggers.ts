/** Outriggers that carry the eave and the rake between the boards. Provisional: the structural engineer decides. */
import { dimension } from '../catalog/dimensions.ts';
import { lumberOf, screwOf } from '../catalog/lumber.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { CarrierPlan, RakeScreening, StructureCheck } from '../evaluation/evaluation.ts';
import {
  ENGINEER_OVERHANG_M,
  outriggerScreening,
  outriggerUse,
  type Outrigger,
  type OutriggerScreening,
} from '../structure/outrigger.ts';
import {
  smallestOutrigger,
  type OutriggerSize,
  type SmallestOutrigger,
} from '../structure/outriggerChoice.ts';
import { screwLength } from '../structure/screwLength.ts';
import { sectionOf } from '../structure/timber.ts';
import { cosine } from './geometry.ts';
import type { RoofLoad } from './loads.ts';
import { below_m, seatOf, seatWords, type OutriggerRoom } from './outriggerSeat.ts';
import {
  asCheck,
  combinationOf,
  governingOf,
  limitOf,
  overhangLoads,
  SHORTEST_M,
  type Outcome,
} from './overhangLimit.ts';

/** [-] screws at each end of an outrigger (common practice). */
const SCREWS_AN_END = 2;
const SCREW = 'wood-14';
/** [m] rounding noise of conversions from inches. */
const LEVEL_NOISE_M = 1e-9;

interface Wanted {
  readonly given: CompleteCase;
  readonly load: RoofLoad;
  readonly room: OutriggerRoom;
  readonly angle_deg: number;
  readonly edge: 'eave' | 'rake';
}

/** The outrigger of an overhang with a member; the seat follows the member's depth. */
function outriggerOf(
  { given, load, room, angle_deg, edge }: Wanted,
  a_m: number,
  size: OutriggerSize,
): Outrigger {
  const screw = screwOf(SCREW);
  const report = given.insulation.screwReport;
  const { outriggerSpecies, outriggerGrade, outriggerSpacing_m, outriggerBackSpan_m } = given.overhang;
  const member = { species: outriggerSpecies, grade: outriggerGrade, ...size };
  return {
    member,
    spacing_m: outriggerSpacing_m,
    overhang_m: a_m,
    backSpan_m: outriggerBackSpan_m ?? dimension('outrigger-back-span-ratio') * a_m,
    angle_deg,
    loads: overhangLoads(load, edge),
    tip_N: dimension('edge-line-load_N_m') * outriggerSpacing_m,
    screw: {
      kind: screw.kind,
      diameter_m: screw.nominal_m,
      ...(screw.head_m === undefined ? {} : { headDiameter_m: screw.head_m }),
      threadPenetration_m: dimension('screw-embedment_m'),
      specificGravity: dimension('wood-gravity'),
      ...(report?.withdrawal_N_m === undefined
        ? {}
        : { reportWithdrawal_N: report.withdrawal_N_m * dimension('screw-embedment_m') }),
      ...(report?.pullThrough_N === undefined ? {} : { reportPullThrough_N: report.pullThrough_N }),
      heelCount: SCREWS_AN_END,
      wallCount: SCREWS_AN_END,
    },
    seat: seatOf(given, member, room),
  };
}

const checksOf = (screening: OutriggerScreening, isWindKnown: boolean): StructureCheck[] => {
  const { bending, shear, deflection, heelScrews, wallTie, seat, seatEdge, robust } = screening;
  const tie = asCheck(wallTie);
  return [
    ...[bending, shear, deflection, heelScrews].map(asCheck),
    isWindKnown
      ? tie
      : { ...tie, demand: null, ratio: null, note: 'wind is not covered: the engineer computes it' },
    ...[seat, seatEdge, robust].flatMap((check) => (check === undefined ? [] : [asCheck(check)])),
  ];
};

const noRoom = (given: CompleteCase, room_m: number): StructureCheck => ({
  id: 'outrigger-room',
  what: 'Depth of the insulation against the thinnest outrigger',
  demand: sectionOf({ species: given.overhang.outriggerSpecies, size: '2x4', orientation: 'flat' }).depth_m,
  capacity: room_m,
  unit: 'm',
  ratio: null,
  who: 'structural engineer',
  source: 'COMMON-PRACTICE',
  clause: 'a 2x4 laid flat is 1 1/2 in deep',
  known: 'common practice',
});

/** The deepest overhang along the member, up to a longest, whose ratios and gates of back span, size and spacing pass. */
function limitWith(wanted: Wanted, size: OutriggerSize, longest_m: number): number {
  return limitOf((a_m) => {
    const { use, gates } = outriggerUse(outriggerOf(wanted, a_m, size));
    return use <= 1 && gates.every((gate) => gate.id === 'deep-overhang');
  }, longest_m);
}

const nameOf = (given: CompleteCase, { size, orientation }: OutriggerSize): string =>
  `${lumberOf(given.overhang.outriggerSpecies, size, given.overhang.outriggerGrade).name}, ${orientation === 'flat' ? 'flat' : 'on edge'}`;

/** What the search for the smallest member found, and the size before it, which fails. */
function searchOf(
  { given }: Wanted,
  { choice, tried }: SmallestOutrigger,
): Pick<CarrierPlan, 'smallest' | 'nextSmaller'> {
  if (choice === null) return { smallest: null, nextSmaller: null };
  const place = tried.findIndex((one) => one.size === choice.size && one.orientation === choice.orientation);
  const before = tried[place - 1];
  return {
    smallest: nameOf(given, choice),
    nextSmaller: before === undefined ? null : { member: nameOf(given, before), ratio: before.ratio },
  };
}

function screwsOf(
  wanted: Wanted,
  outrigger: Outrigger,
  screening: OutriggerScreening,
): CarrierPlan['screws'] {
  const { given, room } = wanted;
  const found = screwLength({
    aboveDeck_m: sectionOf(outrigger.member).depth_m + below_m(given, outrigger.member, room),
    deck_m: given.framing.deckThickness_m,
    isUndersideVisible: given.framing.deckSeenFromBelow,
    embedment_m: dimension('screw-embedment_m'),
  });
  const isSold = found.kind === 'length';
  const needed_m =
    sectionOf(outrigger.member).depth_m +
    below_m(given, outrigger.member, room) +
    given.framing.deckThickness_m +
    dimension('screw-embedment_m');
  return {
    heel: SCREWS_AN_END,
    wall: SCREWS_AN_END,
    heelNeeded: screening.screwsNeeded.heel,
    wallNeeded: screening.screwsNeeded.wall,
    length_m: isSold ? found.length_m : needed_m,
    sold: isSold,
  };
}

/** The same member run level past the gable wall. */
function rakeOf(wanted: Wanted, size: OutriggerSize): RakeScreening | null {
  const { given } = wanted;
  const overhang_m = given.overhang.rake_m;
  if (overhang_m <= 0 || given.roof.shape === 'hip') return null;
  const rake: Wanted = { ...wanted, edge: 'rake' };
  const { governing } = outriggerScreening(outriggerOf(rake, Math.max(overhang_m, SHORTEST_M), size));
  return {
    overhang_m,
    limit_m: limitWith(rake, size, ENGINEER_OVERHANG_M),
    member: nameOf(given, size),
    governs: governing.what,
    ratio: governing.ratio,
  };
}

/**
 * The outriggers as carriers of the eave, and of the rake with the same member.
 *
 * the member that is settled, or the smallest that passes; limit = greatest overhang of the strongest that fits, by halving
 *
 * @param given       [-] the complete case
 * @param load        [Pa] loads on the candidate
 * @param room        [m] loose board that holds the outrigger, and its kind
 * @param overhang_m  [m] along the slope
 * @param angle_deg   [deg] slope
 * @returns           [-] checks, limit [m] along the slope, outrigger, combinations, plan, rake
 * @source            NDS-2018 through src/structure (seen-transcription); AWC-WFCM rake rule (memory)
 * @assumes           two No. 14 wood screws at each end, or two of those whose report is given, 1 1/2 in of thread in the framing
 */
export function outriggersOutcome(
  given: CompleteCase,
  load: RoofLoad,
  room: OutriggerRoom,
  overhang_m: number,
  angle_deg: number,
): Outcome {
  const wanted: Wanted = { given, load, room, angle_deg, edge: 'eave' };
  const { outriggerSize, outriggerOrientation } = given.overhang;
  const a_m = Math.max(overhang_m, SHORTEST_M);
  const any = outriggerOf(wanted, a_m, { size: '2x4', orientation: 'on-edge' });
  const search = smallestOutrigger(any, room.room_m);
  const isSettled = outriggerSize !== undefined || outriggerOrientation !== undefined;
  const { choice, tried } = isSettled
    ? smallestOutrigger(any, room.room_m, {
        ...(outriggerSize === undefined ? {} : { size: outriggerSize }),
        ...(outriggerOrientation === undefined ? {} : { orientation: outriggerOrientation }),
      })
    : search;
  const strongest = tried.reduce<(typeof tried)[number] | undefined>(
    (best, next) => (best === undefined || next.ratio < best.ratio ? next : best),
    undefined,
  );
  const size = choice ?? strongest;
  if (size === undefined || strongest === undefined)
    return {
      checks: [noRoom(given, room.room_m)],
      limit_m: 0,
      outrigger: null,
      combinations: [],
      plan: null,
      rake: null,
    };
  const chosen = { size: size.size, orientation: size.orientation };
  const outrigger = outriggerOf(wanted, a_m, chosen);
  const screening = outriggerScreening(outrigger);
  const section = sectionOf(outrigger.member);
  const { bending, shear, deflection, heelScrews, wallTie, seat, seatEdge } = screening;
  const all = [bending, shear, deflection, heelScrews, wallTie, seat, seatEdge];
  return {
    checks: checksOf(screening, load.overhangUplift_Pa !== null),
    // The 24 in gate is a horizontal projection, as the published limits are; strength goes along the slope.
    limit_m: limitWith(
      wanted,
      { size: strongest.size, orientation: strongest.orientation },
      ENGINEER_OVERHANG_M / cosine(angle_deg),
    ),
    outrigger: {
      ...chosen,
      depth_m: section.depth_m,
      width_m: section.width_m,
      backSpan_m: outrigger.backSpan_m,
      spacing_m: outrigger.spacing_m,
    },
    combinations: screening.cases.map((each) =>
      combinationOf(each, {
        normal_Pa: each.load_N_m / outrigger.spacing_m,
        moment_Nm: each.moment_Nm,
        shear_N: each.shear_N,
        wall_N: each.wallReaction_N,
        heel_N: each.heelHoldDown_N,
        tip_m: each.memberDeflection_m + each.seatDeflection_m,
        use: each.ratio,
      }),
    ),
    plan: {
      member: lumberOf(outrigger.member.species, chosen.size, given.overhang.outriggerGrade).name,
      orientation: chosen.orientation,
      spacing_m: outrigger.spacing_m,
      overhang_m: a_m,
      backSpan_m: outrigger.backSpan_m,
      tip_N: outrigger.tip_N ?? 0,
      notch_m: 0,
      seat: seatWords[given.overhang.outriggerSeat],
      seatRotation_rad: Math.max(
        0,
        ...screening.cases.filter((each) => each.counts).map((each) => each.seatRotation_rad),
      ),
      screws: screwsOf(wanted, outrigger, screening),
      governs: governingOf(all.filter((check) => check !== undefined)),
      // The 24 in gate is a level projection, as the published limits are.
      gates: screening.gates
        .filter(
          ({ id }) => id !== 'deep-overhang' || a_m * cosine(angle_deg) > ENGINEER_OVERHANG_M + LEVEL_NOISE_M,
        )
        .map((gate) => gate.text),
      ...searchOf(wanted, search),
    },
    rake: rakeOf(wanted, chosen),
  };
}

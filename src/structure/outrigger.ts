/** Outriggers laid on the deck: a cantilever with a back span, seated at the wall line and held at the heel. */
import { lumberOf, type ScrewKind } from '../catalog/lumber.ts';
import { metersFromInches } from '../units.ts';
import { loadCases, type LoadCaseId, type RoofLoads } from './combinations.ts';
import { SAG_DIVISOR } from './rafterTail.ts';
import { demandPositive, demandRange } from './guards.ts';
import {
  CONFIRM_IN_STANDARD,
  ENGINEER,
  standingOf,
  type Screening,
  type ScreeningCheck,
} from './screening.ts';
import { allowableWithdrawal, headPullThrough } from './screws.ts';
import {
  allowableStress,
  overhangStatics,
  sectionOf,
  shearStress,
  tipDeflection,
  type Member,
  type OverhangStatics,
} from './timber.ts';

/** [-] back span over overhang that the screening asks for, common carpentry rule (seen-secondary). */
export const BACK_SPAN_RATIO = 2;
/** [m] 24 in: deeper overhangs on outriggers go to the engineer, WFCM rake rule (memory). */
export const ENGINEER_OVERHANG_M = metersFromInches(24);
/** [m] 12 in: flat 2x4 beyond it sags too much (computed). */
export const FLAT_2X4_OVERHANG_M = metersFromInches(12);
/** [-] share of the rated (10 % strain) strength that board may carry for good (memory rule). */
const BOARD_SHARE = 1 / 3;
/** [-] strain of board at its rated strength, ASTM D1621 (memory). */
const BOARD_RATED_STRAIN = 0.1;
/** [m] 24 in: repetitive use up to this spacing, NDS 2018 section 4.3.9. */
const REPETITIVE_SPACING_M = metersFromInches(24);

export interface OutriggerScrew {
  readonly kind: ScrewKind;
  /** Nominal. */
  readonly diameter_m: number;
  /** Absent for lag screws with washers; then pull-through is left to the engineer. */
  readonly headDiameter_m?: number;
  /** Thread in the framing below. */
  readonly threadPenetration_m: number;
  /** Of the framing below. */
  readonly specificGravity: number;
  readonly heelCount: number;
  readonly wallCount: number;
  /** Allowable withdrawal of one screw from its maker's report, load duration 1; used in place of the equations. */
  readonly reportWithdrawal_N?: number;
}

/** What the outrigger rests on at the wall line and at the heel. */
export type Seat =
  | { readonly on: 'wood'; readonly bearingLength_m: number }
  | {
      readonly on: 'board';
      readonly bearingLength_m: number;
      readonly boardThickness_m: number;
      /** Rated compressive strength at 10 % strain. */
      readonly boardStrength_Pa: number;
    };

export interface Outrigger {
  readonly member: Member;
  readonly spacing_m: number;
  /** Along the member from the wall line to the tip. */
  readonly overhang_m: number;
  /** Along the member from the wall line to the heel screws. */
  readonly backSpan_m: number;
  /** 0 at a rake, the roof's slope at an eave. */
  readonly angle_deg?: number;
  readonly loads: RoofLoads;
  /** Fascia, gutter and ice at the tip of one outrigger. */
  readonly tip_N?: number;
  readonly screw: OutriggerScrew;
  readonly seat?: Seat;
}

export interface OutriggerCase extends OverhangStatics {
  readonly id: LoadCaseId;
  readonly loadDuration: number;
  readonly load_N_m: number;
  readonly tip_N: number;
  /** Member alone. */
  readonly memberDeflection_m: number;
  /** Squeeze of the board under the seat, lever in. */
  readonly seatDeflection_m: number;
}

export interface Gate {
  readonly id: 'back-span' | 'deep-overhang' | 'flat-2x4' | 'spacing';
  readonly text: string;
}

export interface OutriggerScreening extends Screening {
  readonly bending: ScreeningCheck;
  readonly shear: ScreeningCheck;
  readonly deflection: ScreeningCheck;
  readonly heelScrews: ScreeningCheck;
  readonly wallTie: ScreeningCheck;
  readonly seat?: ScreeningCheck;
  readonly cases: readonly OutriggerCase[];
  readonly gates: readonly Gate[];
  readonly governing: ScreeningCheck;
}

/**
 * Reasons why an outrigger goes to the engineer whatever its numbers say.
 *
 * b < 2a; a > 24 in; flat 2x4 with a > 12 in; spacing > 24 in
 *
 * @param outrigger  [m] overhang (a), back span (b), spacing, member
 * @returns          [-] the list, empty when none applies
 * @source           COMMON-PRACTICE back span 2:1 (seen-secondary); AWC-WFCM rake rule (memory); OUR-JUDGEMENT for the rest
 */
export function engineerGates(
  outrigger: Pick<Outrigger, 'member' | 'overhang_m' | 'backSpan_m' | 'spacing_m'>,
): Gate[] {
  const { member, overhang_m, backSpan_m, spacing_m } = outrigger;
  const gates: Gate[] = [];
  if (backSpan_m < BACK_SPAN_RATIO * overhang_m - GATE_NOISE_M)
    gates.push({ id: 'back-span', text: 'The back span is shorter than twice the overhang.' });
  if (overhang_m > ENGINEER_OVERHANG_M + GATE_NOISE_M)
    gates.push({ id: 'deep-overhang', text: 'The overhang is deeper than 24 in (610 mm): engineer only.' });
  if (
    member.orientation === 'flat' &&
    member.size === '2x4' &&
    overhang_m > FLAT_2X4_OVERHANG_M + GATE_NOISE_M
  )
    gates.push({ id: 'flat-2x4', text: 'A flat 2x4 sags too much beyond a 12 in (305 mm) overhang.' });
  if (spacing_m > REPETITIVE_SPACING_M + GATE_NOISE_M)
    gates.push({ id: 'spacing', text: 'Outriggers stand farther apart than 24 in (610 mm).' });
  return gates;
}
/** [m] rounding noise of conversions from inches. */
const GATE_NOISE_M = 1e-9;

/** Allowable hold of one screw in tension: the lesser of thread and head, in the given load duration. */
function screwHold(outrigger: Outrigger, loadDuration: number): number {
  const { screw, member } = outrigger;
  const thread_N =
    screw.reportWithdrawal_N === undefined
      ? allowableWithdrawal({ ...screw, loadDuration })
      : screw.reportWithdrawal_N * loadDuration;
  if (screw.headDiameter_m === undefined) return thread_N;
  const head_N = headPullThrough(
    screw.headDiameter_m,
    lumberOf(member.species, member.size).specificGravity,
    sectionOf(member).depth_m,
  );
  return Math.min(thread_N, head_N * loadDuration);
}

/** Tip movement from the squeeze of board under the wall-line seat; the heel is held by screws. */
function seatDeflection(outrigger: Outrigger, wallReaction_N: number): number {
  const seat = outrigger.seat;
  if (seat?.on !== 'board' || wallReaction_N <= 0) return 0;
  const stress_Pa = wallReaction_N / (sectionOf(outrigger.member).width_m * seat.bearingLength_m);
  const squeeze_m = BOARD_RATED_STRAIN * (stress_Pa / seat.boardStrength_Pa) * seat.boardThickness_m;
  return squeeze_m * (1 + outrigger.overhang_m / outrigger.backSpan_m);
}

function casesOf(outrigger: Outrigger): OutriggerCase[] {
  const { member, spacing_m, overhang_m, backSpan_m } = outrigger;
  const stiffness_Nm2 = lumberOf(member.species, member.size).elasticity_Pa * sectionOf(member).inertia_m4;
  return loadCases(outrigger.loads, outrigger.angle_deg ?? 0).map((load) => {
    const beam = {
      load_N_m: load.normal_Pa * spacing_m,
      tip_N: (outrigger.tip_N ?? 0) * load.tipShare,
      overhang_m,
      backSpan_m,
    };
    const statics = overhangStatics(beam);
    return {
      id: load.id,
      loadDuration: load.loadDuration,
      load_N_m: beam.load_N_m,
      tip_N: beam.tip_N,
      ...statics,
      memberDeflection_m: tipDeflection({ ...beam, stiffness_Nm2 }),
      seatDeflection_m: seatDeflection(outrigger, statics.wallReaction_N),
    };
  });
}

type CheckText = Pick<ScreeningCheck, 'id' | 'what' | 'unit' | 'source' | 'clause' | 'known'>;

/** The case with the greatest ratio of demand to capacity. */
function worst(
  cases: readonly OutriggerCase[],
  text: CheckText,
  of: (load: OutriggerCase) => readonly [demand: number, capacity: number],
): ScreeningCheck {
  const [first, ...rest] = cases.map((load) => {
    const [demand, capacity] = of(load);
    return {
      ...text,
      demand,
      capacity,
      ratio: demand / capacity,
      governingCase: load.id,
      who: ENGINEER,
    } satisfies ScreeningCheck;
  });
  if (!first) throw new RangeError('loads: at least one load case is needed');
  return rest.reduce<ScreeningCheck>((most, next) => (next.ratio > most.ratio ? next : most), first);
}

const NDS = { source: 'NDS-2018', known: 'seen-transcription' } as const;

/**
 * Screening of an outrigger: bending, shear, sag, heel screws under gravity, wall tie under uplift, seat.
 *
 * statics of an overhanging beam for every load case; ratio = demand / capacity, greatest over the cases
 *
 * @param outrigger  [m, deg, Pa, N] member, geometry, loads (down positive, wind uplift negative), screws, seat
 * @returns          [-] checks with their governing case, cases, gates; provisional, the engineer decides
 * @throws           RangeError when a value is outside its range
 * @source           NDS-2018 chapters 3, 4 and 12 (seen-transcription); IBC-2018 table 1604.3 (memory); own statics (computed)
 * @assumes          dry wood, braced edges, pinned supports, no load on the back span, screws pull straight
 */
export function outriggerScreening(outrigger: Outrigger): OutriggerScreening {
  demandPositive('spacing_m', outrigger.spacing_m);
  demandRange('tip_N', outrigger.tip_N ?? 0, 0);
  demandRange('screw.heelCount', outrigger.screw.heelCount, 1);
  demandRange('screw.wallCount', outrigger.screw.wallCount, 1);
  const { member, screw } = outrigger;
  const section = sectionOf(member);
  const isRepetitive = outrigger.spacing_m <= REPETITIVE_SPACING_M + GATE_NOISE_M;
  const cases = casesOf(outrigger);
  const allowed = (load: OutriggerCase) => allowableStress(member, load.loadDuration, isRepetitive);
  const bending = worst(
    cases,
    {
      id: 'outrigger-bending',
      what: 'Bending at the wall line',
      unit: 'Pa',
      clause: '3.3, Table 4.3.1',
      ...NDS,
    },
    (load) => [Math.abs(load.moment_Nm) / section.modulus_m3, allowed(load).bending_Pa],
  );
  const shear = worst(
    cases,
    { id: 'outrigger-shear', what: 'Shear at the wall line', unit: 'Pa', clause: '3.4.2', ...NDS },
    (load) => [shearStress(load.shear_N, section.area_m2), allowed(load).shear_Pa],
  );
  const deflection = worst(
    cases,
    {
      id: 'outrigger-deflection',
      what: 'Sag of the tip against twice the overhang over 120',
      unit: 'm',
      source: 'IBC-2018',
      clause: 'Table 1604.3',
      known: 'memory',
    },
    (load) => [
      Math.abs(load.memberDeflection_m) + load.seatDeflection_m,
      (2 * outrigger.overhang_m) / SAG_DIVISOR,
    ],
  );
  const heelScrews = worst(
    cases,
    { id: 'outrigger-heel', what: 'Pull on the heel screws', unit: 'N', clause: '12.2', ...NDS },
    (load) => [Math.max(0, load.heelHoldDown_N), screw.heelCount * screwHold(outrigger, load.loadDuration)],
  );
  const wallTie = worst(
    cases,
    {
      id: 'outrigger-wall-tie',
      what: 'Uplift on the tie at the wall line',
      unit: 'N',
      clause: '12.2',
      ...NDS,
    },
    (load) => [Math.max(0, -load.wallReaction_N), screw.wallCount * screwHold(outrigger, load.loadDuration)],
  );
  const seat = seatCheck(outrigger, cases);
  const gates = engineerGates(outrigger);
  const checks = [bending, shear, deflection, heelScrews, wallTie, ...(seat ? [seat] : [])];
  const notes = [CONFIRM_IN_STANDARD];
  if (outrigger.loads.windUplift_Pa === undefined)
    notes.push('No wind was given: the wall tie is not screened.');
  if (screw.headDiameter_m === undefined)
    notes.push('Pull of the head or washer through the outrigger is not screened.');
  return {
    provisional: true,
    decidedBy: ENGINEER,
    standing: standingOf(checks, gates.length > 0),
    notes: [...notes, ...gates.map((gate) => gate.text)],
    bending,
    shear,
    deflection,
    heelScrews,
    wallTie,
    ...(seat ? { seat } : {}),
    cases,
    gates,
    governing: checks.reduce((most, next) => (next.ratio > most.ratio ? next : most)),
  };
}

/** Bearing at the wall line on wood (Fc-perp) or on board (a third of its rated strength). */
function seatCheck(outrigger: Outrigger, cases: readonly OutriggerCase[]): ScreeningCheck | undefined {
  const { seat, member } = outrigger;
  if (!seat) return undefined;
  demandPositive('seat.bearingLength_m', seat.bearingLength_m);
  const area_m2 = sectionOf(member).width_m * seat.bearingLength_m;
  const isBoard = seat.on === 'board';
  const capacity_Pa = isBoard
    ? BOARD_SHARE * seat.boardStrength_Pa
    : lumberOf(member.species, member.size).bearing_Pa;
  return worst(
    cases,
    {
      id: 'outrigger-seat',
      what: isBoard ? 'Squeeze of the board under the seat' : 'Bearing of the seat on wood',
      unit: 'Pa',
      source: isBoard ? 'OUR-JUDGEMENT' : 'NDS-2018-SUPPLEMENT',
      clause: isBoard ? 'a third of the rated strength' : 'Tables 4A, 4B',
      known: isBoard ? 'memory' : 'seen-transcription',
    },
    (load) => [Math.max(0, load.wallReaction_N) / area_m2, capacity_Pa],
  );
}

/** An outrigger under each load case: statics, sag with the give of its seat, and what its screws hold. */
import { lumberOf, type ScrewKind } from '../catalog/lumber.ts';
import { loadCases, type LoadCase, type LoadCaseId, type RoofLoads } from './combinations.ts';
import { demandPositive } from './guards.ts';
import { allowableWithdrawal, headPullThrough } from './screws.ts';
import { beamOnSeat, seatPressure, seatSprings, type SeatPressure, type SeatSprings } from './seat.ts';
import { overhangStatics, sectionOf, tipDeflection, type Member, type OverhangStatics } from './timber.ts';

/** [-] strain of board at its rated strength, ASTM D1621 (memory). */
const BOARD_RATED_STRAIN = 0.1;
/** [-] stiffness of wood along the grain over that across it, wood handbook ratio of about 0.05 (memory). */
const ACROSS_GRAIN_DIVISOR = 20;

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
  /** Allowable pull of its head through the outrigger, likewise. */
  readonly reportPullThrough_N?: number;
}

/** What the outrigger rests on at the wall line. */
export type Seat =
  | { readonly on: 'wood'; readonly bearingLength_m: number }
  | { readonly on: 'blocking'; readonly bearingLength_m: number; readonly blockingHeight_m: number }
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
  /** False for a robust check. */
  readonly counts: boolean;
  readonly load_N_m: number;
  readonly tip_N: number;
  /** Member alone, on stiff supports. */
  readonly memberDeflection_m: number;
  /** What the sinking and turning of the seat add to the tip. */
  readonly seatDeflection_m: number;
  readonly seatRotation_rad: number;
  readonly pressure: SeatPressure;
}

/** Springs of the seat: wood on the deck is stiff; the heel's screws are taken as stiff, their slip comes on top. */
function springsOf({ seat, member }: Outrigger): SeatSprings {
  const rigid = { seat_N_m: Infinity, seatTurn_Nm: 0, heel_N_m: Infinity };
  if (seat === undefined || seat.on === 'wood') return rigid;
  const bed =
    seat.on === 'board'
      ? { bed_Pa: seat.boardStrength_Pa / BOARD_RATED_STRAIN, thickness_m: seat.boardThickness_m }
      : {
          bed_Pa: lumberOf(member.species, member.size, member.grade).elasticity_Pa / ACROSS_GRAIN_DIVISOR,
          thickness_m: seat.blockingHeight_m,
        };
  const { width_m } = sectionOf(member);
  return { ...rigid, ...seatSprings({ ...bed, width_m, length_m: seat.bearingLength_m }) };
}

const untouched: SeatPressure = { mean_Pa: 0, edge_Pa: 0, lifts: false };

/**
 * The outrigger under every load case.
 *
 * statics on stiff supports for member and screws; sag and edge pressure with the seat's springs where it is pressed
 *
 * @param outrigger  [m, deg, Pa, N] member, geometry, loads, seat
 * @returns          [N, N·m, m, rad, Pa] one row per case, robust checks marked
 * @throws           RangeError when a value is outside its range
 * @source           AWC-BEAM-FORMULAS figures 24 and 26 (memory), own statics (computed)
 * @assumes          no load on the back span; under uplift the seat is free and the tie does not give
 */
export function outriggerCases(outrigger: Outrigger): OutriggerCase[] {
  const { member, spacing_m, overhang_m, backSpan_m, seat } = outrigger;
  if (seat) demandPositive('seat.bearingLength_m', seat.bearingLength_m);
  const section = sectionOf(member);
  const stiffness_Nm2 =
    lumberOf(member.species, member.size, member.grade).elasticity_Pa * section.inertia_m4;
  const springs = springsOf(outrigger);
  return loadCases(outrigger.loads, outrigger.angle_deg ?? 0).map((load: LoadCase) => {
    const beam = {
      load_N_m: load.normal_Pa * spacing_m,
      tip_N: (outrigger.tip_N ?? 0) * load.tipShare,
      overhang_m,
      backSpan_m,
    };
    const statics = overhangStatics(beam);
    const memberDeflection_m = tipDeflection({ ...beam, stiffness_Nm2 });
    const isPressed = seat !== undefined && statics.wallReaction_N > 0;
    const state = isPressed ? beamOnSeat({ ...beam, stiffness_Nm2 }, springs) : undefined;
    return {
      id: load.id,
      loadDuration: load.loadDuration,
      counts: load.counts,
      load_N_m: beam.load_N_m,
      tip_N: beam.tip_N,
      ...statics,
      memberDeflection_m,
      seatDeflection_m: state === undefined ? 0 : Math.max(0, state.tipDeflection_m - memberDeflection_m),
      seatRotation_rad: state?.rotation_rad ?? 0,
      pressure:
        state === undefined
          ? untouched
          : seatPressure({
              force_N: state.wallReaction_N,
              moment_Nm: state.seatMoment_Nm,
              width_m: section.width_m,
              length_m: seat?.bearingLength_m ?? 1,
            }),
    };
  });
}

/**
 * Allowable hold of one screw in tension.
 *
 * least of thread withdrawal and head pull-through, each times the load duration
 *
 * @param outrigger     [m, N] member and screw
 * @param loadDuration  [-] CD
 * @returns             [N] of one screw
 * @throws              RangeError when a value is outside its range
 * @source              NDS-2018 12.2 (seen-transcription)
 * @assumes             the screw is pulled straight; without a head diameter the head is the engineer's
 */
export function screwHold(outrigger: Outrigger, loadDuration: number): number {
  const { screw, member } = outrigger;
  const thread_N =
    screw.reportWithdrawal_N === undefined
      ? allowableWithdrawal({ ...screw, loadDuration })
      : screw.reportWithdrawal_N * loadDuration;
  if (screw.headDiameter_m === undefined)
    return Math.min(thread_N, (screw.reportPullThrough_N ?? Infinity) * loadDuration);
  const head_N =
    screw.reportPullThrough_N ??
    headPullThrough(
      screw.headDiameter_m,
      lumberOf(member.species, member.size).specificGravity,
      sectionOf(member).depth_m,
    );
  return Math.min(thread_N, head_N * loadDuration);
}

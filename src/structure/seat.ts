/** The seat of an outrigger at the wall line as a spring: how far it sinks and turns, and how hard its edge presses. */
import { demandPositive, demandRange } from './guards.ts';

export interface SeatBeam {
  /** Uniform load on the overhang, down positive. */
  readonly load_N_m: number;
  readonly tip_N: number;
  readonly overhang_m: number;
  readonly backSpan_m: number;
  readonly stiffness_Nm2: number;
}

export interface SeatSprings {
  /** Force per sinking of the seat; Infinity for a rigid seat. */
  readonly seat_N_m: number;
  /** Moment per turn of the seat; 0 for a knife edge. */
  readonly seatTurn_Nm: number;
  /** Pull per lift of the heel; Infinity when the screws do not give. */
  readonly heel_N_m: number;
}

export interface SeatState {
  readonly wallReaction_N: number;
  readonly heelHoldDown_N: number;
  /** Taken by the turned seat instead of the back span. */
  readonly seatMoment_Nm: number;
  readonly sinking_m: number;
  readonly rotation_rad: number;
  readonly tipDeflection_m: number;
}

/** [-] numbers of a cantilever and of a beam turned at one end: b/3EI, w a^4/8EI, P a^3/3EI. */
const BEAM = { turn: 3, uniform: 8, point: 3 } as const;

/**
 * A beam over a heel and a seat that both give: the force method with the seat's moment as the unknown.
 *
 * m = kt theta; theta = (M0 - m) F + W/(ka b); F = b/3EI + (1/ka + 1/kb)/b^2; M0 = w a^2/2 + P a; W = w a + P
 * R_B = (M0 - m)/b; R_A = W + R_B; tip = R_A/ka + theta a + w a^4/8EI + P a^3/3EI
 *
 * @param beam     [N/m, N, m, N·m²] load on the overhang (w), tip load (P), overhang (a), back span (b), EI
 * @param springs  [N/m, N·m] seat down (ka > 0), seat turning (kt >= 0), heel (kb > 0); Infinity is rigid
 * @returns        [N, N·m, m, rad] reactions, moment and turn of the seat, its sinking, tip deflection
 * @throws         RangeError when a length, stiffness or spring is outside its range
 * @source         AWC-BEAM-FORMULAS superposition of cantilever and simple beam (memory), own statics (computed)
 * @assumes        small turns; both ends of the seat stay in contact (see seatPressure); no load on the back span
 */
export function beamOnSeat(beam: SeatBeam, springs: SeatSprings): SeatState {
  const { load_N_m: w, tip_N: p, overhang_m: a, backSpan_m: b, stiffness_Nm2 } = beam;
  demandPositive('overhang_m', a);
  demandPositive('backSpan_m', b);
  demandPositive('stiffness_Nm2', stiffness_Nm2);
  demandRange('seatTurn_Nm', springs.seatTurn_Nm, 0);
  if (!(springs.seat_N_m > 0)) throw new RangeError(`seat_N_m: ${springs.seat_N_m} is not above 0`);
  if (!(springs.heel_N_m > 0)) throw new RangeError(`heel_N_m: ${springs.heel_N_m} is not above 0`);
  const down_N = w * a + p;
  const moment_Nm = (w * a * a) / 2 + p * a;
  const give = 1 / springs.seat_N_m;
  const flexibility = b / (BEAM.turn * stiffness_Nm2) + (give + 1 / springs.heel_N_m) / (b * b);
  const free_rad = moment_Nm * flexibility + (down_N * give) / b;
  const rotation_rad = free_rad / (1 + springs.seatTurn_Nm * flexibility);
  const seatMoment_Nm = springs.seatTurn_Nm * rotation_rad;
  const heelHoldDown_N = (moment_Nm - seatMoment_Nm) / b;
  const wallReaction_N = down_N + heelHoldDown_N;
  const bent_m = (w * a ** 4) / (BEAM.uniform * stiffness_Nm2) + (p * a ** 3) / (BEAM.point * stiffness_Nm2);
  const sinking_m = wallReaction_N * give;
  return {
    wallReaction_N,
    heelHoldDown_N,
    seatMoment_Nm,
    sinking_m,
    rotation_rad,
    tipDeflection_m: sinking_m + rotation_rad * a + bent_m,
  };
}

/** [-] a bed of springs of length L turns with k L^2/12 of its straight stiffness k. */
const TURN_DIVISOR = 12;
/** [-] edge pressure of a rectangle: mean (1 + 6 e/L); the far edge lifts from e = L/6 on. */
const EDGE = 6;
/** [-] length in touch once an edge lifts: 3 (L/2 - e). */
const TOUCHING = 3;

/**
 * Springs of a flat seat on an elastic bed.
 *
 * ka = E b L / t, kt = ka L^2 / 12
 *
 * @param seat  [Pa, m] stiffness of the bed (E), thickness (t), width (b) and length (L) of the seat
 * @returns     [N/m, N·m] straight and turning stiffness
 * @throws      RangeError when a value is not > 0
 * @source      OUR-JUDGEMENT bed of independent springs, no spreading into the board (computed)
 */
export function seatSprings(seat: {
  readonly bed_Pa: number;
  readonly thickness_m: number;
  readonly width_m: number;
  readonly length_m: number;
}): Pick<SeatSprings, 'seat_N_m' | 'seatTurn_Nm'> {
  for (const [name, value] of Object.entries(seat)) demandPositive(name, value);
  const seat_N_m = (seat.bed_Pa * seat.width_m * seat.length_m) / seat.thickness_m;
  return { seat_N_m, seatTurn_Nm: (seat_N_m * seat.length_m * seat.length_m) / TURN_DIVISOR };
}

export interface SeatPressure {
  readonly mean_Pa: number;
  readonly edge_Pa: number;
  /** True when the turned seat no longer touches along its whole length. */
  readonly lifts: boolean;
}

/**
 * Pressure under a seat that is pressed and turned.
 *
 * mean = R/(b L); edge = mean (1 + 6 e/L), e = m/R; from e = L/6 on 2 R / (3 b (L/2 - e)), e at most L/3
 *
 * @param input  [N, N·m, m] force (R) >= 0, moment (m), width (b), length (L)
 * @returns      [Pa] mean and edge pressure, and whether an edge lifts
 * @throws       RangeError when a value is outside its range
 * @source       COMMON-PRACTICE pressure under a rigid footing without tension (computed)
 * @assumes      past e = L/3 the elastic turn is no longer true: the pressure at L/3 is given and the seat lifts
 */
export function seatPressure(input: {
  readonly force_N: number;
  readonly moment_Nm: number;
  readonly width_m: number;
  readonly length_m: number;
}): SeatPressure {
  demandRange('force_N', input.force_N, 0);
  demandPositive('width_m', input.width_m);
  demandPositive('length_m', input.length_m);
  const { length_m } = input;
  const mean_Pa = input.force_N / (input.width_m * length_m);
  if (input.force_N === 0) return { mean_Pa: 0, edge_Pa: 0, lifts: false };
  const off_m = Math.min(Math.abs(input.moment_Nm) / input.force_N, length_m / TOUCHING);
  if (off_m <= length_m / EDGE)
    return { mean_Pa, edge_Pa: mean_Pa * (1 + (EDGE * off_m) / length_m), lifts: false };
  return {
    mean_Pa,
    edge_Pa: (2 * input.force_N) / (TOUCHING * input.width_m * (length_m / 2 - off_m)),
    lifts: true,
  };
}

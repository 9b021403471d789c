/**
 * An independent solution for the tests: Euler beams by the direct stiffness method, the equations solved by a
 * general numerical library. It shares no formula with the code under test.
 */
import { Matrix, solve } from 'ml-matrix';

/** One prismatic element: up-displacement and rotation at its two ends. */
function element(length: number, ei: number): Matrix {
  const k = ei / length ** 3;
  return new Matrix([
    [12 * k, 6 * k * length, -12 * k, 6 * k * length],
    [6 * k * length, 4 * k * length ** 2, -6 * k * length, 2 * k * length ** 2],
    [-12 * k, -6 * k * length, 12 * k, -6 * k * length],
    [6 * k * length, 2 * k * length ** 2, -6 * k * length, 4 * k * length ** 2],
  ]);
}

/** Loads and stiffness of a beam: heel at 0, wall line at b, tip at b + a; down positive. */
export interface Overhang {
  /** Uniform load on the overhang. */
  readonly w: number;
  /** Point load at the tip. */
  readonly p: number;
  readonly a: number;
  readonly b: number;
  readonly ei: number;
}

/** Supports that give: force for each sinking, moment for each turn; Infinity is rigid. */
export interface Springs {
  readonly heel: number;
  readonly seat: number;
  readonly seatTurn: number;
}
const RIGID: Springs = { heel: Infinity, seat: Infinity, seatTurn: 0 };

/** Reactions, sag and moment of a beam with an overhang. */
export function overhangByStiffness(
  input: Overhang,
  springs = RIGID,
): {
  heelUp: number;
  wallUp: number;
  tipDown: number;
  wallMoment: number;
  seatMoment: number;
  wallDown: number;
  wallTurn: number;
} {
  const { w, p, a, b, ei } = input;
  // Degrees of freedom: up-displacement and rotation of heel, wall, tip.
  const whole = Matrix.zeros(6, 6);
  for (const [start, length] of [
    [0, b],
    [2, a],
  ] as const) {
    const part = element(length, ei);
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < 4; j++)
        whole.set(start + i, start + j, whole.get(start + i, start + j) + part.get(i, j));
  }
  const loads = Matrix.columnVector([
    0,
    0,
    -w * (a / 2),
    (-w * a ** 2) / 12,
    -w * (a / 2) - p,
    (w * a ** 2) / 12,
  ]);
  const held = Matrix.zeros(6, 6);
  const fixed = new Set<number>();
  for (const [dof, spring] of [
    [0, springs.heel],
    [2, springs.seat],
    [3, springs.seatTurn],
  ] as const)
    if (spring === Infinity) fixed.add(dof);
    else held.set(dof, dof, spring);
  const free = [0, 1, 2, 3, 4, 5].filter((dof) => !fixed.has(dof));
  const moved = solve(Matrix.add(whole, held).selection(free, free), loads.selection(free, [0]));
  const displacement = Matrix.zeros(6, 1);
  free.forEach((dof, index) => displacement.set(dof, 0, moved.get(index, 0)));
  const forces = whole.mmul(displacement).sub(loads);
  const back = element(b, ei).mmul(displacement.subMatrix(0, 3, 0, 0));
  return {
    heelUp: forces.get(0, 0),
    wallUp: forces.get(2, 0),
    tipDown: -displacement.get(4, 0),
    wallMoment: Math.abs(back.get(3, 0)),
    seatMoment: forces.get(3, 0),
    wallDown: -displacement.get(2, 0),
    wallTurn: -displacement.get(3, 0),
  };
}

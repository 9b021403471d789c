/** A network of conductances solved as one dense linear system by a general numerical library. */
import { Matrix, solve } from 'ml-matrix';

export interface Link {
  readonly from: number;
  readonly to: number;
  readonly conductance: number;
}

/**
 * Potentials of all nodes when some are fixed, and what flows into each node from the rest.
 * At a free node the inflow is zero: that is the system solved.
 */
export function networkSolution(
  count: number,
  links: readonly Link[],
  fixed: ReadonlyMap<number, number>,
): { potentials: number[]; inflows: number[] } {
  const whole = Matrix.zeros(count, count);
  const add = (row: number, column: number, value: number): void => {
    whole.set(row, column, whole.get(row, column) + value);
  };
  for (const { from, to, conductance } of links) {
    add(from, from, conductance);
    add(to, to, conductance);
    add(from, to, -conductance);
    add(to, from, -conductance);
  }
  const free = Array.from({ length: count }, (_, node) => node).filter((node) => !fixed.has(node));
  const held = [...fixed.keys()];
  const values = Matrix.columnVector([...fixed.values()]);
  const potentials = Array.from({ length: count }, (_, node) => fixed.get(node) ?? 0);
  if (free.length > 0) {
    const right = whole.selection(free, held).mmul(values).mul(-1);
    solve(whole.selection(free, free), right)
      .to1DArray()
      .forEach((value, index) => (potentials[free[index] ?? 0] = value));
  }
  const inflows = whole.mmul(Matrix.columnVector(potentials)).mul(-1).to1DArray();
  return { potentials, inflows };
}

/** A chain of resistances from node 0 on. */
export const chain = (resistances: readonly number[]): Link[] =>
  resistances.map((resistance, index) => ({ from: index, to: index + 1, conductance: 1 / resistance }));

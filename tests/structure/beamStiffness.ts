/**
 * An independent solution for the tests: Euler beams by the direct stiffness method with Gaussian elimination.
 * It shares no formula with the code under test.
 */

function solve(matrix: number[][], right: number[]): number[] {
  const size = right.length;
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0]);
  const cell = (row: number, column: number): number => rows[row]?.[column] ?? 0;
  for (let pivot = 0; pivot < size; pivot += 1) {
    let best = pivot;
    for (let row = pivot + 1; row < size; row += 1)
      if (Math.abs(cell(row, pivot)) > Math.abs(cell(best, pivot))) best = row;
    const swapped = rows[best] ?? [];
    rows[best] = rows[pivot] ?? [];
    rows[pivot] = swapped;
    for (let row = pivot + 1; row < size; row += 1) {
      const factor = cell(row, pivot) / cell(pivot, pivot);
      rows[row] = (rows[row] ?? []).map((value, column) => value - factor * cell(pivot, column));
    }
  }
  const result = new Array<number>(size).fill(0);
  for (let row = size - 1; row >= 0; row -= 1) {
    const known = result.reduce(
      (sum, value, column) => (column > row ? sum + cell(row, column) * value : sum),
      0,
    );
    result[row] = (cell(row, size) - known) / cell(row, row);
  }
  return result;
}

/** Heel at 0, wall line at b, tip at b + a; uniform load w on the overhang, point load P at the tip; down positive. */
export function overhangByStiffness(input: { w: number; p: number; a: number; b: number; ei: number }): {
  heelUp: number;
  wallUp: number;
  tipDown: number;
  wallMoment: number;
} {
  const { w, p, a, b, ei } = input;
  const element = (length: number): number[][] => {
    const k = ei / length ** 3;
    return [
      [12 * k, 6 * k * length, -12 * k, 6 * k * length],
      [6 * k * length, 4 * k * length ** 2, -6 * k * length, 2 * k * length ** 2],
      [-12 * k, -6 * k * length, 12 * k, -6 * k * length],
      [6 * k * length, 2 * k * length ** 2, -6 * k * length, 4 * k * length ** 2],
    ];
  };
  // Degrees of freedom: up-displacement and rotation of heel, wall, tip.
  const whole = Array.from({ length: 6 }, () => new Array<number>(6).fill(0));
  for (const [start, length] of [
    [0, b],
    [2, a],
  ] as const)
    element(length).forEach((row, i) =>
      row.forEach((value, j) => {
        const target = whole[start + i];
        if (target) target[start + j] = (target[start + j] ?? 0) + value;
      }),
    );
  const loads = [0, 0, -w * (a / 2), (-w * a ** 2) / 12, -w * (a / 2) - p, (w * a ** 2) / 12];
  const free = [1, 3, 4, 5];
  const reduced = free.map((i) => free.map((j) => whole[i]?.[j] ?? 0));
  const moved = solve(
    reduced,
    free.map((i) => loads[i] ?? 0),
  );
  const displacement = new Array<number>(6).fill(0);
  free.forEach((dof, index) => (displacement[dof] = moved[index] ?? 0));
  const force = (dof: number): number =>
    (whole[dof] ?? []).reduce((sum, value, j) => sum + value * (displacement[j] ?? 0), 0) - (loads[dof] ?? 0);
  const back = element(b);
  const wallMoment = (back[3] ?? []).reduce((sum, value, j) => sum + value * (displacement[j] ?? 0), 0);
  return {
    heelUp: force(0),
    wallUp: force(2),
    tipDown: -(displacement[4] ?? 0),
    wallMoment: Math.abs(wallMoment),
  };
}

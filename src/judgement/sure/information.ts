/** What it is worth to know one uncertain thing before deciding. */

/** [-] orthogonal polynomials on 0 to 1 up to this degree describe how a total moves with one unknown. */
const DEGREE = 3;
/** [-] places at which the described totals are compared. */
const GRID = 64;

/** Shifted Legendre polynomials: orthogonal on 0 to 1, the square of the k-th integrates to 1/(2k+1). */
const [C10, C11] = [2, 1] as const;
const [C20, C21, C22] = [6, 6, 1] as const;
const [C30, C31, C32, C33] = [20, 30, 12, 1] as const;
const basis: readonly ((u: number) => number)[] = [
  () => 1,
  (u) => C10 * u - C11,
  (u) => (C20 * u - C21) * u + C22,
  (u) => ((C30 * u - C31) * u + C32) * u - C33,
];

/**
 * Collects samples of totals and says what knowing one unknown would be worth.
 *
 * EVPPI(x) = E_x[ max_s E[V_s | x] ] - max_s E[V_s], with E[V_s | x] as a cubic in the share u of x
 *
 * @param unknowns  [-] how many
 * @param options   [-] how many alternatives can be chosen
 * @returns         [-] `add` takes the shares of the unknowns and the totals of one sample; `worth` gives
 *                  one value for each unknown, in units of the totals, 0 or more
 * @source          STRONG-OAKLEY-BRENNAN-2014 regression estimate of partial perfect information (memory)
 * @assumes         shares are spread evenly over 0 to 1, as quasi-random points are
 */
export function informationMeter(unknowns: number, options: number) {
  const terms = DEGREE + 1;
  const sums = new Float64Array(unknowns * options * terms);
  let count = 0;
  return {
    add(shares: Float64Array, totals: Float64Array): void {
      count += 1;
      for (let unknown = 0; unknown < unknowns; unknown += 1) {
        const u = shares[unknown] ?? 0;
        for (let term = 0; term < terms; term += 1) {
          const height = basis[term]?.(u) ?? 0;
          for (let option = 0; option < options; option += 1) {
            const at = (unknown * options + option) * terms + term;
            sums[at] = (sums[at] ?? 0) + height * (totals[option] ?? 0);
          }
        }
      }
    },
    worth(): number[] {
      return Array.from({ length: unknowns }, (_, unknown) => {
        const fitted = (option: number, u: number): number => {
          let value = 0;
          for (let term = 0; term < terms; term += 1) {
            const sum = sums[(unknown * options + option) * terms + term] ?? 0;
            value += (2 * term + 1) * (sum / count) * (basis[term]?.(u) ?? 0);
          }
          return value;
        };
        const at = (u: number): number[] =>
          Array.from({ length: options }, (__, option) => fitted(option, u));
        const places = Array.from({ length: GRID }, (__, place) => at((place + 1 / 2) / GRID));
        const mean = (pick: (row: readonly number[]) => number): number =>
          places.reduce((sum, row) => sum + pick(row), 0) / GRID;
        const without = Array.from({ length: options }, (__, option) => mean((row) => row[option] ?? 0));
        const gain = mean((row) => Math.max(...row)) - Math.max(...without);
        return Math.max(0, gain);
      });
    },
  };
}

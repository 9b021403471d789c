/** Where the rafters stand that a rake cuts across. */
import type { EdgeInput } from './edge-input.ts';

/** x of the middle of each rafter in view, the gable's own end rafter first where there is one. */
export function rafterCenters(input: EdgeInput): number[] {
  const { wall, view, given, lookout_m } = input;
  const { spacing_m, width_m } = given.framing;
  const end = wall.inner_m + view.inside_m;
  const centers: number[] = [];
  // With lookouts the gable wall itself stands in place of an end rafter.
  const first = lookout_m > 0 ? wall.studOut_m + spacing_m : wall.studOut_m + width_m / 2;
  for (let x = first; x + width_m / 2 <= end; x += spacing_m) {
    // Beside lookouts a rafter hangs lower than the plate, so none stands over the wall.
    if (lookout_m === 0 || x - width_m / 2 >= wall.studIn_m) centers.push(x);
  }
  return centers;
}

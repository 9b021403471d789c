/** A second solution of the monthly method: projected relaxation, without hull or tangents. */
import type { VaporPoint } from '../../src/physics/vaporLine.ts';

/**
 * The pressures of an obstacle problem (as high as vapor flow makes them, never above saturation, at saturation
 * where water sits), swept until nothing moves. No hull, no tangents.
 */
export function relaxedRates(points: readonly VaporPoint[]): number[] {
  const p = points.map((point) => point.pressure_Pa);
  const s = points.map((point) => point.airLayer_m);
  const value = (list: number[], index: number): number => list[index] ?? Number.NaN;
  const conductance = (left: number): number => 1 / (value(s, left + 1) - value(s, left));
  for (let sweep = 0; sweep < 200_000; sweep++) {
    let move = 0;
    for (let index = 1; index < points.length - 1; index++) {
      const point = points[index];
      if (!point || point.held) continue;
      const [a, b] = [conductance(index - 1), conductance(index)];
      const free = (a * value(p, index - 1) + b * value(p, index + 1)) / (a + b);
      const next = Math.min(point.pressure_Pa, value(p, index) + 1.7 * (free - value(p, index)));
      move = Math.max(move, Math.abs(next - value(p, index)));
      p[index] = next;
    }
    if (move < 1e-11) break;
  }
  return points.map((_, index) =>
    index === 0 || index === points.length - 1
      ? 0
      : 2e-10 *
        (conductance(index - 1) * (value(p, index - 1) - value(p, index)) -
          conductance(index) * (value(p, index) - value(p, index + 1))),
  );
}

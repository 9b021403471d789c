import { describe, expect, it } from 'vitest';
import { haltonSequence } from '../../../src/judgement/sure/halton.ts';
import { informationMeter } from '../../../src/judgement/sure/information.ts';

/** Worth of each of two unknowns for options that depend on them. */
function worth(options: readonly ((x: number, y: number) => number)[], count = 4096): number[] {
  const { point } = haltonSequence(2, 1);
  const meter = informationMeter(2, options.length);
  const row = new Float64Array(2);
  for (let index = 0; index < count; index += 1) {
    point(index, row);
    meter.add(
      row,
      Float64Array.from(options, (option) => option(row[0] ?? 0, row[1] ?? 0)),
    );
  }
  return meter.worth();
}

describe('what knowing is worth', () => {
  it('x − 1/2 or nothing: E[max(x − 1/2, 0)] = 1/8; the other unknown is worth nothing', () => {
    const [x = 0, y = 0] = worth([(u) => u - 0.5, () => 0]);
    expect(x).toBeCloseTo(1 / 8, 3);
    expect(y).toBeLessThan(5e-4);
  });

  it('2x − 1/2 or nothing: the gain of avoiding losses, ∫(1/2 − 2x) from 0 to 1/4 = 1/16', () => {
    expect(worth([(u) => 2 * u - 0.5, () => 0])[0]).toBeCloseTo(1 / 16, 3);
  });

  it('is nothing where one option is better whatever happens', () => {
    expect(worth([(u, v) => 1 + u + v, (u) => 0.5 + u])).toEqual([
      expect.closeTo(0, 12),
      expect.closeTo(0, 12),
    ]);
  });

  it('is never below 0', () => {
    expect(Math.min(...worth([(u, v) => u * v, (u, v) => u * v]))).toBeGreaterThanOrEqual(0);
  });

  it('parabola 6x² − 2 or nothing: ∫(6x² − 2) from 1/√3 to 1 = 4/(3√3), a cubic holds it exactly', () => {
    expect(worth([(u) => 6 * u * u - 2, () => 0])[0]).toBeCloseTo(4 / (3 * Math.sqrt(3)), 2);
  });
});

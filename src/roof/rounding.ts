/**
 * A value to a whole number of steps: series of an evaluation keep what a reader can use, not rounding noise.
 *
 * @param value  [any] a finite number
 * @param step   [same] a power of ten
 * @returns      [same] the nearest multiple of the step, without -0
 * @source       OUR-JUDGEMENT keeps the evaluation short
 */
export function rounded(value: number, step: number): number {
  const perUnit = Math.round(1 / step);
  return Math.round(value * perUnit) / perUnit + 0;
}

/** From an evenly spread number to a value of a stated distribution. */
import type { Spread } from '../../catalog/uncertainties.ts';

/**
 * Value of a distribution at a share of its mass (inverse of the distribution function).
 *
 * triangular: a + sqrt(u (b - a)(m - a)) up to the mode, b - sqrt((1 - u)(b - a)(b - m)) past it
 *
 * @param spread  [-] low (a), likely (m), high (b) and the form
 * @param share   [-] u in 0 to 1
 * @returns       [-] between low and high
 * @throws        RangeError for a log-uniform distribution that reaches 0
 * @source        OUR-JUDGEMENT textbook inverse of triangular, uniform and log-uniform distributions (memory)
 */
export function valueAtShare({ distribution, low, likely, high }: Spread, share: number): number {
  switch (distribution) {
    case 'uniform':
      return low + share * (high - low);
    case 'log-uniform':
      if (!(low > 0)) throw new RangeError(`low: ${low} is not above 0, which log-uniform needs`);
      return low * (high / low) ** share;
    case 'triangular': {
      const width = high - low;
      return share < (likely - low) / width
        ? low + Math.sqrt(share * width * (likely - low))
        : high - Math.sqrt((1 - share) * width * (high - likely));
    }
  }
}

/**
 * The value that is off by a draw.
 *
 * @param shape  [-] factor, shift or value
 * @param value  [any unit] as computed or answered
 * @param draw   [- or the same unit] drawn from the distribution
 * @returns      [any unit] multiplied, shifted or replaced
 * @source       OUR-JUDGEMENT shapes of uncertainties.json
 */
export function shaken(shape: Spread['shape'], value: number, draw: number): number {
  switch (shape) {
    case 'factor':
      return value * draw;
    case 'shift':
      return value + draw;
    case 'value':
      return draw;
  }
}

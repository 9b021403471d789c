/** Quasi-random points: a Halton sequence whose digits are permuted by a seed. The same seed gives the same points. */

/** [-] odd constants of the 32-bit mixer (Steele, Lea, Flood 2014 idea; 32-bit form in common use, public domain). */
const STEP = 0x6d2b79f5;
const TWO_32 = 4294967296;
const [MIX_A, MIX_B] = [15, 7] as const;
const [ODD_A, ODD_B] = [1, 61] as const;
const FINAL = 14;

/**
 * Pseudo-random numbers from a seed; only used to permute digits.
 *
 * @param seed  [-] whole
 * @returns     [-] a function that gives the next number in [0, 1)
 * @source      OUR-JUDGEMENT 32-bit mixer in common use, public domain (memory)
 */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + STEP) >>> 0;
    let mixed = Math.imul(state ^ (state >>> MIX_A), state | ODD_A);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> MIX_B), mixed | ODD_B);
    return ((mixed ^ (mixed >>> FINAL)) >>> 0) / TWO_32;
  };
}

/**
 * The first primes.
 *
 * @param count  [-] how many
 * @returns      [-] rising
 * @source       OUR-JUDGEMENT trial division, textbook form (memory)
 */
export function primes(count: number): number[] {
  const found: number[] = [];
  for (let next = 2; found.length < count; next += 1)
    if (found.every((prime) => next % prime !== 0)) found.push(next);
  return found;
}

/**
 * Radical inverse: the digits of an index mirrored at the point.
 *
 * phi_b(i) = sum over k of a_k b^(-k-1), where i = sum over k of a_k b^k
 *
 * @param index  [-] 0 or more, whole
 * @param base   [-] 2 or more, whole
 * @returns      [-] in [0, 1)
 * @source       HALTON-1960 section 2 (memory)
 */
export function radicalInverse(index: number, base: number): number {
  let value = 0;
  let place = 1 / base;
  for (let rest = index; rest > 0; rest = Math.floor(rest / base)) {
    value += (rest % base) * place;
    place /= base;
  }
  return value;
}

/** [-] places beyond this add less than a double can hold. */
const SMALLEST = 2 ** -40;

function permutation(base: number, random: () => number): Uint16Array {
  const digits = Uint16Array.from({ length: base }, (_, digit) => digit);
  for (let last = base - 1; last > 0; last -= 1) {
    const other = Math.floor(random() * (last + 1));
    [digits[last], digits[other]] = [digits[other] ?? 0, digits[last] ?? 0];
  }
  return digits;
}

interface Place {
  readonly digits: Uint16Array;
  readonly worth: number;
}

export interface Sequence {
  readonly dimensions: number;
  /** Fills a row with point `index`: one number in [0, 1) for each dimension. */
  readonly point: (index: number, row: Float64Array) => void;
}

/**
 * Randomized Halton sequence: every digit of every dimension goes through a random permutation of its own.
 *
 * x_ij = sum over k of pi_jk(a_k) b_j^(-k-1), b_j the j-th prime
 *
 * @param dimensions  [-] how many numbers each point has
 * @param seed        [-] whole; another seed gives an independent set of points
 * @returns           [-] points in [0, 1)
 * @source            OWEN-2017 algorithm of section 3: permuted digits also where the index has none left (memory)
 * @assumes           without permuting, high dimensions run in step; with it each point alone is uniform
 */
export function haltonSequence(dimensions: number, seed: number): Sequence {
  const random = seeded(seed);
  const bases = primes(dimensions);
  const tables = bases.map((base) => {
    const places: Place[] = [];
    for (let worth = 1 / base; worth > SMALLEST; worth /= base)
      places.push({ digits: permutation(base, random), worth });
    return places;
  });
  return {
    dimensions,
    point: (index, row) => {
      for (let column = 0; column < dimensions; column += 1) {
        const base = bases[column] ?? 2;
        let rest = index;
        let value = 0;
        const places = tables[column] ?? [];
        for (let place = 0; place < places.length; place += 1) {
          const { digits, worth } = places[place] as Place;
          const next = Math.floor(rest / base);
          value += (digits[rest - next * base] ?? 0) * worth;
          rest = next;
        }
        row[column] = value;
      }
    },
  };
}

/**
 * How many random eaves each property of the drawing is tried on. A long sweep before a release:
 * `OVERDECK_DRAWING_RUNS=2000 npx vitest run --project unit tests/drawing`.
 */
const USUAL_RUNS = 60;

export const RUNS = { numRuns: Number(process.env['OVERDECK_DRAWING_RUNS'] ?? USUAL_RUNS) };

/** Guards of the structural functions and the turn from degrees to radians. */

/** Throws when a number is not finite or not inside its range: the caller's mistake. */
export function demandRange(name: string, value: number, least: number, greatest = Infinity): void {
  if (!Number.isFinite(value) || value < least || value > greatest) {
    const limit = greatest === Infinity ? `at least ${least}` : `${least} to ${greatest}`;
    throw new RangeError(`${name}: ${value} is outside what is allowed (${limit})`);
  }
}

/** Throws when a number is not finite and above zero. */
export function demandPositive(name: string, value: number): void {
  if (!Number.isFinite(value) || value <= 0) throw new RangeError(`${name}: ${value} is not above 0`);
}

/** [deg] half a turn (definition). */
const HALF_TURN_DEG = 180;
/** Degrees to radians. */
export const radians = (angle_deg: number): number => (angle_deg * Math.PI) / HALF_TURN_DEG;

/** A block at the eave that stops the upper layers: shear, tipping and bearing of the block on one rafter. */
import { demandPositive, demandRange } from './guards.ts';
import { holdUse, type ScrewHold } from './screwHold.ts';

/** [-] end distance and spacing in a row along the grain, in diameters, prebored, NDS 2018 commentary (seen-transcription). */
const ROW_DIAMETERS = 10;
/** [-] screws tried on one rafter (our judgement): more than six want a drawing of their own. */
const COUNTS = [2, 3, 4, 5, 6] as const;

export interface CleatInput {
  /** Pull on one rafter's block and the load duration that goes with it. */
  readonly cases: readonly { readonly force_N: number; readonly loadDuration: number }[];
  /** Of the push above the foot of the block. */
  readonly lever_m: number;
  /** Reference values of one screw from block to rafter, no insulation between. */
  readonly hold: Pick<ScrewHold, 'withdrawal_N' | 'pullThrough_N'> & {
    /** Yield-mode value wood to wood, without the share for insulation. */
    readonly shear_N: number;
  };
  readonly nominal_m: number;
  /** Side of the block that the upper layer pushes on, and what that grain bears. */
  readonly bearingArea_m2: number;
  readonly bearing_Pa: number;
}

export interface CleatDesign {
  readonly count: number;
  /** Of the block along the rafter. */
  readonly length_m: number;
  readonly shear_N: number;
  /** In the screw farthest from the toe. */
  readonly tension_N: number;
  readonly bearing_Pa: number;
  readonly ratio: number;
  readonly governing: 'screws' | 'bearing';
}

/** Rigid block that tips about its lower edge: the screw farthest from it is pulled most. */
function farthestTension(moment_Nm: number, count: number, step_m: number): number {
  let squares = 0;
  for (let place = 1; place <= count; place += 1) squares += place * place;
  return (moment_Nm * count) / (squares * step_m);
}

function designWith(input: CleatInput, count: number): CleatDesign {
  const step_m = ROW_DIAMETERS * input.nominal_m;
  const all = input.cases.map(({ force_N, loadDuration }) => {
    const shear_N = force_N / count;
    const tension_N = farthestTension(force_N * input.lever_m, count, step_m);
    const { hold } = input;
    const screws = holdUse(
      { ...hold, lateral_N: hold.shear_N * loadDuration },
      tension_N,
      shear_N,
      loadDuration,
    );
    const bearing_Pa = force_N / input.bearingArea_m2;
    const bearing = bearing_Pa / input.bearing_Pa;
    return {
      shear_N,
      tension_N,
      bearing_Pa,
      ratio: Math.max(screws.ratio, bearing),
      governing: bearing > screws.ratio ? ('bearing' as const) : ('screws' as const),
    };
  });
  const worst = all.reduce((most, next) => (next.ratio > most.ratio ? next : most));
  return { count, length_m: (count + 1) * step_m, ...worst };
}

/**
 * The smallest block with two to six screws in a row that holds one rafter's pull; six when none does.
 *
 * V = F/n; T = F e x_n / sum(x_i^2) with x_i = i 10D from the toe; each screw as combined load; bearing F/A
 *
 * @param input  [N, m, m², Pa] pull by load case (F), lever (e), screw values, nominal D, bearing area (A) and strength
 * @returns      [-, m, N, Pa] screws, block length, forces, greatest ratio and what governs
 * @throws       RangeError when a value is outside its range or no case is given
 * @source       NDS-2018 eq. 12.4-1 (seen-transcription); COMMON-PRACTICE statics of a rigid block (computed)
 * @assumes      weight on the block and friction carry nothing; deck between block and rafter counts as wood
 */
export function eaveCleat(input: CleatInput): CleatDesign {
  demandPositive('nominal_m', input.nominal_m);
  demandPositive('bearingArea_m2', input.bearingArea_m2);
  demandPositive('bearing_Pa', input.bearing_Pa);
  demandRange('lever_m', input.lever_m, 0);
  if (input.cases.length === 0) throw new RangeError('cases: at least one load case is needed');
  for (const one of input.cases) demandRange('force_N', one.force_N, 0);
  const tried = COUNTS.map((count) => designWith(input, count));
  const best = tried.find((one) => one.ratio <= 1) ?? tried.at(-1);
  if (best === undefined) throw new RangeError('no number of screws to try');
  return best;
}

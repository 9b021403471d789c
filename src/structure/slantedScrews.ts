/** Slanted screws that hold the upper layers back: against board, or in pairs that pull and push. */
import { demandPositive, demandRange, radians } from './guards.ts';
import { screwPush, slantedShare, trussForces } from './slopeTruss.ts';

/** [deg] slanted screw to the roof surface, 30° off square (our judgement). */
export const SLANT_DEG = 60;
/** [-] share of the rated strength (10 % strain) that board may carry for good (memory rule). */
const BOARD_SHARE = 1 / 3;

export type Strut =
  | {
      readonly kind: 'board';
      /** Of furring or sheet that presses on the board along each line of screws. */
      readonly width_m: number;
      /** Rated compressive strength at 10 % strain. */
      readonly strength_Pa: number;
    }
  | {
      readonly kind: 'screw';
      readonly root_m: number;
      readonly yield_Pa: number;
      /** Between the wood faces, square to the slope. */
      readonly gap_m: number;
    };

export interface SlantedInput {
  /** Load for each slope area, along it and pressing on it, with its load duration. */
  readonly cases: readonly {
    readonly along_Pa: number;
    readonly pressing_Pa: number;
    readonly loadDuration: number;
  }[];
  /** Between lines of screws. */
  readonly across_m: number;
  /** Spacings along a line to try, widest first. */
  readonly steps_m: readonly number[];
  /** Of one screw square to the slope, load duration 1. */
  readonly withdrawal_N: number;
  readonly pullThrough_N: number | null;
  readonly strut: Strut;
}

export interface SlantedDesign {
  readonly step_m: number;
  readonly tension_N: number;
  readonly compression_N: number;
  readonly ratio: number;
  readonly governing: 'withdrawal' | 'pull-through' | 'board' | 'push';
}

/**
 * Length of a slanted screw across layers of a given thickness.
 *
 * L = t / sin b
 *
 * @param thickness_m  [m] square to the slope (t)
 * @returns            [m] along the screw
 * @source             COMMON-PRACTICE plane geometry (computed)
 */
export const slantedLength = (thickness_m: number): number => thickness_m / Math.sin(radians(SLANT_DEG));

interface Use {
  readonly governing: SlantedDesign['governing'];
  readonly ratio: number;
}

function designAt(input: SlantedInput, step_m: number): SlantedDesign {
  const { strut, across_m } = input;
  const area_m2 = step_m * across_m;
  const share = slantedShare(SLANT_DEG);
  const all = input.cases.map(({ along_Pa, pressing_Pa, loadDuration }) => {
    const forces =
      strut.kind === 'board'
        ? trussForces(along_Pa * area_m2, pressing_Pa * area_m2, SLANT_DEG, 90)
        : trussForces(along_Pa * area_m2, 0, SLANT_DEG, SLANT_DEG);
    const axial_N = input.withdrawal_N * share * loadDuration;
    const uses: Use[] = [
      { governing: 'withdrawal', ratio: forces.tension_N / axial_N },
      {
        governing: 'pull-through',
        ratio: input.pullThrough_N === null ? 0 : forces.tension_N / (input.pullThrough_N * loadDuration),
      },
      strut.kind === 'board'
        ? {
            governing: 'board',
            ratio: forces.compression_N / (strut.width_m * step_m * strut.strength_Pa * BOARD_SHARE),
          }
        : {
            governing: 'push',
            ratio:
              forces.compression_N /
              Math.min(axial_N, screwPush(strut.root_m, strut.yield_Pa, slantedLength(strut.gap_m))),
          },
    ];
    const worst = uses.reduce((most, next) => (next.ratio > most.ratio ? next : most));
    return { step_m, ...forces, ...worst };
  });
  return all.reduce((most, next) => (next.ratio > most.ratio ? next : most));
}

/**
 * The widest spacing of slanted screws, or of pairs, at which screws and strut hold the pull down the slope.
 *
 * board: T = F/cos b, C = F tan b + N over the pressed strip at a third of its strength; pair: T = C = F/(2 cos b)
 *
 * @param input  [Pa, m, N] loads by case, spacings to try, screw values square to the slope, strut
 * @returns      [m, N, -] spacing, forces of the worst case, greatest ratio and what governs; the closest when none holds
 * @throws       RangeError when a value is outside its range or nothing is given to try
 * @source       EN-1995-1-1-2004 eq. 8.38 for the slant (memory); COMMON-PRACTICE statics (computed)
 * @assumes      60 degrees to the slope, along the rafter; head seated flat; board load at a third of its strength
 */
export function slantedScrews(input: SlantedInput): SlantedDesign {
  demandPositive('across_m', input.across_m);
  demandPositive('withdrawal_N', input.withdrawal_N);
  for (const one of input.cases) {
    demandRange('along_Pa', one.along_Pa, 0);
    demandRange('pressing_Pa', one.pressing_Pa, 0);
  }
  if (input.cases.length === 0) throw new RangeError('cases: at least one load case is needed');
  const tried = input.steps_m.map((step_m) => designAt(input, step_m));
  const best = tried.find((one) => one.ratio <= 1) ?? tried.at(-1);
  if (best === undefined) throw new RangeError('steps_m: at least one spacing is needed');
  return best;
}

/** The pull down the slope of everything above the insulation, and what screws across the insulation carry of it. */
import type { Screw } from '../catalog/lumber.ts';
import { metersFromInches } from '../units.ts';
import { dowelBearing, lateralDesign, type LateralDesign } from './dowel.ts';
import { demandPositive, demandRange, radians } from './guards.ts';
import { ENGINEER, standingOf, type Screening, type ScreeningCheck } from './screening.ts';

/** [-] share of the yield-equation value that the wall furring table of the building code allows: 0.711 to 0.734 for nails. */
const GAP_DESIGN_SHARE = 0.72;
/** [-] the same for lag screws: least cell 0.58. */
const GAP_DESIGN_SHARE_LAG = 0.58;
/** [m] 4 in of insulation: thicker needs a design of its own (inclined screws, eave block, truss action). */
export const GAP_SCREENING_LIMIT_M = metersFromInches(4);

export interface AlongSlope {
  /** Per slope area, the rule (dead + snow) sin: the value screened against. */
  readonly alongSlope_Pa: number;
  /** The same with snow taken on the horizontal projection. */
  readonly alongSlopeProjected_Pa: number;
}

/**
 * Pull down the slope of the layers above the insulation and of the snow on them.
 *
 * (D + S) sin(theta); with snow on the projection D sin + S sin cos
 *
 * @param dead_Pa    [Pa] weight of everything above the insulation, per slope area
 * @param snow_Pa    [Pa] roof snow on the horizontal projection
 * @param angle_deg  [deg] slope, 0 to below 90
 * @returns          [Pa] per slope area: screening rule and projected value
 * @throws           RangeError when a value is outside its range
 * @source           ASCE-FORENSIC-2012 abstract (seen); statics (computed)
 * @assumes          no friction, no shear through the board
 */
export function alongSlopeLoad(dead_Pa: number, snow_Pa: number, angle_deg: number): AlongSlope {
  demandRange('dead_Pa', dead_Pa, 0);
  demandRange('snow_Pa', snow_Pa, 0);
  demandRange('angle_deg', angle_deg, 0, 89);
  const sine = Math.sin(radians(angle_deg));
  return {
    alongSlope_Pa: (dead_Pa + snow_Pa) * sine,
    alongSlopeProjected_Pa: (dead_Pa + snow_Pa * Math.cos(radians(angle_deg))) * sine,
  };
}

export interface GapCapacity {
  readonly lateral: LateralDesign;
  /** Sustained shear that one screw is counted for. */
  readonly design_N: number;
  readonly share: number;
}

/**
 * Sustained shear of one screw through insulation.
 *
 * 0.72 Z(gap) for wood screws, 0.58 Z(gap) for lag screws, CD not above 1
 *
 * @param input  [m, -] screw, furring or panel thickness and G, insulation, bearing length in the framing and G
 * @returns      [N] yield-mode values and the design value
 * @throws       RangeError when a value is outside its range
 * @source       IBC-2018 table 2603.13.2 (seen-primary), share inferred from its cells (computed); AWC-TR12 (memory)
 * @assumes      a wall table's slip limit holds on a roof: no roof table exists in the code
 */
export function gapCapacity(input: {
  readonly screw: Screw;
  readonly sideThickness_m: number;
  readonly sideSpecificGravity: number;
  readonly gap_m: number;
  readonly mainPenetration_m: number;
  readonly mainSpecificGravity: number;
}): GapCapacity {
  const { screw } = input;
  const lateral = lateralDesign(
    {
      diameter_m: screw.root_m,
      bendingYield_Pa: screw.bendingYield_Pa,
      sideThickness_m: input.sideThickness_m,
      sideBearing_Pa: dowelBearing(screw.nominal_m, input.sideSpecificGravity),
      mainPenetration_m: input.mainPenetration_m,
      mainBearing_Pa: dowelBearing(screw.nominal_m, input.mainSpecificGravity),
      gap_m: input.gap_m,
    },
    { nominal_m: screw.nominal_m },
  );
  const share = screw.kind === 'lag-screw' ? GAP_DESIGN_SHARE_LAG : GAP_DESIGN_SHARE;
  return { lateral, share, design_N: share * lateral.reference_N };
}

export interface SlopeScreening extends Screening {
  readonly check: ScreeningCheck;
  readonly screwsPerArea_1_m2: number;
  /** Screws per slope area that would bring the ratio to 1. */
  readonly neededPerArea_1_m2: number;
}

/**
 * Sliding of the upper layers: pull down the slope against the screws across the insulation.
 *
 * ratio = (D + S) sin(theta) / (n V)
 *
 * @param input  [Pa, N, 1/m², m] pull, design shear of a screw (V), screws per slope area (n), insulation thickness
 * @returns      [-] the check; needs-design above 4 in of insulation or a ratio above 1
 * @throws       RangeError when a value is outside its range
 * @source       IBC-2018 table 2603.13.2 (seen-primary), own screening (our judgement)
 */
export function slopeScreening(input: {
  readonly alongSlope_Pa: number;
  readonly design_N: number;
  readonly screwsPerArea_1_m2: number;
  readonly gap_m: number;
}): SlopeScreening {
  demandRange('alongSlope_Pa', input.alongSlope_Pa, 0);
  demandPositive('design_N', input.design_N);
  demandPositive('screwsPerArea_1_m2', input.screwsPerArea_1_m2);
  demandRange('gap_m', input.gap_m, 0);
  const capacity_Pa = input.design_N * input.screwsPerArea_1_m2;
  const ratio = input.alongSlope_Pa / capacity_Pa;
  const isThick = input.gap_m > GAP_SCREENING_LIMIT_M;
  const notes = ['The code table behind the screw values is for walls; no roof table exists.'];
  if (isThick || ratio > 1)
    notes.push(
      'Needs design: a stop block at the eave, inclined screws that work as a truss with the board, or straps over the ridge.',
    );
  const check: ScreeningCheck = {
    id: 'along-slope',
    what: 'Pull down the slope against the screws across the insulation',
    demand: input.alongSlope_Pa,
    capacity: capacity_Pa,
    unit: 'Pa',
    ratio,
    governingCase: 'dead-snow',
    who: ENGINEER,
    source: 'IBC-2018',
    clause: 'Table 2603.13.2, calibrated',
    known: 'computed',
  };
  return {
    provisional: true,
    decidedBy: ENGINEER,
    standing: standingOf([check], isThick || ratio > 1),
    notes,
    check,
    screwsPerArea_1_m2: input.screwsPerArea_1_m2,
    neededPerArea_1_m2: input.alongSlope_Pa / input.design_N,
  };
}

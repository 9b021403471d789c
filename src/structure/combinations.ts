/** Allowable-stress load cases on a sloped roof member, as load square to the slope. */
import { ALLOWABLE_STRESS_WIND } from './wind.ts';
import { demandRange, radians } from './guards.ts';
import { LOAD_DURATION } from './timber.ts';

export interface RoofLoads {
  /** On the slope area, from the actual layers. */
  readonly dead_Pa: number;
  /** On the horizontal projection, allowable-stress level. */
  readonly snow_Pa: number;
  /** Roof live load of work on the roof, on the horizontal projection. */
  readonly roofLive_Pa?: number;
  /** Ice along the eave, on the horizontal projection; acts with dead load only. */
  readonly eaveIce_Pa?: number;
  /** Strength level, square to the slope, zero or negative. */
  readonly windUplift_Pa?: number;
  /** Strength level, square to the slope, zero or positive. */
  readonly windDownward_Pa?: number;
}

export const loadCaseIds = [
  'dead',
  'dead-snow',
  'dead-live',
  'dead-ice',
  'dead-wind',
  'dead-snow-wind',
  'uplift',
] as const;
export type LoadCaseId = (typeof loadCaseIds)[number];

export interface LoadCase {
  readonly id: LoadCaseId;
  /** Square to the slope, per slope area; down is positive. */
  readonly normal_Pa: number;
  /** Load duration factor of the shortest load in the case. */
  readonly loadDuration: number;
  /** Share of a dead tip load that goes with the case. */
  readonly tipShare: number;
}

/** [-] share of two variable loads acting together, ASCE/SEI 7-16 section 2.4.1 combination 6. */
const TOGETHER = 0.75;
/** [-] dead load that resists uplift, combination 7. */
const RESISTING_DEAD = 0.6;

/**
 * The allowable-stress cases that can govern an overhang or a rafter tail.
 *
 * D; D + S; D + Lr; D + ice; D + 0.6W; D + 0.75S + 0.75(0.6W); 0.6D + 0.6W
 *
 * @param loads      [Pa] dead on the slope, snow, live, ice on the projection, wind square to the slope
 * @param angle_deg  [deg] slope, 0 to below 90
 * @returns          [Pa] one load per case, square to the slope, down positive; only cases whose loads are given
 * @throws           RangeError when a load has the wrong sign
 * @source           ASCE-7-16 section 2.4.1 (memory)
 * @assumes          the tip load is dead load and is left out of uplift (it would help)
 */
export function loadCases(loads: RoofLoads, angle_deg: number): LoadCase[] {
  demandRange('angle_deg', angle_deg, 0, 89);
  demandRange('dead_Pa', loads.dead_Pa, 0);
  demandRange('snow_Pa', loads.snow_Pa, 0);
  demandRange('windUplift_Pa', loads.windUplift_Pa ?? 0, -Infinity, 0);
  demandRange('windDownward_Pa', loads.windDownward_Pa ?? 0, 0);
  const cosine = Math.cos(radians(angle_deg));
  const dead = loads.dead_Pa * cosine;
  const onSlope = (projected_Pa: number): number => projected_Pa * cosine * cosine;
  const snow = onSlope(loads.snow_Pa);
  const push = ALLOWABLE_STRESS_WIND * (loads.windDownward_Pa ?? 0);
  const cases: LoadCase[] = [
    { id: 'dead', normal_Pa: dead, loadDuration: LOAD_DURATION.permanent, tipShare: 1 },
    { id: 'dead-snow', normal_Pa: dead + snow, loadDuration: LOAD_DURATION.snow, tipShare: 1 },
  ];
  if (loads.roofLive_Pa !== undefined)
    cases.push({
      id: 'dead-live',
      normal_Pa: dead + onSlope(loads.roofLive_Pa),
      loadDuration: LOAD_DURATION.construction,
      tipShare: 1,
    });
  if (loads.eaveIce_Pa !== undefined)
    cases.push({
      id: 'dead-ice',
      normal_Pa: dead + onSlope(loads.eaveIce_Pa),
      loadDuration: LOAD_DURATION.snow,
      tipShare: 1,
    });
  if (push > 0)
    cases.push(
      { id: 'dead-wind', normal_Pa: dead + push, loadDuration: LOAD_DURATION.wind, tipShare: 1 },
      {
        id: 'dead-snow-wind',
        normal_Pa: dead + TOGETHER * (snow + push),
        loadDuration: LOAD_DURATION.wind,
        tipShare: 1,
      },
    );
  if (loads.windUplift_Pa !== undefined)
    cases.push({
      id: 'uplift',
      normal_Pa: RESISTING_DEAD * dead + ALLOWABLE_STRESS_WIND * loads.windUplift_Pa,
      loadDuration: LOAD_DURATION.wind,
      tipShare: 0,
    });
  return cases;
}

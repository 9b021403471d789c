/** Allowable-stress load cases on a sloped roof member, as load square to the slope. */
import { ALLOWABLE_STRESS_WIND } from './wind.ts';
import { demandRange, radians } from './guards.ts';
import { LOAD_DURATION } from './timber.ts';

export interface RoofLoads {
  /** On the slope area, from the actual layers. */
  readonly dead_Pa: number;
  /** On the horizontal projection, allowable-stress level. */
  readonly snow_Pa: number;
  /** Snow of the lee side after wind over the ridge, where the standard asks for it; as `snow_Pa`. */
  readonly unbalanced_Pa?: number;
  /** Balanced snow and the drift below a higher roof together; as `snow_Pa`. */
  readonly drift_Pa?: number;
  /** Roof live load of work on the roof, on the horizontal projection. */
  readonly roofLive_Pa?: number;
  /** Ice along the eave, on the horizontal projection; acts with dead load only. */
  readonly eaveIce_Pa?: number;
  /** The same ice where the standard does not ask for it: shown, never counted. */
  readonly robustIce_Pa?: number;
  /** Strength level, square to the slope, zero or negative. */
  readonly windUplift_Pa?: number;
  /** Strength level, square to the slope, zero or positive. */
  readonly windDownward_Pa?: number;
}

export const loadCaseIds = [
  'dead',
  'dead-snow',
  'dead-unbalanced',
  'dead-drift',
  'dead-live',
  'dead-ice',
  'dead-ice-robust',
  'dead-wind',
  'dead-snow-wind',
  'dead-live-wind',
  'uplift',
] as const;
export type LoadCaseId = (typeof loadCaseIds)[number];

/** The combination as the standard prints it. */
export const loadCaseTexts: Readonly<
  Record<LoadCaseId, { readonly formula: string; readonly clause: string }>
> = {
  dead: { formula: 'D', clause: '2.4.1 combination 1' },
  'dead-snow': { formula: 'D + S', clause: '2.4.1 combination 3' },
  'dead-unbalanced': { formula: 'D + S unbalanced', clause: '2.4.1 combination 3; 7.6.1' },
  'dead-drift': { formula: 'D + S + drift', clause: '2.4.1 combination 3; 7.7' },
  'dead-live': { formula: 'D + Lr', clause: '2.4.1 combination 3' },
  'dead-ice': { formula: 'D + eave ice', clause: '7.4.5' },
  'dead-ice-robust': { formula: 'D + eave ice (robust)', clause: '7.4.5, robust check' },
  'dead-wind': { formula: 'D + 0.6 W', clause: '2.4.1 combination 5' },
  'dead-snow-wind': { formula: 'D + 0.75 S + 0.75 (0.6 W)', clause: '2.4.1 combination 6' },
  'dead-live-wind': { formula: 'D + 0.75 Lr + 0.75 (0.6 W)', clause: '2.4.1 combination 6' },
  uplift: { formula: '0.6 D + 0.6 W', clause: '2.4.1 combination 7' },
};

export interface LoadCase {
  readonly id: LoadCaseId;
  /** Square to the slope, per slope area; down is positive. */
  readonly normal_Pa: number;
  /** Load duration factor of the shortest load in the case. */
  readonly loadDuration: number;
  /** Share of a dead tip load that goes with the case. */
  readonly tipShare: number;
  /** False for a robust check: it is shown and governs nothing. */
  readonly counts: boolean;
}

/** [-] share of two variable loads acting together, ASCE/SEI 7-16 section 2.4.1 combination 6. */
const TOGETHER = 0.75;
/** [-] dead load that resists uplift, combination 7. */
const RESISTING_DEAD = 0.6;

/** A case whose snow, live load or ice acts with the dead load alone. */
function gravity(id: LoadCaseId, normal_Pa: number, loadDuration: number, counts = true): LoadCase {
  return { id, normal_Pa, loadDuration, tipShare: 1, counts };
}

/**
 * The allowable-stress cases that can govern an overhang or a rafter tail.
 *
 * D; D + S; D + S unbalanced; D + S + drift; D + Lr; D + ice; D + 0.6W; D + 0.75(S or Lr) + 0.75(0.6W); 0.6D + 0.6W
 *
 * @param loads      [Pa] dead on the slope, snow, live, ice on the projection, wind square to the slope
 * @param angle_deg  [deg] slope, 0 to below 90
 * @returns          [Pa] one load per case, square to the slope, down positive; only cases whose loads are given
 * @throws           RangeError when a load has the wrong sign
 * @source           ASCE-7-16 section 2.4.1 (memory)
 * @assumes          the tip load is dead load and is left out of uplift (it would help); no earthquake
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
  const { snow: snowDuration, construction, permanent, wind } = LOAD_DURATION;
  const cases = [gravity('dead', dead, permanent), gravity('dead-snow', dead + snow, snowDuration)];
  const more: readonly (readonly [LoadCaseId, number | undefined, number, boolean])[] = [
    ['dead-unbalanced', loads.unbalanced_Pa, snowDuration, true],
    ['dead-drift', loads.drift_Pa, snowDuration, true],
    ['dead-live', loads.roofLive_Pa, construction, true],
    ['dead-ice', loads.eaveIce_Pa, snowDuration, true],
    ['dead-ice-robust', loads.robustIce_Pa, snowDuration, false],
  ];
  for (const [id, load_Pa, duration, counts] of more)
    if (load_Pa !== undefined) {
      demandRange(id, load_Pa, 0);
      cases.push(gravity(id, dead + onSlope(load_Pa), duration, counts));
    }
  if (push > 0) {
    cases.push(gravity('dead-wind', dead + push, wind));
    cases.push(gravity('dead-snow-wind', dead + TOGETHER * (snow + push), wind));
    if (loads.roofLive_Pa !== undefined)
      cases.push(gravity('dead-live-wind', dead + TOGETHER * (onSlope(loads.roofLive_Pa) + push), wind));
  }
  if (loads.windUplift_Pa !== undefined)
    cases.push({
      id: 'uplift',
      normal_Pa: RESISTING_DEAD * dead + ALLOWABLE_STRESS_WIND * loads.windUplift_Pa,
      loadDuration: wind,
      tipShare: 0,
      counts: true,
    });
  return cases;
}

/** Input schemas of the structural calculations; faults say what is wrong and what is allowed. */
import * as v from 'valibot';
import { lumberGrades, lumberSizes, screwKinds, speciesIds } from '../catalog/lumber.ts';
import { oneOf, quantity, wholeNumber } from '../catalog/quantity.ts';
import { windEditions, windShapes, windZones, zonesOf } from '../catalog/windCoefficients.ts';
import { pascalsFromPsf } from '../units.ts';
import { GREATEST_LOAD_DURATION, SPECIFIC_GRAVITY } from './screws.ts';
import { externalCoefficient, GREATEST_ROOF_HEIGHT_M, WIND_ANGLES_DEG } from './wind.ts';

/** Limits that keep a slip of the unit out (our judgement). */
const LIMITS = {
  speed_m_s: { atLeast: 20, atMost: 120 },
  load_Pa: { atLeast: 0, atMost: pascalsFromPsf(600) },
  length_m: { above: 0, atMost: 20 },
  thickness_m: { above: 0, atMost: 1 },
  diameter_m: { above: 0, atMost: 0.05 },
  force_N: { atLeast: 0, atMost: 100_000 },
  yield_Pa: { atLeast: 1e8, atMost: 2e9 },
  count: { atLeast: 1, atMost: 20 },
} as const;

const gravity = quantity(SPECIFIC_GRAVITY);
const duration = quantity({ above: 0, atMost: GREATEST_LOAD_DURATION });
const factor = quantity({ above: 0, atMost: 2 });
const flag = v.boolean((issue) =>
  issue.input === undefined
    ? 'is missing; true or false is needed'
    : `${JSON.stringify(issue.input)} is not true or false`,
);

export const windPressureInput = v.pipe(
  v.strictObject({
    edition: oneOf(windEditions),
    basicSpeed_m_s: quantity(LIMITS.speed_m_s),
    exposure: oneOf(['B', 'C', 'D']),
    meanRoofHeight_m: quantity({ above: 0, atMost: GREATEST_ROOF_HEIGHT_M }),
    roofShape: oneOf(windShapes),
    angle_deg: quantity(WIND_ANGLES_DEG),
    zone: oneOf(windZones),
    part: oneOf(['roof', 'overhang']),
    effectiveArea_m2: quantity({ above: 0, atMost: 1000 }),
    topographicFactor: v.exactOptional(quantity({ atLeast: 1, atMost: 3 })),
    groundElevation_m: v.exactOptional(quantity({ atLeast: -500, atMost: 6000 })),
  }),
  v.rawCheck(({ dataset, addIssue }) => {
    if (!dataset.typed) return;
    const { edition, roofShape, zone, part } = dataset.value;
    const fault = (key: 'zone' | 'angle_deg', message: string) =>
      addIssue({
        message,
        path: [{ type: 'object', origin: 'value', input: dataset.value, key, value: dataset.value[key] }],
      });
    const allowed = zonesOf(edition, roofShape);
    if (!allowed.includes(zone))
      fault('zone', `"${zone}" is not one of ${allowed.join(', ')} (${edition}, ${roofShape})`);
    else {
      const found = externalCoefficient(dataset.value, part);
      if (found.kind === 'notCovered') fault('angle_deg', found.reason);
    }
  }),
);

export const snowLoadInput = v.strictObject({
  groundSnow_Pa: quantity(LIMITS.load_Pa),
  exposureFactor: quantity({ atLeast: 0.5, atMost: 1.5 }),
  thermalFactor: quantity({ atLeast: 0.8, atMost: 1.5 }),
  importanceFactor: quantity({ atLeast: 0.8, atMost: 1.2 }),
  angle_deg: quantity({ atLeast: 0, atMost: 90 }),
  slippery: flag,
  edition: v.exactOptional(oneOf(windEditions)),
});

export const screwWithdrawalInput = v.pipe(
  v.strictObject({
    kind: oneOf(screwKinds),
    diameter_m: quantity(LIMITS.diameter_m),
    specificGravity: gravity,
    threadPenetration_m: quantity(LIMITS.thickness_m),
    loadDuration: v.exactOptional(duration),
    factors: v.exactOptional(
      v.strictObject({
        wetService: v.exactOptional(factor),
        temperature: v.exactOptional(factor),
        endGrain: v.exactOptional(factor),
      }),
    ),
  }),
  v.forward(
    v.partialCheck(
      [['kind'], ['factors']],
      (input) => input.kind === 'lag-screw' || input.factors?.endGrain === undefined,
      'endGrain is given for a wood screw; only lag-screw has a withdrawal value in end grain',
    ),
    ['factors'],
  ),
);

export const screwLateralInput = v.strictObject({
  diameter_m: quantity(LIMITS.diameter_m),
  nominalDiameter_m: v.exactOptional(quantity(LIMITS.diameter_m)),
  bendingYield_Pa: quantity(LIMITS.yield_Pa),
  sideThickness_m: quantity(LIMITS.thickness_m),
  sideSpecificGravity: gravity,
  mainPenetration_m: quantity(LIMITS.thickness_m),
  mainSpecificGravity: gravity,
  gap_m: v.exactOptional(quantity({ atLeast: 0, atMost: 1 })),
  loadDuration: v.exactOptional(duration),
});

export const outriggerInput = v.strictObject({
  member: v.strictObject({
    species: oneOf(speciesIds),
    size: oneOf(lumberSizes),
    orientation: oneOf(['flat', 'on-edge']),
    grade: v.exactOptional(oneOf(lumberGrades)),
  }),
  spacing_m: quantity({ above: 0, atMost: 2.5 }),
  overhang_m: quantity({ above: 0, atMost: 3 }),
  backSpan_m: quantity(LIMITS.length_m),
  angle_deg: v.exactOptional(quantity({ atLeast: 0, atMost: 64 })),
  loads: v.strictObject({
    dead_Pa: quantity(LIMITS.load_Pa),
    snow_Pa: quantity(LIMITS.load_Pa),
    unbalanced_Pa: v.exactOptional(quantity(LIMITS.load_Pa)),
    drift_Pa: v.exactOptional(quantity(LIMITS.load_Pa)),
    roofLive_Pa: v.exactOptional(quantity(LIMITS.load_Pa)),
    eaveIce_Pa: v.exactOptional(quantity(LIMITS.load_Pa)),
    robustIce_Pa: v.exactOptional(quantity(LIMITS.load_Pa)),
    windUplift_Pa: v.exactOptional(quantity({ atLeast: -20_000, atMost: 0 })),
    windDownward_Pa: v.exactOptional(quantity({ atLeast: 0, atMost: 20_000 })),
  }),
  tip_N: v.exactOptional(quantity(LIMITS.force_N)),
  screw: v.strictObject({
    kind: oneOf(screwKinds),
    diameter_m: quantity(LIMITS.diameter_m),
    headDiameter_m: v.exactOptional(quantity({ above: 0, atMost: 0.1 })),
    threadPenetration_m: quantity(LIMITS.thickness_m),
    specificGravity: gravity,
    heelCount: wholeNumber(LIMITS.count),
    wallCount: wholeNumber(LIMITS.count),
    reportWithdrawal_N: v.exactOptional(quantity({ above: 0, atMost: 100_000 })),
    reportPullThrough_N: v.exactOptional(quantity({ above: 0, atMost: 100_000 })),
  }),
  seat: v.exactOptional(
    v.variant(
      'on',
      [
        v.strictObject({ on: v.literal('wood'), bearingLength_m: quantity(LIMITS.thickness_m) }),
        v.strictObject({
          on: v.literal('blocking'),
          bearingLength_m: quantity(LIMITS.thickness_m),
          blockingHeight_m: quantity(LIMITS.thickness_m),
        }),
        v.strictObject({
          on: v.literal('board'),
          bearingLength_m: quantity(LIMITS.thickness_m),
          boardThickness_m: quantity(LIMITS.thickness_m),
          boardStrength_Pa: quantity({ atLeast: 10_000, atMost: 5_000_000 }),
        }),
      ],
      (issue) => `${JSON.stringify(issue.input)} is not one of wood, blocking, board`,
    ),
  ),
});

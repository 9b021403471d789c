/** Calculations of single fasteners for the command and the reference tables. Screening: provisional, decided by others. */
import * as v from 'valibot';
import { defineCalculation, type Calculation } from '../catalog/calculation.ts';
import { furringCells, furringFasteners } from '../catalog/furring.ts';
import { oneOf, quantity } from '../catalog/quantity.ts';
import { dowelBearing, lateralDesign } from './dowel.ts';
import { CONFIRM_IN_STANDARD, ENGINEER } from './screening.ts';
import {
  allowableWithdrawal,
  combinedScrewLoad,
  GREATEST_LOAD_DURATION,
  headPullThrough,
  SPECIFIC_GRAVITY,
  withdrawalPerLength,
} from './screws.ts';
import { slantedShare, trussForces } from './slopeTruss.ts';

const gravity = quantity(SPECIFIC_GRAVITY);
const duration = v.exactOptional(quantity({ above: 0, atMost: GREATEST_LOAD_DURATION }));
const diameter = quantity({ above: 0, atMost: 0.05 });
const thickness = quantity({ above: 0, atMost: 1 });
const force = quantity({ atLeast: 0, atMost: 100_000 });
const bearing = quantity({ atLeast: 1e6, atMost: 2e9 });

const frame = { provisional: true, decidedBy: ENGINEER, notes: [CONFIRM_IN_STANDARD] } as const;

const pullThrough = defineCalculation({
  name: 'head-pull-through',
  summary: 'Pull of a round head through wood or a panel, load duration 1 unless given (NDS)',
  input: v.strictObject({
    headDiameter_m: diameter,
    specificGravity: gravity,
    thickness_m: thickness,
    loadDuration: duration,
  }),
  run: ({ headDiameter_m, specificGravity, thickness_m, loadDuration = 1 }) => {
    const reference_N = headPullThrough(headDiameter_m, specificGravity, thickness_m);
    return { reference_N, allowable_N: reference_N * loadDuration, ...frame };
  },
});

const nailWithdrawal = defineCalculation({
  name: 'nail-withdrawal',
  summary: 'Allowable withdrawal of a nail from side grain (NDS)',
  input: v.strictObject({
    kind: oneOf(['plain-nail', 'ring-shank-nail']),
    diameter_m: diameter,
    specificGravity: gravity,
    penetration_m: thickness,
    loadDuration: duration,
  }),
  run: ({ kind, diameter_m, specificGravity, penetration_m, loadDuration = 1 }) => ({
    reference_N_m: withdrawalPerLength(kind, diameter_m, specificGravity),
    allowable_N: allowableWithdrawal({
      kind,
      diameter_m,
      specificGravity,
      threadPenetration_m: penetration_m,
      loadDuration,
    }),
    ...frame,
  }),
});

const bearingStrength = defineCalculation({
  name: 'dowel-bearing',
  summary: 'Dowel bearing strength of wood by nominal diameter, rounded as in the table (NDS)',
  input: v.strictObject({
    nominalDiameter_m: diameter,
    specificGravity: gravity,
    grain: oneOf(['parallel', 'perpendicular']),
  }),
  run: ({ nominalDiameter_m, specificGravity, grain }) => ({
    strength_Pa: dowelBearing(nominalDiameter_m, specificGravity, grain),
    ...frame,
  }),
});

const dowelLateral = defineCalculation({
  name: 'dowel-lateral',
  summary: 'Lateral value of a dowel from given bearing strengths, single shear, all yield modes (NDS, TR12)',
  input: v.strictObject({
    diameter_m: diameter,
    bendingYield_Pa: bearing,
    sideThickness_m: thickness,
    sideBearing_Pa: bearing,
    mainPenetration_m: thickness,
    mainBearing_Pa: bearing,
    gap_m: quantity({ atLeast: 0, atMost: 1 }),
    angle_deg: v.exactOptional(quantity({ atLeast: 0, atMost: 90 })),
  }),
  run: ({ angle_deg = 0, ...dowel }) => {
    const { modes_N, governing, reference_N } = lateralDesign(dowel, { angle_deg });
    return { modes_N, governing, reference_N, ...frame };
  },
});

const combined = defineCalculation({
  name: 'screw-combined',
  summary: 'Allowable load of a screw that is pulled and pushed sideways at once (NDS)',
  input: v.strictObject({
    withdrawal_N: quantity({ above: 0, atMost: 100_000 }),
    lateral_N: quantity({ above: 0, atMost: 100_000 }),
    angle_deg: quantity({ atLeast: 0, atMost: 90 }),
  }),
  run: ({ withdrawal_N, lateral_N, angle_deg }) => ({
    allowable_N: combinedScrewLoad(withdrawal_N, lateral_N, angle_deg),
    ...frame,
  }),
});

const furring = defineCalculation({
  name: 'furring-over-foam',
  summary:
    'Greatest foam behind wall furring in the code’s table, and the load on one fastener (IBC 2603.13.2)',
  input: v.strictObject({
    fastener: oneOf(furringFasteners),
    spacing_m: quantity({ above: 0, atMost: 1 }),
    across_m: quantity({ above: 0, atMost: 1 }),
    weight_Pa: quantity({ above: 0, atMost: 5000 }),
  }),
  run: ({ fastener, spacing_m, across_m, weight_Pa }) => {
    const isNear = (a: number, b: number): boolean => Math.abs(a / b - 1) < 1e-4;
    const cell = furringCells.find(
      (row) =>
        row.fastener === fastener &&
        isNear(row.spacing_m, spacing_m) &&
        isNear(row.across_m, across_m) &&
        isNear(row.weight_Pa, weight_Pa),
    );
    return {
      inTable: cell !== undefined,
      foam_m: cell?.foam_m ?? null,
      designRequired: cell !== undefined && cell.foam_m === null,
      load_N: weight_Pa * spacing_m * across_m,
      provisional: true,
      decidedBy: ENGINEER,
      notes: ['A table for walls; the code has none for roofs.'],
    };
  },
});

const slantedScrew = defineCalculation({
  name: 'slanted-screw',
  summary:
    'Forces in a slanted screw and its strut that hold layers back on a slope, and its share of withdrawal',
  input: v.strictObject({
    along_N: force,
    pressing_N: force,
    tension_deg: quantity({ atLeast: 30, atMost: 85 }),
    strut_deg: quantity({ atLeast: 30, atMost: 90 }),
  }),
  run: ({ along_N, pressing_N, tension_deg, strut_deg }) => ({
    ...trussForces(along_N, pressing_N, tension_deg, strut_deg),
    withdrawalShare: slantedShare(tension_deg),
    provisional: true,
    decidedBy: ENGINEER,
    notes: ['Statics of two pinned bars; the strut is board square to the slope at 90 degrees.'],
  }),
});

/** Calculations of single fasteners by their name on the command line. */
export const fastenerCalculations: Record<string, Calculation> = Object.fromEntries(
  [pullThrough, nailWithdrawal, bearingStrength, dowelLateral, combined, furring, slantedScrew].map(
    (calculation) => [calculation.name, calculation],
  ),
);

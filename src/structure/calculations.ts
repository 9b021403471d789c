/** The structural calculations of the command `overdeck calc`. Every result is a screening: provisional, decided by others. */
import { defineCalculation, type Calculation } from '../catalog/calculation.ts';
import { dowelBearing, lateralDesign } from './dowel.ts';
import { fastenerCalculations } from './fastenerCalculations.ts';
import {
  outriggerInput,
  screwLateralInput,
  screwWithdrawalInput,
  snowLoadInput,
  windPressureInput,
} from './inputs.ts';
import { outriggerScreening } from './outrigger.ts';
import { greatestOverhang, smallestOutrigger } from './outriggerChoice.ts';
import { AUTHORITY, CONFIRM_IN_STANDARD, ENGINEER } from './screening.ts';
import { allowableWithdrawal, withdrawalPerLength } from './screws.ts';
import { eaveIce, flatRoofSnow, lowSlopeMinimum, slopeFactor } from './snow.ts';
import { roofWindPressure } from './wind.ts';

const windPressure = defineCalculation({
  name: 'wind-pressure',
  summary: 'Wind uplift and pressure on a piece of roof or overhang, strength level (ASCE 7)',
  input: windPressureInput,
  run: (input) => {
    const found = roofWindPressure(input, input, input.part);
    // The schema has already refused every place that the coefficients do not cover.
    if (found.kind === 'notCovered') throw new RangeError(found.reason);
    return {
      velocityPressure_Pa: found.velocityPressure_Pa,
      uplift_Pa: found.uplift_Pa,
      downward_Pa: found.downward_Pa,
      provisional: true,
      decidedBy: found.decidedBy,
      notes: found.notes,
    };
  },
});

const snowLoad = defineCalculation({
  name: 'snow-load',
  summary: 'Roof snow on the horizontal projection: flat, sloped, eave ice (ASCE 7)',
  input: snowLoadInput,
  run: (input) => {
    const flat_Pa = flatRoofSnow(input);
    const share = slopeFactor(input.angle_deg, input.thermalFactor, input.slippery);
    const isNew = input.edition === 'asce7-22';
    return {
      flat_Pa,
      slopeFactor: share,
      sloped_Pa: share * flat_Pa,
      eave_Pa: eaveIce({ flat_Pa, resistance_m2K_W: 0, ventilated: false, overhang_m: 0 }).load_Pa,
      lowSlopeMinimum_Pa: lowSlopeMinimum(
        input.groundSnow_Pa,
        isNew ? 1 : input.importanceFactor,
        input.angle_deg,
      ),
      provisional: true,
      decidedBy: AUTHORITY,
      notes: [
        CONFIRM_IN_STANDARD,
        'The eave load is twice the flat load; whether the standard asks for it depends on R and ventilation.',
        ...(isNew ? ['Slope lines of the 2016 edition; the importance factor is in the mapped snow.'] : []),
      ],
    };
  },
});

const screwWithdrawal = defineCalculation({
  name: 'screw-withdrawal',
  summary: 'Allowable withdrawal of a wood screw or lag screw from side grain (NDS)',
  input: screwWithdrawalInput,
  run: (input) => ({
    reference_N_m: withdrawalPerLength(input.kind, input.diameter_m, input.specificGravity),
    allowable_N: allowableWithdrawal(input),
    provisional: true,
    decidedBy: ENGINEER,
    notes: [CONFIRM_IN_STANDARD, 'Proprietary screws take the values of their own report.'],
  }),
});

const screwLateral = defineCalculation({
  name: 'screw-lateral',
  summary:
    'Lateral design value of a screw in single shear by all yield modes, with insulation between (NDS, TR12)',
  input: screwLateralInput,
  run: (input) => {
    const nominal_m = input.nominalDiameter_m ?? input.diameter_m;
    const design = lateralDesign(
      {
        diameter_m: input.diameter_m,
        bendingYield_Pa: input.bendingYield_Pa,
        sideThickness_m: input.sideThickness_m,
        sideBearing_Pa: dowelBearing(nominal_m, input.sideSpecificGravity),
        mainPenetration_m: input.mainPenetration_m,
        mainBearing_Pa: dowelBearing(nominal_m, input.mainSpecificGravity),
        gap_m: input.gap_m ?? 0,
      },
      { nominal_m, loadDuration: input.loadDuration ?? 1 },
    );
    return {
      modes_N: design.modes_N,
      governing: design.governing,
      allowable_N: design.allowable_N,
      provisional: true,
      decidedBy: ENGINEER,
      notes: [
        CONFIRM_IN_STANDARD,
        'Bearing length in the main member without the tip; load parallel to grain; slip is not limited here.',
      ],
    };
  },
});

const outrigger = defineCalculation({
  name: 'outrigger',
  summary: 'Cantilevered outrigger on the deck: bending, shear, sag, reactions, heel screws, wall tie',
  input: outriggerInput,
  run: (input) => {
    const screening = outriggerScreening(input);
    const wall = screening.cases.map((load) => load.wallReaction_N);
    const heel = screening.cases.map((load) => load.heelHoldDown_N);
    return {
      bending: screening.bending,
      shear: screening.shear,
      deflection: screening.deflection,
      reactions: {
        wallDown_N: Math.max(0, ...wall),
        wallUplift_N: Math.max(0, ...wall.map((force_N) => -force_N)),
        heelPull_N: Math.max(0, ...heel),
        heelPush_N: Math.max(0, ...heel.map((force_N) => -force_N)),
        ...(screening.seat ? { seat: screening.seat } : {}),
      },
      screws: { heel: screening.heelScrews, wallTie: screening.wallTie },
      governing: {
        check: screening.governing.id,
        ratio: screening.governing.ratio,
        case: screening.governing.governingCase,
      },
      cases: screening.cases,
      gates: screening.gates,
      greatestOverhang: greatestOverhang(input),
      smallest: smallestOf(input),
      standing: screening.standing,
      provisional: true,
      decidedBy: screening.decidedBy,
      notes: screening.notes,
    };
  },
});

/** The smallest size that passes, without its full screening. */
function smallestOf(input: Parameters<typeof smallestOutrigger>[0]) {
  const { choice, tried } = smallestOutrigger(input);
  return { choice: choice && { size: choice.size, orientation: choice.orientation }, tried };
}

/** Every structural calculation by its name on the command line. */
export const structureCalculations: Record<string, Calculation> = {
  ...Object.fromEntries(
    [windPressure, snowLoad, screwWithdrawal, screwLateral, outrigger].map((calculation) => [
      calculation.name,
      calculation,
    ]),
  ),
  ...fastenerCalculations,
};

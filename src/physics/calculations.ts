/** The physics calculations of the command `overdeck calc`, by name. */
import type { Calculation } from '../catalog/calculation.ts';
import {
  climateZoneCalculation,
  condensationControlCalculation,
  energyCodeCalculation,
} from './codeCalculations.ts';
import { interfaceTemperatures, thermalTransmittance } from './heatCalculations.ts';
import {
  dewPoint,
  dryingCalculation,
  monthlyCondensation,
  saturationPressure,
} from './moistureCalculations.ts';

export const physicsCalculations: Readonly<Record<string, Calculation>> = Object.fromEntries(
  [
    saturationPressure,
    dewPoint,
    thermalTransmittance,
    interfaceTemperatures,
    energyCodeCalculation,
    condensationControlCalculation,
    monthlyCondensation,
    dryingCalculation,
    climateZoneCalculation,
  ].map((calculation) => [calculation.name, calculation]),
);

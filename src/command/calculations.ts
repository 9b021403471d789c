/** Every named calculation, in the order in which `calc --list` shows them. */
import type { Calculation } from '../catalog/calculation.ts';
import { judgementCalculations } from '../judgement/calculations.ts';
import { physicsCalculations } from '../physics/calculations.ts';
import { roofCalculations } from '../roof/calculations.ts';
import { structureCalculations } from '../structure/calculations.ts';

export const calculations: readonly Calculation[] = [
  ...Object.values(physicsCalculations),
  ...Object.values(structureCalculations),
  ...Object.values(roofCalculations),
  ...Object.values(judgementCalculations),
];

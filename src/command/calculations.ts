/** Every named calculation, in the order in which `calc --list` shows them. */
import type { Calculation } from '../catalog/calculation.ts';
import { physicsCalculations } from '../physics/calculations.ts';
import { structureCalculations } from '../structure/calculations.ts';

export const calculations: readonly Calculation[] = [
  ...Object.values(physicsCalculations),
  ...Object.values(structureCalculations),
];

/** Calculations of the roof's geometry, for the command line and the check values. */
import * as v from 'valibot';
import { defineCalculation, type Calculation } from '../catalog/calculation.ts';
import { listOf, oneOf, quantity } from '../catalog/quantity.ts';
import { roofEdge } from './geometry.ts';

/** [-] most layers that a roof edge may be given. */
const MOST_LAYERS = 60;
/** [m] thickest layer and deepest framing accepted. */
const GREATEST_M = 2;

const edge = defineCalculation({
  name: 'roof-edge',
  summary: 'Build-up, fascia height and ridge rise of a roof edge',
  input: v.strictObject({
    angle_deg: quantity({ atLeast: 0, below: 90 }),
    layers: listOf(
      v.strictObject({ thickness_m: quantity({ atLeast: 0, atMost: GREATEST_M }) }),
      1,
      MOST_LAYERS,
    ),
    framingDepth_m: quantity({ atLeast: 0, atMost: GREATEST_M }),
    cut: oneOf(['plumb', 'square']),
    carrier: oneOf(['rafter-tails', 'truss-tails', 'outriggers']),
  }),
  run: ({ layers, ...rest }) => ({
    ...roofEdge({ ...rest, layers_m: layers.map((layer) => layer.thickness_m) }),
  }),
});

export const roofCalculations: Readonly<Record<string, Calculation>> = { [edge.name]: edge };

/** The heat calculations of `overdeck calc`. */
import * as v from 'valibot';
import { defineCalculation } from '../catalog/calculation.ts';
import { listOf, quantity, rule, shortName, wholeNumber } from '../catalog/quantity.ts';
import { MOST_LAYERS, conductivity_W_mK, resistance_m2K_W, temperature_C, thickness_m } from './inputs.ts';
import { at, sum } from './guards.ts';
import {
  GREATEST_COMBINATIONS,
  type Element,
  type ThermalLayer,
  elementResistance,
  fastenerCorrection_W_m2K,
  homogeneousLayer,
  unbridgedLayer_m2K_W,
  unbridgedResistance_m2K_W,
} from './iso6946.ts';
import { SHARE_SUM_TOLERANCE, interfaceTemperatures_C, layerResistance_m2K_W } from './thermal.ts';

/** [%] the whole area. */
const WHOLE_PCT = 100;
/** [-] most parts of one layer. */
const MOST_PARTS = 12;
/** [1/m2], [m2] of one fastener: our judgement. */
const MOST_FASTENERS = 1000;
const GREATEST_SECTION_M2 = 0.01;

const part = v.strictObject({ share_pct: quantity({ above: 0, atMost: WHOLE_PCT }), conductivity_W_mK });
const shareSum_pct = (parts: readonly { share_pct: number }[]): number =>
  sum(parts.map((each) => each.share_pct));
const parts = v.pipe(
  listOf(part, 1, MOST_PARTS),
  rule(
    (list) => Math.abs(shareSum_pct(list) - WHOLE_PCT) <= WHOLE_PCT * SHARE_SUM_TOLERANCE,
    (input) => `shares add to ${shareSum_pct(input)}; ${WHOLE_PCT} is needed`,
  ),
);

const thermalLayer = v.pipe(
  v.strictObject({
    name: v.optional(shortName),
    thickness_m: v.optional(thickness_m),
    conductivity_W_mK: v.optional(conductivity_W_mK),
    resistance_m2K_W: v.optional(resistance_m2K_W),
    parts: v.optional(parts),
  }),
  rule(
    (layer) =>
      [layer.conductivity_W_mK, layer.resistance_m2K_W, layer.parts].filter((each) => each !== undefined)
        .length === 1,
    'exactly one of conductivity_W_mK, resistance_m2K_W and parts is needed',
  ),
  rule(
    (layer) => layer.resistance_m2K_W !== undefined || layer.thickness_m !== undefined,
    'thickness_m is missing; a layer with conductivity_W_mK or parts needs it',
  ),
);
type LayerInput = v.InferOutput<typeof thermalLayer>;

/** The layer of an input; the schema has seen to it that one of the three forms is there. */
function layerOf(layer: LayerInput): ThermalLayer {
  if (layer.resistance_m2K_W !== undefined) return homogeneousLayer(layer.resistance_m2K_W);
  const thickness = layer.thickness_m ?? Number.NaN;
  if (layer.parts === undefined) {
    return homogeneousLayer(layerResistance_m2K_W(thickness, layer.conductivity_W_mK ?? Number.NaN));
  }
  return {
    paths: layer.parts.map((each) => ({
      share: each.share_pct / WHOLE_PCT,
      resistance_m2K_W: layerResistance_m2K_W(thickness, each.conductivity_W_mK),
    })),
  };
}

const fasteners = v.strictObject({
  layer: wholeNumber({ atLeast: 0, atMost: MOST_LAYERS - 1 }),
  perArea_1_m2: quantity({ atLeast: 0, atMost: MOST_FASTENERS }),
  crossSection_m2: quantity({ above: 0, atMost: GREATEST_SECTION_M2 }),
  conductivity_W_mK,
  length_m: thickness_m,
});

const transmittanceInput = v.pipe(
  v.strictObject({
    insideSurface_m2K_W: resistance_m2K_W,
    outsideSurface_m2K_W: resistance_m2K_W,
    layers: listOf(thermalLayer, 1, MOST_LAYERS),
    fasteners: v.optional(fasteners),
  }),
  v.forward(
    rule(
      (input) => (input.fasteners?.layer ?? 0) < input.layers.length,
      (input) => `${input.fasteners?.layer} is above ${input.layers.length - 1}, the last layer`,
    ),
    ['fasteners', 'layer'],
  ),
  v.forward(
    rule(
      (input) =>
        input.layers.reduce((count, layer) => count * (layer.parts?.length ?? 1), 1) <= GREATEST_COMBINATIONS,
      `combinations of parts are above ${GREATEST_COMBINATIONS}`,
    ),
    ['layers'],
  ),
  rule(
    (input) => unbridgedResistance_m2K_W(elementOf(input)) > 0,
    'the resistances add to 0; above 0 is needed',
  ),
);

function elementOf(input: {
  readonly insideSurface_m2K_W: number;
  readonly outsideSurface_m2K_W: number;
  readonly layers: readonly LayerInput[];
}): Element {
  return {
    insideSurface_m2K_W: input.insideSurface_m2K_W,
    outsideSurface_m2K_W: input.outsideSurface_m2K_W,
    layers: input.layers.map(layerOf),
  };
}

/** Length is the part of the fastener inside the insulation layer; shorter than the layer means a recessed head. */
function correctionOf(input: v.InferOutput<typeof transmittanceInput>, element: Element): number {
  if (input.fasteners === undefined) return 0;
  const { layer, perArea_1_m2, length_m, crossSection_m2, conductivity_W_mK: conductivity } = input.fasteners;
  return fastenerCorrection_W_m2K(
    {
      crossSection_m2,
      conductivity_W_mK: conductivity,
      lengthInLayer_m: length_m,
      layerThickness_m: at(input.layers, layer).thickness_m ?? length_m,
      layerResistance_m2K_W: unbridgedLayer_m2K_W(at(element.layers, layer)),
      totalResistance_m2K_W: unbridgedResistance_m2K_W(element),
    },
    perArea_1_m2,
  );
}

export const thermalTransmittance = defineCalculation({
  name: 'thermal-transmittance',
  summary: 'Resistance and U of layers with side-by-side parts and fasteners (ISO 6946 combined method)',
  input: transmittanceInput,
  run(input) {
    const element = elementOf(input);
    const {
      upperLimit_m2K_W,
      lowerLimit_m2K_W,
      resistance_m2K_W: mean,
      transmittance_W_m2K,
    } = elementResistance(element);
    const correction = correctionOf(input, element);
    return {
      upperLimit_m2K_W,
      lowerLimit_m2K_W,
      resistance_m2K_W: mean,
      fastenerCorrection_W_m2K: correction,
      transmittance_W_m2K: transmittance_W_m2K + correction,
    };
  },
});

export const interfaceTemperatures = defineCalculation({
  name: 'interface-temperatures',
  summary: 'Temperatures at the planes of a layered assembly, steady state',
  input: v.strictObject({
    insideTemperature_C: temperature_C,
    outsideTemperature_C: temperature_C,
    resistances_m2K_W: v.pipe(
      listOf(resistance_m2K_W, 1, MOST_LAYERS),
      rule((list) => sum(list) > 0, 'the resistances add to 0; above 0 is needed'),
    ),
  }),
  run: (input) => ({
    temperatures_C: interfaceTemperatures_C(
      input.insideTemperature_C,
      input.outsideTemperature_C,
      input.resistances_m2K_W,
    ),
  }),
});

/** The moisture calculations of `overdeck calc`. */
import * as v from 'valibot';
import { defineCalculation } from '../catalog/calculation.ts';
import { listOf, oneOf, quantity, rule, shortName, wholeNumber } from '../catalog/quantity.ts';
import {
  MOST_LAYERS,
  conductivity_W_mK,
  equivalentAirLayer_m,
  relativeHumidity_pct,
  resistance_m2K_W,
  temperature_C,
  thickness_m,
  vaporResistanceFactor,
} from './inputs.ts';
import { MONTHS } from './climate.ts';
import { LONGEST_LIMIT_MONTHS, drying } from './drying.ts';
import { at, sum } from './guards.ts';
import { condensationYear } from './iso13788.ts';
import {
  SATURATION_METHODS,
  SATURATION_RANGE_C,
  type SaturationMethod,
  dewPoint_C,
  saturationVaporPressure_Pa,
  vaporPressure_Pa,
} from './psychrometrics.ts';
import { layerResistance_m2K_W } from './thermal.ts';
import type { MoistureAssembly, MoistureLayer } from './vaporPlanes.ts';

const method = v.optional(oneOf(SATURATION_METHODS), 'iso13788');
const anyTemperature_C = quantity({
  atLeast: SATURATION_RANGE_C.ashrae[0],
  atMost: SATURATION_RANGE_C.ashrae[1],
});

interface AirState {
  readonly temperature_C: number;
  readonly method: SaturationMethod;
}
const isInRange = ({ temperature_C: t, method: formula }: AirState): boolean =>
  t >= SATURATION_RANGE_C[formula][0] && t <= SATURATION_RANGE_C[formula][1];
function rangeFault({ temperature_C: t, method: formula }: AirState): string {
  const [least, greatest] = SATURATION_RANGE_C[formula];
  return t < least
    ? `${t} is below ${least}, the lowest of method ${formula}`
    : `${t} is above ${greatest}, the highest of method ${formula}`;
}

export const saturationPressure = defineCalculation({
  name: 'saturation-vapor-pressure',
  summary: 'Saturation vapor pressure over water or ice (ISO 13788 annex E, or ASHRAE Hyland-Wexler)',
  input: v.pipe(
    v.strictObject({ temperature_C: anyTemperature_C, method }),
    v.forward(
      rule(
        (input) => isInRange(input),
        (input) => rangeFault(input),
      ),
      ['temperature_C'],
    ),
  ),
  run: (input) => ({ pressure_Pa: saturationVaporPressure_Pa(input.temperature_C, input.method) }),
});

interface HumidAir extends AirState {
  readonly relativeHumidity_pct: number;
}
/** True when the dew point is not below the range of the formula. */
const hasDewPoint = (air: HumidAir): boolean =>
  !isInRange(air) ||
  vaporPressure_Pa(air.temperature_C, air.relativeHumidity_pct, air.method) >=
    saturationVaporPressure_Pa(SATURATION_RANGE_C[air.method][0], air.method);

export const dewPoint = defineCalculation({
  name: 'dew-point',
  summary: 'Dew point (below freezing the frost point) and vapor pressure of humid air',
  input: v.pipe(
    v.strictObject({
      temperature_C: anyTemperature_C,
      relativeHumidity_pct: quantity({ above: 0, atMost: 100 }),
      method,
    }),
    v.forward(
      rule(
        (input) => isInRange(input),
        (input) => rangeFault(input),
      ),
      ['temperature_C'],
    ),
    v.forward(
      rule(
        (input) => hasDewPoint(input),
        (input) =>
          `${input.relativeHumidity_pct} gives a dew point below ${SATURATION_RANGE_C[input.method][0]} °C, ` +
          `the lowest of method ${input.method}`,
      ),
      ['relativeHumidity_pct'],
    ),
  ),
  run(input) {
    const pressure = vaporPressure_Pa(input.temperature_C, input.relativeHumidity_pct, input.method);
    return { dewPoint_C: dewPoint_C(pressure, input.method), vaporPressure_Pa: pressure };
  },
});

const moistureLayer = v.pipe(
  v.strictObject({
    name: v.optional(shortName),
    thickness_m: v.optional(thickness_m),
    conductivity_W_mK: v.optional(conductivity_W_mK),
    resistance_m2K_W: v.optional(resistance_m2K_W),
    vaporResistanceFactor: v.optional(vaporResistanceFactor),
    equivalentAirLayer_m: v.optional(equivalentAirLayer_m),
  }),
  rule(
    (layer) => (layer.conductivity_W_mK === undefined) !== (layer.resistance_m2K_W === undefined),
    'exactly one of conductivity_W_mK and resistance_m2K_W is needed',
  ),
  rule(
    (layer) => (layer.vaporResistanceFactor === undefined) !== (layer.equivalentAirLayer_m === undefined),
    'exactly one of vaporResistanceFactor and equivalentAirLayer_m is needed',
  ),
  rule(
    (layer) =>
      layer.thickness_m !== undefined ||
      (layer.conductivity_W_mK === undefined && layer.vaporResistanceFactor === undefined),
    'thickness_m is missing; a layer with conductivity_W_mK or vaporResistanceFactor needs it',
  ),
);
type LayerInput = v.InferOutput<typeof moistureLayer>;

function layerOf(layer: LayerInput): MoistureLayer {
  const thickness = layer.thickness_m ?? Number.NaN;
  return {
    resistance_m2K_W:
      layer.resistance_m2K_W ?? layerResistance_m2K_W(thickness, layer.conductivity_W_mK ?? Number.NaN),
    equivalentAirLayer_m:
      layer.equivalentAirLayer_m ?? thickness * (layer.vaporResistanceFactor ?? Number.NaN),
  };
}

const month = v.strictObject({
  outdoorTemperature_C: temperature_C,
  outdoorRelativeHumidity_pct: relativeHumidity_pct,
  indoorTemperature_C: temperature_C,
  indoorRelativeHumidity_pct: relativeHumidity_pct,
});

const assemblyEntries = {
  insideSurface_m2K_W: resistance_m2K_W,
  outsideSurface_m2K_W: resistance_m2K_W,
  layers: v.pipe(
    listOf(moistureLayer, 1, MOST_LAYERS),
    rule(
      (layers) => sum(layers.map((layer) => layerOf(layer).equivalentAirLayer_m)) > 0,
      'the equivalent air layers add to 0; above 0 is needed',
    ),
  ),
  /** In a row, beginning with startMonth (with January when that is absent). */
  months: listOf(month, MONTHS, MONTHS),
  startMonth: v.optional(wholeNumber({ atLeast: 1, atMost: MONTHS })),
};

interface AssemblyInput {
  readonly insideSurface_m2K_W: number;
  readonly outsideSurface_m2K_W: number;
  readonly layers: readonly LayerInput[];
}
const assemblyOf = (input: AssemblyInput): MoistureAssembly => ({
  insideSurface_m2K_W: input.insideSurface_m2K_W,
  outsideSurface_m2K_W: input.outsideSurface_m2K_W,
  layers: input.layers.map(layerOf),
});
const totalResistance = (input: AssemblyInput): number =>
  input.insideSurface_m2K_W +
  input.outsideSurface_m2K_W +
  sum(input.layers.map((layer) => layerOf(layer).resistance_m2K_W));
const NO_RESISTANCE = 'the resistances add to 0; above 0 is needed';

export const monthlyCondensation = defineCalculation({
  name: 'monthly-condensation',
  summary: 'Condensation inside an assembly by month and plane over a year (ISO 13788 clause 6)',
  input: v.pipe(
    v.strictObject(assemblyEntries),
    rule((input) => totalResistance(input) > 0, NO_RESISTANCE),
  ),
  run(input) {
    const year = condensationYear(assemblyOf(input), input.months, {
      firstMonth: input.startMonth ?? 1,
      ...(input.startMonth === undefined ? {} : { startIndex: 0 }),
    });
    return { interfaces: year.planes, maximum_kg_m2: year.maximum_kg_m2, driesOut: year.driesOut };
  },
});

/** [kg/m2] most water that may be put into a layer: a tenth of a meter of it. */
const MOST_WATER_KG_M2 = 100;
/** [m] least vapor resistance on either side of the wet center. */
const LEAST_SIDE_M = 1e-6;

/** The center of the wet layer must not be open to a face. */
function isEnclosed(layers: readonly LayerInput[], wetLayer: number): boolean {
  const airLayers = layers.map((layer) => layerOf(layer).equivalentAirLayer_m);
  const half = at(airLayers, wetLayer) / 2;
  return (
    sum(airLayers.slice(0, wetLayer)) + half >= LEAST_SIDE_M &&
    sum(airLayers.slice(wetLayer + 1)) + half >= LEAST_SIDE_M
  );
}

export const dryingCalculation = defineCalculation({
  name: 'drying',
  summary: 'Months until water at the center of a layer has gone (ISO 13788 clause 7)',
  input: v.pipe(
    v.strictObject({
      ...assemblyEntries,
      wetLayer: wholeNumber({ atLeast: 0, atMost: MOST_LAYERS - 1 }),
      initial_kg_m2: v.optional(quantity({ above: 0, atMost: MOST_WATER_KG_M2 })),
      limit_months: v.optional(wholeNumber({ atLeast: 1, atMost: LONGEST_LIMIT_MONTHS })),
    }),
    rule((input) => totalResistance(input) > 0, NO_RESISTANCE),
    v.forward(
      rule(
        (input) => input.wetLayer < input.layers.length,
        (input) => `${input.wetLayer} is above ${input.layers.length - 1}, the last layer`,
      ),
      ['wetLayer'],
    ),
    v.forward(
      rule(
        (input) => input.wetLayer >= input.layers.length || isEnclosed(input.layers, input.wetLayer),
        (input) => `layer ${input.wetLayer} is open to the air; some vapor resistance on each side is needed`,
      ),
      ['wetLayer'],
    ),
  ),
  run: (input) => {
    const { remaining_kg_m2, elsewhere_kg_m2, monthsToDry } = drying(
      assemblyOf(input),
      input.months,
      input.wetLayer,
      {
        firstMonth: input.startMonth ?? 1,
        ...(input.initial_kg_m2 === undefined ? {} : { initial_kg_m2: input.initial_kg_m2 }),
        ...(input.limit_months === undefined ? {} : { limit_months: input.limit_months }),
      },
    );
    return { remaining_kg_m2, elsewhere_kg_m2, monthsToDry };
  },
});

/** Water in a candidate roof: winter condensation and drying by the monthly method, and the ways out. */
import { dimension } from '../catalog/dimensions.ts';
import { materialResistance } from '../catalog/materials.ts';
import { AIR_PERMEABILITY_NG_PASM, equivalentAirLayer } from '../catalog/vapor.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Climate, Layer } from '../evaluation/evaluation.ts';
import { drying } from '../physics/drying.ts';
import { condensationYear } from '../physics/iso13788.ts';
import type { MonthConditions } from '../physics/moistureBalance.ts';
import type { MoistureAssembly, MoistureLayer } from '../physics/vaporPlanes.ts';
import { equivalentPermeance_ng } from '../physics/airGap.ts';

/** [m] resistance given to a layer that is no obstacle, so that planes stay apart (our judgement). */
const OPEN_M = 0.001;
/** [month] drying starts in October: the customary worst case in cold climates (our judgement). */
const START_MONTH = 10;
/** [months] two years: longer is counted as "does not dry" (our judgement). */
const LIMIT_MONTHS = 24;
/** [ng/(Pa·s·m²)] least permeance that counts as a way out: 1 perm, limit of class II (IRC R202, seen-secondary). */
const WAY_OUT_NG = 57.2135;

const isGap = (layer: Layer): boolean => layer.role === 'vent-gap' || layer.role === 'drainage-mat';

const moistureLayer = (layer: Layer): MoistureLayer => ({
  resistance_m2K_W: layer.winterResistance_m2K_W,
  equivalentAirLayer_m:
    layer.permeance_ng === null ? OPEN_M : Math.max(OPEN_M, AIR_PERMEABILITY_NG_PASM / layer.permeance_ng),
});

function monthsFrom(climate: Climate, given: CompleteCase): MonthConditions[] {
  return climate.monthlyTemperature_C.map((_, index) => {
    const month = (START_MONTH - 1 + index) % climate.monthlyTemperature_C.length;
    return {
      outdoorTemperature_C: climate.monthlyTemperature_C[month] ?? 0,
      outdoorRelativeHumidity_pct: climate.monthlyRelativeHumidity_pct[month] ?? 0,
      indoorTemperature_C: given.indoor.temperature_C,
      indoorRelativeHumidity_pct: given.indoor.relativeHumidity_pct,
    };
  });
}

/** Layers from the room to the first moving air: the vented gap, or the weather. */
function roomSide(layers: readonly Layer[]): Layer[] {
  const gap = layers.findIndex(isGap);
  return gap < 0 ? [...layers] : layers.slice(0, gap);
}

const assemblyOf = (layers: readonly Layer[]): MoistureAssembly => ({
  insideSurface_m2K_W: materialResistance('iso-inside-up'),
  outsideSurface_m2K_W: materialResistance('iso-outside'),
  layers: layers.map(moistureLayer),
});

/**
 * Condensation over a year, room to moving air.
 *
 * @param given    [-] the complete case (indoor climate held all year)
 * @param layers   [-] layers of the candidate with winter resistance
 * @param climate  [°C, %] twelve months
 * @returns        [kg/m²] verdict, peak and the layer inside the wettest plane
 * @source         ISO-13788-2012 clause 6 (memory)
 * @assumes        diffusion only: no air leakage, storage, sun or night sky; dry-cup permeance
 */
export function moistureOf(
  given: CompleteCase,
  layers: readonly Layer[],
  climate: Climate,
): Candidate['moisture'] {
  const counted = roomSide(layers);
  const year = condensationYear(assemblyOf(counted), monthsFrom(climate, given), { firstMonth: START_MONTH });
  const wettest = year.planes.reduce<(typeof year.planes)[number] | undefined>(
    (worst, plane) =>
      worst && Math.max(...worst.accumulated_kg_m2) >= Math.max(...plane.accumulated_kg_m2) ? worst : plane,
    undefined,
  );
  return {
    method: 'ISO 13788:2012 clause 6, monthly diffusion; leaves out air leakage, storage, sun and rain',
    verdict: year.verdict,
    peak_kg_m2: year.maximum_kg_m2,
    plane: wettest === undefined ? null : (counted[wettest.afterLayer]?.id ?? null),
  };
}

const inSeries_ng = (layers: readonly Layer[], more_ng: readonly number[] = []): number => {
  const closed = layers.flatMap((layer) => (layer.permeance_ng === null ? [] : [layer.permeance_ng]));
  const resistance = [...closed, ...more_ng].reduce((sum, permeance) => sum + 1 / permeance, 0);
  return resistance > 0 ? 1 / resistance : AIR_PERMEABILITY_NG_PASM / OPEN_M;
};

/**
 * Permeance that moving air in the gap stands for.
 *
 * P = ACH h / (3600 Rv T), see equivalentPermeance_ng
 *
 * @param layers  [m] inside to outside
 * @returns       [ng/(Pa·s·m²)] 0 without a gap
 * @source        OUR-JUDGEMENT air changes of dimensions.json
 */
export function gapPermeance_ng(layers: readonly Layer[]): number {
  const gap = layers.find(isGap);
  if (gap === undefined) return 0;
  const changes = dimension(gap.role === 'vent-gap' ? 'gap-air-changes_1_h' : 'mat-air-changes_1_h');
  return equivalentPermeance_ng(changes, gap.thickness_m);
}

/** Moving air of the gap as a layer: what it lets through to the outdoors. */
const gapLayer = (layers: readonly Layer[]): MoistureLayer => ({
  resistance_m2K_W: 0,
  equivalentAirLayer_m: Math.max(OPEN_M, AIR_PERMEABILITY_NG_PASM / gapPermeance_ng(layers)),
});

/** An assembly and which of its layers is the wet one. */
interface Wetted {
  readonly assembly: MoistureAssembly;
  readonly months: readonly MonthConditions[];
  readonly wet: number;
}

/**
 * The upper deck as it dries: over a gap, between its moving air and the weather, both at outdoor conditions;
 * under a drainage mat or without any gap, between the room and the outdoor air.
 */
function upperDeckWetted(
  layers: readonly Layer[],
  upper: number,
  months: readonly MonthConditions[],
): Wetted {
  const gap = layers.findIndex(isGap);
  if (gap < 0) return { assembly: assemblyOf(layers), months, wet: upper };
  if (gap > upper) {
    const inside = assemblyOf(layers.slice(0, gap));
    return { assembly: { ...inside, layers: [...inside.layers, gapLayer(layers)] }, months, wet: upper };
  }
  const above = assemblyOf(layers.slice(upper));
  return {
    assembly: { ...above, layers: [gapLayer(layers), ...above.layers] },
    months: months.map((month) => ({
      ...month,
      indoorTemperature_C: month.outdoorTemperature_C,
      indoorRelativeHumidity_pct: month.outdoorRelativeHumidity_pct,
    })),
    wet: 1,
  };
}

/** Wet wood lets vapor through as its wet-cup value says; everything else stays at its dry-cup value. */
function wetLayer(layer: Layer): MoistureLayer {
  const found = layer.material === null ? null : equivalentAirLayer(layer.material, layer.thickness_m);
  return found?.kind === 'vaporResistance'
    ? { ...moistureLayer(layer), equivalentAirLayer_m: Math.max(OPEN_M, found.wet_m) }
    : moistureLayer(layer);
}

function monthsToDry({ assembly, months, wet }: Wetted, wood: Layer): number | null {
  const layers = assembly.layers.map((layer, index) => (index === wet ? wetLayer(wood) : layer));
  return drying({ ...assembly, layers }, months, wet, {
    firstMonth: START_MONTH,
    limit_months: LIMIT_MONTHS,
  }).monthsToDry;
}

/**
 * How a candidate dries: permeance of the ways out and months for 1 kg/m² in each deck, from October.
 *
 * @param given    [-] the complete case
 * @param layers   [-] layers of the candidate with winter resistance
 * @param climate  [°C, %] twelve months
 * @returns        [ng/(Pa·s·m²), months] from the upper deck (or the only deck): outward, inward, months
 * @source         ISO-13788-2012 clause 7 (memory); gap air changes of dimensions.json (our judgement)
 * @assumes        the wet layer at its wet-cup permeance, all others dry-cup; both sides of an upper deck over a
 *                 gap at the outdoor monthly mean, no sun
 */
export function dryingOf(
  given: CompleteCase,
  layers: readonly Layer[],
  climate: Climate,
): Candidate['drying'] {
  const months = monthsFrom(climate, given);
  const deck = layers.findIndex((layer) => layer.role === 'deck');
  const upper = layers.findIndex((layer) => layer.role === 'upper-deck');
  // The wood that a roof leak wets first: the second deck, or the deck when there is none.
  const wood = upper < 0 ? deck : upper;
  const gap = layers.findIndex(isGap);
  const gap_ng = gapPermeance_ng(layers);
  const beyond = layers.slice(wood + 1);
  const outward_ng = gap > wood ? inSeries_ng(layers.slice(wood + 1, gap), [gap_ng]) : inSeries_ng(beyond);
  const inward_ng = gap >= 0 && gap < wood ? gap_ng : inSeries_ng(layers.slice(0, wood));
  const isOut = outward_ng >= WAY_OUT_NG;
  const isIn = inward_ng >= WAY_OUT_NG;
  const path = isOut && isIn ? 'both' : isOut ? 'outward' : isIn ? 'inward' : 'neither';
  const monthsToDryDeck = monthsToDry(
    { assembly: assemblyOf(roomSide(layers)), months, wet: deck },
    layers[deck] as Layer,
  );
  return {
    outwardPermeance_ng: outward_ng,
    inwardPermeance_ng: inward_ng,
    path,
    monthsToDryUpper:
      upper < 0
        ? monthsToDryDeck
        : monthsToDry(upperDeckWetted(layers, upper, months), layers[upper] as Layer),
    monthsToDryDeck,
    verdict: verdictOf(path, gap, wood),
  };
}

function verdictOf(path: Candidate['drying']['path'], gap: number, wood: number): string {
  if (gap >= 0 && gap < wood) return 'The upper deck dries into the vented space below it.';
  if (path === 'both') return 'The nailing layer can dry to both sides.';
  if (path === 'outward') return 'The nailing layer can dry outward only.';
  if (path === 'inward') return 'The nailing layer can dry inward only.';
  return 'The nailing layer lies between layers that let next to no vapor through: a leak stays in.';
}

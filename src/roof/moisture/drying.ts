/** How a candidate dries: ways out, and months for water put into each place of the roof. */
import type { CompleteCase } from '../../case/complete.ts';
import type {
  Candidate,
  Climate,
  DryingPlace,
  GapFlow,
  IndoorAir,
  Layer,
} from '../../evaluation/evaluation.ts';
import { drying, dryingAtPlane, INITIAL_WATER_KG_M2, type Drying } from '../../physics/drying.ts';
import type { MonthConditions } from '../../physics/moistureBalance.ts';
import type { MoistureAssembly, MoistureLayer } from '../../physics/vaporPlanes.ts';
import { isGap } from '../heat/winter.ts';
import { rounded } from '../rounding.ts';
import { gapFlowOf } from './gap.ts';
import { indoorAirOf } from './indoorAir.ts';
import {
  airLayerOf_m,
  assemblyOf,
  inSeries_ng,
  monthsOf,
  roomSide,
  startingIn,
  wetMoistureLayer,
} from './layers.ts';

/** [month] drying starts in October: the customary worst case in cold climates (our judgement). */
const START_MONTH = 10;
/** [months] two years: longer is counted as "does not dry" (our judgement). */
const LIMIT_MONTHS = 24;
/** [ng/(Pa·s·m²)] least permeance that counts as a way out: 1 perm, limit of class II (IRC R202, seen-secondary). */
const WAY_OUT_NG = 57.2135;
/** [kg/m²] step to which a month's water is kept. */
const STEP_KG_M2 = 1e-6;

/** One side of a gap as its own assembly, and which layers of the candidate it holds. */
interface Side {
  readonly assembly: MoistureAssembly;
  /** Ids by place in the assembly. */
  readonly ids: readonly string[];
  readonly months: readonly MonthConditions[];
}

/** Moving air of the gap as a layer: what it lets through to the outdoors. */
const gapLayer = (gap: GapFlow): MoistureLayer => ({
  resistance_m2K_W: 0,
  equivalentAirLayer_m: airLayerOf_m(gap.equivalentPermeance_ng),
});

/** Room to moving air; the moving air itself counts where it resists, so that a mat is not taken as open sky. */
function innerSide(
  given: CompleteCase,
  layers: readonly Layer[],
  gap: GapFlow | null,
  months: readonly MonthConditions[],
): Side {
  const inner = roomSide(layers);
  const plain = assemblyOf(given, inner, gap !== null);
  const ids = inner.map(({ id }) => id);
  if (gap === null) return { assembly: plain, ids, months };
  return {
    assembly: { ...plain, layers: [...plain.layers, gapLayer(gap)] },
    ids: [...ids, layers[inner.length]?.id ?? 'vent-gap'],
    months,
  };
}

/** Gap to weather, with outdoor air on both faces. */
function outerSide(
  given: CompleteCase,
  layers: readonly Layer[],
  gap: GapFlow,
  months: readonly MonthConditions[],
): Side {
  const start = layers.findIndex(isGap) + 1;
  const outer = layers.slice(start);
  const plain = assemblyOf(given, outer, false);
  return {
    assembly: { ...plain, layers: [gapLayer(gap), ...plain.layers] },
    ids: [layers[start - 1]?.id ?? 'vent-gap', ...outer.map(({ id }) => id)],
    months: months.map((month) => ({
      ...month,
      indoorTemperature_C: month.outdoorTemperature_C,
      indoorRelativeHumidity_pct: month.outdoorRelativeHumidity_pct,
    })),
  };
}

const options = { firstMonth: START_MONTH, limit_months: LIMIT_MONTHS };

/** Water at the center of a layer, which is at its wet-cup permeance meanwhile. */
function inLayer({ assembly, ids, months }: Side, layer: Layer): Drying {
  const wet = ids.indexOf(layer.id);
  const layers = assembly.layers.map((each, index) => (index === wet ? wetMoistureLayer(layer) : each));
  return drying({ ...assembly, layers }, months, wet, options);
}

/** Water between two layers: both touch it, so both are at their wet-cup permeance. */
function betweenLayers({ assembly, ids, months }: Side, layers: readonly Layer[], inside: string): Drying {
  const plane = ids.indexOf(inside);
  const wetted = assembly.layers.map((each, index) => {
    const layer = layers.find(({ id }) => id === ids[index]);
    const touches = index === plane || index === plane + 1;
    return touches && layer !== undefined && !isGap(layer) ? wetMoistureLayer(layer) : each;
  });
  return dryingAtPlane({ ...assembly, layers: wetted }, months, plane, options);
}

const placeOf = (place: DryingPlace['place'], layer: string, side: Side, found: Drying): DryingPlace => ({
  place,
  layer,
  startMonth: START_MONTH,
  initial_kg_m2: INITIAL_WATER_KG_M2,
  monthsToDry: found.monthsToDry,
  limit_months: LIMIT_MONTHS,
  remaining_kg_m2: found.remaining_kg_m2.map((water) => rounded(water, STEP_KG_M2)),
  elsewhere_kg_m2: found.elsewhere_kg_m2.map((water) => rounded(water, STEP_KG_M2)),
  left_kg_m2: rounded(found.elsewhere_kg_m2.at(-1) ?? 0, STEP_KG_M2),
  leftAfter: side.ids[found.mostElsewhereAfter ?? -1] ?? null,
});

interface Roof {
  readonly layers: readonly Layer[];
  readonly inner: Side;
  /** Null without a gap; the weather side of a mat holds no wood. */
  readonly outer: Side | null;
}

const sideOf = ({ inner, outer }: Roof, id: string): Side =>
  outer !== null && !inner.ids.includes(id) ? outer : inner;

function placesOf(roof: Roof, deck: Layer): DryingPlace[] {
  const { layers, inner } = roof;
  const boards = layers.filter((layer) => layer.role === 'insulation');
  const joint = boards.at(-2);
  const sheet = layers.findIndex((layer) => layer.role === 'underlayment');
  const below = layers[sheet - 1];
  return [
    placeOf('deck', deck.id, inner, inLayer(inner, deck)),
    ...(joint === undefined
      ? []
      : [placeOf('insulation-joint', joint.id, inner, betweenLayers(inner, layers, joint.id))]),
    ...(below === undefined ? [] : [underSheet(roof, below)]),
  ];
}

/** Water between the underlayment and what it lies on; over a gap without a second deck, that is the gap itself. */
function underSheet(roof: Roof, below: Layer): DryingPlace {
  const side = isGap(below) && roof.outer !== null ? roof.outer : sideOf(roof, below.id);
  const found = betweenLayers(side, roof.layers, below.id);
  return placeOf('under-underlayment', below.id, side, found);
}

/**
 * How a candidate dries: permeance of the ways out, months for 1 kg/m² in each place, and what sits elsewhere.
 *
 * @param given    [-] the complete case
 * @param layers   [-] layers of the candidate with winter resistance
 * @param climate  [°C, %] twelve months
 * @param indoor   [%] indoor air by month; found from the case when absent
 * @returns        [ng/(Pa·s·m²), months, kg/m²] from the upper deck (or the only deck): outward, inward, months
 * @source         ISO-13788-2012 clause 7 (memory); gap flow of gapFlowOf (our judgement)
 * @assumes        a wetted layer, and layers that touch wet joints, at wet-cup permeance, all others dry-cup; both sides of an upper deck over a
 *                 gap at the outdoor monthly mean, no sun
 */
export function dryingOf(
  given: CompleteCase,
  layers: readonly Layer[],
  climate: Climate,
  indoor: IndoorAir = indoorAirOf(given, climate),
): Candidate['drying'] {
  const months = startingIn(monthsOf(given, climate, indoor), START_MONTH);
  const gap = gapFlowOf(given, layers, climate);
  const deck = layers.find((layer) => layer.role === 'deck') as Layer;
  const upper = layers.find((layer) => layer.role === 'upper-deck');
  const roof: Roof = {
    layers,
    inner: innerSide(given, layers, gap, months),
    outer: gap === null ? null : outerSide(given, layers, gap, months),
  };
  const places = placesOf(roof, deck);
  const monthsToDryDeck = places.find(({ place }) => place === 'deck')?.monthsToDry ?? null;
  return {
    ...waysOut(layers, upper ?? deck, gap),
    monthsToDryUpper:
      upper === undefined ? monthsToDryDeck : inLayer(sideOf(roof, upper.id), upper).monthsToDry,
    monthsToDryDeck,
    places,
    gap,
  };
}

type Ways = Pick<Candidate['drying'], 'outwardPermeance_ng' | 'inwardPermeance_ng' | 'path' | 'verdict'>;

/** Ways out of the wood that a roof leak wets first: the second deck, or the deck when there is none. */
function waysOut(layers: readonly Layer[], woodLayer: Layer, gapFlow: GapFlow | null): Ways {
  const wood = layers.indexOf(woodLayer);
  const gap = layers.findIndex(isGap);
  const gap_ng = gapFlow?.equivalentPermeance_ng ?? 0;
  const outward_ng =
    gap > wood ? inSeries_ng(layers.slice(wood + 1, gap), [gap_ng]) : inSeries_ng(layers.slice(wood + 1));
  const inward_ng = gap >= 0 && gap < wood ? gap_ng : inSeries_ng(layers.slice(0, wood));
  const isOut = outward_ng >= WAY_OUT_NG;
  const isIn = inward_ng >= WAY_OUT_NG;
  const path = isOut && isIn ? 'both' : isOut ? 'outward' : isIn ? 'inward' : 'neither';
  return {
    outwardPermeance_ng: outward_ng,
    inwardPermeance_ng: inward_ng,
    path,
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

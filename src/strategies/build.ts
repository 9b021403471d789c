/** From a variant to a computed candidate: everything but the judgement. */
import { dimension } from '../catalog/dimensions.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Climate, Layer, PlaneMonths, Requirements } from '../evaluation/evaluation.ts';
import {
  deckTemperature_C,
  maximumIndoorRelativeHumidity_pct,
  meetsDeckTemperature,
} from '../physics/condensationControl.ts';
import { airBarrierOf } from '../roof/airBarrier.ts';
import { assemble, insulationLayers, layersAboveFraming } from '../roof/assembly.ts';
import { stacksOf, type BoardStack } from '../roof/boards.ts';
import { fasteningOf } from '../roof/fastening.ts';
import { roofEdge } from '../roof/geometry.ts';
import { planeMonthsOf } from '../roof/heat/planes.ts';
import { withWinterResistance } from '../roof/heat/winter.ts';
import { zonesOf } from '../roof/heat/zones.ts';
import { loadsOn, type RoofLoad } from '../roof/loads.ts';
import { once } from '../roof/memo.ts';
import { roofOf } from '../roof/measures.ts';
import { moistureOf } from '../roof/moisture/condensation.ts';
import { dryingOf } from '../roof/moisture/drying.ts';
import { overhangOf } from '../roof/overhang.ts';
import { takeoffOf } from '../roof/takeoff.ts';
import { layoutsOf } from '../roof/takeoffLayout.ts';
import { goalOf, thermalOf } from '../roof/thermal.ts';
import type { Draft } from '../roof/draft.ts';
import { variantId, type Variant } from '../roof/variant.ts';
import { ventilationOf } from '../roof/ventilation.ts';

const PERCENT = 100;
/** [-] how far a stack may fall short of a wanted R: half a percent, the rounding of a label. */
const WANTED_TOLERANCE = 0.995;

/** What a stack must reach: the wanted R when one was named, else table, deck temperature and ceiling. */
function reaches(given: CompleteCase, layers: readonly Layer[], requirements: Requirements): boolean {
  const goal = goalOf(given, layers, requirements.ceiling);
  const { governedBy, aboveDeck_m2K_W } = requirements.split;
  if (governedBy === 'wanted' || governedBy === 'total-wanted')
    return goal.aboveDeck_m2K_W >= aboveDeck_m2K_W * WANTED_TOLERANCE;
  const winter = { aboveDeck_m2K_W: goal.aboveDeckWinter_m2K_W, belowDeck_m2K_W: goal.belowDeck_m2K_W };
  const deck_C = deckTemperature_C(winter, requirements.temperatureRule.outdoorMean_C);
  return (
    goal.aboveDeck_m2K_W >= requirements.aboveDeckTable.resistance_m2K_W &&
    meetsDeckTemperature(deck_C) &&
    goal.meetsCeiling
  );
}

interface Chosen {
  readonly layers: Layer[];
  readonly reachesGoal: boolean;
}

/** The thinnest stack that reaches the goal; the thickest there is when none does. */
function chooseStack(
  given: CompleteCase,
  variant: Variant,
  climate: Climate,
  requirements: Requirements,
): Chosen {
  const stacks = stacksOf(variant);
  const layersOf = (stack: BoardStack): Layer[] =>
    withWinterResistance(assemble(given, variant, stack), climate, requirements.temperatureRule.indoor_C);
  const chosenAt = (index: number): Chosen => {
    const stack = stacks[index] ?? [];
    const layers = layersOf(stack);
    return { layers, reachesGoal: reaches(given, layers, requirements) };
  };
  // Thicker never reaches less, so the first stack that reaches the goal is found by halving.
  let low = 0;
  let high = stacks.length - 1;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (chosenAt(middle).reachesGoal) high = middle;
    else low = middle + 1;
  }
  return chosenAt(low);
}

function condensationControlOf(
  given: CompleteCase,
  thermal: Candidate['thermal'],
  planes: PlaneMonths[],
  requirements: Requirements,
): Candidate['condensationControl'] {
  const { temperatureRule, aboveDeckTable, ceiling } = requirements;
  const tableShare_pct = (PERCENT * aboveDeckTable.resistance_m2K_W) / ceiling.resistance_m2K_W;
  const winter = {
    aboveDeck_m2K_W: thermal.aboveDeckWinter_m2K_W,
    belowDeck_m2K_W: thermal.belowDeck_m2K_W,
  };
  const deck_C = deckTemperature_C(winter, temperatureRule.outdoorMean_C);
  const margin = thermal.aboveDeck_m2K_W - aboveDeckTable.resistance_m2K_W;
  const { temperature_C, relativeHumidity_pct } = given.indoor;
  const deckAtIndoor_C = deckTemperature_C(winter, temperatureRule.outdoorMean_C, temperature_C);
  const maximumIndoor_pct = maximumIndoorRelativeHumidity_pct(deckAtIndoor_C, temperature_C);
  return {
    table: {
      minimum_m2K_W: aboveDeckTable.resistance_m2K_W,
      provided_m2K_W: thermal.aboveDeck_m2K_W,
      margin_m2K_W: margin,
      meets: margin >= 0,
    },
    temperature: {
      deck_C,
      limit_C: temperatureRule.limit_C,
      margin_K: deck_C - temperatureRule.limit_C,
      meets: meetsDeckTemperature(deck_C),
      aboveDeckNeeded_m2K_W: temperatureRule.aboveDeck_m2K_W,
      share_pct: PERCENT * (winter.aboveDeck_m2K_W / (winter.aboveDeck_m2K_W + winter.belowDeck_m2K_W)),
      shareNeeded_pct: temperatureRule.share_pct,
    },
    humidity: {
      maximumIndoor_pct,
      indoor_pct: relativeHumidity_pct,
      margin_pct: maximumIndoor_pct - relativeHumidity_pct,
      meets: relativeHumidity_pct <= maximumIndoor_pct,
    },
    planes,
    editionShare: {
      total_m2K_W: ceiling.resistance_m2K_W,
      tableShare_pct,
      share_pct: thermal.share_pct,
      meets: thermal.share_pct >= tableShare_pct,
    },
  };
}

function edgeOf(
  given: CompleteCase,
  variant: Variant,
  layers: readonly Layer[],
  angle_deg: number,
): Candidate['edge'] {
  const { cut, fasciaLimit_m, ridgeRiseLimit_m } = given.profile;
  const tail_m =
    variant.carrier === 'truss-tails'
      ? Math.min(given.framing.depth_m, dimension('truss-tail-depth_m'))
      : given.framing.depth_m;
  const { buildUp_m, fascia_m, ridgeRise_m } = roofEdge({
    angle_deg,
    layers_m: layersAboveFraming(layers).map((layer) => layer.thickness_m),
    framingDepth_m: tail_m,
    cut,
    carrier: variant.carrier,
  });
  return {
    cut,
    carrier: variant.carrier,
    buildUp_m,
    carrierDepth_m: variant.carrier === 'outriggers' ? 0 : tail_m,
    fascia_m,
    fasciaLimit_m: fasciaLimit_m ?? null,
    fasciaMargin_m: fasciaLimit_m === undefined ? null : fasciaLimit_m - fascia_m,
    ridgeRise_m,
    ridgeLimit_m: ridgeRiseLimit_m ?? null,
    ridgeMargin_m: ridgeRiseLimit_m === undefined ? null : ridgeRiseLimit_m - ridgeRise_m,
  };
}

/** What decides the layers: of the carrier only whether outriggers lie under a panel. */
const partsKey = ({ strategy, board, baseBoard, ventilation, underlayment, carrier }: Variant): string =>
  [
    strategy === 'prebonded-panel' && carrier === 'outriggers',
    strategy === 'prebonded-panel',
    board,
    baseBoard,
    ventilation,
    underlayment,
  ].join('/');

/** What decides the overhang: loads, and the room between the boards. */
const overhangKey = ({ strategy, carrier }: Variant, layers: readonly Layer[], load: RoofLoad): string =>
  ['overhang', strategy, carrier, boardThicknesses(layers), ...Object.values(load)].join('/');

const boardThicknesses = (layers: readonly Layer[]): string =>
  insulationLayers(layers)
    .map((layer) => `${layer.material ?? ''} ${layer.thickness_m}`)
    .join('+');

/**
 * Computes one member of a strategy's family.
 *
 * @param given         [-] the complete case
 * @param variant       [-] the member
 * @param climate       [°C, %] the climate of the case
 * @param requirements  [-] what code and climate ask
 * @returns             [-] the candidate without exclusions and attributes
 */
export function buildCandidate(
  given: CompleteCase,
  variant: Variant,
  climate: Climate,
  requirements: Requirements,
): Draft {
  const { angle_deg } = requirements.slope;
  const { layers, reachesGoal } = once(given, `stack/${partsKey(variant)}`, () =>
    chooseStack(given, variant, climate, requirements),
  );
  const roof = roofOf(given);
  const load = loadsOn(given, layers);
  const { structure, outrigger } = once(given, overhangKey(variant, layers, load), () =>
    overhangOf(given, variant.carrier, layers, load, variant.strategy === 'prebonded-panel'),
  );
  const { fasteners, windUse } = fasteningOf(given, variant, layers, load, roof);
  const bridges = {
    zones: zonesOf(given, layers, outrigger),
    screwsPerArea_1_m2: fasteners.perArea_1_m2,
  };
  const thermal = thermalOf(given, layers, bridges, requirements.ceiling, climate);
  const planes = once(given, `planes/${partsKey(variant)}`, () => planeMonthsOf(given, layers, climate));
  const airBarrier = airBarrierOf(given, variant.carrier, roof);
  const layouts = layoutsOf(given, layers, variant.strategy === 'prebonded-panel');
  return {
    variant,
    outrigger,
    windUse,
    reachesGoal,
    waste_pct: layouts.waste_pct,
    candidate: {
      id: variantId(variant),
      strategy: variant.strategy,
      board: variant.board,
      baseBoard: variant.baseBoard,
      ventilation: ventilationOf(given, variant, layers, roof),
      underlayment: variant.underlayment,
      carrier: variant.carrier,
      layers,
      thermal,
      condensationControl: condensationControlOf(given, thermal, planes, requirements),
      moisture: once(given, `moisture/${partsKey(variant)}`, () =>
        moistureOf(given, layers, climate, planes),
      ),
      drying: once(given, `drying/${partsKey(variant)}`, () => dryingOf(given, layers, climate)),
      airBarrier,
      structure,
      fasteners,
      edge: edgeOf(given, variant, layers, angle_deg),
      takeoff: takeoffOf({ given, variant, layers, roof, layouts, airBarrier, fasteners, outrigger }),
    },
  };
}

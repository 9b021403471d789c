/** Quantities, money to compare, hours, carbon, trades and days of a candidate. Editable defaults, never a bid. */
import { boardCarbon, boardCost, cost } from '../catalog/costs.ts';
import { dimension } from '../catalog/dimensions.ts';
import { isBoard } from '../catalog/sets.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Layer } from '../evaluation/evaluation.ts';
import { insulationLayers } from './assembly.ts';
import type { RoofMeasures } from './geometry.ts';
import type { OutriggerPlan } from './overhang.ts';
import { planesOf, type CandidateLayouts } from './takeoffLayout.ts';
import type { Variant } from './variant.ts';
import { wallLine_m } from './airBarrier.ts';

/** [-] screws bought over screws counted: a tenth bend, miss or fall (common practice). */
const SPARE = 1.1;
/** [-] hours of screws without a second deck over hours of both (our judgement). */
const WITHOUT_DECK = 0.5;
/** [-] steps of a build-up beside its layers (our judgement): membrane, underlayment, covering; panel; screws; edges. */
const STEPS = { always: 3, panel: 2, screws: 1, sealBays: 2, outriggers: 3, cutTails: 1 } as const;

export interface TakeoffInput {
  readonly given: CompleteCase;
  readonly variant: Variant;
  readonly layers: readonly Layer[];
  readonly roof: RoofMeasures;
  readonly layouts: CandidateLayouts;
  readonly airBarrier: Candidate['airBarrier'];
  readonly fasteners: Candidate['fasteners'];
  readonly outrigger: OutriggerPlan | null;
}

const isPanel = ({ variant }: TakeoffInput): boolean => variant.strategy === 'prebonded-panel';

const outriggerCount = ({ given, outrigger, roof }: TakeoffInput): number =>
  outrigger === null
    ? 0
    : Math.ceil(
        (wallLine_m(given) + (given.overhang.rake_m > 0 ? roof.rakeLength_m : 0)) / outrigger.spacing_m,
      );

/** Whether tails that stand today are cut off. */
const cutsTails = ({ given, variant }: TakeoffInput): boolean =>
  variant.carrier === 'outriggers' &&
  given.project.kind === 're-roof' &&
  (given.overhang.carriedToday === 'rafter-tails' || given.overhang.carriedToday === 'truss-tails');

function crewFactor({ given }: TakeoffInput): number {
  return given.work.experience === 'none' ? dimension('first-time-factor') : 1;
}

/** One part of the money or the hours, named by the row of costs.json or dimensions.json that it grows with. */
interface Part {
  readonly price: string;
  readonly amount: number;
}

interface Hours {
  /** From bare deck to watertight upper deck. */
  readonly open: readonly Part[];
  readonly edge: readonly Part[];
}

const sumOf = (parts: readonly Part[]): number => parts.reduce((total, { amount }) => total + amount, 0);

/** A re-roof rebuilds the fascia of every thick edge; outriggers bring a new soffit too (low and mid of the table, our judgement). */
function trim_h({ given, variant }: TakeoffInput): number {
  if (given.project.kind !== 're-roof') return 0;
  const trim = cost('eave-trim');
  return wallLine_m(given) * (variant.carrier === 'outriggers' ? trim.mid : trim.low);
}

/** [m²] sheathed roof: its planes, openings left out. */
const areaOf = ({ given }: TakeoffInput): number => planesOf(given).area_m2;
/** [m²] bought of a layer's boards: what is cut away is handled and paid for too. */
const boughtOf = ({ layouts }: TakeoffInput): number[] => layouts.boards.map(({ layout }) => layout.stock_m2);
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Hours of the further screws against sliding: each takes as long as one at the usual spacing along the rafters. */
const slopeScrews_h = ({ given, fasteners }: TakeoffInput): number =>
  fasteners.slopePath.screws *
  cost('screws-and-deck').mid *
  WITHOUT_DECK *
  dimension('screw-step-rafter_m') *
  given.framing.spacing_m;

function hoursOf(input: TakeoffInput): Hours {
  const { given, layers, airBarrier, layouts } = input;
  const bought_m2 = boughtOf(input);
  const factor = crewFactor(input);
  const layBoards_h_m2 = cost('lay-boards').mid / 2;
  const byHand = given.work.lift ? 1 : dimension('panel-without-lift-factor');
  const hasUpperDeck = layers.some((layer) => layer.role === 'upper-deck');
  const field = isPanel(input)
    ? [
        { price: 'lay-panels', amount: (bought_m2.at(-1) ?? 0) * cost('lay-panels').mid * byHand },
        { price: 'lay-boards', amount: sum(bought_m2.slice(0, -1)) * layBoards_h_m2 },
        { price: 'screws-and-deck', amount: slopeScrews_h(input) },
      ]
    : [
        { price: 'lay-boards', amount: sum(bought_m2) * layBoards_h_m2 },
        {
          price: 'screws-and-deck',
          amount:
            (layouts.sheets?.stock_m2 ?? areaOf(input)) *
              cost('screws-and-deck').mid *
              (hasUpperDeck ? 1 : WITHOUT_DECK) +
            slopeScrews_h(input),
        },
      ];
  const edge = [
    { price: 'seal-tail-bay', amount: airBarrier.bays * cost('seal-tail-bay').mid },
    { price: 'outrigger', amount: outriggerCount(input) * cost('outrigger').mid },
    {
      price: 'cut-and-wrap',
      amount: cutsTails(input) ? wallLine_m(given) * cost('cut-and-wrap').mid : 0,
    },
    { price: 'eave-trim', amount: trim_h(input) },
  ];
  const scaled = (parts: readonly Part[]): Part[] =>
    parts.map(({ price, amount }) => ({ price, amount: amount * factor })).filter(({ amount }) => amount > 0);
  return { open: scaled(field), edge: scaled(edge) };
}

function materialsOf(input: TakeoffInput): Part[] {
  const { fasteners, layouts } = input;
  const boards = new Map<string, number>();
  for (const { layer, layout } of layouts.boards)
    if (layer.material !== null && isBoard(layer.material)) {
      const price = `board-${layer.material}`;
      const amount = layout.stock_m2 * boardCost(layer.material).mid * layer.resistance_m2K_W;
      boards.set(price, (boards.get(price) ?? 0) + amount);
    }
  const panels_m2 = isPanel(input) ? (boughtOf(input).at(-1) ?? 0) : 0;
  return [
    ...[...boards].map(([price, amount]) => ({ price, amount })),
    {
      price: 'second-deck',
      amount: (layouts.sheets?.stock_m2 ?? panels_m2) * cost('second-deck').mid,
    },
    { price: 'panel-premium', amount: panels_m2 * cost('panel-premium').mid },
    { price: 'deck-membrane', amount: areaOf(input) * cost('deck-membrane').mid },
    {
      price: 'long-screw',
      amount: (fasteners.count + fasteners.slopePath.screws) * cost('long-screw').mid,
    },
    { price: 'tail-block_USD', amount: input.airBarrier.bays * dimension('tail-block_USD') },
    {
      price: 'outrigger-material_USD',
      amount: outriggerCount(input) * dimension('outrigger-material_USD'),
    },
    {
      price: 'engineer-fee_USD',
      amount: input.variant.carrier === 'outriggers' ? dimension('engineer-fee_USD') : 0,
    },
  ].filter(({ amount }) => amount > 0);
}

/** Trades that must be on the roof: each counts as several handovers. */
function tradesOf(input: TakeoffInput): string[] {
  const { given, variant } = input;
  const trades = new Set<string>(given.work.crew === 'self-build' ? ['owner'] : ['roofer']);
  if (isPanel(input)) {
    if (given.work.crew !== 'panel-crew' && given.work.crew !== 'self-build') trades.add('panel crew');
  } else if (given.work.crew !== 'self-build') trades.add('framer');
  if (variant.carrier === 'outriggers') {
    trades.add('framer');
    trades.add('engineer');
    if (given.wall.cladding === 'stays') trades.add('siding');
  }
  return [...trades];
}

function stepsOf(input: TakeoffInput): number {
  const { layers, variant, airBarrier } = input;
  const boards = insulationLayers(layers).length;
  const field = isPanel(input)
    ? boards - 1 + STEPS.panel
    : boards +
      STEPS.screws +
      (variant.ventilation === 'vented-furring' ? 1 : 0) +
      (layers.some((layer) => layer.role === 'upper-deck') ? 1 : 0) +
      (variant.ventilation === 'drainage-mat' ? 1 : 0);
  const edge =
    (airBarrier.bays > 0 ? STEPS.sealBays : 0) +
    (variant.carrier === 'outriggers' ? STEPS.outriggers : 0) +
    (cutsTails(input) ? STEPS.cutTails : 0);
  return field + edge + STEPS.always;
}

/**
 * Take-off of a candidate.
 *
 * cost = (materials as bought + hours × rate) / area; days open = field hours / (crew × day)
 *
 * @param input  [-] the candidate's parts
 * @returns      [m², USD/m², h/m², kg/m², -, days] quantities and comparison figures per roof area
 * @source       COMMON-PRACTICE default prices and hours of costs.json (memory), carbon EPD-RANGES (memory)
 * @assumes      insulated build-up and its edges only: no tear-off, covering, gutters, chimneys
 */
export function takeoffOf(input: TakeoffInput): Candidate['takeoff'] {
  const { given, layers, fasteners, airBarrier, layouts } = input;
  const area_m2 = areaOf(input);
  const { lengths_m } = planesOf(given);
  const hours = hoursOf(input);
  const materials = materialsOf(input);
  const open_h = sumOf(hours.open);
  const labor_h = open_h + sumOf(hours.edge);
  const crew = given.work.crew === 'self-build' ? dimension('self-build-size') : dimension('crew-size');
  const rate = given.work.crew === 'self-build' ? 0 : dimension('labor-rate_USD_h');
  const carbon_kg_m2 = insulationLayers(layers).reduce(
    (sum, { material, resistance_m2K_W }) =>
      material !== null && isBoard(material) ? sum + boardCarbon(material).mid * resistance_m2K_W : sum,
    0,
  );
  const items = [
    { id: 'membrane', what: 'air-barrier membrane on the deck', quantity: area_m2, unit: 'm²' },
    ...layouts.boards.map(({ layer, layout }) => ({
      id: layer.id,
      what: layer.name,
      thickness_m: layer.thickness_m,
      quantity: layout.stock_m2,
      unit: 'm²',
    })),
    {
      id: 'screws',
      what: 'long screws, ten percent spare in',
      quantity: Math.ceil(fasteners.count * SPARE),
      unit: 'pieces',
    },
    ...(fasteners.slopePath.screws > 0
      ? [
          {
            id: 'slope-screws',
            what: 'further screws against sliding, ten percent spare in',
            quantity: Math.ceil(fasteners.slopePath.screws * SPARE),
            unit: 'pieces',
          },
        ]
      : []),
    ...(airBarrier.bays > 0
      ? [{ id: 'blocks', what: 'blocks between tails, sealed', quantity: airBarrier.bays, unit: 'pieces' }]
      : []),
    ...(outriggerCount(input) > 0
      ? [{ id: 'outriggers', what: 'outriggers', quantity: outriggerCount(input), unit: 'pieces' }]
      : []),
  ];
  return {
    roofArea_m2: area_m2,
    eaveLength_m: lengths_m.eave,
    rakeLength_m: lengths_m.rake,
    waste_pct: layouts.waste_pct,
    items,
    parts: [
      ...materials.map(({ price, amount }) => ({
        price,
        what: 'material' as const,
        amount_m2: amount / area_m2,
      })),
      ...hours.open.map(({ price, amount }) => ({
        price,
        what: 'open-hours' as const,
        amount_m2: amount / area_m2,
      })),
      ...hours.edge.map(({ price, amount }) => ({
        price,
        what: 'edge-hours' as const,
        amount_m2: amount / area_m2,
      })),
    ],
    laborRate_USD_h: rate,
    cost_USD_m2: (sumOf(materials) + labor_h * rate) / area_m2,
    labor_h_m2: labor_h / area_m2,
    carbon_kg_m2,
    trades: tradesOf(input).length,
    steps: stepsOf(input),
    daysOpen: open_h / (crew * dimension('crew-day_h')),
  };
}

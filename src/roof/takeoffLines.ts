/** The shopping list of one candidate: every quantity that follows from its planes, layout and schedule. */
import { boardCarbon, boardCost, cost } from '../catalog/costs.ts';
import { dimension } from '../catalog/dimensions.ts';
import { isBoard } from '../catalog/sets.ts';
import { uncertaintiesOf } from '../catalog/uncertainties.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Layer, Requirements } from '../evaluation/evaluation.ts';
import type { TakeoffLine } from '../evaluation/takeoff.ts';
import { insulationLayers } from './assembly.ts';
import { stackThickness_m } from './boards.ts';
import type { Draft } from './draft.ts';
import { layoutsOf, planesOf, type Layout } from './takeoffLayout.ts';

export interface ListInput {
  readonly given: CompleteCase;
  readonly draft: Draft;
  readonly requirements: Requirements;
}

export type Range = TakeoffLine['cost_USD'];

/** [-] screws bought over screws counted: a tenth bend, miss or fall (common practice). */
const SPARE = 1.1;

/**
 * A range times a factor.
 *
 * @param range   [any] low, mid, high
 * @param factor  [-] 0 or more
 * @returns       [any] the same shape
 * @source        COMMON-PRACTICE arithmetic (computed)
 */
export const times = ({ low, mid, high }: Range, factor: number): Range => ({
  low: low * factor,
  mid: mid * factor,
  high: high * factor,
});

/**
 * Ranges added, lows to lows and highs to highs.
 *
 * @param ranges  [any] any number
 * @returns       [any] 0 for none
 * @source        COMMON-PRACTICE arithmetic (computed)
 */
export const added = (ranges: readonly Range[]): Range =>
  ranges.reduce<Range>(
    (sum, one) => ({ low: sum.low + one.low, mid: sum.mid + one.mid, high: sum.high + one.high }),
    { low: 0, mid: 0, high: 0 },
  );

/**
 * Range of a single default of dimensions.json: its value times the factors of uncertainties.json.
 *
 * @param id  [-] of the dimension and of the price
 * @returns   [USD] low, mid, high
 * @source    OUR-JUDGEMENT invented defaults
 */
export function defaultRange(id: string): Range {
  const mid = dimension(id);
  const row = uncertaintiesOf('price').find(({ price }) => price === id);
  return row === undefined
    ? { low: mid, mid, high: mid }
    : { low: mid * row.low, mid: mid * row.likely, high: mid * row.high };
}

const price = (id: string): Range => {
  const { low, mid, high } = cost(id);
  return { low, mid, high };
};

type Bare = Omit<TakeoffLine, 'cost_USD'>;
/** A line whose money is its quantity times a row of costs.json. */
const priced = (bare: Bare, id: string, amount = bare.quantity): TakeoffLine => ({
  ...bare,
  cost_USD: times(price(id), amount),
});

const layoutWords = ({
  count,
  whole,
  cut,
  reused,
  covered_m2,
  waste_pct,
}: Layout): TakeoffLine['layout'] => ({
  count,
  whole,
  cut,
  reused,
  covered_m2,
  waste_pct,
});

/** One layer of board or panel as bought: its board, and for a panel its top sheet and the making. */
function boardLine(layer: Layer, layout: Layout, top: Layer | null): TakeoffLine {
  const { material, resistance_m2K_W } = layer;
  const { stock_m2 } = layout;
  const board = material !== null && isBoard(material) ? material : null;
  const perArea: Range[] = [
    ...(board === null ? [] : [times(boardCost(board), resistance_m2K_W)]),
    ...(top === null ? [] : [price('second-deck'), price('panel-premium')]),
  ];
  return {
    id: layer.id,
    group: 'board',
    what: top === null ? layer.name : `prebonded panel, core of ${layer.name}`,
    quantity: stock_m2,
    unit: 'm²',
    thickness_m: layer.thickness_m,
    layout: layoutWords(layout),
    mass_kg: stock_m2 * (layer.mass_kg_m2 + (top?.mass_kg_m2 ?? 0)),
    ...(board === null ? {} : { carbon_kg: times(boardCarbon(board), stock_m2 * resistance_m2K_W) }),
    cost_USD: times(added(perArea), stock_m2),
  };
}

function boardLines({ given, draft }: ListInput): TakeoffLine[] {
  const { layers, strategy } = draft.candidate;
  const isPanel = strategy === 'prebonded-panel';
  const { boards, sheets } = layoutsOf(given, layers, isPanel);
  const deck = layers.find(({ role }) => role === 'upper-deck') ?? null;
  const lines = boards.map(({ layer, layout }, index) =>
    boardLine(layer, layout, isPanel && index === boards.length - 1 ? deck : null),
  );
  if (sheets === null || deck === null) return lines;
  const sheet: Bare = {
    id: 'second-deck',
    group: 'board',
    what: `second deck, ${deck.name}`,
    quantity: sheets.stock_m2,
    unit: 'm²',
    thickness_m: deck.thickness_m,
    layout: layoutWords(sheets),
    mass_kg: sheets.stock_m2 * deck.mass_kg_m2,
  };
  return [...lines, priced(sheet, 'second-deck')];
}

function framingLines({ given, draft }: ListInput): TakeoffLine[] {
  const { candidate, variant } = draft;
  const { area_m2, lengths_m } = planesOf(given);
  const { layers, takeoff, structure } = candidate;
  const stack_m = stackThickness_m(
    insulationLayers(layers).map(({ thickness_m }) => ({ board: variant.board, thickness_m })),
  );
  const plies = Math.ceil(stack_m / dimension('nailer-ply_m'));
  const counted = (id: string): number => takeoff.items.find((item) => item.id === id)?.quantity ?? 0;
  const lines: TakeoffLine[] = [];
  if (variant.ventilation === 'vented-furring') {
    const quantity = area_m2 / given.framing.spacing_m;
    lines.push(
      priced(
        { id: 'furring', group: 'framing', what: '2x4 furring up the slope', quantity, unit: 'm' },
        'furring',
      ),
    );
    if (!layers.some(({ role }) => role === 'upper-deck'))
      lines.push(
        priced(
          {
            id: 'battens',
            group: 'framing',
            what: '1x4 cross battens',
            quantity: area_m2 / dimension('batten-spacing_m'),
            unit: 'm',
          },
          'batten',
        ),
      );
  }
  const edge_m = lengths_m.eave + lengths_m.rake;
  lines.push(
    priced(
      {
        id: 'nailers',
        group: 'framing',
        what: `2x nailers along eaves and rakes, ${plies} high`,
        quantity: edge_m * plies,
        unit: 'm',
      },
      'nailer',
    ),
  );
  if (counted('blocks') > 0)
    lines.push({
      id: 'blocks',
      group: 'framing',
      what: 'blocks between tails, with sealant',
      quantity: counted('blocks'),
      unit: 'pieces',
      cost_USD: times(defaultRange('tail-block_USD'), counted('blocks')),
    });
  if (counted('outriggers') > 0) {
    const member = structure.outrigger;
    lines.push({
      id: 'outriggers',
      group: 'framing',
      what: member === null ? 'outriggers, size open' : `outriggers ${member.size}`,
      quantity: counted('outriggers'),
      unit: 'pieces',
      ...(member === null || structure.plan === null
        ? {}
        : { length_m: structure.plan.overhang_m + member.backSpan_m }),
      cost_USD: times(defaultRange('outrigger-material_USD'), counted('outriggers')),
    });
  }
  return lines;
}

function fastenerLines({ draft }: ListInput): TakeoffLine[] {
  const { fasteners, structure, takeoff } = draft.candidate;
  const screw = (id: string, what: string, count: number, length_m: number, row: string): TakeoffLine[] =>
    count === 0
      ? []
      : [
          priced(
            { id, group: 'fastener', what, quantity: Math.ceil(count * SPARE), unit: 'pieces', length_m },
            row,
          ),
        ];
  const { slopePath } = fasteners;
  const way = slopePath.ways.find(({ id }) => id === slopePath.chosen);
  const outriggers = takeoff.items.find(({ id }) => id === 'outriggers')?.quantity ?? 0;
  const own = structure.plan?.screws ?? null;
  return [
    ...screw('screws', 'long screws, a tenth spare', fasteners.count, fasteners.screwLength_m, 'long-screw'),
    ...screw(
      'slope-screws',
      'further screws against sliding, a tenth spare',
      slopePath.screws,
      way?.length_m ?? fasteners.screwLength_m,
      'long-screw',
    ),
    ...(own === null
      ? []
      : screw(
          'outrigger-screws',
          'screws of the outriggers, a tenth spare',
          outriggers * (own.heel + own.wall),
          own.length_m,
          'outrigger-screw',
        )),
  ];
}

function sheetLines({ given, draft, requirements }: ListInput): TakeoffLine[] {
  const { variant } = draft;
  const { area_m2, lengths_m } = planesOf(given);
  const lapped = 1 + dimension('sheet-lap-share');
  const wall_m = lengths_m.eave + lengths_m.rake + lengths_m['high-edge'];
  const deckName = given.framing.deck === 'plank' ? 'whole deck of planks' : 'band along the wall lap';
  const primed_m2 = given.framing.deck === 'plank' ? area_m2 : wall_m * dimension('wall-lap_m');
  const plies = requirements.slope.doubleUnderlayment ? 2 : 1;
  const lines = [
    priced(
      {
        id: 'membrane',
        group: 'air-barrier',
        what: 'air-barrier membrane on the deck, laps in',
        quantity: area_m2 * lapped,
        unit: 'm²',
      },
      'deck-membrane',
      area_m2,
    ),
    priced(
      {
        id: 'tape',
        group: 'air-barrier',
        what: 'tape at the wall lap, hips, ridges, valleys and pipes',
        quantity:
          wall_m +
          lengths_m.ridge +
          lengths_m.hip +
          lengths_m.valley +
          given.roof.penetrations * dimension('tape-per-penetration_m'),
        unit: 'm',
      },
      'tape',
    ),
    priced(
      { id: 'primer', group: 'air-barrier', what: `primer, ${deckName}`, quantity: primed_m2, unit: 'm²' },
      'primer',
    ),
    priced(
      {
        id: 'underlayment',
        group: 'weather',
        what: plies > 1 ? 'underlayment, two layers, laps in' : 'underlayment, laps in',
        quantity: area_m2 * lapped * plies,
        unit: 'm²',
      },
      'underlayment',
    ),
    priced(
      {
        id: 'drip-edge',
        group: 'weather',
        what: 'drip edge at eaves and rakes',
        quantity: wall_m,
        unit: 'm',
      },
      'drip-edge',
    ),
  ] satisfies TakeoffLine[];
  const ice = requirements.iceBarrier;
  return [
    ...lines,
    ...(ice.required
      ? [
          priced(
            {
              id: 'ice-barrier',
              group: 'weather',
              what: 'ice barrier along the eaves',
              quantity: lengths_m.eave * ice.length_m,
              unit: 'm²',
            },
            'ice-barrier',
          ),
        ]
      : []),
    ...(variant.ventilation === 'drainage-mat'
      ? [
          priced(
            { id: 'mat', group: 'venting', what: 'drainage mat', quantity: area_m2, unit: 'm²' },
            'drainage-mat',
          ),
        ]
      : []),
  ];
}

/** Lines of a length that has a price; none where the length is zero. */
const along = (id: string, group: Bare['group'], what: string, length_m: number, row = id): TakeoffLine[] =>
  length_m > 0 ? [priced({ id, group, what, quantity: length_m, unit: 'm' }, row)] : [];

function edgeLines({ given, draft }: ListInput): TakeoffLine[] {
  const { lengths_m } = planesOf(given);
  const { ventilation } = draft.variant;
  const isVented = ventilation === 'vented-furring' || ventilation === 'panel-gap';
  const top_m = lengths_m.ridge + lengths_m['high-edge'];
  const vents = isVented
    ? [
        ...along('intake-vent', 'venting', 'intake strip along the eaves', lengths_m.eave),
        ...along('ridge-vent', 'venting', 'vent along ridges and high edges', top_m),
        ...along('insect-screen', 'venting', 'insect screen at intake and outlet', lengths_m.eave + top_m),
      ]
    : [];
  return [
    ...vents,
    ...along('valley-flashing', 'flashing', 'valley metal', lengths_m.valley),
    ...along(
      'step-flashing',
      'flashing',
      'step and apron flashing at cheeks, aprons and curbs',
      lengths_m.cheek + lengths_m.apron + lengths_m.opening,
    ),
  ];
}

function feeLines({ draft }: ListInput): TakeoffLine[] {
  if (draft.variant.carrier !== 'outriggers') return [];
  return [
    {
      id: 'engineer',
      group: 'fee',
      what: "engineer's design of outriggers and their connections",
      quantity: 1,
      unit: 'fee',
      cost_USD: defaultRange('engineer-fee_USD'),
    },
  ];
}

/**
 * Lines of the shopping list.
 *
 * quantity from planes, layout, schedule and screening; money = quantity × row of the price list
 *
 * @param input  [-] the complete case, a draft, the requirements
 * @returns      [m², m, -, kg, USD] lines in the order of building
 * @source       OUR-JUDGEMENT invented default prices of costs.json; COMMON-PRACTICE laps and spares (common practice)
 * @assumes      no covering, fascia, soffit, gutters, tear-off, scaffold
 */
export const linesOf = (input: ListInput): TakeoffLine[] => [
  ...sheetLines(input).filter(({ group }) => group === 'air-barrier'),
  ...boardLines(input),
  ...framingLines(input),
  ...fastenerLines(input),
  ...sheetLines(input).filter(({ group }) => group !== 'air-barrier'),
  ...edgeLines(input),
  ...feeLines(input),
];

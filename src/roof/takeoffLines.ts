/** The shopping list of one candidate: every quantity that follows from its planes, layout and schedule. */
import { boardCarbon, boardCost } from '../catalog/costs.ts';
import { dimension } from '../catalog/dimensions.ts';
import { isBoard } from '../catalog/sets.ts';
import type { Layer } from '../evaluation/evaluation.ts';
import type { TakeoffLine } from '../evaluation/takeoff.ts';
import { insulationLayers } from './assembly.ts';
import { stackThickness_m } from './boards.ts';
import { layoutsOf, planesOf, type Layout } from './takeoffLayout.ts';
import {
  added,
  defaultRange,
  price,
  priced,
  times,
  type Bare,
  type ListInput,
  type Range,
} from './takeoffPrices.ts';
import { edgeLines, sheetLines } from './takeoffSheets.ts';

/** [-] screws bought over screws counted: a tenth bend, miss or fall (common practice). */
const SPARE = 1.1;

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

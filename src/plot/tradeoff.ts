/** Cost against durability: one mark for each feasible variant, larger for a higher fascia; the leaders are named. */
import { extent, least } from 'd3-array';
import { scaleSqrt } from 'd3-scale';
import { strategyNames, type StrategyId } from '../catalog/sets.ts';
import { point, type Point } from '../drawing/geometry.ts';
import type { Picture } from '../drawing/picture.ts';
import { line, pen, text, type Shape } from '../drawing/shapes.ts';
import { textWidth_mm } from '../drawing/text-metrics.ts';
import { show, type System } from '../measures.ts';
import { valueAxis } from './axis.ts';
import {
  acrossAxis,
  BASELINE,
  footHeight_mm,
  headHeight_mm,
  layoutOf,
  LEADING,
  panelAt,
  pictureOf,
  TICKS,
  titleAt,
  upAxis,
  type Layout,
  type Panel,
} from './layout.ts';
import { mark, type Form } from './marks.ts';
import { numberCell, numberColumn, wordCell, wordColumn, type PlotOptions, type PlotTable } from './plot.ts';

/** One variant; computed elsewhere, shown here. */
export interface TradeOffMark {
  readonly candidate: string;
  readonly name: string;
  readonly strategy: StrategyId;
  readonly isLeader: boolean;
  readonly cost_USD_m2: number;
  /** 0 to 1. */
  readonly durability: number;
  readonly fascia_m: number;
  readonly isBehind: boolean;
}

export interface TradeOffPlot {
  readonly picture: Picture;
  readonly sentence: string;
  readonly table: PlotTable;
}

const forms: Readonly<Record<StrategyId, Form>> = {
  'rafter-overhang': 'circle',
  'flush-outriggers': 'square',
  'prebonded-panel': 'triangle',
};
const TITLE = 'Cost against durability';
const DURABILITY = 'Durability, value 0 to 1';
/** [mm] Half the size of the marks of the lowest and the highest fascia. */
const SIZES_mm = [0.9, 2.6] as const;
/** [mm] Between a mark and its name. */
const NAME_GAP_mm = 1.6;
/** [-] Panel height over the usual one. */
const TALL = 1.5;

function sentenceOf(marks: readonly TradeOffMark[], system: System): string {
  const leaders = marks.filter(({ isLeader }) => isLeader);
  const cheapest = [...leaders].sort((a, b) => a.cost_USD_m2 - b.cost_USD_m2)[0];
  const longest = [...leaders].sort((a, b) => b.durability - a.durability)[0];
  if (cheapest === undefined || longest === undefined) return 'Nothing is feasible.';
  const cost = (one: TradeOffMark): string => show('costPerArea', one.cost_USD_m2, system);
  const same =
    cheapest === longest
      ? `${strategyNames[cheapest.strategy]} is the cheapest of the leaders, ${cost(cheapest)}, and lasts longest.`
      : `${strategyNames[cheapest.strategy]} is the cheapest of the leaders, ${cost(cheapest)}; ${strategyNames[longest.strategy]} is the most durable, for ${cost(longest)}.`;
  const behind = marks.filter(({ isBehind }) => isBehind).length;
  return `${same} Of ${marks.length} feasible variants, ${behind} have another that costs no more and lasts no less. A larger mark is a higher fascia.`;
}

const tableOf = (marks: readonly TradeOffMark[], system: System): PlotTable => ({
  caption: 'Cost, durability and fascia of the feasible variants, in the order of the ranking',
  columns: [
    wordColumn('variant', 'Variant'),
    numberColumn('cost', 'Cost', 'costPerArea', system),
    numberColumn('durability', 'Durability', 'ratio', system),
    numberColumn('fascia', 'Fascia', 'length', system),
    wordColumn('behind', 'Beaten in both by another'),
  ],
  rows: marks.map((one) => [
    wordCell(one.name),
    numberCell('costPerArea', one.cost_USD_m2, system),
    numberCell('ratio', one.durability, system, 2),
    numberCell('length', one.fascia_m, system),
    wordCell(one.isBehind ? 'yes' : 'no'),
  ]),
});

interface Named {
  readonly words: string;
  readonly from: Point;
  readonly radius_mm: number;
}
interface Taken {
  readonly at: Point;
  readonly radius_mm: number;
}
interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** How far up and down, in lines, a name looks for a free place; near places first. */
const STEPS = [0, -1, 1, -2, 2, -3, 3, -4, 4, -5, 5, -6, 6];

/** Names of the leaders where they cover the fewest marks and no other name, with a thin line where they stand off. */
function namesBeside(
  names: readonly Named[],
  marks: readonly Taken[],
  panel: Panel,
  layout: Layout,
): Shape[] {
  const { size_mm } = layout;
  const placed: Box[] = [];
  return names.flatMap(({ words, from, radius_mm }): Shape[] => {
    const width_mm = textWidth_mm(words, size_mm, 'bold');
    const places = STEPS.flatMap((step) =>
      [false, true].map((isLeft) => {
        const gap = radius_mm + NAME_GAP_mm;
        const left = isLeft ? from.x - gap - width_mm : from.x + gap;
        const top = from.y - size_mm / 2 + step * size_mm * LEADING;
        const box: Box = { left, right: left + width_mm, top, bottom: top + size_mm };
        const covers = marks.filter(
          ({ at, radius_mm: reach }) =>
            at.x + reach > box.left &&
            at.x - reach < box.right &&
            at.y + reach > box.top &&
            at.y - reach < box.bottom,
        ).length;
        const meets = placed.filter(
          (other) =>
            other.left < box.right &&
            box.left < other.right &&
            other.top < box.bottom &&
            box.top < other.bottom,
        ).length;
        const isOut =
          box.left < panel.left ||
          box.right > layout.width_mm - layout.margin_mm ||
          box.top < panel.top ||
          box.bottom > panel.bottom;
        return {
          box,
          isLeft,
          step,
          cost: (isOut ? OUT : 0) + OUT * meets + COVERS * covers + Math.abs(step),
        };
      }),
    );
    const best = least(places, ({ cost }) => cost);
    if (best === undefined) return [];
    placed.push(best.box);
    const start = point(best.isLeft ? best.box.right : best.box.left, best.box.top + BASELINE * size_mm);
    return [
      ...(best.step === 0
        ? []
        : [line(from, point(start.x, best.box.top + size_mm / 2), pen(0.18, 'softText'))]),
      text(start, words, { size_mm, weight: 'bold', anchor: best.isLeft ? 'end' : 'start' }),
    ];
  });
}

/** [-] what a name costs that leaves the panel or meets another, and for each mark that it covers. */
const [OUT, COVERS] = [1000, 10] as const;

/** Marks, names at the leaders, and the table behind them. */
export function tradeOffPlot(marks: readonly TradeOffMark[], options: PlotOptions): TradeOffPlot {
  const { system } = options;
  const layout = { ...layoutOf(options), labels_mm: 4 };
  const title = titleAt(TITLE, layout);
  const panel = panelAt(layout, title.bottom + headHeight_mm(DURABILITY, layout), layout.panel_mm * TALL);
  const up = valueAxis({
    title: DURABILITY,
    kind: 'ratio',
    system,
    values: marks.map(({ durability }) => durability),
    from: panel.bottom,
    to: panel.top,
    ticks: TICKS,
  });
  const across = valueAxis({
    title: 'Cost of the insulated build-up',
    kind: 'costPerArea',
    system,
    values: marks.map(({ cost_USD_m2 }) => cost_USD_m2),
    from: panel.left,
    to: panel.right,
    ticks: layout.size === 'narrow' ? 3 : TICKS,
  });
  const [low = 0, high = 1] = extent(marks, ({ fascia_m }) => fascia_m);
  const size = scaleSqrt()
    .domain([low, Math.max(high, low + 1e-6)])
    .range([...SIZES_mm]);
  const at = (one: TradeOffMark) => point(across.at(one.cost_USD_m2), up.at(one.durability));
  const leaders = marks.filter(({ isLeader }) => isLeader);
  const named = namesBeside(
    leaders.map((one) => ({
      words: strategyNames[one.strategy],
      from: at(one),
      radius_mm: size(one.fascia_m),
    })),
    marks.map((one) => ({ at: at(one), radius_mm: size(one.fascia_m) })),
    panel,
    layout,
  );
  const sentence = sentenceOf(marks, system);
  const shapes: Shape[] = [
    ...title.shapes,
    ...upAxis(panel, up, layout),
    ...acrossAxis(panel, across, layout),
    ...marks
      .filter(({ isLeader }) => !isLeader)
      .map((one) => mark(forms[one.strategy], at(one), 'softText', 'paper', size(one.fascia_m))),
    ...leaders.map((one) => mark(forms[one.strategy], at(one), 'line', 'solid', size(one.fascia_m))),
    ...named,
  ];
  const height_mm = panel.bottom + footHeight_mm(layout) + layout.margin_mm;
  return {
    picture: pictureOf(TITLE, sentence, layout, height_mm, shapes, options),
    sentence,
    table: tableOf(marks, system),
  };
}

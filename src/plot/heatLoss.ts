/** Where the heat goes: what the clear roof and each bridge through it lose, as parts of one whole. */
import { greatest } from 'd3-array';
import { stack } from 'd3-shape';
import { point } from '../drawing/geometry.ts';
import { line, pen, text, type Shape } from '../drawing/shapes.ts';
import { textWidth_mm, wrapText } from '../drawing/text-metrics.ts';
import type { BridgeLoss } from '../evaluation/heatMoisture.ts';
import { show } from '../measures.ts';
import { valueAxis } from './axis.ts';
import {
  acrossAxis,
  BASELINE,
  basePen,
  footHeight_mm,
  layoutOf,
  LEADING,
  pictureOf,
  titleAt,
  wordsAt,
  type Panel,
} from './layout.ts';
import { barShapes, patternOf, rectangle } from './marks.ts';
import {
  capital,
  numberCell,
  numberColumn,
  wordCell,
  wordColumn,
  type Plot,
  type PlotOptions,
} from './plot.ts';

export interface HeatLoss {
  /** The clear roof and its bridges; the transmittances add up to the whole roof's. */
  readonly bridges: readonly BridgeLoss[];
  /** Whole roof, everything in. */
  readonly transmittance_W_m2K: number;
  /** The R that a roof without bridges would need to lose the same. */
  readonly effectiveResistance_m2K_W: number;
}

const TITLE = 'Heat lost by part of the roof';
/** [mm] Height of a bar, and the air between two rows. */
const BAR_mm = 4.4;
const ROW_GAP_mm = 2.2;
/** [mm] From a bar to its figures. */
const BESIDE_mm = 1.2;
/** Share of the width that the names take on a wide plot. */
const NAMES_SHARE = 0.3;
const FULL_pct = 100;
const TICKS = 5;

/** Bars one below the other, each beginning where the one before ended, so that together they reach 100 %. */
export function heatLossPlot(data: HeatLoss, options: PlotOptions): Plot {
  const { system } = options;
  const layout = layoutOf(options);
  const { margin_mm, size_mm, width_mm } = layout;
  const parts = data.bridges;
  const title = titleAt(TITLE, layout);
  const whole = `U ${show('transmittance', data.transmittance_W_m2K, system)}, ${show('resistance', data.effectiveResistance_m2K_W, system)} effective`;
  const head = wordsAt(whole, margin_mm, title.bottom, width_mm - 2 * margin_mm, size_mm);
  const isNarrow = options.size === 'narrow';
  const names_mm = isNarrow ? 0 : (width_mm - 2 * margin_mm) * NAMES_SHARE;
  const figures = parts.map(
    (part) =>
      `${show('share', part.share_pct, system)}, U ${show('transmittance', part.transmittance_W_m2K, system, { unit: false, fixed: true })}`,
  );
  const figures_mm = Math.max(0, ...figures.map((words) => textWidth_mm(words, size_mm))) + BESIDE_mm;
  const left = margin_mm + names_mm + (isNarrow ? 2 : 0);
  const right = width_mm - margin_mm - figures_mm - (isNarrow ? 0 : 1);
  const lead = LEADING * size_mm;
  const name = (part: BridgeLoss): string[] =>
    wrapText(capital(part.what), isNarrow ? width_mm - 2 * margin_mm : names_mm - 2, size_mm);
  const ends = stack<unknown, object, number>()
    .keys(parts.map((_, i) => i))
    .value((_, i) => parts[i]?.share_pct ?? 0)([{}])
    .map(([pair]) => ({ from: pair?.[0] ?? 0, to: pair?.[1] ?? 0 }));
  const scale = valueAxis({
    title: 'Share of the heat lost',
    kind: 'share',
    system,
    values: [0, FULL_pct, ...ends.flatMap(({ from, to }) => [from, to])],
    from: left,
    to: right,
    ticks: TICKS,
    isExact: true,
  });
  const shapes: Shape[] = [];
  let y = head.bottom + ROW_GAP_mm;
  const top = y;
  const falls: { x: number; from: number }[] = [];
  parts.forEach((part, i) => {
    const lines = name(part);
    const names_height = lines.length * lead;
    const bar = isNarrow ? y + names_height + 0.4 : y + Math.max(0, (names_height - BAR_mm) / 2);
    const end = ends[i] ?? { from: 0, to: 0 };
    const low = scale.at(Math.min(end.from, end.to));
    const high = scale.at(Math.max(end.from, end.to));
    const words = isNarrow ? y : bar + (BAR_mm - names_height) / 2;
    lines.forEach((words_, row) =>
      shapes.push(text(point(margin_mm, words + row * lead + BASELINE * size_mm), words_, { size_mm })),
    );
    shapes.push(...barShapes(rectangle(low, bar, high, bar + BAR_mm), patternOf(i)));
    shapes.push(
      text(point(high + BESIDE_mm, bar + BAR_mm / 2 + size_mm * 0.26), figures[i] ?? '', { size_mm }),
    );
    const before = falls.at(-1);
    if (before !== undefined && !isNarrow)
      shapes.push(line(point(before.x, before.from), point(before.x, bar), pen(0.18, 'hatch', 'dotted')));
    falls.push({ x: scale.at(end.to), from: bar + BAR_mm });
    y = Math.max(bar + BAR_mm, words + names_height) + ROW_GAP_mm;
  });
  const panel: Panel = { left, right, top, bottom: y };
  const most = greatest(
    parts.filter(({ id }) => id !== 'clear'),
    (part) => part.share_pct,
  );
  const sentence = `The whole roof loses as much as one of ${show('resistance', data.effectiveResistance_m2K_W, system)} without any bridge would (U ${show('transmittance', data.transmittance_W_m2K, system)}).${
    most === undefined || most.share_pct <= 0
      ? ''
      : ` The largest bridge is ${most.what}: ${show('share', most.share_pct, system)} of the heat lost.`
  }`;
  shapes.push(
    ...title.shapes,
    ...head.shapes,
    ...(isNarrow ? [] : [line(point(left, top - 0.6), point(left, y), basePen)]),
    ...acrossAxis(panel, scale, layout),
  );
  const height_mm = y + footHeight_mm(layout) + margin_mm;
  return {
    name: 'heat-loss',
    title: TITLE,
    picture: pictureOf(TITLE, sentence, layout, height_mm, shapes, options),
    sentence,
    table: {
      caption: TITLE,
      columns: [
        wordColumn('part', 'Part'),
        numberColumn('transmittance', 'U', 'transmittance', system),
        numberColumn('share', 'Share', 'share', system),
      ],
      rows: [
        ...parts.map((part) => [
          wordCell(capital(part.what)),
          numberCell('transmittance', part.transmittance_W_m2K, system),
          numberCell('share', part.share_pct, system),
        ]),
        [
          wordCell('Whole roof'),
          numberCell('transmittance', data.transmittance_W_m2K, system),
          numberCell(
            'share',
            parts.reduce((sum, part) => sum + part.share_pct, 0),
            system,
          ),
        ],
      ],
    },
  };
}

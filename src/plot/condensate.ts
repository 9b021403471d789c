/** Water that condenses inside the roof, month by month and plane by plane, against what each plane may hold. */
import { monthNames } from '../catalog/months.ts';
import { greatest, max } from 'd3-array';
import { scaleBand } from 'd3-scale';
import { point } from '../drawing/geometry.ts';
import { line, type Shape } from '../drawing/shapes.ts';
import type { CondensationPlane } from '../evaluation/heatMoisture.ts';
import { show, type System } from '../measures.ts';
import { monthBands, valueAxis, type Axis, type BandAxis } from './axis.ts';
import { endLabelShapes, labelsHeight_mm, type EndLabel } from './endLabels.ts';
import {
  basePen,
  BETWEEN_mm,
  footHeight_mm,
  headHeight_mm,
  layoutOf,
  monthAxis,
  panelAt,
  pictureOf,
  TICKS,
  titleAt,
  upAxis,
  type Panel,
} from './layout.ts';
import { barShapes, limitPen, patternOf, rectangle, styleOf } from './marks.ts';
import {
  capital,
  listed,
  numberCell,
  numberColumn,
  winterMiddle,
  wordCell,
  wordColumn,
  type Plot,
  type PlotOptions,
  type PlotTable,
} from './plot.ts';
import { seriesLabels, seriesShapes, type Series } from './series.ts';

export interface Condensate {
  readonly planes: readonly (CondensationPlane & {
    /** Where the plane lies, in words: `on the deck`. */
    readonly where: string;
  })[];
}

type Plane = Condensate['planes'][number];

const TITLE = 'Condensate inside the roof, month by month';
/** A limit further than this above the highest peak is named, not drawn: the bars would vanish below it. */
const FAR = 3;

const idOf = (plane: Plane): string => `${plane.after}-${String(plane.within_pct ?? '')}`;
/** [kg/m²] Less than half a gram on a square meter is a trace: named, not plotted (our judgement). */
const TRACE_kg_m2 = 0.0005;
const isWet = (plane: Plane): boolean => plane.peak_kg_m2 >= TRACE_kg_m2;
/** Decimals at which a trace still shows in either unit. */
const DIGITS = 4;
const water = (value: number, system: System): string =>
  show('waterPerArea', value, system, { digits: DIGITS });

function limitsOf(planes: readonly Plane[]): { value: number; isDrawn: boolean; who: string }[] {
  const peak = max(planes, (plane) => plane.peak_kg_m2) ?? 0;
  const values = [...new Set(planes.map((plane) => plane.limit_kg_m2))];
  return values.map((value) => {
    const at = planes.filter((plane) => plane.limit_kg_m2 === value).map(({ where }) => where);
    return {
      value,
      isDrawn: value <= FAR * peak,
      who: values.length > 1 ? ` ${listed(at)}` : '',
    };
  });
}

function sentenceOf(all: readonly Plane[], planes: readonly Plane[], system: System): string {
  const traces = all.filter((plane) => plane.peak_kg_m2 > 0);
  if (planes.length === 0 && traces.length > 0)
    return `Only a trace condenses, less than ${water(TRACE_kg_m2, system)} ${listed(traces.map(({ where }) => where))}: there is nothing to plot.`;
  if (planes.length === 0)
    return 'In no month does water condense inside the roof, by the monthly method: there is nothing to plot.';
  return planes
    .map((plane) => {
      const peakAt = greatest(winterMiddle, (month) => plane.accumulated_kg_m2[month] ?? 0) ?? 0;
      const dries = winterMiddle.some((month) => (plane.accumulated_kg_m2[month] ?? 0) <= 0);
      return `${capital(plane.where)} up to ${water(plane.peak_kg_m2, system)} gathers by the end of ${monthNames[peakAt] ?? ''}, ${
        plane.meetsLimit ? 'within' : 'above'
      } the limit of ${water(plane.limit_kg_m2, system)}; it ${dries ? 'is gone within the year' : 'does not dry within the year'}.`;
    })
    .join(' ');
}

function tableOf(planes: readonly Plane[], system: System): PlotTable {
  return {
    caption: 'Condensate by month; negative evaporates',
    columns: [
      wordColumn('month', 'Month'),
      ...planes.flatMap((plane) => [
        numberColumn(
          `${idOf(plane)}-monthly`,
          `${capital(plane.where)}, in the month`,
          'waterPerArea',
          system,
        ),
        numberColumn(`${idOf(plane)}-sum`, 'Gathered by its end', 'waterPerArea', system),
      ]),
    ],
    rows:
      planes.length === 0
        ? []
        : [
            ...winterMiddle.map((month) => [
              wordCell(monthNames[month] ?? ''),
              ...planes.flatMap((plane) => [
                numberCell('waterPerArea', plane.monthly_kg_m2[month], system, DIGITS),
                numberCell('waterPerArea', plane.accumulated_kg_m2[month], system, DIGITS),
              ]),
            ]),
            [
              wordCell('Limit'),
              ...planes.flatMap((plane) => [
                wordCell(''),
                numberCell('waterPerArea', plane.limit_kg_m2, system, DIGITS),
              ]),
            ],
          ],
  };
}

/** What has gathered by the end of each month, from the end of June to the next. */
const gathered = (planes: readonly Plane[], axis: Axis, months: BandAxis): Series[] =>
  planes.map((plane, i) => ({
    id: idOf(plane),
    words: capital(plane.where),
    style: styleOf(i),
    places: [
      point((months.items[0]?.at ?? 0) - months.step_mm / 2, axis.at(plane.accumulated_kg_m2[5] ?? 0)),
      ...months.items.map(({ month, at }) =>
        point(at + months.step_mm / 2, axis.at(plane.accumulated_kg_m2[month] ?? 0)),
      ),
    ],
    points: [false, ...months.items.map(() => true)],
  }));

function bars(planes: readonly Plane[], axis: Axis, months: BandAxis): Shape[] {
  const zero = axis.at(0);
  return months.items.flatMap(({ month, at }) => {
    const beside = scaleBand<number>()
      .domain(planes.map((_, i) => i))
      .range([at - months.bar_mm / 2, at + months.bar_mm / 2]);
    return planes.flatMap((plane, i) => {
      const value = plane.monthly_kg_m2[month] ?? 0;
      const left = beside(i) ?? at;
      const end = axis.at(value);
      return value === 0
        ? []
        : barShapes(
            rectangle(left, Math.min(zero, end), left + beside.bandwidth(), Math.max(zero, end)),
            patternOf(i + 1),
          );
    });
  });
}

const zeroLine = (panel: Panel, axis: Axis): Shape =>
  line(point(panel.left, axis.at(0)), point(panel.right, axis.at(0)), basePen);

/** Two panels over the year: what has gathered, with the limit, and what condenses or evaporates each month. */
export function condensatePlot(data: Condensate, options: PlotOptions): Plot {
  const { system } = options;
  const planes = data.planes.filter(isWet);
  const sentence = sentenceOf(data.planes, planes, system);
  const table = tableOf(planes, system);
  const base = { name: 'condensate', title: TITLE, sentence, table } as const;
  if (planes.length === 0) return { ...base, picture: null };
  const layout = layoutOf(options);
  const title = titleAt(TITLE, layout);
  const limits = limitsOf(planes);
  const limitWords = (limit: (typeof limits)[number]): string =>
    `Limit${limit.who} ${show('waterPerArea', limit.value, system)}${limit.isDrawn ? '' : ', above this scale'}`;
  const limitLabels = (axis: Axis, panel: Panel): EndLabel[] =>
    limits.map((limit, i) => ({
      id: `limit-${String(i)}`,
      words: limitWords(limit),
      from: point(limit.isDrawn ? panel.right : 0, limit.isDrawn ? axis.at(limit.value) : panel.top),
      isBold: true,
    }));
  const headUpper = 'Gathered by the end of the month';
  const headLower = 'In the month; below zero evaporates';
  const blankLabels: EndLabel[] = [
    ...planes.map((plane, i) => ({
      id: idOf(plane),
      words: capital(plane.where),
      style: styleOf(i),
      from: point(0, 0),
    })),
    ...limits.map((limit, i) => ({
      id: `limit-${String(i)}`,
      words: limitWords(limit),
      from: point(0, 0),
      isBold: true,
    })),
  ];
  const upper = panelAt(
    layout,
    title.bottom + headHeight_mm(`${headUpper}, kg/m²`, layout),
    Math.max(layout.panel_mm, labelsHeight_mm(blankLabels, layout)),
  );
  const lower = panelAt(
    layout,
    upper.bottom + BETWEEN_mm + headHeight_mm(`${headLower}, kg/m²`, layout),
    Math.max(layout.panel_mm * 0.7, labelsHeight_mm(blankLabels.slice(0, planes.length), layout)),
  );
  const months = monthBands(upper.left, upper.right, options.size);
  const sum = valueAxis({
    title: headUpper,
    kind: 'waterPerArea',
    system,
    values: [
      0,
      ...planes.flatMap((plane) => plane.accumulated_kg_m2),
      ...limits.filter(({ isDrawn }) => isDrawn).map(({ value }) => value),
    ],
    from: upper.bottom,
    to: upper.top,
    ticks: TICKS,
  });
  const monthly = valueAxis({
    title: headLower,
    kind: 'waterPerArea',
    system,
    values: [0, ...planes.flatMap((plane) => plane.monthly_kg_m2)],
    from: lower.bottom,
    to: lower.top,
    ticks: TICKS,
  });
  const series = gathered(planes, sum, months);
  const shapes: Shape[] = [
    ...title.shapes,
    ...upAxis(upper, sum, layout),
    zeroLine(upper, sum),
    ...limits
      .filter(({ isDrawn }) => isDrawn)
      .map(({ value }) =>
        line(point(upper.left, sum.at(value)), point(upper.right, sum.at(value)), limitPen),
      ),
    ...seriesShapes(series),
    ...endLabelShapes([...seriesLabels(series), ...limitLabels(sum, upper)], upper, layout),
    ...upAxis(lower, monthly, layout),
    ...bars(planes, monthly, months),
    zeroLine(lower, monthly),
    ...monthAxis(lower, months, layout),
    ...endLabelShapes(
      planes.map((plane, i) => ({
        id: idOf(plane),
        words: capital(plane.where),
        pattern: patternOf(i + 1),
        from: point(0, lower.top),
      })),
      lower,
      layout,
    ),
  ];
  const height_mm = lower.bottom + footHeight_mm(layout) + layout.margin_mm;
  return { ...base, picture: pictureOf(TITLE, sentence, layout, height_mm, shapes, options) };
}

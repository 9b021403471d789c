/** The deck against the dew point of the indoor air, month by month, and the humidity that it would bear. */
import { monthNames } from '../catalog/months.ts';
import { least } from 'd3-array';
import { polygon, type Shape } from '../drawing/shapes.ts';
import { point } from '../drawing/geometry.ts';
import type { IndoorAir, PlaneMonths } from '../evaluation/heatMoisture.ts';
import { show, type System } from '../measures.ts';
import { monthBands, valueAxis, type Axis, type BandAxis } from './axis.ts';
import { endLabelShapes, labelsHeight_mm } from './endLabels.ts';
import {
  baseLine,
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
import { rectangle, styleOf, type Style } from './marks.ts';
import { namesOf, seriesLabels, seriesShapes, type Series } from './series.ts';
import {
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

export interface DeckMonths {
  /** The first surface that indoor air meets. */
  readonly plane: PlaneMonths;
  /** January to December. */
  readonly outdoor_C: readonly number[];
  readonly indoor: IndoorAir;
}

const FULL_pct = 100;

interface Monthly {
  readonly id: string;
  readonly words: string;
  /** January to December. */
  readonly values: readonly number[];
  readonly style: Style;
}

const seriesOn = (
  monthly: readonly Monthly[],
  axis: Axis,
  months: BandAxis,
  wet: readonly number[],
): Series[] =>
  monthly.map(({ id, words, values, style }) => ({
    id,
    words,
    style,
    places: months.items.map(({ month, at }) => point(at, axis.at(values[month] ?? Number.NaN))),
    ...(id === 'deck' ? { filled: months.items.map(({ month }) => wet.includes(month)) } : {}),
  }));

/** Months in which the deck is colder than the dew point, as places of January to December. */
export const wetMonths = ({ plane, indoor }: DeckMonths): number[] =>
  winterMiddle.filter(
    (month) => (plane.temperature_C[month] ?? Infinity) < (indoor.dewPoint_C[month] ?? -Infinity),
  );

/** A wash behind the months in which the deck is colder than the dew point. */
const washes = (wet: readonly number[], panel: Panel, months: BandAxis): Shape[] =>
  months.items
    .filter(({ month }) => wet.includes(month))
    .map(({ at }) =>
      polygon(
        rectangle(at - months.step_mm / 2, panel.top, at + months.step_mm / 2, panel.bottom),
        null,
        'highlightWash',
      ),
    );

function sentenceOf(data: DeckMonths, wet: readonly number[], system: System): string {
  const margin = (month: number): number =>
    (data.plane.temperature_C[month] ?? 0) - (data.indoor.dewPoint_C[month] ?? 0);
  const nearest = least(winterMiddle, margin) ?? 0;
  const deck = show('temperature', data.plane.temperature_C[nearest] ?? 0, system);
  const dew = show('temperature', data.indoor.dewPoint_C[nearest] ?? 0, system);
  const bears = show('humidity', data.plane.maximumIndoor_pct[nearest] ?? 0, system);
  const closest = `${wet.length === 0 ? 'Nearest' : 'Worst'} in ${monthNames[nearest] ?? ''}: deck ${deck}, dew point ${dew}; indoor air of up to ${bears} would do no harm there.`;
  return wet.length === 0
    ? `The deck stays warmer than the dew point of the indoor air all year. ${closest}`
    : `In ${listed(wet.map((month) => monthNames[month] ?? ''))} the deck is colder than the dew point of the indoor air: air that leaks to it leaves water there. ${closest}`;
}

function tableOf(data: DeckMonths, system: System): PlotTable {
  const { plane, indoor, outdoor_C } = data;
  return {
    caption: 'Deck, dew point and tolerable humidity by month',
    columns: [
      wordColumn('month', 'Month'),
      numberColumn('outdoor', 'Outdoor air', 'temperature', system),
      numberColumn('deck', 'Underside of the deck', 'temperature', system),
      numberColumn('dew-point', 'Indoor dew point', 'temperature', system),
      numberColumn('indoor', 'Indoor humidity', 'humidity', system),
      numberColumn('maximum', 'Highest tolerable', 'humidity', system),
    ],
    rows: winterMiddle.map((month) => [
      wordCell(monthNames[month] ?? ''),
      numberCell('temperature', outdoor_C[month], system),
      numberCell('temperature', plane.temperature_C[month], system),
      numberCell('temperature', indoor.dewPoint_C[month], system),
      numberCell('humidity', indoor.relativeHumidity_pct[month], system),
      numberCell('humidity', plane.maximumIndoor_pct[month], system),
    ]),
  };
}

const TITLE = 'Deck temperature and dew point, month by month';

/**
 * Two panels over the year: deck, dew point and outdoor air; below them the humidity assumed and the highest
 * humidity at which nothing would condense on the deck.
 */
export function deckMonthsPlot(data: DeckMonths, options: PlotOptions): Plot {
  const { system } = options;
  const layout = layoutOf(options);
  const { plane, indoor, outdoor_C } = data;
  const temperatures: Monthly[] = [
    { id: 'deck', words: 'Underside of the deck', values: plane.temperature_C, style: styleOf(0) },
    { id: 'dew-point', words: 'Dew point of the indoor air', values: indoor.dewPoint_C, style: styleOf(1) },
    { id: 'outdoor', words: 'Outdoor air', values: outdoor_C, style: styleOf(2) },
  ];
  const humidities: Monthly[] = [
    {
      id: 'maximum',
      words: 'Highest tolerable indoor humidity',
      values: plane.maximumIndoor_pct,
      style: styleOf(0),
    },
    {
      id: 'indoor',
      words: 'Indoor humidity assumed',
      values: indoor.relativeHumidity_pct,
      style: styleOf(1),
    },
  ];
  const title = titleAt(TITLE, layout);
  const upper = panelAt(
    layout,
    title.bottom + headHeight_mm('Temperature', layout),
    Math.max(layout.panel_mm, labelsHeight_mm(namesOf(temperatures), layout)),
  );
  const lower = panelAt(
    layout,
    upper.bottom + BETWEEN_mm + headHeight_mm('Relative humidity indoors, %', layout),
    Math.max(layout.panel_mm * 0.75, labelsHeight_mm(namesOf(humidities), layout)),
  );
  const months = monthBands(upper.left, upper.right, options.size);
  const celsius = valueAxis({
    title: 'Temperature',
    kind: 'temperature',
    system,
    values: temperatures.flatMap(({ values }) => values),
    from: upper.bottom,
    to: upper.top,
    ticks: TICKS,
  });
  const percent = valueAxis({
    title: 'Relative humidity indoors',
    kind: 'humidity',
    system,
    values: [0, FULL_pct, ...humidities.flatMap(({ values }) => values)],
    from: lower.bottom,
    to: lower.top,
    ticks: TICKS,
  });
  const wet = wetMonths(data);
  const above = seriesOn(temperatures, celsius, months, wet);
  const below = seriesOn(humidities, percent, months, []);
  const sentence = sentenceOf(data, wet, system);
  const shapes: Shape[] = [
    ...washes(wet, upper, months),
    ...washes(wet, lower, months),
    ...title.shapes,
    ...upAxis(upper, celsius, layout),
    baseLine(upper),
    ...seriesShapes(above),
    ...endLabelShapes(seriesLabels(above), upper, layout),
    ...upAxis(lower, percent, layout),
    ...monthAxis(lower, months, layout),
    ...seriesShapes(below),
    ...endLabelShapes(seriesLabels(below), lower, layout),
  ];
  const height_mm = lower.bottom + footHeight_mm(layout) + layout.margin_mm;
  return {
    name: 'deck-months',
    title: TITLE,
    picture: pictureOf(TITLE, sentence, layout, height_mm, shapes, options),
    sentence,
    table: tableOf(data, system),
  };
}

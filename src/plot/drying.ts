/** How water put into one place leaves it, and what still sits elsewhere in the roof by then. */
import { monthNames } from '../catalog/months.ts';
import { range } from 'd3-array';
import { point } from '../drawing/geometry.ts';
import type { DryingPlace } from '../evaluation/heatMoisture.ts';
import { show, type System } from '../measures.ts';
import { stepAxis, valueAxis, type Axis } from './axis.ts';
import { endLabelShapes, labelsHeight_mm } from './endLabels.ts';
import {
  acrossAxis,
  baseLine,
  BETWEEN_mm,
  footHeight_mm,
  headHeight_mm,
  layoutOf,
  panelAt,
  pictureOf,
  TICKS,
  titleAt,
  upAxis,
} from './layout.ts';
import { styleOf } from './marks.ts';
import {
  capital,
  listed,
  numberCell,
  numberColumn,
  wordCell,
  wordColumn,
  type Plot,
  type PlotName,
  type PlotOptions,
  type PlotTable,
} from './plot.ts';
import { namesOf, seriesLabels, seriesShapes, type Series } from './series.ts';

export interface DryingLine {
  readonly id: string;
  /** What tells this line from the others: the wetted place, or the kind of ventilation. */
  readonly what: string;
  readonly drying: DryingPlace;
  /** Where most of what is left sits, in words. */
  readonly leftWhere: string | null;
}

export interface DryingCurves {
  readonly name: Extract<PlotName, 'drying' | 'drying-compared'>;
  readonly title: string;
  readonly lines: readonly DryingLine[];
}

const YEAR_months = 12;
/** Longest reach of the axis while anything on it dries sooner. */
const LONG_months = 36;
/** A point on the line and a row of the table: each month of the first year, then each quarter. */
const QUARTER_months = 3;

const endOf = ({ drying }: DryingLine): number => drying.monthsToDry ?? drying.limit_months;

/** Months that the axis shows: whole years, until all that dries within three years has dried. */
export function reach_months(lines: readonly DryingLine[]): number {
  const longest = Math.max(YEAR_months, ...lines.map(endOf));
  const shown = lines.some(({ drying }) => drying.monthsToDry === null)
    ? Math.max(LONG_months, ...lines.map(({ drying }) => drying.monthsToDry ?? 0))
    : longest;
  return Math.ceil(Math.min(shown, longest) / YEAR_months) * YEAR_months;
}

/** Months that have a point and a row. */
export const shownMonths = (reach: number): number[] =>
  range(0, reach + 1).filter((month) => month <= YEAR_months || month % QUARTER_months === 0);

/** [kg/m²] What is left after some months; 0 at the start elsewhere, and where it dried after it had dried. */
const after = (values: readonly number[], first: number, month: number): number | null =>
  month === 0 ? first : (values[month - 1] ?? null);

/** [kg/m²] What sits elsewhere in the end. */
const moved = ({ drying }: DryingLine): number => drying.elsewhere_kg_m2.at(-1) ?? 0;
/** [-] Less than this share of the water, and the second panel would be an empty frame (our judgement). */
const LEAST_MOVED = 0.02;
const hasMoved = (lines: readonly DryingLine[]): boolean =>
  lines.some(({ drying }) =>
    drying.elsewhere_kg_m2.some((value) => value > LEAST_MOVED * drying.initial_kg_m2),
  );

interface Curve {
  readonly title: string;
  readonly words: (line: DryingLine) => string;
  readonly value: (line: DryingLine, month: number) => number | null;
  readonly dash: 'own' | 'dotted';
}

function curves(system: System): { wet: Curve; elsewhere: Curve } {
  const water = (value: number): string => show('waterPerArea', value, system);
  return {
    wet: {
      title: 'Water left where it was put',
      words: ({ what, drying }) => {
        const last = drying.remaining_kg_m2.at(-1) ?? drying.initial_kg_m2;
        return drying.monthsToDry === null
          ? `${capital(what)}: ${water(last)} left after ${show('months', drying.limit_months, system)}`
          : `${capital(what)}: dry in ${show('months', drying.monthsToDry, system)}`;
      },
      value: ({ drying }, month) => after(drying.remaining_kg_m2, drying.initial_kg_m2, month),
      dash: 'own',
    },
    elsewhere: {
      title: 'Water elsewhere in the roof',
      words: (line) => `${capital(line.what)}: ${water(moved(line))}`,
      value: ({ drying }, month) => after(drying.elsewhere_kg_m2, 0, month),
      dash: 'dotted',
    },
  };
}

function seriesOn(
  lines: readonly DryingLine[],
  curve: Curve,
  along: Axis,
  up: Axis,
  months: readonly number[],
  shown: ReadonlySet<number>,
): Series[] {
  return lines.map((line, i) => ({
    id: line.id,
    words: curve.words(line),
    style: curve.dash === 'own' ? styleOf(i) : { ...styleOf(i), dash: curve.dash },
    places: months.map((month) => {
      const value = month > endOf(line) ? null : curve.value(line, month);
      return value === null ? null : point(along.at(month), up.at(value));
    }),
    points: months.map((month) => month > 0 && (shown.has(month) || month === endOf(line))),
    filled: months.map((month) => curve.dash === 'own' && month === line.drying.monthsToDry),
  }));
}

function tableOf(data: DryingCurves, shown: readonly number[], system: System): PlotTable {
  const ends = data.lines.map(endOf);
  const last = Math.max(0, ...ends);
  const months = [...new Set([...shown, ...ends])].filter((month) => month <= last).sort((a, b) => a - b);
  const { wet, elsewhere } = curves(system);
  const isDouble = hasMoved(data.lines);
  return {
    caption: data.title,
    columns: [
      wordColumn('month', 'Months'),
      ...data.lines.flatMap(({ id, what }) => [
        numberColumn(`${id}-left`, capital(what), 'waterPerArea', system),
        ...(isDouble ? [numberColumn(`${id}-elsewhere`, 'Elsewhere', 'waterPerArea', system)] : []),
      ]),
    ],
    rows: months.map((month) => [
      wordCell(String(month)),
      ...data.lines.flatMap((line) => {
        const isOver = month > endOf(line);
        return (isDouble ? [wet, elsewhere] : [wet]).map((curve) =>
          numberCell('waterPerArea', isOver ? null : curve.value(line, month), system),
        );
      }),
    ]),
  };
}

function sentenceOf(data: DryingCurves, system: System): string {
  const start = data.lines[0]?.drying;
  if (start === undefined) return 'Drying was not computed.';
  const dry = data.lines.filter(({ drying }) => drying.monthsToDry !== null);
  const wet = data.lines.filter(({ drying }) => drying.monthsToDry === null);
  const put = `${show('waterPerArea', start.initial_kg_m2, system)} of water put in at the start of ${monthNames[start.startMonth - 1] ?? ''}`;
  const dries = dry.map(
    ({ what, drying }) => `${what} in ${show('months', drying.monthsToDry ?? 0, system)}`,
  );
  const stays = wet.map(({ what }) => what);
  return [
    dries.length > 0 ? `${capital(put)} dries out: ${listed(dries)}.` : '',
    stays.length > 0
      ? `${dries.length > 0 ? 'It is not gone' : `${capital(put)} is not gone`} within ${show('months', start.limit_months, system)}: ${listed(stays)}.`
      : '',
    hasMoved(data.lines)
      ? data.lines
          .filter((line) => line.leftWhere !== null && moved(line) > LEAST_MOVED * line.drying.initial_kg_m2)
          .map(
            (line) =>
              `From ${line.what}, ${show('waterPerArea', moved(line), system)} then sits elsewhere, most of it ${line.leftWhere ?? ''}.`,
          )
          .join(' ')
      : 'Next to nothing of it moves elsewhere in the roof meanwhile.',
  ]
    .filter((words) => words !== '')
    .join(' ');
}

/** Two panels with one scale: what is left in the wetted place, and what has moved elsewhere in the roof. */
export function dryingPlot(data: DryingCurves, options: PlotOptions): Plot {
  const { system } = options;
  const layout = layoutOf(options);
  const { lines } = data;
  const both = curves(system);
  const title = titleAt(data.title, layout);
  const names = (curve: Curve) =>
    namesOf(lines.map((line, i) => ({ id: line.id, words: curve.words(line), style: styleOf(i) })));
  const headOver = (curve: Curve): number => headHeight_mm(`${curve.title}, kg/m²`, layout);
  const height_mm = (curve: Curve): number =>
    Math.max(layout.panel_mm * 0.85, labelsHeight_mm(names(curve), layout));
  const upper = panelAt(layout, title.bottom + headOver(both.wet), height_mm(both.wet));
  const isDouble = hasMoved(lines);
  const lower = isDouble
    ? panelAt(layout, upper.bottom + BETWEEN_mm + headOver(both.elsewhere), height_mm(both.elsewhere))
    : upper;
  const reach = reach_months(lines);
  const start = lines[0]?.drying.startMonth ?? 1;
  const along = stepAxis({
    title: `Months from the start of ${monthNames[start - 1] ?? ''}`,
    reach,
    step: reach <= YEAR_months ? (options.size === 'narrow' ? 3 : 1) : reach <= LONG_months ? 6 : 12,
    from: upper.left,
    to: upper.right,
  });
  const values = [
    0,
    ...lines.flatMap(({ drying }) => [
      drying.initial_kg_m2,
      ...drying.remaining_kg_m2.slice(0, reach),
      ...drying.elsewhere_kg_m2.slice(0, reach),
    ]),
  ];
  const upOn = (panel: typeof upper, curve: Curve): Axis =>
    valueAxis({
      title: curve.title,
      kind: 'waterPerArea',
      system,
      values,
      from: panel.bottom,
      to: panel.top,
      ticks: TICKS,
    });
  const up = upOn(upper, both.wet);
  const low = upOn(lower, both.elsewhere);
  const months = range(0, reach + 1);
  const rows = shownMonths(reach);
  const shown = new Set(rows);
  const left = seriesOn(lines, both.wet, along, up, months, shown);
  const elsewhere = seriesOn(lines, both.elsewhere, along, low, months, shown);
  const sentence = sentenceOf(data, system);
  return {
    name: data.name,
    title: data.title,
    picture: pictureOf(
      data.title,
      sentence,
      layout,
      lower.bottom + footHeight_mm(layout) + layout.margin_mm,
      [
        ...title.shapes,
        ...upAxis(upper, up, layout),
        ...(isDouble
          ? [
              baseLine(upper),
              ...upAxis(lower, low, layout),
              ...acrossAxis(lower, along, layout),
              ...seriesShapes(elsewhere),
              ...endLabelShapes(seriesLabels(elsewhere), lower, layout),
            ]
          : acrossAxis(upper, along, layout)),
        ...seriesShapes(left),
        ...endLabelShapes(seriesLabels(left), upper, layout),
      ],
      options,
    ),
    sentence,
    table: tableOf(data, rows, system),
  };
}

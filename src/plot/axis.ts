/** Axes: from a quantity to millimeters of paper, with ticks at round numbers of the unit shown. */
import { extent, range, tickStep } from 'd3-array';
import { scaleBand, scaleLinear } from 'd3-scale';
import { show, unitOf, type MeasureKind, type System } from '../measures.ts';
import { measures } from '../measures/scales.ts';
import { monthLetter, shortMonth, winterMiddle, type PlotSize } from './plot.ts';

export interface Axis {
  /** With its unit: `Temperature, °F`. */
  readonly title: string;
  /** In the unit shown. */
  readonly ticks: readonly number[];
  readonly label: (tick: number) => string;
  /** [mm] Place of a tick. */
  readonly along: (shown: number) => number;
  /** [mm] Place of a value inside, SI. */
  readonly at: (value: number) => number;
  /** Least and greatest value of the axis, SI. */
  readonly reach: readonly [number, number];
}

export interface AxisWish {
  readonly title: string;
  readonly kind: MeasureKind;
  readonly system: System;
  /** What must be on the axis, SI. */
  readonly values: readonly number[];
  /** [mm] Where the least and the greatest value stand. */
  readonly from: number;
  readonly to: number;
  readonly ticks: number;
  /** Ends at the values themselves instead of at round numbers. */
  readonly isExact?: boolean;
}

/** Half the height of an axis on which all values are the same, in the unit shown. */
const ALONE = 1;
/** Least step between ticks, in the unit shown: what differs by less is rounding, and its figures would not fit. */
const LEAST_STEP = 1e-4;
/** Difference that counts as none, as a share of the greatest value. */
const FLAT_SHARE = 1e-5;

/** An axis of numbers; values that are not finite are left out of its reach. */
export function valueAxis(wish: AxisWish): Axis {
  const { kind, system, from, to } = wish;
  const scale = measures[kind][system];
  const [low = 0, high = 0] = extent(wish.values.filter(Number.isFinite).map(scale.shown));
  const isFlat = high - low <= FLAT_SHARE * Math.max(Math.abs(low), Math.abs(high));
  const reach = isFlat
    ? [low - (low === 0 ? 0 : ALONE), high + ALONE]
    : [low, Math.max(high, low + LEAST_STEP * wish.ticks)];
  const plain = scaleLinear().domain(reach).range([from, to]);
  const place = wish.isExact === true ? plain : plain.nice(wish.ticks);
  const [least = 0, most = 1] = place.domain();
  const step = tickStep(least, most, wish.ticks);
  const digits = Math.max(0, -Math.floor(Math.log10(Math.abs(step) * (1 + 1e-9))));
  const unit = unitOf(kind, system);
  return {
    title: unit === '' ? wish.title : `${wish.title}, ${unit}`,
    ticks: place.ticks(wish.ticks),
    label: (tick) => show(kind, scale.inside(tick), system, { digits, fixed: true, unit: false }),
    along: (shown) => place(shown),
    at: (value) => place(scale.shown(value)),
    reach: [scale.inside(least), scale.inside(most)],
  };
}

export interface StepWish {
  readonly title: string;
  readonly reach: number;
  readonly step: number;
  readonly from: number;
  readonly to: number;
}

/** An axis of whole numbers from 0, with a tick at each step. */
export function stepAxis({ title, reach, step, from, to }: StepWish): Axis {
  const place = scaleLinear().domain([0, reach]).range([from, to]);
  return {
    title,
    ticks: range(0, reach + step / 2, step),
    label: (tick) => String(tick),
    along: (shown) => place(shown),
    at: (value) => place(value),
    reach: [0, reach],
  };
}

export interface BandAxis {
  readonly title: string;
  /** In the order of the paper; `at` is the middle. */
  readonly items: readonly { readonly month: number; readonly at: number; readonly words: string }[];
  /** [mm] Width of a band, and of the bar in it. */
  readonly step_mm: number;
  readonly bar_mm: number;
}

/** Share of a band that lies between bars. */
const BAR_GAP = 0.35;

/** Twelve months from July to June. */
export function monthBands(from: number, to: number, size: PlotSize): BandAxis {
  const bands = scaleBand<number>()
    .domain([...winterMiddle])
    .range([from, to])
    .paddingInner(BAR_GAP)
    .paddingOuter(BAR_GAP / 2);
  return {
    title: 'Month, the winter in the middle',
    step_mm: bands.step(),
    bar_mm: bands.bandwidth(),
    items: winterMiddle.map((month) => ({
      month,
      at: (bands(month) ?? from) + bands.bandwidth() / 2,
      words: size === 'narrow' ? monthLetter(month) : shortMonth(month),
    })),
  };
}

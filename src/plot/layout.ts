/** Paper of a plot: sizes, title, and panels with their axes. Millimeters, x to the right, y down. */
import type { Picture } from '../drawing/picture.ts';
import { line, pen, text, type Shape } from '../drawing/shapes.ts';
import { point } from '../drawing/geometry.ts';
import { wrapText } from '../drawing/text-metrics.ts';
import type { Axis, BandAxis } from './axis.ts';
import type { PlotOptions, PlotSize } from './plot.ts';

export interface Layout {
  readonly size: PlotSize;
  readonly width_mm: number;
  readonly margin_mm: number;
  /** Text of axes and labels. */
  readonly size_mm: number;
  readonly titleSize_mm: number;
  /** Room for the figures of the vertical axis. */
  readonly axis_mm: number;
  /** Room right of a panel for the names at the ends of lines. */
  readonly labels_mm: number;
  /** Usual height of a panel. */
  readonly panel_mm: number;
}

/** The wide plot fills the text width of Letter and A4; at that size its smallest text is 8 pt. */
export const layouts: Readonly<Record<PlotSize, Layout>> = {
  wide: {
    size: 'wide',
    width_mm: 171,
    margin_mm: 3,
    size_mm: 2.8,
    titleSize_mm: 3.5,
    axis_mm: 11,
    labels_mm: 41,
    panel_mm: 44,
  },
  narrow: {
    size: 'narrow',
    width_mm: 86,
    margin_mm: 2,
    size_mm: 2.9,
    titleSize_mm: 3.3,
    axis_mm: 10,
    labels_mm: 22,
    panel_mm: 44,
  },
};

export const layoutOf = ({ size }: PlotOptions): Layout => layouts[size];

/** [-] Line spacing over the font size. */
export const LEADING = 1.2;
/** Share of the font size from a line's top to its baseline. */
export const BASELINE = 0.82;

export interface Panel {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A panel below `top`, between the figures of its axis and the names of its lines. */
export const panelAt = (layout: Layout, top: number, height_mm: number): Panel => ({
  left: layout.margin_mm + layout.axis_mm,
  right: layout.width_mm - layout.margin_mm - layout.labels_mm,
  top,
  bottom: top + height_mm,
});

export interface Placed {
  readonly shapes: readonly Shape[];
  readonly bottom: number;
}

/** Lines of words from a top edge, broken to a width. */
export function wordsAt(
  words: string,
  left: number,
  top: number,
  width_mm: number,
  size_mm: number,
  weight: 'regular' | 'bold' = 'regular',
): Placed {
  const lines = wrapText(words, width_mm, size_mm, weight);
  return {
    shapes: lines.map((words, i) =>
      text(point(left, top + (i * LEADING + BASELINE) * size_mm), words, { size_mm, weight }),
    ),
    bottom: top + lines.length * LEADING * size_mm,
  };
}

/** [mm] Between the plot's name and the first axis title. */
const BELOW_TITLE_mm = 1.5;

/** The plot's own name, so that a picture that is saved alone still says what it is. */
export function titleAt(words: string, layout: Layout): Placed {
  const { margin_mm, width_mm, titleSize_mm } = layout;
  const placed = wordsAt(words, margin_mm, margin_mm, width_mm - 2 * margin_mm, titleSize_mm, 'bold');
  return { shapes: placed.shapes, bottom: placed.bottom + BELOW_TITLE_mm };
}

const gridPen = pen(0.18, 'hatch', 'dotted');
export const basePen = pen(0.25);
/** [mm] Between figures and their axis, and between an axis title and the figure below it. */
const FIGURE_GAP_mm = 1.2;
const TITLE_GAP_mm = 1.6;

/** [mm] What stands above a panel: the title of its axis. */
export const headHeight_mm = (words: string, layout: Layout): number =>
  wrapText(words, layout.width_mm - 2 * layout.margin_mm, layout.size_mm).length * LEADING * layout.size_mm +
  TITLE_GAP_mm;

/** Title, grid and figures of a vertical axis. */
export function upAxis(panel: Panel, axis: Axis, layout: Layout): Shape[] {
  const { size_mm } = layout;
  const head = wordsAt(
    axis.title,
    layout.margin_mm,
    panel.top - headHeight_mm(axis.title, layout),
    layout.width_mm - 2 * layout.margin_mm,
    size_mm,
  );
  return [
    ...head.shapes,
    ...axis.ticks
      .filter((tick) => Math.abs(axis.along(tick) - panel.bottom) > 0.1)
      .map((tick) =>
        line(point(panel.left, axis.along(tick)), point(panel.right, axis.along(tick)), gridPen),
      ),
    ...axis.ticks.map((tick) =>
      text(point(panel.left - FIGURE_GAP_mm, axis.along(tick) + size_mm / 4), axis.label(tick), {
        size_mm,
        anchor: 'end',
        ink: 'softText',
      }),
    ),
    line(point(panel.left, panel.top), point(panel.left, panel.bottom), basePen),
  ];
}

/** [mm] What stands below a panel: figures, then the axis title. */
export const footHeight_mm = (layout: Layout): number => 2 * LEADING * layout.size_mm + 2 * FIGURE_GAP_mm;

interface Foot {
  readonly title: string;
  readonly marks: readonly { readonly at: number; readonly words: string }[];
}

function foot(panel: Panel, layout: Layout, { title, marks }: Foot): Shape[] {
  const { size_mm } = layout;
  const tick_mm = FIGURE_GAP_mm;
  const first = panel.bottom + tick_mm + BASELINE * size_mm;
  return [
    line(point(panel.left, panel.bottom), point(panel.right, panel.bottom), basePen),
    ...marks.map(({ at }) => line(point(at, panel.bottom), point(at, panel.bottom + tick_mm / 2), basePen)),
    ...marks.map(({ at, words }) =>
      text(point(at, first), words, { size_mm, anchor: 'middle', ink: 'softText' }),
    ),
    text(point((panel.left + panel.right) / 2, first + LEADING * size_mm + 0.4), title, {
      size_mm,
      anchor: 'middle',
    }),
  ];
}

/** Ticks, figures and title of a horizontal axis of numbers. */
export const acrossAxis = (panel: Panel, axis: Axis, layout: Layout): Shape[] =>
  foot(panel, layout, {
    title: axis.title,
    marks: axis.ticks.map((tick) => ({ at: axis.along(tick), words: axis.label(tick) })),
  });

/** Names and title of a horizontal axis of months. */
export const monthAxis = (panel: Panel, months: BandAxis, layout: Layout): Shape[] =>
  foot(panel, layout, {
    title: months.title,
    marks: months.items.map(({ at, words }) => ({ at, words })),
  });

/** The picture, once everything has its place. */
export const pictureOf = (
  title: string,
  sentence: string,
  layout: Layout,
  height_mm: number,
  shapes: readonly Shape[],
  options: PlotOptions,
): Picture => ({
  width_mm: layout.width_mm,
  height_mm,
  title,
  theme: options.theme ?? 'light',
  shapes,
  description: [sentence],
});

/** The base line of a panel whose months or depths are named further down. */
export const baseLine = (panel: Panel): Shape =>
  line(point(panel.left, panel.bottom), point(panel.right, panel.bottom), basePen);

/** [mm] Between two panels. */
export const BETWEEN_mm = 5;
/** Ticks wanted on a vertical axis. */
export const TICKS = 5;

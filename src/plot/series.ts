/** Series of a panel: lines with their points, and the names at their ends. */
import { point, type Point } from '../drawing/geometry.ts';
import type { Shape } from '../drawing/shapes.ts';
import type { EndLabel } from './endLabels.ts';
import { linesThrough, mark, seriesPen, type Style } from './marks.ts';

export interface Series {
  readonly id: string;
  readonly words: string;
  readonly style: Style;
  /** Places on paper, from left to right; null where there is no value. */
  readonly places: readonly (Point | null)[];
  /** Which places get a point: all when absent. */
  readonly points?: readonly boolean[];
  /** Which points stand out. */
  readonly filled?: readonly boolean[];
}

const nowhere = point(0, 0);

export const seriesShapes = (series: readonly Series[]): Shape[] => [
  ...series.flatMap(({ places, style }) => linesThrough(places, seriesPen(style))),
  ...series.flatMap(({ places, style, points, filled }) =>
    places.flatMap((at, i) =>
      at === null || points?.[i] === false
        ? []
        : [mark(style.form, at, style.ink, filled?.[i] === true ? 'solid' : 'paper')],
    ),
  ),
];

export const seriesLabels = (series: readonly Series[]): EndLabel[] =>
  series.map(({ id, words, style, places }) => ({
    id,
    words,
    style,
    from: places.findLast((at) => at !== null) ?? nowhere,
  }));

/** The names alone, before the height of their panel is known. */
export const namesOf = (series: readonly Pick<Series, 'id' | 'words' | 'style'>[]): EndLabel[] =>
  series.map(({ id, words, style }) => ({ id, words, style, from: nowhere }));

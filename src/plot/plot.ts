/**
 * What a plot is: a picture and a table that hold the same facts, and one sentence that says what to see.
 * A plot shows numbers of the evaluation; it computes none.
 */
import { monthNames } from '../catalog/months.ts';
import type { Picture } from '../drawing/picture.ts';
import type { Theme } from '../drawing/palette.ts';
import { show, unitOf, type MeasureKind, type System } from '../measures.ts';

export const plotNames = [
  'heat-loss',
  'deck-months',
  'profile',
  'condensate',
  'air-leak',
  'drying',
  'drying-compared',
] as const;
export type PlotName = (typeof plotNames)[number];

/** Short names to choose a plot by. */
export const plotLabels: Readonly<Record<PlotName, string>> = {
  'heat-loss': 'Heat lost',
  'deck-months': 'Deck by month',
  profile: 'Through the section',
  condensate: 'Condensate',
  'air-leak': 'Air leaks',
  drying: 'Drying',
  'drying-compared': 'Drying compared',
};

/** Narrow is a plot of its own for a phone, not a smaller picture. */
export type PlotSize = 'wide' | 'narrow';

export interface PlotOptions {
  readonly system: System;
  readonly size: PlotSize;
  readonly theme?: Theme;
}

export interface PlotColumn {
  readonly id: string;
  readonly title: string;
  /** Empty for words and pure numbers. */
  readonly unit: string;
  readonly align: 'left' | 'right';
}

export interface PlotCell {
  /** Without the unit, which stands in the column's head. */
  readonly text: string;
  /** The value inside, SI, from which the text was written; null for words. */
  readonly value: number | null;
}

export interface PlotTable {
  readonly caption: string;
  readonly columns: readonly PlotColumn[];
  /** The first cell of each row is its heading. */
  readonly rows: readonly (readonly PlotCell[])[];
}

export interface Plot {
  readonly name: PlotName;
  readonly title: string;
  /** Null when there is nothing to draw; the sentence says so. */
  readonly picture: Picture | null;
  readonly sentence: string;
  readonly table: PlotTable;
}

/** A column of numbers of one kind, its unit in the head. */
export const numberColumn = (id: string, title: string, kind: MeasureKind, system: System): PlotColumn => ({
  id,
  title,
  unit: unitOf(kind, system),
  align: 'right',
});
export const wordColumn = (id: string, title: string): PlotColumn => ({
  id,
  title,
  unit: '',
  align: 'left',
});

export const wordCell = (text: string): PlotCell => ({ text, value: null });
/** A number written as everywhere, its trailing zeros kept so that columns align. */
export const numberCell = (
  kind: MeasureKind,
  value: number | null | undefined,
  system: System,
  digits?: number,
): PlotCell =>
  value === null || value === undefined
    ? { text: '–', value: null }
    : {
        text: show(kind, value, system, {
          unit: false,
          fixed: true,
          ...(digits === undefined ? {} : { digits }),
        }),
        value,
      };

/** `Deck, °F`: the head of a column with its unit. */
export const headOf = (column: PlotColumn): string =>
  column.unit === '' ? column.title : `${column.title}, ${column.unit}`;

/** Twelve months with the winter in the middle: July to June, as places of January to December. */
export const winterMiddle: readonly number[] = [6, 7, 8, 9, 10, 11, 0, 1, 2, 3, 4, 5];
/** Letters of a month's name on an axis with room, and on a narrow one. */
const SHORT_NAME = 3;
export const shortMonth = (month: number): string => (monthNames[month] ?? '').slice(0, SHORT_NAME);
export const monthLetter = (month: number): string => (monthNames[month] ?? '').slice(0, 1);

/** `deck, joint and underlayment`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
export const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

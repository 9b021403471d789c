/**
 * The report as a tree: what is said, in which order, with every figure already in words and units.
 * HTML, Markdown and PDF are renderings of this tree; nothing is computed in a rendering.
 */
import type { Picture } from '../drawing/picture.ts';
import type { Detail } from '../drawing/edge-model.ts';
import type { Drawing } from '../drawing/sheet.ts';
import type { System } from '../measures.ts';
import type { PlotName } from '../plot/plot.ts';

export type Role = 'builder' | 'designer' | 'trainer';

/** Where a figure comes from: a source id, the clause, and how it is known. */
export interface Citation {
  /** Id in the evaluation's `sources`; it becomes a link to the source list. */
  readonly source: string;
  readonly clause?: string;
  readonly known: string;
}

/** The reference as it is printed: the source's id, then the clause. */
export const citationText = (citation: Citation): string =>
  citation.clause === undefined ? citation.source : `${citation.source}, ${citation.clause}`;

/** A run of text with its marks; the text `\n` alone is a line break. */
export interface Run {
  readonly text: string;
  readonly strong?: true;
  readonly emphasis?: true;
  readonly code?: true;
  /** `#id` of a section or block of this document, or an http(s) address. */
  readonly href?: string;
  /** Id of a glossary term. */
  readonly term?: string;
  readonly citation?: Citation;
}
export type Inline = readonly Run[];

export interface Paragraph {
  readonly kind: 'paragraph';
  readonly text: Inline;
  readonly tone?: 'lead' | 'small';
}

export interface List {
  readonly kind: 'list';
  readonly ordered: boolean;
  readonly items: readonly Inline[];
}

/** Two short lists that are read together, side by side where there is room. */
export interface Sides {
  readonly kind: 'sides';
  readonly sides: readonly { readonly title: string; readonly items: readonly Inline[] }[];
}

/** Pass or fail is said in a word and a shape; color only repeats it. */
export type Verdict = 'meets' | 'misses' | 'open';

export interface KeyFigure {
  readonly id: string;
  readonly label: string;
  /** With its unit. */
  readonly value: string;
  /** Such as `at least R-25`. */
  readonly limit: string;
  /** Such as `R-5 more than needed`. */
  readonly margin: string;
  readonly verdict: Verdict;
  readonly source: Citation;
}

export interface KeyFigures {
  readonly kind: 'keyFigures';
  readonly items: readonly KeyFigure[];
}

export interface Column {
  readonly id: string;
  readonly title: string;
  readonly align: 'left' | 'right';
  /** Share of the table's width, relative to the other columns. */
  readonly width: number;
}

export interface Cell {
  readonly text: Inline;
  readonly verdict?: Verdict;
}

export interface Table {
  readonly kind: 'table';
  readonly id: string;
  readonly caption: string;
  readonly columns: readonly Column[];
  /** The first cell of each row is the row's heading. */
  readonly rows: readonly (readonly Cell[])[];
  /** Row indexes that are sums or headings, printed strong. */
  readonly strongRows?: readonly number[];
  readonly note?: string;
  /** Printed smaller, where a whole sheet must fit on one page. */
  readonly dense?: true;
}

export interface DrawingBlock {
  readonly kind: 'drawing';
  readonly id: string;
  /** Which drawing it is, so that an interactive page may put its own view in place. */
  readonly drawing: Detail;
  readonly candidate: string;
  readonly shapes: Drawing;
  readonly caption: string;
  /** Greatest height on a printed page that it shares with text. */
  readonly height_pt?: number;
}

/** A plot with the table of its numbers; the same facts twice, for the eye and for reading. */
export interface PlotBlock {
  readonly kind: 'plot';
  readonly id: string;
  /** Which plot it is, so that an interactive page may draw it at its own width. */
  readonly plot: PlotName;
  readonly candidate: string;
  readonly picture: Picture;
  /** The same plot for a narrow page. */
  readonly narrow: Picture;
  readonly caption: string;
  readonly table: Table;
}

export type CalloutLevel = 'stop' | 'strong' | 'engineer' | 'caution' | 'note';

export interface Callout {
  readonly kind: 'callout';
  readonly id: string;
  readonly level: CalloutLevel;
  readonly title: string;
  readonly body: readonly (Paragraph | List)[];
  /** Who settles it, in words. */
  readonly deferTo?: string;
}

export interface HoldPoint {
  readonly id: string;
  readonly title: string;
  readonly pass: string;
  readonly who: string;
  readonly evidence: string;
  readonly source: Citation;
}

export interface Step {
  readonly number: number;
  readonly title: string;
  readonly text: string;
  readonly who: string;
  readonly weather?: string;
  /** What nobody sees or reaches again once the next step has begun. */
  readonly covers?: string;
  /** Nothing covers this step before the hold point is signed. */
  readonly hold?: HoldPoint;
}

export interface Steps {
  readonly kind: 'steps';
  readonly items: readonly Step[];
}

export interface SourceEntry {
  readonly id: string;
  readonly text: string;
  readonly known: string;
  /** Clauses and tables that this document cites from it. */
  readonly clauses: readonly string[];
}

export interface SourceList {
  readonly kind: 'sourceList';
  readonly items: readonly SourceEntry[];
}

export interface Card {
  readonly id: string;
  readonly title: string;
  /** Project facts that the person needs to answer. */
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly questions: readonly Inline[];
}

export interface Cards {
  readonly kind: 'cards';
  readonly items: readonly Card[];
}

export interface WorkedNumber {
  readonly id: string;
  readonly title: string;
  readonly formula: string;
  /** The formula in LaTeX, for a page that typesets it. */
  readonly formulaTex: string;
  readonly inputs: readonly { readonly symbol: string; readonly meaning: string; readonly value: string }[];
  readonly result: { readonly symbol: string; readonly meaning: string; readonly value: string };
  readonly limit?: { readonly meaning: string; readonly value: string; readonly meets: boolean };
  readonly source: Citation;
  readonly calculation?: string;
  readonly note?: string;
}

export interface Workings {
  readonly kind: 'workings';
  readonly items: readonly WorkedNumber[];
}

export type Block =
  | Paragraph
  | List
  | Sides
  | KeyFigures
  | Table
  | DrawingBlock
  | PlotBlock
  | Callout
  | Steps
  | SourceList
  | Cards
  | Workings;

export interface Section {
  readonly id: string;
  readonly title: string;
  /** 1 is a chapter; a level is never skipped going down. */
  readonly level: 1 | 2;
  readonly blocks: readonly Block[];
  /** Starts on a new page in print. */
  readonly newPage?: true;
}

export interface ReportDocument {
  readonly title: string;
  readonly subtitle: string;
  readonly language: 'en-US';
  readonly role: Role;
  readonly system: System;
  readonly revision?: string;
  /** ISO date of the project file or handed in by the shell; the core has no clock. */
  readonly date?: string;
  readonly author?: string;
  /** One line for header and footer. */
  readonly project: string;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly sections: readonly Section[];
}

/** Marks of a verdict that survive black-and-white print and a screen reader. */
export const verdictMarks: Readonly<Record<Verdict, { readonly word: string; readonly shape: string }>> = {
  meets: { word: 'meets', shape: '●' },
  misses: { word: 'misses', shape: '▲' },
  open: { word: 'open', shape: '◆' },
};

export const calloutMarks: Readonly<Record<CalloutLevel, { readonly word: string; readonly shape: string }>> =
  {
    stop: { word: 'Stop', shape: '■' },
    strong: { word: 'Strong caution', shape: '▲' },
    engineer: { word: 'For an engineer', shape: '◆' },
    caution: { word: 'Caution', shape: '●' },
    note: { word: 'Note', shape: '·' },
  };

/** A verdict as a run, for texts that say it in their own place. */
export const verdictRun = (verdict: Verdict): Run => ({
  text: `${verdictMarks[verdict].shape} ${verdictMarks[verdict].word}`,
});
export const lineBreak: Run = { text: '\n' };
export const plain = (text: string): Inline => [{ text }];
export const strong = (text: string): Run => ({ text, strong: true });
export const paragraph = (text: string | Inline, tone?: Paragraph['tone']): Paragraph => ({
  kind: 'paragraph',
  text: typeof text === 'string' ? plain(text) : text,
  ...(tone === undefined ? {} : { tone }),
});
export const cell = (text: string | Inline, verdict?: Verdict): Cell => ({
  text: typeof text === 'string' ? plain(text) : text,
  ...(verdict === undefined ? {} : { verdict }),
});
/** The letters of a run list, marks dropped. */
export const plainText = (inline: Inline): string => inline.map((run) => run.text).join('');

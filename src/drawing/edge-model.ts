/**
 * The shapes of a detail of the roof: real parts in meters. The eave and the ridge are cut square to the
 * eave, the roof rising to the right; the rake is cut square to the slope, the roof level in it.
 */
import type { Point, RoofAxes } from './geometry.ts';
import type { HatchName } from './hatch.ts';

/** The places of a roof that are drawn, in the order of the building. */
export const details = ['eave', 'rake', 'ridge'] as const;
export type Detail = (typeof details)[number];

export const detailNames: Readonly<Record<Detail, string>> = { eave: 'Eave', rake: 'Rake', ridge: 'Ridge' };

export interface EdgePart {
  /** Unique in the edge. */
  readonly id: string;
  /** Layer of the candidate that the part belongs to; null for parts that are no layer. */
  readonly layerId: string | null;
  readonly name: string;
  readonly material: HatchName;
  /** Cut by the section plane, or seen beyond it. */
  readonly view: 'cut' | 'beyond';
  /** Corners, counterclockwise with y up. */
  readonly polygon: readonly Point[];
  /** Direction of its length, y up. */
  readonly grain_rad: number;
}

export const lineKinds = [
  'air-barrier',
  'membrane',
  'wall-barrier',
  'underlayment',
  'ice-barrier',
  'retarder',
  'drip-edge',
  'screen',
  'board-joint',
  'screw',
  'panel-outline',
  'sealant',
  'hidden',
  'lap',
  'gutter',
  'removed',
] as const;
export type LineKind = (typeof lineKinds)[number];

export interface EdgeLine {
  readonly id: string;
  readonly kind: LineKind;
  readonly layerId: string | null;
  readonly name: string;
  readonly points: readonly Point[];
}

/** A place where something passes through the air barrier. */
export interface Piercing {
  readonly at: Point;
  readonly what: string;
  /** How many there are along all eaves; null where the evaluation counts them with others. */
  readonly count: number | null;
}

/** A numbered stop of a walk along a path. */
export interface Joint {
  readonly number: number;
  readonly at: Point;
  readonly name: string;
  readonly how: string;
}

export interface Walk {
  readonly path: 'air-barrier' | 'water' | 'drying';
  readonly points: readonly (readonly Point[])[];
  readonly joints: readonly Joint[];
}

export const measureIds = [
  'build-up',
  'fascia',
  'barge',
  'overhang',
  'gap',
  'ridge-rise',
  'slot',
  'ice-barrier',
  'back-span',
] as const;
export type MeasureId = (typeof measureIds)[number];

/**
 * How a dimension stands on the sheet: beside the edge, across the layers, plumb over the ridge, level
 * under the overhang, or in the list alone.
 */
export type MeasureWay = 'edge' | 'across' | 'plumb' | 'below' | 'listed';

/** A dimension: two points of the model and the value that stands on it. */
export interface Measure {
  readonly id: MeasureId;
  readonly way: MeasureWay;
  readonly from: Point;
  readonly to: Point;
  readonly value_m: number;
  readonly name: string;
  readonly limit_m: number | null;
  readonly margin_m: number | null;
  /** [m] How far up the slope a dimension across the layers may be moved, best first. */
  readonly slides_m?: readonly number[];
  /** [m] What stands above its end and must be passed before its figure. */
  readonly past_m?: number;
}

/** One layer above the framing as it lies between two planes n. */
export interface StackBand {
  readonly layerId: string;
  readonly low_m: number;
  readonly high_m: number;
}

/** Where a note may point to: a part or line with a place on it. */
export interface Anchor {
  readonly id: string;
  readonly layerId: string | null;
  readonly name: string;
  readonly detail: string;
  readonly at: Point;
  readonly side: 'stack' | 'edge-above' | 'edge-below' | 'wall' | 'room';
}

/** How much of a detail is shown. */
export interface EdgeView {
  /** [m] Level distance from the wall's inner face, or from the ridge, to the break across the roof. */
  readonly inside_m: number;
  /** [m] Height of wall shown below the lowest roof part. */
  readonly wall_m: number;
}

/** How much wider and higher a detail gets for each meter of its view. */
export type Growth = Readonly<Record<keyof EdgeView, { readonly across: number; readonly up: number }>>;

/** A strip in which a word such as "Inside" may stand: level place, from top to bottom, and to which side. */
export interface WordPlace {
  readonly words: string;
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
  readonly side: 'left' | 'right';
}

/** One place of the roof as geometry: what every sheet, list and file of it is made from. */
export interface DetailModel {
  readonly kind: Detail;
  /** Axes of the roof plane on which dimensions across the layers stand. */
  readonly axes: RoofAxes;
  readonly strategyName: string;
  readonly sectionNote: string;
  readonly parts: readonly EdgePart[];
  readonly lines: readonly EdgeLine[];
  /** The roof that stands today, for the view of before and after; empty for new work. */
  readonly before: readonly EdgeLine[];
  readonly stack: readonly StackBand[];
  readonly buildUp_m: number;
  readonly piercings: readonly Piercing[];
  readonly measures: readonly Measure[];
  readonly anchors: readonly Anchor[];
  /** Layers of the candidate that lie outside this view. */
  readonly outOfView: readonly string[];
  /** Long breaks: where the drawing ends and the building does not. */
  readonly breaks: readonly (readonly [Point, Point])[];
  readonly airWalk: Walk;
  readonly waterWalk: Walk;
  readonly dryingWalk: Walk;
  /** What becomes of the air barrier here, one sentence. */
  readonly airWords: string;
  /** Whether the dimension beside the edge stands plumb. */
  readonly isEdgePlumb: boolean;
  /** Where the notes on the left are parted when no dimension stands beside the edge. */
  readonly partAt: Point;
  /** [m] Lowest height shown. */
  readonly bottom_m: number;
  /** The covering's face from edge to break, for the sign of the slope; null where the roof lies level. */
  readonly roofLine: readonly [Point, Point] | null;
  readonly wordPlaces: readonly WordPlace[];
  readonly growth: Growth;
}

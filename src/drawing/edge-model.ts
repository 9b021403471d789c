/** The shapes of the edge model: real parts in meters, seen from the side, the roof rising to the right. */
import type { Point, RoofAxes } from './geometry.ts';
import type { HatchName } from './hatch.ts';

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
  /** How many there are along all eaves. */
  readonly count: number;
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

export const measureIds = ['build-up', 'fascia', 'overhang', 'gap', 'ice-barrier', 'back-span'] as const;
export type MeasureId = (typeof measureIds)[number];

/** A dimension: two points of the model and the value that stands on it. */
export interface Measure {
  readonly id: MeasureId;
  readonly from: Point;
  readonly to: Point;
  readonly value_m: number;
  readonly name: string;
  readonly limit_m: number | null;
  readonly margin_m: number | null;
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

export interface RoofEdgeModel {
  readonly kind: 'eave';
  readonly axes: RoofAxes;
  readonly strategyName: string;
  readonly sectionNote: string;
  readonly parts: readonly EdgePart[];
  readonly lines: readonly EdgeLine[];
  readonly stack: readonly StackBand[];
  readonly buildUp_m: number;
  readonly piercings: readonly Piercing[];
  readonly measures: readonly Measure[];
  readonly anchors: readonly Anchor[];
  /** Long breaks: where the drawing ends and the building does not. */
  readonly breaks: readonly (readonly [Point, Point])[];
  readonly outside: Point;
  readonly inside: Point;
}

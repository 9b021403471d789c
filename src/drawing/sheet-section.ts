/** The edge model put on paper: fills, hatches, outlines, lines, breaks. */
import { area, distance, point, type Point } from './geometry.ts';
import { breakLine } from './dimensions.ts';
import type { DetailModel, EdgeLine, EdgePart, LineKind, Walk } from './edge-model.ts';
import { hatch, type HatchName } from './hatch.ts';
import type { FillName } from './palette.ts';
import type { Body } from './sequence.ts';
import { circle, group, line, pen, polygon, polyline, text, type Pen, type Shape } from './shapes.ts';

/** From the building (meters, y up) to the sheet (millimeters, y down). */
export interface Placement {
  readonly per_m: number;
  /** Sheet position of the model's origin. */
  readonly origin: Point;
}

export const toPaper = (placement: Placement, p: Point): Point =>
  point(placement.origin.x + p.x * placement.per_m, placement.origin.y - p.y * placement.per_m);

/** From the sheet back to the building. */
export const fromPaper = (placement: Placement, p: Point): Point =>
  point((p.x - placement.origin.x) / placement.per_m, (placement.origin.y - p.y) / placement.per_m);

/** What is drawn of each body, and how. */
export interface Showing {
  readonly isShown: (body: Body) => boolean;
  readonly isLit: (body: Body) => boolean;
  /** Told apart from what stands today, for views of before and after. */
  readonly isAdded: (body: Body) => boolean;
}

export const fillOf: Readonly<Record<HatchName, FillName>> = {
  foam: 'foam',
  fibrous: 'fibrous',
  'wood-end': 'wood',
  'wood-long': 'wood',
  'wood-beyond': 'woodBeyond',
  panel: 'panel',
  gypsum: 'gypsum',
  metal: 'metal',
  covering: 'covering',
  cladding: 'cladding',
  mat: 'air',
  air: 'air',
};

const linePens: Readonly<Record<LineKind, Pen>> = {
  'air-barrier': pen(0.7, 'airBarrier'),
  membrane: pen(0.5),
  'wall-barrier': pen(0.35),
  underlayment: pen(0.35),
  'ice-barrier': pen(0.7, 'waterPath', 'dashed'),
  retarder: pen(0.35, 'line', 'dashed'),
  'drip-edge': pen(0.5),
  screen: pen(0.5, 'line', 'dotted'),
  'board-joint': pen(0.35),
  screw: pen(0.25, 'line', 'chain'),
  'panel-outline': pen(0.7),
  sealant: pen(0.7, 'airBarrier'),
  hidden: pen(0.35, 'line', 'dashed'),
  lap: pen(0.35),
  gutter: pen(0.5),
  removed: pen(0.25, 'softText', 'chain'),
};

/** [mm] Below this thickness on paper a hatch would fill up, so the tint alone stands. */
const LEAST_HATCHED_mm = 1.1;

const thickness = (points: readonly Point[]): number => {
  const longest = points.reduce(
    (most, p, i) => Math.max(most, distance(p, points[(i + 1) % points.length] ?? p)),
    0,
  );
  return longest === 0 ? 0 : Math.abs(area(points)) / longest;
};

function partShapes(part: EdgePart, placement: Placement, isLit: boolean, isAdded: boolean): Shape {
  const points = part.polygon.map((p) => toPaper(placement, p));
  const isBeyond = part.view === 'beyond';
  const isThin = thickness(points) < LEAST_HATCHED_mm;
  const outline = isLit ? pen(0.7, 'highlight') : isBeyond ? pen(0.25) : isThin ? pen(0.25) : pen(0.5);
  const strokes = isThin ? [] : hatch(part.material, points, -part.grain_rad);
  return group(
    `${isBeyond ? 'part beyond' : 'part cut'}${isAdded ? ' added' : ''}`,
    part.id,
    [
      polygon(points, null, isLit ? 'highlightWash' : fillOf[part.material]),
      ...(isBeyond && part.material === 'wood-end' ? [] : strokes),
      polygon(points, outline, null),
    ],
    { layerId: part.layerId, title: part.name, isHighlighted: isLit },
  );
}

function screwShapes(points: readonly Point[], stroke: Pen): Shape[] {
  const [head, tip] = points;
  if (head === undefined || tip === undefined) return [];
  const length = Math.max(1e-6, distance(head, tip));
  const across = point((tip.y - head.y) / length, -(tip.x - head.x) / length);
  const HALF_HEAD_mm = 0.9;
  return [
    line(
      point(head.x - across.x * HALF_HEAD_mm, head.y - across.y * HALF_HEAD_mm),
      point(head.x + across.x * HALF_HEAD_mm, head.y + across.y * HALF_HEAD_mm),
      pen(0.5),
    ),
    line(head, tip, stroke),
  ];
}

function lineShapes(edgeLine: EdgeLine, placement: Placement, isLit: boolean, isAdded: boolean): Shape {
  const points = edgeLine.points.map((p) => toPaper(placement, p));
  const normal = linePens[edgeLine.kind];
  const stroke = isLit ? pen(0.7, 'highlight', normal.dash) : normal;
  const shapes = edgeLine.kind === 'screw' ? screwShapes(points, stroke) : [polyline(points, stroke)];
  const meaning = edgeLine.kind === 'air-barrier' ? 'air-barrier' : 'sheet-line';
  return group(isAdded ? `${meaning} added` : meaning, edgeLine.id, shapes, {
    layerId: edgeLine.layerId,
    title: edgeLine.name,
    isHighlighted: isLit,
  });
}

/** [-] Radius of a stop's circle in font sizes. */
const STOP_SHARE = 0.68;
/** [-] How far a stop may be moved from its place, in radii, and in how many directions it is tried. */
const MOVES = [0, 2.6, 4, 5.6, 7.4];
const TURNS = 12;

/** Places for circles of one size so that none covers another, each as near to its own point as it can be. */
function apart(points: readonly Point[], radius_mm: number): Point[] {
  const placed: Point[] = [];
  const isFree = (at: Point): boolean => placed.every((other) => distance(other, at) > 2 * radius_mm + 0.3);
  for (const wanted of points) {
    const choices = MOVES.flatMap((move) =>
      Array.from({ length: move === 0 ? 1 : TURNS }, (_, i) => {
        const turn = (2 * Math.PI * i) / TURNS;
        return point(
          wanted.x - move * radius_mm * Math.cos(turn),
          wanted.y - move * radius_mm * Math.sin(turn),
        );
      }),
    );
    placed.push(choices.find(isFree) ?? wanted);
  }
  return placed;
}

/** Numbered stops of a walk, drawn over the section. */
export function walkShapes(walk: Walk, placement: Placement, size_mm: number): Shape {
  const ink = walk.path === 'air-barrier' ? 'airBarrier' : walk.path === 'water' ? 'waterPath' : 'dryingPath';
  const runs = walk.points.map((run) =>
    polyline(
      run.map((p) => toPaper(placement, p)),
      pen(0.7, ink, walk.path === 'air-barrier' ? 'continuous' : 'dashed'),
    ),
  );
  const radius_mm = size_mm * STOP_SHARE;
  const places = walk.joints.map((joint) => toPaper(placement, joint.at));
  const centers = apart(places, radius_mm);
  // Leaders first, so that none of them lies on a number.
  const leaders = places.flatMap((place, i): Shape[] => {
    const at = centers[i] ?? place;
    return distance(at, place) < radius_mm
      ? []
      : [line(place, at, pen(0.35, ink)), circle(place, 0.6, null, 'solid')];
  });
  const stops = walk.joints.flatMap((joint, i): Shape[] => {
    const at = centers[i] ?? toPaper(placement, joint.at);
    return [
      circle(at, radius_mm, pen(0.35, ink), 'paper'),
      text(point(at.x, at.y + size_mm * 0.33), String(joint.number), {
        size_mm,
        anchor: 'middle',
        weight: 'bold',
        ink,
      }),
    ];
  });
  return group(`walk ${walk.path}`, `walk-${walk.path}`, [...runs, ...leaders, ...stops], {
    title: walk.path,
  });
}

/** The roof of today in outline over the new one. */
export const beforeShapes = (edge: DetailModel, placement: Placement): Shape[] =>
  edge.before.length === 0
    ? []
    : [
        group(
          'before',
          'before',
          edge.before.map((each) =>
            polyline(
              each.points.map((p) => toPaper(placement, p)),
              pen(0.5, 'dryingPath', 'chain'),
            ),
          ),
          { title: 'The roof before' },
        ),
      ];

/** The air barrier itself: what pierces it shows from its step on. */
const airBarrier: Body = { id: 'air-barrier-line', layerId: 'air-barrier' };

/** [m] A corner this near to a break stands on it. */
const ON_BREAK_m = 1e-6;

/** A break from its foot as far up as bodies reach; none where nothing reaches it. */
function shownBreak([from, to]: readonly [Point, Point], corners: readonly Point[]): [Point, Point][] {
  const length_m = distance(from, to);
  const along = corners
    .filter((p) => distance(from, p) + distance(p, to) - length_m < ON_BREAK_m)
    .map((p) => distance(from, p));
  const share = length_m === 0 ? 0 : Math.max(0, ...along) / length_m;
  return share === 0
    ? []
    : [[from, point(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share)]];
}

/** All shapes of the section, in drawing order: beyond, cut, lines, breaks. */
export function sectionShapes(edge: DetailModel, placement: Placement, showing: Showing): Shape[] {
  const { isShown, isLit, isAdded } = showing;
  const parts = edge.parts
    .filter(isShown)
    .map((part) => partShapes(part, placement, isLit(part), isAdded(part)));
  const lines = edge.lines
    .filter(isShown)
    .map((each) => lineShapes(each, placement, isLit(each), isAdded(each)));
  const piercings = (isShown(airBarrier) ? edge.piercings : []).map((piercing) => {
    const at = toPaper(placement, piercing.at);
    return group(
      isAdded(airBarrier) ? 'piercing added' : 'piercing',
      'piercing',
      [circle(at, 1.5, pen(0.5, 'airBarrier'), 'paper')],
      {
        title: `${piercing.count === null ? '' : `${String(piercing.count)} × `}${piercing.what} through the air barrier`,
      },
    );
  });
  const corners = edge.parts.filter(isShown).flatMap(({ polygon }) => polygon);
  const breaks = edge.breaks
    .flatMap((each) => shownBreak(each, corners))
    .map(([from, to]) => polyline(breakLine(toPaper(placement, from), toPaper(placement, to)), pen(0.25)));
  return [
    group('section', 'section', parts),
    group('lines', 'lines', [...lines, ...piercings]),
    group('breaks', 'breaks', breaks),
  ];
}

/** The roof as polygons: its planes with valleys, dormers and openings, and the true lengths of their edges. */
import { dimension } from '../catalog/dimensions.ts';
import { angleOfPitch_deg, type RoofPlan } from './geometry.ts';
import { carried, shared, type Carried, type Feature } from './planeFeatures.ts';
import { rectangle, trapezoid, type BarePlane, type EdgeKind } from './planeShapes.ts';
import { onSlope, type Plane } from './slopePlane.ts';

export interface RoofBreaks {
  readonly valleys: number;
  readonly dormers: number;
  readonly skylights: number;
  readonly chimneys: number;
}

/** What was taken for a roof whose exact shape nobody gave. */
export interface ShapeAssumption {
  readonly id: 'gambrel' | 'l-plan' | 'cross-gables' | 'dormers' | 'openings';
  readonly count: number;
  /** Width of a gable or dormer at its walls, or of an opening; lower pitch of a gambrel in rise per 12. */
  readonly size: number;
}

export interface RoofPlanes {
  readonly planes: readonly Plane[];
  readonly assumptions: readonly ShapeAssumption[];
  /** True lengths; edges that two planes share are counted once. */
  readonly lengths_m: Readonly<Record<EdgeKind, number>>;
  readonly area_m2: number;
}

interface Body {
  readonly carrying: readonly BarePlane[];
  readonly others: readonly BarePlane[];
  readonly assumptions: readonly ShapeAssumption[];
  /** Valleys that the body has by itself. */
  readonly valleys: number;
}

/** A house bent once at a right angle: both legs as wide as the house; plan, eaves and ridge stay as long as before. */
function lPlan(plan: RoofPlan): Body | null {
  const { length_m, width_m, angle_deg, eaveOverhang_m, rakeOverhang_m } = plan;
  const depth_m = width_m / 2 + eaveOverhang_m;
  const outer_m = (length_m + width_m) / 2 + eaveOverhang_m + rakeOverhang_m;
  const inner_m = (length_m - width_m) / 2 - eaveOverhang_m + rakeOverhang_m;
  if (inner_m < dimension('least-leg_m')) return null;
  const leg = (id: string, length: number, right: 'hip' | 'valley'): BarePlane =>
    trapezoid(id, angle_deg, { length_m: length, depth_m, left: 'rake', right });
  return {
    carrying: [leg('outer-1', outer_m, 'hip'), leg('outer-2', outer_m, 'hip')],
    others: [leg('inner-1', inner_m, 'valley'), leg('inner-2', inner_m, 'valley')],
    assumptions: [{ id: 'l-plan', count: 1, size: width_m }],
    valleys: 1,
  };
}

function gambrel(plan: RoofPlan): Body {
  const { length_m, width_m, angle_deg, eaveOverhang_m, rakeOverhang_m } = plan;
  const edge_m = length_m + 2 * rakeOverhang_m;
  const lower_m = (width_m / 2) * dimension('gambrel-lower-share');
  const lowerPitch = dimension('gambrel-lower-pitch');
  const lower_deg = Math.max(angle_deg, angleOfPitch_deg(lowerPitch));
  const lower = (id: string): BarePlane =>
    rectangle(id, lower_deg, { length_m: edge_m, depth_m: lower_m + eaveOverhang_m, top: 'break' });
  const upper = (id: string): BarePlane =>
    rectangle(id, angle_deg, {
      length_m: edge_m,
      depth_m: width_m / 2 - lower_m,
      bottom: 'break',
      top: 'ridge',
    });
  return {
    carrying: [lower('lower-1'), lower('lower-2')],
    others: [upper('upper-1'), upper('upper-2')],
    assumptions: [{ id: 'gambrel', count: 1, size: lowerPitch }],
    valleys: 0,
  };
}

function hip(plan: RoofPlan): Body {
  const { angle_deg, eaveOverhang_m } = plan;
  const long_m = Math.max(plan.length_m, plan.width_m) + 2 * eaveOverhang_m;
  const short_m = Math.min(plan.length_m, plan.width_m) + 2 * eaveOverhang_m;
  const side = (id: string, length_m: number): BarePlane =>
    trapezoid(id, angle_deg, { length_m, depth_m: short_m / 2, left: 'hip', right: 'hip' });
  return {
    carrying: [side('side-1', long_m), side('side-2', long_m)],
    others: [side('end-1', short_m), side('end-2', short_m)],
    assumptions: [],
    valleys: 0,
  };
}

function bodyOf(plan: RoofPlan, valleys: number): Body {
  if (plan.shape === 'hip') return hip(plan);
  if (plan.shape === 'gambrel') return gambrel(plan);
  const isOdd = valleys % 2 === 1;
  if (plan.shape === 'cross-gable' && isOdd) {
    const bent = lPlan(plan);
    if (bent !== null) return bent;
  }
  const edge_m = plan.length_m + 2 * plan.rakeOverhang_m;
  const isShed = plan.shape === 'shed';
  const depth_m = plan.width_m / (isShed ? 1 : 2) + plan.eaveOverhang_m;
  const side = (id: string): BarePlane =>
    rectangle(id, plan.angle_deg, { length_m: edge_m, depth_m, top: isShed ? 'high-edge' : 'ridge' });
  return {
    carrying: isShed ? [side('slope')] : [side('slope-1'), side('slope-2')],
    others: [],
    assumptions: [],
    valleys: 0,
  };
}

const SHARED: ReadonlySet<EdgeKind> = new Set(['ridge', 'hip', 'valley', 'break']);
const KINDS: readonly EdgeKind[] = [
  'eave',
  'rake',
  'ridge',
  'hip',
  'valley',
  'break',
  'high-edge',
  'cheek',
  'apron',
  'opening',
];

function lengthsOf(planes: readonly Plane[]): Record<EdgeKind, number> {
  const sums = Object.fromEntries(KINDS.map((kind) => [kind, 0])) as Record<EdgeKind, number>;
  for (const { edges } of planes)
    for (const { kind, from, to } of edges) {
      const length_m = Math.hypot(to.u - from.u, to.v - from.v);
      sums[kind] += SHARED.has(kind) ? length_m / 2 : length_m;
    }
  return sums;
}

/**
 * The planes of a roof.
 *
 * One valley alone bends a cross-gable house to an L of the same width; every two valleys more are a cross gable of
 * the same slope, flush with the wall, ridge to the main plane. Dormers have the main slope. All of these keep
 * the plan, so that the sheathed area stays plan area / cos(angle), openings off; a gambrel is steeper below.
 *
 * @param plan    [m, deg] shape, size and overhangs
 * @param breaks  [-] valleys, dormers, skylights, chimneys
 * @returns       [m, m²] planes in their slope, true lengths of edges, what was assumed
 * @source        COMMON-PRACTICE plane geometry (computed); sizes of dimensions.json (our judgement)
 * @assumes       places along the eave evenly spaced, in turn on the planes that have an eave of the long side
 */
export function roofPlanes(plan: RoofPlan, breaks: RoofBreaks): RoofPlanes {
  // A cross gable has valleys even where none were counted.
  const valleys = plan.shape === 'cross-gable' ? Math.max(breaks.valleys, 1) : breaks.valleys;
  const body = bodyOf(plan, valleys);
  const gables = Math.ceil((valleys - body.valleys) / 2);
  const features: Feature[] = [
    ...Array.from({ length: gables }, (): Feature => 'gable'),
    ...Array.from({ length: breaks.dormers }, (): Feature => 'dormer'),
    ...Array.from({ length: breaks.skylights }, (): Feature => 'skylight'),
    ...Array.from({ length: breaks.chimneys }, (): Feature => 'chimney'),
  ];
  const rows = shared(features, body.carrying.length);
  const parts = body.carrying.map((bare, index) => carried(bare, rows[index] ?? [], plan));
  const planes = [
    ...parts.flatMap((part) => part.planes),
    ...body.others.map((bare) => onSlope(bare, bare.outline, [])),
  ];
  const most = (pick: (part: Carried) => number): number => Math.max(0, ...parts.map(pick));
  const openings = breaks.skylights + breaks.chimneys;
  const assumptions: ShapeAssumption[] = [
    ...body.assumptions,
    { id: 'cross-gables' as const, count: gables, size: most((part) => part.gable_m) },
    { id: 'dormers' as const, count: breaks.dormers, size: most((part) => part.dormer_m) },
    { id: 'openings' as const, count: openings, size: most((part) => part.opening_m) },
  ].filter(({ count }) => count > 0);
  return {
    planes,
    assumptions,
    lengths_m: lengthsOf(planes),
    area_m2: planes.reduce((sum, { area_m2 }) => sum + area_m2, 0),
  };
}

/** Board layers from thicknesses that are sold: two or more, so that joints can be offset. */
import { board } from '../catalog/materials.ts';
import type { BoardId } from '../catalog/sets.ts';
import type { Variant } from './variant.ts';

/** One board layer of a stack, inside first. */
export interface BoardLayer {
  readonly board: BoardId;
  readonly thickness_m: number;
}
export type BoardStack = readonly BoardLayer[];

/** [-] layers that make a stack with offset joints, and the most that a crew lays (common practice). */
const FEWEST_LAYERS = 2;
const MOST_LAYERS = 4;
/** [m] thinnest board used as a whole layer above a deck: 1 in (common practice). */
const THINNEST_M = 0.0254;
/** [m] sums of sold thicknesses closer than this are the same stack. */
const SAME_M = 1e-6;
/** [m] depth of a 2x4 on edge, the least outrigger that carries more than a short eave (NDS Supplement, dressed size). */
const OUTRIGGER_ROOM_M = 0.0889;

/**
 * Thickness of a stack.
 *
 * @param stack  [m] its layers
 * @returns      [m] their sum
 * @source       COMMON-PRACTICE plane geometry (computed)
 */
export const stackThickness_m = (stack: BoardStack): number =>
  stack.reduce((sum, layer) => sum + layer.thickness_m, 0);

const usable = (id: BoardId): number[] =>
  board(id).soldThicknesses_m.filter((thickness_m) => thickness_m >= THINNEST_M - SAME_M);

/** Every way to take `layers` thicknesses in falling order, as lists. */
function combinations(sold_m: readonly number[], layers: number): number[][] {
  if (layers === 0) return [[]];
  return sold_m.flatMap((first_m, index) =>
    combinations(sold_m.slice(0, index + 1), layers - 1).map((rest) => [first_m, ...rest]),
  );
}

const spread = (thicknesses_m: readonly number[]): number =>
  Math.max(...thicknesses_m) - Math.min(...thicknesses_m);

/** For each total, the stack with the fewest layers, then the most even one; thinnest total first. */
function bestByTotal(lists: readonly number[][]): number[][] {
  const total = (list: readonly number[]): number => list.reduce((sum, t) => sum + t, 0);
  const better = (a: readonly number[], b: readonly number[]): boolean =>
    a.length !== b.length ? a.length < b.length : spread(a) < spread(b) - SAME_M;
  const kept = new Map<number, number[]>();
  for (const list of lists) {
    const key = Math.round(total(list) / SAME_M);
    const known = kept.get(key);
    if (known === undefined || better(list, known)) kept.set(key, list);
  }
  return [...kept.entries()].sort(([a], [b]) => a - b).map(([, list]) => list);
}

const cache = new Map<string, readonly BoardStack[]>();

function looseStacks(id: BoardId): BoardStack[] {
  const lists: number[][] = [];
  for (let layers = FEWEST_LAYERS; layers <= MOST_LAYERS; layers += 1)
    lists.push(...combinations(usable(id), layers));
  return bestByTotal(lists).map((list) => list.map((thickness_m) => ({ board: id, thickness_m })));
}

/** Outriggers lie in the base layer: only bases that a 2x4 on edge fits into. */
const carriesOutriggers = (list: readonly number[]): boolean =>
  list.slice(0, -1).reduce((sum, t) => sum + t, 0) >= OUTRIGGER_ROOM_M - SAME_M;

function panelStacks(core: BoardId, base: BoardId | null, isOnOutriggers: boolean): BoardStack[] {
  if (base === null) return usable(core).map((thickness_m) => [{ board: core, thickness_m }]);
  const lists = usable(core).flatMap((core_m) =>
    [1, FEWEST_LAYERS].flatMap((layers) =>
      combinations(usable(base), layers).map((list) => [...list, core_m]),
    ),
  );
  return bestByTotal(isOnOutriggers ? lists.filter(carriesOutriggers) : lists).map((list) =>
    list.map((thickness_m, index) => ({ board: index === list.length - 1 ? core : base, thickness_m })),
  );
}

/**
 * All stacks that a variant may use, thinnest first.
 *
 * @param variant  [-] strategy and boards
 * @returns        [m] stacks, inside layer first; loose boards always in two to four layers, a panel on no
 *                 base, one or two base layers
 * @source         COMMON-PRACTICE two or more layers with offset joints; thicknesses sold of materials.json (common practice)
 * @assumes        of stacks equally thick the one with the fewest layers, then the most even one
 */
export function stacksOf(variant: Variant): readonly BoardStack[] {
  const isPanel = variant.strategy === 'prebonded-panel';
  const isOnOutriggers = isPanel && variant.carrier === 'outriggers';
  const key = `${isPanel}/${variant.board}/${variant.baseBoard ?? ''}/${isOnOutriggers}`;
  const known = cache.get(key);
  if (known) return known;
  const stacks = isPanel
    ? panelStacks(variant.board, variant.baseBoard, isOnOutriggers)
    : looseStacks(variant.board);
  cache.set(key, stacks);
  return stacks;
}

/** Boards, panels and sheets of a candidate as laid out on the planes of the roof; shared by all candidates of a case. */
import { dimension } from '../catalog/dimensions.ts';
import { isBoard, type BoardId } from '../catalog/sets.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Layer } from '../evaluation/evaluation.ts';
import { insulationLayers } from './assembly.ts';
import { angleOfPitch_deg } from './geometry.ts';
import { piecesOn, regionArea_m2, regionOf, type Shift, type Stock } from './layout.ts';
import { stockCount, type StockCount } from './layoutStock.ts';
import { once } from './memo.ts';
import { roofPlanes, type RoofPlanes } from './planes.ts';

const PERCENT = 100;
/** [-] grids of one layer and the next: a quarter of the length and half the width apart (common practice). */
const SHIFTS: readonly Shift[] = [
  { along: 0, up: 0 },
  { along: 0.25, up: 0.5 },
];

/** What is laid out: a board by its size, a prebonded panel, or a sheet of the second deck. */
export type Laid = BoardId | 'panel' | 'sheet';

export interface Layout extends StockCount {
  /** One board, panel or sheet. */
  readonly length_m: number;
  readonly width_m: number;
  /** What is covered, and what is bought for it. */
  readonly covered_m2: number;
  readonly stock_m2: number;
  /** Bought beyond what is covered, of what is covered. */
  readonly waste_pct: number;
}

/**
 * The planes of the roof of a case.
 *
 * @param given  [m] the complete case
 * @returns      [m, m²] see roofPlanes
 * @source       COMMON-PRACTICE plane geometry (computed)
 */
export const planesOf = (given: CompleteCase): RoofPlanes =>
  once(given, 'planes', () =>
    roofPlanes(
      {
        ...given.roof,
        angle_deg: angleOfPitch_deg(given.roof.pitch_rise_per_12),
        eaveOverhang_m: given.overhang.eave_m,
        rakeOverhang_m: given.overhang.rake_m,
      },
      given.roof,
    ),
  );

function stockOf(what: Laid): Stock {
  const kind = isBoard(what) ? what : 'sheet';
  return {
    length_m: dimension(`stock-length-${kind}_m`),
    width_m: dimension(`stock-width-${kind}_m`),
    handed: what === 'panel',
  };
}

/**
 * One layer of boards, panels or sheets on the whole roof.
 *
 * waste = (stock area − covered area) / covered area
 *
 * @param given  [m] the complete case
 * @param what   [-] what is laid
 * @param layer  [-] its place in the stack from below: every second layer has the other grid
 * @returns      [-, m², %] counts, areas, waste
 * @source       OUR-JUDGEMENT layout and reuse, see piecesOn and stockCount; sizes of dimensions.json (common practice)
 * @assumes      boards and panels end at the nailers along eaves and rakes, sheets lie on them
 */
export const layoutOf = (given: CompleteCase, what: Laid, layer: number): Layout =>
  once(given, `layout/${what}/${layer % SHIFTS.length}`, () => {
    const stock = stockOf(what);
    const nailers =
      what === 'sheet'
        ? { eave_m: 0, rake_m: 0 }
        : { eave_m: dimension('perimeter-nailer-width_m'), rake_m: dimension('rake-nailer-width_m') };
    const shift = SHIFTS[layer % SHIFTS.length] as Shift;
    const regions = planesOf(given).planes.map((plane) => regionOf(plane, nailers));
    const pieces = regions.flatMap((region) => piecesOn(region, stock, shift));
    const covered_m2 = regions.reduce((sum, region) => sum + regionArea_m2(region), 0);
    const least_m = dimension(what === 'panel' ? 'least-offcut-panels_m' : 'least-offcut-boards_m');
    const counted = stockCount(pieces, stock, least_m);
    const stock_m2 = counted.count * stock.length_m * stock.width_m;
    return {
      ...counted,
      length_m: stock.length_m,
      width_m: stock.width_m,
      covered_m2,
      stock_m2,
      // A roof that its nailers cover has no board to waste.
      waste_pct: covered_m2 > 0 ? PERCENT * (stock_m2 / covered_m2 - 1) : 0,
    };
  });

export interface CandidateLayouts {
  /** One for each insulation layer, inside first; the last of a prebonded panel is the panel. */
  readonly boards: readonly { readonly layer: Layer; readonly layout: Layout }[];
  /** Sheets of a second deck; null under panels and lapped metal. */
  readonly sheets: Layout | null;
  /** Of boards and panels together. */
  readonly waste_pct: number;
}

/**
 * Everything of a candidate that is laid out.
 *
 * waste = (sum of stock − sum of covered) / sum of covered over the layers of board and panel
 *
 * @param given    [m] the complete case
 * @param layers   [m] layers of the candidate
 * @param isPanel  [-] whether the topmost insulation is a prebonded panel
 * @returns        [-, m², %] layouts by layer, and waste
 * @source         OUR-JUDGEMENT see layoutOf
 * @assumes        each layer reuses its own offcuts only: layers differ in thickness
 */
export function layoutsOf(given: CompleteCase, layers: readonly Layer[], isPanel: boolean): CandidateLayouts {
  const stack = insulationLayers(layers);
  const boards = stack.map((layer, index) => {
    const { material } = layer;
    const board = material !== null && isBoard(material) ? material : 'polyisocyanurate';
    const what = isPanel && index === stack.length - 1 ? 'panel' : board;
    return { layer, layout: layoutOf(given, what, index) };
  });
  const stock_m2 = boards.reduce((sum, { layout }) => sum + layout.stock_m2, 0);
  const covered_m2 = boards.reduce((sum, { layout }) => sum + layout.covered_m2, 0);
  const hasSheets = !isPanel && layers.some((layer) => layer.role === 'upper-deck');
  return {
    boards,
    sheets: hasSheets ? layoutOf(given, 'sheet', 0) : null,
    waste_pct: covered_m2 > 0 ? PERCENT * (stock_m2 / covered_m2 - 1) : 0,
  };
}

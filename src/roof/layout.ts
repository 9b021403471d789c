/** Boards and panels laid out on the planes of a roof: rows up the slope, joints offset, cut to the edges. */
import { between, boundsOf, box, clipped, overlap_m2, within } from './clipping.ts';
import { polygonArea_m2, type Plane, type Point } from './slopePlane.ts';

/** A convex part of a plane to be covered. */
type Cell = readonly Point[];

/** What is covered of a plane: convex cells less convex holes. */
export interface Region {
  readonly cells: readonly Cell[];
  readonly holes: readonly Cell[];
}

/** A board, panel or sheet as sold. */
export interface Stock {
  /** Along the eave. */
  readonly length_m: number;
  /** Up the slope. */
  readonly width_m: number;
  /** True where a piece must keep its place along the panel: channels and factory edges meet. */
  readonly handed: boolean;
}

/** How far the grid is moved along the eave and up the slope, as shares of length and width. */
export interface Shift {
  readonly along: number;
  readonly up: number;
}

/** One board or panel as laid: the part of its place that lies on the roof. */
export interface Piece {
  /** Convex parts, holes not cut out. */
  readonly parts: readonly Cell[];
  /** Net of holes. */
  readonly area_m2: number;
  /** Size of the rectangle that it is cut from. */
  readonly length_m: number;
  readonly width_m: number;
  /** Where that rectangle begins along the board. */
  readonly start_m: number;
  readonly isWhole: boolean;
}

/** [m²] less is nothing; [m] shorter is rounding noise. */
const NOTHING_M2 = 1e-7;
const NOISE_M = 1e-7;

function reflexCorners(outline: readonly Point[]): number[] {
  return outline.flatMap((at, index) => {
    const before = outline[(index + outline.length - 1) % outline.length] as Point;
    const after = outline[(index + 1) % outline.length] as Point;
    const turn = (at.u - before.u) * (after.v - at.v) - (at.v - before.v) * (after.u - at.u);
    return turn < -NOTHING_M2 ? [at.u] : [];
  });
}

/** Strips of nailer along eaves and rakes, which take the board's place. [m] */
export interface Nailers {
  readonly eave_m: number;
  readonly rake_m: number;
}

/**
 * What is to be covered of a plane.
 *
 * outline less strips along eaves and rakes, cut upright at the tops of cross gables so that each cell is convex
 *
 * @param plane    [m] the plane
 * @param nailers  [m] width of the strips; 0 to cover the plane whole
 * @returns        [m] convex cells and holes
 * @source         COMMON-PRACTICE half-plane clipping (computed)
 * @assumes        the only inward corners are tops of cross gables; eaves and rakes bound the whole plane
 */
export function regionOf(plane: Plane, nailers: Nailers): Region {
  let outline = plane.outline as readonly Point[];
  for (const { kind, from, to } of plane.edges) {
    const off_m = kind === 'eave' ? nailers.eave_m : kind === 'rake' ? nailers.rake_m : 0;
    const length_m = Math.hypot(to.u - from.u, to.v - from.v);
    if (off_m === 0 || length_m === 0) continue;
    const along = { u: (to.u - from.u) / length_m, v: (to.v - from.v) / length_m };
    outline = clipped(outline, from, along, off_m);
  }
  if (outline.length < 3) return { cells: [], holes: [] };
  const us = outline.map(({ u }) => u);
  const cuts = [...reflexCorners(outline), Math.min(...us), Math.max(...us)].sort((a, b) => a - b);
  const cells = cuts
    .slice(1)
    .map((to, index) => (cuts.length === 2 ? outline : within(outline, cuts[index] as number, to)))
    .filter((cell) => cell.length > 2 && polygonArea_m2(cell) > NOTHING_M2);
  return { cells, holes: plane.holes };
}

/**
 * Area to be covered.
 *
 * @param region  [m] cells and holes
 * @returns       [m²] cells less the parts of holes that lie in them
 * @source        COMMON-PRACTICE plane geometry (computed)
 */
export const regionArea_m2 = ({ cells, holes }: Region): number => {
  const inside = (hole: Cell): number => cells.reduce((sum, cell) => sum + overlap_m2(hole, cell), 0);
  return (
    cells.reduce((sum, cell) => sum + polygonArea_m2(cell), 0) -
    holes.reduce((sum, hole) => sum + inside(hole), 0)
  );
};

interface Place {
  readonly parts: Cell[];
  area_m2: number;
}

function pieceOf({ parts, area_m2 }: Place, start_m: number, stock: Stock): Piece {
  const bounds = parts.map(boundsOf);
  const u0 = Math.min(...bounds.map((one) => one.u0));
  const v0 = Math.min(...bounds.map((one) => one.v0));
  const covered_m2 = parts.reduce((sum, part) => sum + polygonArea_m2(part), 0);
  return {
    parts,
    area_m2,
    length_m: Math.max(...bounds.map((one) => one.u1)) - u0,
    width_m: Math.max(...bounds.map((one) => one.v1)) - v0,
    start_m: u0 - start_m,
    isWhole: covered_m2 > stock.length_m * stock.width_m - NOTHING_M2,
  };
}

/** Where a convex part of a row is as high as the row: boards between need no cutting. */
function fullSpan(row: readonly Point[], v0: number, v1: number): readonly [number, number] {
  let low = [Infinity, -Infinity] as const;
  let high = [Infinity, -Infinity] as const;
  for (const { u, v } of row) {
    if (v < v0 + NOISE_M) low = [Math.min(low[0], u), Math.max(low[1], u)];
    if (v > v1 - NOISE_M) high = [Math.min(high[0], u), Math.max(high[1], u)];
  }
  return [Math.max(low[0], high[0]), Math.min(low[1], high[1])];
}

/** What a row holds, by the place of the board in it. */
function rowPlaces(
  { cells, holes }: Region,
  v0: number,
  v1: number,
  origin_m: number,
  stock: Stock,
): Map<number, Place> {
  const places = new Map<number, Place>();
  const each = (
    polygons: readonly Cell[],
    use: (place: number, part: Point[], area_m2: number) => void,
  ): void => {
    for (const polygon of polygons) {
      const bounds = boundsOf(polygon);
      if (bounds.v1 <= v0 || bounds.v0 >= v1) continue;
      const row = between(polygon, v0, v1);
      if (row.length < 3) continue;
      const { u0, u1 } = boundsOf(row);
      const [from_m, to_m] = fullSpan(row, v0, v1);
      const last = Math.floor((u1 - origin_m - NOISE_M) / stock.length_m);
      for (let place = Math.floor((u0 - origin_m + NOISE_M) / stock.length_m); place <= last; place += 1) {
        const start_m = origin_m + place * stock.length_m;
        const end_m = start_m + stock.length_m;
        const isInside = start_m >= from_m && end_m <= to_m;
        const part = isInside ? box(start_m, end_m, v0, v1) : within(row, start_m, end_m);
        const area_m2 = polygonArea_m2(part);
        if (area_m2 > NOTHING_M2) use(place, part, area_m2);
      }
    }
  };
  each(cells, (place, part, area_m2) => {
    const known = places.get(place) ?? { parts: [], area_m2: 0 };
    known.parts.push(part);
    known.area_m2 += area_m2;
    places.set(place, known);
  });
  if (holes.length > 0)
    each(holes, (place, part, area_m2) => {
      const known = places.get(place);
      if (known === undefined) return;
      const covered_m2 = known.parts.reduce((sum, cell) => sum + overlap_m2(part, cell), 0);
      known.area_m2 -= Math.min(area_m2, covered_m2);
    });
  return places;
}

/**
 * Boards, panels or sheets on a plane.
 *
 * rows along the eave, every second row moved by half a length; the whole grid moved by the shift
 *
 * @param region  [m] what is covered
 * @param stock   [m] size as sold
 * @param shift   [-] of this layer's grid, so that its joints miss those below
 * @returns       [m, m²] pieces, row by row up the slope, left to right; a board that falls in a hole is left out
 * @source        COMMON-PRACTICE joints staggered by half a board (common practice); clipping (computed)
 */
export function piecesOn(region: Region, stock: Stock, shift: Shift): Piece[] {
  if (region.cells.length === 0) return [];
  const { u0, v0, v1 } = boundsOf(region.cells.flat());
  const base_m = v0 - shift.up * stock.width_m;
  const rows = Math.ceil((v1 - base_m - NOISE_M) / stock.width_m);
  const pieces: Piece[] = [];
  for (let row = 0; row < rows; row += 1) {
    const low_m = base_m + row * stock.width_m;
    const along = shift.along + (row % 2) / 2;
    const origin_m = u0 - along * stock.length_m;
    const places = rowPlaces(region, low_m, low_m + stock.width_m, origin_m, stock);
    for (const [place, held] of [...places].sort(([a], [b]) => a - b))
      if (held.area_m2 > NOTHING_M2) pieces.push(pieceOf(held, origin_m + place * stock.length_m, stock));
  }
  return pieces;
}

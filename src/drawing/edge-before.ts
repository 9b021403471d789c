/** The roof that stands today, ghosted: what a re-roof cuts off, and its old outline before the work. */
import { point, slopeOn, type CutPlane, type Point } from './geometry.ts';
import type { EdgeLine } from './edge-model.ts';
import { FASCIA_BOARD_m, SUB_FASCIA_m, type EdgeInput } from './edge-input.ts';

/** [m] Old asphalt shingles on the deck, as laid (common practice, 1/4 in). */
export const OLD_COVERING_m = 0.006;

const ghost = (id: string, name: string, points: readonly Point[]): EdgeLine => ({
  id,
  kind: 'removed',
  layerId: null,
  name,
  points,
});

/** [m] Depth of the tails or lookouts that stand today: the framing's at the eave, 2x4 at the rake. */
const oldDepth_m = (input: EdgeInput): number =>
  input.place === 'rake' ? Math.min(FLAT_LOOKOUT_m, input.framingDepth_m) : input.framingDepth_m;
/** [m] An old gable ladder of 2x4 on edge (common practice). */
const FLAT_LOOKOUT_m = 0.0889;

/** End of the old framing behind its fascia: today's overhang is taken as the wanted one. */
const oldEnd = (input: EdgeInput): CutPlane => ({
  kind: 'plumb',
  x: -Math.max(input.overhang_m, FASCIA_BOARD_m + SUB_FASCIA_m) + FASCIA_BOARD_m + SUB_FASCIA_m,
});

/** Tails that a re-roof cuts off at the wall, in outline. */
export function removedTail(input: EdgeInput): EdgeLine[] {
  if (input.existing !== 'cut') return [];
  const { axes } = input;
  const d = oldDepth_m(input);
  const end = oldEnd(input);
  const wall: CutPlane = { kind: 'plumb', x: 0 };
  if (slopeOn(end, 0, axes) >= slopeOn(wall, 0, axes)) return [];
  const corner = (plane: CutPlane, n: number): Point => axes.at(slopeOn(plane, n, axes), n);
  return [
    ghost(
      'removed-tail',
      input.place === 'rake' ? 'Existing gable ladder, cut off' : 'Existing tail, cut off',
      [corner(wall, 0), corner(end, 0), corner(end, -d), corner(wall, -d)],
    ),
  ];
}

/** The old roof's outline: covering on the deck, fascia down to the underside of the tail. */
export function beforeLines(input: EdgeInput): EdgeLine[] {
  if (input.given.project.kind !== 're-roof') return [];
  const { axes, planes } = input;
  const deck = input.stack.find((b) => input.layerOf(b.layerId).role === 'deck');
  const top = (deck?.high_m ?? 0) + OLD_COVERING_m;
  const face = -Math.max(input.overhang_m, FASCIA_BOARD_m + SUB_FASCIA_m);
  const low = axes.levelAt(face, -oldDepth_m(input));
  return [
    ghost('before-roof', 'Roof before', [
      axes.at(slopeOn(planes.cut, top, axes), top),
      axes.at(axes.slopeAt(face, top), top),
      point(face, low),
      point(face + FASCIA_BOARD_m, low),
      point(face + FASCIA_BOARD_m, axes.levelAt(face + FASCIA_BOARD_m, 0)),
    ]),
  ];
}

/** Which parts of the ridge get a note, and where on the part its leader ends. */
import { middle, point, slopeOn, type Point } from './geometry.ts';
import type { Anchor } from './edge-model.ts';
import { capLow_m, capStart, memberFoot_m, plumbAt, VENT_HEIGHT_m, type RidgeInput } from './ridge-input.ts';
import { ridgeMembrane_n } from './ridge-lines.ts';

/** [m] How far before the right break the leaders of the layers end. */
const BEFORE_BREAK_m = 0.03;

const memberWords: Readonly<Record<RidgeInput['member']['kind'], readonly [string, string]>> = {
  board: ['Ridge board', 'as deep as the rafters’ plumb cut'],
  beam: ['Ridge beam', 'size by the engineer'],
  block: ['Block between trusses', 'carries the deck’s upper edge'],
};

/** The layers, on the right slope near its break. */
function layerAnchors(input: RidgeInput, outOfView: readonly string[]): Anchor[] {
  const { axes, candidate, framingDepth_m: d, half_m } = input;
  const x = half_m - BEFORE_BREAK_m;
  const place = (n: number): Point => point(x, axes.levelAt(-x, n));
  return candidate.layers
    .filter(({ id }) => !outOfView.includes(id))
    .map((layer): Anchor => {
      const b = input.stack.find((each) => each.layerId === layer.id);
      let at = place(-d / 2);
      if (b !== undefined) at = place((b.low_m + b.high_m) / 2);
      else if (layer.role === 'cavity') at = place(-Math.min(layer.thickness_m, d) / 2);
      else if (layer.role === 'ceiling') at = place(-d - layer.thickness_m / 2);
      else if (layer.role === 'interior-retarder') at = place(-d);
      return { id: layer.id, layerId: layer.id, name: layer.name, detail: '', at, side: 'stack' };
    });
}

function partAnchors(input: RidgeInput): Anchor[] {
  const { axes, boards, member, slot_m, gap } = input;
  const anchors: Anchor[] = [];
  const add = (id: string, name: string, detail: string, at: Point, side: Anchor['side']): void => {
    anchors.push({ id: `part-${id}`, layerId: null, name, detail, at, side });
  };
  const cap = capLow_m(input);
  const start = slopeOn(capStart(input), cap, axes);
  add('cap', 'Ridge cap', '', axes.at(start + input.cap_m / 2, cap + input.capThickness_m / 2), 'edge-above');
  if (slot_m > 0) {
    const n = input.top_m + VENT_HEIGHT_m / 2;
    add(
      'vent',
      'Ridge vent with insect screen',
      'as open as the intake',
      axes.at(start + 0.01, n),
      'edge-above',
    );
    if (gap !== null)
      add(
        'slot',
        'Ridge slot, open',
        'each side as wide as the gap is high',
        point(-slot_m / 2, axes.levelAt(-slot_m / 2, gap.high_m - (gap.high_m - gap.low_m) / 4)),
        'edge-above',
      );
  }
  const upper = boards.at(-1);
  if (upper !== undefined) {
    const at = point(0, axes.levelAt(0, (upper.low_m + upper.high_m) / 2));
    if (input.joint_m > 0)
      add('joint', 'Boards cut plumb at the ridge', 'joint filled with foam', at, 'edge-below');
    else add('joint', 'Boards cut plumb, butted tight', '', at, 'edge-below');
  }
  add(
    'lap',
    'Membrane laps over the ridge',
    'one line, not pierced by framing',
    point(0, axes.levelAt(0, ridgeMembrane_n(input))),
    'edge-below',
  );
  const [name, detail] = memberWords[member.kind];
  const foot = memberFoot_m(input);
  add(
    'ridge-member',
    name,
    detail,
    point(-member.half_m / 2, foot + (axes.levelAt(-member.half_m, 0) - foot) * 0.3),
    'edge-below',
  );
  const rafter = [plumbAt(0.75 * input.half_m), plumbAt(0.5 * input.half_m)].map((plane) =>
    axes.at(slopeOn(plane, -0.8 * input.framingDepth_m, axes), -0.8 * input.framingDepth_m),
  );
  add(
    'rafter',
    input.isTruss ? 'Truss top chord, beyond' : 'Rafter, beyond',
    '',
    middle(rafter),
    'edge-below',
  );
  return anchors;
}

export const ridgeAnchors = (input: RidgeInput, outOfView: readonly string[]): Anchor[] => [
  ...layerAnchors(input, outOfView),
  ...partAnchors(input),
];

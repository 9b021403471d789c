/** Which parts of a rake get a note, and where on the part its leader ends. */
import { between, middle, point, slopeOn, type Point } from './geometry.ts';
import type { Anchor, EdgeLine, EdgePart } from './edge-model.ts';
import { outriggerName, stackAnchors, wallAnchors } from './edge-anchors.ts';
import { removedTail } from './edge-before.ts';
import { isFlush, type EdgeInput } from './edge-input.ts';
import { lapFoot } from './edge-lines.ts';
import { hasOutrigger, outriggerTop_m } from './edge-stack.ts';

/** Words for what carries the rake where lookouts do. */
const lookoutName = (input: EdgeInput): string =>
  input.existing === 'kept' ? 'Existing lookout, kept' : 'Lookout, beyond';

function edgeAnchors(input: EdgeInput, parts: readonly EdgePart[], lines: readonly EdgeLine[]): Anchor[] {
  const { axes, planes, candidate } = input;
  const anchors: Anchor[] = [];
  const add = (id: string, name: string, detail: string, at: Point, side: Anchor['side']): void => {
    anchors.push({ id: `part-${id}`, layerId: null, name, detail, at, side });
  };
  const find = (id: string): EdgePart | undefined => parts.find((part) => part.id === id);
  const face_x = slopeOn(planes.face, 0, axes);
  add(
    'drip-edge',
    'Rake edge metal',
    'over the sheets',
    point(face_x + 0.01, planes.fasciaTop_m),
    'edge-above',
  );
  const closing = find('rake-furring');
  if (closing !== undefined)
    add(
      'rake-furring',
      candidate.strategy === 'prebonded-panel' ? 'Wood strip along the rake' : 'Furring along the rake',
      'closes the gap to the side',
      middle(closing.polygon),
      'edge-above',
    );
  const screen = lines.find((each) => each.id === 'mat-screen')?.points[0];
  if (screen !== undefined) add('screen', 'Insect screen at the edge of the mat', '', screen, 'edge-above');
  const nailer = [...parts].reverse().find((part) => part.id.startsWith('nailer-'));
  if (nailer !== undefined)
    add('nailer', 'Perimeter nailer', 'as high as the boards', middle(nailer.polygon), 'edge-above');
  if (hasOutrigger(input)) {
    const n = (outriggerTop_m(input) + (input.boards[0]?.low_m ?? 0)) / 2;
    add(
      'outrigger',
      outriggerName(candidate.structure.outrigger),
      candidate.structure.outrigger === null ? 'no size fits between the boards' : 'to be engineered',
      point(slopeOn(planes.tailEnd, 0, axes) + 0.05, n),
      'edge-above',
    );
  }
  const barge = find('fascia');
  if (barge !== undefined) {
    const [a, b, c] = barge.polygon;
    if (a !== undefined && b !== undefined && c !== undefined)
      add('fascia', 'Barge board', '', point((a.x + b.x) / 2, a.y + (c.y - a.y) * 0.2), 'edge-below');
  }
  const flying = find('sub-fascia');
  if (flying !== undefined)
    add(
      'sub-fascia',
      'Flying rafter',
      hasOutrigger(input) ? 'on the outriggers' : '',
      middle(flying.polygon),
      'edge-below',
    );
  const soffit = find('soffit');
  if (soffit !== undefined) add('soffit', 'Soffit', '', middle(soffit.polygon), 'edge-below');
  const lookout = find('lookout');
  if (lookout !== undefined) {
    const x = (slopeOn(planes.tailEnd, 0, axes) + Math.min(input.wall.cladding_m, -0.02)) / 2;
    add(
      'lookout',
      lookoutName(input),
      'each pierces the air barrier',
      point(x, -0.7 * input.lookout_m),
      'edge-below',
    );
  }
  const removed = removedTail(input)[0]?.points;
  if (removed?.[1] !== undefined && removed[2] !== undefined)
    add(
      'removed',
      'Existing gable ladder, cut off',
      'at the wall',
      between(removed[1], removed[2], 0.8),
      'edge-below',
    );
  const block = find('blocking');
  if (block !== undefined)
    add(
      'blocking',
      'Block between lookouts',
      'sealed on four edges',
      between(middle(block.polygon), block.polygon[1] ?? middle(block.polygon), 0.45),
      'room',
    );
  const rafter = parts.find((part) => part.id === 'end-rafter' || part.id.startsWith('rafter-'));
  if (rafter !== undefined)
    add('rafter', rafter.name, '', point(middle(rafter.polygon).x, -0.8 * input.framingDepth_m), 'room');
  if (isFlush(input)) {
    const foot = point(0, lapFoot(input).y + 0.02);
    const isBelow = foot.y < (soffit?.polygon[0]?.y ?? Infinity);
    add(
      'lap',
      'Membrane laps the wall',
      'one sheet, not pierced by framing',
      foot,
      isBelow ? 'wall' : 'room',
    );
  }
  return anchors;
}

export const rakeAnchors = (
  input: EdgeInput,
  parts: readonly EdgePart[],
  lines: readonly EdgeLine[],
  outOfView: readonly string[],
): Anchor[] => [
  ...stackAnchors(input, outOfView),
  ...edgeAnchors(input, parts, lines),
  ...wallAnchors(input, parts),
];

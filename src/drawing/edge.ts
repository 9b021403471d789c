/** The eave of a candidate as one geometric model in meters. */
import { strategyNames } from '../catalog/sets.ts';
import { point, slopeOn, type Point } from './geometry.ts';
import type { DetailModel, EdgePart, EdgeView, Measure } from './edge-model.ts';
import { beforeLines, removedTail } from './edge-before.ts';
import { edgeInput, type EdgeInput } from './edge-input.ts';
import { edgeAnchors } from './edge-anchors.ts';
import { edgeLines, iceBarrierEnd, piercings } from './edge-lines.ts';
import { hasOutrigger, outriggerBack, stackParts } from './edge-stack.ts';
import { carrierLow_m, trimParts } from './edge-trim.ts';
import { viewRight_m, wallParts } from './edge-wall.ts';
import { airBarrierWalk, dryingWalk, waterWalk } from './walks.ts';
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';

export interface EaveEdge extends DetailModel {
  readonly input: EdgeInput;
}

function measures(input: EdgeInput): Measure[] {
  const { axes, planes, candidate, gap } = input;
  const { edge } = candidate;
  const buildUp_m = input.stack.at(-1)?.high_m ?? 0;
  const faceAt = (n: number): Point => axes.at(slopeOn(planes.face, n, axes), n);
  const none = { limit_m: null, margin_m: null };
  const list: Measure[] = [];
  const dimension_s = axes.slopeAt(input.wall.inner_m + 0.05, 0);
  list.push({
    id: 'build-up',
    way: 'across',
    slides_m: [0, 0.08, -0.06, 0.16],
    from: axes.at(dimension_s, 0),
    to: axes.at(dimension_s, buildUp_m),
    value_m: edge.buildUp_m,
    name: 'Build-up',
    ...none,
  });
  list.push({
    id: 'fascia',
    way: 'edge',
    from: faceAt(carrierLow_m(input)),
    to: faceAt(buildUp_m),
    value_m: edge.fascia_m,
    name: 'Roof edge',
    limit_m: edge.fasciaLimit_m,
    margin_m: edge.fasciaMargin_m,
  });
  if (!input.isStretched) {
    const low = faceAt(carrierLow_m(input)).y;
    list.push({
      id: 'overhang',
      way: 'below',
      from: point(-input.overhang_m, low),
      to: point(0, low),
      value_m: input.overhang_m,
      name: 'Overhang',
      ...none,
    });
  }
  if (gap !== null) {
    const s = slopeOn(planes.cut, gap.low_m, axes);
    list.push({
      id: 'gap',
      way: 'across',
      slides_m: [-0.12, -0.08, -0.2],
      from: axes.at(s, gap.low_m),
      to: axes.at(s, gap.high_m),
      value_m: gap.high_m - gap.low_m,
      name: 'Air gap',
      ...none,
    });
  }
  if (input.iceBarrier_m > 0) {
    const { start, s } = iceBarrierEnd(input);
    list.push({
      id: 'ice-barrier',
      way: 'listed',
      from: axes.at(start, buildUp_m),
      to: axes.at(s, buildUp_m),
      value_m: input.iceBarrier_m,
      name: 'Ice barrier along the slope',
      ...none,
    });
  }
  if (hasOutrigger(input)) {
    const low = input.boards[0]?.low_m ?? 0;
    const start = axes.slopeAt(0, low);
    const back = slopeOn(outriggerBack(input), low, axes);
    list.push({
      id: 'back-span',
      way: 'listed',
      from: axes.at(start, low),
      to: axes.at(back, low),
      value_m: back - start,
      name: 'Back span of the outrigger along the slope',
      ...none,
    });
  }
  return list;
}

function sectionNote(input: EdgeInput): string {
  const between = input.given.framing.kind === 'truss' ? 'trusses' : 'rafters';
  const cut =
    input.carrier === 'outriggers'
      ? `Cut between ${between}, the eave at an outrigger`
      : `Cut between ${between}, tail seen beyond`;
  return [
    cut,
    { none: '', kept: 'existing tails kept', cut: 'existing tails cut off at the wall' }[input.existing],
    input.isStretched ? 'overhang shorter than drawn' : '',
  ]
    .filter((words) => words !== '')
    .join('; ');
}

/** What becomes of the air barrier at the eave. */
const airWords = (input: EdgeInput): string => {
  const pierced = piercings(input);
  return pierced.length === 0
    ? 'The air barrier turns from the roof to the wall as one line; no framing pierces it.'
    : pierced
        .map((p) => `The air barrier is pierced by ${String(p.count)} ${p.what}s along the eaves.`)
        .join(' ');
};

/** The places where the words inside and outside may stand, below the roof. */
export function wordPlaces(input: EdgeInput, edgeFoot_m: number): DetailModel['wordPlaces'] {
  const { wall } = input;
  return [
    { words: 'Inside', x: wall.inner_m, top: wall.plate_m, bottom: wall.bottom_m, side: 'right' },
    { words: 'Outside', x: wall.cladding_m, top: edgeFoot_m, bottom: wall.bottom_m, side: 'left' },
  ];
}

/**
 * Builds the eave of one candidate.
 *
 * @param evaluation  the evaluation, its case with every answer filled in
 * @param candidate   the candidate to draw
 * @param view        [m] how much of roof and wall to show
 * @returns           [m] parts, lines, piercings, measures, note anchors and walks; origin where the top of the
 *                    framing meets the outer face of the wall sheathing
 */
export function eaveEdge(evaluation: Evaluation, candidate: Candidate, view: EdgeView): EaveEdge {
  const input = edgeInput(evaluation, candidate, view);
  const { axes, planes, wall } = input;
  const parts: EdgePart[] = [...wallParts(input), ...trimParts(input), ...stackParts(input)];
  const buildUp_m = input.stack.at(-1)?.high_m ?? 0;
  const ceiling_m = candidate.layers.find((layer) => layer.role === 'ceiling')?.thickness_m ?? 0;
  const isTruss = input.given.framing.kind === 'truss';
  const cut = (n: number): Point => axes.at(slopeOn(planes.cut, n, axes), n);
  const breakFoot = isTruss
    ? point(viewRight_m(input), wall.plate_m - ceiling_m)
    : cut(-input.framingDepth_m - ceiling_m);
  const lines = [...edgeLines(input), ...removedTail(input)];
  const list = measures(input);
  const foot = list.find((m) => m.id === 'fascia')?.from ?? point(0, wall.plate_m);
  return {
    kind: 'eave',
    axes,
    strategyName: strategyNames[candidate.strategy],
    sectionNote: sectionNote(input),
    parts,
    lines,
    before: beforeLines(input),
    stack: input.stack,
    buildUp_m,
    piercings: piercings(input),
    measures: list,
    anchors: edgeAnchors(input, parts, lines),
    outOfView: [],
    breaks: [
      [breakFoot, cut(buildUp_m)],
      [point(wall.cladding_m, wall.bottom_m), point(wall.inner_m, wall.bottom_m)],
    ],
    airWords: airWords(input),
    isEdgePlumb: planes.face.kind === 'plumb',
    partAt: foot,
    bottom_m: wall.bottom_m,
    roofLine: [
      axes.at(axes.slopeAt(-input.overhang_m, buildUp_m), buildUp_m),
      axes.at(axes.slopeAt(viewRight_m(input), buildUp_m), buildUp_m),
    ],
    wordPlaces: wordPlaces(input, foot.y),
    growth: {
      inside_m: { across: 1, up: Math.tan(axes.angle_rad) },
      wall_m: { across: 0, up: 1 },
    },
    input,
    airWalk: airBarrierWalk(input),
    waterWalk: waterWalk(input),
    dryingWalk: dryingWalk(input),
  };
}

/** The rake of a candidate as one geometric model in meters, cut square to the slope: the roof lies level. */
import { strategyNames } from '../catalog/sets.ts';
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import { beforeLines, removedTail } from './edge-before.ts';
import { edgeInput, isFlush, type EdgeInput } from './edge-input.ts';
import { edgeLines, piercings } from './edge-lines.ts';
import type { DetailModel, EdgePart, EdgeView, Measure } from './edge-model.ts';
import { hasOutrigger, outriggerBack, stackParts } from './edge-stack.ts';
import { carrierLow_m, trimParts } from './edge-trim.ts';
import { wallParts } from './edge-wall.ts';
import { wordPlaces } from './edge.ts';
import { point, slopeOn, type Point } from './geometry.ts';
import { rakeAnchors } from './rake-anchors.ts';
import { rakeAirWalk, rakeDryingWalk, rakeWaterWalk } from './rake-walks.ts';

export interface RakeEdge extends DetailModel {
  readonly input: EdgeInput;
}

function measures(input: EdgeInput): Measure[] {
  const { planes, axes, candidate, gap, wall } = input;
  const { edge } = candidate;
  const buildUp_m = input.stack.at(-1)?.high_m ?? 0;
  const face_x = slopeOn(planes.face, 0, axes);
  const low_m = carrierLow_m(input);
  const none = { limit_m: null, margin_m: null };
  const across_x = wall.inner_m + 0.05;
  const list: Measure[] = [
    {
      id: 'build-up',
      way: 'across',
      slides_m: [0, 0.08, -0.06, 0.16],
      from: point(across_x, 0),
      to: point(across_x, buildUp_m),
      value_m: edge.buildUp_m,
      name: 'Build-up',
      ...none,
    },
    {
      id: 'barge',
      way: 'edge',
      from: point(face_x, low_m),
      to: point(face_x, buildUp_m),
      value_m: edge.buildUp_m - low_m,
      name: 'Rake edge',
      ...none,
    },
  ];
  if (!input.isStretched)
    list.push({
      id: 'overhang',
      way: 'below',
      from: point(-input.overhang_m, low_m),
      to: point(0, low_m),
      value_m: input.overhang_m,
      name: 'Overhang',
      ...none,
    });
  if (gap !== null) {
    const x = slopeOn(planes.cut, 0, axes);
    list.push({
      id: 'gap',
      way: 'across',
      slides_m: [-0.12, -0.08, -0.2],
      from: point(x, gap.low_m),
      to: point(x, gap.high_m),
      value_m: gap.high_m - gap.low_m,
      name: 'Air gap',
      ...none,
    });
  }
  if (hasOutrigger(input)) {
    const n = input.boards[0]?.low_m ?? 0;
    list.push({
      id: 'back-span',
      way: 'listed',
      from: point(0, n),
      to: point(slopeOn(outriggerBack(input), n, axes), n),
      value_m: slopeOn(outriggerBack(input), n, axes),
      name: 'Back span of the outrigger from the gable wall',
      ...none,
    });
  }
  return list;
}

const existingWords = {
  none: '',
  kept: 'existing lookouts kept',
  cut: 'existing gable ladder cut off at the wall',
} as const;

function sectionNote(input: EdgeInput): string {
  const cut = hasOutrigger(input)
    ? 'Cut square to the slope at an outrigger'
    : input.lookout_m > 0
      ? 'Cut square to the slope between lookouts'
      : 'Cut square to the slope';
  return [
    cut,
    'seen up the rake',
    input.given.overhang.rake_m > 0 ? existingWords[input.existing] : '',
    input.isStretched ? 'overhang shorter than drawn' : '',
  ]
    .filter((words) => words !== '')
    .join('; ');
}

/** Layers that hang at the truss's bottom chord, below what a rake shows. */
const outOfView = (input: EdgeInput): string[] =>
  input.given.framing.kind === 'truss'
    ? input.candidate.layers
        .filter(({ role }) => role === 'ceiling' || role === 'interior-retarder')
        .map(({ id }) => id)
    : [];

/**
 * Builds the rake of one candidate.
 *
 * @param evaluation  the evaluation, its case with every answer filled in
 * @param candidate   the candidate to draw
 * @param view        [m] how much of roof and gable wall to show
 * @returns           [m] parts, lines, measures, note anchors and walks; origin where the top of the framing
 *                    meets the outer face of the gable wall's sheathing
 */
export function rakeEdge(evaluation: Evaluation, candidate: Candidate, view: EdgeView): RakeEdge {
  const input = edgeInput(evaluation, candidate, view, 'rake');
  const { planes, axes, wall } = input;
  const hidden = outOfView(input);
  const parts: EdgePart[] = [...wallParts(input), ...trimParts(input), ...stackParts(input)];
  const lines = [...edgeLines(input), ...(input.overhang_m > 0 ? removedTail(input) : [])];
  const buildUp_m = input.stack.at(-1)?.high_m ?? 0;
  const ceiling_m = candidate.layers.find((layer) => layer.role === 'ceiling' && !hidden.includes(layer.id));
  const cut_x = slopeOn(planes.cut, 0, axes);
  const list = measures(input);
  const foot: Point = point(slopeOn(planes.face, 0, axes), carrierLow_m(input));
  return {
    kind: 'rake',
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
    anchors: rakeAnchors(input, parts, lines, hidden),
    outOfView: hidden,
    breaks: [
      [point(cut_x, -input.framingDepth_m - (ceiling_m?.thickness_m ?? 0)), point(cut_x, buildUp_m)],
      [point(wall.cladding_m, wall.bottom_m), point(wall.inner_m, wall.bottom_m)],
    ],
    airWords: isFlush(input)
      ? 'The air barrier turns from the roof to the gable wall as one line; no framing pierces it.'
      : 'Lookouts pass through the air barrier along the rake; each needs a seal on all four sides.',
    isEdgePlumb: true,
    partAt: foot,
    bottom_m: wall.bottom_m,
    roofLine: null,
    wordPlaces: wordPlaces(input, foot.y),
    growth: { inside_m: { across: 1, up: 0 }, wall_m: { across: 0, up: 1 } },
    input,
    airWalk: rakeAirWalk(input),
    waterWalk: rakeWaterWalk(input),
    dryingWalk: rakeDryingWalk(input),
  };
}

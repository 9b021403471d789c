/** The ridge of a candidate as one geometric model in meters: both slopes, cut across the ridge line. */
import { strategyNames } from '../catalog/sets.ts';
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import type { DetailModel, EdgeView, Measure } from './edge-model.ts';
import { point, slopeOn, type Point } from './geometry.ts';
import { ridgeAnchors } from './ridge-anchors.ts';
import { capLow_m, capStart, ridgeInput, underside_m, type RidgeInput } from './ridge-input.ts';
import { ridgeAirWalk, ridgeBefore, ridgeDryingWalk, ridgeLines, ridgeWaterWalk } from './ridge-lines.ts';
import { ridgeParts } from './ridge-parts.ts';

export interface Ridge extends DetailModel {
  readonly input: RidgeInput;
}

/** [-] Where on the left slope the build-up is measured, as a share of the part in view. */
const BUILD_UP_SHARE = 0.55;
/** [m] Least distance of a dimension from the cap. */
const BESIDE_CAP_m = 0.01;
/** [-] How far the build-up may be moved up toward the cap, in shares of the room there. */
const SLIDE_SHARES = [0, 0.25, 0.5, 0.75, 1];
/** [m] Least distance of its upper end from the left break. */
const FROM_BREAK_m = 0.03;

function measures(input: RidgeInput): Measure[] {
  const { axes, candidate, gap, half_m, top_m, slot_m } = input;
  const { edge } = candidate;
  const none = { limit_m: null, margin_m: null };
  const lean_m = top_m * Math.sin(axes.angle_rad);
  const s = axes.slopeAt(Math.max(-BUILD_UP_SHARE * half_m, FROM_BREAK_m + lean_m - half_m), 0);
  // Its foot must stay on this slope, its head beside the cap.
  const most_s = Math.min(
    slopeOn(capStart(input), top_m, axes) - BESIDE_CAP_m,
    axes.slopeAt(-BESIDE_CAP_m, 0),
  );
  const room_m = Math.max(0, most_s - s);
  const list: Measure[] = [
    {
      id: 'build-up',
      way: 'across',
      slides_m: SLIDE_SHARES.map((share) => share * room_m),
      from: axes.at(s, 0),
      to: axes.at(s, top_m),
      value_m: edge.buildUp_m,
      name: 'Build-up',
      ...none,
    },
    {
      id: 'ridge-rise',
      way: 'plumb',
      past_m: axes.levelAt(0, capLow_m(input) + input.capThickness_m) - axes.levelAt(0, top_m),
      from: point(0, 0),
      to: point(0, axes.levelAt(0, top_m)),
      value_m: edge.ridgeRise_m,
      name: 'Ridge rise',
      limit_m: edge.ridgeLimit_m,
      margin_m: edge.ridgeMargin_m,
    },
  ];
  if (gap !== null) {
    const from = slopeOn(input.cut, gap.low_m, axes);
    list.push(
      {
        id: 'gap',
        way: 'across',
        slides_m: [0.08, 0.05, 0.14],
        from: axes.at(from, gap.low_m),
        to: axes.at(from, gap.high_m),
        value_m: gap.high_m - gap.low_m,
        name: 'Air gap',
        ...none,
      },
      {
        id: 'slot',
        way: 'listed',
        from: point(-slot_m, axes.levelAt(-slot_m, gap.high_m)),
        to: point(0, axes.levelAt(-slot_m, gap.high_m)),
        value_m: slot_m,
        name: 'Ridge slot on each side, level',
        ...none,
      },
    );
  }
  return list;
}

function sectionNote(input: RidgeInput): string {
  const between = input.isTruss ? 'trusses' : 'rafters';
  const vent = input.slot_m > 0 ? 'vented at the ridge' : 'closed at the ridge';
  return `Cut across the ridge between ${between}; ${vent}`;
}

/** [-] The word for the room stands below the slope's underside at this share of its half, by this much or more. */
const ROOM_SHARE = 0.7;
const ROOM_AIR_m = 0.04;
const ROOM_DROP_m = 0.12;

/** Layers that hang at the truss's bottom chord, below what a ridge shows. */
const outOfView = (input: RidgeInput): string[] =>
  input.isTruss
    ? input.candidate.layers
        .filter(({ role }) => role === 'ceiling' || role === 'interior-retarder')
        .map(({ id }) => id)
    : [];

/** Both long breaks, left and right, from the lowest layer to the covering. */
function breaks(input: RidgeInput): (readonly [Point, Point])[] {
  const { axes, half_m, top_m } = input;
  const low = axes.levelAt(-half_m, -underside_m(input));
  const high = axes.levelAt(-half_m, top_m);
  return [-half_m, half_m].map((x) => [point(x, low), point(x, high)] as const);
}

/**
 * Builds the ridge of one candidate.
 *
 * @param evaluation  the evaluation, its case with every answer filled in
 * @param candidate   the candidate to draw
 * @param view        [m] how much of each slope to show, level
 * @returns           [m] parts, lines, measures, note anchors and walks; origin on the ridge line where the tops of
 *                    the framing meet
 */
export function ridgeDetail(evaluation: Evaluation, candidate: Candidate, view: EdgeView): Ridge {
  const input = ridgeInput(evaluation, candidate, view);
  const { axes, half_m, top_m } = input;
  const hidden = outOfView(input);
  const bottom_m = axes.levelAt(-half_m, -underside_m(input));
  const lines = ridgeLines(input);
  const parts = ridgeParts(input);
  return {
    kind: 'ridge',
    axes,
    strategyName: strategyNames[candidate.strategy],
    sectionNote: sectionNote(input),
    parts,
    lines,
    before: ridgeBefore(input),
    stack: input.stack,
    buildUp_m: top_m,
    piercings: [],
    measures: measures(input),
    anchors: ridgeAnchors(input, hidden),
    outOfView: hidden,
    breaks: breaks(input),
    airWords: 'The air barrier runs over the ridge as one line; the sheets of both slopes lap there.',
    isEdgePlumb: true,
    partAt: point(0, axes.levelAt(-half_m / 2, 0)),
    bottom_m,
    roofLine: [
      axes.at(slopeOn(input.cut, top_m, axes), top_m),
      axes.at(slopeOn(capStart(input), top_m, axes), top_m),
    ],
    wordPlaces: [
      {
        words: 'Inside',
        x: 0,
        top: axes.levelAt(-ROOM_SHARE * half_m, -underside_m(input)) - ROOM_AIR_m,
        bottom: bottom_m - ROOM_DROP_m,
        side: 'right',
      },
    ],
    growth: { inside_m: { across: 2, up: Math.tan(axes.angle_rad) }, wall_m: { across: 0, up: 0 } },
    input,
    airWalk: ridgeAirWalk(input),
    waterWalk: ridgeWaterWalk(input),
    dryingWalk: ridgeDryingWalk(input),
  };
}

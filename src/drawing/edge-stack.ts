/** What lies above the framing at eave and rake: deck, boards, nailers, outrigger, gap, upper deck, covering. */
import { dimension } from '../catalog/dimensions.ts';
import { band, shifted, slopeOn, type CutPlane } from './geometry.ts';
import type { EdgeLine, EdgePart, StackBand } from './edge-model.ts';
import {
  COURSE_m,
  COVERING_OVERHANG_m,
  isFlush,
  LENGTH_m,
  SPACER_m,
  SPACER_STEP_m,
  type EdgeInput,
} from './edge-input.ts';
import { rakeGapParts } from './rake-gap.ts';
import type { HatchName } from './hatch.ts';

/** Sign of a material in the section, by its row in the materials table. */
export function hatchOf(material: string | null): HatchName {
  if (material === null) return 'air';
  if (/wool|fiber|cellulose|spray/.test(material)) return 'fibrous';
  if (/iso|xps|eps/.test(material)) return 'foam';
  if (/plywood|osb/.test(material)) return 'panel';
  if (/plank|wood-boards|softwood/.test(material)) return 'wood-long';
  if (/gypsum/.test(material)) return 'gypsum';
  if (/mat$/.test(material)) return 'mat';
  return 'covering';
}

/** [m] Top of the outrigger above the framing's top; the boards below it stop at its back end. */
export const outriggerTop_m = (input: EdgeInput): number =>
  input.carrier === 'outriggers' ? (input.boards[0]?.low_m ?? 0) + input.carrierDepth_m : 0;

/** [m] Where no outrigger fits, the one drawn reaches at least this far inside the wall line (our judgement). */
const LEAST_BACK_SPAN_m = 0.3;

/** [m] Back span along the outrigger: the chosen one's; where none fits between the boards, the usual share. */
function backSpan_m(input: EdgeInput): number {
  const chosen = input.candidate.structure.outrigger;
  if (chosen !== null) return chosen.backSpan_m;
  const level_m = Math.max(input.overhang_m, LEAST_BACK_SPAN_m);
  return (dimension('outrigger-back-span-ratio') * level_m) / Math.cos(input.axes.angle_rad);
}

/** Back end of the outrigger: its back span measured up the slope from the wall line. */
export const outriggerBack = (input: EdgeInput): CutPlane => ({
  kind: 'square',
  s: input.axes.slopeAt(0, input.boards[0]?.low_m ?? 0) + backSpan_m(input),
});

/** [m] Strip before the break that is cut between two outriggers, so that the boards show. */
const BETWEEN_OUTRIGGERS_m = 0.14;

/** Where the section leaves the outrigger: at its back end, or short of the break. */
export function outriggerShown(input: EdgeInput): CutPlane {
  const { axes, planes } = input;
  const back = outriggerBack(input);
  const step: CutPlane = shifted(planes.cut, -BETWEEN_OUTRIGGERS_m);
  const low = input.boards[0]?.low_m ?? 0;
  return slopeOn(back, low, axes) > slopeOn(step, low, axes) ? step : back;
}

export const hasOutrigger = (input: EdgeInput): boolean => input.carrier === 'outriggers';

function boardParts(input: EdgeInput): EdgePart[] {
  const { axes, planes } = input;
  const parts: EdgePart[] = [];
  const top_m = hasOutrigger(input) ? outriggerTop_m(input) : 0;
  const back = outriggerShown(input);
  const add = (
    b: StackBand,
    name: string,
    id: string,
    from: CutPlane,
    to: CutPlane,
    low: number,
    high: number,
    material: HatchName,
  ): void => {
    if (high - low < 1e-6 || slopeOn(to, low, axes) <= slopeOn(from, low, axes)) return;
    parts.push({
      id,
      layerId: material === 'wood-end' ? null : b.layerId,
      name,
      material,
      view: 'cut',
      polygon: band(axes, from, to, low, high),
      grain_rad: axes.angle_rad,
    });
  };
  for (const b of input.boards) {
    const layer = input.layerOf(b.layerId);
    const split_m = Math.min(b.high_m, Math.max(b.low_m, top_m));
    const sign = hatchOf(layer.material);
    add(b, layer.name, `${b.layerId}-behind-outrigger`, back, planes.cut, b.low_m, split_m, sign);
    add(
      b,
      'Perimeter nailer',
      `nailer-${b.layerId}`,
      planes.subFascia,
      planes.nailerEnd,
      split_m,
      b.high_m,
      'wood-end',
    );
    add(b, layer.name, b.layerId, planes.nailerEnd, planes.cut, split_m, b.high_m, sign);
  }
  return parts;
}

function outriggerPart(input: EdgeInput): EdgePart[] {
  if (!hasOutrigger(input)) return [];
  const low = input.boards[0]?.low_m ?? 0;
  const { axes, planes } = input;
  return [
    {
      id: 'outrigger',
      layerId: null,
      name: 'Outrigger',
      material: 'wood-long',
      view: 'cut',
      polygon: band(axes, planes.tailEnd, outriggerShown(input), low, outriggerTop_m(input)),
      grain_rad: axes.angle_rad,
    },
  ];
}

function gapParts(input: EdgeInput): EdgePart[] {
  const { gap, axes, planes, candidate } = input;
  if (gap === null) return [];
  if (input.place === 'rake') return rakeGapParts(input, gap);
  const layer = input.layerOf(gap.layerId);
  const common = { layerId: gap.layerId, grain_rad: axes.angle_rad };
  const parts: EdgePart[] = [
    {
      ...common,
      id: gap.layerId,
      name: layer.name,
      material: 'air',
      view: 'cut',
      polygon: band(axes, planes.behindFascia, planes.cut, gap.low_m, gap.high_m),
    },
  ];
  if (candidate.strategy !== 'prebonded-panel') {
    parts.push({
      ...common,
      id: 'furring',
      name: 'Furring up the slope, beyond',
      material: 'wood-beyond',
      view: 'beyond',
      polygon: band(axes, planes.subFascia, planes.cut, gap.low_m, gap.high_m),
    });
    return parts;
  }
  const end = slopeOn(planes.cut, gap.low_m, axes);
  const first = slopeOn(planes.subFascia, gap.low_m, axes) + SPACER_m;
  for (let s = first, i = 1; s + SPACER_m < end; s += SPACER_STEP_m, i += 1) {
    parts.push({
      ...common,
      id: `spacer-${String(i)}`,
      name: 'Spacer block of the panel',
      material: 'wood-end',
      view: 'beyond',
      polygon: band(axes, { kind: 'square', s }, { kind: 'square', s: s + SPACER_m }, gap.low_m, gap.high_m),
    });
  }
  return parts;
}

/** Parts of the stack, deck first. Membranes and sheets are lines, not parts. */
export function stackParts(input: EdgeInput): EdgePart[] {
  const { axes, planes } = input;
  const wallLine: CutPlane = { kind: 'plumb', x: 0 };
  const plainParts = input.stack.flatMap((b): EdgePart[] => {
    const layer = input.layerOf(b.layerId);
    const start: Partial<Record<typeof layer.role, CutPlane>> = {
      deck: isFlush(input) ? wallLine : planes.subFascia,
      'upper-deck': planes.behindFascia,
      'drainage-mat': planes.face,
      covering: shifted(planes.face, -COVERING_OVERHANG_m),
    };
    const from = start[layer.role];
    if (from === undefined || layer.thickness_m <= 0) return [];
    return [
      {
        id: b.layerId,
        layerId: b.layerId,
        name: layer.name,
        material: layer.role === 'drainage-mat' ? 'mat' : hatchOf(layer.material),
        view: 'cut',
        polygon: band(axes, from, planes.cut, b.low_m, b.high_m),
        grain_rad: axes.angle_rad,
      },
    ];
  });
  return [...plainParts, ...gapParts(input), ...boardParts(input), ...outriggerPart(input)];
}

/** Joints between boards: each layer half a board away from the one below (common practice). */
export function boardJoints(input: EdgeInput): EdgeLine[] {
  const { axes, planes, boards } = input;
  const lines: EdgeLine[] = [];
  const step_m = input.place === 'rake' ? LENGTH_m : COURSE_m;
  boards.forEach((b, index) => {
    const mid = (b.low_m + b.high_m) / 2;
    const end = slopeOn(planes.cut, mid, axes);
    const start = slopeOn(planes.nailerEnd, mid, axes);
    const floor =
      hasOutrigger(input) && mid < outriggerTop_m(input) ? slopeOn(outriggerShown(input), mid, axes) : start;
    for (let s = start + step_m - ((index % 2) * step_m) / 2, i = 1; s < end; s += step_m, i += 1) {
      if (s <= floor) continue;
      lines.push({
        id: `joint-${b.layerId}-${String(i)}`,
        kind: 'board-joint',
        layerId: b.layerId,
        name: 'Board joint',
        points: [axes.at(s, b.low_m), axes.at(s, b.high_m)],
      });
    }
  });
  return lines;
}

/** Outline of the factory panel: core, spacer blocks and nail base in one piece. */
export function panelOutline(input: EdgeInput): EdgeLine[] {
  if (input.candidate.strategy !== 'prebonded-panel') return [];
  const { axes, planes } = input;
  const core = input.boards.at(-1);
  if (core === undefined) return [];
  const corner = (plane: CutPlane, n: number) => axes.at(slopeOn(plane, n, axes), n);
  const top = planes.fasciaTop_m;
  return [
    {
      id: 'panel-outline',
      kind: 'panel-outline',
      layerId: core.layerId,
      name: 'Factory panel',
      points: [
        corner(planes.cut, core.low_m),
        corner(planes.subFascia, core.low_m),
        corner(planes.subFascia, top),
        corner(planes.cut, top),
      ],
    },
  ];
}

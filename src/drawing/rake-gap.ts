/** The vented space where the rake cuts across it: furring, battens or spacer blocks, and the air between. */
import { dimension } from '../catalog/dimensions.ts';
import { point, slopeOn, type Point } from './geometry.ts';
import type { EdgePart, StackBand } from './edge-model.ts';
import { SPACER_m, SPACER_STEP_m, type EdgeInput } from './edge-input.ts';
import { rafterCenters } from './rake-rafters.ts';

interface Strip {
  readonly from: number;
  readonly to: number;
}

const box = ({ from, to }: Strip, low: number, high: number): Point[] => [
  point(from, low),
  point(to, low),
  point(to, high),
  point(from, high),
];

/** Where wood stands in the gap: the closing strip at the rake, then furring on each rafter or spacers in step. */
function strips(input: EdgeInput): Strip[] {
  const { planes, axes, candidate } = input;
  const start = slopeOn(planes.subFascia, 0, axes);
  const end = slopeOn(planes.cut, 0, axes);
  const width = dimension('furring-width_m');
  const closing: Strip = { from: start, to: start + width };
  const list: Strip[] = [closing];
  if (candidate.strategy === 'prebonded-panel') {
    for (let x = start + SPACER_STEP_m; x < end; x += SPACER_STEP_m) list.push({ from: x, to: x + SPACER_m });
  } else {
    for (const x of rafterCenters(input)) list.push({ from: x - width / 2, to: x + width / 2 });
  }
  const kept: Strip[] = [];
  for (const strip of list) {
    const last = kept.at(-1);
    const to = Math.min(strip.to, end);
    if (to > strip.from && (last === undefined || strip.from > last.to)) kept.push({ ...strip, to });
  }
  return kept;
}

/** Parts of the gap at the rake: wood cut across, air between; cross battens run on beyond. */
export function rakeGapParts(input: EdgeInput, gap: StackBand): EdgePart[] {
  const { planes, axes, candidate } = input;
  const layer = input.layerOf(gap.layerId);
  const isPanel = candidate.strategy === 'prebonded-panel';
  const end = slopeOn(planes.cut, 0, axes);
  const furring_m = isPanel
    ? gap.high_m - gap.low_m
    : Math.min(dimension('furring-height_m'), gap.high_m - gap.low_m);
  const top = gap.low_m + furring_m;
  const woods = strips(input);
  const common = { layerId: gap.layerId, grain_rad: 0, view: 'cut' } as const;
  const air = woods.map((strip, i): EdgePart => ({
    ...common,
    id: i === 0 ? gap.layerId : `${gap.layerId}-${String(i + 1)}`,
    name: layer.name,
    material: 'air',
    polygon: box({ from: strip.to, to: woods[i + 1]?.from ?? end }, gap.low_m, top),
  }));
  const wood = woods.map((strip, i): EdgePart => ({
    ...common,
    id: i === 0 ? 'rake-furring' : isPanel ? `spacer-${String(i)}` : `furring-${String(i)}`,
    name:
      i === 0
        ? isPanel
          ? 'Wood strip along the rake closes the gap'
          : 'Furring along the rake closes the gap'
        : isPanel
          ? 'Spacer block of the panel'
          : 'Furring up the slope',
    material: 'wood-end',
    polygon: box(strip, gap.low_m, top),
  }));
  const battens: EdgePart[] =
    gap.high_m - top > 1e-9
      ? [
          {
            ...common,
            id: 'batten',
            name: 'Cross battens, beyond',
            material: 'wood-beyond',
            view: 'beyond',
            polygon: box({ from: slopeOn(planes.subFascia, 0, axes), to: end }, top, gap.high_m),
          },
        ]
      : [];
  return [
    ...air.filter((part) => (part.polygon[1]?.x ?? 0) > (part.polygon[0]?.x ?? 0)),
    ...battens,
    ...wood,
  ];
}

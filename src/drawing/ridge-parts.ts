/** The bodies of the ridge: framing, fill, ceiling, layers mitred at the ridge line, vent and cap. */
import { band, point, slopeOn, type CutPlane, type Point } from './geometry.ts';
import type { EdgePart } from './edge-model.ts';
import type { HatchName } from './hatch.ts';
import { hatchOf } from './edge-stack.ts';
import {
  capLow_m,
  capStart,
  memberFoot_m,
  mirrored,
  plumbAt,
  VENT_HEIGHT_m,
  type RidgeInput,
} from './ridge-input.ts';

type Body = Omit<EdgePart, 'polygon' | 'grain_rad'> & { readonly polygon: readonly Point[] };

/** A part on the left slope and its twin on the right one. */
const both = (input: RidgeInput, part: Body): EdgePart[] => [
  { ...part, grain_rad: input.axes.angle_rad },
  {
    ...part,
    id: `${part.id}-right`,
    polygon: mirrored(part.polygon),
    grain_rad: -input.axes.angle_rad,
  },
];

const centered = (part: Body): EdgePart => ({ ...part, grain_rad: Math.PI / 2 });

/** A body that spans the ridge line between two planes n, to a level distance on each side. */
function bridge(input: RidgeInput, level_m: number, low: number, high: number): Point[] {
  const { axes } = input;
  const at = (x: number, n: number): Point => point(x, axes.levelAt(-Math.abs(x), n));
  return [
    at(-level_m, low),
    at(0, low),
    at(level_m, low),
    at(level_m, high),
    at(0, high),
    at(-level_m, high),
  ];
}

const memberNames = {
  board: 'Ridge board',
  beam: 'Ridge beam',
  block: 'Block between trusses at the ridge',
} as const;

function framing(input: RidgeInput): EdgePart[] {
  const { axes, cut, member, isTruss, framingDepth_m: d } = input;
  const end: CutPlane = isTruss ? input.ridge : plumbAt(member.half_m);
  const foot = memberFoot_m(input);
  const w = member.half_m;
  return [
    ...both(input, {
      id: 'rafter',
      layerId: null,
      name: isTruss ? 'Truss top chord, beyond' : 'Rafter, beyond',
      material: 'wood-beyond',
      view: 'beyond',
      polygon: band(axes, cut, end, -d, 0),
    }),
    centered({
      id: 'ridge-member',
      layerId: null,
      name: memberNames[member.kind],
      material: 'wood-end',
      view: 'cut',
      polygon: [
        point(-w, foot),
        point(w, foot),
        point(w, axes.levelAt(-w, 0)),
        point(0, 0),
        point(-w, axes.levelAt(-w, 0)),
      ],
    }),
  ];
}

function fill(input: RidgeInput): EdgePart[] {
  const { axes, candidate, cut, member, isTruss, framingDepth_m, half_m } = input;
  const cavity = candidate.layers.find((layer) => layer.role === 'cavity');
  if (cavity === undefined || cavity.thickness_m <= 0) return [];
  const depth_m = isTruss ? cavity.thickness_m : Math.min(cavity.thickness_m, framingDepth_m);
  const foot = memberFoot_m(input);
  const under = axes.levelAt(0, -depth_m);
  const w = member.half_m;
  const at = (x: number, n: number): Point => point(x, axes.levelAt(x, n));
  // Below a block that is shallower than the fill, the fills of both slopes meet.
  const polygon =
    under < foot
      ? [at(-half_m, -depth_m), point(0, under), point(0, foot), point(-w, foot), at(-w, 0), at(-half_m, 0)]
      : band(axes, cut, plumbAt(w), -depth_m, 0);
  return both(input, {
    id: cavity.id,
    layerId: cavity.id,
    name: cavity.name,
    material: hatchOf(cavity.material),
    view: 'cut',
    polygon,
  });
}

/** The ceiling under the rafters, level under the ridge board. */
function ceiling(input: RidgeInput): EdgePart[] {
  const { axes, candidate, cut, member, isTruss, framingDepth_m: d } = input;
  const layer = candidate.layers.find((each) => each.role === 'ceiling');
  if (layer === undefined || isTruss) return [];
  const w = member.half_m;
  const foot = memberFoot_m(input);
  const low = axes.levelAt(-w, -d - layer.thickness_m);
  const common = {
    layerId: layer.id,
    name: layer.name,
    material: hatchOf(layer.material),
    view: 'cut' as const,
  };
  return [
    ...both(input, {
      ...common,
      id: layer.id,
      polygon: band(axes, cut, plumbAt(w), -d - layer.thickness_m, -d),
    }),
    centered({
      ...common,
      id: `${layer.id}-ridge`,
      polygon: [point(-w, low), point(w, low), point(w, foot), point(-w, foot)],
    }),
  ];
}

/** Layers that reach the ridge line, stop at the joint, or stop at the slot. */
function layers(input: RidgeInput): EdgePart[] {
  const { axes, cut, ridge, stack, layerOf, gap } = input;
  const slot = plumbAt(input.slot_m);
  const ends = {
    deck: ridge,
    insulation: plumbAt(input.joint_m),
    'upper-deck': slot,
    'drainage-mat': ridge,
    covering: slot,
  } as const;
  const parts = stack.flatMap((b): EdgePart[] => {
    const layer = layerOf(b.layerId);
    const end = layer.role in ends ? ends[layer.role as keyof typeof ends] : undefined;
    if (end === undefined || b.high_m - b.low_m <= 0) return [];
    return both(input, {
      id: b.layerId,
      layerId: b.layerId,
      name: layer.name,
      material: layer.role === 'drainage-mat' ? 'mat' : hatchOf(layer.material),
      view: 'cut',
      polygon: band(axes, cut, end, b.low_m, b.high_m),
    });
  });
  if (gap === null) return parts;
  const common = { layerId: gap.layerId, name: layerOf(gap.layerId).name } as const;
  return [
    ...parts,
    centered({
      ...common,
      id: gap.layerId,
      material: 'air',
      view: 'cut',
      polygon: bridge(input, input.half_m, gap.low_m, gap.high_m),
    }),
    ...both(input, {
      ...common,
      id: 'furring',
      name:
        input.candidate.strategy === 'prebonded-panel'
          ? 'Spacers of the panel, beyond'
          : 'Furring up the slope, beyond',
      material: 'wood-beyond',
      view: 'beyond',
      polygon: band(axes, cut, slot, gap.low_m, gap.high_m),
    }),
  ];
}

/** What fills the joint between the boards of both slopes. */
function joints(input: RidgeInput): EdgePart[] {
  if (input.joint_m === 0) return [];
  return input.boards.map((b) =>
    centered({
      id: `joint-${b.layerId}`,
      layerId: null,
      name: 'Ridge joint, filled with foam',
      material: 'fibrous',
      view: 'cut',
      polygon: bridge(input, input.joint_m, b.low_m, b.high_m),
    }),
  );
}

function cap(input: RidgeInput): EdgePart[] {
  const { axes, slot_m, top_m } = input;
  const low = capLow_m(input);
  const start = capStart(input);
  const body = (
    id: string,
    name: string,
    material: HatchName,
    end: CutPlane,
    from: number,
    to: number,
  ): EdgePart[] =>
    slopeOn(start, from, axes) < slopeOn(end, from, axes)
      ? both(input, {
          id,
          layerId: null,
          name,
          material,
          view: 'cut',
          polygon: band(axes, start, end, from, to),
        })
      : [];
  return [
    ...(slot_m > 0
      ? body('ridge-vent', 'Ridge vent', 'mat', plumbAt(slot_m), top_m, top_m + VENT_HEIGHT_m)
      : []),
    ...body('ridge-cap', 'Ridge cap', 'covering', input.ridge, low, low + input.capThickness_m),
  ];
}

/** Parts of the ridge, those beyond the section first. */
export function ridgeParts(input: RidgeInput): EdgePart[] {
  const parts = [
    ...framing(input),
    ...fill(input),
    ...ceiling(input),
    ...layers(input),
    ...joints(input),
    ...cap(input),
  ];
  // Furring is seen in the gap, so its air comes before it.
  const air = parts.filter(({ material }) => material === 'air');
  const beyond = parts.filter(({ view }) => view === 'beyond');
  const cut = parts.filter(({ view, material }) => view === 'cut' && material !== 'air');
  return [...air, ...beyond, ...cut];
}

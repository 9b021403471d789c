/** Small evaluations for the drawing's tests: real layers and edge geometry, other results left at rest. */
import type { Case } from '../../src/case/case.ts';
import { complete } from '../../src/case/complete.ts';
import type { BoardId, StrategyId, Ventilation } from '../../src/catalog/sets.ts';
import type { Candidate, Evaluation } from '../../src/evaluation/evaluation.ts';
import { assemble, layersAboveFraming } from '../../src/roof/assembly.ts';
import { angleOfPitch_deg, roofEdge } from '../../src/roof/geometry.ts';

export interface Sketch {
  readonly strategy: StrategyId;
  readonly pitch: number;
  readonly boards_m: readonly number[];
  readonly board?: BoardId;
  readonly ventilation?: Ventilation;
  readonly carrier?: Candidate['carrier'];
  readonly fasciaLimit_m?: number | null;
  readonly ridgeLimit_m?: number | null;
  /** The chosen outrigger; null where none fits. A 2x4 on edge when not given. */
  readonly outrigger?: Candidate['structure']['outrigger'];
  readonly case?: Partial<Case>;
}

const SPACING_m = 0.4064;
const TWO_BY_FOUR = {
  size: '2x4',
  orientation: 'on-edge',
  depth_m: 0.0889,
  width_m: 0.0381,
  spacing_m: 0.6096,
} as const;

export function sketch(wanted: Sketch): { evaluation: Evaluation; candidate: Candidate } {
  const { strategy, pitch, boards_m } = wanted;
  const given = {
    overdeck: 1,
    place: { zone: '6A' },
    project: { kind: 'new-roof' },
    ...wanted.case,
    roof: { ...wanted.case?.roof, pitch_rise_per_12: pitch },
  } as Case;
  const { completed } = complete(given, '6A');
  const carrier = wanted.carrier ?? (strategy === 'flush-outriggers' ? 'outriggers' : 'rafter-tails');
  const board = wanted.board ?? 'polyisocyanurate';
  const ventilation = wanted.ventilation ?? (strategy === 'prebonded-panel' ? 'panel-gap' : 'vented-furring');
  const variant = {
    strategy,
    board,
    baseBoard: null,
    ventilation,
    underlayment: 'vapor-open' as const,
    carrier,
  };
  const layers = assemble(
    completed,
    variant,
    boards_m.map((thickness_m) => ({ board, thickness_m })),
  );
  const angle_deg = angleOfPitch_deg(pitch);
  const { cut } = completed.profile;
  const edge = roofEdge({
    angle_deg,
    layers_m: layersAboveFraming(layers).map((layer) => layer.thickness_m),
    framingDepth_m: completed.framing.depth_m,
    cut,
    carrier,
  });
  const limit = wanted.fasciaLimit_m ?? null;
  const ridgeLimit = wanted.ridgeLimit_m ?? null;
  const outrigger =
    wanted.outrigger === undefined
      ? {
          ...TWO_BY_FOUR,
          backSpan_m: (2 * completed.overhang.eave_m) / Math.cos((angle_deg * Math.PI) / 180),
        }
      : wanted.outrigger;
  const wall_m = completed.wall.thickness_m;
  const candidate = {
    id: `${strategy}-sketch`,
    strategy,
    board,
    baseBoard: null,
    carrier,
    layers,
    ventilation: { kind: ventilation },
    structure: { outrigger: carrier === 'outriggers' ? outrigger : null },
    airBarrier: { piercings: carrier === 'outriggers' ? 0 : Math.ceil(completed.roof.length_m / SPACING_m) },
    drying: { path: 'both' },
    fasteners: { screwLength_m: 0.25, spacing_m: 0.6096 },
    edge: {
      ...edge,
      cut,
      carrier,
      carrierDepth_m: carrier === 'outriggers' ? (outrigger?.depth_m ?? 0) : completed.framing.depth_m,
      fasciaLimit_m: limit,
      fasciaMargin_m: limit === null ? null : limit - edge.fascia_m,
      ridgeLimit_m: ridgeLimit,
      ridgeMargin_m: ridgeLimit === null ? null : ridgeLimit - edge.ridgeRise_m,
    },
  } as unknown as Candidate;
  const evaluation = {
    case: completed,
    candidates: [candidate],
    requirements: {
      slope: { angle_deg, pitch_rise_per_12: pitch },
      iceBarrier: {
        required: true,
        length_m: (completed.overhang.eave_m + wall_m + 0.6096) / Math.cos((angle_deg * Math.PI) / 180),
      },
    },
  } as unknown as Evaluation;
  return { evaluation, candidate };
}

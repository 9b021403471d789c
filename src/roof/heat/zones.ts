/** Parts of the roof with their own wood across the insulation: the bands of the outriggers and the edge nailers. */
import { dimension } from '../../catalog/dimensions.ts';
import type { CompleteCase } from '../../case/complete.ts';
import type { Layer, ThermalZoneId } from '../../evaluation/evaluation.ts';
import { wallLine_m } from '../airBarrier.ts';
import { insulationLayers } from '../assembly.ts';
import { heatedRoofOf } from '../measures.ts';
import type { OutriggerPlan } from '../overhang.ts';

export interface Zone {
  readonly id: ThermalZoneId;
  readonly area_m2: number;
  /** Share of the zone that is wood across the insulation. */
  readonly woodShare: number;
  /** How much of the board's depth the wood crosses, from the deck up. */
  readonly woodDepth_m: number;
  readonly what: string;
}

/**
 * The whole heated roof as one zone without wood across the board.
 *
 * @param given [m] the complete case
 * @returns [m²] one zone
 * @source OUR-JUDGEMENT what a stack is shown by before its overhang is known
 */
export const fieldOnly = (given: CompleteCase): Zone[] => [
  {
    id: 'field',
    area_m2: heatedRoofOf(given).area_m2,
    woodShare: 0,
    woodDepth_m: 0,
    what: 'board without wood across it',
  },
];

interface Wanted extends Omit<Zone, 'area_m2'> {
  readonly wanted_m2: number;
}

/**
 * Wood in a band of outriggers: the outriggers, and blocking between them along the wall line.
 *
 * share = w / s + (1 - w / s) b / l with w outrigger width, s spacing, b blocking width, l back span
 */
function bandOf(
  id: 'eave-band' | 'rake-band',
  length_m: number,
  inset_m: number,
  plan: OutriggerPlan,
): Wanted {
  const alone = Math.min(1, plan.width_m / plan.spacing_m);
  const blocked = Math.min(1, dimension('wall-line-blocking_m') / plan.backSpan_m);
  return {
    id,
    wanted_m2: length_m * Math.max(0, plan.backSpan_m - inset_m),
    woodShare: alone + (1 - alone) * blocked,
    woodDepth_m: plan.depth_m,
    what: `outriggers ${plan.size}, and blocking between them on the wall line, one back span deep`,
  };
}

/** The strip of an edge nailer that lies inside the wall line: all of it without an overhang, none over a wide one. */
const nailerInset_m = (overhang_m: number): number =>
  Math.max(0, dimension('perimeter-nailer-width_m') - overhang_m);

/**
 * Zones of the roof over the heated rooms, the field last.
 *
 * Bands lie inside the wall line, one back span deep; nailers count only where they reach inside the wall line,
 * for beyond it both faces are outdoors.
 *
 * @param given      [m] the complete case
 * @param layers     [m] layers of the candidate
 * @param outrigger  [m] the outrigger between the boards; null for tails
 * @returns          [m², -, m] zones that together cover the heated roof
 * @source           ISO-6946-2017 6.7.2, sections of one build-up each (memory); sizes of dimensions.json
 * @assumes          the outriggers lie on the deck, board above them; blocking as deep as they are
 */
export function zonesOf(
  given: CompleteCase,
  layers: readonly Layer[],
  outrigger: OutriggerPlan | null,
): Zone[] {
  const { area_m2, rakeWall_m } = heatedRoofOf(given);
  const eave_m = wallLine_m(given);
  const depth_m = insulationLayers(layers).reduce((sum, layer) => sum + layer.thickness_m, 0);
  const eaveInset_m = nailerInset_m(given.overhang.eave_m);
  const rakeInset_m = nailerInset_m(given.overhang.rake_m);
  const wanted: Wanted[] = [
    {
      id: 'edge-nailers',
      wanted_m2: eave_m * eaveInset_m + rakeWall_m * rakeInset_m,
      woodShare: 1,
      woodDepth_m: depth_m,
      what: 'nailers as deep as the board where they reach inside the wall line',
    },
    ...(outrigger === null
      ? []
      : [
          bandOf('eave-band', eave_m, eaveInset_m, outrigger),
          ...(given.overhang.rake_m > 0 ? [bandOf('rake-band', rakeWall_m, rakeInset_m, outrigger)] : []),
        ]),
  ];
  let left_m2 = area_m2;
  const zones: Zone[] = [];
  for (const { wanted_m2, ...zone } of wanted) {
    const taken_m2 = Math.min(left_m2, wanted_m2);
    left_m2 -= taken_m2;
    if (taken_m2 > 0) zones.push({ ...zone, area_m2: taken_m2 });
  }
  const [field] = fieldOnly(given);
  return field === undefined || left_m2 <= 0 ? zones : [...zones, { ...field, area_m2: left_m2 }];
}

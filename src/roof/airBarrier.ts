/** What it takes to carry the air barrier from wall to roof at the edges. */
import type { CompleteCase } from '../case/complete.ts';
import { dimension } from '../catalog/dimensions.ts';
import type { Candidate } from '../evaluation/evaluation.ts';
import type { EdgeCarrier, RoofMeasures } from './geometry.ts';

/** [-] joints of the block in a tail bay: two tails, deck, plate (common practice). */
const JOINTS_A_BAY = 4;

/**
 * Wall line along the eaves: the roof's eaves without the rake overhangs.
 *
 * @param given  [m] plan of the complete case
 * @returns      [m] two long sides; one of a shed; all four of a hip
 * @source       COMMON-PRACTICE plane geometry (computed)
 */
export const wallLine_m = (given: CompleteCase): number => {
  const { shape, length_m, width_m } = given.roof;
  if (shape === 'hip') return 2 * (length_m + width_m);
  return shape === 'shed' ? length_m : 2 * length_m;
};

/** Tails more than bays: one at the end of each eave; around a hip the last tail is the first. */
const endTails = (shape: CompleteCase['roof']['shape']): number =>
  shape === 'hip' ? 0 : shape === 'shed' ? 1 : 2;

/**
 * Joints and piercings of the air barrier at the eaves and rakes.
 *
 * bays = eaves / spacing; joint length = bays (2 d + 2 (s − w)), to two tails (depth d), deck and plate (clear bay)
 * Tails: a block in every bay.
 * Outriggers: one lap along the eave; the screws go through a bedded membrane.
 *
 * @param given    [-] the complete case
 * @param carrier  [-] what carries the overhang
 * @param roof     [m] measures of the roof
 * @returns        [-, m] bays, piercings, joints and their length along all eaves
 * @source         COMMON-PRACTICE trade count of tails and blocking (common practice)
 * @assumes        tails at even spacing; lookouts of the rakes pierce but need no block of their own here
 */
export function airBarrierOf(
  given: CompleteCase,
  carrier: EdgeCarrier,
  roof: RoofMeasures,
): Candidate['airBarrier'] {
  const eave_m = wallLine_m(given);
  const { spacing_m, width_m, depth_m } = given.framing;
  const lookouts =
    given.overhang.rake_m > 0 ? Math.ceil(roof.rakeLength_m / dimension('lookout-spacing_m')) : 0;
  if (carrier === 'outriggers' || given.overhang.eave_m === 0) {
    return {
      bays: 0,
      piercings: 0,
      joints: 1,
      jointLength_m: eave_m,
      jointLengthPerEave_m_m: 1,
      eaveLength_m: eave_m,
      summary: 'One unbroken lap of the roof membrane onto the wall air barrier.',
    };
  }
  const bays = Math.round(eave_m / spacing_m);
  const tail_m = carrier === 'truss-tails' ? Math.min(depth_m, dimension('truss-tail-depth_m')) : depth_m;
  const clear_m = spacing_m - width_m;
  const perBay_m = 2 * tail_m + 2 * clear_m;
  return {
    bays,
    piercings: bays + endTails(given.roof.shape) + lookouts,
    joints: JOINTS_A_BAY * bays,
    jointLength_m: bays * perBay_m,
    jointLengthPerEave_m_m: (bays * perBay_m) / eave_m,
    eaveLength_m: eave_m,
    summary: `${bays} bays to block and seal, four joints each; every tail goes through the air barrier.`,
  };
}

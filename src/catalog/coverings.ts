/** Typed access to content/tables/coverings.json, ice-barrier.json and drip-edge.json. */
import * as v from 'valibot';
import coveringsJson from '../../content/tables/coverings.json' with { type: 'json' };
import dripJson from '../../content/tables/drip-edge.json' with { type: 'json' };
import iceJson from '../../content/tables/ice-barrier.json' with { type: 'json' };
import { metersFromInches } from '../units.ts';
import {
  coveringsTable,
  dripEdgeTable,
  iceBarrierTable,
  type Covering,
  type DripEdgeRule,
} from './schemas.ts';
import type { CoveringId } from './sets.ts';

export type { Covering, DripEdgeRule };

const table = v.parse(coveringsTable, coveringsJson);
const dripEdge = v.parse(dripEdgeTable, dripJson);
const iceBarrier = v.parse(iceBarrierTable, iceJson);

export const allCoverings = (): readonly Covering[] => table.rows;

/** The covering of an id. @throws RangeError when the table has no such row. */
export function covering(id: CoveringId): Covering {
  const found = table.rows.find((row) => row.id === id);
  if (!found) throw new RangeError(`no covering ${id} in coverings.json`);
  return found;
}

export type UnderlaymentLayers = 'not-allowed' | 'double' | 'single';

/** Whether a covering may go on a pitch, and with how many layers of underlayment. */
export function underlaymentLayers(id: CoveringId, pitch_rise_per_12: number): UnderlaymentLayers {
  const { minimumPitch_rise_per_12, doubleUnderlayment } = covering(id);
  if (!(pitch_rise_per_12 >= minimumPitch_rise_per_12)) return 'not-allowed';
  return doubleUnderlayment !== null && pitch_rise_per_12 < doubleUnderlayment.below_rise_per_12
    ? 'double'
    : 'single';
}

export const dripEdgeRules = (): readonly DripEdgeRule[] => dripEdge.rows;
export const iceBarrierRules = (): typeof iceBarrier.rows => iceBarrier.rows;

/** [in] run to which a roof pitch is stated. @source COMMON-PRACTICE (common practice) */
const PITCH_RUN = 12;

/**
 * Length of ice barrier along the slope: (overhang + inside wall line) / cos of the slope, and a least length when steep
 *
 * @param overhang_m [m] horizontal, from the exterior wall line to the edge of the finished roof, >= 0
 * @param pitch_rise_per_12 [rise in 12] pitch of the roof, > 0
 * @returns [m] along the slope from the eave edge
 * @throws RangeError when the overhang is negative or the pitch is not > 0
 * @source IRC-2018-R905.1.2 (seen-secondary)
 * @assumes the overhang is that of the finished, over-insulated roof
 */
export function iceBarrierLength_m(overhang_m: number, pitch_rise_per_12: number): number {
  if (!(overhang_m >= 0) || !(pitch_rise_per_12 > 0)) {
    throw new RangeError('the overhang must be 0 or more and the pitch above 0');
  }
  const slope = Math.hypot(1, pitch_rise_per_12 / PITCH_RUN);
  const lengths = iceBarrier.rows
    .filter((row) => pitch_rise_per_12 >= row.atPitch_rise_per_12)
    .map((row) => {
      const length_m = metersFromInches(row.length_in);
      return row.id === 'inside-wall-line' ? (overhang_m + length_m) * slope : length_m;
    });
  return Math.max(...lengths);
}

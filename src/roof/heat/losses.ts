/** What the screws and the joints between boards add, and how the whole transmittance is made up. */
import { dimension } from '../../catalog/dimensions.ts';
import type { BridgeLoss, Layer } from '../../evaluation/evaluation.ts';
import {
  airVoidCorrection_W_m2K,
  fastenerCorrection_W_m2K,
  type AirVoidLevel,
} from '../../physics/iso6946.ts';
import { insulationLayers } from '../assembly.ts';

/** [W/(m·K)] carbon steel of a screw, ISO 6946:2017 annex F (seen). */
const STEEL_W_MK = 50;
const PERCENT = 100;

const total = (layers: readonly Layer[], pick: (layer: Layer) => number): number =>
  layers.reduce((sum, layer) => sum + pick(layer), 0);

/**
 * What long screws through all of the board add.
 *
 * dU = n 0.8 (lambda A / d0) (R1 / RT,h)^2
 *
 * @param layers          [m, m²·K/W] layers of the candidate
 * @param unbridged_m2K_W [m²·K/W] air to air beside every member (RT,h)
 * @param perArea_1_m2    [1/m²] screws (n)
 * @returns               [W/(m²·K)] 0 without board or screws
 * @source                ISO-6946-2017 annex F.3 (memory)
 * @assumes               steel core of dimensions.json; heads outside the board; an upper estimate for ends in wood
 */
export function screwLoss_W_m2K(
  layers: readonly Layer[],
  unbridged_m2K_W: number,
  perArea_1_m2: number,
): number {
  const boards = insulationLayers(layers);
  const thickness_m = total(boards, (layer) => layer.thickness_m);
  if (thickness_m <= 0 || perArea_1_m2 <= 0) return 0;
  const radius_m = dimension('screw-core_m') / 2;
  return fastenerCorrection_W_m2K(
    {
      crossSection_m2: Math.PI * radius_m * radius_m,
      conductivity_W_mK: STEEL_W_MK,
      lengthInLayer_m: thickness_m,
      layerThickness_m: thickness_m,
      layerResistance_m2K_W: Math.min(
        unbridged_m2K_W,
        total(boards, (layer) => layer.resistance_m2K_W),
      ),
      totalResistance_m2K_W: unbridged_m2K_W,
    },
    perArea_1_m2,
  );
}

/**
 * Level of air voids: one layer of butted board has gaps through it, offset layers have none.
 *
 * @param layers [-] layers of the candidate
 * @returns [-] 1 for a single layer, else 0
 * @source ISO-6946-2017 annex F.2 table F.1 (memory)
 */
export const airVoidLevel = (layers: readonly Layer[]): AirVoidLevel =>
  insulationLayers(layers).length === 1 ? 1 : 0;

/**
 * What gaps between butted boards add.
 *
 * dU = dU" (R1 / RT,h)^2 with dU" 0.01 for one layer, 0 for two and more with offset joints
 *
 * @param layers          [m²·K/W] layers of the candidate
 * @param unbridged_m2K_W [m²·K/W] air to air beside every member (RT,h)
 * @returns               [W/(m²·K)] correction
 * @source                ISO-6946-2017 annex F.2 table F.1 (memory)
 * @assumes               no circulation on the warm side: the membrane lies tight under the board
 */
export function airVoidLoss_W_m2K(layers: readonly Layer[], unbridged_m2K_W: number): number {
  const board_m2K_W = total(insulationLayers(layers), (layer) => layer.resistance_m2K_W);
  return airVoidCorrection_W_m2K(
    airVoidLevel(layers),
    Math.min(unbridged_m2K_W, board_m2K_W),
    unbridged_m2K_W,
  );
}

/**
 * Each part with its share of the whole; the parts add up to the whole transmittance.
 *
 * @param parts [W/(m²·K)] what each adds
 * @returns [W/(m²·K), %] the same with shares
 * @source COMMON-PRACTICE shares of a sum (computed)
 */
export function withShares(parts: readonly Omit<BridgeLoss, 'share_pct'>[]): BridgeLoss[] {
  const whole = parts.reduce((sum, part) => sum + part.transmittance_W_m2K, 0);
  return parts.map((part) => ({ ...part, share_pct: (PERCENT * part.transmittance_W_m2K) / whole }));
}

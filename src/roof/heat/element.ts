/** A zone of the roof as an ISO 6946 element: framing, wood across the board, air layer, films. */
import { dimension } from '../../catalog/dimensions.ts';
import { materialResistance } from '../../catalog/materials.ts';
import type { CompleteCase } from '../../case/complete.ts';
import type { Layer } from '../../evaluation/evaluation.ts';
import { resistanceWithAirLayer_m2K_W, unventilatedAirLayer_m2K_W } from '../../physics/airLayers.ts';
import { elementResistance, homogeneousLayer, type ThermalLayer } from '../../physics/iso6946.ts';
import { isPanelGap } from '../assembly.ts';
import { angleOfPitch_deg } from '../geometry.ts';
import { roofOf } from '../measures.ts';
import { countedLayers, heatFlowOf, isGap } from './winter.ts';

/** [m²·K/W] a path of no resistance beside another: as good as none (our judgement). */
const NONE_M2K_W = 1e-9;
/** [mm²] one square meter. */
const MM2_PER_M2 = 1e6;
/** [m] wood thinner than this across a board is rounding. */
const THIN_M = 1e-9;

export interface Wood {
  readonly share: number;
  readonly depth_m: number;
}

/**
 * Share of the width that is open in the gap: all but the furring, or the channels of the panel.
 *
 * @param given [m] the complete case
 * @param gap   [-] the air layer
 * @returns [-] 0 to 1
 * @source COMMON-PRACTICE furring on every rafter (common practice); sizes of dimensions.json
 */
export const clearShare = (given: CompleteCase, gap: Layer): number => {
  if (gap.role === 'drainage-mat') return 1;
  if (isPanelGap(gap)) return dimension('panel-gap-share');
  return Math.max(0, 1 - dimension('furring-width_m') / given.framing.spacing_m);
};

/**
 * Openings of the air layer under the covering, eave and ridge together, for each square meter of roof.
 *
 * A = 2 h c f / L with h clear height, c clear share of the width, f free share of the screened opening, L slope length
 *
 * @param given   [m] the complete case
 * @param layers  [m] layers of the candidate
 * @returns       [mm²] per m²; 0 without an air layer
 * @source        ISO-6946-2017 6.9.2 to 6.9.4 (memory); shares of dimensions.json
 * @assumes       open at eave and ridge over the whole length
 */
export function gapOpenings_mm2(given: CompleteCase, layers: readonly Layer[]): number {
  const gap = layers.find(isGap);
  if (gap === undefined) return 0;
  const share = clearShare(given, gap) * dimension('gap-free-share');
  return (MM2_PER_M2 * 2 * gap.thickness_m * share) / roofOf(given).slopeLength_m;
}

const sideBySide = (share: number, wood_m2K_W: number, rest_m2K_W: number): ThermalLayer =>
  share <= 0
    ? homogeneousLayer(rest_m2K_W)
    : {
        paths: [
          { share: 1 - share, resistance_m2K_W: Math.max(NONE_M2K_W, rest_m2K_W) },
          { share, resistance_m2K_W: Math.max(NONE_M2K_W, wood_m2K_W) },
        ],
      };

/** A board cut at the depth that wood crosses, counted from the deck. */
function boardParts(layer: Layer, start_m: number, wood: Wood): ThermalLayer[] {
  const crossed_m = Math.min(layer.thickness_m, Math.max(0, wood.depth_m - start_m));
  if (crossed_m <= THIN_M || wood.share <= 0) return [homogeneousLayer(layer.resistance_m2K_W)];
  const crossed = crossed_m / layer.thickness_m;
  const part = sideBySide(
    wood.share,
    materialResistance('softwood', crossed_m),
    layer.resistance_m2K_W * crossed,
  );
  return crossed_m >= layer.thickness_m - THIN_M
    ? [part]
    : [part, homogeneousLayer(layer.resistance_m2K_W * (1 - crossed))];
}

function thermalLayersOf(given: CompleteCase, layers: readonly Layer[], wood: Wood, framing: number) {
  const parts: ThermalLayer[] = [];
  let board_m = 0;
  for (const layer of layers) {
    if (layer.role === 'cavity') {
      const rafter_m2K_W = layer.thickness_m > 0 ? materialResistance('softwood', layer.thickness_m) : 0;
      parts.push(sideBySide(framing, rafter_m2K_W, layer.resistance_m2K_W));
    } else if (layer.role === 'insulation') {
      parts.push(...boardParts(layer, board_m, wood));
      board_m += layer.thickness_m;
    } else if (isGap(layer)) {
      const flow = heatFlowOf(angleOfPitch_deg(given.roof.pitch_rise_per_12));
      parts.push(homogeneousLayer(unventilatedAirLayer_m2K_W(layer.thickness_m, flow)));
    } else parts.push(homogeneousLayer(layer.resistance_m2K_W));
  }
  return parts;
}

/** Limits of a zone; `framing` 0 leaves the rafters out. */
export interface ZoneResistance {
  readonly upper_m2K_W: number;
  readonly lower_m2K_W: number;
}

/**
 * Upper and lower limit of the resistance of a zone.
 *
 * Parallel path is the upper limit. A slightly ventilated air layer lies between closed and open by its openings.
 *
 * @param given    [m] the complete case
 * @param layers   [m²·K/W] layers of the candidate, labelled resistance
 * @param wood     [-, m] wood across the board
 * @param framing  [-] share of framing in the cavity, 0 to 1
 * @returns        [m²·K/W] upper and lower limit
 * @source         ISO-6946-2017 6.7.2 and 6.9 (memory)
 * @assumes        framing as wide as its lumber; members cross each other, so shares multiply
 */
export function zoneResistance(
  given: CompleteCase,
  layers: readonly Layer[],
  wood: Wood,
  framing: number,
): ZoneResistance {
  const flow = heatFlowOf(angleOfPitch_deg(given.roof.pitch_rise_per_12));
  const open = countedLayers(layers, flow);
  const of = (counted: readonly Layer[], outside_m2K_W: number) =>
    elementResistance({
      insideSurface_m2K_W: open.insideFilm_m2K_W,
      outsideSurface_m2K_W: outside_m2K_W,
      layers: thermalLayersOf(given, counted, wood, framing),
    });
  const behind = of(open.layers, open.outsideFilm_m2K_W);
  if (!open.isVented) return { upper_m2K_W: behind.upperLimit_m2K_W, lower_m2K_W: behind.lowerLimit_m2K_W };
  const openings_mm2 = gapOpenings_mm2(given, layers);
  const closed = of(layers, countedLayers([], flow).outsideFilm_m2K_W);
  return {
    upper_m2K_W: resistanceWithAirLayer_m2K_W(closed.upperLimit_m2K_W, behind.upperLimit_m2K_W, openings_mm2),
    lower_m2K_W: resistanceWithAirLayer_m2K_W(closed.lowerLimit_m2K_W, behind.lowerLimit_m2K_W, openings_mm2),
  };
}

/**
 * Share of the framing in the cavity.
 *
 * @param given  [m] the complete case
 * @param layers [-] layers of the candidate
 * @returns [-] width over spacing; 0 without a fill
 * @source COMMON-PRACTICE plane geometry (computed)
 */
export const framingShare = (given: CompleteCase, layers: readonly Layer[]): number =>
  layers.some((layer) => layer.role === 'cavity')
    ? Math.min(1, given.framing.width_m / given.framing.spacing_m)
    : 0;

/** Heat through a candidate roof: winter resistance, framing, the outrigger band and the screws. */
import { boardResistance, materialResistance } from '../catalog/materials.ts';
import { dimension } from '../catalog/dimensions.ts';
import { isBoard } from '../catalog/sets.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { Candidate, Climate, Layer, Requirements } from '../evaluation/evaluation.ts';
import { fastenerCorrection_W_m2K } from '../physics/iso6946.ts';
import {
  areaWeightedTransmittance_W_m2K,
  parallelPath_m2K_W,
  solveTemperatureDependentResistance,
} from '../physics/thermal.ts';
import { insulationLayers } from './assembly.ts';

/** [W/(m·K)] carbon steel of a screw, ISO 6946:2017 annex F (seen). */
const STEEL_W_MK = 50;
const PERCENT = 100;
/** [m²·K/W] rounding noise of a sum of resistances. */
const ROUNDING_M2K_W = 1e-9;

const isBeyondGap = (layer: Layer): boolean => layer.role === 'vent-gap' || layer.role === 'drainage-mat';

/** Layers that count for heat: those inside a vented space; ISO 6946 drops a ventilated layer and all outside it. */
function thermalLayers(layers: readonly Layer[]): { counted: Layer[]; isVented: boolean } {
  const gap = layers.findIndex(isBeyondGap);
  return gap < 0
    ? { counted: [...layers], isVented: false }
    : { counted: layers.slice(0, gap), isVented: true };
}

/** Outside film: still air under a vented covering counts as the inside film (ISO 6946:2017, 6.9.4). */
const outsideFilm_m2K_W = (isVented: boolean): number =>
  materialResistance(isVented ? 'iso-inside-up' : 'iso-outside');

/**
 * Gives every layer its resistance at its own mean temperature in the three coldest months.
 *
 * R(T) by iteration: temperatures from the resistances, resistances from the mean temperatures
 *
 * @param layers   [-] inside to outside, labelled resistance
 * @param climate  [°C] outdoor mean of the three coldest months
 * @param inside_C [°C] indoor temperature
 * @returns        [m²·K/W] the same layers with winterResistance_m2K_W set; layers beyond a gap keep theirs
 * @source         FOAM-PRODUCER-NOTE polyisocyanurate against mean temperature (seen)
 * @assumes        steady one-dimensional flow through the cavity; only polyisocyanurate changes
 */
export function withWinterResistance(
  layers: readonly Layer[],
  climate: Pick<Climate, 'coldestMean_C'>,
  inside_C: number,
): Layer[] {
  const { counted, isVented } = thermalLayers(layers);
  const fixed = (resistance_m2K_W: number) => ({ resistanceAt: () => resistance_m2K_W });
  const solution = solveTemperatureDependentResistance(
    [
      fixed(materialResistance('iso-inside-up')),
      ...counted.map((layer) => {
        const { material: id, role, thickness_m, resistance_m2K_W } = layer;
        return role === 'insulation' && id !== null && isBoard(id)
          ? { resistanceAt: (mean_C: number) => boardResistance(id, thickness_m, mean_C) }
          : fixed(resistance_m2K_W);
      }),
      fixed(outsideFilm_m2K_W(isVented)),
    ],
    inside_C,
    climate.coldestMean_C,
  );
  return layers.map((layer, index) =>
    index < counted.length
      ? { ...layer, winterResistance_m2K_W: solution.resistances_m2K_W[index + 1] ?? layer.resistance_m2K_W }
      : layer,
  );
}

const sumOf = (layers: readonly Layer[], pick: (layer: Layer) => number): number =>
  layers.reduce((sum, layer) => sum + pick(layer), 0);

/** Resistance of wood as deep as the cavity fill, beside it. */
const framingPath_m2K_W = (depth_m: number): number =>
  depth_m > 0 ? materialResistance('softwood', depth_m) : 0;

export interface Bridges {
  /** Share of the roof's area in which outriggers lie in the insulation. */
  readonly bandShare: number;
  /** Share of wood within that band. */
  readonly woodShare: number;
  /** Depth of the outrigger within the insulation, [m]. */
  readonly outriggerDepth_m: number;
  readonly screwsPerArea_1_m2: number;
}

/** Transmittance of the roof with a given insulation path: cavity and framing side by side, then in series. */
function transmittance_W_m2K(
  given: CompleteCase,
  layers: readonly Layer[],
  insulation_m2K_W: number,
): number {
  const { counted, isVented } = thermalLayers(layers);
  const cavity = counted.find((layer) => layer.role === 'cavity');
  const shared_m2K_W =
    materialResistance('iso-inside-up') +
    sumOf(
      counted.filter((layer) => layer.role !== 'cavity' && layer.role !== 'insulation'),
      (layer) => layer.resistance_m2K_W,
    ) +
    insulation_m2K_W +
    outsideFilm_m2K_W(isVented);
  if (cavity === undefined) return 1 / shared_m2K_W;
  const share = given.framing.width_m / given.framing.spacing_m;
  return (
    1 /
    parallelPath_m2K_W([
      { share: 1 - share, resistance_m2K_W: shared_m2K_W + cavity.resistance_m2K_W },
      { share, resistance_m2K_W: shared_m2K_W + framingPath_m2K_W(cavity.thickness_m) },
    ])
  );
}

/** Insulation with outriggers across part of its depth: wood and board side by side in that depth. */
function bandInsulation_m2K_W(boards: readonly Layer[], bridges: Bridges): number {
  const whole_m = sumOf(boards, (layer) => layer.thickness_m);
  const whole_m2K_W = sumOf(boards, (layer) => layer.resistance_m2K_W);
  const depth_m = Math.min(bridges.outriggerDepth_m, whole_m);
  if (depth_m <= 0 || bridges.woodShare <= 0) return whole_m2K_W;
  const share = depth_m / whole_m;
  const bridged_m2K_W = parallelPath_m2K_W([
    { share: 1 - bridges.woodShare, resistance_m2K_W: whole_m2K_W * share },
    { share: bridges.woodShare, resistance_m2K_W: materialResistance('softwood', depth_m) },
  ]);
  return bridged_m2K_W + whole_m2K_W * (1 - share);
}

function screwCorrection_W_m2K(layers: readonly Layer[], field_W_m2K: number, perArea_1_m2: number): number {
  const boards = insulationLayers(layers);
  const thickness_m = sumOf(boards, (layer) => layer.thickness_m);
  if (thickness_m <= 0 || perArea_1_m2 <= 0) return 0;
  const core_m = dimension('screw-core_m');
  return fastenerCorrection_W_m2K(
    {
      crossSection_m2: Math.PI * (core_m / 2) ** 2,
      conductivity_W_mK: STEEL_W_MK,
      lengthInLayer_m: thickness_m,
      layerThickness_m: thickness_m,
      layerResistance_m2K_W: Math.min(
        1 / field_W_m2K,
        sumOf(boards, (layer) => layer.resistance_m2K_W),
      ),
      totalResistance_m2K_W: 1 / field_W_m2K,
    },
    perArea_1_m2,
  );
}

/**
 * The thermal part of a candidate.
 *
 * U = area-weighted (field, outrigger band) by parallel path, plus the screw correction of ISO 6946 annex F
 *
 * @param given    [-] the complete case
 * @param layers   [m²·K/W] layers with winter resistance
 * @param bridges  [-] outrigger band and screws
 * @param wanted   [m²·K/W, W/(m²·K)] the code's ceiling values
 * @returns        [m²·K/W, W/(m²·K)]
 * @source         IECC-2021 R402.1 paths (memory); ISO-6946-2017 6.9 and annex F (memory)
 * @assumes        one-dimensional heat flow; framing as wide as its lumber; R path sums labelled insulation only
 */
export function thermalOf(
  given: CompleteCase,
  layers: readonly Layer[],
  bridges: Bridges,
  wanted: Pick<Requirements['ceiling'], 'resistance_m2K_W' | 'transmittance_W_m2K'>,
): Candidate['thermal'] {
  const boards = insulationLayers(layers);
  const aboveDeck_m2K_W = sumOf(boards, (layer) => layer.resistance_m2K_W);
  const aboveDeckWinter_m2K_W = sumOf(boards, (layer) => layer.winterResistance_m2K_W);
  const belowDeck_m2K_W = sumOf(
    layers.filter((layer) => layer.role === 'cavity'),
    (layer) => layer.resistance_m2K_W,
  );
  const total_m2K_W = aboveDeck_m2K_W + belowDeck_m2K_W;
  const field_W_m2K = transmittance_W_m2K(given, layers, aboveDeck_m2K_W);
  const hasBand = bridges.bandShare > 0;
  const band_W_m2K = transmittance_W_m2K(given, layers, bandInsulation_m2K_W(boards, bridges));
  const fastenerCorrection = screwCorrection_W_m2K(layers, field_W_m2K, bridges.screwsPerArea_1_m2);
  const zones_W_m2K = hasBand
    ? areaWeightedTransmittance_W_m2K([
        { area_m2: 1 - bridges.bandShare, transmittance_W_m2K: field_W_m2K },
        { area_m2: bridges.bandShare, transmittance_W_m2K: band_W_m2K },
      ])
    : field_W_m2K;
  const whole_W_m2K = zones_W_m2K + fastenerCorrection;
  const hasCavity = layers.some((layer) => layer.role === 'cavity');
  return {
    aboveDeck_m2K_W,
    aboveDeckWinter_m2K_W,
    belowDeck_m2K_W,
    total_m2K_W,
    share_pct: PERCENT * (aboveDeck_m2K_W / total_m2K_W),
    framingShare_pct: hasCavity ? (PERCENT * given.framing.width_m) / given.framing.spacing_m : 0,
    fieldTransmittance_W_m2K: field_W_m2K,
    bandTransmittance_W_m2K: hasBand ? band_W_m2K : null,
    bandShare_pct: PERCENT * bridges.bandShare,
    fastenerCorrection_W_m2K: fastenerCorrection,
    transmittance_W_m2K: whole_W_m2K,
    transmittanceSummary:
      'parallel path with surface films, outrigger band by area, screws by ISO 6946 annex F',
    meetsCeilingResistance: total_m2K_W >= wanted.resistance_m2K_W - ROUNDING_M2K_W,
    ceilingMargin_m2K_W: total_m2K_W - wanted.resistance_m2K_W,
    meetsTransmittance: whole_W_m2K <= wanted.transmittance_W_m2K,
    transmittanceMargin_W_m2K: wanted.transmittance_W_m2K - whole_W_m2K,
  };
}

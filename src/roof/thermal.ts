/** Heat through a candidate roof, zone by zone, by the parallel path and by the combined method. */
import type { CompleteCase } from '../case/complete.ts';
import type {
  BridgeLoss,
  Candidate,
  Climate,
  Layer,
  Requirements,
  ThermalZone,
} from '../evaluation/evaluation.ts';
import { insulationLayers, isPanelGap } from './assembly.ts';
import { framingShare, zoneResistance } from './heat/element.ts';
import { airVoidLevel, airVoidLoss_W_m2K, screwLoss_W_m2K, withShares } from './heat/losses.ts';
import { seasonOf } from './heat/season.ts';
import type { Zone } from './heat/zones.ts';

const PERCENT = 100;
/** [m²·K/W] rounding noise of a sum of resistances. */
const ROUNDING_M2K_W = 1e-9;

export interface Bridges {
  readonly zones: readonly Zone[];
  readonly screwsPerArea_1_m2: number;
}

const sumOf = (layers: readonly Layer[], pick: (layer: Layer) => number): number =>
  layers.reduce((sum, layer) => sum + pick(layer), 0);

const belowDeckOf = (layers: readonly Layer[]): number =>
  sumOf(
    layers.filter((layer) => layer.role === 'cavity'),
    (layer) => layer.resistance_m2K_W,
  );

interface Parts {
  readonly zones: readonly ThermalZone[];
  readonly clear_W_m2K: number;
  readonly field_W_m2K: number;
  readonly combined: Candidate['thermal']['combined'];
}

function partsOf(given: CompleteCase, layers: readonly Layer[], zones: readonly Zone[]): Parts {
  const framing = framingShare(given, layers);
  const area_m2 = zones.reduce((sum, zone) => sum + zone.area_m2, 0);
  const none = { share: 0, depth_m: 0 };
  const field = zoneResistance(given, layers, none, framing);
  const mean_m2K_W = (field.upper_m2K_W + field.lower_m2K_W) / 2;
  return {
    clear_W_m2K: 1 / zoneResistance(given, layers, none, 0).upper_m2K_W,
    field_W_m2K: 1 / field.upper_m2K_W,
    combined: {
      upperLimit_m2K_W: field.upper_m2K_W,
      lowerLimit_m2K_W: field.lower_m2K_W,
      resistance_m2K_W: mean_m2K_W,
      error_pct: (PERCENT * (field.upper_m2K_W - field.lower_m2K_W)) / (2 * mean_m2K_W),
      transmittance_W_m2K: 1 / mean_m2K_W,
    },
    zones: zones.map(({ woodShare, woodDepth_m, ...zone }) => {
      const { upper_m2K_W, lower_m2K_W } = zoneResistance(
        given,
        layers,
        { share: woodShare, depth_m: woodDepth_m },
        framing,
      );
      return {
        ...zone,
        share_pct: (PERCENT * zone.area_m2) / area_m2,
        woodShare_pct: PERCENT * woodShare,
        woodDepth_m,
        transmittance_W_m2K: 1 / upper_m2K_W,
        combined_W_m2K: 2 / (upper_m2K_W + lower_m2K_W),
      };
    }),
  };
}

const zoneLossId = { 'eave-band': 'eave-band', 'rake-band': 'rake-band', 'edge-nailers': 'nailers' } as const;

function lossesOf(layers: readonly Layer[], parts: Parts, screwsPerArea_1_m2: number): BridgeLoss[] {
  const unbridged_m2K_W = 1 / parts.clear_W_m2K;
  const isPanel = layers.some(isPanelGap);
  return withShares([
    {
      id: 'clear',
      what: 'the roof beside every member, joints and screws left out',
      transmittance_W_m2K: parts.clear_W_m2K,
    },
    {
      id: 'framing',
      what: 'rafters or trusses across the fill of the cavity',
      transmittance_W_m2K: parts.field_W_m2K - parts.clear_W_m2K,
    },
    ...parts.zones.flatMap(({ id, what, share_pct, transmittance_W_m2K }) =>
      id === 'field'
        ? []
        : [
            {
              id: zoneLossId[id],
              what,
              transmittance_W_m2K: (share_pct / PERCENT) * (transmittance_W_m2K - parts.field_W_m2K),
            },
          ],
    ),
    ...(isPanel
      ? [
          {
            id: 'panel-blocking' as const,
            what: 'spacer blocks of the panel: they stand in the vented channels, outside the insulation',
            transmittance_W_m2K: 0,
          },
        ]
      : []),
    {
      id: 'screws',
      what: 'long screws through all of the board',
      transmittance_W_m2K: screwLoss_W_m2K(layers, unbridged_m2K_W, screwsPerArea_1_m2),
    },
    {
      id: 'air-voids',
      what:
        airVoidLevel(layers) === 0
          ? 'joints between boards: offset from layer to layer, no gap goes through'
          : 'joints between boards: one layer, gaps go through',
      transmittance_W_m2K: airVoidLoss_W_m2K(layers, unbridged_m2K_W),
    },
  ]);
}

/** Mean of the outrigger bands weighted by area; null where there are none. */
function bandOf(zones: readonly ThermalZone[]): { transmittance_W_m2K: number | null; share_pct: number } {
  const bands = zones.filter(({ id }) => id === 'eave-band' || id === 'rake-band');
  const share_pct = bands.reduce((sum, band) => sum + band.share_pct, 0);
  return {
    share_pct,
    transmittance_W_m2K:
      bands.length === 0
        ? null
        : bands.reduce((sum, band) => sum + band.share_pct * band.transmittance_W_m2K, 0) / share_pct,
  };
}

/** What a stack of boards is judged by before its overhang is known. */
export interface Goal {
  readonly aboveDeck_m2K_W: number;
  readonly aboveDeckWinter_m2K_W: number;
  readonly belowDeck_m2K_W: number;
  readonly meetsCeiling: boolean;
}

/**
 * R above and below the deck, and whether one of the two ceiling paths of the code is met by the field.
 *
 * R path: labelled R of boards and fill; U path: parallel path of the field, without screws, bands and joints
 *
 * @param given   [-] the complete case
 * @param layers  [m²·K/W] layers with winter resistance
 * @param wanted  [m²·K/W, W/(m²·K)] the code's ceiling values
 * @returns       [m²·K/W] sums, and whether either path is met
 * @source        IECC-2021 R402.1 paths (memory)
 * @assumes       the code's U is that of the assembly with its framing; corrections of ISO 6946 annex F come on top
 */
export function goalOf(
  given: CompleteCase,
  layers: readonly Layer[],
  wanted: Pick<Requirements['ceiling'], 'resistance_m2K_W' | 'transmittance_W_m2K'>,
): Goal {
  const boards = insulationLayers(layers);
  const aboveDeck_m2K_W = sumOf(boards, (layer) => layer.resistance_m2K_W);
  const belowDeck_m2K_W = belowDeckOf(layers);
  const meetsR = aboveDeck_m2K_W + belowDeck_m2K_W >= wanted.resistance_m2K_W - ROUNDING_M2K_W;
  return {
    aboveDeck_m2K_W,
    aboveDeckWinter_m2K_W: sumOf(boards, (layer) => layer.winterResistance_m2K_W),
    belowDeck_m2K_W,
    meetsCeiling:
      meetsR ||
      1 / zoneResistance(given, layers, { share: 0, depth_m: 0 }, framingShare(given, layers)).upper_m2K_W <=
        wanted.transmittance_W_m2K,
  };
}

/**
 * The thermal part of a candidate.
 *
 * U = area-weighted zones by parallel path + screws and air voids of ISO 6946 annex F; R effective = 1 / U
 *
 * @param given    [-] the complete case
 * @param layers   [m²·K/W] layers with winter resistance
 * @param bridges  [m², -] zones of the heated roof, and screws
 * @param wanted   [m²·K/W, W/(m²·K)] the code's ceiling values
 * @param climate  [°C·d] degree days of the heating season
 * @returns        [m²·K/W, W/(m²·K)]
 * @source         IECC-2021 R402.1 paths (memory); ISO-6946-2017 6.7, 6.9 and annex F (memory)
 * @assumes        one-dimensional heat flow; framing as wide as its lumber; R path sums labelled insulation only
 */
export function thermalOf(
  given: CompleteCase,
  layers: readonly Layer[],
  bridges: Bridges,
  wanted: Pick<Requirements['ceiling'], 'resistance_m2K_W' | 'transmittance_W_m2K'>,
  climate: Pick<Climate, 'heatingDegreeDays18_Cd'>,
): Candidate['thermal'] {
  const boards = insulationLayers(layers);
  const aboveDeck_m2K_W = sumOf(boards, (layer) => layer.resistance_m2K_W);
  const belowDeck_m2K_W = belowDeckOf(layers);
  const total_m2K_W = aboveDeck_m2K_W + belowDeck_m2K_W;
  const parts = partsOf(given, layers, bridges.zones);
  const losses = lossesOf(layers, parts, bridges.screwsPerArea_1_m2);
  const whole_W_m2K = losses.reduce((sum, loss) => sum + loss.transmittance_W_m2K, 0);
  const band = bandOf(parts.zones);
  return {
    aboveDeck_m2K_W,
    aboveDeckWinter_m2K_W: sumOf(boards, (layer) => layer.winterResistance_m2K_W),
    belowDeck_m2K_W,
    total_m2K_W,
    share_pct: PERCENT * (aboveDeck_m2K_W / total_m2K_W),
    framingShare_pct: PERCENT * framingShare(given, layers),
    fieldTransmittance_W_m2K: parts.field_W_m2K,
    bandTransmittance_W_m2K: band.transmittance_W_m2K,
    bandShare_pct: band.share_pct,
    fastenerCorrection_W_m2K: losses.find(({ id }) => id === 'screws')?.transmittance_W_m2K ?? 0,
    transmittance_W_m2K: whole_W_m2K,
    effectiveResistance_m2K_W: 1 / whole_W_m2K,
    combined: parts.combined,
    zones: [...parts.zones],
    losses,
    season: seasonOf(
      climate,
      whole_W_m2K,
      bridges.zones.reduce((sum, zone) => sum + zone.area_m2, 0),
    ),
    transmittanceSummary:
      'parallel path with surface films over the heated roof, outrigger bands by area, screws and joints by ISO 6946 annex F',
    meetsCeilingResistance: total_m2K_W >= wanted.resistance_m2K_W - ROUNDING_M2K_W,
    ceilingMargin_m2K_W: total_m2K_W - wanted.resistance_m2K_W,
    meetsTransmittance: whole_W_m2K <= wanted.transmittance_W_m2K,
    transmittanceMargin_W_m2K: wanted.transmittance_W_m2K - whole_W_m2K,
  };
}

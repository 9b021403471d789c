/** Loads on a candidate roof for the screening of edges and fasteners. All provisional. */
import type { CompleteCase } from '../case/complete.ts';
import type { Layer, NamedLoad, SiteLoads } from '../evaluation/evaluation.ts';
import { roofLive } from '../structure/live.ts';
import { sine } from './geometry.ts';
import { once } from './memo.ts';
import { namedLoad } from './namedLoad.ts';
import { allowableSnow_Pa, eaveIceOn, namedSnow, siteSnow, type SiteSnow } from './snowLoads.ts';
import { meanRoofHeight_m } from './windEdition.ts';
import { namedWind, siteWind, windGaps, windOf, type SiteWind } from './windLoads.ts';

/** [m/s²] standard gravity (BIPM SI brochure, 9th edition). */
const GRAVITY = 9.80665;

/** All numbers, so that the remembered parts can be keyed by them. */
export interface RoofLoad {
  /** Everything above the framing, per slope area. */
  readonly dead_Pa: number;
  /** Everything above the insulation, per slope area. */
  readonly upper_Pa: number;
  /** Roof snow on the horizontal projection, allowable-stress level. */
  readonly snow_Pa: number;
  /** Lee side after wind over the ridge, at the eave; null where not asked for or not covered. */
  readonly unbalanced_Pa: number | null;
  /** Snow and drift below a higher roof together; null without one. */
  readonly drift_Pa: number | null;
  /** The greatest of balanced snow, the lee side's mean over the slope, and drift at the step: what slides. */
  readonly slidingSnow_Pa: number;
  /** Ice of twice the flat snow on the overhang, where the standard asks for it; else null. */
  readonly eaveIce_Pa: number | null;
  /** The same where it is shown as a robust check only; else null. */
  readonly robustIce_Pa: number | null;
  readonly live_Pa: number;
  /** Strength-level pressures square to the slope; null when the tables do not reach this roof. */
  readonly cornerUplift_Pa: number | null;
  readonly overhangUplift_Pa: number | null;
  readonly overhangDownward_Pa: number | null;
  readonly rakeUplift_Pa: number | null;
  readonly rakeDownward_Pa: number | null;
}

interface SiteParts {
  readonly snow: SiteSnow;
  readonly wind: SiteWind;
  readonly live_Pa: number;
}

/** What the place puts on every candidate, computed once for a case. */
const partsOf = (given: CompleteCase): SiteParts =>
  once(given, 'site-loads', () => ({
    snow: siteSnow(given),
    wind: siteWind(given),
    live_Pa: roofLive(given.roof.pitch_rise_per_12),
  }));

const weight_Pa = (layers: readonly Layer[]): number =>
  GRAVITY * layers.reduce((sum, layer) => sum + layer.mass_kg_m2, 0);

/** Air that moves below the covering. */
const isVentilated = (layers: readonly Layer[]): boolean =>
  layers.some((layer) => layer.role === 'vent-gap' || layer.role === 'drainage-mat');
const resistance_m2K_W = (layers: readonly Layer[]): number =>
  layers
    .filter((layer) => layer.role === 'cavity' || layer.role === 'insulation')
    .reduce((sum, layer) => sum + layer.resistance_m2K_W, 0);

const iceOn = (given: CompleteCase, layers: readonly Layer[]) =>
  eaveIceOn(partsOf(given).snow, {
    resistance_m2K_W: resistance_m2K_W(layers),
    ventilated: isVentilated(layers),
    overhang_m: given.overhang.eave_m,
  });

/**
 * Dead, snow, live and wind on a candidate.
 *
 * dead = g Σ mass of the layers above the framing; snow, ice and drift in allowable-stress combinations; wind at strength
 *
 * @param given   [-] the complete case
 * @param layers  [kg/m², m²K/W] its layers
 * @returns       [Pa] see RoofLoad
 * @source        ASCE-7-16 chapters 4, 7 and 30 (seen-transcription): confirm in the standard
 * @assumes       house fully enclosed; wind null on shapes and slopes that the tables leave out
 */
export function loadsOn(given: CompleteCase, layers: readonly Layer[]): RoofLoad {
  const { snow, wind, live_Pa } = partsOf(given);
  const allowable = (load_Pa: number): number => allowableSnow_Pa(snow, load_Pa);
  const insulationEnd = layers.findLastIndex((layer) => layer.role === 'insulation');
  const deck = layers.findIndex((layer) => layer.role === 'deck');
  const ice = iceOn(given, layers);
  const eave = windOf(wind, 'eave-overhang');
  const rake = windOf(wind, 'rake-overhang');
  const drift_Pa = snow.drift === null ? null : allowable(snow.balanced_Pa + snow.drift.surcharge_Pa);
  return {
    dead_Pa: weight_Pa(layers.slice(deck)),
    upper_Pa: weight_Pa(layers.slice(insulationEnd + 1)),
    snow_Pa: allowable(snow.balanced_Pa),
    unbalanced_Pa: snow.unbalancedAtEave_Pa === null ? null : allowable(snow.unbalancedAtEave_Pa),
    drift_Pa,
    slidingSnow_Pa: Math.max(
      allowable(snow.balanced_Pa),
      allowable(snow.unbalancedMean_Pa ?? 0),
      drift_Pa ?? 0,
    ),
    eaveIce_Pa: ice.isAsked ? ice.load_Pa : null,
    robustIce_Pa: ice.isAsked ? null : ice.load_Pa,
    live_Pa,
    cornerUplift_Pa: windOf(wind, 'corner').uplift_Pa,
    overhangUplift_Pa: eave.uplift_Pa,
    overhangDownward_Pa: eave.downward_Pa,
    rakeUplift_Pa: rake.uplift_Pa,
    rakeDownward_Pa: rake.downward_Pa,
  };
}

/**
 * The loads of one build-up by name: what lies on it, and the ice that its R and its gap decide.
 *
 * @returns  [Pa] named loads with clause and grade
 * @source   ASCE-7-16 section 7.4.5 (seen-secondary)
 */
export function namedLoadsOf(given: CompleteCase, layers: readonly Layer[], load: RoofLoad): NamedLoad[] {
  const ice = iceOn(given, layers);
  const own = {
    level: 'service',
    source: 'COMMON-PRACTICE',
    clause: 'weights of the layers',
    known: 'computed',
    confirm: false,
  } as const;
  return [
    namedLoad('dead', 'Dead load above the framing, per slope area', load.dead_Pa, own),
    namedLoad('dead-upper', 'Of it above the insulation', load.upper_Pa, own),
    namedLoad('eave-ice', 'Eave ice, twice the flat roof snow', ice.load_Pa, {
      level: 'allowable',
      source: 'ASCE-7-16',
      clause: '7.4.5',
      known: 'seen-secondary',
      confirm: true,
      note: ice.note,
    }),
  ];
}

/** Where a shape has snow rules that are not read here. */
function snowGaps(given: CompleteCase): SiteLoads['notCovered'] {
  const { shape, dormers, valleys } = given.roof;
  const gaps: SiteLoads['notCovered'] = [];
  if (shape === 'gambrel' || shape === 'cross-gable')
    gaps.push({
      what: 'Snow over the ridge and in valleys',
      reason: `Unbalanced snow is read here for gable and hip roofs, not for a ${shape === 'gambrel' ? 'gambrel' : 'cross gable'}.`,
      todo: 'The engineer adds the unbalanced cases, and the snow that slides and drifts into valleys.',
    });
  if (dormers > 0 || (valleys > 0 && shape !== 'cross-gable'))
    gaps.push({
      what: 'Drift at dormers and valleys',
      reason: 'Snow piles up against dormer walls and in valleys; their sizes are not asked for.',
      todo: 'The engineer adds the drifts where the roof is broken.',
    });
  return gaps;
}

function standardReason(given: CompleteCase): string {
  if (given.loads.standard !== undefined) return 'Named by the authority.';
  const { edition } = given.codes;
  if (edition === '2024') return 'The 2024 codes name the 2022 edition.';
  if (edition === '2015')
    return 'The 2015 codes name the 2010 edition, which is not read here; the 2016 edition stands in.';
  return `The ${edition} codes name the 2016 edition.`;
}

function openQuestions(given: CompleteCase, live_Pa: number): string[] {
  const { loads } = given;
  return [
    'Which ground snow, wind speed and exposure does the authority use here?',
    ...(loads.onHill ? ['What is the topographic factor of the hill or ridge?'] : []),
    ...(loads.upperRoofLength_m === undefined
      ? ['Does snow blow or slide onto this roof from a higher one?']
      : []),
    ...(live_Pa > 0
      ? ['A worker’s 300 lb (1.33 kN) at the tip is not in this screening: does it govern?']
      : []),
  ];
}

/**
 * Loads of the place that all candidates share, by name, with what the tables leave out.
 *
 * snow, wind and live load of loadsOn, each with level, clause and grade
 *
 * @param given  [-] the complete case
 * @returns      [-] see SiteLoads; provisional
 * @source       ASCE-7-16 chapters 4, 7, 26, 30 (seen-transcription): confirm in the standard
 */
export function siteLoadsOf(given: CompleteCase): SiteLoads {
  const { snow, wind, live_Pa } = partsOf(given);
  return {
    provisional: true,
    standard: wind.site.edition,
    standardReason: standardReason(given),
    snowStandard: snow.standard,
    snowStandardReason:
      snow.standard === 'asce7-22'
        ? 'The ground snow is a strength figure of the 2022 maps: combinations take 0.7 of the roof snow.'
        : 'The ground snow counts as a figure of older maps: combinations take the roof snow whole.',
    meanRoofHeight_m: meanRoofHeight_m(given),
    edgeWidth_m: wind.edgeWidth_m,
    loads: [
      ...namedSnow(given, snow),
      namedLoad('roof-live', 'Roof live load of people and tools', live_Pa, {
        level: 'allowable',
        source: 'ASCE-7-16',
        clause: '4.8',
        known: 'memory',
        confirm: true,
      }),
      ...namedWind(given, wind),
    ],
    windZones: [...wind.zones],
    notCovered: [...windGaps(wind), ...snowGaps(given)],
    open: openQuestions(given, live_Pa),
  };
}

/**
 * Pull down the slope of what lies above the insulation, snow included, per slope area.
 *
 * (D + S) sin(angle)
 *
 * @param load       [Pa] dead load above the insulation (D) and the snow that pulls most down the slope (S)
 * @param angle_deg  [deg] slope
 * @returns          [Pa] along the slope
 * @source           COMMON-PRACTICE statics of a sloped plane (computed)
 * @assumes          roof snow taken on the slope area, which is more than its horizontal projection
 */
export const alongSlope_Pa = (load: RoofLoad, angle_deg: number): number =>
  (load.upper_Pa + load.slidingSnow_Pa) * sine(angle_deg);

/**
 * Which snow pulls most down the slope.
 *
 * @param load  [Pa] roof snow, drift, and the greatest
 * @returns     [-] balanced, unbalanced or drift
 * @source      ASCE-7-16 chapter 7, cases of snow (seen-transcription)
 */
export function slidingSnowCase(load: RoofLoad): 'balanced' | 'unbalanced' | 'drift' {
  if (load.slidingSnow_Pa <= load.snow_Pa) return 'balanced';
  return load.slidingSnow_Pa === load.drift_Pa ? 'drift' : 'unbalanced';
}

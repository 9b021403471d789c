/** Wind on the zones of this roof and on its overhangs by the edition that counts. Provisional. */
import type { CompleteCase } from '../case/complete.ts';
import type { NamedLoad, SiteLoads, WindZoneLoad } from '../evaluation/evaluation.ts';
import { squareMetersFromSquareFeet } from '../units.ts';
import {
  edgeWidth,
  exposureCoefficient,
  groundElevationFactor,
  roofWindPressure,
  velocityPressure,
  type WindShape,
  type WindSite,
  type WindZone,
} from '../structure/wind.ts';
import { angleOfPitch_deg } from './geometry.ts';
import { namedLoad } from './namedLoad.ts';
import { windGapOf, windSiteOf } from './windEdition.ts';

/** [m²] 10 ft², smallest effective area of the tables (ASCE/SEI 7-16, seen-transcription). */
const SMALL_AREA_M2 = squareMetersFromSquareFeet(10);

export interface SiteWind {
  readonly site: WindSite;
  readonly velocityPressure_Pa: number;
  readonly zones: readonly WindZoneLoad[];
  readonly edgeWidth_m: number | null;
  /** Why the tables do not reach this roof; null when they do. */
  readonly notCovered: string | null;
}

type ZoneId = WindZoneLoad['id'];
const zoneNames: Readonly<
  Record<WindSite['edition'], Readonly<Record<WindShape, Readonly<Record<ZoneId, readonly WindZone[]>>>>>
> = {
  'asce7-16': {
    gable: {
      field: ['1'],
      edge: ['2e', '2n', '2r'],
      corner: ['3e', '3r'],
      'eave-overhang': ['2e', '3e'],
      'rake-overhang': ['2n', '3e', '3r'],
    },
    hip: {
      field: ['1'],
      edge: ['2e', '2r'],
      corner: ['3'],
      'eave-overhang': ['2e', '3'],
      'rake-overhang': [],
    },
  },
  'asce7-22': {
    gable: {
      field: ['1'],
      edge: ['2'],
      corner: ['3'],
      'eave-overhang': ['2', '3'],
      'rake-overhang': ['2', '3'],
    },
    hip: {
      field: ['1'],
      edge: ['2'],
      corner: ['3'],
      'eave-overhang': ['2', '3'],
      'rake-overhang': [],
    },
  },
};

/**
 * Wind on field, edge, corner and overhangs, strength level.
 *
 * the greatest suction and pressure over the zones of each group, at the smallest effective area
 *
 * @param given  [-] the complete case
 * @returns      [Pa] by zone; zones empty where no table reaches, with the reason
 * @source       ASCE-7-16 chapters 26 and 30 (seen-transcription); ASCE-7-22 (seen-transcription): confirm in the standard
 * @assumes      enclosed house; a larger effective area would lower the pressures
 */
export function siteWind(given: CompleteCase): SiteWind {
  const site = windSiteOf(given);
  const angle_deg = angleOfPitch_deg(given.roof.pitch_rise_per_12);
  const velocityPressure_Pa = velocityPressure(site);
  const notCovered = windGapOf(given)?.reason ?? null;
  const { shape, length_m, width_m } = given.roof;
  if (notCovered !== null || (shape !== 'gable' && shape !== 'hip'))
    return { site, velocityPressure_Pa, zones: [], edgeWidth_m: null, notCovered };
  const least_m = Math.min(length_m, width_m);
  const zones = Object.entries(zoneNames[site.edition][shape]).flatMap(([id, names]): WindZoneLoad[] => {
    const part = id.endsWith('overhang') ? 'overhang' : 'roof';
    const found = names.flatMap((zone) => {
      const pressure = roofWindPressure(
        site,
        {
          roofShape: shape,
          angle_deg,
          zone,
          effectiveArea_m2: SMALL_AREA_M2,
          heightToWidth: site.meanRoofHeight_m / least_m,
        },
        part,
      );
      return pressure.kind === 'notCovered' ? [] : [pressure];
    });
    if (names.length === 0) return [];
    return [
      {
        id: id as ZoneId,
        zones: [...names],
        effectiveArea_m2: SMALL_AREA_M2,
        uplift_Pa: found.length === 0 ? null : Math.min(...found.map((one) => one.uplift_Pa)),
        downward_Pa: found.length === 0 ? null : Math.max(...found.map((one) => one.downward_Pa)),
      },
    ];
  });
  return {
    site,
    velocityPressure_Pa,
    zones,
    edgeWidth_m: edgeWidth(least_m, site.meanRoofHeight_m),
    notCovered: null,
  };
}

/**
 * Uplift and pressure of one zone; null where no table reaches.
 *
 * @returns  [Pa] strength level
 * @source   ASCE-7-16 chapter 30 (seen-transcription)
 */
export const windOf = (
  wind: SiteWind,
  id: ZoneId,
): { readonly uplift_Pa: number | null; readonly downward_Pa: number | null } =>
  wind.zones.find((zone) => zone.id === id) ?? { uplift_Pa: null, downward_Pa: null };

/**
 * The wind of the place by name.
 *
 * @returns  [Pa, -] named loads and factors with clause and grade
 * @source   ASCE-7-16 chapter 26 (seen-transcription)
 */
export function namedWind(given: CompleteCase, wind: SiteWind): NamedLoad[] {
  const { site } = wind;
  const source = site.edition === 'asce7-22' ? 'ASCE-7-22' : 'ASCE-7-16';
  const factor = {
    unit: 'ratio',
    level: 'factor',
    source,
    known: 'seen-transcription',
    confirm: true,
  } as const;
  return [
    namedLoad('wind-speed', `Basic wind speed, exposure ${site.exposure}`, site.basicSpeed_m_s, {
      unit: 'm/s',
      level: 'strength',
      source: 'USER',
      clause: 'answered or assumed: the authority’s figure governs',
      known: 'our judgement',
      confirm: true,
    }),
    namedLoad(
      'exposure-coefficient',
      'Exposure coefficient Kz at the mean roof height',
      exposureCoefficient(site.edition, site.exposure, site.meanRoofHeight_m),
      { ...factor, clause: 'Table 26.10-1' },
    ),
    namedLoad('topographic-factor', 'Topographic factor Kzt', site.topographicFactor ?? 1, {
      ...factor,
      source: 'USER',
      clause: '26.8',
      known: 'our judgement',
      ...(given.loads.onHill
        ? { note: 'A hill or ridge is named: the engineer works it out from its shape.' }
        : {}),
    }),
    namedLoad(
      'elevation-factor',
      'Ground elevation factor Ke',
      groundElevationFactor(site.groundElevation_m ?? 0),
      {
        ...factor,
        clause: 'Table 26.9-1',
      },
    ),
    namedLoad('velocity-pressure', 'Velocity pressure, directionality 0.85 in', wind.velocityPressure_Pa, {
      ...factor,
      unit: 'Pa',
      level: 'strength',
      clause: 'eq. 26.10-1',
    }),
  ];
}

/**
 * What the wind leaves to the engineer.
 *
 * @returns  [-] reason and task; empty where the tables reach
 * @source   OUR-JUDGEMENT
 */
export const windGaps = (wind: SiteWind): SiteLoads['notCovered'] =>
  wind.notCovered === null
    ? []
    : [
        {
          what: 'Wind',
          reason: wind.notCovered,
          todo: 'The engineer takes the pressures of field, edges, corners and overhangs from the figure of this roof, and screens ties and screws with them.',
        },
      ];

/** Snow on this roof: flat, sloped, over the ridge, below a higher roof, ice at the eave. Provisional. */
import { covering } from '../catalog/coverings.ts';
import { dimension } from '../catalog/dimensions.ts';
import type { CompleteCase } from '../case/complete.ts';
import type { NamedLoad, SiteLoads } from '../evaluation/evaluation.ts';
import {
  allowableStressSnow,
  eaveIce,
  flatRoofSnow,
  lowSlopeMinimum,
  slopeFactor,
} from '../structure/snow.ts';
import { stepDrift, unbalancedSnow, type StepDrift, type UnbalancedSnow } from '../structure/snowDrift.ts';
import { angleOfPitch_deg, measureRoof } from './geometry.ts';
import { namedLoad } from './namedLoad.ts';

export interface SiteSnow {
  readonly standard: SiteLoads['snowStandard'];
  readonly flat_Pa: number;
  readonly slopeFactor: number;
  readonly sloped_Pa: number;
  /** The greater of sloped snow and the least load of a low slope. */
  readonly balanced_Pa: number;
  readonly minimum_Pa: number;
  /** Null on shapes whose snow over the ridge no formula here covers. */
  readonly unbalanced: UnbalancedSnow | null;
  /** What the lee side puts on the eave; null where it is not asked for or not covered. */
  readonly unbalancedAtEave_Pa: number | null;
  /** Mean of the lee side from eave to ridge, surcharge in; null likewise. */
  readonly unbalancedMean_Pa: number | null;
  readonly drift: StepDrift | null;
}

/** Snow that blows over the ridge is covered on these shapes alone. */
const hasRidgeRule = (shape: CompleteCase['roof']['shape']): boolean => shape === 'gable' || shape === 'hip';

/**
 * Snow that all candidates share, at the level of the ground snow given.
 *
 * ps = Cs 0.7 Ce Ct Is pg, at least the low-slope minimum; lee side, surcharge and step drift beside it
 *
 * @param given  [-] the complete case
 * @returns      [Pa] on the horizontal projection
 * @source       ASCE-7-16 chapter 7 (seen-transcription); ASCE-7-22 chapter 7 (seen-transcription): confirm in the standard
 * @assumes      one slope factor for the whole roof; the 2016 lines of Cs and Ct serve for 2022 as well
 */
export function siteSnow(given: CompleteCase): SiteSnow {
  const { groundSnow_Pa, snowLevel, snowExposureFactor, thermalFactor } = given.loads;
  const standard = snowLevel === 'strength' ? 'asce7-22' : 'asce7-16';
  const importanceFactor = standard === 'asce7-22' ? 1 : given.loads.importanceFactor;
  const winter = standard === 'asce7-22' ? { winterWindShare: dimension('winter-wind-parameter') } : {};
  const angle_deg = angleOfPitch_deg(given.roof.pitch_rise_per_12);
  const flat_Pa = flatRoofSnow({
    groundSnow_Pa,
    exposureFactor: snowExposureFactor,
    thermalFactor,
    importanceFactor,
    edition: standard,
  });
  const share = slopeFactor(angle_deg, thermalFactor, covering(given.covering.kind).slippery);
  const sloped_Pa = flat_Pa * share;
  const minimum_Pa = lowSlopeMinimum(groundSnow_Pa, importanceFactor, angle_deg);
  const balanced_Pa = Math.max(sloped_Pa, minimum_Pa);
  const { run_m } = measureRoof({
    ...given.roof,
    angle_deg,
    eaveOverhang_m: given.overhang.eave_m,
    rakeOverhang_m: given.overhang.rake_m,
  });
  const unbalanced = hasRidgeRule(given.roof.shape)
    ? unbalancedSnow({
        groundSnow_Pa,
        sloped_Pa,
        eaveToRidge_m: run_m,
        angle_deg,
        importanceFactor,
        ...winter,
      })
    : null;
  const upper_m = given.loads.upperRoofLength_m ?? 0;
  return {
    standard,
    flat_Pa,
    slopeFactor: share,
    sloped_Pa,
    balanced_Pa,
    minimum_Pa,
    unbalanced,
    unbalancedAtEave_Pa:
      unbalanced?.required === true
        ? unbalanced.leeward_Pa + (unbalanced.surchargeExtent_m >= run_m ? unbalanced.surcharge_Pa : 0)
        : null,
    unbalancedMean_Pa:
      unbalanced?.required === true
        ? unbalanced.leeward_Pa + unbalanced.surcharge_Pa * Math.min(1, unbalanced.surchargeExtent_m / run_m)
        : null,
    drift:
      upper_m > 0 && groundSnow_Pa > 0
        ? stepDrift({
            groundSnow_Pa,
            importanceFactor,
            upperLength_m: upper_m,
            lowerLength_m: Math.max(given.roof.length_m, given.roof.width_m),
            ...winter,
          })
        : null,
  };
}

/**
 * Snow of a place in allowable-stress combinations: whole for figures of older maps, 0.7 for those of 2022.
 *
 * @returns  [Pa] allowable-stress level
 * @source   ASCE-7-16 section 2.4.1 (memory)
 */
export const allowableSnow_Pa = (snow: SiteSnow, load_Pa: number): number =>
  allowableStressSnow(snow.standard, load_Pa);

export interface EaveIceLoad {
  readonly load_Pa: number;
  readonly isAsked: boolean;
  readonly note: string;
}

/**
 * Ice on the overhang of one build-up, as an allowable-stress load.
 *
 * 2 pf over the overhang; asked for by R and ventilation, else a robust check
 *
 * @param snow   [Pa] snow of the place
 * @param input  [m²K/W, m] resistance of the roof, ventilation, overhang
 * @returns      [Pa] load, and whether the standard asks for it
 * @source       ASCE-7-16 section 7.4.5 (seen-secondary; R limits memory)
 */
export function eaveIceOn(
  snow: SiteSnow,
  input: { readonly resistance_m2K_W: number; readonly ventilated: boolean; readonly overhang_m: number },
): EaveIceLoad {
  const ice = eaveIce({ flat_Pa: snow.flat_Pa, ...input });
  return { load_Pa: allowableSnow_Pa(snow, ice.load_Pa), isAsked: ice.triggered, note: ice.note };
}

/**
 * The snow of the place by name.
 *
 * @returns  [Pa] named loads and factors with clause and grade
 * @source   ASCE-7-16 chapter 7 (seen-transcription)
 */
export function namedSnow(given: CompleteCase, snow: SiteSnow): NamedLoad[] {
  const { loads } = given;
  const isNew = snow.standard === 'asce7-22';
  const source = isNew ? 'ASCE-7-22' : 'ASCE-7-16';
  const level = isNew ? 'strength' : 'allowable';
  const from = { source, known: 'seen-transcription', confirm: true } as const;
  const factor = { unit: 'ratio', level: 'factor' } as const;
  const { unbalanced, drift } = snow;
  return [
    namedLoad('ground-snow', 'Ground snow', loads.groundSnow_Pa, {
      level,
      source: 'USER',
      clause: 'answered or assumed: the authority’s figure governs',
      known: 'our judgement',
      confirm: true,
    }),
    namedLoad('snow-exposure', 'Exposure factor Ce', loads.snowExposureFactor, {
      ...from,
      ...factor,
      clause: 'Table 7.3-1',
    }),
    namedLoad('snow-thermal', 'Thermal factor Ct', loads.thermalFactor, {
      ...from,
      ...factor,
      clause: 'Table 7.3-2',
      ...(isNew ? { note: 'The 2022 edition makes it a function of R, which is not read here.' } : {}),
    }),
    namedLoad('snow-importance', 'Importance factor Is', isNew ? 1 : loads.importanceFactor, {
      ...from,
      ...factor,
      clause: 'Table 1.5-2',
      known: 'memory',
      ...(isNew ? { note: 'In the mapped figure of 2022.' } : {}),
    }),
    namedLoad('flat-snow', 'Flat roof snow 0.7 Ce Ct Is pg', snow.flat_Pa, {
      ...from,
      level,
      clause: 'eq. 7.3-1',
    }),
    namedLoad('slope-factor', 'Slope factor Cs', snow.slopeFactor, {
      ...from,
      ...factor,
      clause: 'Figure 7.4-1',
      ...(isNew ? { note: 'Lines of the 2016 edition.' } : {}),
    }),
    namedLoad('sloped-snow', 'Sloped roof snow', snow.sloped_Pa, { ...from, level, clause: '7.4' }),
    ...(snow.minimum_Pa > 0
      ? [
          namedLoad('low-slope-snow', 'Least snow of a low slope, a case of its own', snow.minimum_Pa, {
            ...from,
            level,
            clause: '7.3.4',
          }),
        ]
      : []),
    ...(unbalanced?.required === true
      ? [
          namedLoad('windward-snow', 'Unbalanced: windward side', unbalanced.windward_Pa, {
            ...from,
            level,
            clause: '7.6.1',
          }),
          namedLoad('leeward-snow', 'Unbalanced: lee side, eave and all', unbalanced.leeward_Pa, {
            ...from,
            level,
            clause: '7.6.1',
          }),
          ...(unbalanced.surcharge_Pa > 0
            ? [
                namedLoad(
                  'ridge-surcharge',
                  'Unbalanced: on top of it next to the ridge',
                  unbalanced.surcharge_Pa,
                  {
                    ...from,
                    level,
                    clause: '7.6.1',
                    ...(isNew ? { note: 'Winter wind parameter taken at the high end of the map.' } : {}),
                  },
                ),
                namedLoad('ridge-extent', 'Level width of that strip', unbalanced.surchargeExtent_m, {
                  ...from,
                  unit: 'm',
                  level: 'factor',
                  clause: '7.6.1',
                }),
              ]
            : []),
        ]
      : []),
    ...(drift === null
      ? []
      : [
          namedLoad(
            'step-drift',
            'Drift below the higher roof, at the step, on top of the snow',
            drift.surcharge_Pa,
            {
              ...from,
              level,
              clause: '7.7.1',
              known: 'memory',
              note: 'A step lower than the drift holds less; the whole drift is taken.',
            },
          ),
          namedLoad('drift-width', 'Level width over which the drift runs out', drift.width_m, {
            ...from,
            unit: 'm',
            level: 'factor',
            clause: '7.7.1',
            known: 'memory',
          }),
        ]),
  ];
}

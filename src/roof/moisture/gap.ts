/** What moving air under the covering carries away, as a permeance. */
import { dimension } from '../../catalog/dimensions.ts';
import type { CompleteCase } from '../../case/complete.ts';
import type { Climate, GapFlow, Layer } from '../../evaluation/evaluation.ts';
import { buoyancyFlow, equivalentPermeance_ng } from '../../physics/airGap.ts';
import { isPanelGap } from '../assembly.ts';
import { angleOfPitch_deg } from '../geometry.ts';
import { clearShare } from '../heat/element.ts';
import { isGap } from '../heat/winter.ts';
import { roofOf } from '../measures.ts';

/** [s] one hour. */
const SECONDS_PER_HOUR = 3600;

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Clear height along which air rises: cross battens lie across it and do not count. */
const flowHeight_m = (gap: Layer): number =>
  isPanelGap(gap) ? gap.thickness_m : Math.min(gap.thickness_m, dimension('furring-height_m'));

/**
 * Flow in the gap of a candidate and the permeance that it stands for.
 *
 * Buoyancy of a stated excess temperature against stated losses; P = ACH h c / (3600 Rv T) with c the clear share
 * of the width. A drainage mat keeps a stated exchange.
 *
 * @param given    [m] the complete case
 * @param layers   [m] layers of the candidate
 * @param climate  [°C] twelve months, of which the mean is taken
 * @returns        [1/h, m/s, K, -, ng/(Pa·s·m²)] null without a gap
 * @source         OUR-JUDGEMENT excess and losses of dimensions.json; textbook plate flow (memory)
 * @assumes        open and straight from eave to ridge, no wind; outdoor air at the mean of the year
 */
export function gapFlowOf(given: CompleteCase, layers: readonly Layer[], climate: Climate): GapFlow | null {
  const gap = layers.find(isGap);
  if (gap === undefined) return null;
  const outdoor_C = meanOf(climate.monthlyTemperature_C);
  const { slopeLength_m } = roofOf(given);
  if (gap.role === 'drainage-mat') {
    const airChanges_1_h = dimension('mat-air-changes_1_h');
    return {
      airChanges_1_h,
      velocity_m_s: (airChanges_1_h * slopeLength_m) / SECONDS_PER_HOUR,
      excess_K: 0,
      lossCoefficient: 0,
      equivalentPermeance_ng: equivalentPermeance_ng(airChanges_1_h, gap.thickness_m, outdoor_C),
      basis: 'a stated exchange of air in the mat (our judgement); no estimate covers a tangle of threads',
    };
  }
  const height_m = flowHeight_m(gap);
  const excess_K = dimension('gap-excess_K');
  const lossCoefficient = dimension('gap-loss-coefficient');
  const flow = buoyancyFlow(
    {
      height_m,
      length_m: slopeLength_m,
      angle_deg: angleOfPitch_deg(given.roof.pitch_rise_per_12),
      lossCoefficient,
    },
    excess_K,
    outdoor_C,
  );
  return {
    airChanges_1_h: flow.airChanges_1_h,
    velocity_m_s: flow.velocity_m_s,
    excess_K,
    lossCoefficient,
    equivalentPermeance_ng:
      clearShare(given, gap) * equivalentPermeance_ng(flow.airChanges_1_h, height_m, outdoor_C),
    basis:
      'air that rises from eave to ridge because it is a little warmer than outdoors, against stated losses; no wind, so a low estimate (our judgement)',
  };
}

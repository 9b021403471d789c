/**
 * Saturation pressure and dew point against two registry packages and the steam tables' formulas, each over the
 * whole range in which it is meant. psychrolib uses Hyland and Wexler as the ashrae method does; dewpoint uses the
 * Magnus formula with the constants of the World Meteorological Organization: 611.2 Pa, 17.62 and 243.12 °C over
 * water (-45 to 60 °C), 22.46 and 272.62 °C over ice (-65 to 0.01 °C), claimed within 0.3 and 0.5 %.
 */
import DewPoint from 'dewpoint';
import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import {
  type SaturationMethod,
  dewPointFromHumidity_C,
  saturationVaporPressure_Pa,
} from '../../src/physics/psychrometrics.ts';
import { industrialFormula_Pa, sublimation_Pa } from '../support/iapws.ts';

psychrolib.SetUnitSystem(psychrolib.SI);
const magnus = new DewPoint(0);
const SEA_LEVEL_PA = 101325;

const steps = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);
const HUMIDITIES_PCT = steps(5, 100, 5);

/** The package gives water per dry air; at 100 % that is its saturation pressure. */
function magnusSaturation_Pa(temperature_C: number): number {
  const { x } = magnus.Calc(temperature_C, 100);
  return (x * SEA_LEVEL_PA) / (621.98 + x);
}

/** The greatest of a measure over points, with the point where it falls. */
function worst(points: readonly number[], measure: (point: number) => number): { off: number; at: number } {
  return points
    .map((at) => ({ off: Math.abs(measure(at)), at }))
    .reduce((most, next) => (next.off > most.off ? next : most));
}

/** A test whose name carries the live error. */
function agrees(
  what: string,
  least: number,
  greatest: number,
  limit: number,
  measure: (t: number) => number,
): void {
  const { off, at } = worst(steps(least, greatest, 0.25), measure);
  it(`${what}, ${least} to ${greatest} °C: off ${off.toExponential(1)} at ${at} °C, of ${limit}`, () => {
    expect(off).toBeLessThanOrEqual(limit);
  });
}

const relative =
  (method: SaturationMethod, reference: (t: number) => number) =>
  (t: number): number =>
    saturationVaporPressure_Pa(t, method) / reference(t) - 1;

describe('saturation pressure, relative', () => {
  // The same formula and constants: rounding only.
  agrees(
    'ashrae and psychrolib',
    -100,
    200,
    1e-12,
    relative('ashrae', (t) => psychrolib.GetSatVapPres(t)),
  );
  // Hyland-Wexler of 1983 against the formulas of 1997 and 2011, which claim 0.03 %, a rounded figure.
  agrees('ashrae and IAPWS over ice', -100, 0, 3.5e-4, relative('ashrae', sublimation_Pa));
  agrees('ashrae and IAPWS over water', 0.25, 200, 3.5e-4, relative('ashrae', industrialFormula_Pa));
  // Magnus claims 0.5 % over ice and 0.3 % over water, both within those ranges.
  agrees('ashrae and dewpoint over ice', -60, -0.25, 5e-3, relative('ashrae', magnusSaturation_Pa));
  agrees('ashrae and dewpoint over water', 0, 60, 3e-3, relative('ashrae', magnusSaturation_Pa));
  // Its two other constants: 610.5 Pa, 17.269, 237.3 °C. Over ice it drifts (0.5 % at -20 °C, where annex E of the
  // standard ends its use; 2 % at -40 °C), which is why the ashrae method exists.
  agrees('iso13788 and dewpoint over ice', -20, -0.25, 5.5e-3, relative('iso13788', magnusSaturation_Pa));
  agrees('iso13788 and dewpoint over water', 0, 60, 5e-3, relative('iso13788', magnusSaturation_Pa));
});

const greatestOver =
  (measure: (t: number, humidity_pct: number) => number) =>
  (t: number): number =>
    Math.max(...HUMIDITIES_PCT.map((humidity_pct) => Math.abs(measure(t, humidity_pct))));

describe('dew point, kelvin', () => {
  // psychrolib stops its search within 0.001 K; below -70 °C dry air leaves its range.
  agrees(
    'ashrae and psychrolib, 5 to 100 %',
    -70,
    200,
    0.001,
    greatestOver(
      (t, humidity_pct) =>
        dewPointFromHumidity_C(t, humidity_pct, 'ashrae') -
        psychrolib.GetTDewPointFromRelHum(t, humidity_pct / 100),
    ),
  );
  // Two pressures count, of the air and of the dew point: over ice each off by 0.12 % (above) at 9 % per kelvin,
  // over water by 0.3 % at 5 % per kelvin.
  agrees(
    'ashrae and dewpoint, frost point',
    -40,
    -0.25,
    0.03,
    greatestOver(
      (t, humidity_pct) =>
        dewPointFromHumidity_C(t, humidity_pct, 'ashrae') - magnus.Calc(t, humidity_pct).dp,
    ),
  );
  agrees(
    'ashrae and dewpoint, dew point above freezing',
    0,
    60,
    0.12,
    greatestOver((t, humidity_pct) => {
      const { dp } = magnus.Calc(t, humidity_pct);
      return dp < 0.02 ? 0 : dewPointFromHumidity_C(t, humidity_pct, 'ashrae') - dp;
    }),
  );

  it('the package disagrees by up to 3.3 K where warm air has a frost point: it stays on its water branch', () => {
    // It picks water or ice by the air's temperature, so it gives the dew point over supercooled water.
    const { dp } = magnus.Calc(0, 5);
    const frost = dewPointFromHumidity_C(0, 5, 'ashrae');
    expect(frost - dp).toBeGreaterThan(3);
    expect(frost - dp).toBeLessThan(3.3);
    // On its ice branch the same vapor pressure gives our frost point.
    const ln = Math.log(0.05);
    expect(Math.abs(frost - (272.62 * ln) / (22.46 - ln))).toBeLessThan(0.06);
  });
});

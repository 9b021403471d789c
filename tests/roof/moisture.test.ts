import { describe, expect, it } from 'vitest';
import { planeMonthsOf } from '../../src/roof/heat/planes.ts';
import { moistureOf } from '../../src/roof/moisture/condensation.ts';
import { dryingOf } from '../../src/roof/moisture/drying.ts';
import { gapFlowOf } from '../../src/roof/moisture/gap.ts';
import type { GapFlow, Layer } from '../../src/evaluation/evaluation.ts';
import type { Variant } from '../../src/roof/variant.ts';
import { candidateOf, layersWith, panel, settingOf, type Changes } from '../support/roofs.ts';

const thick = [
  { board: 'eps', thickness_m: 0.0762 },
  { board: 'eps', thickness_m: 0.0762 },
] as const;
const never = 25;
const dry = (changes: Changes = {}, of: Partial<Variant> = {}) => {
  const { given, climate } = settingOf(changes);
  return dryingOf(given, layersWith(thick, changes, of), climate);
};
const months = (value: number | null): number => value ?? never;
const unvented: Partial<Variant> = { ventilation: 'unvented' };
const mat: Partial<Variant> = { ventilation: 'drainage-mat' };

const flowOf = (of: Partial<Variant> = {}, changes: Changes = {}): GapFlow | null => {
  const { given, climate } = settingOf(changes);
  return gapFlowOf(given, layersWith(thick, changes, of), climate);
};
const gapPermeance_ng = (layers: readonly Layer[], changes: Changes = {}): number => {
  const { given, climate } = settingOf(changes);
  return gapFlowOf(given, layers, climate)?.equivalentPermeance_ng ?? 0;
};

describe('moving air in a gap as a permeance: n h c / (3600 Rv T)', () => {
  /** Mean of the plain year, and the slope from eave edge to ridge: (4 + 0.4) / cos of 6:12. */
  const T = 273.15 + 85 / 12;
  const length_m = 4.4 * Math.sqrt(1.25);

  it('buoyancy of 1 K in 38.1 mm against a loss of 6: the velocity balances the pressures, by hand', () => {
    const flow = flowOf();
    const v = flow?.velocity_m_s ?? 0;
    const driving_Pa = (1.25 * 9.80665 * length_m * Math.sin(Math.atan(0.5)) * 1) / T;
    const lost_Pa = (12 * 1.75e-5 * length_m * v) / 0.0381 ** 2 + (6 * 1.25 * v * v) / 2;
    expect(lost_Pa).toBeCloseTo(driving_Pa, 9);
    expect(flow?.airChanges_1_h).toBeCloseTo((3600 * v) / length_m, 9);
  });

  it('counts only the width that furring leaves open', () => {
    const flow = flowOf();
    const open = 1 - 0.0889 / 0.4;
    const expected = (open * ((flow?.airChanges_1_h ?? 0) * 0.0381)) / 3600 / (461.5 * T);
    expect((flow?.equivalentPermeance_ng ?? 0) / (expected * 1e12)).toBeCloseTo(1, 3);
  });

  it('cross battens under metal do not widen the flow', () => {
    expect(flowOf({}, { 'covering.kind': 'metal-panel' })).toEqual(flowOf());
  });

  it('a steeper roof moves more air, a thinner channel less', () => {
    const changes = (flow: GapFlow | null) => flow?.airChanges_1_h ?? 0;
    expect(changes(flowOf({}, { 'roof.pitch_rise_per_12': 12 }))).toBeGreaterThan(changes(flowOf()));
    expect(changes(flowOf(panel))).toBeLessThan(changes(flowOf()));
  });

  it('a stated 5 in a mat of 10 mm, none without a gap', () => {
    const expected = ((5 * 0.01) / 3600 / (461.5 * T)) * 1e12;
    expect((flowOf(mat)?.equivalentPermeance_ng ?? 0) / expected).toBeCloseTo(1, 3);
    expect(flowOf(mat)).toMatchObject({ airChanges_1_h: 5, excess_K: 0 });
    expect(flowOf(unvented)).toBeNull();
  });
});

describe('the ways out of the nailing layer', () => {
  it('over a gap it dries into the moving air', () => {
    const found = dry();
    expect(found.inwardPermeance_ng).toBe(gapPermeance_ng(layersWith(thick)));
    expect(found).toMatchObject({ path: 'inward' });
    expect(found.verdict).toMatch(/vented space below/);
  });

  it('unvented under tight layers it dries neither way', () => {
    const found = dry({}, { ...unvented, underlayment: 'vapor-tight' });
    expect(found).toMatchObject({ path: 'neither', monthsToDryUpper: null });
    expect(found.verdict).toMatch(/a leak stays in/);
  });

  it('under a mat it dries outward through an open underlayment only: both in series, by hand', () => {
    const gap = gapPermeance_ng(layersWith(thick, {}, mat));
    const found = dry({}, mat);
    expect(found.outwardPermeance_ng).toBeCloseTo(1 / (1 / 1716.41 + 1 / gap), 2);
    expect(found).toMatchObject({ path: 'outward' });
    expect(dry({}, { ...mat, underlayment: 'vapor-tight' }).path).toBe('neither');
  });

  it('with no second deck the deck itself is meant: months and permeances are its own', () => {
    const metal = dry({ 'covering.kind': 'metal-panel' });
    expect(metal.monthsToDryUpper).toBe(metal.monthsToDryDeck);
    const board = (1 / 3.6331) * 0.1524;
    const onFurring = { 'covering.kind': 'metal-panel' };
    const gap = gapPermeance_ng(layersWith(thick, onFurring), onFurring);
    expect(metal.outwardPermeance_ng).toBeCloseTo(1 / (1 / 2.86 + board + 1 / gap), 2);
  });

  it('between open layers it dries to both sides, over a tight deck to one', () => {
    const wool = [{ board: 'stone-wool', thickness_m: 0.0762 }] as const;
    const on = (deck: string, underlayment: Variant['underlayment']) => {
      const changes = {
        'covering.kind': 'wood-shake',
        'belowDeck.interiorRetarder': 'none',
        'framing.deck': deck,
      };
      const { given, climate } = settingOf(changes);
      const layers = layersWith(wool, changes, { ...unvented, board: 'stone-wool', underlayment });
      return dryingOf(given, layers, climate);
    };
    expect(on('plank', 'vapor-open')).toMatchObject({
      path: 'both',
      verdict: expect.stringMatching(/both sides/) as string,
    });
    expect(on('plywood', 'vapor-open')).toMatchObject({
      path: 'outward',
      verdict: expect.stringMatching(/outward only/) as string,
    });
    expect(on('plank', 'vapor-tight')).toMatchObject({
      path: 'inward',
      verdict: expect.stringMatching(/inward only/) as string,
    });
  });
});

describe('months for 1 kg/m² from October', () => {
  it('a vented second deck dries sooner than one under a mat, that sooner than an unvented one', () => {
    const vented = months(dry().monthsToDryUpper);
    const onMat = months(dry({}, mat).monthsToDryUpper);
    expect(vented).toBeLessThan(onMat);
    expect(onMat).toBeLessThan(months(dry({}, unvented).monthsToDryUpper));
    expect(months(dry({}, panel).monthsToDryUpper)).toBeLessThan(
      months(dry({}, { ...panel, ...unvented }).monthsToDryUpper),
    );
  });

  it('a warmer year dries it no later', () => {
    const warm = { 'place.monthlyTemperature_C': Array.from({ length: 12 }, () => 18) };
    expect(months(dry(warm).monthsToDryUpper)).toBeLessThan(months(dry().monthsToDryUpper));
  });

  it('polyethylene inside keeps the deck wet longer than paint', () => {
    const plastic = dry({ 'belowDeck.interiorRetarder': 'polyethylene' });
    expect(months(plastic.monthsToDryDeck)).toBeGreaterThan(months(dry().monthsToDryDeck));
  });
});

describe('condensation over a year', () => {
  const year = (changes: Changes, of: Partial<Variant> = {}, thickness_m = 0.0254) => {
    const { given, climate } = settingOf(changes);
    const layers = layersWith([{ board: 'eps', thickness_m }], changes, of);
    return moistureOf(given, layers, climate, planeMonthsOf(given, layers, climate));
  };

  it('enough board and a dry room: none', () => {
    expect(year({ 'indoor.relativeHumidity_pct': 30 }, {}, 0.1524)).toMatchObject({
      verdict: 'none',
      peak_kg_m2: 0,
      plane: null,
    });
  });

  it('thin board, a humid room, no retarder: water at the deck or its membrane', () => {
    const wet = year({ 'indoor.relativeHumidity_pct': 60, 'belowDeck.interiorRetarder': 'none' });
    expect(wet.verdict).not.toBe('none');
    expect(wet.peak_kg_m2).toBeGreaterThan(0.1);
    expect(['cavity', 'deck']).toContain(wet.plane);
  });

  it('more humid rooms never give less water', () => {
    const peaks = [30, 40, 50, 60, 70].map(
      (humidity) => year({ 'indoor.relativeHumidity_pct': humidity }).peak_kg_m2,
    );
    expect(peaks).toEqual([...peaks].sort((a, b) => a - b));
    expect(peaks.at(-1)).toBeGreaterThan(0);
  });

  it('what lies beyond a vented gap does not matter', () => {
    const humid = { 'indoor.relativeHumidity_pct': 60 };
    expect(year({ ...humid, 'covering.kind': 'slate' })).toEqual(year(humid));
  });

  it('is the same for a candidate however its overhang is carried', () => {
    expect(candidateOf({}, { strategy: 'flush-outriggers', carrier: 'outriggers' }).moisture).toEqual(
      candidateOf().moisture,
    );
  });
});

/** Bad inputs of the structural calculations give a fault that says what is allowed, never a number. */
import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/catalog/calculation.ts';
import { structureCalculations } from '../../src/structure/calculations.ts';

const wind = {
  edition: 'asce7-16',
  basicSpeed_m_s: 51.4,
  exposure: 'B',
  meanRoofHeight_m: 6,
  roofShape: 'gable',
  angle_deg: 20,
  zone: '2n',
  part: 'roof',
  effectiveArea_m2: 1,
};
const snow = {
  groundSnow_Pa: 2000,
  exposureFactor: 1,
  thermalFactor: 1,
  importanceFactor: 1,
  angle_deg: 30,
  slippery: false,
};
const pull = { kind: 'wood-screw', diameter_m: 0.005, specificGravity: 0.42, threadPenetration_m: 0.038 };
const side = {
  diameter_m: 0.0039,
  bendingYield_Pa: 5.5e8,
  sideThickness_m: 0.019,
  sideSpecificGravity: 0.42,
  mainPenetration_m: 0.038,
  mainSpecificGravity: 0.42,
};
const outrigger = {
  member: { species: 'hem-fir', size: '2x6', orientation: 'flat' },
  spacing_m: 0.6,
  overhang_m: 0.4,
  backSpan_m: 1,
  loads: { dead_Pa: 500, snow_Pa: 1500 },
  screw: {
    kind: 'lag-screw',
    diameter_m: 0.00635,
    threadPenetration_m: 0.06,
    specificGravity: 0.43,
    heelCount: 2,
    wallCount: 2,
  },
};

function run(name: string, input: unknown) {
  const calculation = structureCalculations[name];
  if (!calculation) throw new Error(`no calculation ${name}`);
  return calculate(calculation, input);
}

describe('a good input passes', () => {
  it.each([
    ['wind-pressure', wind],
    ['snow-load', snow],
    ['screw-withdrawal', pull],
    ['screw-withdrawal', { ...pull, kind: 'lag-screw', factors: { endGrain: 0.75 } }],
    ['screw-lateral', side],
    ['outrigger', outrigger],
  ])('%s', (name, input) => {
    const result = run(name, input);
    expect(result.ok && result.output).toMatchObject({
      provisional: true,
      decidedBy: expect.any(String) as string,
    });
  });
});

describe('a bad input is a fault', () => {
  it.each([
    ['wind-pressure', { ...wind, angle_deg: 63 }, 'angle_deg', '63 is above 45'],
    ['wind-pressure', { ...wind, angle_deg: 7 }, 'angle_deg', '7 is not above 7'],
    [
      'wind-pressure',
      { ...wind, zone: '3' },
      'zone',
      '"3" is not one of 1, 2e, 2n, 2r, 3e, 3r (asce7-16, gable)',
    ],
    [
      'wind-pressure',
      { ...wind, edition: 'asce7-22' },
      'zone',
      '"2n" is not one of 1, 2, 3 (asce7-22, gable)',
    ],
    ['wind-pressure', { ...wind, meanRoofHeight_m: 25 }, 'meanRoofHeight_m', '25 is above 18.288'],
    ['wind-pressure', { ...wind, roofShape: 'shed' }, 'roofShape', '"shed" is not one of gable, hip'],
    ['snow-load', { ...snow, slippery: 'no' }, 'slippery', '"no" is not true or false'],
    ['snow-load', { ...snow, groundSnow_Pa: -1 }, 'groundSnow_Pa', '-1 is below 0'],
    ['screw-withdrawal', { ...pull, specificGravity: 0.2 }, 'specificGravity', '0.2 is below 0.31'],
    ['screw-withdrawal', { ...pull, loadDuration: 2 }, 'loadDuration', '2 is above 1.6'],
    ['screw-lateral', { ...side, gap_m: -0.1 }, 'gap_m', '-0.1 is below 0'],
    ['outrigger', { ...outrigger, overhang_m: 4 }, 'overhang_m', '4 is above 3'],
  ])('%s: %o', (name, input, path, message) => {
    const result = run(name, input);
    expect(result.ok ? [] : result.faults).toContainEqual({ path, message });
  });

  it.each([
    ['wind-pressure', { ...wind, roofShape: 'hip', zone: '2e', angle_deg: 30 }, 'angle_deg', 'not covered'],
    ['screw-withdrawal', { ...pull, factors: { endGrain: 0.75 } }, 'factors', 'only lag-screw'],
    ['snow-load', { ...snow, slippery: undefined }, 'slippery', 'missing'],
    [
      'outrigger',
      { ...outrigger, loads: { ...outrigger.loads, windUplift_Pa: 900 } },
      'loads.windUplift_Pa',
      'above 0',
    ],
    [
      'outrigger',
      { ...outrigger, screw: { ...outrigger.screw, heelCount: 1.5 } },
      'screw.heelCount',
      'whole number',
    ],
    ['outrigger', { ...outrigger, seat: { on: 'sand', bearingLength_m: 0.1 } }, 'seat.on', 'wood'],
    ['snow-load', { ...snow, groundSnow: 1 }, 'groundSnow', 'groundSnow_Pa'],
  ])('%s says why: %o', (name, input, path, words) => {
    const result = run(name, input);
    const fault = result.ok ? undefined : result.faults.find((found) => found.path === path);
    expect(fault?.message).toContain(words);
  });
});

it('the 2022 edition says which lines it took', () => {
  const result = run('snow-load', { ...snow, edition: 'asce7-22' });
  expect(JSON.stringify(result.ok && result.output)).toContain('2016 edition');
});
it('a lag screw without head says that pull-through is open; a seat on wood shows its bearing', () => {
  const result = run('outrigger', { ...outrigger, seat: { on: 'wood', bearingLength_m: 0.089 } });
  const text = JSON.stringify(result.ok && result.output);
  expect(text).toContain('not screened');
  expect(text).toContain('outrigger-seat');
});

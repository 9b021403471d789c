import { describe, expect, it } from 'vitest';
import type { Candidate } from '../../src/evaluation/evaluation.ts';
import { airBarrierOf, wallLine_m } from '../../src/roof/airBarrier.ts';
import { measureRoof, type EdgeCarrier } from '../../src/roof/geometry.ts';
import { completed, settingOf, type Changes } from '../support/roofs.ts';

function barrier(changes: Changes = {}, carrier: EdgeCarrier = 'rafter-tails'): Candidate['airBarrier'] {
  const { given, requirements } = settingOf(changes);
  const { eave_m, rake_m } = given.overhang;
  const { angle_deg } = requirements.slope;
  const roof = measureRoof({ ...given.roof, angle_deg, eaveOverhang_m: eave_m, rakeOverhang_m: rake_m });
  return airBarrierOf(given, carrier, roof);
}
const noRake = { 'overhang.rake_m': 0 };

describe('the wall line along the eaves of a 12 m by 8 m plan', () => {
  it.each([
    ['gable', 24],
    ['cross-gable', 24],
    ['gambrel', 24],
    ['shed', 12],
    ['hip', 40],
  ])('%s: %s m', (shape, expected) => {
    expect(wallLine_m(completed({ 'roof.shape': shape }))).toBe(expected);
  });
});

describe('rafter tails, 2x6 at 400 mm, two eaves of 12 m', () => {
  it('60 bays, four joints each: two tails 140 mm deep, two sides 360 mm clear', () => {
    const found = barrier(noRake);
    expect(found).toMatchObject({ bays: 60, joints: 240, eaveLength_m: 24 });
    expect(found.jointLength_m).toBeCloseTo(60 * (2 * 0.14 + 2 * 0.36), 9);
    expect(found.jointLengthPerEave_m_m).toBeCloseTo(2.5, 9);
    expect(found.summary).toMatch(/^60 bays/);
  });

  it('62 tails go through it: one more than bays at each eave', () => {
    expect(barrier(noRake).piercings).toBe(62);
  });

  it('a shed has 31 tails in 30 bays, a hip 100 in 100', () => {
    expect(barrier({ ...noRake, 'roof.shape': 'shed' })).toMatchObject({ bays: 30, piercings: 31 });
    expect(barrier({ ...noRake, 'roof.shape': 'hip' })).toMatchObject({ bays: 100, piercings: 100 });
  });

  it('lookouts of the rakes go through as well: four rakes of 4.919 m at 24 in', () => {
    const rake_m = 4 * (4.4 * Math.sqrt(1.25));
    expect(barrier().piercings).toBe(62 + Math.ceil(rake_m / 0.6096));
  });
});

describe('other carriers', () => {
  it('truss tails are 2x4, whatever the truss', () => {
    const truss = { ...noRake, 'framing.kind': 'truss', 'framing.depth_m': 0.3 };
    expect(barrier(truss, 'truss-tails').jointLengthPerEave_m_m).toBeCloseTo(
      (2 * 0.0889 + 2 * 0.36) / 0.4,
      9,
    );
  });

  it('outriggers leave one unbroken lap along the eaves', () => {
    expect(barrier({}, 'outriggers')).toMatchObject({
      bays: 0,
      piercings: 0,
      joints: 1,
      jointLength_m: 24,
      jointLengthPerEave_m_m: 1,
    });
  });

  it('so does a roof without eaves', () => {
    expect(barrier({ 'overhang.eave_m': 0 })).toEqual(barrier({ 'overhang.eave_m': 0 }, 'outriggers'));
  });
});

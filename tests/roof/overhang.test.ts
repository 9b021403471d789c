import { describe, expect, it } from 'vitest';
import type { Candidate } from '../../src/evaluation/evaluation.ts';
import { metersFromInches } from '../../src/units.ts';
import { candidateOf, draftOf, flush, type Changes } from '../support/roofs.ts';

type Structure = Candidate['structure'];
const tails = (changes: Changes = {}): Structure => candidateOf(changes).structure;
const outriggers = (changes: Changes = {}): Structure => candidateOf(changes, flush).structure;
const check = ({ checks }: Structure, id: string) => {
  const found = checks.find((one) => one.id === id);
  if (!found) throw new RangeError(`no check ${id}`);
  return found;
};
/** A roof that asks much of its tails: heavy snow, wide spacing. */
const loaded = { 'loads.groundSnow_Pa': 9000, 'framing.spacing_m': 1.2, 'roof.pitch_rise_per_12': 4 };
const depths = [0.0889, 0.1397, 0.184, 0.235];

describe('rafter tails', () => {
  it('deeper lumber never carries less, and carries more where strength governs', () => {
    const limits = depths.map((depth_m) => tails({ ...loaded, 'framing.depth_m': depth_m }).screeningLimit_m);
    expect(limits).toEqual([...limits].sort((a, b) => a - b));
    expect(limits.at(-1)).toBeGreaterThan(limits[0] ?? 0);
  });

  it('more snow never lets them reach farther', () => {
    const limits = [500, 3000, 6000, 12000, 30000].map(
      (snow_Pa) => tails({ ...loaded, 'loads.groundSnow_Pa': snow_Pa }).screeningLimit_m,
    );
    expect(limits).toEqual([...limits].sort((a, b) => b - a));
  });

  it('reach at most 24 in, and at most a third of their span', () => {
    expect(tails().screeningLimit_m).toBeCloseTo(metersFromInches(24), 9);
    expect(tails({ 'roof.width_m': 3 }).screeningLimit_m).toBeCloseTo(3 / 2 / 3, 9);
  });

  it('pass at their limit and fail a little past it: halving has converged to a millimeter', () => {
    const weak = { ...loaded, 'framing.depth_m': 0.0889 };
    const { screeningLimit_m } = tails(weak);
    expect(screeningLimit_m).toBeLessThan(metersFromInches(24));
    const ratios = (eave_m: number) =>
      ['tail-bending', 'tail-shear', 'tail-deflection'].map(
        (id) => check(tails({ ...weak, 'overhang.eave_m': eave_m }), id).ratio ?? 0,
      );
    expect(Math.max(...ratios(screeningLimit_m))).toBeLessThanOrEqual(1);
    expect(Math.max(...ratios(screeningLimit_m + 0.001))).toBeGreaterThan(1);
  });

  it('past the limit: use above 1, and two thirds to five sixths of the limit are advised', () => {
    const past = tails({ 'overhang.eave_m': 0.762 });
    expect(past.use).toBeCloseTo(0.762 / 0.6096, 9);
    expect(past.advised_m?.[0]).toBeCloseTo(0.6096 * 0.6667, 9);
    expect(past.advised_m?.[1]).toBeCloseTo(0.6096 * 0.8333, 9);
    expect(tails({ 'overhang.eave_m': 0.6096 })).toMatchObject({ use: 1, advised_m: null });
  });

  it('of a size that no lumber has are held to the prescriptive rule alone', () => {
    expect(tails({ 'framing.depth_m': 0.08 }).checks.map(({ id }) => id)).toEqual(['overhang-prescriptive']);
  });

  it('of a truss are the truss designer’s', () => {
    const { checks } = candidateOf({ 'framing.kind': 'truss' }, { carrier: 'truss-tails' }).structure;
    expect(checks.map(({ id, who, ratio }) => [id, who, ratio === null])).toEqual([
      ['overhang-prescriptive', 'truss designer', false],
      ['truss-top-chord', 'truss designer', true],
    ]);
  });
});

describe('outriggers', () => {
  it('count the pull-out of the screw’s own report, and say so: twice the pull-out halves the use of the heel', () => {
    const plain = check(outriggers(), 'outrigger-heel');
    const own = (withdrawal_N_m: number) =>
      check(
        outriggers({
          'insulation.screwReport.withdrawal_N_m': withdrawal_N_m,
          'insulation.screwReport.pullThrough_N': 5000,
        }),
        'outrigger-heel',
      );
    const weak = own(10_000);
    expect(weak).toMatchObject({ source: 'USER', clause: 'report of the screw' });
    expect(plain.source).toBe('NDS-2018');
    expect(own(20_000).ratio).toBeCloseTo((weak.ratio ?? 0) / 2, 9);
  });

  it('stop at 24 in of projection, whatever their strength', () => {
    const strong = {
      'loads.groundSnow_Pa': 0,
      'loads.basicWindSpeed_m_s': 30,
      'covering.kind': 'metal-panel',
    };
    expect(outriggers(strong).screeningLimit_m).toBeCloseTo(metersFromInches(24), 9);
    expect(outriggers({ ...strong, 'overhang.eave_m': 0.62 }).use).toBeGreaterThan(1);
    expect(outriggers({ ...strong, 'overhang.eave_m': 0.6096 }).use).toBe(1);
  });

  it('are screened in bending, shear, sag, at the heel, at the wall and on their seat; ice is shown beside', () => {
    expect(outriggers().checks.map(({ id }) => id)).toEqual([
      'outrigger-bending',
      'outrigger-shear',
      'outrigger-deflection',
      'outrigger-heel',
      'outrigger-wall-tie',
      'outrigger-seat',
      'robust-eave-ice',
    ]);
  });

  it('fit between the boards, with a back span of twice the overhang along the slope', () => {
    const { outrigger, candidate } = draftOf({}, flush);
    const room_m = candidate.layers
      .filter(({ role }) => role === 'insulation')
      .reduce((sum, layer) => sum + layer.thickness_m, 0);
    expect(outrigger?.depth_m).toBeLessThanOrEqual(room_m + 1e-9);
    expect(outrigger?.backSpan_m).toBeCloseTo(2 * 0.4 * Math.sqrt(1.25), 9);
  });

  it('find no room under a panel without a base layer: its core takes no outrigger', () => {
    const thin = {
      'insulation.aboveDeckTarget_m2K_W': 0.2,
      'roof.pitch_rise_per_12': 6,
    };
    const { outrigger, candidate } = draftOf(thin, {
      strategy: 'prebonded-panel',
      ventilation: 'panel-gap',
      carrier: 'outriggers',
    });
    expect(outrigger).toBeNull();
    expect(candidate.structure).toMatchObject({ screeningLimit_m: 0, use: 9, advised_m: null });
    expect(check(candidate.structure, 'outrigger-room')).toMatchObject({
      demand: expect.closeTo(metersFromInches(1.5), 9) as number,
      capacity: 0,
    });
  });

  it('that fail are shown with the strongest that fits', () => {
    const storm = { 'loads.basicWindSpeed_m_s': 110, 'loads.groundSnow_Pa': 20000, 'overhang.eave_m': 1.2 };
    const { outrigger, candidate } = draftOf(storm, flush);
    expect(outrigger).not.toBeNull();
    expect(candidate.structure.use).toBeGreaterThan(1);
    expect(Math.max(...candidate.structure.checks.map(({ ratio }) => ratio ?? 0))).toBeGreaterThan(1);
  });
});

describe('every screening', () => {
  it.each(['rafter-tails', 'outriggers'] as const)(
    'on %s is provisional and names who decides',
    (carrier) => {
      const { structure } = candidateOf({}, { carrier });
      expect(structure).toMatchObject({ provisional: true, carrier, overhang_m: 0.4 });
      for (const { who, source } of structure.checks) expect([who, source].every(Boolean)).toBe(true);
    },
  );

  it('without snow the layers above the board pull by the sine of the slope: 4:12 against 12:12', () => {
    const bare = (pitch: number) =>
      tails({ 'loads.groundSnow_Pa': 0, 'roof.pitch_rise_per_12': pitch }).alongSlope_Pa;
    expect(bare(12) / bare(4)).toBeCloseTo(Math.SQRT1_2 / (1 / Math.sqrt(10)), 9);
    expect(tails().alongSlope_Pa).toBeGreaterThan(bare(6));
  });
});

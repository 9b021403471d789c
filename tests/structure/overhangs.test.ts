import { describe, expect, it } from 'vitest';
import { lumberOf } from '../../src/catalog/lumber.ts';
import { loadCases } from '../../src/structure/combinations.ts';
import { engineerGates, outriggerScreening, type Outrigger } from '../../src/structure/outrigger.ts';
import { greatestOverhang, smallestOutrigger } from '../../src/structure/outriggerChoice.ts';
import { prescriptiveOverhang, rafterTailScreening } from '../../src/structure/rafterTail.ts';
import { allowableStress, sectionOf } from '../../src/structure/timber.ts';
import {
  inchesFromMeters,
  metersFromInches,
  newtonsFromPounds,
  pascalsFromPsf,
  PASCALS_PER_PSI,
} from '../../src/units.ts';

const inch = metersFromInches;

const outrigger: Outrigger = {
  member: { species: 'spruce-pine-fir', size: '2x4', orientation: 'on-edge' },
  spacing_m: inch(24),
  overhang_m: inch(18),
  backSpan_m: inch(48),
  loads: { dead_Pa: pascalsFromPsf(10), snow_Pa: pascalsFromPsf(35), windUplift_Pa: pascalsFromPsf(-70.6) },
  tip_N: newtonsFromPounds(10),
  screw: {
    kind: 'wood-screw',
    diameter_m: inch(0.242),
    headDiameter_m: inch(0.48),
    threadPenetration_m: inch(1.5),
    specificGravity: 0.42,
    heelCount: 2,
    wallCount: 2,
  },
};

describe('sections and stresses (NDS Supplement 2018, seen-transcription)', () => {
  it.each([
    ['2x4', 5.25, 3.063, 5.359, 1.313, 0.984],
    ['2x6', 8.25, 7.563, 20.8, 2.063, 1.547],
    ['2x8', 10.88, 13.14, 47.63, 2.719, 2.039],
    ['2x10', 13.88, 21.39, 98.93, 3.469, 2.602],
  ] as const)('%s', (size, area, edgeS, edgeI, flatS, flatI) => {
    const edge = sectionOf({ species: 'hem-fir', size, orientation: 'on-edge' });
    const flat = sectionOf({ species: 'hem-fir', size, orientation: 'flat' });
    const close = (value: number, expected: number) =>
      expect(Math.abs(value / expected - 1)).toBeLessThan(0.001);
    close(edge.area_m2 / inch(1) ** 2, area);
    close(edge.modulus_m3 / inch(1) ** 3, edgeS);
    close(edge.inertia_m4 / inch(1) ** 4, edgeI);
    close(flat.modulus_m3 / inch(1) ** 3, flatS);
    close(flat.inertia_m4 / inch(1) ** 4, flatI);
  });
  it('Southern Pine takes no size factor; its flat use factor stays', () => {
    const flat = allowableStress({ species: 'southern-pine', size: '2x6', orientation: 'flat' }, 1, false);
    expect(flat.bending_Pa / PASCALS_PER_PSI).toBeCloseTo(1000 * 1.15, 6);
    expect(lumberOf('southern-pine', '2x8').bending_Pa / PASCALS_PER_PSI).toBeCloseTo(925, 6);
  });
  it('load duration above 1.6 is refused', () => {
    expect(() => allowableStress(outrigger.member, 1.7, false)).toThrow(RangeError);
  });
});

describe('load cases', () => {
  it('snow on the projection counts cos squared, dead load cos, wind not at all', () => {
    const cases = loadCases({ dead_Pa: 500, snow_Pa: 1000, windUplift_Pa: -2000 }, 60);
    const of = (id: string) => cases.find((load) => load.id === id)?.normal_Pa;
    expect(of('dead-snow')).toBeCloseTo(500 * 0.5 + 1000 * 0.25, 9);
    expect(of('uplift')).toBeCloseTo(0.6 * 250 - 0.6 * 2000, 9);
  });
  it('each load given adds its case, with its load duration', () => {
    const loads = { dead_Pa: 500, snow_Pa: 1000, roofLive_Pa: 958, eaveIce_Pa: 2000, windDownward_Pa: 700 };
    expect(loadCases(loads, 0).map(({ id, loadDuration }) => [id, loadDuration])).toEqual([
      ['dead', 0.9],
      ['dead-snow', 1.15],
      ['dead-live', 1.25],
      ['dead-ice', 1.15],
      ['dead-wind', 1.6],
      ['dead-snow-wind', 1.6],
      ['dead-live-wind', 1.6],
    ]);
  });
  it('a wind uplift above zero is refused', () => {
    expect(() => loadCases({ dead_Pa: 1, snow_Pa: 1, windUplift_Pa: 5 }, 0)).toThrow(RangeError);
  });
});

describe('outrigger', () => {
  it('gravity pulls on the heel, uplift on the wall tie, and both name their case', () => {
    const result = outriggerScreening(outrigger);
    expect(result.heelScrews.governingCase).toBe('dead-snow');
    expect(result.wallTie.governingCase).toBe('uplift');
    // Hand: w = 0.6 x 10 - 0.6 x 70.6 psf over 2 ft; R_A = w a (1 + a/2b).
    const uplift_lb = ((0.6 * 70.6 - 0.6 * 10) * 2 * 18) / 12;
    expect(result.wallTie.demand / newtonsFromPounds(1)).toBeCloseTo(uplift_lb * (1 + 18 / 96), 3);
    // Hand: two No. 14 screws, 2850 x 0.42^2 x 0.242 x 1.5 in, 1.6 for wind.
    const hold_lb = 2 * 2850 * 0.42 ** 2 * 0.242 * 1.5 * 1.6;
    expect(result.wallTie.capacity / newtonsFromPounds(1)).toBeCloseTo(hold_lb, 3);
  });
  it('is provisional and the engineer decides, also when every ratio is below 1', () => {
    const result = outriggerScreening(outrigger);
    expect(result).toMatchObject({
      provisional: true,
      decidedBy: 'structural engineer',
      standing: 'within-screening-limits',
    });
    expect(result.governing.ratio).toBeLessThan(1);
  });
  it('a report value takes the place of the equations', () => {
    const weak = outriggerScreening({
      ...outrigger,
      screw: { ...outrigger.screw, reportWithdrawal_N: 10 },
    });
    expect(weak.heelScrews.capacity).toBeCloseTo(2 * 10 * 1.15, 9);
    expect(weak.standing).toBe('beyond-screening-limits');
  });
  it('the thin flat outrigger can fail by its screw heads', () => {
    const small = { ...outrigger.screw, headDiameter_m: inch(0.1) };
    const held = outriggerScreening({ ...outrigger, screw: small });
    expect(held.heelScrews.capacity).toBeLessThan(outriggerScreening(outrigger).heelScrews.capacity);
  });
  it.each([
    [{ backSpan_m: inch(35) }, 'back-span'],
    [{ overhang_m: inch(25), backSpan_m: inch(60) }, 'deep-overhang'],
    [{ member: { ...outrigger.member, orientation: 'flat' as const } }, 'flat-2x4'],
    [{ spacing_m: inch(32) }, 'spacing'],
  ])('the gate %o calls the engineer', (change, gate) => {
    const changed = { ...outrigger, ...change };
    expect(engineerGates(changed).map(({ id }) => id)).toContain(gate);
    expect(outriggerScreening(changed).standing).toBe('needs-design');
  });
  it('exactly twice the overhang and exactly 24 in pass the gates', () => {
    const edge = { ...outrigger, overhang_m: inch(24), backSpan_m: inch(48) };
    expect(engineerGates(edge)).toEqual([]);
  });
  it('a seat on board adds sag and its own check', () => {
    const seat = {
      on: 'board',
      bearingLength_m: inch(3),
      boardThickness_m: inch(4),
      boardStrength_Pa: 138_000,
    } as const;
    const soft = outriggerScreening({ ...outrigger, seat });
    const hard = outriggerScreening({ ...outrigger, seat: { on: 'wood', bearingLength_m: inch(3) } });
    expect(soft.deflection.demand).toBeGreaterThan(hard.deflection.demand);
    expect(soft.seat?.capacity).toBeCloseTo(46_000, 6);
    expect(hard.seat?.capacity).toBeCloseTo(425 * PASCALS_PER_PSI, 6);
    // Hand: reaction over 1.5 x 3 in.
    expect(soft.seat?.demand).toBeCloseTo(
      Math.max(...soft.cases.map((load) => load.wallReaction_N)) / (inch(1.5) * inch(3)),
      6,
    );
  });
  it('without wind the report says that the tie is not screened', () => {
    const calm = outriggerScreening({ ...outrigger, loads: { dead_Pa: 500, snow_Pa: 1000 } });
    expect(calm.notes.join(' ')).toContain('wall tie is not screened');
    expect(calm.wallTie.demand).toBe(0);
  });
});

describe('choice of outrigger', () => {
  it('a flat 2x4 at 24 in fails by sag; on edge it passes', () => {
    const deep = { ...outrigger, overhang_m: inch(24) };
    const { choice, tried } = smallestOutrigger(deep);
    expect(choice).toMatchObject({ size: '2x4', orientation: 'on-edge' });
    expect(tried[0]).toMatchObject({ size: '2x4', orientation: 'flat', gates: ['flat-2x4'] });
    expect(tried[0]?.ratio).toBeGreaterThan(1);
  });
  it('with only 1-1/2 in of depth a wider flat member is found', () => {
    expect(smallestOutrigger({ ...outrigger, overhang_m: inch(24) }, inch(1.5)).choice).toMatchObject({
      orientation: 'flat',
    });
  });
  it('nothing is chosen when nothing passes', () => {
    const storm = { ...outrigger, loads: { dead_Pa: 500, snow_Pa: 1000, windUplift_Pa: -19_000 } };
    expect(smallestOutrigger(storm).choice).toBeNull();
  });
  it('at the greatest overhang the governing ratio is 1', () => {
    const flat: Outrigger = { ...outrigger, member: { ...outrigger.member, orientation: 'flat' } };
    const limit = greatestOverhang(flat);
    expect(limit.governing).toBe('outrigger-deflection');
    const at = outriggerScreening({ ...flat, overhang_m: limit.byStrength_m }).governing.ratio;
    expect(at).toBeCloseTo(1, 9);
    expect(limit.withinGates_m).toBeCloseTo(inch(12), 12);
  });
  it('half the back span caps a strong member', () => {
    expect(greatestOverhang({ ...outrigger, backSpan_m: inch(30) }).withinGates_m).toBeCloseTo(inch(15), 12);
  });
  it('is zero when even a stub fails, and ends at the longest searched when nothing fails', () => {
    const heavy = { ...outrigger, loads: { dead_Pa: 500, snow_Pa: 0 }, tip_N: 90_000 };
    expect(greatestOverhang(heavy)).toMatchObject({ byStrength_m: 0, withinGates_m: 0 });
    const nothing = { ...outrigger, loads: { dead_Pa: 0, snow_Pa: 0 }, tip_N: 0 };
    expect(greatestOverhang(nothing).byStrength_m).toBe(3);
  });
});

it('on soft board the sag of a stub does not hide the overhang that passes', () => {
  const seat = {
    on: 'board',
    bearingLength_m: inch(12),
    boardThickness_m: inch(4),
    boardStrength_Pa: 138_000,
  } as const;
  const soft: Outrigger = {
    ...outrigger,
    member: { ...outrigger.member, size: '2x6', orientation: 'flat' },
    seat,
  };
  expect(outriggerScreening({ ...soft, overhang_m: 0.001 }).deflection.ratio).toBeGreaterThan(1);
  const limit = greatestOverhang(soft);
  expect(limit.byStrength_m).toBeGreaterThan(inch(6));
  expect(outriggerScreening({ ...soft, overhang_m: limit.byStrength_m }).governing.ratio).toBeLessThanOrEqual(
    1,
  );
  expect(
    outriggerScreening({ ...soft, overhang_m: limit.byStrength_m + 0.001 }).governing.ratio,
  ).toBeGreaterThan(1);
});

describe('rafter tail', () => {
  const tail = {
    species: 'spruce-pine-fir',
    size: '2x8',
    spacing_m: inch(16),
    overhang_m: inch(20),
    backSpan_m: inch(144),
    angle_deg: 0,
    notch_m: inch(1.75),
    loads: { dead_Pa: pascalsFromPsf(15), snow_Pa: pascalsFromPsf(40) },
    tip_N: newtonsFromPounds(10),
  } as const;
  it.each([
    [144, 24],
    [72, 24],
    [60, 20],
  ])('a rafter span of %d in allows %d in (memory)', (span_in, expected_in) => {
    expect(inchesFromMeters(prescriptiveOverhang(inch(span_in)))).toBeCloseTo(expected_in, 9);
  });
  it('bends above the notch: M / S of the 5.5 in that stay', () => {
    const result = rafterTailScreening(tail);
    // Hand: w = 55 psf x 16/12 ft = 73.33 plf; M = 73.33/12 x 20^2/2 + 10 x 20 = 1422.2 in-lb; S = 1.5 x 5.5^2/6.
    expect(result.bending.demand / PASCALS_PER_PSI).toBeCloseTo(1422.2222 / 7.5625, 2);
    // Hand: 875 x 1.2 x 1.15 x 1.15.
    expect(result.bending.capacity / PASCALS_PER_PSI).toBeCloseTo(875 * 1.2 * 1.15 * 1.15, 6);
    // Hand: 1.5 x (73.33/12 x 20 + 10) / (1.5 x 5.5).
    expect(result.shear.demand / PASCALS_PER_PSI).toBeCloseTo((1.5 * 132.2222) / 8.25, 3);
    expect(result.standing).toBe('within-screening-limits');
    expect(result.provisional).toBe(true);
  });
  it('a notch deeper than a quarter, or less than 3-1/2 in left, goes beyond the limits', () => {
    expect(rafterTailScreening({ ...tail, notch_m: inch(1.9) }).notchDepth.ratio).toBeGreaterThan(1);
    const shallow = rafterTailScreening({ ...tail, size: '2x4', notch_m: inch(0.5) });
    expect(shallow.remainingDepth.ratio).toBeGreaterThan(1);
    expect(shallow.standing).toBe('beyond-screening-limits');
  });
  it('beyond 24 in it needs design whatever the stresses', () => {
    expect(rafterTailScreening({ ...tail, overhang_m: inch(25) }).standing).toBe('needs-design');
  });
  it('without a notch nothing is asked of the remaining depth; a notch through the rafter is refused', () => {
    expect(rafterTailScreening({ ...tail, notch_m: 0 }).remainingDepth.ratio).toBe(0);
    expect(() => rafterTailScreening({ ...tail, notch_m: inch(7.25) })).toThrow(RangeError);
  });
});

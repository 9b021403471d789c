import { describe, expect, it } from 'vitest';
import { screwOf } from '../../src/catalog/lumber.ts';
import { screwLength } from '../../src/structure/screwLength.ts';
import { alongSlopeLoad, gapCapacity, slopeScreening } from '../../src/structure/slope.ts';
import {
  inchesFromMeters,
  metersFromInches,
  newtonsFromPounds,
  pascalsFromPsf,
  psfFromPascals,
} from '../../src/units.ts';

const inch = metersFromInches;
const NINE_ON_12_DEG = (Math.atan(9 / 12) * 180) / Math.PI;

describe('pull down the slope', () => {
  it('12 psf dead and 40 psf snow at 9 on 12 is 31 psf (worked in the trade reference)', () => {
    const pull = alongSlopeLoad(pascalsFromPsf(12), pascalsFromPsf(40), NINE_ON_12_DEG);
    expect(psfFromPascals(pull.alongSlope_Pa)).toBeCloseTo(31.2, 6);
    // Hand: 12 x 0.6 + 40 x 0.6 x 0.8.
    expect(psfFromPascals(pull.alongSlopeProjected_Pa)).toBeCloseTo(26.4, 6);
  });
  const capacity = (id: string, gap_in: number) =>
    gapCapacity({
      screw: screwOf(id),
      sideThickness_m: inch(0.75),
      sideSpecificGravity: 0.42,
      gap_m: inch(gap_in),
      mainPenetration_m: inch(1.5),
      mainSpecificGravity: 0.42,
    });
  it('a No. 10 screw through 1 in counts 0.72 of 36.1 lb, a 1/4 in lag 0.58 of 47.9 lb', () => {
    expect(capacity('wood-10', 1).design_N / newtonsFromPounds(1)).toBeCloseTo(0.72 * 36.08, 1);
    expect(capacity('lag-1/4', 1).design_N / newtonsFromPounds(1)).toBeCloseTo(0.58 * 47.89, 1);
  });
  it('screws through 4 in hold back only a light load; the result says what design can do', () => {
    const { design_N } = capacity('wood-14', 4);
    const result = slopeScreening({
      alongSlope_Pa: pascalsFromPsf(31.2),
      design_N,
      screwsPerArea_1_m2: 4,
      gap_m: inch(4),
    });
    expect(result.check.ratio).toBeGreaterThan(1);
    expect(result.standing).toBe('needs-design');
    expect(result.notes.join(' ')).toContain('stop block');
    expect(result.neededPerArea_1_m2).toBeCloseTo(4 * result.check.ratio, 9);
  });
  it('more than 4 in needs design however many the screws; a light load through 1 in stays within the limits', () => {
    const light = { alongSlope_Pa: 10, design_N: 100, screwsPerArea_1_m2: 4 };
    expect(slopeScreening({ ...light, gap_m: inch(4.01) }).standing).toBe('needs-design');
    expect(slopeScreening({ ...light, gap_m: inch(1) })).toMatchObject({
      standing: 'within-screening-limits',
      provisional: true,
    });
  });
});

describe('screw length', () => {
  const length = (aboveDeck_in: number, isUndersideVisible = false) =>
    screwLength({ aboveDeck_m: inch(aboveDeck_in), deck_m: inch(0.75), isUndersideVisible });
  const lengthOf = (aboveDeck_in: number, isUndersideVisible = false) => {
    const found = length(aboveDeck_in, isUndersideVisible);
    if (found.kind === 'notCovered') throw new Error(found.reason);
    return found;
  };
  it('0.5 + 1.5 + 6 + 0.75 + 1.5 = 10.25 in, sold 10.5 in (worked in the trade reference)', () => {
    const found = lengthOf(8);
    expect(inchesFromMeters(found.needed_m)).toBeCloseTo(10.25, 9);
    expect(inchesFromMeters(found.length_m)).toBeCloseTo(10.5, 9);
    expect(inchesFromMeters(found.penetration_m)).toBeCloseTo(1.75, 9);
  });
  it('an exact fit is not rounded up', () => {
    expect(inchesFromMeters(lengthOf(7.75).length_m)).toBeCloseTo(10, 9);
  });
  it('longer than sold is not covered', () => {
    expect(length(16)).toMatchObject({ kind: 'notCovered' });
  });
  it('a deck in view: a miss shows, and the longest hidden screw stays 1/8 in short of its face', () => {
    const found = lengthOf(8, true);
    expect(found.mayShowBelow).toBe(true);
    expect(found.notes.join(' ')).toContain('in view');
    expect(inchesFromMeters(found.hiddenLimit_m ?? 0)).toBeCloseTo(8.5, 9);
    expect(lengthOf(0.5).hiddenLimit_m).toBeNull();
  });
});

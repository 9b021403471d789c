import { describe, expect, it } from 'vitest';
import { recordWords } from '../../src/catalog/record.ts';
import { geometryCheckIds, type GeometryCheck } from '../../src/evaluation/takeoff.ts';
import { geometryChecksOf } from '../../src/roof/geometryChecks.ts';
import type { Variant } from '../../src/roof/variant.ts';
import { candidateOf, flush, panel, settingOf, type Changes } from '../support/roofs.ts';

function checksOf(changes: Changes = {}, of: Partial<Variant> = {}): GeometryCheck[] {
  const { given, requirements } = settingOf(changes);
  return geometryChecksOf(given, candidateOf(changes, of), requirements).checks;
}
const check = (checks: readonly GeometryCheck[], id: GeometryCheck['id']): GeometryCheck => {
  const found = checks.find((one) => one.id === id);
  if (!found) throw new RangeError(`no check ${id}`);
  return found;
};

/** 6:12: cosine 2/√5, tangent 1/2. Rafters 140 mm deep. */
const cos = 2 / Math.sqrt(5);
const buildUp_m = (changes: Changes = {}, of: Partial<Variant> = {}): number =>
  candidateOf(changes, of).edge.buildUp_m;

describe('heights, by hand', () => {
  it('fascia: build-up and rafter, over the cosine for a plumb cut', () => {
    const checks = checksOf();
    const face_m = buildUp_m() + 0.14;
    expect(check(checks, 'fascia-square').value).toBeCloseTo(face_m, 9);
    expect(check(checks, 'fascia-plumb').value).toBeCloseTo(face_m / cos, 9);
    expect(check(checks, 'fascia-plumb').meets).toBeNull();
    expect(check(checks, 'fascia-plumb').needsSite).toBe(true);
  });

  it('a limit between the two cuts passes the square one and fails the plumb one', () => {
    const face_m = buildUp_m() + 0.14;
    const limit_m = (face_m + face_m / cos) / 2;
    const checks = checksOf({ 'profile.fasciaLimit_m': limit_m });
    expect(check(checks, 'fascia-square').meets).toBe(true);
    expect(check(checks, 'fascia-plumb').meets).toBe(false);
    expect(check(checks, 'fascia-plumb').limit).toEqual({ value: limit_m, sense: 'most' });
  });

  it('ridge and eave rise by build-up / cos: 3 m of eave become 3 m and the rise', () => {
    const rise_m = buildUp_m() / cos;
    const checks = checksOf({ 'profile.ridgeRiseLimit_m': rise_m - 0.001 });
    expect(check(checks, 'ridge-rise').value).toBeCloseTo(rise_m, 9);
    expect(check(checks, 'ridge-rise').meets).toBe(false);
    expect(check(checks, 'eave-height').value).toBeCloseTo(3 + rise_m, 9);
    expect(check(checks, 'gutter').value).toBeCloseTo(rise_m, 9);
  });

  it('soffit: 0.4 m of overhang fall 0.2 m, and the rafter hangs 0.14 / cos below; outriggers add nothing', () => {
    expect(check(checksOf(), 'window-head').value).toBeCloseTo(0.2 + 0.14 / cos, 9);
    expect(check(checksOf({}, flush), 'window-head').value).toBeCloseTo(0.2, 9);
  });
});

describe('what stands in the roof, by hand', () => {
  it('dormers: cheeks lose the rise, flashing needs 4 in more', () => {
    const checks = checksOf({ 'roof.dormers': 1 });
    const rise_m = buildUp_m() / cos;
    expect(check(checks, 'dormer-cheek').value).toBeCloseTo(rise_m, 9);
    expect(check(checks, 'step-flashing').value).toBeCloseTo(rise_m + 0.1016, 9);
  });

  it('skylights: a curb of everything above the old deck and 4 in', () => {
    const checks = checksOf({ 'roof.skylights': 1 });
    expect(check(checks, 'skylight-curb').value).toBeCloseTo(buildUp_m() - 0.016 + 0.1016, 9);
  });

  it('chimney 10 ft from the ridge at 6:12: 5 ft and 2 ft, which is above 3 ft; and the rise', () => {
    const checks = checksOf({ 'roof.chimneys': 1 });
    expect(check(checks, 'chimney').value).toBeCloseTo(7 * 0.3048 + buildUp_m() / cos, 9);
  });

  it('none of these without them', () => {
    const ids = checksOf().map(({ id }) => id);
    for (const id of ['dormer-cheek', 'step-flashing', 'skylight-curb', 'chimney'])
      expect(ids).not.toContain(id);
  });
});

describe('ice barrier and vents, by hand', () => {
  it('courses of 36 in with laps of 3 1/2 in against the length that the code asks', () => {
    const { requirements } = settingOf();
    const { courses, length_m } = requirements.iceBarrier;
    const ice = check(checksOf(), 'ice-barrier');
    expect(ice.value).toBeCloseTo(courses * 0.9144 - (courses - 1) * 0.0889, 9);
    expect(ice.limit?.value).toBeCloseTo(length_m, 9);
    expect(checksOf({ 'codes.iceBarrierRequired': false }).map(({ id }) => id)).not.toContain('ice-barrier');
  });

  it('laps can leave the courses short: an overhang chosen so that two rolls just reach without them', () => {
    // (overhang + wall + 0.6096) / cos = 1.8 m, below 2 × 0.9144 but above what is left after one lap.
    const wall_m = settingOf().given.wall.thickness_m;
    const short = checksOf({ 'overhang.eave_m': 1.8 * cos - 0.6096 - wall_m });
    expect(check(short, 'ice-barrier').limit?.value).toBeCloseTo(1.8, 9);
    expect(check(short, 'ice-barrier').meets).toBe(false);
    expect(check(short, 'ice-barrier').value).toBeCloseTo(2 * 0.9144 - 0.0889, 9);
  });

  it('furring 1 1/2 in high, 3 1/2 in wide at 400 mm: the screened openings govern at half of the gap', () => {
    const checks = checksOf();
    const gap_m2_m = 0.0381 * (1 - 0.0889 / 0.4);
    expect(check(checks, 'vent-gap').value).toBeCloseTo(gap_m2_m, 9);
    expect(check(checks, 'vent-intake').value).toBeCloseTo(gap_m2_m / 2, 9);
    expect(check(checks, 'vent-throat').value).toBeCloseTo(gap_m2_m / 2, 9);
    const least_m2_m = (4.4 * Math.sqrt(1.25)) / 300 / 2;
    expect(check(checks, 'vent-throat').limit?.value).toBeCloseTo(least_m2_m, 9);
  });

  it('panels: channels 1 in high, three quarters of the width', () => {
    expect(check(checksOf({}, panel), 'vent-gap').value).toBeCloseTo(0.0254 * 0.75, 9);
  });

  it('a long slope asks for more than the screens of a panel let through', () => {
    const long = checksOf({ 'roof.width_m': 30 }, panel);
    expect(check(long, 'vent-throat').meets).toBe(false);
  });

  it('no gap, no vents', () => {
    const ids = checksOf({}, { ventilation: 'unvented' }).map(({ id }) => id);
    expect(ids.filter((id) => id.startsWith('vent'))).toEqual([]);
  });
});

describe('words', () => {
  it('every check has them, once', () => {
    expect(recordWords.geometry.map(({ id }) => id).sort()).toEqual([...geometryCheckIds].sort());
  });
});

/** Zones of the roof, spacing in each, ways against sliding, and the values of a screw's own report. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCase } from '../../src/case/read.ts';
import { screwOf } from '../../src/catalog/lumber.ts';
import { withValueAt } from '../../src/case/paths.ts';
import { angleOfPitch_deg, measureRoof, type RoofPlan } from '../../src/roof/geometry.ts';
import { zoneAreas, zonesOfRoof, zoneSuction_Pa } from '../../src/roof/fasteningZones.ts';
import { trialAt } from '../../src/roof/fasteningSchedule.ts';
import { slopePathOf, type SlopeInput } from '../../src/roof/fasteningSlope.ts';
import { siteLoadsOf } from '../../src/roof/loads.ts';
import { windEditionOf } from '../../src/roof/windEdition.ts';
import { screwHold } from '../../src/structure/screwHold.ts';
import { metersFromFeet, metersFromInches, pascalsFromPsf, poundsFromNewtons } from '../../src/units.ts';
import { candidateOf, completed, panel, plainCase } from '../support/roofs.ts';
import type { Variant } from '../../src/roof/variant.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const wanted = { 'insulation.aboveDeckTarget_m2K_W': 2.9 };
const screws = (changes: Record<string, unknown> = {}, of: Partial<Variant> = {}) =>
  candidateOf({ ...wanted, ...changes }, of).fasteners;
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

const plans: fc.Arbitrary<RoofPlan> = fc.record({
  shape: fc.constantFrom('gable', 'hip', 'shed', 'gambrel', 'cross-gable'),
  angle_deg: within(9, 45),
  length_m: within(3, 60),
  width_m: within(3, 30),
  eaveOverhang_m: within(0, 1.5),
  rakeOverhang_m: within(0, 1.5),
});

describe('zones of a roof', () => {
  it('add up to the roof: any shape, 3 to 60 m by 3 to 30 m, strips 0.9 to 6 m, both editions', () => {
    fc.assert(
      fc.property(
        plans,
        within(0.9, 6),
        fc.constantFrom('asce7-16' as const, 'asce7-22' as const),
        (plan, a_m, edition) => {
          const areas = zoneAreas(plan, edition, a_m);
          const { area_m2 } = measureRoof(plan);
          expect(Math.abs(sum(areas.map((zone) => zone.area_m2)) / area_m2 - 1)).toBeLessThan(1e-9);
          for (const zone of areas) expect(zone.area_m2).toBeGreaterThan(0);
        },
      ),
    );
  });

  it('a gable 20 by 10 m, flat, strips 1 m: field 18 by 3 on each side', () => {
    const plan = {
      shape: 'gable',
      angle_deg: 0,
      length_m: 20,
      width_m: 10,
      eaveOverhang_m: 0,
      rakeOverhang_m: 0,
    } as const;
    expect(zoneAreas(plan, 'asce7-16', 1)).toEqual([
      { zone: '1', area_m2: 2 * 18 * 3 },
      { zone: '2e', area_m2: 2 * 18 },
      { zone: '2n', area_m2: 2 * 2 * 3 },
      { zone: '2r', area_m2: 2 * 18 },
      { zone: '3e', area_m2: 4 },
      { zone: '3r', area_m2: 4 },
    ]);
    expect(zoneAreas(plan, 'asce7-22', 1)).toEqual([
      { zone: '1', area_m2: 108 },
      { zone: '2', area_m2: 84 },
      { zone: '3', area_m2: 8 },
    ]);
  });

  it('a pyramid 10 by 10 m, strips 1 m: four triangles are the field', () => {
    const plan = {
      shape: 'hip',
      angle_deg: 0,
      length_m: 10,
      width_m: 10,
      eaveOverhang_m: 0,
      rakeOverhang_m: 0,
    } as const;
    const areas = new Map(zoneAreas(plan, 'asce7-16', 1).map(({ zone, area_m2 }) => [zone, area_m2]));
    // Each inner triangle has a base of 8 less 2 sqrt 2, and its area is a quarter of the base squared.
    expect(areas.get('1')).toBeCloseTo((8 - 2 * Math.SQRT2) ** 2, 9);
    expect(areas.get('3')).toBeCloseTo(4, 9);
    expect(areas.get('2e')).toBeCloseTo(100 - 64 - 4, 9);
  });

  it('C8: 28 ft wide, 3 ft strips', () => {
    const given = completed({ 'roof.width_m': metersFromFeet(28), 'roof.eaveHeight_m': metersFromFeet(16) });
    expect(zonesOfRoof(given).edge_m).toBeCloseTo(metersFromFeet(3), 9);
  });

  it('follow the edition of the standard', () => {
    expect(windEditionOf(completed({ 'codes.edition': '2021' }))).toBe('asce7-16');
    expect(windEditionOf(completed({ 'codes.edition': '2024' }))).toBe('asce7-22');
    expect(windEditionOf(completed({ 'codes.edition': '2024', 'loads.standard': 'asce7-16' }))).toBe(
      'asce7-16',
    );
    expect(screws({ 'codes.edition': '2024' }).schedule.map(({ zone }) => zone)).toEqual(['1', '2', '3']);
    expect(screws({ 'roof.shape': 'hip' }).schedule.map(({ zone }) => zone)).toEqual(['1', '2e', '2r', '3']);
  });

  it('an overhang lifts harder than the roof beside it', () => {
    const at = (eave_m: number) =>
      zoneSuction_Pa(completed({ 'overhang.eave_m': eave_m, 'overhang.rake_m': 0 }), '3e', 0.3) ?? 0;
    expect(at(0.4)).toBeGreaterThan(at(0));
  });
});

describe('the schedule', () => {
  it('W6: zone 2n at 115 mph, exposure B, 20 ft, 6:12: 28.9 psf allowable-stress level, dead load apart', () => {
    const given = completed({
      'loads.basicWindSpeed_m_s': 51.4096,
      'loads.exposure': 'B',
      'roof.pitch_rise_per_12': 6,
      'roof.width_m': metersFromFeet(28),
      'roof.eaveHeight_m': metersFromFeet(20 - 3.5),
      'overhang.eave_m': 0,
      'overhang.rake_m': 0,
      'place.elevation_m': 0,
      'loads.onHill': false,
    });
    const suction_Pa = 0.6 * (zoneSuction_Pa(given, '2n', 0.3) ?? 0);
    // 0.00256 and 0.613 are both roundings of half the air density: 0.3 psf.
    expect(Math.abs(suction_Pa - pascalsFromPsf(28.9))).toBeLessThan(pascalsFromPsf(0.3));
  });

  it('row by row: count is area over spacing, the pull is that of the zone, places are named', () => {
    const { schedule, count } = screws({ 'loads.basicWindSpeed_m_s': 70 });
    for (const row of schedule) {
      expect(row.count).toBe(Math.ceil(row.area_m2 / (row.spacing_m * row.across_m) - 1e-4));
      expect(row.perSquare / row.perArea_1_m2).toBeCloseTo(9.290304, 3);
      expect(row.place).toBe(row.zone === '1' ? 'field' : row.zone.startsWith('2') ? 'edge' : 'corner');
    }
    expect(count).toBe(sum(schedule.map((row) => row.count)));
  });

  it('more wind never widens a spacing, 40 to 110 m/s', () => {
    const spacings = (speed: number) =>
      screws({ 'loads.basicWindSpeed_m_s': speed }, panel).schedule.map((row) => row.spacing_m);
    let last = spacings(40);
    for (const speed of [50, 60, 70, 80, 95, 110]) {
      const next = spacings(speed);
      next.forEach((spacing_m, index) => expect(spacing_m).toBeLessThanOrEqual(last[index] ?? 0));
      last = next;
    }
    expect(Math.min(...last)).toBeLessThan(metersFromInches(16) / 1.9);
  });

  it('past the closest spacing, and past the wind tables, it needs design and says so', () => {
    const storm = screws(
      {
        'loads.basicWindSpeed_m_s': 120,
        'loads.exposure': 'D',
        'roof.eaveHeight_m': 15,
        'framing.deckThickness_m': 0.009,
      },
      panel,
    );
    expect(storm.upliftNeedsDesign).toBe(true);
    expect(storm.upliftUse ?? 0).toBeGreaterThan(1);
    expect(storm.note).toContain('uplift by design');
    const steep = screws({ 'roof.pitch_rise_per_12': 24 });
    expect(steep).toMatchObject({ upliftUse: null, upliftNeedsDesign: true });
    expect(steep.schedule[0]).toMatchObject({ ratio: null, governing: 'not-covered', uplift_Pa: null });
  });

  it('a shape that the tables leave out shows a stand-in, every row and check of the wind open, never a pass', () => {
    const gable = screws();
    expect(gable.windGap).toBeNull();
    expect(gable.schedule.some((row) => row.standIn || row.needsDesign)).toBe(false);
    for (const shape of ['shed', 'gambrel', 'cross-gable'] as const) {
      const found = screws({ 'roof.shape': shape });
      expect(found.windGap).toMatchObject({ standIn: 'plain gable' });
      expect(found).toMatchObject({ upliftUse: null, upliftNeedsDesign: true });
      for (const row of found.schedule) {
        expect(row).toMatchObject({ standIn: true, needsDesign: true });
        expect(row.ratio).toBeGreaterThan(0);
      }
      for (const id of ['screw-withdrawal', 'head-pull-through', 'screw-combined'])
        expect(found.checks.find((check) => check.id === id)?.open).toBe(true);
      expect(found.note).toContain('stand-in (plain gable)');
    }
  });

  it('a mean height past 60 ft stands in at 60 ft; past 45 degrees nothing stands in and no demand is made up', () => {
    const tall = screws({ 'roof.eaveHeight_m': 18.2, 'roof.width_m': 14, 'roof.pitch_rise_per_12': 9 });
    expect(tall.windGap?.standIn).toContain('60 ft');
    expect(tall.upliftNeedsDesign).toBe(true);
    const steep = screws({ 'roof.pitch_rise_per_12': 24, 'roof.shape': 'shed' });
    expect(steep.windGap).toMatchObject({ standIn: null });
    expect(steep.schedule.every((row) => !row.standIn && row.needsDesign)).toBe(true);
    expect(steep.checks.find(({ id }) => id === 'screw-withdrawal')).toMatchObject({
      demand: null,
      ratio: null,
      open: true,
    });
    expect(steep.missesRafter).toMatchObject({ demand_N: null, ratio: null });
  });

  it('schedule and loads of the place name the same gap', () => {
    for (const changes of [{}, { 'roof.shape': 'shed' }, { 'roof.pitch_rise_per_12': 24 }]) {
      const given = completed(changes);
      const reason = siteLoadsOf(given).notCovered.find(({ what }) => what === 'Wind')?.reason ?? null;
      expect(screws(changes).windGap?.reason ?? null).toBe(reason);
    }
  });

  it('more screws never raise the ratio of a zone: spacing 0.1 to 0.7 m against a share of it', () => {
    const given = completed({ 'loads.basicWindSpeed_m_s': 60 });
    const hold = screwHold({
      screw: screwOf('wood-14'),
      side: { thickness_m: 0.0381, specificGravity: 0.42 },
      main: { thread_m: 0.0381, specificGravity: 0.42 },
      gap_m: 0.1,
    });
    const { zones } = zonesOfRoof(given);
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        within(0.1, 0.7),
        within(0.2, 1),
        within(0, 1500),
        (zone, step_m, share, dead_Pa) => {
          const use = (step: number) =>
            trialAt({ given, hold, grid: { usual_m: 0.6, across_m: 0.4 }, dead_Pa }, zone.zone, step).use
              ?.ratio ?? 0;
          expect(use(step_m * share)).toBeLessThanOrEqual(use(step_m) * (1 + 1e-9));
        },
      ),
    );
  });

  it('by hand: pull of the worst screw over its thread', () => {
    const found = screws();
    const worst = found.schedule.reduce((most, row) => ((row.ratio ?? 0) > (most.ratio ?? 0) ? row : most));
    const pull_N = (worst.uplift_Pa ?? 0) * worst.spacing_m * worst.across_m;
    const check = found.checks.find(({ id }) => id === 'screw-withdrawal');
    expect(check?.demand).toBeCloseTo(pull_N, 1);
    // 2850 x 0.42^2 x 0.242 x 1.5 lb, 1.6 in wind.
    expect(poundsFromNewtons(check?.capacity ?? 0)).toBeCloseTo(2850 * 0.42 ** 2 * 0.242 * 1.5 * 1.6, 1);
  });
});

describe('sliding', () => {
  const input = (changes: Partial<SlopeInput> = {}): SlopeInput => ({
    angle_deg: angleOfPitch_deg(6),
    dead_Pa: 400,
    snow_Pa: 1000,
    snowCase: 'balanced',
    slopeLength_m: 5,
    rafterSpacing_m: 0.4,
    screw: screwOf('wood-14'),
    report: {},
    hold: screwHold({
      screw: screwOf('wood-14'),
      side: { thickness_m: 0.0381, specificGravity: 0.42 },
      main: { thread_m: 0.0381, specificGravity: 0.42 },
      gap_m: 0.1,
    }),
    perArea_1_m2: 4.1,
    gap_m: 0.1,
    boards: ['polyisocyanurate'],
    side: { thickness_m: 0.0381, specificGravity: 0.42, isFurring: true },
    stack_m: 0.155,
    soldLength: (length_m) => (length_m <= 0.3 ? 0.3 : null),
    eaveLength_m: 20,
    area_m2: 100,
    ...changes,
  });

  it('steeper, heavier or snowier never lowers the demand or the use of a way', () => {
    fc.assert(
      fc.property(
        within(10, 40),
        within(100, 1500),
        within(0, 3000),
        within(1, 1.4),
        (angle_deg, dead_Pa, snow_Pa, times) => {
          const plain = slopePathOf(input({ angle_deg, dead_Pa, snow_Pa }));
          for (const more of [
            slopePathOf(input({ angle_deg: angle_deg * times, dead_Pa, snow_Pa })),
            slopePathOf(input({ angle_deg, dead_Pa: dead_Pa * times, snow_Pa })),
            slopePathOf(input({ angle_deg, dead_Pa, snow_Pa: snow_Pa * times })),
          ]) {
            expect(more.demand_Pa).toBeGreaterThanOrEqual(plain.demand_Pa);
            expect(more.atEave_N_m).toBeGreaterThanOrEqual(plain.atEave_N_m);
            expect(more.ways[0]?.ratio).toBeGreaterThanOrEqual(plain.ways[0]?.ratio ?? 0);
          }
        },
      ),
    );
  });

  it('more screws in the schedule never raise the use of the plain screws, and bend them less', () => {
    const few = slopePathOf(input());
    const many = slopePathOf(input({ perArea_1_m2: 8.2 }));
    expect(many.ways[0]?.ratio).toBeCloseTo((few.ways[0]?.ratio ?? 0) / 2, 9);
    expect(many.slip_m).toBeCloseTo(few.slip_m / 2, 12);
  });

  it('a light load on thin board stays with the plain screws; past 4 in they need design whatever the ratio', () => {
    const light = { dead_Pa: 100, snow_Pa: 0, gap_m: 0.04 };
    expect(slopePathOf(input(light))).toMatchObject({
      chosen: 'screws-across',
      needsDesign: false,
      screws: 0,
    });
    const thick = slopePathOf(input({ ...light, dead_Pa: 20, gap_m: 0.11 }));
    expect(thick.ways[0]).toMatchObject({ needsDesign: true });
    expect(thick.ways[0]?.ratio).toBeLessThan(1);
    expect(thick.chosen).toBe('eave-block');
    // Two screws on each of 51 rafters along 20 m of eave at 0.4 m.
    expect(thick.screws).toBe((thick.ways[1]?.count ?? 0) * 51);
  });

  it('past 8 in of board every way needs design, and the nearest is named', () => {
    const found = slopePathOf(input({ gap_m: 0.25 }));
    expect(found.needsDesign).toBe(true);
    expect(found.ratio).toBe(Math.min(...found.ways.map((way) => way.ratio)));
    expect(found.ways.every((way) => way.needsDesign)).toBe(true);
  });

  it('slanted screws longer than any sold need design; pairs always do', () => {
    const found = slopePathOf(input({ stack_m: 0.4 }));
    expect(found.ways[2]).toMatchObject({
      needsDesign: true,
      because: expect.stringContaining('sold') as string,
    });
    expect(slopePathOf(input()).ways[3]).toMatchObject({ id: 'slanted-pairs', needsDesign: true });
  });

  it('by hand: 12:12, 1 kPa, no snow: 707 Pa down the slope, 3.5 kN/m at the eave of 5 m', () => {
    const found = slopePathOf(input({ angle_deg: 45, dead_Pa: 1000, snow_Pa: 0 }));
    expect(found.demand_Pa).toBeCloseTo(707.1, 1);
    expect(found.atEave_N_m).toBeCloseTo(3535.5, 1);
    // Slanted at 60°: F = 707.1 x 0.4 s, T = 2 F.
    const slanted = found.ways[2];
    expect(slanted?.pull_N).toBeCloseTo(2 * 707.1 * 0.4 * (slanted?.spacing_m ?? 0), 0);
  });
});

describe('the report of a screw', () => {
  const report = (values: Record<string, unknown>) =>
    Object.fromEntries(
      Object.entries(values).map(([key, value]) => [`insulation.screwReport.${key}`, value]),
    );
  const faults = (values: Record<string, unknown>): string[] => {
    const read = readCase(withValueAt(plainCase, 'insulation', { screwReport: values }));
    return read.ok ? [] : read.faults.map(({ path, message }) => `${path}: ${message}`);
  };

  it('replaces what it gives, names it, and widens the schedule', () => {
    const storm = { 'loads.basicWindSpeed_m_s': 70 };
    const plain = screws(storm, panel);
    const found = screws(
      {
        ...storm,
        ...report({ name: 'Invented screw 8', withdrawal_N_m: 80_000, pullThrough_N: 3000, lateral_N: 200 }),
      },
      panel,
    );
    expect(found.hold).toMatchObject({
      name: 'Invented screw 8',
      fromReport: ['withdrawal', 'pull-through', 'lateral'],
      lateral_N: 200,
      pullThrough_N: 3000,
    });
    expect(found.hold.withdrawal_N).toBeCloseTo(80_000 * 0.016, 6);
    expect(found.count).toBeLessThan(plain.count);
    expect(found.slopeUse).toBeLessThan(plain.slopeUse);
    expect(found.note).toContain('Invented screw 8');
    expect(found.checks.find(({ id }) => id === 'screw-withdrawal')).toMatchObject({ source: 'USER' });
  });

  it('its least penetration goes before six diameters, and deeper than 1 1/2 in it lengthens the screw', () => {
    expect(screws(report({ minimumPenetration_m: 0.0127 }), panel).hold.meetsPenetration).toBe(true);
    expect(screws({}, panel).hold.meetsPenetration).toBe(false);
    const deep = screws(report({ minimumPenetration_m: 0.08 }));
    expect(deep.penetration_m).toBeGreaterThanOrEqual(0.08);
    expect(deep.screwLength_m).toBeGreaterThan(screws().screwLength_m);
  });

  it('its lengths go before the lengths commonly sold', () => {
    expect(screws(report({ lengths_m: [0.3, 0.21] })).screwLength_m).toBe(0.21);
    expect(screws(report({ longest_m: 0.15 })).sold).toBe(false);
    const long = { 'insulation.aboveDeckTarget_m2K_W': 13 };
    expect(screws(long).sold).toBe(false);
    expect(screws({ ...long, ...report({ longest_m: 0.7 }) }).sold).toBe(true);
  });

  it('refuses values out of range, the same thing twice, and a gap without its load', () => {
    expect(
      faults({ name: 'Invented screw', withdrawal_N_m: 33_000, lateral_N: 90, lateralGap_m: 0.1 }),
    ).toEqual([]);
    expect(faults({ pullThrough_N: 5 })[0]).toContain('insulation.screwReport.pullThrough_N');
    expect(faults({ withdrawal_N_m: 33_000, allowableWithdrawal_N: 900 })[0]).toContain('give one of them');
    expect(faults({ lateralGap_m: 0.1 })[0]).toContain('lateral_N');
    expect(faults({ pullTrough_N: 900 })[0]).toContain('pullThrough_N');
  });
});

describe('a screw that misses the rafter', () => {
  it('keeps the thread in the deck: 2850 G² D t in panels of G 0.50, 1.6 in wind', () => {
    const { missesRafter } = screws();
    // A deck of 16 mm.
    expect(poundsFromNewtons(missesRafter?.hold_N ?? 0)).toBeCloseTo(
      2850 * 0.25 * 0.242 * (16 / 25.4) * 1.6,
      2,
    );
    expect(missesRafter?.shows).toBe(false);
    expect(screws({ 'framing.deckSeenFromBelow': true }).missesRafter?.shows).toBe(true);
  });
  it('is no question for a panel, which holds in the deck by design', () => {
    expect(screws({}, panel).missesRafter).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { complete } from '../../src/case/complete.ts';
import { zoneOf } from '../../src/case/place.ts';
import type { Requirements } from '../../src/evaluation/evaluation.ts';
import { requirementsOf } from '../../src/roof/requirements.ts';
import { climateOf } from '../../src/roof/site.ts';
import { celsiusFromFahrenheit, rFromRsi, rsiFromR } from '../../src/units.ts';
import { plainCase, settingOf, type Changes } from '../support/roofs.ts';

const required = (changes: Changes = {}): Requirements => settingOf(changes).requirements;
const even = (temperature_C: number): number[] => Array.from({ length: 12 }, () => temperature_C);

describe('R above the deck by the table of IRC R806.5', () => {
  it.each([
    ['3A', 5],
    ['4C', 10],
    ['4A', 15],
    ['5B', 20],
    ['6A', 25],
    ['7', 30],
    ['8', 35],
  ])('zone %s: R-%s', (zone, r) => {
    const { aboveDeckTable } = required({ 'place.zone': zone });
    expect(rFromRsi(aboveDeckTable.resistance_m2K_W)).toBeCloseTo(r, 9);
    expect(aboveDeckTable.local).toBe(false);
  });

  it('tile in zone 3B needs none', () => {
    const tile = required({ 'place.zone': '3B', 'covering.kind': 'clay-tile' });
    expect(tile.aboveDeckTable.resistance_m2K_W).toBe(0);
    expect(tile.tableShare_pct).toBe(0);
  });

  it('implies a share of the R-49 for which it was sized: 25/49 in zone 6', () => {
    expect(required().tableShare_pct).toBeCloseTo((100 * 25) / 49, 9);
  });

  it('gives way to a local figure, and cites the user', () => {
    const local = required({ 'codes.localAboveDeck_m2K_W': 5, 'codes.localCeiling_m2K_W': 7 });
    expect(local.aboveDeckTable).toMatchObject({ resistance_m2K_W: 5, local: true, source: 'USER' });
    expect(local.ceiling).toMatchObject({ resistance_m2K_W: 7, local: true, source: 'USER' });
  });

  it('is refused where no row covers the zone and edition', () => {
    const zone = zoneOf(plainCase);
    const { completed } = complete(plainCase, zone.zone);
    const climate = climateOf(plainCase, zone);
    const elsewhere = { ...completed, codes: { ...completed.codes, edition: '1990' as '2015' } };
    expect(() => requirementsOf(elsewhere, climate)).toThrow(/1990/);
  });
});

describe('the 45 °F rule: worked examples, own arithmetic in °F', () => {
  it.each([
    [20, 0.5208],
    [30, 0.3947],
    [10, 0.6034],
    [0, 0.6618],
    [35, 0.303],
    [45, 0],
    [60, 0],
  ])('outdoors %s °F: share %s above the deck', (outdoor_F, share) => {
    const { temperatureRule } = required({
      'place.monthlyTemperature_C': even(celsiusFromFahrenheit(outdoor_F)),
    });
    expect(temperatureRule.share_pct).toBeCloseTo(100 * share, 2);
  });

  it('20 °F with R-30 below: R-32.61 above', () => {
    const { temperatureRule } = required({
      'place.monthlyTemperature_C': even(celsiusFromFahrenheit(20)),
      'belowDeck.fillResistance_m2K_W': rsiFromR(30),
    });
    expect(rFromRsi(temperatureRule.aboveDeck_m2K_W)).toBeCloseTo(32.61, 2);
  });

  it('takes the three coldest months: −8, −6, −4 °C', () => {
    expect(required().temperatureRule.outdoorMean_C).toBeCloseTo(-6, 12);
  });
});

describe('what governs the R above the deck', () => {
  const split = (changes: Changes) => required(changes).split;

  it('a figure that is wanted', () => {
    expect(split({ 'insulation.aboveDeckTarget_m2K_W': 1, 'insulation.totalTarget_m2K_W': 9 })).toEqual({
      belowDeck_m2K_W: 3.3,
      aboveDeck_m2K_W: 1,
      share_pct: expect.closeTo(100 / 4.3, 9) as number,
      governedBy: 'wanted',
    });
  });

  it('a total that is wanted, less what is below', () => {
    expect(split({ 'insulation.totalTarget_m2K_W': 9 })).toMatchObject({
      governedBy: 'total-wanted',
      aboveDeck_m2K_W: 9 - 3.3,
    });
    expect(split({ 'insulation.totalTarget_m2K_W': 3 }).aboveDeck_m2K_W).toBe(0);
  });

  it('the ceiling R when much of it is missing below', () => {
    expect(split({ 'belowDeck.fill': 'none' })).toMatchObject({ governedBy: 'ceiling', share_pct: 100 });
  });

  it('the table when the cavity brings most of the ceiling R', () => {
    expect(
      split({ 'belowDeck.fillResistance_m2K_W': 8, 'place.monthlyTemperature_C': even(3) }),
    ).toMatchObject({ governedBy: 'table', aboveDeck_m2K_W: rsiFromR(25) });
  });

  it('the deck temperature when it is cold outside of a thick fill', () => {
    const cold = split({ 'belowDeck.fillResistance_m2K_W': 8, 'place.monthlyTemperature_C': even(-20) });
    // 8 × 0.6806 / (1 − 0.6806)
    expect(cold.governedBy).toBe('temperature');
    expect(cold.aboveDeck_m2K_W).toBeCloseTo((8 * (7 + 2 / 9 + 20)) / (20 - 7 - 2 / 9), 6);
  });

  it('nothing below and nothing wanted above is all above', () => {
    expect(
      split({
        'belowDeck.fill': 'none',
        'insulation.totalTarget_m2K_W': 0.5,
        'insulation.aboveDeckTarget_m2K_W': 0.2,
      }).share_pct,
    ).toBe(100);
  });
});

describe('the ice barrier', () => {
  it('runs 24 in past the inside of the wall, up the slope: (0.4 + 0.16 + 0.6096) √(1 + (6/12)²)', () => {
    const { iceBarrier } = required();
    expect(iceBarrier.length_m).toBeCloseTo((0.4 + 0.16 + 0.6096) * Math.sqrt(1.25), 9);
    expect(iceBarrier).toMatchObject({ required: true, courses: 2 });
  });

  it('is at least 36 in at 8:12 and steeper: one roll', () => {
    const short = { 'overhang.eave_m': 0, 'wall.thickness_m': 0.08, 'roof.pitch_rise_per_12': 8 };
    expect(required(short).iceBarrier).toMatchObject({ length_m: 0.9144, courses: 1 });
    expect(required({ ...short, 'roof.pitch_rise_per_12': 7.9 }).iceBarrier.length_m).toBeLessThan(0.9144);
  });

  it('is not asked under metal, nor where the authority does not ask', () => {
    expect(required({ 'covering.kind': 'standing-seam-metal' }).iceBarrier.required).toBe(false);
    expect(required({ 'codes.iceBarrierRequired': false }).iceBarrier.required).toBe(false);
  });
});

describe('the slope of the covering', () => {
  it.each([
    ['asphalt-shingle', 6, true, false],
    ['asphalt-shingle', 3.9, true, true],
    ['asphalt-shingle', 2, true, true],
    ['clay-tile', 2.4, false, false],
    ['slate', 4, true, false],
    ['slate', 3.9, false, false],
  ])(
    '%s at %s:12: allowed %s, two layers of underlayment %s',
    (kind, pitch, meetsMinimum, doubleUnderlayment) => {
      expect(required({ 'covering.kind': kind, 'roof.pitch_rise_per_12': pitch }).slope).toMatchObject({
        meetsMinimum,
        doubleUnderlayment,
      });
    },
  );
});

describe('the class of the interior retarder (0.1, 1 and 10 perm)', () => {
  it.each([
    ['polyethylene', 'I'],
    ['kraft-facer', 'II'],
    ['smart-membrane', 'II'],
    ['latex-paint', 'III'],
    ['none', 'none'],
  ])('%s: %s', (interiorRetarder, found) => {
    expect(required({ 'belowDeck.interiorRetarder': interiorRetarder }).interiorRetarder.class).toBe(found);
  });
});

import { describe, expect, it } from 'vitest';
import type { Candidate } from '../../src/evaluation/evaluation.ts';
import { layoutOf } from '../../src/roof/takeoffLayout.ts';
import type { Variant } from '../../src/roof/variant.ts';
import { candidateOf, completed, flush, panel, type Changes } from '../support/roofs.ts';

type Takeoff = Candidate['takeoff'];
const wanted = { 'insulation.aboveDeckTarget_m2K_W': 2.9 };
const takeoff = (changes: Changes = {}, of: Partial<Variant> = {}): Takeoff =>
  candidateOf({ ...wanted, ...changes }, of).takeoff;
const quantity = ({ items }: Takeoff, id: string): number =>
  items.find((item) => item.id === id)?.quantity ?? 0;

/** The plain roof: 2 × 12.6 m × 4.4 m × √1.25. */
const area_m2 = 2 * 12.6 * 4.4 * Math.sqrt(1.25);

/** One board, panel or sheet of 4 by 8 ft. */
const board_m2 = 1.2192 * 2.4384;
/**
 * By hand. Boards end at nailers: 12.6 − 2 × 0.0889 = 12.4222 m by 4.4 √1.25 − 0.1397 = 4.7797 m on each slope.
 * First layer, four rows: five whole and 0.2302, or 1.2192, four whole and 1.4494. The top row is ripped to 1.122 m.
 * First slope: 6 + 5 + 5 + 6 boards (1.2192 and one 0.2302 come from offcuts); second slope: 5 + 5 + 5 + 6.
 */
const BOARDS_1 = 22 + 21;
/**
 * Second layer, moved by 2 ft along and half a board up: rows of 0.6096, three of 1.2192 and 0.5125 m.
 * First slope: 3 + 5 + 6 + 5 + 3 boards; second slope: 2 + 5 + 6 + 5 + 3.
 */
const BOARDS_2 = 22 + 21;
/**
 * Sheets lie on the nailers: 12.6 by 4.919 m, four rows and a strip of 0.0426 m.
 * First slope: 6 + 5 + 5 + 6 + 1 (five strips from one sheet); second slope: 5 + 5 + 5 + 6 + 0.
 */
const SHEETS = 23 + 21;
/** Panels keep their place along the panel: each 0.2302 at the right end takes a new one, its rest begins the next row. */
const PANELS = 22 + 22;

describe('boards, panels and sheets of the plain roof, by hand', () => {
  const given = completed();
  it.each([
    ['first layer', 'eps', 0, BOARDS_1],
    ['second layer', 'eps', 1, BOARDS_2],
    ['second deck', 'sheet', 0, SHEETS],
    ['panels', 'panel', 0, PANELS],
  ] as const)('%s', (_, what, layer, count) => {
    const found = layoutOf(given, what, layer);
    expect(found.count).toBe(count);
    const covered_m2 = what === 'sheet' ? area_m2 : 2 * 12.4222 * (4.4 * Math.sqrt(1.25) - 0.1397);
    expect(found.covered_m2).toBeCloseTo(covered_m2, 9);
    expect(found.waste_pct).toBeCloseTo(100 * ((count * board_m2) / covered_m2 - 1), 9);
  });

  it('more valleys mean more waste, hours and money, for panels more than for boards', () => {
    const rise = (of: Partial<Variant>) =>
      takeoff({ 'roof.valleys': 6 }, of).cost_USD_m2 - takeoff({}, of).cost_USD_m2;
    expect(rise({})).toBeGreaterThan(0);
    expect(rise(panel)).toBeGreaterThan(rise({}));
    expect(takeoff({ 'roof.valleys': 6 }).labor_h_m2).toBeGreaterThan(takeoff().labor_h_m2);
    expect(takeoff({ 'roof.valleys': 6 }, panel).waste_pct).toBeGreaterThan(
      takeoff({ 'roof.valleys': 6 }).waste_pct,
    );
  });
});

describe('quantities of the plain roof, by hand', () => {
  it('membrane for the roof, boards as laid out, screws with a tenth spare, 60 blocks', () => {
    const found = takeoff();
    expect(found.roofArea_m2).toBeCloseTo(area_m2, 9);
    expect(quantity(found, 'membrane')).toBeCloseTo(area_m2, 9);
    expect(quantity(found, 'insulation-1')).toBeCloseTo(BOARDS_1 * board_m2, 9);
    expect(quantity(found, 'insulation-2')).toBeCloseTo(BOARDS_2 * board_m2, 9);
    // Plan 12.6 m by two slopes of 4.4 m, strips of 3 ft along eaves, rakes and ridge, each zone to whole screws.
    const a_m = 0.9144;
    const zones_m2 = [
      (12.6 - 2 * a_m) * (4.4 - 2 * a_m),
      (12.6 - 2 * a_m) * a_m,
      (12.6 - 2 * a_m) * a_m,
      2 * a_m * (4.4 - 2 * a_m),
      2 * a_m * a_m,
      2 * a_m * a_m,
    ].map((plan_m2) => 2 * plan_m2 * Math.sqrt(1.25));
    const screws = zones_m2.reduce((sum, zone_m2) => sum + Math.ceil(zone_m2 / (0.6096 * 0.4)), 0);
    expect(quantity(found, 'screws')).toBe(Math.ceil(1.1 * screws));
    expect(quantity(found, 'blocks')).toBe(60);
    expect(quantity(found, 'outriggers')).toBe(0);
  });

  it('outriggers: eaves of 24 m and four rakes, 24 in apart; no blocks', () => {
    const found = takeoff({}, flush);
    const rakes_m = 4 * 4.4 * Math.sqrt(1.25);
    expect(quantity(found, 'outriggers')).toBe(Math.ceil((24 + rakes_m) / 0.6096));
    expect(quantity(found, 'blocks')).toBe(0);
    expect(quantity(takeoff({ 'overhang.rake_m': 0 }, flush), 'outriggers')).toBe(Math.ceil(24 / 0.6096));
  });
});

describe('carbon', () => {
  it('expanded polystyrene: 3.75 kg/m² for each m²·K/W, from cradle to gate', () => {
    const { thermal, takeoff: found } = candidateOf(wanted);
    expect(found.carbon_kg_m2).toBeCloseTo(3.75 * thermal.aboveDeck_m2K_W, 9);
  });
});

describe('hours and days', () => {
  /** Screws against sliding: half of 0.2368 h/m² for the 24 in by 0.4 m that one screw of the schedule stands for. */
  const further = (changes: Changes = {}, of: Partial<Variant> = {}) => {
    const count = candidateOf({ ...wanted, ...changes }, of).fasteners.slopePath.screws;
    expect(count).toBeGreaterThan(0);
    return count * (0.2368 / 2) * 0.6096 * 0.4;
  };

  it('two layers of board by table: 0.1399 h/m² of both laid, 0.2368 h/m² screws and deck, of what is bought', () => {
    const field_h = board_m2 * (((BOARDS_1 + BOARDS_2) * 0.1399) / 2 + SHEETS * 0.2368) + further();
    const edge_h = 60 * 0.25 + 24 * 0.9843;
    const found = takeoff();
    expect(found.labor_h_m2).toBeCloseTo((field_h + edge_h) / area_m2, 9);
    expect(found.daysOpen).toBeCloseTo(field_h / (3 * 8), 9);
  });

  it('a panel alone: 0.1184 h/m² with a lift, 1.8 times that without', () => {
    const days = (lift: boolean) => takeoff({ 'work.lift': lift }, panel).daysOpen;
    expect(days(true)).toBeCloseTo((PANELS * board_m2 * 0.1184 + further({}, panel)) / 24, 9);
    expect(days(false) - days(true)).toBeCloseTo((0.8 * PANELS * board_m2 * 0.1184) / 24, 9);
  });

  it('lapped metal on battens halves the step of screws and deck', () => {
    const metal = takeoff({ 'covering.kind': 'metal-panel' }).daysOpen;
    expect(metal).toBeCloseTo(
      (board_m2 * (BOARDS_1 + BOARDS_2) * (0.1399 / 2) +
        area_m2 * (0.2368 / 2) +
        further({ 'covering.kind': 'metal-panel' })) /
        24,
      9,
    );
  });

  it('a crew that has never done it takes 1.4 times as long', () => {
    const none = takeoff({ 'work.experience': 'none' });
    expect(none.labor_h_m2 / takeoff().labor_h_m2).toBeCloseTo(1.4, 9);
  });

  it('a new roof has no old trim to rebuild, and no tails to cut', () => {
    const isNew = { 'project.kind': 'new-roof', 'overhang.carriedToday': 'none' };
    expect(takeoff().labor_h_m2 - takeoff(isNew).labor_h_m2).toBeCloseTo((24 * 0.9843) / area_m2, 9);
    const cut = 24 * (1.9685 + 0.8202);
    expect(takeoff({}, flush).labor_h_m2 - takeoff(isNew, flush).labor_h_m2).toBeCloseTo(cut / area_m2, 9);
  });
});

describe('money', () => {
  it('owners pay for material alone', () => {
    const own = takeoff({ 'work.crew': 'self-build' });
    const hired = takeoff();
    expect(hired.cost_USD_m2 - own.cost_USD_m2).toBeCloseTo(55 * hired.labor_h_m2, 9);
  });

  it('a panel costs its premium above board and deck', () => {
    const own = { 'work.crew': 'self-build' };
    const found = candidateOf({ ...wanted, ...own }, panel);
    const board = 6.11 * found.thermal.aboveDeck_m2K_W;
    const panels = (PANELS * board_m2 * (board + 16.146 + 12.917)) / area_m2;
    const perArea =
      panels + 11.84 + ((found.fasteners.count + found.fasteners.slopePath.screws) * 1 + 60 * 4) / area_m2;
    expect(found.takeoff.cost_USD_m2).toBeCloseTo(perArea, 6);
  });
});

describe('trades and steps', () => {
  const stays = { 'wall.cladding': 'stays' };
  it.each([
    ['boards by roofer and framer', {}, {}, 2],
    ['the owner alone', { 'work.crew': 'self-build' }, {}, 1],
    ['outriggers bring the engineer', {}, flush, 3],
    ['and the siding when it stays', stays, flush, 4],
    ['a panel brings its crew', {}, panel, 2],
    ['a panel crew is the roofer', { 'work.crew': 'panel-crew' }, panel, 1],
    ['a panel by the owner', { 'work.crew': 'self-build' }, panel, 1],
  ] as const)('%s', (_, changes, of, trades) => {
    expect(takeoff(changes, of).trades).toBe(trades);
  });

  it('boards on furring: two layers, screws, furring, deck, bays sealed (2), and three for any roof', () => {
    expect(takeoff().steps).toBe(2 + 1 + 1 + 1 + 2 + 3);
  });

  it('a panel alone: two, bays (2) and three; a base layer adds one', () => {
    expect(takeoff({}, panel).steps).toBe(2 + 2 + 3);
    expect(takeoff({}, { ...panel, baseBoard: 'eps' }).steps).toBe(1 + 2 + 2 + 3);
  });

  it('outriggers on a stripped roof: three, and one for cutting the tails', () => {
    expect(takeoff({}, flush).steps).toBe(2 + 1 + 1 + 1 + 3 + 1 + 3);
    expect(takeoff({ 'overhang.carriedToday': 'none' }, flush).steps).toBe(2 + 1 + 1 + 1 + 3 + 3);
  });

  it('a mat is a step in place of the furring', () => {
    expect(takeoff({}, { ventilation: 'drainage-mat' }).steps).toBe(takeoff().steps);
    expect(takeoff({}, { ventilation: 'unvented' }).steps).toBe(takeoff().steps - 1);
  });
});

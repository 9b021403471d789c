import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it, vi } from 'vitest';
import { evaluate } from '../../src/evaluate.ts';
import type { TakeoffLine, TakeoffList } from '../../src/evaluation/takeoff.ts';
import { takeoffCsv } from '../../src/report/takeoffCsv.ts';
import { takeoffListOf, totalOf } from '../../src/roof/takeoffList.ts';
import { layoutOf } from '../../src/roof/takeoffLayout.ts';
import { anyCase } from '../support/anyCase.ts';
import {
  completed,
  draftOf,
  evaluationOf,
  flush,
  panel,
  scenarioNames,
  settingOf,
  strangeNumbers,
  type Changes,
} from '../support/roofs.ts';
import type { Variant } from '../../src/roof/variant.ts';

vi.setConfig({ testTimeout: 240_000 });

const wanted = { 'insulation.aboveDeckTarget_m2K_W': 2.9 };
function listOf(changes: Changes = {}, of: Partial<Variant> = {}): TakeoffList {
  const { given, requirements } = settingOf({ ...wanted, ...changes });
  return takeoffListOf({ given, requirements, draft: draftOf({ ...wanted, ...changes }, of) });
}
const line = (list: TakeoffList, id: string): TakeoffLine => {
  const found = list.lines.find((one) => one.id === id);
  if (!found) throw new RangeError(`no line ${id}`);
  return found;
};
const quantity = (list: TakeoffList, id: string): number => line(list, id).quantity;

/** 6:12: cosine 2/√5; slopes 4.4 √1.25 m long, as in takeoff.test.ts. */
const slope_m = 4.4 * Math.sqrt(1.25);
const board_m2 = 1.2192 * 2.4384;

describe('a plain gable of 12 by 8 m, by hand', () => {
  const list = listOf();
  it('sheets: roof with a tenth for laps; tape along eaves, rakes and ridge', () => {
    const edges_m = 2 * 12.6 + 4 * slope_m;
    expect(quantity(list, 'membrane')).toBeCloseTo(1.1 * 2 * 12.6 * slope_m, 9);
    expect(quantity(list, 'underlayment')).toBeCloseTo(1.1 * 2 * 12.6 * slope_m, 9);
    expect(quantity(list, 'tape')).toBeCloseTo(edges_m + 12.6, 9);
    expect(quantity(list, 'primer')).toBeCloseTo(0.3 * edges_m, 9);
    expect(quantity(list, 'drip-edge')).toBeCloseTo(edges_m, 9);
  });

  it('furring every 400 mm; nailers of 2x as high as the boards', () => {
    expect(quantity(list, 'furring')).toBeCloseTo((2 * 12.6 * slope_m) / 0.4, 9);
    const boards_m = ['insulation-1', 'insulation-2'].reduce(
      (sum, id) => sum + (line(list, id).thickness_m ?? 0),
      0,
    );
    const plies = Math.ceil(boards_m / 0.0381);
    expect(quantity(list, 'nailers')).toBeCloseTo(plies * (2 * 12.6 + 4 * slope_m), 9);
  });

  it('vents along eaves and ridge, none without a gap; no valley metal, no flashing', () => {
    expect(quantity(list, 'intake-vent')).toBeCloseTo(25.2, 9);
    expect(quantity(list, 'ridge-vent')).toBeCloseTo(12.6, 9);
    expect(quantity(list, 'insect-screen')).toBeCloseTo(37.8, 9);
    const tight = listOf({}, { ventilation: 'unvented' });
    expect(tight.lines.map(({ id }) => id)).not.toContain('ridge-vent');
    expect(list.lines.filter(({ group }) => group === 'flashing')).toEqual([]);
  });

  it('boards by layer weigh density × thickness × what is bought; carbon 3.75 for each m²·K/W', () => {
    const board = line(list, 'insulation-1');
    const thickness_m = board.thickness_m ?? 0;
    expect(board.mass_kg).toBeCloseTo(24 * thickness_m * 43 * board_m2, 9);
    expect(board.carbon_kg?.mid).toBeCloseTo((3.75 * 43 * board_m2 * thickness_m) / 0.0343399, 6);
    expect(board.cost_USD.mid).toBeCloseTo((6.11 * 43 * board_m2 * thickness_m) / 0.0343399, 6);
  });

  it('ice barrier along both eaves, as long as the code asks', () => {
    const { requirements } = settingOf(wanted);
    expect(quantity(list, 'ice-barrier')).toBeCloseTo(25.2 * requirements.iceBarrier.length_m, 9);
  });

  it('the heaviest piece is a sheet of the second deck: 450 × 0.0159 × 2.97 m² = 21.3 kg, one person', () => {
    expect(list.lift.heaviest).toBe('second-deck');
    expect(list.lift.heaviest_kg).toBeCloseTo(450 * 0.0159 * board_m2, 9);
    expect(list.lift.people).toBe(1);
    const all_kg = ['insulation-1', 'insulation-2', 'second-deck'].reduce(
      (sum, id) => sum + (line(list, id).mass_kg ?? 0),
      0,
    );
    expect(list.lift.loads).toBe(Math.ceil(all_kg / 450));
  });

  it('a panel is core, deck and premium in one line', () => {
    const panels = listOf({}, panel);
    const [one] = panels.lines.filter(({ group }) => group === 'board');
    const r = (one?.thickness_m ?? 0) / 0.0343399;
    expect(one?.cost_USD.high).toBeCloseTo(44 * board_m2 * (8.56 * r + 23.681 + 26.91), 6);
    expect(one?.what).toContain('prebonded panel');
  });

  it('outriggers bring their screws and the engineer', () => {
    const flushed = listOf({}, flush);
    expect(quantity(flushed, 'engineer')).toBe(1);
    const { structure } = draftOf(wanted, flush).candidate;
    const screws = structure.plan?.screws;
    if (!screws) throw new RangeError('no outrigger fits');
    const each = screws.heel + screws.wall;
    expect(quantity(flushed, 'outrigger-screws')).toBe(
      Math.ceil(1.1 * each * quantity(flushed, 'outriggers')),
    );
  });
});

/**
 * An L: one valley bends the same house, legs 8 m wide. Outer eaves (12 + 8) / 2 + 0.4 + 0.3 = 10.7 m, inner eaves
 * (12 − 8) / 2 − 0.4 + 0.3 = 1.9 m; hip and valley 4.4 √(2 + 1/4) = 6.6 m. Rows of sheets are 1.2192 m up the slope,
 * so that the hip takes 1.2192 × 2/√5 = 1.0905 m off each row and the valley gives as much.
 * Outer 1, rows of at most 10.7, 9.6095, 8.5190, 7.4285 m and a strip: 5 + 4 + 3 + 4 + 1 sheets.
 * Outer 2, with the offcuts of the first: 4 + 4 + 3 + 4 + 1.
 * Inner, rows of at most 2.9905, 4.0810, 5.1715, 6.2619 m and a strip: 1 + 1 + 2 + 3 + 0, twice.
 */
const L_SHEETS = 17 + 16 + 7 + 7;

describe('an L with one valley, by hand', () => {
  const changes = { 'roof.shape': 'cross-gable', 'roof.valleys': 1 };
  const list = listOf(changes);
  it('area, eaves, rakes and ridge of the plain roof; 6.6 m of valley and of hip', () => {
    expect(quantity(list, 'membrane')).toBeCloseTo(1.1 * 2 * 12.6 * slope_m, 9);
    expect(quantity(list, 'drip-edge')).toBeCloseTo(25.2 + 4 * slope_m, 9);
    expect(quantity(list, 'ridge-vent')).toBeCloseTo(12.6, 9);
    expect(quantity(list, 'valley-flashing')).toBeCloseTo(6.6, 9);
    expect(quantity(list, 'tape')).toBeCloseTo(25.2 + 4 * slope_m + 12.6 + 2 * 6.6, 9);
  });

  it('47 sheets, three more than on the plain gable', () => {
    expect(layoutOf(completed(changes), 'sheet', 0).count).toBe(L_SHEETS);
    expect(line(list, 'second-deck').layout?.count).toBe(L_SHEETS);
    expect(quantity(list, 'second-deck')).toBeCloseTo(L_SHEETS * board_m2, 9);
  });
});

describe('totals', () => {
  it('two parts of 10 (7 to 14) and 20 (16 to 23): widest 23 to 37, likely 30 − 5 to 30 + 5', () => {
    const found = totalOf([
      { low: 7, mid: 10, high: 14 },
      { low: 16, mid: 20, high: 23 },
    ]);
    expect(found.straight).toEqual({ low: 23, mid: 30, high: 37 });
    expect(found.likely).toEqual({ low: 25, mid: 30, high: 35 });
  });

  it('material and wages: the middle is lines plus hours at the middle rate; owners work for nothing', () => {
    const list = listOf();
    const material = list.lines.reduce((sum, one) => sum + one.cost_USD.mid, 0);
    const hours = list.hours.reduce((sum, one) => sum + one.hours.mid, 0);
    expect(list.whole_USD.likely.mid).toBeCloseTo(material + 55 * hours, 6);
    const own = listOf({ 'work.crew': 'self-build' });
    expect(own.whole_USD).toEqual(own.material_USD);
    expect(own.hours.map(({ trade }) => trade)).toEqual(own.hours.map(() => 'owner'));
  });
});

function lawful({ lines, hours, whole_USD, material_USD, labor_h, lift }: TakeoffList): void {
  for (const { layout, quantity: bought_m2, cost_USD } of lines) {
    expect(cost_USD.low).toBeLessThanOrEqual(cost_USD.mid + 1e-9);
    expect(cost_USD.mid).toBeLessThanOrEqual(cost_USD.high + 1e-9);
    if (layout === undefined) continue;
    expect(bought_m2).toBeGreaterThanOrEqual(layout.covered_m2 - 1e-6);
    expect(layout.waste_pct).toBeGreaterThanOrEqual(-1e-6);
    expect(layout.count).toBe(layout.whole + layout.cut - layout.reused);
  }
  for (const { likely, straight } of [whole_USD, material_USD, labor_h]) {
    expect(straight.low).toBeLessThanOrEqual(likely.low + 1e-6);
    expect(likely.low).toBeLessThanOrEqual(likely.mid);
    expect(likely.high).toBeLessThanOrEqual(straight.high + 1e-6);
  }
  expect(new Set(lines.map(({ id }) => id)).size).toBe(lines.length);
  expect(hours.length).toBeGreaterThan(0);
  expect(lift.people * lift.person_kg).toBeGreaterThanOrEqual(lift.heaviest_kg);
  expect(lift.loads * lift.load_kg).toBeGreaterThanOrEqual(lift.total_kg);
}

describe('lists of real and of any cases', () => {
  it.each(scenarioNames)('%s: one list and one set of checks for each leader, in order', (name) => {
    const { takeoffs, geometryChecks, ranking, roofGeometry } = evaluationOf(name);
    const leaders = ranking.leaders.map(({ candidate }) => candidate);
    expect(takeoffs.map(({ candidate }) => candidate)).toEqual(leaders);
    expect(geometryChecks.map(({ candidate }) => candidate)).toEqual(leaders);
    takeoffs.forEach(lawful);
    const planes_m2 = roofGeometry.planes.reduce((sum, { area_m2 }) => sum + area_m2, 0);
    expect(planes_m2).toBeCloseTo(roofGeometry.area_m2, 9);
  });

  it('finite and in order for any case', () => {
    fc.assert(
      fc.property(anyCase, (given) => {
        const { takeoffs, geometryChecks, roofGeometry } = evaluate(given);
        expect(strangeNumbers({ takeoffs, geometryChecks, roofGeometry })).toEqual([]);
        takeoffs.forEach(lawful);
      }),
      { numRuns: 4 },
    );
  });
});

describe('the table for a spreadsheet', () => {
  it('reads back: every line and hour of every list, the same figures to three decimals', () => {
    const evaluation = evaluationOf('1-ridge-cottage');
    const { data, errors } = Papa.parse<Record<string, string>>(takeoffCsv(evaluation).trimEnd(), {
      header: true,
    });
    expect(errors).toEqual([]);
    for (const list of evaluation.takeoffs) {
      const rows = data.filter((row) => row['candidate'] === list.candidate);
      expect(rows.filter((row) => row['part'] === 'material')).toHaveLength(list.lines.length);
      expect(rows.filter((row) => row['part'] === 'hours')).toHaveLength(list.hours.length);
      for (const one of list.lines) {
        const row = rows.find((each) => each['part'] === 'material' && each['id'] === one.id);
        expect(Number(row?.['quantity'])).toBeCloseTo(one.quantity, 3);
        expect(Number(row?.['cost_USD'])).toBeCloseTo(one.cost_USD.mid, 3);
      }
      const whole = rows.find((row) => row['id'] === 'whole');
      expect(Number(whole?.['cost_USD'])).toBeCloseTo(list.whole_USD.likely.mid, 3);
    }
  });

  it('after a stop only the heading is left', () => {
    expect(takeoffCsv(evaluationOf('6-attic-stays-vented')).trimEnd().split('\r\n')).toHaveLength(1);
  });
});

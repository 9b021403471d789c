/**
 * Materials against printed values. Polyisocyanurate: R 4.5, 5.0 and 5.6 per inch at 25, 40 and 75 °F mean
 * temperature (a producer's technical note, seen). Classes: International Residential Code R202.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boardCarbon, boardCost, cost } from '../../src/catalog/costs.ts';
import {
  allMaterials,
  board,
  boardResistance,
  boards,
  material,
  materialResistance,
} from '../../src/catalog/materials.ts';
import { boards as boardIds } from '../../src/catalog/sets.ts';
import { citation, source } from '../../src/catalog/sources.ts';
import { equivalentAirLayer, permeance } from '../../src/catalog/vapor.ts';
import { vaporRetarderClass } from '../../src/catalog/vaporRetarder.ts';
import {
  celsiusFromFahrenheit,
  metersFromInches,
  rFromRsi,
  squareFeetFromSquareMeters,
} from '../../src/units.ts';

const perInch_R = (id: (typeof boardIds)[number], mean_C?: number): number =>
  rFromRsi(boardResistance(id, metersFromInches(1), mean_C));

describe('boards', () => {
  it('are the six of the closed set, each with thicknesses sold', () => {
    expect(boards().map((row) => row.id)).toEqual([...boardIds]);
    for (const row of boards()) expect(row.soldThicknesses_m.length).toBeGreaterThan(3);
  });

  // Printed R per inch at 75 °F; tolerance 1e-4 from the digits of the stored conductivity.
  it.each([
    ['polyisocyanurate', 5.6],
    ['xps', 5],
    ['eps', 4.2],
    ['graphite-eps', 4.7],
    ['stone-wool', 3.9],
  ] as const)('%s gives R %d per inch', (id, expected) => {
    expect(perInch_R(id)).toBeCloseTo(expected, 4);
  });

  it('six inches of extruded polystyrene are not short of R-30', () => {
    expect(rFromRsi(boardResistance('xps', 0.1524))).toBeGreaterThanOrEqual(30);
  });

  it('fibrous boards let air through, foams do not', () => {
    expect(
      boards()
        .filter((row) => row.airPermeable)
        .map((row) => row.id),
    ).toEqual(['stone-wool', 'wood-fiber']);
    expect(
      boards()
        .filter((row) => row.foam)
        .map((row) => row.id),
    ).toEqual(['polyisocyanurate', 'xps', 'eps', 'graphite-eps']);
  });

  it('sold thicknesses stay inside the range said to be sold', () => {
    const within = { polyisocyanurate: [25, 114.5], xps: [12.7, 102], 'stone-wool': [38, 153] } as const;
    for (const [id, [low_mm, high_mm]] of Object.entries(within)) {
      const sold = board(id as keyof typeof within).soldThicknesses_m;
      expect(Math.min(...sold) * 1000).toBeGreaterThanOrEqual(low_mm);
      expect(Math.max(...sold) * 1000).toBeLessThanOrEqual(high_mm);
    }
  });

  it('refuses a thickness of 0', () => {
    expect(() => boardResistance('xps', 0)).toThrow(RangeError);
  });
});

describe('polyisocyanurate in the cold', () => {
  it.each([
    [25, 4.5],
    [40, 5],
    [75, 5.6],
    [32.5, 4.75],
    [0, 4.5],
    [110, 5.6],
  ] as const)('at %d °F mean temperature: R %d per inch', (mean_F, expected) => {
    expect(perInch_R('polyisocyanurate', celsiusFromFahrenheit(mean_F))).toBeCloseTo(expected, 3);
  });

  it('never gains R as it gets colder (-40 to 40 °C)', () => {
    const temperature = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(
      fc.property(temperature, temperature, (a, b) => {
        const [colder, warmer] = a < b ? [a, b] : [b, a];
        expect(perInch_R('polyisocyanurate', colder)).toBeLessThanOrEqual(
          perInch_R('polyisocyanurate', warmer) + 1e-12,
        );
      }),
    );
  });

  it('other boards keep their rated value', () => {
    expect(perInch_R('eps', -20)).toBe(perInch_R('eps'));
  });
});

describe('other materials', () => {
  it('carry fixed resistances of films and sheets', () => {
    expect(rFromRsi(materialResistance('film-inside-up'))).toBeCloseTo(0.61, 3);
    expect(rFromRsi(materialResistance('film-outside-winter'))).toBeCloseTo(0.17, 3);
    expect(rFromRsi(materialResistance('asphalt-shingle'))).toBeCloseTo(0.44, 3);
    expect(rFromRsi(materialResistance('gypsum'))).toBeCloseTo(0.45, 2);
    expect(rFromRsi(materialResistance('glass-fiber-batt', metersFromInches(10)))).toBeCloseTo(36, 3);
  });

  it('name a source, and every source can be cited', () => {
    for (const row of allMaterials()) {
      for (const id of row.source) expect(citation(id)).toContain(source(id).publisher);
    }
  });

  it('unknown ids throw', () => {
    expect(() => material('lead')).toThrow(RangeError);
    expect(() => source('NOWHERE')).toThrow(RangeError);
    expect(() => cost('nothing')).toThrow(RangeError);
  });
});

describe('vapor', () => {
  const dryClass = (id: string, thickness_m?: number) => {
    const found = permeance(id, thickness_m);
    if (found.kind === 'notCovered') throw new Error(found.reason);
    return vaporRetarderClass(found.dry_ng_Pasm2);
  };

  // Conventional classes of R202: polyethylene and foil I, kraft facer II, latex paint III.
  it.each([
    ['polyethylene', 'I'],
    ['polyisocyanurate-foil', 'I'],
    ['self-adhered-bitumen', 'I'],
    ['kraft-facer', 'II'],
    ['latex-paint', 'III'],
    ['vapor-open-underlayment', 'none'],
    ['gypsum', 'none'],
  ] as const)('%s is class %s', (id, expected) => {
    expect(dryClass(id)).toBe(expected);
  });

  it('1.2 perm-inch is a vapor resistance factor near 115 for extruded polystyrene', () => {
    const layer = equivalentAirLayer('xps', 1);
    expect(layer.kind === 'vaporResistance' && layer.dry_m).toBeCloseTo(114.7, 0);
  });

  it('a faced board keeps its permeance whatever its thickness; uniform stuff doubles its air layer', () => {
    expect(equivalentAirLayer('polyisocyanurate', 0.1)).toEqual(equivalentAirLayer('polyisocyanurate', 0.05));
    for (const id of ['eps', 'wood-fiber', 'osb']) {
      const thin = equivalentAirLayer(id, 0.05);
      const thick = equivalentAirLayer(id, 0.1);
      if (thin.kind === 'notCovered' || thick.kind === 'notCovered') throw new Error(id);
      expect(thick.dry_m).toBeCloseTo(2 * thin.dry_m, 9);
    }
  });

  it('vented layers do not limit; cedar is not covered; a board without thickness is refused', () => {
    expect(equivalentAirLayer('air-layer-vented')).toEqual({ kind: 'vaporResistance', dry_m: 0, wet_m: 0 });
    expect(equivalentAirLayer('wood-shingle').kind).toBe('notCovered');
    expect(permeance('wood-shingle').kind).toBe('notCovered');
    expect(() => equivalentAirLayer('eps', 0)).toThrow(RangeError);
  });
});

describe('costs and carbon', () => {
  it('convert 0.11 USD per R and ft² to 6.72 USD per m² and m²·K/W', () => {
    // R-30 at 0.11 is 3.3 USD per ft² of roof.
    const usd_m2 = boardCost('polyisocyanurate').mid * 30 * 0.1761101838;
    expect(usd_m2 / squareFeetFromSquareMeters(1)).toBeCloseTo(3.3, 2);
  });

  it('R-30 of polyisocyanurate carries about 15.9 kg CO2e per m², the oldest extruded board about 317', () => {
    const rsi = 30 * 0.1761101838;
    expect(boardCarbon('polyisocyanurate').mid * rsi).toBeCloseTo(15.85, 1);
    expect(60 * rsi).toBeCloseTo(317, 0);
  });

  it('has a price and a carbon range for every board', () => {
    for (const id of boardIds) {
      expect(boardCost(id).low).toBeGreaterThan(0);
      expect(boardCarbon(id).high).toBeGreaterThan(boardCarbon(id).low);
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { strategies } from '../../src/catalog/sets.ts';
import { tradeOffPlot, type TradeOffMark } from '../../src/plot/tradeoff.ts';

const mark = (changes: Partial<TradeOffMark>): TradeOffMark => ({
  candidate: 'a',
  name: 'A variant',
  strategy: 'rafter-overhang',
  isLeader: false,
  cost_USD_m2: 80,
  durability: 0.6,
  fascia_m: 0.3,
  isBehind: false,
  ...changes,
});
const three = [
  mark({ isLeader: true }),
  mark({ candidate: 'b', strategy: 'flush-outriggers', isLeader: true, cost_USD_m2: 120, durability: 0.8 }),
  mark({ candidate: 'c', strategy: 'prebonded-panel', isLeader: true, cost_USD_m2: 121, durability: 0.8 }),
  mark({ candidate: 'd', cost_USD_m2: 150, durability: 0.5, isBehind: true }),
];
describe('the plot of cost against durability', () => {
  const plot = tradeOffPlot(three, { system: 'IP', size: 'wide' });

  it('says which leader is cheapest, which lasts longest, and how many are beaten in both', () => {
    expect(plot.sentence).toContain('Rafter overhang is the cheapest of the leaders');
    expect(plot.sentence).toContain('is the most durable');
    expect(plot.sentence).toContain('Of 4 feasible variants, 1 have another');
  });

  it('holds the same facts as a table, a row for each variant', () => {
    expect(plot.table.rows).toHaveLength(4);
    expect(plot.table.rows.map((row) => row.at(-1)?.text)).toEqual(['no', 'no', 'no', 'yes']);
  });

  it('names the leaders beside their marks, none on another', () => {
    const joined = JSON.stringify(plot.picture.shapes);
    for (const name of ['Rafter overhang', 'Flush frame with outriggers', 'Prebonded vented panel'])
      expect(joined).toContain(name);
  });

  it('stays on its paper with numbers only (any marks, both sizes and systems)', () => {
    const any = fc.record({
      candidate: fc.uuid(),
      name: fc.constant('A variant'),
      strategy: fc.constantFrom(...strategies),
      isLeader: fc.boolean(),
      cost_USD_m2: fc.double({ min: 0, max: 1000, noNaN: true }),
      durability: fc.double({ min: 0, max: 1, noNaN: true }),
      fascia_m: fc.double({ min: 0.05, max: 1, noNaN: true }),
      isBehind: fc.boolean(),
    });
    fc.assert(
      fc.property(
        fc.array(any, { maxLength: 12 }),
        fc.constantFrom('IP' as const, 'SI' as const),
        (marks, system) => {
          for (const size of ['wide', 'narrow'] as const) {
            const { picture } = tradeOffPlot(marks, { system, size });
            expect(JSON.stringify(picture)).not.toMatch(/null|NaN/);
            expect(picture.height_mm).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

import { describe, expect, it, vi } from 'vitest';
import { evaluationOf } from '../../support/roofs.ts';

vi.setConfig({ testTimeout: 120_000 });

describe('the parts of money and hours', () => {
  it.each(['1-twist-walls-open', '7-budget-bunkhouse'])(
    'add up to the totals for every variant of %s',
    (name) => {
      for (const { id, takeoff } of evaluationOf(name).candidates) {
        const sum = (what: string): number =>
          takeoff.parts
            .filter((part) => part.what === what)
            .reduce((all, { amount_m2 }) => all + amount_m2, 0);
        const hours = sum('open-hours') + sum('edge-hours');
        expect(hours, id).toBeCloseTo(takeoff.labor_h_m2, 9);
        expect(sum('material') + hours * takeoff.laborRate_USD_h, id).toBeCloseTo(takeoff.cost_USD_m2, 6);
      }
    },
  );
});

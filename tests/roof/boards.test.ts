import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { board, boardResistance } from '../../src/catalog/materials.ts';
import { boards, type BoardId } from '../../src/catalog/sets.ts';
import { stacksOf, stackThickness_m, type BoardStack } from '../../src/roof/boards.ts';
import { metersFromInches } from '../../src/units.ts';
import { boardsOf, candidateOf, draftOf, panel, variant } from '../support/roofs.ts';

const loose = (id: BoardId): readonly BoardStack[] => stacksOf(variant({ board: id }));
const panels = (id: BoardId, baseBoard: BoardId | null): readonly BoardStack[] =>
  stacksOf(variant({ ...panel, board: id, baseBoard }));
const inches = (stack: BoardStack): number[] =>
  stack.map(({ thickness_m }) => Number((thickness_m / metersFromInches(1)).toFixed(3)));

describe.each(boards)('stacks of loose %s', (id) => {
  const stacks = loose(id);

  it('have two to four layers, so that joints are offset', () => {
    expect(stacks.length).toBeGreaterThan(5);
    expect(Math.min(...stacks.map((stack) => stack.length))).toBe(2);
    expect(Math.max(...stacks.map((stack) => stack.length))).toBeLessThanOrEqual(4);
  });

  it('hold only thicknesses sold, none under 1 in', () => {
    const sold = new Set(board(id).soldThicknesses_m);
    const used = stacks.flat();
    expect(used.every((layer) => layer.board === id && sold.has(layer.thickness_m))).toBe(true);
    expect(Math.min(...used.map(({ thickness_m }) => thickness_m))).toBeGreaterThanOrEqual(0.0254 - 1e-6);
  });

  it('grow from one to the next', () => {
    const totals = stacks.map(stackThickness_m);
    expect(totals.every((total, index) => index === 0 || total > (totals[index - 1] ?? 0))).toBe(true);
  });
});

describe('of stacks equally thick', () => {
  it('the fewest layers are kept, then the most even ones, thickest at the deck', () => {
    const of = (total_in: number) =>
      loose('eps').find((stack) => Math.abs(stackThickness_m(stack) - metersFromInches(total_in)) < 1e-6);
    expect(inches(of(6) ?? [])).toEqual([3, 3]);
    expect(inches(of(6.5) ?? [])).toEqual([3.5, 3]);
    expect(inches(of(16.5) ?? [])).toHaveLength(3);
  });

  it('the thinnest stack of polyisocyanurate is two 1 in boards, the thickest four of 4 1/2 in', () => {
    expect(inches(loose('polyisocyanurate')[0] ?? [])).toEqual([1, 1]);
    expect(inches(loose('polyisocyanurate').at(-1) ?? [])).toEqual([4.5, 4.5, 4.5, 4.5]);
  });
});

describe('stacks of a panel', () => {
  it('alone are the core in one thickness sold', () => {
    const alone = panels('eps', null);
    expect(alone.every((stack) => stack.length === 1)).toBe(true);
    expect(alone.map((stack) => stack[0]?.thickness_m)).toEqual(board('eps').soldThicknesses_m);
  });

  it('over a base have one or two layers of the base under one core', () => {
    const based = panels('eps', 'xps');
    for (const stack of based) {
      expect([2, 3]).toContain(stack.length);
      expect(stack.map((layer) => layer.board)).toEqual([...stack.slice(1).map(() => 'xps'), 'eps']);
    }
  });

  it('on outriggers have a base that a 2x4 on edge fits into; alone there is no base to fit', () => {
    const onOutriggers = stacksOf(
      variant({ ...panel, board: 'eps', baseBoard: 'eps', carrier: 'outriggers' }),
    );
    const bases = onOutriggers.map((stack) => stackThickness_m(stack.slice(0, -1)));
    expect(Math.min(...bases)).toBeCloseTo(metersFromInches(3.5), 6);
    expect(onOutriggers.length).toBeLessThan(panels('eps', 'eps').length);
    const alone = variant({ ...panel, board: 'eps', carrier: 'outriggers' });
    expect(stacksOf(alone)).toEqual(panels('eps', null));
  });

  it('are worked out once', () => {
    expect(panels('eps', null)).toBe(panels('eps', null));
  });
});

describe('the stack of a candidate', () => {
  it('is the thinnest that reaches the R wanted, within half a percent (R 1 to 8 m²·K/W, every board)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...boards),
        fc.double({ min: 1, max: 8, noNaN: true }),
        (id, wanted_m2K_W) => {
          const draft = draftOf({ 'insulation.aboveDeckTarget_m2K_W': wanted_m2K_W }, { board: id });
          const first = loose(id).find(
            (stack) =>
              stack.reduce((sum, layer) => sum + boardResistance(id, layer.thickness_m), 0) >=
              wanted_m2K_W * 0.995,
          );
          expect(boardsOf(draft.candidate.layers).map(({ thickness_m }) => thickness_m)).toEqual(
            first?.map(({ thickness_m }) => thickness_m),
          );
          expect(draft.reachesGoal).toBe(true);
        },
      ),
      { numRuns: 25 },
    );
  }, 60_000);

  it('without a wish is the thinnest that meets table, deck temperature and ceiling', () => {
    const at = (stack: BoardStack) => stackThickness_m(stack);
    const chosen = candidateOf();
    const thickness_m = boardsOf(chosen.layers).reduce((sum, layer) => sum + layer.thickness_m, 0);
    expect(chosen.condensationControl.table.meets && chosen.condensationControl.temperature.meets).toBe(true);
    expect(chosen.thermal.meetsCeilingResistance || chosen.thermal.meetsTransmittance).toBe(true);
    const thinner = loose('eps').findLast((stack) => at(stack) < thickness_m - 1e-6);
    const wanted = thinner?.reduce((sum, layer) => sum + boardResistance('eps', layer.thickness_m), 0) ?? 0;
    const less = candidateOf({ 'insulation.aboveDeckTarget_m2K_W': wanted });
    const { table, temperature } = less.condensationControl;
    const { meetsCeilingResistance, meetsTransmittance } = less.thermal;
    expect(table.meets && temperature.meets && (meetsCeilingResistance || meetsTransmittance)).toBe(false);
  });

  it('is the thickest there is, and says so, when none reaches', () => {
    const draft = draftOf({ 'insulation.aboveDeckTarget_m2K_W': 15 }, { ...panel, board: 'eps' });
    expect(draft.reachesGoal).toBe(false);
    expect(boardsOf(draft.candidate.layers).map(({ thickness_m }) => thickness_m)).toEqual([
      Math.max(...board('eps').soldThicknesses_m),
    ]);
  });
});

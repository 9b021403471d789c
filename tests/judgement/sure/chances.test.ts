import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { strategies } from '../../../src/catalog/sets.ts';
import { uncertainties } from '../../../src/catalog/uncertainties.ts';
import { added, chancesOf, counted, emptyTally, TIE, tallyOf } from '../../../src/judgement/sure/chances.ts';
import { haltonSequence } from '../../../src/judgement/sure/halton.ts';
import { modelOf } from '../../../src/judgement/sure/model.ts';
import { evaluationOf } from '../../support/roofs.ts';

vi.setConfig({ testTimeout: 120_000 });

const box = evaluationOf('2-twist-deeper-fascia');
const { seed } = uncertainties;

describe('the model', () => {
  const model = modelOf(box);
  const likely = Float64Array.from(model.draws, ({ spread: { distribution, low, likely: mode, high } }) =>
    distribution === 'log-uniform'
      ? Math.log(mode / low) / Math.log(high / low)
      : (mode - low) / (high - low),
  );

  it('gives the totals of the ranking where every draw is at its likely value', () => {
    const totals = new Float64Array(model.options.length);
    model.totals(likely, totals);
    model.options.forEach(({ id }, place) => {
      expect(totals[place]).toBeCloseTo(box.ranking.scores[id] ?? Number.NaN, 9);
    });
  });

  it('shares a draw among the candidates of one carrier, board or strategy', () => {
    const ids = model.draws.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(
      expect.arrayContaining(['joints-found:outriggers', 'cold-winter:all', 'weight:cost']),
    );
    expect(ids.filter((id) => id.startsWith('costs:board-')).length).toBeGreaterThan(1);
  });

  it('a dearer panel lowers the totals of panels and of nothing else', () => {
    const place = model.draws.findIndex(({ id }) => id === 'costs:panel-premium');
    const [before, after] = [new Float64Array(model.options.length), new Float64Array(model.options.length)];
    model.totals(likely, before);
    model.totals(likely.with(place, 1), after);
    model.options.forEach(({ strategy }, option) => {
      const fall = (before[option] ?? 0) - (after[option] ?? 0);
      if (strategy === 'prebonded-panel') expect(fall).toBeGreaterThan(0);
      else expect(fall).toBe(0);
    });
  });
});

describe('the chances', () => {
  const one = chancesOf(box, 1024, seed);

  it('are the same bytes for the same seed, and others for another', () => {
    expect(JSON.stringify(chancesOf(box, 1024, seed))).toBe(JSON.stringify(one));
    expect(JSON.stringify(chancesOf(box, 1024, seed + 1))).not.toBe(JSON.stringify(one));
  });

  it('do not depend on the order of the candidates', () => {
    const turned = { ...box, candidates: [...box.candidates].reverse() };
    expect(JSON.stringify(chancesOf(turned, 1024, seed))).toBe(JSON.stringify(one));
  });

  it('count every sample once: a win, a tie of two or more, or none', () => {
    const wins = strategies.reduce((sum, id) => sum + one.tally.wins[id], 0);
    const ties = strategies.reduce((sum, id) => sum + one.tally.ties[id], 0);
    expect(one.tally.count).toBe(1024);
    expect(wins + ties / 2).toBeLessThanOrEqual(1024);
    expect(wins + ties).toBeGreaterThanOrEqual(1024);
  });

  it('put no single unknown above knowing everything', () => {
    for (const { value } of one.worth) expect(value).toBeLessThanOrEqual(one.everything + 1e-4);
    expect(one.everything).toBeGreaterThanOrEqual(0);
  });

  it('tell of their progress', () => {
    const seen: number[] = [];
    chancesOf(box, 5, seed, (done) => seen.push(done));
    expect(seen).toEqual([1, 2, 3, 4, 5]);
  });
});

describe('a tally', () => {
  it('never calls a tie a win', () => {
    const tie = counted(emptyTally(), { 'rafter-overhang': 0.5, 'flush-outriggers': 0.5 + TIE / 2 });
    expect(tie.wins).toEqual({ 'rafter-overhang': 0, 'flush-outriggers': 0, 'prebonded-panel': 0 });
    expect(tie.ties).toEqual({ 'rafter-overhang': 1, 'flush-outriggers': 1, 'prebonded-panel': 0 });
    const win = counted(emptyTally(), { 'rafter-overhang': 0.5, 'flush-outriggers': 0.5 + 2 * TIE });
    expect(win.wins['flush-outriggers']).toBe(1);
    expect(added(tie, win).count).toBe(2);
    expect(added(tie, win).ties['rafter-overhang']).toBe(1);
  });

  it('of a strategy that is worse in everything never holds a win (two options, any draws)', () => {
    const option = fc.tuple(
      fc.double({ min: 0.3, max: 1, noNaN: true }),
      fc.double({ min: 0.01, max: 0.3, noNaN: true }),
    );
    fc.assert(
      fc.property(option, ([good, less]) => {
        const model = {
          draws: [],
          options: [
            { id: 'a', strategy: 'rafter-overhang' as const },
            { id: 'b', strategy: 'flush-outriggers' as const },
          ],
          totals: (_: Float64Array, into: Float64Array) => into.set([good, good - less]),
        };
        expect(tallyOf(model, 4, 1).wins).toMatchObject({ 'rafter-overhang': 4, 'flush-outriggers': 0 });
      }),
    );
  });
});

describe('the error of the chances', () => {
  it('against 16 times as many samples is within three standard errors of plain chance', () => {
    const model = modelOf(box);
    const share = (count: number) => tallyOf(model, count, seed).wins['flush-outriggers'] / count;
    const many = share(8192);
    const bound = 3 * Math.sqrt((many * (1 - many)) / 512);
    expect(Math.abs(share(512) - many)).toBeLessThan(bound);
  });

  it('uses as many dimensions as there are draws', () => {
    expect(haltonSequence(modelOf(box).draws.length, seed).dimensions).toBe(modelOf(box).draws.length);
  });
});

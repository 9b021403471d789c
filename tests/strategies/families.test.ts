import { describe, expect, it } from 'vitest';
import { boards, strategies as strategyIds } from '../../src/catalog/sets.ts';
import { variantId } from '../../src/roof/variant.ts';
import { strategies } from '../../src/strategies/index.ts';
import { completed, type Changes } from '../support/roofs.ts';

const family = (id: string, changes: Changes = {}) => {
  const strategy = strategies.find((one) => one.id === id);
  return strategy?.variants(completed(changes)) ?? [];
};
const every = (changes: Changes = {}) => strategyIds.flatMap((id) => family(id, changes));
const kinds = <T>(values: readonly T[]): T[] => [...new Set(values)];

describe('the three strategies', () => {
  it('are shown in the order of the closed set', () => {
    expect(strategies.map(({ id }) => id)).toEqual(strategyIds);
  });

  it('have members of their own only, each once', () => {
    for (const id of strategyIds) expect(kinds(family(id).map(({ strategy }) => strategy))).toEqual([id]);
    const ids = every().map(variantId);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('have ids that can be read', () => {
    expect(every().map(variantId)).toContain('prebonded-panel/eps-on-eps/panel-gap/vapor-tight/rafter-tails');
    expect(every().map(variantId)).toContain('flush-outriggers/xps/unvented/vapor-open/outriggers');
  });
});

describe('rafter overhang', () => {
  it('6 boards × 3 ways of venting × 2 underlayments on the tails of the roof', () => {
    const members = family('rafter-overhang');
    expect(members).toHaveLength(36);
    expect(kinds(members.map(({ board }) => board))).toEqual(boards);
    expect(kinds(members.map(({ carrier }) => carrier))).toEqual(['rafter-tails']);
  });

  it('a truss roof has truss tails, other framing rafter tails', () => {
    const carriers = (kind: string) =>
      kinds(family('rafter-overhang', { 'framing.kind': kind }).map(({ carrier }) => carrier));
    expect(carriers('truss')).toEqual(['truss-tails']);
    expect(carriers('i-joist')).toEqual(['rafter-tails']);
  });
});

describe('flush frame', () => {
  it('is carried by outriggers, whatever the framing', () => {
    const members = family('flush-outriggers', { 'framing.kind': 'truss' });
    expect(members).toHaveLength(36);
    expect(kinds(members.map(({ carrier }) => carrier))).toEqual(['outriggers']);
  });
});

describe('prebonded panel', () => {
  const members = family('prebonded-panel');

  it('3 cores alone or on a base × gap or none × 2 underlayments × 2 carriers', () => {
    expect(members).toHaveLength(48);
    expect(kinds(members.map(({ carrier }) => carrier))).toEqual(['rafter-tails', 'outriggers']);
    expect(kinds(members.map(({ ventilation }) => ventilation))).toEqual(['panel-gap', 'unvented']);
  });

  it('lies on a base of its own stuff or on none', () => {
    for (const { board, baseBoard } of members) expect([board, null]).toContain(baseBoard);
  });

  it('is not made of fibrous board', () => {
    expect(members.some(({ board }) => board === 'stone-wool' || board === 'wood-fiber')).toBe(false);
  });
});

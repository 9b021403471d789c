import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Case } from '../../src/case/case.ts';
import { valueAt, withValueAt } from '../../src/case/paths.ts';

const given: Case = { overdeck: 1, place: { zone: '5A' }, roof: { valleys: 0, shape: 'hip' } };
const path = fc.constantFrom(
  'roof.valleys',
  'roof.dormers',
  'framing.depth_m',
  'notes',
  'insulation.stock.area_m2',
);

describe('reading by path', () => {
  it.each([
    ['roof.shape', 'hip'],
    ['roof.valleys', 0],
    ['place', { zone: '5A' }],
    ['roof.dormers', undefined],
    ['framing.depth_m', undefined],
    ['roof.shape.length', undefined],
    ['constructor', undefined],
    ['roof.toString', undefined],
    ['__proto__', undefined],
  ])('%s is %j', (at, value) => {
    expect(valueAt(given, at)).toEqual(value);
  });
});

describe('writing by path', () => {
  it('leaves the case alone and puts the value into a copy', () => {
    const before = JSON.stringify(given);
    const next = withValueAt(given, 'framing.depth_m', 0.2);
    expect(next).toEqual({ ...given, framing: { depth_m: 0.2 } });
    expect(JSON.stringify(given)).toBe(before);
    expect(next.roof).toBe(given.roof);
  });

  it('undefined takes the answer away', () => {
    expect(withValueAt(given, 'roof.valleys', undefined).roof).toEqual({ shape: 'hip' });
    expect(withValueAt(given, 'roof', undefined)).toEqual({ overdeck: 1, place: { zone: '5A' } });
  });

  it('goes over what is not a branch', () => {
    expect(withValueAt({ ...given, notes: 'text' }, 'notes.deep', 1)).toMatchObject({ notes: { deep: 1 } });
  });

  it('what was written is read back, and nothing else has changed (any two paths)', () => {
    fc.assert(
      fc.property(path, path, fc.integer(), (one, other, value) => {
        const next = withValueAt(given, one, value);
        expect(valueAt(next, one)).toBe(value);
        if (one !== other) expect(valueAt(next, other)).toEqual(valueAt(given, other));
        expect(valueAt(withValueAt(next, one, undefined), one)).toBeUndefined();
      }),
    );
  });
});

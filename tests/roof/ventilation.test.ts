import { describe, expect, it } from 'vitest';
import { candidateOf } from '../support/roofs.ts';
import type { Variant } from '../../src/roof/variant.ts';

const vented = (of: Partial<Variant>, kind = 'asphalt-shingle') =>
  candidateOf({ 'covering.kind': kind }, of).ventilation;

describe('the ventilation of the covering', () => {
  it.each([
    [{ ventilation: 'vented-furring' }, 'preferred', 0.0381],
    [{ strategy: 'prebonded-panel', ventilation: 'panel-gap' }, 'preferred', 0.0254],
    [{ strategy: 'prebonded-panel', ventilation: 'unvented' }, 'caution', 0],
    [{ ventilation: 'drainage-mat', underlayment: 'vapor-open' }, 'allowed', 0.01],
    [{ ventilation: 'drainage-mat', underlayment: 'vapor-tight' }, 'caution', 0.01],
    [{ ventilation: 'unvented' }, 'caution', 0],
  ] as const)('%j: %s, %s m clear', (of, status, gap_m) => {
    expect(vented(of)).toMatchObject({ kind: of.ventilation, status, gap_m });
  });

  it('says that unvented shingles are for the maker to accept, other coverings dry slowly', () => {
    expect(vented({ ventilation: 'unvented' }).rule).toMatch(/shingle maker/);
    expect(vented({ ventilation: 'unvented' }, 'slate').rule).toMatch(/leaves slowly/);
  });

  it('needs half of 1/300 of the slope at the eave: 4.4 m × √1.25 / 600', () => {
    expect(vented({}).netFreeArea_m2_m).toBeCloseTo((4.4 * Math.sqrt(1.25)) / 600, 9);
  });
});

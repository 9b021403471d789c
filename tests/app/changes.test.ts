import { describe, expect, it } from 'vitest';
import { layerChanges } from '../../src/app/view/changes.ts';
import { ordinary } from '../drawing/cases.ts';
import { sketch } from '../drawing/fixture.ts';

const plain = sketch(ordinary['rafter-overhang']).candidate;

describe('what an answer changed in the drawing', () => {
  it('is nothing when the layers are the same, or when there was no drawing before', () => {
    expect(layerChanges(plain, sketch(ordinary['rafter-overhang']).candidate, 'IP')).toEqual([]);
    expect(layerChanges(null, plain, 'IP')).toEqual([]);
  });

  it('names a layer that grew, with both thicknesses', () => {
    const thicker = sketch({ ...ordinary['rafter-overhang'], boards_m: [0.0635, 0.0762] }).candidate;
    expect(layerChanges(plain, thicker, 'IP')).toEqual([
      { layerId: 'insulation-2', words: expect.stringContaining('from 2 1/2 in to 3 in') as string },
    ]);
  });

  it('names layers that came, changed and went', () => {
    const unvented = sketch({
      ...ordinary['rafter-overhang'],
      ventilation: 'unvented',
      boards_m: [0.0635, 0.0635, 0.0381],
      case: { covering: { kind: 'clay-tile' } },
    }).candidate;
    const changes = layerChanges(plain, unvented, 'SI');
    expect(changes.find(({ layerId }) => layerId === 'insulation-3')?.words).toMatch(/^new: /);
    expect(changes.find(({ layerId }) => layerId === 'covering')?.words).toMatch(/shingles is now .*tile/);
    expect(changes.find(({ layerId }) => layerId === null)?.words).toMatch(/^gone: vented space/);
  });

  it('says so when another strategy is drawn', () => {
    const other = sketch(ordinary['prebonded-panel']).candidate;
    expect(layerChanges(plain, other, 'IP').map(({ words }) => words)).toEqual([
      'Prebonded vented panel is drawn now',
    ]);
  });
});

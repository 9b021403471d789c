/** Figures listed for a place are offered to be confirmed; other assumptions are not. */
import { describe, expect, it } from 'vitest';
import { listedFor } from '../../src/app/view/assumed.ts';
import { evaluate } from '../../src/evaluate.ts';

describe('listed figures', () => {
  it('ground snow of a listed place, until it is answered', () => {
    const place = { id: 'us-ak-anchorage' };
    const open = listedFor(evaluate({ overdeck: 1, place }));
    expect([...open]).toEqual([['loads.groundSnow_Pa', 2394]]);
    const answered = evaluate({ overdeck: 1, place, loads: { groundSnow_Pa: 3000 } });
    expect(listedFor(answered).size).toBe(0);
    expect(listedFor(null).size).toBe(0);
  });
});

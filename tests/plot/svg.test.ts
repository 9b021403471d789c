/** Two plots as SVG, kept as files: a change of look shows as a change of text. Look at them before committing. */
import { describe, expect, it } from 'vitest';
import { toSvg } from '../../src/drawing/svg.ts';
import { deckMonthsPlot, type DeckMonths } from '../../src/plot/deckMonths.ts';
import { heatLossPlot } from '../../src/plot/heatLoss.ts';

const deck: DeckMonths = {
  plane: {
    id: 'deck-underside',
    after: 'cavity',
    temperature_C: [3.9, 4.8, 8, 12, 16, 20, 22, 21, 17, 12, 8, 4.6],
    maximumIndoor_pct: [34, 36, 45, 58, 75, 97, 100, 100, 80, 60, 45, 36],
  },
  outdoor_C: [-8, -6, 0, 7, 13, 18, 21, 20, 15, 8, 2, -5],
  indoor: {
    basis: 'fixed',
    humidityClass: null,
    relativeHumidity_pct: Array<number>(12).fill(35),
    dewPoint_C: Array<number>(12).fill(4.1),
  },
};
const part = (id: 'clear' | 'framing' | 'screws', what: string, transmittance_W_m2K: number) => ({
  id,
  what,
  transmittance_W_m2K,
  share_pct: (100 * transmittance_W_m2K) / 0.125,
});

describe('plots as SVG', () => {
  it('the deck by month, wide, inch-pound', async () => {
    const { picture } = deckMonthsPlot(deck, { system: 'IP', size: 'wide', theme: 'print' });
    if (picture === null) throw new Error('nothing drawn');
    await expect(`${toSvg(picture)}\n`).toMatchFileSnapshot('golden/deck-months-wide.svg');
  });

  it('heat lost, narrow, SI', async () => {
    const { picture } = heatLossPlot(
      {
        bridges: [
          part('clear', 'the roof beside every member', 0.1),
          part('framing', 'rafters across the fill of the cavity', 0.02),
          part('screws', 'long screws through all of the board', 0.005),
        ],
        transmittance_W_m2K: 0.125,
        effectiveResistance_m2K_W: 8,
      },
      { system: 'SI', size: 'narrow', theme: 'print' },
    );
    if (picture === null) throw new Error('nothing drawn');
    await expect(`${toSvg(picture)}\n`).toMatchFileSnapshot('golden/heat-loss-narrow.svg');
  });
});

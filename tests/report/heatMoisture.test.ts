import { JSDOM } from 'jsdom';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { show, type System } from '../../src/measures.ts';
import { plainText, type PlotBlock, type ReportDocument } from '../../src/report/document.ts';
import { html } from '../../src/report/html.ts';
import { pdf } from '../../src/report/pdf.ts';
import { textOf } from '../../src/report/record/walk.ts';
import { blocksOf, evaluationOf, fonts, recommending, recordOf, stopping, tableOf } from './support.ts';

const name = recommending('flush-outriggers');
const evaluation = evaluationOf(name);
const found = evaluation.candidates.find(({ id }) => id === evaluation.ranking.recommended);
if (found === undefined) throw new Error('nothing is recommended');
const best = found;
const ids = (document: ReportDocument): string[] => document.sections.map(({ id }) => id);
const plotsIn = (document: ReportDocument): PlotBlock[] =>
  blocksOf(document).filter((block) => block.kind === 'plot');
const cellsOf = (document: ReportDocument, id: string): string[][] =>
  tableOf(document, id).rows.map((row) => row.map((cell) => plainText(cell.text)));

describe('heat and moisture in the record', () => {
  const parts = ['heat-moisture', 'heat-lost', 'condensation-control', 'monthly-method', 'drying'];

  it('is one short chapter for the builder and a chapter with its parts for the others', () => {
    expect(ids(recordOf(name, { role: 'builder' }))).toEqual(expect.arrayContaining(['heat-moisture']));
    expect(ids(recordOf(name, { role: 'builder' }))).not.toContain('monthly-method');
    for (const role of ['designer', 'trainer'] as const)
      expect(ids(recordOf(name, { role }))).toEqual(expect.arrayContaining(parts));
    expect(ids(recordOf(stopping()))).not.toContain('heat-moisture');
  }, 120_000);

  it.each<System>(['IP', 'SI'])(
    'says U by both methods, limits, error and season as computed (%s)',
    (system) => {
      const rows = cellsOf(recordOf(name, { system }), 'heat-table').map((row) => row.join(' '));
      const { thermal } = best;
      const text = rows.join('\n');
      for (const value of [
        show('transmittance', thermal.transmittance_W_m2K, system),
        show('transmittance', thermal.combined.transmittance_W_m2K, system),
        show('resistance', thermal.combined.upperLimit_m2K_W, system),
        show('resistance', thermal.combined.lowerLimit_m2K_W, system),
        show('share', thermal.combined.error_pct, system),
        show('energy', thermal.season.whole_kWh, system),
      ])
        expect(text).toContain(value);
      expect(cellsOf(recordOf(name, { system }), 'zones-table')).toHaveLength(thermal.zones.length);
    },
  );

  it('lists every wetted place of every leader, and what the monthly method leaves out', () => {
    const document = recordOf(name);
    const rows = cellsOf(document, 'drying-table');
    const leaders = evaluation.ranking.leaders.flatMap(({ candidate }) =>
      evaluation.candidates.filter(({ id }) => id === candidate),
    );
    const places = leaders.flatMap(({ drying }) => drying.places);
    expect(rows.length).toBeGreaterThanOrEqual(places.length);
    places.forEach((place, i) =>
      expect(rows[i]?.[2]).toBe(
        place.monthsToDry === null
          ? `over ${show('months', place.limit_months, 'IP')}`
          : show('months', place.monthsToDry, 'IP'),
      ),
    );
    const text = textOf(document.sections);
    for (const sentence of best.moisture.leavesOut) expect(text).toContain(sentence);
    const doubts = best.layers.filter(({ permeanceDoubt }) => permeanceDoubt !== null);
    expect(doubts.length).toBeGreaterThan(0);
    expect(cellsOf(document, 'permeance-table')).toHaveLength(doubts.length);
  });

  it('draws each plot in two widths and gives its numbers with units', () => {
    const plots = plotsIn(recordOf(name));
    expect(plots.length).toBeGreaterThanOrEqual(5);
    for (const plot of plots) {
      expect(plot.picture.width_mm).toBeGreaterThan(plot.narrow.width_mm);
      const figures = plot.table.rows.flatMap((row) => row.slice(1).map((cell) => plainText(cell.text)));
      expect(figures.filter((text) => /\d/.test(text)).length).toBeGreaterThan(0);
      for (const figure of figures) expect(figure).toMatch(/^(–||[−\d.,]+\u00A0\S.*)$/);
    }
    const year = plots.find(({ plot }) => plot === 'deck-months')?.table.rows ?? [];
    const plane = best.condensationControl.planes.find(({ id }) => id === 'deck-underside');
    expect(plainText(year[6]?.[2]?.text ?? [])).toBe(
      show('temperature', plane?.temperature_C[0] ?? Number.NaN, 'IP', { fixed: true }).replace(
        ' ',
        '\u00A0',
      ),
    );
  });

  it('shows in a page each plot with a name, and its table behind it', () => {
    const page = new JSDOM(html(recordOf(name))).window.document;
    const shown = [...page.querySelectorAll('.plot')];
    expect(shown).toHaveLength(plotsIn(recordOf(name)).length);
    for (const plot of shown) {
      expect(plot.querySelectorAll('svg[role="img"] > title')).toHaveLength(2);
      expect(plot.querySelector('details table caption')?.textContent).not.toBe('');
    }
  });

  it('prints the titles of the axes as text', async () => {
    const document = recordOf(name);
    const chapter = { ...document, sections: document.sections.filter(({ id }) => parts.includes(id)) };
    const data = pdf(chapter, { page: 'letter', fonts });
    const file = await getDocument({ data, useSystemFonts: false, verbosity: 0 }).promise;
    const words: string[] = [];
    for (let number = 1; number <= file.numPages; number += 1) {
      const content = await (await file.getPage(number)).getTextContent();
      words.push(...content.items.flatMap((item) => ('str' in item ? item.str : [])));
    }
    const text = words.join(' ').replace(/\s+/g, ' ');
    for (const title of [
      'Temperature, °F',
      'Relative humidity indoors, %',
      'Month, the winter in the middle',
      'Vapor pressure, in. Hg',
      'Depth from the inside surface, in',
      'Water left where it was put, lb/ft²',
      'Share of the heat lost, %',
    ])
      expect(text).toContain(title);
  }, 60_000);
});

/** The engineer's sheet: on one page for each strategy, provisional in words, complete, and without a calculation of its own. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it, vi } from 'vitest';
import type { Case } from '../../src/case/case.ts';
import { withValueAt } from '../../src/case/paths.ts';
import { evaluate } from '../../src/evaluate.ts';
import type { Evaluation } from '../../src/evaluation/evaluation.ts';
import type { ReportDocument, Section, Table } from '../../src/report/document.ts';
import { plainText } from '../../src/report/document.ts';
import { pdf } from '../../src/report/pdf.ts';
import { record } from '../../src/report/record.ts';
import { evaluationOf, fonts, recommending, scenario, words } from './support.ts';

vi.setConfig({ testTimeout: 120_000 });

/** A scenario asked for everything at once: a drift, a hill, the newest standard, outriggers on board. */
function hardest(): Case {
  const changes: readonly (readonly [string, unknown])[] = [
    ['codes.edition', '2024'],
    ['roof.width_m', 14],
    ['roof.dormers', 2],
    ['loads.snowLevel', 'strength'],
    ['loads.upperRoofLength_m', 9],
    ['loads.onHill', true],
    ['overhang.outriggerSeat', 'board'],
    ['overhang.eave_m', 0.7],
  ];
  return changes.reduce<Case>(
    (one, [path, value]) => withValueAt(one, path, value),
    scenario('1-twist-walls-open.json'),
  );
}

const sheetsOf = (
  evaluation: Evaluation,
  role: 'designer' | 'trainer',
  system: 'IP' | 'SI',
): ReportDocument => {
  const whole = record(evaluation, words, { role, system });
  return { ...whole, sections: whole.sections.filter((one) => one.id.startsWith('engineer-')) };
};

async function pagesOf(document: ReportDocument): Promise<string[]> {
  const bytes = pdf(document, { page: 'letter', fonts });
  const file = await getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 }).promise;
  return Promise.all(
    Array.from({ length: file.numPages }, async (_, index) => {
      const content = await (await file.getPage(index + 1)).getTextContent();
      return content.items
        .map((item) => ('str' in item ? item.str : ''))
        .join(' ')
        .replace(/\s+/g, ' ');
    }),
  );
}

const cases: readonly (readonly [string, () => Evaluation])[] = [
  ['tails', () => evaluationOf(recommending('rafter-overhang'))],
  ['outriggers', () => evaluationOf(recommending('flush-outriggers'))],
  ['panel', () => evaluationOf(recommending('prebonded-panel'))],
  ['a cross gable that the wind tables leave out', () => evaluationOf('7-twist-six-valleys.json')],
  ['everything at once', () => evaluate(hardest())],
];

describe('each sheet fills one letter page and no more', () => {
  it.each(cases)('%s', async (_, make) => {
    const evaluation = make();
    for (const system of ['IP', 'SI'] as const) {
      const document = sheetsOf(evaluation, 'designer', system);
      expect(document.sections).toHaveLength(evaluation.ranking.leaders.length);
      const pages = await pagesOf(document);
      for (const sheet of document.sections) {
        const whole = pages.filter((page) => page.includes(`${sheet.title} PROVISIONAL`));
        expect(whole).toHaveLength(1);
        expect(whole[0]).toContain('The structural engineer decides on members');
      }
    }
  });
});

const tableOf = (section: Section, start: string): Table => {
  const found = section.blocks.find((block) => block.kind === 'table' && block.id.startsWith(start));
  if (found?.kind !== 'table') throw new RangeError(`no table ${start}`);
  return found;
};

describe('what a sheet says', () => {
  const evaluation = evaluationOf(recommending('flush-outriggers'));
  const [first] = sheetsOf(evaluation, 'designer', 'IP').sections;
  const best = evaluation.candidates.find(({ id }) => id === evaluation.ranking.recommended);
  if (first === undefined || best === undefined) throw new RangeError('no sheet');

  it('every combination and every check of the evaluation stands in it', () => {
    const combinations = tableOf(first, 'engineer-combinations');
    expect(combinations.rows.map(([name]) => plainText(name?.text ?? []))).toEqual(
      best.structure.combinations.map(({ formula }) => formula),
    );
    const checks = tableOf(first, 'engineer-checks');
    const named = checks.rows.map(([what]) => plainText(what?.text ?? []));
    expect(named).toEqual(expect.arrayContaining(best.structure.checks.map(({ what }) => what)));
  });

  it('the combination with the greatest use is printed strong', () => {
    const { rows, strongRows } = tableOf(first, 'engineer-combinations');
    const counted = best.structure.combinations.filter(({ counts }) => counts);
    const most = counted.reduce((one, next) => (next.use > one.use ? next : one));
    expect(strongRows?.map((row) => plainText(rows[row]?.[0]?.text ?? []))).toContain(most.formula);
  });

  it('a robust check is shown as open, whatever its ratio', () => {
    const row = tableOf(first, 'engineer-checks').rows.find((cells) =>
      plainText(cells[0]?.text ?? []).startsWith('Robust check'),
    );
    expect(row?.[3]?.verdict).toBe('open');
  });

  it('the words of approval occur only to be denied', () => {
    const text = JSON.stringify(first);
    expect(text).toContain('no approval, no seal');
    expect(text.replace('no approval, no seal', '')).not.toMatch(/approv|certif|\bsafe\b/i);
  });

  it('the builder gets a card instead, with what is open', () => {
    const sections = record(evaluation, words, { role: 'builder', system: 'IP' }).sections;
    expect(sections.some(({ id }) => id.startsWith('engineer-'))).toBe(false);
    const cards = sections
      .find(({ id }) => id === 'engineer')
      ?.blocks.find((block) => block.kind === 'cards');
    const [card] = cards?.kind === 'cards' ? cards.items : [];
    expect(card?.facts.map(({ label }) => label)).toEqual(
      expect.arrayContaining(['Overhang', 'Ground snow used', 'Wind used', 'Weight above the framing']),
    );
    expect(card?.questions.length).toBeGreaterThan(3);
  });
});

import { describe, expect, it } from 'vitest';
import { show } from '../../src/measures.ts';
import { plainText } from '../../src/report/document.ts';
import { points } from '../../src/report/figures.ts';
import { anchorsIn, citationsIn, inlinesIn, textOf } from '../../src/report/record/walk.ts';
import {
  blocksOf,
  evaluationOf,
  recommending,
  recordOf,
  roles,
  scenarios,
  stopping,
  tableOf,
} from './support.ts';

const cells = (table: ReturnType<typeof tableOf>): string[][] =>
  table.rows.map((row) => row.map((cell) => plainText(cell.text)));

describe('the record of every demo scenario for every reader', () => {
  it.each(scenarios.flatMap((name) => roles.map((role) => [name, role] as const)))(
    '%s for the %s: no open slot, no dead link, every citation listed',
    (name, role) => {
      const document = recordOf(name, { role });
      const anchors = anchorsIn(document.sections);
      const text = textOf(document.sections);
      expect(text).not.toMatch(/\{[A-Za-z_]\w*\}/);
      expect(text).not.toMatch(/undefined|NaN|\[object/);
      const runs = blocksOf(document).flatMap(inlinesIn).flat();
      const inner = runs.flatMap((run) => (run.href?.startsWith('#') ? run.href.slice(1) : []));
      expect(inner.filter((id) => !anchors.has(id))).toEqual([]);
      const cited = citationsIn(document.sections).map((citation) => `source-${citation.source}`);
      expect(cited.length).toBeGreaterThan(0);
      expect(cited.filter((id) => !anchors.has(id))).toEqual([]);
    },
  );

  it.each(scenarios)('%s: ids are unique and levels never skip', (name) => {
    const { sections } = recordOf(name);
    const ids = sections.map((section) => section.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(sections[0]?.level).toBe(1);
  });

  it('is the same tree each time', () => {
    const name = scenarios[0] ?? '';
    expect(JSON.stringify(recordOf(name))).toBe(JSON.stringify(recordOf(name)));
  });
});

const recommended = scenarios.filter((name) => evaluationOf(name).ranking.recommended !== null);

describe('the summary', () => {
  it.each(recommended)('%s: four figures, each with limit, margin, verdict and source', (name) => {
    const figures = recordOf(name).sections[0]?.blocks.find((block) => block.kind === 'keyFigures');
    if (figures?.kind !== 'keyFigures') throw new Error('no figures');
    expect(figures.items).toHaveLength(4);
    for (const figure of figures.items) {
      expect(figure.value).toMatch(/\d/);
      expect(figure.limit).toMatch(/^at (least|most) .*\d/);
      expect(figure.margin).toMatch(/\d.*(above|below|short|within|of humidity)/);
      expect(['meets', 'misses']).toContain(figure.verdict);
      expect(figure.source.known).not.toBe('');
    }
  });

  it.each(recommended)('%s: the figures are those of the evaluation', (name) => {
    const evaluation = evaluationOf(name);
    const best = evaluation.candidates.find((one) => one.id === evaluation.ranking.recommended);
    if (!best) throw new Error('no candidate');
    for (const system of ['IP', 'SI'] as const) {
      const figures = recordOf(name, { system }).sections[0]?.blocks.find(
        (block) => block.kind === 'keyFigures',
      );
      if (figures?.kind !== 'keyFigures') throw new Error('no figures');
      const [above, deck] = figures.items;
      const { table, temperature } = best.condensationControl;
      expect(above?.value).toBe(show('resistance', table.provided_m2K_W, system));
      expect(above?.limit).toBe(`at least ${show('resistance', table.minimum_m2K_W, system)}`);
      expect(above?.verdict).toBe(table.meets ? 'meets' : 'misses');
      expect(deck?.value).toBe(show('temperature', temperature.deck_C, system));
      expect(deck?.margin).toContain(show('temperatureDifference', Math.abs(temperature.margin_K), system));
    }
  });

  it.each(recommended)(
    '%s: has the section, at most three reasons and three worries, and says it approves nothing',
    (name) => {
      const blocks = recordOf(name).sections[0]?.blocks ?? [];
      expect(blocks.filter((block) => block.kind === 'drawing')).toHaveLength(1);
      const sides = blocks.find((block) => block.kind === 'sides');
      if (sides?.kind !== 'sides') throw new Error('no reasons');
      for (const side of sides.sides) expect(side.items.length).toBeLessThanOrEqual(3);
      expect(blocks.flatMap(inlinesIn).map(plainText).join(' ')).toContain('approves nothing');
    },
  );
});

describe('the alternatives', () => {
  it.each(recommended)('%s: contributions add up to each total', (name) => {
    const { ranking } = evaluationOf(name);
    const rows = cells(tableOf(recordOf(name), 'comparison-table'));
    const totals = rows.at(-1) ?? [];
    ranking.leaders.forEach((leader, column) => {
      const added = rows
        .slice(0, -1)
        .map((row) => Number(/adds (−?[\d.]+)/.exec(row[column + 1] ?? '')?.[1]?.replace('−', '-')))
        .reduce((sum, value) => sum + value, 0);
      expect(totals[column + 1]).toContain(points(leader.total));
      // Each of the rows is rounded to a tenth of a point.
      expect(Math.abs(added - leader.total * 100)).toBeLessThan(0.05 * rows.length);
    });
  });

  it.each(recommended)('%s: every leader but the first is explained', (name) => {
    const { ranking } = evaluationOf(name);
    const others = recordOf(name).sections.find((section) => section.id === 'others');
    const text = (others?.blocks ?? []).flatMap(inlinesIn).map(plainText).join('\n');
    for (const leader of ranking.leaders.slice(1)) {
      expect(text).toContain(`${points(leader.total)} of 100`);
    }
  });

  it.each(scenarios)('%s: exclusions are counted by rule', (name) => {
    const { candidates, ranking } = evaluationOf(name);
    if (ranking.confidence.level === 'stop') return;
    const counts = new Map<string, number>();
    for (const candidate of candidates) {
      for (const rule of new Set(candidate.excludedBy.map((by) => by.rule))) {
        counts.set(rule, (counts.get(rule) ?? 0) + 1);
      }
    }
    const rows = cells(tableOf(recordOf(name), 'exclusions-table'));
    expect(rows.map((row) => row[1]).sort()).toEqual(
      [...counts.values()].map((count) => `${count} of ${candidates.length}`).sort(),
    );
  });
});

describe('assumptions, layers, cautions, deferrals', () => {
  it.each(recommended)('%s: one row for each', (name) => {
    const evaluation = evaluationOf(name);
    const document = recordOf(name);
    const best = evaluation.candidates.find((one) => one.id === evaluation.ranking.recommended);
    if (evaluation.assumptions.length > 0) {
      expect(tableOf(document, 'assumptions-table').rows).toHaveLength(evaluation.assumptions.length);
    }
    expect(tableOf(document, 'layers-table').rows).toHaveLength((best?.layers.length ?? 0) + 1);
    expect(tableOf(document, 'deferrals-table').rows).toHaveLength(evaluation.deferrals.length);
    const callouts = blocksOf(document).filter((block) => block.kind === 'callout');
    expect(callouts).toHaveLength(evaluation.cautions.length);
    expect(new Set(callouts.map((block) => block.id)).size).toBe(callouts.length);
  });

  it.each(recommended)('%s: the strongest caution comes first', (name) => {
    const levels = blocksOf(recordOf(name)).flatMap((block) =>
      block.kind === 'callout' ? [block.level] : [],
    );
    const order = ['stop', 'strong', 'engineer', 'caution'];
    const places = levels.map((level) => order.indexOf(level));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });
});

describe('the sequence', () => {
  const stepsOf = (name: string): string[] => {
    const block = blocksOf(recordOf(name)).find((one) => one.kind === 'steps');
    if (block?.kind !== 'steps') throw new Error('no steps');
    return block.items.map((step) => `${step.title}${step.hold === undefined ? '' : ` ${step.hold.id}`}`);
  };

  it('sets outriggers only where they carry the overhang', () => {
    expect(stepsOf(recommending('flush-outriggers')).join('\n')).toContain('Set the outriggers');
    const rafters = stepsOf(recommending('rafter-overhang')).join('\n');
    expect(rafters).not.toContain('outrigger');
    expect(rafters).toContain('Block and seal every tail bay');
  });

  it('sets panels only for the panel', () => {
    expect(stepsOf(recommending('prebonded-panel')).join('\n')).toContain('Set the panels');
    expect(stepsOf(recommending('rafter-overhang')).join('\n')).not.toContain('Set the panels');
  });

  it.each(recommended)('%s: the hold points that every roof has come in order', (name) => {
    const holds = stepsOf(name).flatMap((step) => / (H\d)$/.exec(step)?.[1] ?? []);
    expect(holds).toEqual([...holds].sort());
    for (const hold of ['H1', 'H2', 'H3', 'H4', 'H6', 'H7']) expect(holds).toContain(hold);
  });
});

describe('a stopped case', () => {
  const document = recordOf(stopping(), { role: 'builder' });

  it('says why, what to do instead, and recommends nothing', () => {
    const ids = document.sections.map((section) => section.id);
    expect(ids.slice(0, 3)).toEqual(['stopped', 'instead', 'cautions']);
    expect(ids).not.toContain('summary');
    expect(ids).not.toContain('comparison');
    expect(
      document.sections[0]?.blocks.some((block) => block.kind === 'callout' && block.level === 'stop'),
    ).toBe(true);
  });
});

describe('the sizes', () => {
  const name = recommended[0] ?? '';
  it('one page, everything, or what the crew carries', () => {
    const ids = (size: 'summary' | 'full' | 'site'): string[] =>
      recordOf(name, { size }).sections.map((section) => section.id);
    expect(ids('summary')).toEqual(['summary', 'sources']);
    expect(ids('site')).toEqual([
      'layers',
      'edge',
      'geometry',
      'quantities',
      'fastening',
      'sequence',
      'cautions',
      'sources',
    ]);
    expect(ids('full').length).toBeGreaterThan(12);
  });
});

describe('the readers', () => {
  const name = recommended[0] ?? '';
  const ids = (role: (typeof roles)[number]): string[] =>
    recordOf(name, { role }).sections.map((section) => section.id);
  it('only the designer and the trainer read the engineer’s sheet', () => {
    const has = (role: (typeof roles)[number]): boolean =>
      blocksOf(recordOf(name, { role })).some(
        (block) => block.kind === 'table' && block.id.startsWith('engineer-checks'),
      );
    expect([has('builder'), has('designer'), has('trainer')]).toEqual([false, true, true]);
  });
  it('the builder reads the words explained', () => {
    expect(ids('builder')).toContain('terms');
    expect(ids('designer')).not.toContain('terms');
  });
});

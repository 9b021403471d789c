/** The shipped content is clean, and each planted fault is found by the rule that is meant to find it. */
import { describe, expect, it } from 'vitest';
import { contentFaults, lineOf } from '../../src/command/contentCheck/all.ts';
import { readContent, type Content } from '../../src/command/contentCheck/content.ts';
import { proseFaults } from '../../src/command/contentCheck/prose.ts';
import { realFacts, rulesFaults } from '../../src/command/contentCheck/rules.ts';
import { tableFaults } from '../../src/command/contentCheck/tables.ts';

// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a test breaks content in ways no type allows
type Loose = any;

const shipped = readContent();
const facts = realFacts();

/** The shipped content with one table changed on a deep copy. */
function withTable(name: string, change: (table: Loose) => void): Content {
  const table: Loose = structuredClone(shipped.tables[name]);
  change(table);
  return { ...shipped, tables: { ...shipped.tables, [name]: table } };
}

/** The shipped content with one rule changed; without a name, the list of rules. */
function withRule(id: string, change: (rule: Loose, rows: Loose[]) => void): Content {
  const rules: Loose = structuredClone(shipped.rules);
  change(
    rules.rows.find((row: Loose) => row.id === id),
    rules.rows,
  );
  return { ...shipped, rules };
}

/** The shipped content with one Markdown file changed, added or (without text) removed. */
function withFile(path: string, change: (text: string) => string | undefined): Content {
  const { [path]: old = '', ...others } = shipped.markdown;
  const text = change(old);
  return { ...shipped, markdown: text === undefined ? others : { ...others, [path]: text } };
}

const anyRow = (table: Loose, path: string): Loose => table.rows.find((row: Loose) => row.path === path);
const criterion = (table: Loose, id: string): Loose => table.rows.find((row: Loose) => row.id === id);

describe('the shipped content', () => {
  it('has no fault', () => {
    expect(contentFaults(shipped, facts).map(lineOf)).toEqual([]);
  });
});

describe('a broken table', () => {
  const broken: [string, string, (table: Loose) => void, string][] = [
    [
      'a value of no closed set',
      'defaults.json',
      (t) => (anyRow(t, 'roof.shape').value = 'dome'),
      'value-possible',
    ],
    [
      'a value out of range',
      'defaults.json',
      (t) => (anyRow(t, 'overhang.eave_m').value = 16),
      'value-possible',
    ],
    [
      'a path that the case lacks',
      'defaults.json',
      (t) => (anyRow(t, 'roof.shape').path = 'roof.form'),
      'value-possible',
    ],
    [
      'a question nobody wrote',
      'defaults.json',
      (t) => (anyRow(t, 'roof.shape').question = 'ghost'),
      'question-exists',
    ],
    [
      'a question that asks for something else',
      'defaults.json',
      (t) => (anyRow(t, 'roof.shape').question = 'snow'),
      'question-asks',
    ],
    [
      'a condition on a value that cannot be',
      'defaults.json',
      (t) => (anyRow(t, 'framing.depth_m').when = { 'framing.kind': ['log'] }),
      'value-possible',
    ],
    [
      'a condition on an unknown zone',
      'defaults.json',
      (t) => (anyRow(t, 'loads.groundSnow_Pa').when.zone = ['9A']),
      'value-possible',
    ],
    ['a condition on a later default', 'defaults.json', (t) => t.rows.reverse(), 'default-order'],
    [
      'a row that is never reached',
      'defaults.json',
      (t) => t.rows.push(structuredClone(anyRow(t, 'roof.shape'))),
      'default-reached',
    ],
    [
      'a path without a default in some zone',
      'defaults.json',
      (t) => (anyRow(t, 'loads.groundSnow_Pa').when.zone = ['0A']),
      'default-whole',
    ],
    ['a default without a reason', 'defaults.json', (t) => delete t.rows[0].reason, 'schema'],
    ['anchors that fall', 'criteria.json', (t) => criterion(t, 'drying').anchors.reverse(), 'anchors-rise'],
    [
      'a value that turns back',
      'criteria.json',
      (t) => (criterion(t, 'drying').better = 'less'),
      'anchors-turn',
    ],
    ['a weight above 100', 'criteria.json', (t) => (criterion(t, 'cost').weights.builder = 101), 'schema'],
    ['a weight below 0', 'criteria.json', (t) => (criterion(t, 'cost').weights.trainer = -1), 'schema'],
    ['a criterion twice', 'criteria.json', (t) => t.rows.push(t.rows[0]), 'id-once'],
    [
      'a modifier on a value that cannot be',
      'criteria.json',
      (t) => (criterion(t, 'cost').modifiers[0].when = { '==': [{ var: 'case.work.budget' }, 'huge'] }),
      'value-possible',
    ],
    ['a dimension twice', 'dimensions.json', (t) => t.rows.push(t.rows[0]), 'id-once'],
    ['a grade nobody knows', 'lumber.json', (t) => (t.known = 'heard'), 'grade-known'],
    ['a source nobody listed', 'screws.json', (t) => (t.lengths.source = 'NOWHERE'), 'source-exists'],
    ['a wind source nobody listed', 'wind-gcp.json', (t) => (t.sources = ['NOWHERE']), 'source-exists'],
    ['lengths out of order', 'screws.json', (t) => t.lengths.lengths_in.reverse(), 'ascending'],
    ['areas out of order', 'wind-gcp.json', (t) => t.rows[0].points.reverse(), 'ascending'],
    ['a species twice', 'lumber.json', (t) => t.species.push(t.species[0]), 'id-once'],
    ['a hold point that is gone', 'sequence.json', (t) => t.holds.pop(), 'hold-exists'],
    ['an unknown field', 'furring-over-foam.json', (t) => (t.color = 'red'), 'schema'],
    ['a fault of the catalog', 'energy-code.json', (t) => t.rows.pop(), 'zone-once'],
  ];
  it.each(broken)('with %s is found', (_what, name, change, rule) => {
    const found = tableFaults(withTable(name, change)).filter(
      ({ file }) => file === `content/tables/${name}`,
    );
    expect(found.map((fault) => fault.rule)).toContain(rule);
  });

  it('that has no schema is found', () => {
    const found = tableFaults({ ...shipped, tables: { ...shipped.tables, 'ghost.json': {} } });
    expect(found.map(lineOf)).toEqual([expect.stringContaining('content/tables/ghost.json: file-known')]);
  });

  it('that is missing is found', () => {
    const tables = Object.fromEntries(
      Object.entries(shipped.tables).filter(([name]) => name !== 'criteria.json'),
    );
    expect(tableFaults({ ...shipped, tables }).map(({ rule }) => rule)).toContain('file-there');
  });
});

describe('a broken rule', () => {
  const broken: [string, string, (rule: Loose, rows: Loose[]) => void, string][] = [
    ['an unknown effect', 'falls', (r) => (r.effect = 'shout'), 'schema'],
    ['an id twice', 'falls', (r, rows) => rows.push(r), 'id-once'],
    [
      'a name that no evaluation has',
      'falls',
      (r) => (r.when['<'][0].var = 'case.roof.pitch'),
      'name-occurs',
    ],
    [
      'a fact that no evaluation has',
      'long-screws',
      (r) => (r.facts.length.path = 'candidate.screw_m'),
      'name-occurs',
    ],
    [
      'a candidate in a rule of the case',
      'falls',
      (r) => (r.when['<'][0].var = 'candidate.edge.fascia_m'),
      'name-in-scope',
    ],
    [
      'an operator that is none',
      'falls',
      (r) => (r.when = { under: [{ var: 'case.roof.pitch_rise_per_12' }, 8] }),
      'operator-known',
    ],
    ['a value that cannot be', 'plank-deck', (r) => (r.when['=='][1] = 'planks'), 'value-possible'],
    ['a listed value that cannot be', 'active-leak', (r) => r.when.in[1].push('rotten'), 'value-possible'],
    ['a limit in the wrong unit', 'high-wind', (r) => (r.when['>'][1] = 130), 'value-possible'],
    ['a unit that does not fit', 'long-screws', (r) => (r.facts.length.kind = 'load'), 'kind-fits'],
    ['a text shown as a number', 'heavy-roof', (r) => (r.facts.category.kind = 'load'), 'kind-fits'],
    ['a slot without a fact', 'falls', (r) => (r.text = 'At {pitch}.'), 'slot-filled'],
    ['a fact without a slot', 'long-screws', (r) => (r.text = 'Long screws.'), 'slot-used'],
    ['a question nobody wrote', 'falls', (r) => (r.question = 'ghost'), 'question-exists'],
    ['a source nobody listed', 'falls', (r) => (r.source = 'NOWHERE'), 'source-exists'],
    ['a level unlike its words', 'falls', (r) => (r.level = 'caution'), 'level-equal'],
    ['a source unlike its words', 'falls', (r) => (r.source = 'NDS-2018'), 'source-equal'],
    ['no words', 'falls', (r) => (r.id = 'tumbles'), 'words-exist'],
    ['words left behind', 'falls', (r) => (r.id = 'tumbles'), 'rule-exists'],
  ];
  it.each(broken)('with %s is found', (_what, id, change, name) => {
    expect(rulesFaults(withRule(id, change), facts).map(({ rule }) => rule)).toContain(name);
  });

  it('is found when the words of a caution are taken away', () => {
    const content = withFile('content/cautions/falls.md', () => undefined);
    expect(rulesFaults(content, facts).map(lineOf)).toEqual([
      'content/cautions/falls.md: words-exist: rule falls needs this file',
    ]);
  });
});

describe('broken prose', () => {
  const path = 'content/cautions/falls.md';
  const added =
    (more: string) =>
    (text: string): string =>
      `${text}\n${more}\n`;
  const broken: [string, (text: string) => string, string][] = [
    ['a path of a machine', added(`See ${['', 'home', 'someone', 'x.txt'].join('/')}.`), 'no-machine-path'],
    ['a drive of a machine', added('See C:\\files\\x.txt.'), 'no-machine-path'],
    ['a brand mark', added('Use Somename®.'), 'no-brand-mark'],
    ['words of approval', added('Then it is approved.'), 'no-approval'],
    ['a promise', added('It is guaranteed to last.'), 'no-promise'],
    ['a note to oneself', added(`${'TO'}${'DO'}: say more.`), 'nothing-open'],
    ['another spelling', added('The colour of the fibre.'), 'american-spelling'],
    ['a recording', added('As the podcast says.'), 'no-recording'],
    ['a link to no heading', added('See [there](#nowhere).'), 'link-alive'],
    ['a link to no file', added('See [there](../cautions/ghost.md).'), 'link-alive'],
    ['a figure without a source', added('Stay 3 ft (0.9 m) back.'), 'figure-cited'],
    ['a source nobody listed', added('Stay back (NO-SUCH-ID, seen).'), 'source-exists'],
    ['a source that the file does not list', added('Stay back (NDS-2018, memory).'), 'source-listed'],
    ['a grade nobody knows', added('Stay back (OSHA-1926-501, hearsay).'), 'grade-known'],
    ['an unknown source in front', (text) => text.replace('OSHA-1926-501]', 'NOWHERE]'), 'source-exists'],
    ['front matter of another shape', (text) => text.replace('level:', 'grade:'), 'words'],
  ];
  it.each(broken)('with %s is found', (_what, change, name) => {
    const found = proseFaults(withFile(path, change)).filter(({ file }) => file === path);
    expect(found.map(({ rule }) => rule)).toContain(name);
  });

  it('names the line of a forbidden word', () => {
    const [fault] = proseFaults(
      withFile('content/glossary/eave.md', () => 'One.\n\nIt is approved.\n'),
    ).filter(({ rule }) => rule === 'no-approval');
    expect(fault).toMatchObject({ file: 'content/glossary/eave.md', path: 'line 3' });
  });

  it.each([
    'Work and home are near; see the/work/of others and a 1/2 in board.',
    'The code gives no approval here, and colorful words stay.',
    'A value read in a public copy has the grade `seen-transcription`.',
  ])('leaves harmless text alone: %s', (text) => {
    const content = withFile('content/glossary/eave.md', (old) => `${old}\n${text}\n`);
    expect(proseFaults(content).map(lineOf)).toEqual([]);
  });

  it('follows a link to a heading and to a file that are there', () => {
    const text = '# Plan\n\n[here](#plan), [there](content/glossary/eave.md), [out](https://example.org).\n';
    expect(proseFaults(withFile('NOTES.md', () => text)).map(lineOf)).toEqual([]);
  });
});

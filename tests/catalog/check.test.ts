/** The shipped tables are clean, and a broken one is caught by the rule that is meant to catch it. */
import { describe, expect, it } from 'vitest';
import { checkTables } from '../../src/catalog/check.ts';
import { shippedTables, type TableName } from '../../src/catalog/tables.ts';

// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a test breaks tables in ways no type allows
type Loose = any;

/** The shipped tables with one of them changed on a deep copy. */
function withChanged(file: TableName, change: (table: Loose) => void): Record<TableName, unknown> {
  const table = structuredClone(shippedTables[file]);
  change(table);
  return { ...shippedTables, [file]: table };
}
const rulesBroken = (file: TableName, change: (table: Loose) => void): string[] =>
  checkTables(withChanged(file, change))
    .filter((fault) => fault.file === file)
    .map((fault) => fault.rule);

describe('the shipped tables', () => {
  it('have no fault', () => {
    expect(checkTables()).toEqual([]);
  });
});

const breaks: [string, TableName, (table: Loose) => void, string][] = [
  ['an unknown zone', 'energy-code.json', (t) => (t.rows[0].zones[0] = '9A'), 'schema'],
  ['an unknown field', 'coverings.json', (t) => (t.rows[0].color = 'red'), 'schema'],
  ['a number as text', 'materials.json', (t) => (t.rows[0].conductivity_W_mK = '0.02'), 'schema'],
  ['a missing grade', 'condensation-control.json', (t) => delete t.rows[0].known, 'schema'],
  ['eleven months', 'places.json', (t) => t.rows[0][13].pop(), 'schema'],
  ['columns out of order', 'places.json', (t) => t.columns.reverse(), 'schema'],
  ['a lost zone', 'energy-code.json', (t) => t.rows.pop(), 'zone-once'],
  ['a zone twice', 'condensation-control.json', (t) => t.rows[1].zones.push('8'), 'zone-once'],
  ['a source that is not listed', 'materials.json', (t) => (t.rows[0].source = ['NOWHERE']), 'source-exists'],
  ['a place source that is not listed', 'places.json', (t) => (t.rows[0][20] = 'NOWHERE'), 'source-exists'],
  ['a source twice', 'sources.json', (t) => t.rows.push(t.rows[0]), 'id-once'],
  ['a place twice', 'places.json', (t) => t.rows.push(t.rows[0]), 'id-once'],
  ['thicknesses out of order', 'materials.json', (t) => t.rows[0].soldThicknesses_m.reverse(), 'sold-sorted'],
  ['a board without thicknesses', 'materials.json', (t) => delete t.rows[0].soldThicknesses_m, 'board-sold'],
  ['a lost board', 'materials.json', (t) => t.rows.shift(), 'board-row'],
  ['two thermal values', 'materials.json', (t) => (t.rows[0].resistance_m2K_W = 1), 'one-thermal-value'],
  [
    'temperatures out of order',
    'materials.json',
    (t) => t.polyisocyanurateByTemperature.reverse(),
    'temperature-sorted',
  ],
  [
    'a humidity curve out of order',
    'materials.json',
    (t) => t.rows.find((row: Loose) => row.id === 'osb').permeanceByHumidity.points.reverse(),
    'curve-sorted',
  ],
  ['a lost covering', 'coverings.json', (t) => t.rows.pop(), 'covering-row'],
  ['a covering of no material', 'coverings.json', (t) => (t.rows[0].material = 'straw'), 'material-exists'],
  [
    'a gap below double underlayment',
    'coverings.json',
    (t) => (t.rows[0].doubleUnderlayment.from_rise_per_12 = 3),
    'contiguous',
  ],
  [
    'a double range that ends first',
    'coverings.json',
    (t) => (t.rows[0].doubleUnderlayment.below_rise_per_12 = 1),
    'ascending',
  ],
  ['a heavy weight below typical', 'coverings.json', (t) => (t.rows[0].weightHeavy_Pa = 1), 'ascending'],
  ['a low above mid', 'costs.json', (t) => (t.rows[0].low = 99), 'ascending'],
  ['a board without a price', 'costs.json', (t) => t.rows.shift(), 'board-cost'],
  ['classes out of order', 'vapor-retarder-classes.json', (t) => t.rows.reverse(), 'ascending'],
  [
    'a hole between heating limits',
    'zones.json',
    (t) => (t.thresholdsLater[4].heatingDegreeDays18AtMost_Cd = 1),
    'contiguous',
  ],
  [
    'a hole between cooling limits',
    'zones.json',
    (t) => (t.thresholdsLater[1].coolingDegreeDays10AtMost_Cd = 1),
    'contiguous',
  ],
  ['a hole between Canadian zones', 'zones.json', (t) => (t.canada[1].from_Cd = 1), 'contiguous'],
  ['a lost zone row', 'zones.json', (t) => t.rows.pop(), 'zone-listed'],
  [
    'a stand-in from elsewhere',
    'zones.json',
    (t) => (t.rows[18].representative = 'us-fl-miami'),
    'representative',
  ],
  ['a note nobody wrote', 'places.json', (t) => t.rows[0][21].push('ghost'), 'note-exists'],
  [
    'a derived note that is gone',
    'place-notes.json',
    (t) => (t.rows = t.rows.filter((r: Loose) => r.id !== 'snow-ask')),
    'note-exists',
  ],
  ['a place in an unknown region', 'places.json', (t) => (t.rows[0][2] = 'XX'), 'region-exists'],
  ['a state in no list', 'counties.json', (t) => (t.states[0].state = 'XX'), 'region-exists'],
  ['a place in no county', 'places.json', (t) => (t.rows[0][8] = '00000'), 'county-exists'],
  ['a zone unlike the county', 'places.json', (t) => (t.rows[0][9] = '1A'), 'zone-of-county'],
  [
    'a county in the wrong state',
    'counties.json',
    (t) => (t.states[0].counties[0][0] = '99001'),
    'one-state',
  ],
  [
    'a county note nobody wrote',
    'counties.json',
    (t) => (t.states[0].counties[0][5] = 'ghost'),
    'note-exists',
  ],
];

describe('a broken table', () => {
  it.each(breaks)('with %s is caught', (_name, file, change, rule) => {
    expect(rulesBroken(file, change)).toContain(rule);
  });

  it('names the file, the place and what to do', () => {
    const [fault] = checkTables(withChanged('energy-code.json', (t) => (t.rows[0].zones[0] = '9A')));
    expect(fault?.file).toBe('energy-code.json');
    expect(fault?.path).toMatch(/^rows\.0\.zones\.0/);
    expect(fault?.hint).not.toBe('');
  });
});

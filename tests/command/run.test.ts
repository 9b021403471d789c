import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { references } from '../../src/command/check.ts';
import { calculations } from '../../src/command/calculations.ts';
import { ending, type Ending } from '../../src/command/run.ts';
import { version } from '../../src/command/help.ts';

const folder = mkdtempSync(join(tmpdir(), 'overdeck-command-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

async function refused(...words: string[]): Promise<string[]> {
  const { output, errors, code } = await ending(words);
  expect(code).toBe(2);
  expect(output).toBe('');
  expect(errors.endsWith('\n')).toBe(true);
  return errors.trimEnd().split('\n');
}

async function good(...words: string[]): Promise<string> {
  const { output, errors, code }: Ending = await ending(words);
  expect(errors).toBe('');
  expect(code).toBe(0);
  return output as string;
}

describe('the command line', () => {
  it('shows its help and its version', async () => {
    expect(await good('--help')).toContain('evaluate CASE.json');
    expect(await good('calc', '--help')).toContain('calc --list');
    expect(await good('--version')).toBe(`${version()}\n`);
  });

  it.each([
    [[], 'command: is missing; one of evaluate, calc, check, schema, batch is needed'],
    [['evalute'], '"evalute": is not a known command; nearest known name is "evaluate"'],
    [
      ['batch', 'folder', '--out', 'x.csv'],
      'batch: is not available yet; evaluate one case at a time with: evaluate CASE.json',
    ],
    [['check', 'all'], 'arguments: "all" is one too many; the form is: check'],
    [['check', '--fast'], '--fast: is not a known option; this command takes none'],
    [['schema'], 'arguments: too few; the form is: schema case|evaluation'],
    [['schema', 'cases'], 'schema: "cases" is not one of case, evaluation'],
    [['calc'], 'arguments: too few; the form is: calc --list, or calc NAME [FILE.json]'],
    [['calc', '--lst'], '--lst: is not a known option; nearest known name is "--list"'],
    [['calc', '--list=all'], '--list: takes no value'],
    [['calc', '-l'], '-l: is not a known option; options start with --'],
    [['calc', 'dewpoint'], '"dewpoint": is not a known calculation; nearest known name is "dew-point"'],
    [['calc', '__proto__'], /^"__proto__": is not a known calculation/],
  ])('%j ends with 2 and one line', async (words, line) => {
    const lines = await refused(...words);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(line);
  });
});

describe('calc', () => {
  it('lists every calculation of the contract', async () => {
    const contract = [
      'climate-zone',
      'condensation-control',
      'dew-point',
      'drying',
      'energy-code',
      'interface-temperatures',
      'monthly-condensation',
      'outrigger',
      'roof-edge',
      'saturation-vapor-pressure',
      'screw-lateral',
      'screw-withdrawal',
      'snow-load',
      'thermal-transmittance',
      'weighted-ranking',
      'wind-pressure',
    ];
    expect(calculations.map(({ name }) => name)).toEqual(expect.arrayContaining(contract));
    const list = await good('calc', '--list');
    expect(list.trimEnd().split('\n')).toHaveLength(calculations.length);
    for (const { name, summary } of calculations) {
      expect(list).toContain(`${name} `);
      expect(list).toContain(summary);
    }
  });

  it('computes from a file', async () => {
    const input = file(
      'halves.json',
      '{"insideTemperature_C": 20, "outsideTemperature_C": 0, "resistances_m2K_W": [1, 1]}',
    );
    expect(JSON.parse(await good('calc', 'interface-temperatures', input))).toEqual({
      temperatures_C: [20, 10, 0],
    });
  });

  it('refuses each fault of the input with its own line', async () => {
    const input = file('faults.json', '{"temperature_C": 20000, "relativeHumidty_pct": 50}');
    expect(await refused('calc', 'dew-point', input)).toEqual([
      'relativeHumidty_pct: is not a known field; nearest known name is "relativeHumidity_pct"',
      expect.stringMatching(/^temperature_C: 20000 is above \d+$/),
      expect.stringMatching(/^relativeHumidity_pct: is missing; /),
    ]);
  });

  it.each([
    ['empty.json', '', /empty\.json: is empty; a JSON object is needed$/],
    ['text.json', 'hello', /text\.json: is not JSON at line 1, column 1: expected a value, found "h"$/],
    ['list.json', '[1]', /list\.json: expected an object, got a list of 1$/],
    ['huge.json', ' '.repeat(2_000_001), /huge\.json: has 2000001 bytes; at most 2000000 \(2 MB\) are read$/],
    ['utf16.json', Buffer.from('\ufeff{}', 'utf16le'), /utf16\.json: is not UTF-8 text; save it as UTF-8$/],
  ])('refuses the bad file %s', async (name, content, line) => {
    const lines = await refused('calc', 'dew-point', file(name, content));
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(line);
  });

  it('refuses a folder and a file that does not exist', async () => {
    expect(await refused('calc', 'dew-point', folder)).toEqual([`${folder}: is a folder; a file is needed`]);
    expect(await refused('calc', 'dew-point', join(folder, 'none.json'))).toEqual([
      `${join(folder, 'none.json')}: does not exist`,
    ]);
  });

  it('gives the same bytes twice', async () => {
    const input = file('same.json', '{"temperature_C": -7.3, "relativeHumidity_pct": 61}');
    expect(await good('calc', 'dew-point', input)).toBe(await good('calc', 'dew-point', input));
  });
});

interface Schema {
  readonly $schema?: string;
  readonly properties: Record<string, Schema & { minimum?: number; maximum?: number; pattern?: string }>;
  readonly required: string[];
  readonly additionalProperties: boolean;
}

describe('schema', () => {
  it('of the case is JSON Schema 2020-12 and keeps limits, patterns and closed objects', async () => {
    const schema = JSON.parse(await good('schema', 'case')) as Schema;
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.required).toEqual(['overdeck', 'place']);
    expect(schema.additionalProperties).toBe(false);
    expect(schema.properties['roof']?.properties['pitch_rise_per_12']).toEqual({
      type: 'number',
      minimum: 2,
      maximum: 24,
    });
    expect(schema.properties['place']?.properties['countyFips']?.pattern).toBe('^\\d{5}$');
    expect(schema.properties['place']).toMatchObject({
      anyOf: expect.arrayContaining([{ required: ['zone'] }]),
    });
  });

  it('of the evaluation names every part of the contract', async () => {
    const schema = JSON.parse(await good('schema', 'evaluation')) as Schema;
    expect(Object.keys(schema.properties)).toEqual(
      expect.arrayContaining([
        'overdeck',
        'case',
        'assumptions',
        'climate',
        'requirements',
        'candidates',
        'ranking',
        'cautions',
        'deferrals',
        'sources',
      ]),
    );
  });
});

describe('check', () => {
  it('computes every published value within its tolerance', async () => {
    const { output, errors, code } = await ending(['check']);
    expect(errors).toBe('');
    expect((output as string).split('\n').filter((line) => line.startsWith('MISSES'))).toEqual([]);
    expect(code).toBe(0);
  });

  it('reads every file of published values, each row with its source and a name of its own', () => {
    const files = readdirSync('tests/reference').filter((name) => name.endsWith('.json'));
    expect(references().map(({ file: name }) => name)).toEqual(files.sort());
    const ids = references().flatMap(({ reference }) =>
      reference.rows.map(({ id, output }) => `${id} ${output}`),
    );
    expect(ids.length).toBeGreaterThan(100);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });
});

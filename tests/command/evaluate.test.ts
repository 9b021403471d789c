import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as v from 'valibot';
import { afterAll, describe, expect, it } from 'vitest';
import { ending } from '../../src/command/run.ts';
import { evaluationSchema, type Evaluation } from '../../src/evaluation/evaluation.ts';

const GENEROUS_MS = 120_000;
const scenario = (name: string): string => join('content', 'scenarios', name);
const cottage = scenario('1-ridge-cottage.json');
const stopped = scenario('6-attic-stays-vented.json');
const folder = mkdtempSync(join(tmpdir(), 'overdeck-evaluate-'));
const placed = (name: string): string => join(folder, name);
afterAll(() => {
  rmSync(folder, { recursive: true });
});

async function good(...words: string[]): Promise<string | Uint8Array> {
  const { output, errors, code } = await ending(['evaluate', ...words]);
  expect(errors).toBe('');
  expect(code).toBe(0);
  return output;
}

async function refused(...words: string[]): Promise<string[]> {
  const { output, errors, code } = await ending(['evaluate', ...words]);
  expect(code).toBe(2);
  expect(output).toBe('');
  return errors.trimEnd().split('\n');
}

const textOf = (output: string | Uint8Array): string =>
  typeof output === 'string' ? output : Buffer.from(output).toString('latin1');

describe('evaluate', { timeout: GENEROUS_MS }, () => {
  it('gives the evaluation of its schema, and the same bytes twice', async () => {
    const text = textOf(await good(cottage));
    expect(v.safeParse(evaluationSchema, JSON.parse(text)).success).toBe(true);
    expect(textOf(await good(cottage, '--format', 'json'))).toBe(text);
  });

  it.each([
    ['markdown', /^# Record: /],
    ['html', /^<!doctype html>/i],
    ['pdf', /^%PDF-/],
    ['svg', /^<svg /],
    ['dxf', /^0\r?\nSECTION/],
    ['csv', /^candidate,strategy,rank,/],
  ])('as %s goes whole into the file, with the same bytes twice', async (format, head) => {
    const [first, second] = [placed(`first.${format}`), placed(`second.${format}`)];
    expect(await good(cottage, '--format', format, '--out', first)).toBe('');
    expect(await good(cottage, `--format=${format}`, `--out=${second}`)).toBe('');
    expect(readFileSync(first, 'latin1')).toMatch(head);
    expect(readFileSync(second).equals(readFileSync(first))).toBe(true);
    expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('as csv has one line for each build-up that was tried', async () => {
    const { candidates } = JSON.parse(textOf(await good(cottage))) as Evaluation;
    const lines = textOf(await good(cottage, '--format', 'csv'))
      .trimEnd()
      .split('\r\n');
    expect(lines).toHaveLength(candidates.length + 1);
    expect(lines.filter((line) => line.includes(',true,true,'))).toHaveLength(1);
  });

  it('words the record for each reader differently', async () => {
    const read = async (role: string): Promise<string> =>
      textOf(await good(cottage, '--format', 'markdown', '--role', role));
    const records = [await read('builder'), await read('designer'), await read('trainer')];
    expect(new Set(records).size).toBe(records.length);
  });

  it('writes the units that are asked for, inch-pound unless told', async () => {
    const si = textOf(await good(cottage, '--format', 'markdown', '--units', 'si'));
    const ip = textOf(await good(cottage, '--format', 'markdown', '--units', 'ip'));
    expect(textOf(await good(cottage, '--format', 'markdown'))).toBe(ip);
    expect(ip).toMatch(/\bR-\d+/);
    // Sentences of the evaluation itself name both units: R-47 (8.3 m²·K/W).
    expect(si.replace(/R-[\d.]+ \(/g, '')).not.toMatch(/\bR-\d/);
    expect(si).toMatch(/m²·?K\/W/);
  });

  it('draws one plot, and lists its numbers with units in the heads', async () => {
    const drawn = textOf(await good(cottage, '--format', 'svg', '--plot', 'deck-months', '--units', 'si'));
    expect(drawn).toMatch(/^<svg [^>]*role="img"/);
    expect(drawn).toContain('Temperature, °C');
    const listed = textOf(await good(cottage, '--format', 'csv', '--plot', 'deck-months', '--units', 'si'));
    const lines = listed.trim().split('\r\n');
    expect(lines).toHaveLength(13);
    expect(lines[0]).toContain('Indoor dew point, °C');
    expect(lines[7]).toMatch(/^January,-?\d+\.\d,-?\d+\.\d,/);
  });

  it('lists the quantities of the best build-up of each strategy', async () => {
    const evaluated = JSON.parse(textOf(await good(cottage))) as { takeoffs: { lines: unknown[] }[] };
    const lines = textOf(await good(cottage, '--format', 'csv', '--list', 'quantities'))
      .trim()
      .split('\r\n');
    expect(lines[0]).toMatch(/^strategy,candidate,part,id,what,quantity,unit,/);
    const material = evaluated.takeoffs.reduce((sum, list) => sum + list.lines.length, 0);
    expect(lines.filter((line) => line.split(',')[2] === 'material')).toHaveLength(material);
  });

  it('draws the place that is asked for, the eave unless told', async () => {
    const drawn = async (...more: string[]): Promise<string> =>
      textOf(await good(cottage, '--format', 'svg', ...more));
    const eave = await drawn();
    expect(await drawn('--detail', 'eave')).toBe(eave);
    expect(eave).toContain('<title>Eave section');
    expect(await drawn('--detail', 'rake')).toContain('<title>Rake section');
    expect(await drawn('--detail', 'ridge')).toContain('<title>Ridge section');
  });

  it('writes DXF in inches or millimeters', async () => {
    const unitOf = async (...more: string[]): Promise<string | undefined> =>
      /\$INSUNITS\r?\n *70\r?\n *(\d)/.exec(textOf(await good(cottage, '--format', 'dxf', ...more)))?.[1];
    expect(await unitOf()).toBe('1');
    expect(await unitOf('--units', 'si', '--detail', 'ridge')).toBe('4');
  });

  it('says that a hip roof has no rake', async () => {
    const path = join(folder, 'hip.json');
    const roof = JSON.parse(readFileSync(cottage, 'utf8')) as { roof?: object };
    writeFileSync(path, JSON.stringify({ ...roof, roof: { ...roof.roof, shape: 'hip' } }));
    expect(await refused(path, '--format', 'svg', '--detail', 'rake')).toEqual([
      '--detail: "rake" cannot be drawn: A hip roof has eaves all around and no rake.',
    ]);
  });

  it('of a case that must stop reports the stop, and has no section to draw', async () => {
    expect(textOf(await good(stopped, '--format', 'markdown'))).toContain('Stop');
    expect((await refused(stopped, '--format', 'svg'))[0]).toMatch(
      /^--format: "svg" draws the recommended build-up/,
    );
  });

  it.each([
    [
      [],
      'arguments: too few; the form is: evaluate CASE.json [--format …] [--detail …] [--plot …] [--list …] [--out PATH] [--role …] [--units ip|si] [--weather FILE]',
    ],
    [[cottage, cottage], /^arguments: ".*" is one too many/],
    [
      [cottage, '--format', 'docx'],
      /^--format: "docx" is not one of json, markdown, html, pdf, svg, dxf, csv$/,
    ],
    [
      [cottage, '--format', 'svg', '--detail', 'valley'],
      '--detail: "valley" is not one of eave, rake, ridge',
    ],
    [[cottage, '--detail', 'rake'], '--detail: chooses what is drawn: it needs --format svg or dxf'],
    [
      [cottage, '--format', 'svg', '--plot', 'humidity'],
      /^--plot: "humidity" is not one of heat-loss, deck-months, profile, condensate, air-leak, drying, drying-compared$/,
    ],
    [
      [cottage, '--plot', 'drying'],
      '--plot: draws one plot or lists its numbers: it needs --format svg or csv',
    ],
    [
      [cottage, '--format', 'svg', '--plot', 'drying', '--detail', 'rake'],
      '--plot: draws a plot and --detail a section: give one of the two',
    ],
    [
      [cottage, '--format', 'svg', '--plot', 'condensate'],
      /^--plot: "condensate": In no month does water condense/,
    ],
    [
      [cottage, '--list', 'quantities'],
      '--list: chooses what the table lists: it needs --format csv and no --plot',
    ],
    [[cottage, '--format'], /^--format: needs a value: one of json, /],
    [[cottage, '--role', 'owner'], '--role: "owner" is not one of builder, designer, trainer'],
    [[cottage, '--units', 'metric'], '--units: "metric" is not one of ip, si'],
    [[cottage, '--rol', 'builder'], '--rol: is not a known option; nearest known name is "--role"'],
    [[cottage, '--role', 'builder', '--role', 'builder'], '--role: is given twice'],
    [[cottage, '--out', folder], `--out: ${folder} is a folder; a file name is needed`],
    [
      [cottage, '--out', join(folder, 'none', 'x.json')],
      /^--out: the folder of .* does not exist; make it first$/,
    ],
    [['content/scenarios'], 'content/scenarios: is a folder; a file is needed'],
    [['none.json'], 'none.json: does not exist'],
  ])('%j is refused with one line', async (words, line) => {
    const lines = await refused(...words);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(line);
  });

  it.each([
    [
      'wrong-type',
      '{"overdeck":1,"place":{"zone":"6A"},"roof":{"pitch_rise_per_12":"steep"}}',
      'roof.pitch_rise_per_12: expected a number, got text "steep"',
    ],
    [
      'unknown-field',
      '{"overdeck":1,"place":{"zone":"6A"},"roof":{"pich_rise_per_12":6}}',
      'roof.pich_rise_per_12: is not a known field; nearest known name is "pitch_rise_per_12"',
    ],
    [
      'out-of-range',
      '{"overdeck":1,"place":{"zone":"6A"},"roof":{"pitch_rise_per_12":31}}',
      'roof.pitch_rise_per_12: 31 is above 24',
    ],
    [
      'newer',
      '{"overdeck":7,"place":{"zone":"6A"}}',
      'overdeck: 7 is a newer format than this program knows; it reads version 1',
    ],
    ['no-place', '{"overdeck":1}', 'place: is missing; an object is needed'],
    ['not-json', '{"overdeck":1,', /^.*not-json\.json: is not JSON at line 1, column 15: /],
    ['empty', '', /^.*empty\.json: is empty; a JSON object is needed$/],
    [
      'huge',
      `{"overdeck":1,"notes":"${'x'.repeat(2_000_000)}"}`,
      /^.*huge\.json: has \d+ bytes; at most 2000000 \(2 MB\) are read$/,
    ],
    [
      'binary',
      Buffer.from([0xff, 0xfe, 0x00, 0x80]),
      /^.*binary\.json: is not UTF-8 text; save it as UTF-8$/,
    ],
  ])('a bad file (%s) gives its one line and leaves what stood at --out', async (name, content, line) => {
    const path = placed(`${name}.json`);
    const out = placed(`${name}.out`);
    writeFileSync(path, content);
    const lines = await refused(path, '--out', out);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(line);
    expect(existsSync(out)).toBe(false);
    writeFileSync(out, 'before');
    await refused(path, '--out', out);
    expect(readFileSync(out, 'utf8')).toBe('before');
  });

  it('takes a file that starts with a byte order mark', async () => {
    const path = placed('mark.json');
    writeFileSync(path, `\ufeff${readFileSync(cottage, 'utf8')}`);
    expect(textOf(await good(path))).toBe(textOf(await good(cottage)));
  });
});

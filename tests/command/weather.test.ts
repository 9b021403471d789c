import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { ending, type Ending } from '../../src/command/run.ts';
import type { Evaluation } from '../../src/evaluation/evaluation.ts';
import { epwText, headers, tmy3Text } from '../weather/files.ts';

const GENEROUS_MS = 120_000;
const folder = mkdtempSync(join(tmpdir(), 'overdeck-weather-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

function written(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const cottage = join('content', 'scenarios', '1-ridge-cottage.json');
/** The cottage with another place. */
function caseAt(name: string, place: object): string {
  const given = JSON.parse(readFileSync(cottage, 'utf8')) as object;
  return written(name, JSON.stringify({ ...given, place }));
}

const evaluateWith = (roof: string, weather: string, ...words: string[]): Promise<Ending> =>
  ending(['evaluate', roof, '--weather', weather, ...words]);

const evaluationOf = ({ output }: Ending): Evaluation => JSON.parse(String(output)) as Evaluation;

/** Five months of 30 K below 18 °C, 4,530 degree days: zone 6 by the thresholds, as the cottage's. */
const cold = written(
  'cold.epw',
  epwText({
    weather: ({ month }) =>
      month < 4 || month > 10 ? { dryBulb: -12, dewPoint: -16 } : { dryBulb: 18, dewPoint: 2 },
  }),
);
const mild = written('mild.epw', epwText());

describe('evaluate --weather', { timeout: GENEROUS_MS }, () => {
  it('computes with the months and the design temperature of the file, in the zone of the case', async () => {
    const { errors, code, ...rest } = await evaluateWith(cottage, cold);
    expect([errors, code]).toEqual(['', 0]);
    const { climate, case: understood, sources } = evaluationOf({ errors, code, ...rest });
    expect(climate.zone).toBe('6A');
    expect(climate.basis).toBe('weather-file');
    expect(climate.monthlyTemperature_C).toEqual([-12, -12, -12, 18, 18, 18, 18, 18, 18, 18, -12, -12]);
    expect(climate.designTemperature_C).toBe(-25.4);
    expect(understood.place?.name).toBe('Ridge cottage (invented)');
    // 30 K below 18 °C on 151 days; 8 K above 10 °C on 214 days.
    expect(understood.place?.weatherFile).toMatchObject({
      name: 'cold.epw',
      heatingDegreeDays18_Cd: 4530,
      coolingDegreeDays10_Cd: 1712,
    });
    expect([climate.heatingDegreeDays18_Cd, climate.heatingDegreeDays18Extremes_Cd]).toEqual([4530, 4530]);
    expect(sources.find(({ id }) => id === 'WEATHER-FILE')).toMatchObject({ edition: 'cold.epw' });
    // 176.1 Pa over water at -16 °C, 217.3 Pa over ice at -12 °C (Murphy and Koop 2005 eqs 10 and 7): 81.0 %. The
    // formulas used here part from those by 0.3 % each.
    expect(Math.abs((climate.monthlyRelativeHumidity_pct[0] ?? NaN) - 81.0)).toBeLessThan(0.6);
  });

  it('differs from the case without the file', async () => {
    const without = evaluationOf(await ending(['evaluate', cottage]));
    const withFile = evaluationOf(await evaluateWith(cottage, cold));
    expect(withFile.climate.coldestMean_C).toBe(-12);
    expect(without.climate.coldestMean_C).not.toBe(-12);
  });

  it('keeps the county, which decides the zone, and doubts a file of another climate', async () => {
    const roof = caseAt('county.json', { countyFips: '27137' });
    const ended = await evaluateWith(roof, mild);
    expect(ended.code).toBe(0);
    const { climate } = evaluationOf(ended);
    expect(climate.zone).toBe('7');
    expect(climate.placeName).toBe('Invented Field, MN, USA (weather file)');
    expect(ended.errors).toMatch(/^\S+mild\.epw: .*make zone 4 by the thresholds, and zone 7 counts\. .*\n$/);
    expect(climate.zoneDoubt).toContain('make zone 4 by the thresholds');
  });

  it("keeps a person's own design temperature before the file's, and says so", async () => {
    const table = written('table.csv', tmy3Text());
    const own = caseAt('own.json', { zone: '4A', designTemperature_C: -11 });
    const ended = await evaluateWith(own, table);
    expect(evaluationOf(ended).climate.designTemperature_C).toBe(-11);
    expect(ended.errors.trimEnd().split('\n')).toEqual([
      `${table}: quotes no design temperature: its own is from a typical year, not a design value`,
      `${table}: the design temperature of the case, -11 °C, is kept`,
    ]);
    const open = caseAt('open.json', { zone: '4A' });
    expect(evaluationOf(await evaluateWith(open, table)).climate.designTemperature_C).toBe(10);
  });

  it('gives the warnings of the file with its name and line', async () => {
    const path = written('dry.epw', epwText({ weather: (_, i) => (i === 0 ? { humidity: 0 } : {}) }));
    const roof = caseAt('four.json', { zone: '4A' });
    expect((await evaluateWith(roof, path)).errors).toBe(
      `${path} line 9: 1 record from here on: relative humidity 0, which no open air has, taken as missing\n`,
    );
  });

  it('works with every form, and the same files give the same bytes', async () => {
    const first = await evaluateWith(cottage, cold, '--format', 'markdown');
    expect(first.code).toBe(0);
    expect(String(first.output)).toContain('Monthly climate from your weather file “cold.epw”');
    expect(first.output).toBe((await evaluateWith(cottage, cold, '--format', 'markdown')).output);
  });

  it('refuses a wrong file with a line for each fault, its name and its line, and no output', async () => {
    const wrong = written(
      'wrong.epw',
      epwText({ headers: headers({ 0: 'LOCATION,A,MN,USA,T,1,146.5,high,-6,400' }) }),
    );
    expect(await evaluateWith(cottage, wrong)).toEqual({
      output: '',
      errors: `${wrong} line 1: latitude: 146.5 is outside -90 to 90\n${wrong} line 1: longitude: "high" is not a number\n`,
      code: 2,
    });
  });

  it.each([
    ['none.epw', 'none.epw: does not exist'],
    ['content/scenarios', 'content/scenarios: is a folder; a file is needed'],
    [cottage, `${cottage} line 1: "{" is the first line of neither an EPW file`],
  ])('refuses %s', async (path, line) => {
    const { output, errors, code } = await evaluateWith(cottage, path);
    expect([output, code]).toEqual(['', 2]);
    expect(errors.startsWith(line)).toBe(true);
    expect(errors.trimEnd().split('\n')).toHaveLength(1);
  });

  it('refuses a file beyond the limit without reading it', async () => {
    const large = written('large.epw', ' '.repeat(40_000_001));
    expect((await evaluateWith(cottage, large)).errors).toMatch(
      /large\.epw: has 40000001 bytes, more than the 40000000/,
    );
  });

  it('needs a file name, and faults of the case go first', async () => {
    expect((await ending(['evaluate', cottage, '--weather'])).errors).toBe('--weather: needs a value\n');
    const nowhere = caseAt('nowhere.json', { id: 'nowhere' });
    expect((await evaluateWith(nowhere, 'none.epw')).errors).toMatch(
      /^place\.id: "nowhere" is not a listed place/,
    );
  });
});

/** One header or data line of an EPW file. Missing codes and limits: data dictionary of the format (seen). */
import { describe, expect, it } from 'vitest';
import { epwHour, epwRecord, quotedDesign } from '../../src/weather/epw.ts';
import { amountIn, epwFields, fieldNames, numberIn, type FieldName } from '../../src/weather/fields.ts';
import { record } from './files.ts';

const moment = { month: 1, day: 1, hour: 1 };
const whole = record(moment);

function withField(column: number, text: string): string {
  const cells = whole.split(',');
  cells[column - 1] = text;
  return cells.join(',');
}

/** Reads a line that is known to be a record. */
function read(line: string): Exclude<ReturnType<typeof epwRecord>, string> {
  const found = epwRecord(line);
  if (typeof found === 'string') throw new Error(found);
  return found;
}

/** Missing codes as the data dictionary prints them, written in the ways that files do. */
const codes: readonly (readonly [FieldName, readonly string[], string])[] = [
  ['dryBulb_C', ['99.9', '99.90', '999'], '-12.5'],
  ['dewPoint_C', ['99.9', '100'], '-20.1'],
  ['relativeHumidity_pct', ['999', '999.', '999.0'], '110'],
  ['pressure_Pa', ['999999', '999999.0'], '83700'],
  ['extraterrestrialHorizontal_Wh_m2', ['9999', '9999.0'], '1412'],
  ['extraterrestrialNormal_Wh_m2', ['9999'], '0'],
  ['skyInfrared_Wh_m2', ['9999'], '251'],
  ['globalHorizontal_Wh_m2', ['9999'], '0'],
  ['directNormal_Wh_m2', ['9999'], '0'],
  ['diffuseHorizontal_Wh_m2', ['9999'], '0'],
  ['globalIlluminance_lux', ['999999', '999900'], '999899'],
  ['directIlluminance_lux', ['999999', '999900'], '0'],
  ['diffuseIlluminance_lux', ['999999', '999900'], '0'],
  ['zenithLuminance_cd_m2', ['9999'], '0'],
  ['windDirection_deg', ['999', '999.0'], '360'],
  ['windSpeed_m_s', ['999', '999.0'], '5.2'],
  ['totalSkyCover_tenths', ['99'], '10'],
  ['opaqueSkyCover_tenths', ['99'], '10'],
  ['visibility_km', ['9999'], '777.7'],
  ['ceilingHeight_m', ['99999'], '77777'],
  ['presentWeather', ['9'], '0'],
  ['precipitableWater_mm', ['999'], '60'],
  ['aerosolDepth_thousandths', ['.999', '0.999', '0.9990'], '0.0440'],
  ['snowDepth_cm', ['999'], '0'],
  ['daysSinceSnow_d', ['99', '99.0'], '88'],
  ['albedo', ['999', '999.000'], '0.220'],
  ['rainDepth_mm', ['999', '999.0'], '0'],
  ['rainTime_h', ['99', '99.0'], '1'],
];

describe('the missing codes of an EPW record', () => {
  it('are tested for every field that has one', () => {
    const withCode = fieldNames.filter((name) => 'missingFrom' in epwFields[name]);
    expect(codes.map(([name]) => name)).toEqual(withCode);
  });

  it.each(codes)('%s: %j are missing, %s is a value', (name, missing, value) => {
    const { column } = epwFields[name];
    for (const code of missing) expect(read(withField(column, code)).amounts[name]).toBe('missing');
    expect(read(withField(column, '')).amounts[name]).toBe('missing');
    expect(read(withField(column, value)).amounts[name]).toBe(Number(value));
  });

  it.each([
    ['dryBulb_C', '70'],
    ['dryBulb_C', '-70'],
    ['dewPoint_C', '99.8'],
    ['relativeHumidity_pct', '-1'],
    ['relativeHumidity_pct', '110.5'],
    ['pressure_Pa', '30999'],
    ['windDirection_deg', '361'],
    ['windSpeed_m_s', '41'],
  ] as const)('%s %s is out of range, not missing', (name, text) => {
    expect(read(withField(epwFields[name].column, text)).amounts[name]).toBe('outside');
  });
});

describe('an EPW record', () => {
  it('gives all 35 fields', () => {
    const { amounts, flags, weatherCodes, fields } = read(whole);
    expect(fields).toBe(35);
    expect(Object.keys(amounts)).toHaveLength(33);
    expect([flags, weatherCodes]).toEqual(['?9?9', '999999999']);
    expect([amounts.year, amounts.dryBulb_C, amounts.windSpeed_m_s]).toEqual([1999, 10, 5.2]);
  });

  it('may lack the fields after the tenth, and those are missing', () => {
    const { amounts, fields } = read(whole.split(',').slice(0, 10).join(','));
    expect([fields, amounts.pressure_Pa, amounts.windSpeed_m_s]).toEqual([10, 98000, 'missing']);
  });

  it.each([
    ['1999,1,1,1,0,?9,10,5,71', /^".*" is no data record: it has 9 fields, at least 10 are needed$/],
    [withField(2, '13'), 'month: 13 is outside 1 to 12'],
    [withField(3, '32'), 'day: 32 is outside 1 to 31'],
    [record({ month: 2, day: 30, hour: 1 }), 'day: 30 is outside 1 to 29'],
    [withField(4, '0'), 'hour: 0 is outside 1 to 24'],
    [withField(4, '25'), 'hour: 25 is outside 1 to 24'],
    [withField(4, '1.5'), 'hour: 1.5 is not a whole number'],
    [withField(2, ''), 'month is missing'],
    [withField(4, 'noon'), 'hour: "noon" is not a number'],
    [withField(7, 'cold'), 'dry-bulb temperature: "cold" is not a number'],
    [withField(8, '-'), 'dew-point temperature: "-" is not a number'],
    [withField(9, 'NaN'), 'relative humidity: "NaN" is not a number'],
  ])('%s is refused', (line, message) => {
    expect(epwHour(line)).toMatch(message);
  });

  it('passes over strange words in a field that nothing is computed from', () => {
    expect(read(withField(26, 'unlimited')).amounts.ceilingHeight_m).toBe('missing');
  });
});

describe('a number of a weather file', () => {
  it.each([
    ['-12.5', -12.5],
    [' 7 ', 7],
    ['+3', 3],
    ['.999', 0.999],
    ['2.', 2],
    ['1.5E2', 150],
  ])('%j is read', (text, value) => {
    expect(numberIn(text)).toBe(value);
  });

  it.each(['', ' ', '0x10', 'Infinity', '1e999', '1,5', '--1', '1_000', '٣', '9'.repeat(31)])(
    '%j is refused',
    (text) => {
      expect(numberIn(text)).toBeUndefined();
    },
  );

  it('counts as missing at the code and beyond, on either side', () => {
    expect(amountIn('-9900', { missingDownFrom: -9900 })).toBe('missing');
    expect(amountIn('-9899', { missingDownFrom: -9900 })).toBe(-9899);
  });
});

describe('the design temperatures that a header quotes', () => {
  it('are found by the word Heating, whatever stands after them', () => {
    const found = { heating996_C: -17.4, heating99_C: -14, source: 'Some Handbook' };
    expect(quotedDesign('DESIGN CONDITIONS,1,Some Handbook,,Heating,12,-17.4,-14,-21.5,0.7')).toEqual(found);
    expect(quotedDesign('DESIGN CONDITIONS,1,Some Handbook,,x,y,heating,12,-17.4,-14.0')).toEqual(found);
  });

  it.each([
    ['none is quoted', 'DESIGN CONDITIONS,0'],
    ['nothing follows', 'DESIGN CONDITIONS,1,x,,Heating'],
    ['the month cannot be', 'DESIGN CONDITIONS,1,x,,Heating,25,-17.4,-14'],
    ['the colder one is warmer', 'DESIGN CONDITIONS,1,x,,Heating,1,-14,-17.4'],
    ['a temperature cannot be', 'DESIGN CONDITIONS,1,x,,Heating,1,-999,-14'],
    ['a word stands there', 'DESIGN CONDITIONS,1,x,,Heating,1,-17.4,cold'],
  ])('are left out where %s', (_, line) => {
    expect(quotedDesign(line)).toBeUndefined();
  });
});

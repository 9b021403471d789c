/** Whole weather files: what is accepted, refused and warned of. The files are invented. */
import { describe, expect, it } from 'vitest';
import { LISTED_FAULTS } from '../../src/faults.ts';
import { LONGEST_LINE_BYTES } from '../../src/weather/lines.ts';
import type { WeatherSummary } from '../../src/weather/monthly.ts';
import { readWeatherBytes } from '../../src/weather/read.ts';
import { LARGEST_WEATHER_BYTES, weatherReader, weatherSizeFault } from '../../src/weather/reader.ts';
import { bytesOf, epwLines, epwText, headers, hoursOfYear, record, TMY3_COLUMNS, tmy3Text } from './files.ts';

function summary(text: string): WeatherSummary {
  const reading = readWeatherBytes(bytesOf(text));
  if (!reading.ok) throw new Error(JSON.stringify(reading.faults));
  return reading.value;
}

/** The faults as lines, `path: message`. */
function faults(given: string | Uint8Array): string[] {
  const reading = readWeatherBytes(typeof given === 'string' ? bytesOf(given) : given);
  if (reading.ok) throw new Error('the file was accepted');
  return reading.faults.map(({ path, message }) => `${path}: ${message}`);
}

const warnings = (text: string): string[] =>
  summary(text).warnings.map(({ path, message }) => `${path}: ${message}`);

const plain = epwText();
const plainSummary = summary(plain);

describe('a whole EPW file', () => {
  it('gives its place, its months and no warning', () => {
    expect(plainSummary).toMatchObject({
      format: 'epw',
      placeName: 'Invented Field, MN, USA',
      latitude_deg: 46.5,
      longitude_deg: -93.25,
      elevation_m: 400,
      usableHours: 8760,
      warnings: [],
    });
    for (const mean_C of plainSummary.monthlyTemperature_C) expect(mean_C).toBeCloseTo(10, 9);
  });

  it.each([
    ['CR LF line ends', plain.replaceAll('\n', '\r\n')],
    ['CR line ends', plain.replaceAll('\n', '\r')],
    ['no line end at its end', plain.trimEnd()],
    ['blank lines and an end-of-file mark at its end', `${plain}\r\n\n\u001a`],
    ['a byte order mark', `\ufeff${plain}`],
    ['the other spelling of line 5', plain.replace('SAVINGS', 'SAVING')],
    ['header words in lower case', plain.replace('LOCATION', 'Location')],
    ['spaces around its numbers', plain.replaceAll(',10,5,71,', ', 10, 5 , 71,')],
    ['another year in each record', plain.replaceAll('1999,2,', '1975,2,')],
    ['its hours in another order', [...headers(), ...epwLines().slice(8).reverse()].join('\n')],
  ])('with %s is the same file', (_, text) => {
    expect(text).not.toBe(plain);
    const read = summary(text);
    expect(read.monthlyVaporPressure_Pa.map(Math.fround)).toEqual(
      plainSummary.monthlyVaporPressure_Pa.map(Math.fround),
    );
    expect({
      ...read,
      measured: undefined,
      monthlyVaporPressure_Pa: 0,
      monthlyRelativeHumidity_pct: 0,
    }).toEqual({
      ...plainSummary,
      measured: undefined,
      monthlyVaporPressure_Pa: 0,
      monthlyRelativeHumidity_pct: 0,
    });
  });

  it('in the Western code page keeps its accents', () => {
    const text = epwText({ headers: headers({ 0: 'LOCATION,Montréal,PQ,CAN,T,1,45.5,-73.6,-5,30' }) });
    const western = Uint8Array.from(text, (character) => character.charCodeAt(0));
    const reading = readWeatherBytes(western);
    expect(reading.ok && reading.value.placeName).toBe('Montréal, PQ, CAN');
    expect(summary(text).placeName).toBe('Montréal, PQ, CAN');
  });

  it('of a leap year counts 29 February', () => {
    const leap = summary(epwText({ hours: hoursOfYear(true) }));
    expect(leap.usableHours).toBe(8784);
    expect(leap.warnings).toEqual([]);
    // 366 days of 8 K below 18 °C.
    expect(leap.heatingDegreeDays.hours.base18_Kd).toBeCloseTo(366 * 8, 6);
    expect(plainSummary.heatingDegreeDays.hours.base18_Kd).toBeCloseTo(365 * 8, 6);
  });

  it('with four records an hour has the same months', () => {
    const four = headers({ 7: 'DATA PERIODS,1,4,Data,Sunday, 1/ 1,12/31' });
    const hours = hoursOfYear().flatMap((moment) => [moment, moment, moment, moment]);
    const read = summary(
      epwText({ headers: four, hours, weather: (_, index) => ({ dryBulb: [7, 9, 11, 13][index % 4] ?? 0 }) }),
    );
    expect(read.usableHours).toBe(8760);
    expect(read.monthlyTemperature_C[3]).toBeCloseTo(10, 9);
  });
});

describe('a file is refused, with the line,', () => {
  it.each([
    ['when it is empty', '', [': is empty; an EPW or TMY3 weather file is needed']],
    ['when it is blank', ' \n\n', [': is empty; an EPW or TMY3 weather file is needed']],
    [
      'when it is something else',
      '{"overdeck": 1}',
      [
        'line 1: "{\\"overdeck\\": 1}" is the first line of neither an EPW file ("LOCATION,…") nor a TMY3 table (station number, name, state, …)',
      ],
    ],
    [
      'when a header line is missing',
      plain.replace('GROUND TEMPERATURES,0\n', ''),
      ['line 4: "HOLIDAYS/DAYLIGHT SAVINGS" stands where GROUND TEMPERATURES belongs, header line 4 of 8'],
    ],
    [
      'when the data begin too early',
      [...headers().slice(0, 7), record({ month: 1, day: 1, hour: 1 })].join('\n'),
      ['line 8: "1999" stands where DATA PERIODS belongs, header line 8 of 8'],
    ],
    [
      'when there is a ninth header line',
      [...headers(), 'COMMENTS 3,x', ...epwLines().slice(8)].join('\n'),
      ['line 9: "COMMENTS 3,x" is no data record: it has 2 fields, at least 10 are needed'],
    ],
    [
      'when it ends in its header',
      headers().slice(0, 5).join('\n'),
      [': ends before its 8 header lines are complete'],
    ],
    [
      'when its position cannot be',
      epwText({ headers: headers({ 0: 'LOCATION,A,MN,USA,T,1,146.5,-193.25,-6.0,high' }) }),
      [
        'line 1: latitude: 146.5 is outside -90 to 90',
        'line 1: longitude: -193.25 is outside -180 to 180',
        'line 1: elevation: "high" is not a number',
      ],
    ],
    [
      'when its records an hour cannot be',
      epwText({ headers: headers({ 7: 'DATA PERIODS,1,0,Data,Sunday, 1/ 1,12/31' }) }),
      ['line 8: records per hour: 0 is outside 1 to 60'],
    ],
    [
      'when an hour comes twice',
      `${plain}${record({ month: 12, day: 31, hour: 24 })}\n`,
      ['line 8769: 12/31 hour 24 comes twice; a file of one year is needed'],
    ],
    [
      'when it is cut in the middle of a record',
      plain.slice(0, plain.indexOf('1999,12,31,24') + 20),
      ['line 8768: "1999,12,31,24,0,?9?9" is no data record: it has 6 fields, at least 10 are needed'],
    ],
    [
      'when a month is warmer than any place',
      epwText({ weather: ({ month }) => (month === 7 ? { dryBulb: 60 } : {}) }),
      ['July: mean temperature 60.0 °C is outside -60 to 45 °C'],
    ],
  ])('%s', (_, text, lines) => {
    expect(faults(text)).toEqual(lines);
  });

  it('when a month lacks more than ten days', () => {
    const without = (days: number): string =>
      epwText({ hours: hoursOfYear().filter(({ month, day }) => month !== 3 || day > days) });
    expect(faults(without(11))).toEqual([
      'March: has 20 usable days of 31; at least 21 are needed, each with 18 of its 24 hours',
    ]);
    expect(summary(without(10)).usableHours).toBe(8760 - 240);
  });

  it('when a whole month is missing or the year is cut', () => {
    expect(faults(epwText({ hours: hoursOfYear().filter(({ month }) => month < 11) }))).toEqual([
      expect.stringMatching(/^November: has 0 usable days of 30/),
      expect.stringMatching(/^December: has 0 usable days of 31/),
    ]);
    expect(faults(headers().join('\n'))).toHaveLength(12);
  });

  it('once, when every line is wrong: reading stops', () => {
    const lines = faults([...headers(), ...Array.from({ length: 5000 }, () => 'x')].join('\n'));
    expect(lines).toHaveLength(LISTED_FAULTS + 1);
    expect(lines.at(-1)).toBe(`: is not read further after ${LISTED_FAULTS} faults`);
  });
});

describe('hostile bytes', () => {
  it.each([
    ['a ZIP archive', [0x50, 0x4b, 3, 4], /ZIP archive; unpack it/],
    ['a compressed file', [0x1f, 0x8b, 8, 0], /compressed; unpack it/],
    ['a PDF', [...bytesOf('%PDF-1.7\n')], /a PDF/],
    ['UTF-16 text', [0xff, 0xfe, 0x4c, 0x00], /UTF-16 text; save it as UTF-8/],
    ['a zero byte', [0x4c, 0x00, 0x4f], /^line 1: holds a zero byte/],
  ])('%s is refused', (_, bytes, message) => {
    expect(faults(Uint8Array.from(bytes))).toEqual([expect.stringMatching(message)]);
  });

  it('a line without end is refused before it fills the memory', () => {
    expect(faults('x'.repeat(LONGEST_LINE_BYTES + 1))).toEqual([
      `line 1: is longer than ${LONGEST_LINE_BYTES} bytes; no weather file has such a line`,
    ]);
  });

  it('a file beyond the limit is refused, by its size and while it comes in', () => {
    expect(weatherSizeFault(LARGEST_WEATHER_BYTES)).toBeUndefined();
    expect(weatherSizeFault(LARGEST_WEATHER_BYTES + 1)).toMatch(/^has 40000001 bytes, more than/);
    const reader = weatherReader();
    const blank = new Uint8Array(1_000_000).fill(0x0a);
    for (let piece = 0; piece < 40; piece++) reader.push(blank);
    expect(reader.isStopped()).toBe(false);
    reader.push(blank.subarray(0, 1));
    expect(reader.isStopped()).toBe(true);
    expect(reader.end()).toMatchObject({
      ok: false,
      faults: [{ message: expect.stringMatching(/40 MB/) as string }],
    });
  });

  it('a place name of control signs and great length is made plain and short', () => {
    const name = `a\u0007\u202eb${'c'.repeat(500)}`;
    const { placeName } = summary(
      epwText({ headers: headers({ 0: `LOCATION,${name},-,,T,1,46,-93,-6,400` }) }),
    );
    expect(placeName).toMatch(/^a b?c* ?b?c+…$/u);
    expect(placeName.length).toBeLessThanOrEqual(80);
  });

  it('a file comes out the same in pieces of any size', () => {
    const bytes = bytesOf(plain.replaceAll('\n', '\r\n'));
    for (const size of [1, 7, 4096, bytes.length]) {
      const reader = weatherReader();
      for (let from = 0; from < bytes.length; from += size) reader.push(bytes.subarray(from, from + size));
      expect(reader.end()).toEqual({ ok: true, value: plainSummary });
    }
  });
});

describe('a usable file is warned of', () => {
  const some = (count: number, weather: object): string =>
    epwText({ weather: (_, index) => (index % Math.floor(8760 / count) === 0 ? weather : {}) });

  it.each([
    [
      'fewer hours',
      epwText({ hours: hoursOfYear().slice(5) }),
      [': 8755 usable hours; a year has 8760, and means are of the hours there are'],
    ],
    [
      'an east longitude',
      epwText({ headers: headers({ 0: 'LOCATION,A,MN,USA,T,1,46.5,93.25,-6,400' }) }),
      [': longitude 93.25° is east; North America lies west, with a negative longitude'],
    ],
    [
      'dew points above the air temperature',
      epwText({ weather: ({ month, day }) => (month === 1 && day === 2 ? { dewPoint: 10.6 } : {}) }),
      [
        'line 33: 24 records from here on: dew point above the air temperature by more than 0.5 K, taken as saturated air',
      ],
    ],
    [
      'a relative humidity of 0',
      epwText({ weather: (_, index) => (index === 2 ? { humidity: 0 } : {}) }),
      ['line 11: 1 record from here on: relative humidity 0, which no open air has, taken as missing'],
    ],
    [
      'no dew points at all',
      epwText({ weather: () => ({ dewPoint: 99.9 }) }),
      [
        'line 9: 8760 records from here on: dew point missing, 100.0 % of the file; more than 2 % is much',
        'line 9: 8760 records from here on: no dew point, vapor pressure taken from the relative humidity',
      ],
    ],
    [
      'short records',
      plain.replaceAll(/^(1999(?:,[^,]*){12}),.*$/gm, '$1'),
      ['line 9: 8760 records from here on: fewer than 32 fields, the later ones taken as missing'],
    ],
    [
      'no quoted design temperature',
      epwText({ headers: headers({ 1: 'DESIGN CONDITIONS,0' }) }),
      [': quotes no design temperature: its own is from a typical year, not a design value'],
    ],
  ])('for %s', (_, text, lines) => {
    expect(warnings(text)).toEqual(lines);
  });

  it('for dry-bulbs missing above 2 %, and below only for the hours', () => {
    expect(warnings(some(300, { dryBulb: 99.9 }))[1]).toMatch(
      /^line 9: 303 records from here on: dry-bulb temperature missing, 3.5 % of the file/,
    );
    expect(warnings(some(100, { dryBulb: 99.9 }))).toEqual([expect.stringMatching(/^: 8659 usable hours/)]);
  });

  it('for temperatures out of range, which are left out', () => {
    const read = summary(epwText({ weather: (_, index) => (index === 0 ? { dryBulb: 85 } : {}) }));
    expect(read.warnings.map(({ message }) => message)[1]).toMatch(
      /^1 record .* out of the range -70 to 70 °C/,
    );
    expect(read.monthlyTemperature_C[0]).toBeCloseTo(10, 9);
  });

  it('but not for an east longitude on an island beyond the date line', () => {
    const at = (place: string): string[] =>
      warnings(epwText({ headers: headers({ 0: `LOCATION,${place}` }) }));
    expect(at('Far Island,AK,USA,T,1,52.7,174.1,-10,30')).toEqual([]);
    expect(at('Elsewhere,-,FRA,T,1,46.5,6.1,1,400')).toEqual([]);
  });
});

describe('a TMY3 table', () => {
  it('is read by the names of its columns, with a design temperature from its hours', () => {
    const read = summary(tmy3Text());
    expect(read).toMatchObject({
      format: 'tmy3',
      placeName: 'INVENTED FIELD, NORTH, MN, USA',
      latitude_deg: 46.5,
      longitude_deg: -93.25,
      elevation_m: 400,
      usableHours: 8760,
      designTemperature: { basis: 'typical-year', heating99_C: 10 },
    });
    expect(read.monthlyVaporPressure_Pa).toEqual(plainSummary.monthlyVaporPressure_Pa);
  });

  it('has -9900 for missing values', () => {
    const read = summary(tmy3Text(({ month, day }) => (month === 1 && day === 1 ? { dryBulb: -9900 } : {})));
    expect(read.usableHours).toBe(8760 - 24);
    expect(read.monthlyTemperature_C[0]).toBeCloseTo(10, 9);
  });

  const text = tmy3Text();
  it.each([
    [
      'without a column',
      text.replace('Dew-point (C)', 'Dew'),
      'line 2: has no column "Dew-point (C)", which a TMY3 table needs',
    ],
    ['without records', text.slice(0, text.indexOf(TMY3_COLUMNS)), ': ends before the line of column names'],
    [
      'with a wrong date',
      text.replace('01/01/1999,01:00', '1999-01-01,01:00'),
      'line 3: "1999-01-01" is not a date written MM/DD/YYYY',
    ],
    [
      'with half an hour',
      text.replace(',01:00,', ',01:30,'),
      'line 3: "01:30" is not a full hour from 01:00 to 24:00',
    ],
    ['with hour 0', text.replace(',24:00,', ',00:00,'), 'line 26: hour: 0 is outside 1 to 24'],
    [
      'with a word for a number',
      text.replace(',10,A,', ',warm,A,'),
      'line 3: Dry-bulb (C): "warm" is not a number',
    ],
    [
      'with a row cut short',
      text.slice(0, -8),
      /^line 8762: ".*" is no whole record: it has 6 cells, the columns are 8$/,
    ],
    [
      'with a place that cannot be',
      text.replace('46.500', '96.5'),
      'line 1: latitude: 96.5 is outside -90 to 90',
    ],
  ])('%s is refused', (_, given, line) => {
    expect(faults(given)).toEqual([expect.stringMatching(typeof line === 'string' ? exactly(line) : line)]);
  });
});

function exactly(line: string): RegExp {
  return new RegExp(`^${line.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);
}

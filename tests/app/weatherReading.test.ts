/** A weather file on its way into the page: read, refused, stopped; an answer only when the reader says so. */
import { describe, expect, it } from 'vitest';
import { weatherPatch, weatherInUse, doubtAbout } from '../../src/app/view/weatherAnswer.ts';
import { weatherRows } from '../../src/app/view/weather.ts';
import { WeatherReading } from '../../src/app/state/weatherReading.svelte.ts';
import type { readWeatherFile } from '../../src/app/workers/weather.ts';
import { zoneOf } from '../../src/case/place.ts';
import { caseOf } from '../../src/interview/index.ts';
import { climateOf } from '../../src/roof/site.ts';
import { withAnswers } from '../../src/interview/consequences.ts';
import { readWeather } from '../../src/weather/read.ts';
import { chunksOf } from '../../src/app/workers/chunks.ts';
import { epwText, headers } from '../weather/files.ts';

/** The worker's own reading, without the worker. */
const readHere: typeof readWeatherFile = (file, options) => readWeather(chunksOf(file), file.size, options);
const fileOf = (name: string, text: string): File => new File([text], name);
const good = fileOf('field.epw', epwText());

async function after(...files: File[]) {
  const reading = new WeatherReading(readHere);
  await reading.take(files);
  return reading.state;
}

describe('a weather file that is taken', () => {
  it('is read, and becomes an answer only through its patch', async () => {
    const state = await after(good);
    if (state.kind !== 'read') throw new Error(state.kind);
    const answers = withAnswers({ place: { zone: '4A' } }, weatherPatch(state.place));
    expect(answers.place?.weatherFile?.name).toBe('field.epw');
    expect(weatherInUse(answers, null)).toMatchObject({
      file: state.place.weatherFile,
      monthly_C: state.place.monthlyTemperature_C,
      zoneWords: expect.stringContaining('it stays 4A') as string,
    });
    expect(doubtAbout(state.summary, answers)).toBeNull();
    const given = caseOf(answers);
    if (!given.ok) throw new Error(JSON.stringify(given.faults));
    expect(climateOf(given.value, zoneOf(given.value))).toMatchObject({
      basis: 'weather-file',
      zone: '4A',
      heatingDegreeDays18_Cd: 2920,
    });
    expect(doubtAbout(state.summary, { place: { zone: '7' } })).toContain('zone 7 counts');
    expect(withAnswers(answers, weatherPatch(undefined))).toEqual({ place: { zone: '4A' } });
  });

  it('is shown with station, years, both conventions and the three coldest months', async () => {
    const state = await after(good);
    if (state.kind !== 'read') throw new Error(state.kind);
    const { weatherFile, monthlyTemperature_C } = state.place;
    const text = weatherRows(weatherFile, monthlyTemperature_C, 'SI')
      .map(({ what, figure, note }) => `${what}: ${figure}; ${note ?? ''}`)
      .join('\n');
    for (const part of ['Invented Field, MN, USA', 'TEST, 8760 hours', '1999', '2920 °C·d', '10 °C', 'Jan'])
      expect(text).toContain(part);
  });

  it.each([
    ['a picture', fileOf('a.csv', '\u0089PNG\r\n\u001a\n'), /first line of neither|zero byte/],
    ['a cut file', fileOf('cut.epw', epwText().slice(0, 200_000)), /usable days|fields/],
    ['half its header', fileOf('head.epw', headers().slice(0, 4).join('\n')), /header lines/],
    ['words for numbers', fileOf('w.epw', epwText({ weather: () => ({ dryBulb: 'warm' }) })), /not a number/],
    ['nothing', fileOf('none.epw', ''), /is empty/],
    ['50 MB', fileOf('huge.epw', ' '.repeat(50_000_000)), /more than the 40000000 bytes/],
  ])('is refused in words: %s', async (_, file, words) => {
    const state = await after(file);
    if (state.kind !== 'refused') throw new Error(state.kind);
    expect(state.name).toBe(file.name);
    expect(state.faults.map(({ message }) => message).join('\n')).toMatch(words);
  });

  it('is refused when two come at once', async () => {
    expect(await after(good, good)).toMatchObject({
      kind: 'refused',
      faults: [{ path: '', message: '2 files were given; one weather file at a time is read' }],
    });
  });

  it('that the browser cannot read is refused with the reason', async () => {
    const reading = new WeatherReading(() => Promise.reject(new Error('it has gone')));
    await reading.take([good]);
    expect(reading.state).toMatchObject({ kind: 'refused', name: 'field.epw' });
    expect(JSON.stringify(reading.state)).toContain('it has gone');
  });
});

describe('a reading that is stopped', () => {
  it('takes nothing, even when the file ends after all', async () => {
    const reading = new WeatherReading(readHere);
    const taking = reading.take([good]);
    expect(reading.state.kind).toBe('reading');
    reading.cancel();
    await taking;
    expect(reading.state).toEqual({ kind: 'stopped', name: 'field.epw' });
  });

  it('gives way to the file chosen last', async () => {
    const reading = new WeatherReading(readHere);
    const first = reading.take([good]);
    await reading.take([fileOf('none.epw', '')]);
    await first;
    expect(reading.state).toMatchObject({ kind: 'refused', name: 'none.epw' });
  });

  it('is forgotten when the page goes', async () => {
    const reading = new WeatherReading(readHere);
    const taking = reading.take([good]);
    reading.forget();
    await taking;
    expect(reading.state.kind).toBe('none');
  });
});

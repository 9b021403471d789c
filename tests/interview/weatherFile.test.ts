/** The weather file among the answers: put in whole, gone with a month that is changed by hand, back with undo. */
import { describe, expect, it } from 'vitest';
import { createActor } from 'xstate';
import type { WeatherFile } from '../../src/case/case.ts';
import { readCase, readCaseText } from '../../src/case/read.ts';
import { answersOf, caseOf, interviewChart, type Answers, type Patch } from '../../src/interview/index.ts';
import { validate } from '../../src/interview/validate.ts';
import { placeOfWeather } from '../../src/weather/place.ts';
import { readWeatherBytes } from '../../src/weather/read.ts';
import { bytesOf, epwText } from '../weather/files.ts';

const read = readWeatherBytes(bytesOf(epwText()));
if (!read.ok) throw new Error(JSON.stringify(read.faults));
const fromFile = placeOfWeather(read.value, 'C:\\maps\\field.epw');
const patch: Patch = {
  'place.monthlyTemperature_C': fromFile.monthlyTemperature_C,
  'place.monthlyRelativeHumidity_pct': fromFile.monthlyRelativeHumidity_pct,
  'place.weatherFile': fromFile.weatherFile,
};

function begun() {
  const actor = createActor(interviewChart).start();
  const answer = (given: Patch): void => actor.send({ type: 'answer', question: 'place', patch: given });
  const answers = (): Answers => actor.getSnapshot().context.answers;
  answer({ 'place.zone': '4A' });
  answer(patch);
  return { actor, answer, answers };
}

const given = {
  overdeck: 1,
  place: {
    zone: '4A',
    monthlyTemperature_C: fromFile.monthlyTemperature_C,
    monthlyRelativeHumidity_pct: fromFile.monthlyRelativeHumidity_pct,
    weatherFile: fromFile.weatherFile,
  },
};
const faultsOf = (change: object): string[] => {
  const reading = readCase({ ...given, place: { ...given.place, ...change } });
  return reading.ok ? [] : reading.faults.map(({ path, message }) => `${path}: ${message}`);
};
const changed = (change: object): string[] =>
  faultsOf({ weatherFile: { ...fromFile.weatherFile, ...change } });

describe('the entry of a weather file in a case', () => {
  it('holds the name without its folder, the station and what its hours make', () => {
    expect(fromFile.weatherFile).toEqual<WeatherFile>({
      name: 'field.epw',
      format: 'epw',
      station: 'Invented Field, MN, USA',
      dataSet: 'TEST',
      firstYear: 1999,
      lastYear: 1999,
      usable_h: 8760,
      heatingDegreeDays18_Cd: 2920,
      heatingDegreeDays18Extremes_Cd: 2920,
      coolingDegreeDays10_Cd: 0,
      coolingDegreeDays10Extremes_Cd: 0,
      designTemperature_C: -25.4,
      designBasis: 'quoted',
    });
  });

  it('comes back from a case file as it went', () => {
    const reading = readCaseText(JSON.stringify(given));
    expect(reading.ok && reading.value).toEqual(given);
    expect(reading.ok && caseOf(answersOf(reading.value))).toEqual({ ok: true, value: given });
  });

  it.each([
    [{ name: '' }, 'place.weatherFile.name: has 0 characters; at least 1 are needed'],
    [{ name: 'x'.repeat(121) }, 'place.weatherFile.name: has 121 characters; at most 120 are allowed'],
    [{ format: 'csv' }, 'place.weatherFile.format: "csv" is not one of epw, tmy3'],
    [{ usable_h: 8785 }, 'place.weatherFile.usable_h: 8785 is above 8784'],
    [{ heatingDegreeDays18_Cd: -1 }, 'place.weatherFile.heatingDegreeDays18_Cd: -1 is below 0'],
    [{ firstYear: 1999.5 }, 'place.weatherFile.firstYear: 1999.5 is not a whole number'],
    [{ hours: 1 }, 'place.weatherFile.hours: is not a known field; nearest known name is'],
  ])('with %o is a fault', (change, fault) => {
    expect(changed(change).join('\n')).toContain(fault);
  });

  it('needs the months beside it', () => {
    expect(faultsOf({ monthlyRelativeHumidity_pct: undefined }).join()).toContain(
      'weatherFile says where the months come from',
    );
  });

  it('is always within the ranges of the case, whatever the hours of a readable file are', () => {
    for (const dryBulb of [-58, -20, 10, 44]) {
      for (const swing of [0, 11]) {
        const hours = readWeatherBytes(
          bytesOf(
            epwText({
              weather: ({ hour }) => ({
                dryBulb: dryBulb + (hour === 12 ? swing : -swing / 23),
                dewPoint: -65,
                humidity: 5,
              }),
            }),
          ),
        );
        if (!hours.ok) throw new Error(JSON.stringify(hours.faults));
        expect(validate({ 'place.weatherFile': placeOfWeather(hours.value, 'a.epw').weatherFile })).toEqual(
          [],
        );
      }
    }
  });
});

describe('months changed by hand', () => {
  it.each<[string, Patch]>([
    ['a temperature', { 'place.monthlyTemperature_C': fromFile.monthlyTemperature_C.with(6, 21) }],
    ['a humidity', { 'place.monthlyRelativeHumidity_pct': fromFile.monthlyRelativeHumidity_pct.with(0, 50) }],
    ['temperatures taken back', { 'place.monthlyTemperature_C': undefined }],
  ])('take the file away: %s', (_, edit) => {
    const { actor, answer, answers } = begun();
    expect(answers().place?.weatherFile).toEqual(fromFile.weatherFile);
    answer(edit);
    expect(answers().place?.weatherFile).toBeUndefined();
    expect(answers().place?.monthlyRelativeHumidity_pct).toBeDefined();
    actor.send({ type: 'undo' });
    expect(answers().place).toMatchObject({
      monthlyTemperature_C: fromFile.monthlyTemperature_C,
      weatherFile: fromFile.weatherFile,
    });
  });

  it('that are typed as they were leave it, and so do other answers of the place', () => {
    const { answer, answers } = begun();
    answer({ 'place.monthlyTemperature_C': [...fromFile.monthlyTemperature_C] });
    answer({ 'place.designTemperature_C': -21, 'place.elevation_m': 900 });
    expect(answers().place?.weatherFile).toEqual(fromFile.weatherFile);
  });

  it('a file without its months, as an old project may hold it, is left out of the case', () => {
    const reading = caseOf({ place: { zone: '4A', weatherFile: fromFile.weatherFile } });
    expect(reading).toEqual({ ok: true, value: { overdeck: 1, place: { zone: '4A' } } });
  });
});

import { describe, expect, it } from 'vitest';
import type { Case } from '../../src/case/case.ts';
import { zoneOf } from '../../src/case/place.ts';
import { allCounties, type County } from '../../src/catalog/counties.ts';
import {
  allPlaces,
  isMountainStation,
  placeById,
  placesInCounty,
  representativePlace,
} from '../../src/catalog/places.ts';
import type { Climate } from '../../src/evaluation/evaluation.ts';
import { climateOf } from '../../src/roof/site.ts';
import { coldMonths_C } from '../support/roofs.ts';

const climate = (place: Case['place'], edition?: '2018' | '2021'): Climate => {
  const given: Case = { overdeck: 1, place, ...(edition === undefined ? {} : { codes: { edition } }) };
  return climateOf(given, zoneOf(given));
};
const twelve = (value: number): number[] => Array.from({ length: 12 }, () => value);
const mean = (months: readonly number[]): number => months.reduce((sum, t) => sum + t, 0) / months.length;
const coldest = (months: readonly number[]): number => mean([...months].sort((a, b) => a - b).slice(0, 3));
const countyWhere = (holds: (county: County) => boolean): County => {
  const found = allCounties().find(holds);
  if (!found) throw new RangeError('no such county');
  return found;
};
const ordinary = (fips: string) => placesInCounty(fips).filter((place) => !isMountainStation(place));

describe('a listed place', () => {
  const duluth = climate({ id: 'us-mn-duluth' });

  it('has its own months, design temperature, notes and source', () => {
    const row = placeById('us-mn-duluth');
    expect(duluth).toMatchObject({
      placeName: 'Duluth, MN',
      basis: 'place',
      zone: '7',
      monthlyTemperature_C: row?.monthlyMean_C,
      designTemperature_C: row?.heatingDesignStation_C,
      sources: [row?.source],
    });
    expect(duluth.notes).toContain('station-county');
    expect(duluth.coldestMean_C).toBeCloseTo(coldest(row?.monthlyMean_C ?? []), 9);
  });

  it('takes 80 % where its table has no humidity, and notes it', () => {
    const row = allPlaces().find((place) => place.monthlyRelativeHumidity_pct === null);
    const bare = climate({ id: row?.id ?? '', zone: '3C' });
    expect(bare.monthlyRelativeHumidity_pct).toEqual(twelve(80));
    expect(bare.notes).toContain('humidity-missing');
  });

  it('gives way to the humidity that the user knows, without the notes on the table’s', () => {
    const own = climate({ id: 'us-mn-duluth', monthlyRelativeHumidity_pct: twelve(55) });
    expect(own.monthlyRelativeHumidity_pct).toEqual(twelve(55));
    expect(own.monthlyTemperature_C).toEqual(duluth.monthlyTemperature_C);
    expect(own.notes.filter((note) => note.startsWith('humidity'))).toEqual([]);
    expect(own.sources).toEqual([...duluth.sources, 'USER']);
  });

  it('gives way to the design temperature that the user knows', () => {
    expect(climate({ id: 'us-mn-duluth', designTemperature_C: -33 }).designTemperature_C).toBe(-33);
  });
});

describe('a county', () => {
  it('with a station of its own: the coldest of them', () => {
    const county = countyWhere(({ fips }) => ordinary(fips).length > 1);
    const stations = ordinary(county.fips);
    const found = climate({ countyFips: county.fips });
    expect(found.basis).toBe('county');
    expect(found.coldestMean_C).toBeCloseTo(
      Math.min(...stations.map(({ monthlyMean_C }) => coldest(monthlyMean_C))),
      9,
    );
    expect(found.placeName).toContain(`${county.name}, ${county.state} (climate of `);
  });

  it('without one: the coldest place of its zone in the state', () => {
    const near = ({ state, zone }: County) =>
      allPlaces().filter(
        (place) => place.region === state && place.zone === zone && !isMountainStation(place),
      );
    const county = countyWhere((one) => placesInCounty(one.fips).length === 0 && near(one).length > 2);
    expect(climate({ countyFips: county.fips }).coldestMean_C).toBeCloseTo(
      Math.min(...near(county).map(({ monthlyMean_C }) => coldest(monthlyMean_C))),
      9,
    );
  });

  it('without any in the state: the stand-in of its zone', () => {
    const county = countyWhere(
      ({ state, zone }) => !allPlaces().some((place) => place.region === state && place.zone === zone),
    );
    const found = climate({ countyFips: county.fips });
    expect(found.basis).toBe('representative');
    expect(found.monthlyTemperature_C).toEqual(representativePlace(county.zone).monthlyMean_C);
    expect(found.placeName).toContain(county.name);
  });

  it('is never stood for by a mountain station', () => {
    const county = countyWhere(({ fips }) => placesInCounty(fips).length > 0 && ordinary(fips).length === 0);
    const names = placesInCounty(county.fips).map(({ name }) => name);
    for (const name of names) expect(climate({ countyFips: county.fips }).placeName).not.toContain(name);
  });

  it('has one climate, whatever code is in force: its zone changes between the maps, its weather does not', () => {
    const moved = allCounties().filter(({ zone, olderZone }) => zone !== olderZone);
    expect(moved.length).toBeGreaterThan(100);
    for (const { fips } of moved) {
      const [older, later] = [climate({ countyFips: fips }, '2018'), climate({ countyFips: fips }, '2021')];
      expect(older.zone).not.toBe(later.zone);
      expect(older.monthlyTemperature_C).toEqual(later.monthlyTemperature_C);
    }
  });
});

describe('a zone alone', () => {
  it('is stood for by a cold place of its kind, and the name says so', () => {
    const found = climate({ zone: '5A' });
    expect(found).toMatchObject({ basis: 'representative', zone: '5A', zoneBasis: 'given' });
    expect(found.monthlyTemperature_C).toEqual(representativePlace('5A').monthlyMean_C);
    expect(found.placeName).toMatch(/^zone 5A \(climate of .*a cold place of the zone\)$/);
    expect(climate({ zone: '5A', name: 'Hill farm' }).placeName).toMatch(/^Hill farm \(/);
  });
});

describe('months of one’s own', () => {
  const own = climate({ zone: '6A', monthlyTemperature_C: coldMonths_C });

  it('go before every table', () => {
    const known = climate({ id: 'us-mn-duluth', monthlyTemperature_C: coldMonths_C });
    expect(known).toMatchObject({
      basis: 'own',
      placeName: 'Duluth, MN',
      monthlyTemperature_C: coldMonths_C,
    });
    expect(own).toMatchObject({
      placeName: 'own climate, zone 6A',
      sources: ['USER'],
      designTemperature_C: null,
    });
    expect(climate({ zone: '6A', name: 'Farm', monthlyTemperature_C: coldMonths_C }).placeName).toBe('Farm');
  });

  it('without humidity take 80 % and say so', () => {
    expect(own.monthlyRelativeHumidity_pct).toEqual(twelve(80));
    expect(own.notes).toEqual(['humidity-missing']);
    const both = climate({
      zone: '6A',
      monthlyTemperature_C: coldMonths_C,
      monthlyRelativeHumidity_pct: twelve(60),
    });
    expect(both).toMatchObject({ monthlyRelativeHumidity_pct: twelve(60), notes: [], sources: ['USER'] });
  });

  it('find the three coldest months, −8, −6 and −4 °C', () => {
    expect([...own.coldestMonths].sort((a, b) => a - b)).toEqual([1, 2, 12]);
    expect(own.coldestMean_C).toBeCloseTo(-6, 12);
  });

  it('steady 8 °C is 10 K under the base of 18 °C for 365 days', () => {
    expect(climate({ zone: '6A', monthlyTemperature_C: twelve(8) }).heatingDegreeDays18_Cd).toBeCloseTo(
      3650,
      -1,
    );
  });
});

describe('months of a weather file', () => {
  /** Steady 8 °C: 10 K below 18 °C for 365 days. */
  const file = {
    name: 'field.epw',
    format: 'epw',
    station: 'Invented Field, MN, USA',
    dataSet: 'TEST',
    firstYear: 1991,
    lastYear: 2005,
    usable_h: 8760,
    heatingDegreeDays18_Cd: 3650,
    heatingDegreeDays18Extremes_Cd: 3600,
    coolingDegreeDays10_Cd: 0,
    coolingDegreeDays10Extremes_Cd: 20,
    designTemperature_C: -20,
    designBasis: 'quoted',
  } as const;
  const months = { monthlyTemperature_C: twelve(8), monthlyRelativeHumidity_pct: twelve(70) };

  it('say so, and bring degree days of their hours, by both conventions, and a design temperature', () => {
    expect(climate({ zone: '5A', ...months, weatherFile: file })).toMatchObject({
      placeName: 'Invented Field, MN, USA (weather file)',
      basis: 'weather-file',
      zone: '5A',
      degreeDaysBasis: 'hours',
      heatingDegreeDays18_Cd: 3650,
      heatingDegreeDays18Extremes_Cd: 3600,
      coolingDegreeDays10_Cd: 0,
      coolingDegreeDays10Extremes_Cd: 20,
      designTemperature_C: -20,
      monthlyRelativeHumidity_pct: twelve(70),
      zoneNumbersByThreshold: [5],
      zoneDoubt: null,
      notes: ['weather-file'],
      sources: ['WEATHER-FILE'],
    });
  });

  it('go before a listed place, whose county still decides the zone; the doubt is said', () => {
    const found = climate({ id: 'us-mn-duluth', ...months, weatherFile: file });
    expect(found).toMatchObject({ basis: 'weather-file', zone: '7', designTemperature_C: -20 });
    expect(found.zoneDoubt).toContain('make zone 5 by the thresholds, and zone 7 counts');
    expect(found.sources).toEqual(['WEATHER-FILE', 'ASHRAE-169-2013']);
  });

  it('leave a person their own name and design temperature', () => {
    const typical = { ...file, designBasis: 'typical-year' } as const;
    const own = { zone: '5A', name: 'Farm', designTemperature_C: -31 } as const;
    expect(climate({ ...own, ...months, weatherFile: typical })).toMatchObject({
      placeName: 'Farm',
      designTemperature_C: -31,
      notes: ['weather-file'],
    });
    expect(climate({ zone: '5A', ...months, weatherFile: typical }).notes).toEqual([
      'weather-file',
      'weather-file-design',
    ]);
  });

  it('that were changed beside the noted degree days are noticed', () => {
    const changed = { ...months, monthlyTemperature_C: twelve(4) };
    expect(climate({ zone: '6A', ...changed, weatherFile: file }).notes).toContain('weather-file-odd');
  });

  it('without the entry of a file are a person’s own, with degree days from the means', () => {
    const own = climate({ zone: '5A', ...months });
    expect(own).toMatchObject({
      basis: 'own',
      degreeDaysBasis: 'monthly-means',
      heatingDegreeDays18Extremes_Cd: null,
      coolingDegreeDays10Extremes_Cd: null,
      sources: ['USER'],
    });
  });
});

describe('the thresholds beside the zone', () => {
  it('doubt months given by hand for a listed place', () => {
    const warm = climate({ id: 'us-mn-duluth', monthlyTemperature_C: twelve(15) });
    expect(warm.zone).toBe('7');
    expect(warm.zoneDoubt).toMatch(/zone 2 or 3|zone 3/);
    expect(warm.zoneDoubt).toContain('The county list or the zone you chose decides');
  });

  it('let months be that make the number of the zone', () => {
    const row = placeById('us-mn-duluth');
    expect(
      climate({ id: 'us-mn-duluth', monthlyTemperature_C: [...(row?.monthlyMean_C ?? [])] }).zoneDoubt,
    ).toBeNull();
  });

  it('are never raised against the months of the tables themselves', () => {
    for (const { id, zone } of allPlaces()) {
      if (zone !== null) expect(climate({ id }).zoneDoubt).toBeNull();
    }
  });
});

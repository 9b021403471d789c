import { describe, expect, it } from 'vitest';
import type { Case } from '../../src/case/case.ts';
import { placeFaults, standingOf, zoneOf } from '../../src/case/place.ts';
import { allCounties } from '../../src/catalog/counties.ts';
import { allPlaces, cautiousZone } from '../../src/catalog/places.ts';

const faults = (place: Case['place']) => placeFaults({ place });
const zone = (place: Case['place'], edition?: '2015' | '2018' | '2021' | '2024') =>
  zoneOf({ overdeck: 1, place, ...(edition === undefined ? {} : { codes: { edition } }) });

describe('faults of a place', () => {
  it('none for a listed place, a listed county, a zone', () => {
    expect([
      ...faults({ id: 'us-mn-duluth' }),
      ...faults({ countyFips: '50007' }),
      ...faults({ zone: '5A' }),
    ]).toEqual([]);
  });

  it('names both an unknown place and an unknown county, with what is allowed', () => {
    expect(faults({ id: 'us-mn-nowhere', countyFips: '99999' })).toEqual([
      { path: 'place.id', message: expect.stringMatching(/not a listed place.*us-mn-duluth/) as string },
      { path: 'place.countyFips', message: expect.stringMatching(/not a listed county/) as string },
    ]);
  });

  it('an unknown place stays a fault when the zone is given', () => {
    expect(faults({ id: 'nowhere', zone: '5A' })).toHaveLength(1);
  });

  it('every listed place has a zone to be had', () => {
    expect(allPlaces().flatMap(({ id }) => faults({ id }))).toEqual([]);
  });
});

describe('the zone', () => {
  it('given goes before county and place', () => {
    expect(zone({ zone: '3C', countyFips: '50007', id: 'us-mn-duluth' })).toEqual({
      zone: '3C',
      basis: 'given',
    });
  });

  it('of the county goes before that of the place', () => {
    const found = zone({ countyFips: '12086', id: 'us-mn-duluth' });
    expect(found.zone).toBe('1A');
    expect(found.basis).toMatch(/^county list, Miami-Dade, FL, map of the 2021 edition$/);
  });

  it('follows the map of the edition: the older one for 2015 and 2018, the newer one for 2021 and 2024', () => {
    const moved = allCounties().find((county) => county.zone !== county.olderZone);
    const at = (edition: '2015' | '2018' | '2021' | '2024') =>
      zone({ countyFips: moved?.fips ?? '' }, edition).zone;
    expect([at('2015'), at('2018')]).toEqual([moved?.olderZone, moved?.olderZone]);
    expect([at('2021'), at('2024')]).toEqual([moved?.zone, moved?.zone]);
    expect(zone({ countyFips: moved?.fips ?? '' }).zone).toBe(moved?.zone);
  });

  it('of a place is its county’s', () => {
    expect(zone({ id: 'us-mn-duluth' })).toEqual({
      zone: '7',
      basis: 'county of the weather station, St. Louis',
    });
  });

  it('of a place with a number only is the coldest number, humid, to be confirmed', () => {
    const numbered = allPlaces().find((place) => place.zone === null && place.zoneNumberOnly !== null);
    const found = zone({ id: numbered?.id ?? '' });
    expect(found.zone).toBe(numbered === undefined ? undefined : cautiousZone(numbered));
    expect(found.basis).toMatch(/confirm/);
  });

  it('is refused without any: ask for faults first', () => {
    expect(() => zone({})).toThrow(RangeError);
    expect(() => zone({ id: 'nowhere' })).toThrow(/no zone, county or listed place/);
  });
});

describe('what a case stands on', () => {
  it('is the listed place and county it names', () => {
    expect(standingOf({ place: { id: 'us-mn-duluth', countyFips: '50007' } })).toMatchObject({
      place: { name: 'Duluth' },
      county: { name: 'Chittenden' },
    });
    expect(standingOf({ place: { zone: '5A' } })).toEqual({ place: undefined, county: undefined });
  });
});

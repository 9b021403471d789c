/**
 * Places and counties. Three-coldest-month means: figures published apart from the table's own rows
 * (computed 2026-11 from the federal normals 1991-2020, tolerance 0.01 K: the digits given).
 */
import { describe, expect, it } from 'vitest';
import { allCounties, countyByFips, countyLabel, searchCounties } from '../../src/catalog/counties.ts';
import { notesOf } from '../../src/catalog/placeNotes.ts';
import {
  allPlaces,
  cautiousZone,
  isMountainStation,
  placeById,
  placeLabel,
  placesInCounty,
  possibleZones,
  representativePlace,
  searchPlaces,
  type Place,
} from '../../src/catalog/places.ts';
import { zones, type Zone } from '../../src/catalog/sets.ts';
import {
  canadianZones,
  moistureRules,
  zoneForEdition,
  zoneInWords,
  zoneRow,
  zonesWithNumber,
  zoneThresholds,
} from '../../src/catalog/zones.ts';
import { threeColdestMonths } from '../../src/physics/climate.ts';

const place = (query: string): Place => {
  const [found] = searchPlaces(query, 1);
  if (!found) throw new Error(`no place for ${query}`);
  return found;
};
const coldest_C = (of: Place): number => threeColdestMonths(of.monthlyMean_C).mean_C;

describe('the list', () => {
  it('holds 260 places of the United States and 21 of Canada', () => {
    expect(allPlaces().filter((row) => row.country === 'US')).toHaveLength(260);
    expect(allPlaces().filter((row) => row.country === 'CA')).toHaveLength(21);
  });

  it.each([
    ['Fairbanks, AK', '8', -20.1],
    ['International Falls, MN', '7', -12.9],
    ['Anchorage, AK', '7', -7.1],
    ['Duluth, MN', '7', -9.7],
    ['Helena, MT', '6B', -4.17],
    ['Minneapolis-St. Paul, MN', '6A', -6.9],
    ['Burlington, VT', '6A', -4.47],
    ['Chicago, IL', '5A', -2.13],
    ['Denver, CO', '5B', 0.27],
    ['Boston, MA', '5A', 0.27],
    ['Baltimore, MD', '4A', 2.53],
    ['Seattle, WA', '4C', 6.1],
    ['Portland, OR', '4C', 5.83],
    ['Atlanta, GA', '3A', 8.27],
    ['Las Vegas, NV', '3B', 10.2],
    ['Houston, TX', '2A', 13.13],
    ['Phoenix, AZ', '2B', 14.17],
    ['Miami, FL', '1A', 21.2],
  ] as const)('%s is in zone %s with %d °C in its three coldest months', (query, zone, expected_C) => {
    const found = place(query);
    expect(found.zone).toBe(zone);
    expect(Math.abs(coldest_C(found) - expected_C)).toBeLessThan(0.0051);
  });

  // ASHRAE 2009 station values and EPA 2015 county limits, both seen.
  it.each([
    ['Duluth, MN', -25.4, -21],
    ['Denver, CO', -14, 3],
    ['Phoenix, AZ', 5.2, 24],
  ] as const)('%s: station %d °C, county limit %d °F', (query, station_C, county_F) => {
    const found = place(query);
    expect(found.heatingDesignStation_C).toBe(station_C);
    expect(found.heatingDesignCounty_C).toBeCloseTo((county_F - 32) / 1.8, 1);
  });
});

describe('search', () => {
  it.each([
    ['burlington', 'Burlington, VT'],
    ['PORTLAND OR', 'Portland, OR'],
    ['portland, maine', 'Portland, ME'],
    ['québec', 'Quebec City, QC'],
    ['St Johns', "St. John's, NL"],
    ['saint john', 'Saint John, NB'],
  ])('%s finds %s first', (query, label) => {
    expect(placeLabel(place(query))).toBe(label);
  });

  it('a state after the comma is not a city', () => {
    expect(searchPlaces(', vt').map(placeLabel)).toEqual(['Burlington, VT']);
    expect(searchPlaces('washington, or')).toEqual([]);
  });

  it('finds nothing for nothing and for nonsense', () => {
    expect(searchPlaces('')).toEqual([]);
    expect(searchPlaces('zzzz')).toEqual([]);
    expect(placeById('nowhere')).toBeUndefined();
  });

  it('finds the places of a county, where there are any', () => {
    expect(placesInCounty('25025').map(placeLabel)).toEqual(['Boston, MA']);
    expect(placesInCounty('01001')).toEqual([]);
  });

  it('finds counties by name, state, accent-free spelling and number', () => {
    expect(searchCounties('King County, WA').map(countyLabel)[0]).toBe('King, WA');
    expect(searchCounties('dona ana').map(countyLabel)).toEqual(['Doña Ana, NM']);
    expect(searchCounties('saint louis, minnesota').map(countyLabel)).toEqual(['St. Louis, MN']);
    expect(searchCounties('53033').map(countyLabel)).toEqual(['King, WA']);
  });
});

describe('zones of places', () => {
  it('a Canadian place without a letter has every letter of its number, and the humid one to be safe', () => {
    const ottawa = place('Ottawa, ON');
    expect(ottawa.zone).toBeNull();
    expect(possibleZones(ottawa)).toEqual(['6A', '6B']);
    expect(cautiousZone(ottawa)).toBe('6A');
  });

  it('a zone left open takes the colder number', () => {
    expect(cautiousZone(place('Vancouver, BC'))).toBe('5A');
    expect(cautiousZone(place('Whitehorse, YT'))).toBe('8');
  });

  it('every place has at least one possible zone', () => {
    for (const row of allPlaces()) expect(possibleZones(row).length).toBeGreaterThan(0);
    expect(zonesWithNumber('4')).toEqual(['4A', '4B', '4C']);
  });

  it('the editions before 2021 use the older map', () => {
    const bethel = placeById('us-ak-bethel');
    if (!bethel) throw new Error('Bethel is gone');
    expect(zoneForEdition(bethel, '2018')).toBe('8');
    expect(zoneForEdition(bethel, '2021')).toBe('7');
  });
});

describe('zone definitions', () => {
  it('the later form starts at zone 0 above 6000 cooling degree days, the earlier one at zone 1 above 5000', () => {
    expect(zoneThresholds('later')[0]).toMatchObject({ zone: '0', coolingDegreeDays10Above_Cd: 6000 });
    expect(zoneThresholds('earlier')[0]).toMatchObject({ zone: '1', coolingDegreeDays10Above_Cd: 5000 });
  });

  it('the Canadian form splits zone 7 at 6000 heating degree days', () => {
    expect(canadianZones().find((row) => row.nbcZone === '7B')).toMatchObject({
      from_Cd: 6000,
      below_Cd: 7000,
    });
  });

  it('a zone can be said in words, and moisture letters are explained', () => {
    expect(zoneInWords('4C')).toBe('4C: mixed, marine');
    expect(moistureRules().map((row) => row.id)).toEqual(['marine', 'dry', 'humid', 'no-letter']);
  });
});

describe('the representative place of a zone', () => {
  const candidates = (zone: Zone): Place[] =>
    allPlaces().filter(
      (row) =>
        row.country === 'US' &&
        row.zone === zone &&
        !isMountainStation(row) &&
        row.monthlyRelativeHumidity_pct !== null &&
        !row.monthlyRelativeHumidity_pct.includes(null),
    );

  it('is the 25th percentile, nearest rank, of the three coldest months from the coldest', () => {
    for (const zone of zones) {
      const from = zoneRow(zone).standIn ?? zone;
      const means = candidates(from)
        .map(coldest_C)
        .sort((a, b) => a - b);
      const rank = Math.ceil(0.25 * means.length) - 1;
      expect(coldest_C(representativePlace(zone))).toBeCloseTo(means[rank] ?? NaN, 9);
    }
  });

  it('stands in only where the list has no place of the zone', () => {
    for (const zone of zones) {
      expect(zoneRow(zone).standIn === null).toBe(candidates(zone).length > 0);
    }
  });
});

describe('notes', () => {
  const codes = (of: Place): string[] => notesOf(of).map((note) => note.id);

  it.each(['Mount Washington, NH', 'Sexton Summit, OR', 'Blue Canyon, CA'])(
    '%s is a mountain station and stands for no zone',
    (query) => {
      const found = place(query);
      expect(codes(found)).toContain('mountain-station');
      expect(zones.map((zone) => representativePlace(zone).id)).not.toContain(found.id);
    },
  );

  it('says where the county limit is colder than the station, and only there', () => {
    expect(codes(place('Phoenix, AZ'))).toContain('county-limit-colder');
    expect(codes(place('Buffalo, NY'))).not.toContain('county-limit-colder');
  });

  it('says how humidity was read, and where it is missing', () => {
    expect(codes(place('Boston, MA'))).toContain('humidity-two-readings');
    expect(codes(place('Calgary, AB'))).toContain('humidity-missing');
    expect(codes(place('Edmonton, AB'))).toContain('humidity-missing');
    expect(codes(place('Boston, MA'))).not.toContain('humidity-missing');
  });
});

describe('counties', () => {
  it('number 3,235', () => {
    expect(allCounties()).toHaveLength(3235);
  });

  // The published pair of maps differs in 373 rows. In one of them, Crawford in Iowa, a second list of the
  // older map says 5A instead of 6A, and the table follows that one.
  it('differ between the two maps in 373 rows, one of which a second list takes back', () => {
    const differ = allCounties().filter((row) => row.zone !== row.olderZone);
    const disputed = allCounties().filter((row) => row.note?.includes('disagree'));
    expect(disputed.map(countyLabel)).toEqual(['Crawford, IA']);
    expect(differ).not.toContain(disputed[0]);
    expect(differ.length + disputed.length).toBe(373);
  });

  it('carry the warm-humid flag of the older map: 86 in 1A, 222 in 2A, 14 in 2B, 194 in 3A', () => {
    const warm = (zone: Zone): number =>
      allCounties().filter((row) => row.olderZone === zone && row.isWarmHumid === true).length;
    expect(warm('2A')).toBe(222);
    expect(warm('3A')).toBe(194);
    expect(warm('2B')).toBe(14);
    expect(warm('1A')).toBe(86);
  });

  it('give King County 4C and Cook County 5A', () => {
    expect(countyByFips('53033')).toMatchObject({ name: 'King', zone: '4C', stateName: 'Washington' });
    expect(countyByFips('17031')).toMatchObject({ name: 'Cook', zone: '5A' });
    expect(countyByFips('99999')).toBeUndefined();
  });
});

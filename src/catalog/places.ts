/** Typed access to content/tables/places.json. In a module of its own, so that the app can load it late. */
import type * as v from 'valibot';
import json from '../../content/tables/places.json' with { type: 'json' };
import { regionName } from './regions.ts';
import type { placeRow } from './placeSchemas.ts';
import { searchWords, wordsOf, type Searchable } from './search.ts';
import type { Known, Zone } from './sets.ts';
import { zoneRow, zonesWithNumber } from './zones.ts';

export interface Place {
  readonly id: string;
  readonly name: string;
  /** Two letters of the state or province, and its full name. */
  readonly region: string;
  readonly regionName: string;
  readonly country: 'US' | 'CA';
  readonly latitude_deg: number;
  readonly longitude_deg: number;
  readonly elevation_m: number | null;
  readonly county: string | null;
  readonly fips: string | null;
  /** Zone of the 2021 map, and of the 2006-2018 map; null where only a number is known. */
  readonly zone: Zone | null;
  readonly olderZone: Zone | null;
  readonly zoneNumberOnly: string | null;
  readonly nbcZone: string | null;
  /** January to December. */
  readonly monthlyMean_C: readonly number[];
  readonly monthlyRelativeHumidity_pct: readonly (number | null)[] | null;
  /** 99 % heating temperature: lowest station of the county, and the station itself. */
  readonly heatingDesignCounty_C: number | null;
  readonly heatingDesignStation_C: number | null;
  readonly heatingDegreeDays18_Cd: number | null;
  readonly groundSnow_Pa: number | null;
  readonly groundSnowKnown: Known | null;
  readonly source: string;
  /** Codes of content/tables/place-notes.json listed with the place; see notesOf for all that apply. */
  readonly notes: readonly string[];
}

/** Rows as the schema has them; checkTables holds the file to it. */
const rows = json.rows as unknown as v.InferOutput<typeof placeRow>[];

const places: readonly Place[] = rows.map((row) => ({
  id: row[0],
  name: row[1],
  region: row[2],
  regionName: regionName(row[2]),
  country: row[3],
  latitude_deg: row[4],
  longitude_deg: row[5],
  elevation_m: row[6],
  county: row[7],
  fips: row[8],
  zone: row[9],
  olderZone: row[10],
  zoneNumberOnly: row[11],
  nbcZone: row[12],
  monthlyMean_C: row[13],
  monthlyRelativeHumidity_pct: row[14],
  heatingDesignCounty_C: row[15],
  heatingDesignStation_C: row[16],
  heatingDegreeDays18_Cd: row[17],
  groundSnow_Pa: row[18],
  groundSnowKnown: row[19],
  source: row[20],
  notes: row[21],
}));

const byId = new Map(places.map((place) => [place.id, place]));

const searchable: readonly Searchable<Place>[] = places.map((place) => ({
  item: place,
  name: wordsOf(place.name),
  region: [place.region.toLowerCase(), ...wordsOf(place.regionName)],
  more: wordsOf(place.county ?? ''),
}));

export const allPlaces = (): readonly Place[] => places;

export const placeById = (id: string): Place | undefined => byId.get(id);

/** Places whose words the query holds: `burlington`, `Burlington, VT`, `quebec`, `st johns`. Best first. */
export const searchPlaces = (query: string, limit = 12): Place[] => searchWords(searchable, query, limit);

/** Listed places whose station lies in a county; often none, then representativePlace of the zone. */
export const placesInCounty = (fips: string): Place[] => places.filter((place) => place.fips === fips);

/** `Burlington, VT`. */
export const placeLabel = (place: Place): string => `${place.name}, ${place.region}`;

export const isMountainStation = (place: Place): boolean => place.notes.includes('mountain-station');

/** Every zone that a place may have: one where the map says so, several where only a number is known. */
export function possibleZones(place: Place): Zone[] {
  if (place.zone !== null) return [place.zone];
  return (place.zoneNumberOnly ?? '')
    .split(' or ')
    .flatMap((number) => (number === '' ? [] : zonesWithNumber(number)));
}

/** The zone to work with when nobody knows better: the coldest possible number, humid. Our judgement. */
export function cautiousZone(place: Place): Zone | undefined {
  const possible = possibleZones(place);
  const coldest = possible[possible.length - 1];
  return possible.find((zone) => coldest !== undefined && zone.charAt(0) === coldest.charAt(0));
}

/**
 * The place that stands for a zone when only the zone is known: a cold one of its kind (25th percentile of
 * the mean of the three coldest months among US places with full humidity, mountain stations left out).
 * Where no place of the zone is listed, the stand-in of zones.json. @throws RangeError on a broken table.
 */
export function representativePlace(zone: Zone): Place {
  const place = byId.get(zoneRow(zone).representative);
  if (!place) throw new RangeError(`zones.json names no listed place for zone ${zone}`);
  return place;
}

/** Which place of the tables a case stands on, and which climate zone counts. */
import { countyByFips, type County } from '../catalog/counties.ts';
import { cautiousZone, placeById, type Place } from '../catalog/places.ts';
import { editions, type Edition, type Zone } from '../catalog/sets.ts';
import { zoneForEdition } from '../catalog/zones.ts';
import type { Case } from './case.ts';

export interface Fault {
  readonly path: string;
  readonly message: string;
}

/** Faults of a place that the shape alone cannot show: an id or county that no table lists, no zone to be had. */
export function placeFaults({ place }: Pick<Case, 'place'>): Fault[] {
  const faults: Fault[] = [];
  const listed = place.id === undefined ? undefined : placeById(place.id);
  const county = place.countyFips === undefined ? undefined : countyByFips(place.countyFips);
  if (place.id !== undefined && listed === undefined)
    faults.push({
      path: 'place.id',
      message: `"${place.id}" is not a listed place; ids are in content/tables/places.json (for example us-mn-duluth)`,
    });
  if (place.countyFips !== undefined && county === undefined)
    faults.push({
      path: 'place.countyFips',
      message: `"${place.countyFips}" is not a listed county; five digits of content/tables/counties.json`,
    });
  if (faults.length === 0 && place.zone === undefined && county === undefined && listed !== undefined)
    if (listed.zone === null && cautiousZone(listed) === undefined)
      faults.push({ path: 'place.zone', message: 'is needed: the place has no zone in the tables' });
  return faults;
}

export interface ZoneFinding {
  readonly zone: Zone;
  /** How it was found, in words. */
  readonly basis: string;
}

/** The newest edition stands for "not sure", as in content/tables/defaults.json. */
const NEWEST_MAP: Edition = editions[2];

/**
 * The climate zone of a case: the one given, else the county's, else the place's.
 *
 * @param given  [-] a valid case without placeFaults
 * @returns      [-] zone of the map that goes with the code edition, and how it was found
 * @throws       RangeError when the case has place faults: ask placeFaults first
 */
export function zoneOf(given: Case): ZoneFinding {
  const { place } = given;
  const edition = given.codes?.edition ?? NEWEST_MAP;
  if (place.zone !== undefined) return { zone: place.zone, basis: 'given' };
  const county = place.countyFips === undefined ? undefined : countyByFips(place.countyFips);
  if (county !== undefined)
    return {
      zone: zoneForEdition(county, edition),
      basis: `county list, ${county.name}, ${county.state}, map of the ${edition} edition`,
    };
  const listed = place.id === undefined ? undefined : placeById(place.id);
  if (listed === undefined) throw new RangeError('place: no zone, county or listed place');
  const mapped = zoneForEdition(listed, edition);
  if (mapped !== null)
    return { zone: mapped, basis: `county of the weather station, ${listed.county ?? ''}` };
  const cautious = cautiousZone(listed);
  if (cautious === undefined) throw new RangeError(`place: ${listed.id} has no zone`);
  return {
    zone: cautious,
    basis: 'number computed from degree days, humid taken; confirm with the authority',
  };
}

export interface Standing {
  readonly place: Place | undefined;
  readonly county: County | undefined;
}

/** The listed place and county that a case names. */
export const standingOf = ({ place }: Pick<Case, 'place'>): Standing => ({
  place: place.id === undefined ? undefined : placeById(place.id),
  county: place.countyFips === undefined ? undefined : countyByFips(place.countyFips),
});

/** The climate zone that the answers settle, and what the tables say about their county and place. */
import { countyByFips, countyLabel } from '../catalog/counties.ts';
import { placeById, placeLabel, possibleZones } from '../catalog/places.ts';
import { editions, type Edition, type Zone } from '../catalog/sets.ts';
import { zoneForEdition } from '../catalog/zones.ts';
import type { Answers } from './answers.ts';

/** Edition taken while the question is open, as in content/tables/defaults.json. */
const OPEN_EDITION: Edition = editions[2];
const editionOf = (answers: Answers): Edition => answers.codes?.edition ?? OPEN_EDITION;

export interface MappedZone {
  /** `Chittenden County, VT`. */
  readonly name: string;
  /** One zone where the map says so; several, or none, where it does not. */
  readonly zones: readonly Zone[];
}

/** What the county list says, or else the table of places; undefined when the answers name neither. */
export function mappedZone(answers: Answers): MappedZone | undefined {
  const { place } = answers;
  const county = place?.countyFips === undefined ? undefined : countyByFips(place.countyFips);
  if (county !== undefined) {
    return { name: countyLabel(county), zones: [zoneForEdition(county, editionOf(answers))] };
  }
  const listed = place?.id === undefined ? undefined : placeById(place.id);
  if (listed === undefined) return undefined;
  const zone = zoneForEdition(listed, editionOf(answers));
  return { name: placeLabel(listed), zones: zone === null ? possibleZones(listed) : [zone] };
}

/** The zone that counts: the one given, else that of the map where it names exactly one. */
export function knownZone(answers: Answers): Zone | undefined {
  if (answers.place?.zone !== undefined) return answers.place.zone;
  const zones = mappedZone(answers)?.zones ?? [];
  return zones.length === 1 ? zones[0] : undefined;
}

/** Climate zones from content/tables/zones.json: names, stand-in places, thresholds of both map editions. */
import * as v from 'valibot';
import json from '../../content/tables/zones.json' with { type: 'json' };
import { zonesTable } from './placeSchemas.ts';
import { zones, type Edition, type Zone } from './sets.ts';

const table = v.parse(zonesTable, json);

export type ZoneRow = (typeof table)['rows'][number];
export type ZoneThreshold = (typeof table)['thresholdsLater'][number];

/** The row of a zone. @throws RangeError when the table lacks it. */
export function zoneRow(zone: Zone): ZoneRow {
  const found = table.rows.find((row) => row.zone === zone);
  if (!found) throw new RangeError(`no zone ${zone} in zones.json`);
  return found;
}

/** A zone in words: `5A: cool, humid`. */
export const zoneInWords = (zone: Zone): string => `${zone}: ${zoneRow(zone).name}`;

/** Degree-day limits: the later map belongs to editions 2021 and 2024, the earlier one to 2015 and 2018. */
export const zoneThresholds = (map: 'later' | 'earlier'): readonly ZoneThreshold[] =>
  map === 'later' ? table.thresholdsLater : table.thresholdsEarlier;

export const moistureRules = (): typeof table.moisture => table.moisture;
export const canadianZones = (): typeof table.canada => table.canada;

/** Every zone that starts with a number: `5` gives 5A, 5B, 5C. */
export const zonesWithNumber = (number: string): Zone[] => zones.filter((zone) => zone.startsWith(number));

export const usesOlderMap = (edition: Edition): boolean => edition === '2015' || edition === '2018';

/** The zone of a place or county under the map that an edition goes with. */
export const zoneForEdition = <Z extends Zone | null>(
  where: { zone: Z; olderZone: Z },
  edition: Edition,
): Z => (usesOlderMap(edition) ? where.olderZone : where.zone);

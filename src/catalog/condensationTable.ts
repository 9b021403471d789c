/** Least R above the deck from content/tables/condensation-control.json. */
import * as v from 'valibot';
import json from '../../content/tables/condensation-control.json' with { type: 'json' };
import { celsiusFromFahrenheit, rsiFromR } from '../units.ts';
import { notCovered, type NotCovered } from './notCovered.ts';
import { condensationTable } from './schemas.ts';
import type { CoveringId, Edition, Known, Zone } from './sets.ts';

const table = v.parse(condensationTable, json);

export interface AboveDeckMinimum {
  readonly kind: 'minimum';
  readonly resistance_m2K_W: number;
  /** True when a row for this covering alone took the place of the general one. */
  readonly isCoveringException: boolean;
  readonly source: string;
  readonly place: string;
  readonly known: Known;
  readonly note: string;
}

/** Least R above the deck of an unvented roof; a row for the covering goes before the general one. */
export function aboveDeckMinimum(
  edition: Edition,
  zone: Zone,
  covering?: CoveringId,
): AboveDeckMinimum | NotCovered {
  const rows = table.rows.filter((row) => row.edition === edition && row.zones.includes(zone));
  const special = rows.find((row) => covering !== undefined && row.coverings?.includes(covering));
  const row = special ?? rows.find((each) => each.coverings === undefined);
  if (!row)
    return notCovered(`no above-deck value for edition ${edition}, zone ${zone}`, 'the code official');
  return {
    kind: 'minimum',
    resistance_m2K_W: rsiFromR(row.minimum_R),
    isCoveringException: row === special,
    source: row.source,
    place: row.place,
    known: row.known,
    note: row.note,
  };
}

/** Indoor air and deck limit of the temperature rule (68 °F and 45 °F), in °C, with their source. */
export const temperatureRule = {
  indoor_C: celsiusFromFahrenheit(table.temperatureRule.indoor_F),
  deckLimit_C: celsiusFromFahrenheit(table.temperatureRule.deckLimit_F),
  source: table.temperatureRule.source,
  place: table.temperatureRule.place,
  known: table.temperatureRule.known,
  note: table.temperatureRule.note,
} as const;

/** The conditions that an unvented roof must meet all together, in own words. */
export const unventedConditions = (): typeof table.conditions => table.conditions;
export const condensationCautions = (): typeof table.cautions => table.cautions;

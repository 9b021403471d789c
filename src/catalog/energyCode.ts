/** Ceiling requirements of the energy code from content/tables/energy-code.json. */
import * as v from 'valibot';
import json from '../../content/tables/energy-code.json' with { type: 'json' };
import { rsiFromR, siUFromIpU, squareMetersFromSquareFeet } from '../units.ts';
import { notCovered, type NotCovered } from './notCovered.ts';
import { energyCodeTable } from './schemas.ts';
import type { Edition, Known, Zone } from './sets.ts';

const table = v.parse(energyCodeTable, json);

export interface CeilingRequirement {
  readonly kind: 'requirement';
  readonly edition: Edition;
  readonly zone: Zone;
  readonly resistance_m2K_W: number;
  readonly transmittance_W_m2K: number;
  readonly source: string;
  readonly place: string;
  /** How the R is known, and how the U is known. */
  readonly known: Known;
  readonly knownU: Known;
  readonly note: string;
}

/** Least ceiling R and greatest ceiling U of one edition and zone, converted to SI. */
export function ceilingRequirement(edition: Edition, zone: Zone): CeilingRequirement | NotCovered {
  const row = table.rows.find((each) => each.edition === edition && each.zones.includes(zone));
  if (!row) return notCovered(`no ceiling value for edition ${edition}, zone ${zone}`, 'the code official');
  return {
    kind: 'requirement',
    edition,
    zone,
    resistance_m2K_W: rsiFromR(row.ceiling_R),
    transmittance_W_m2K: siUFromIpU(row.ceiling_U),
    source: row.source,
    place: row.place,
    known: row.known,
    knownU: row.knownU,
    note: row.note,
  };
}

export interface CeilingException {
  readonly id: string;
  readonly resistance_m2K_W: number;
  /** The table value that this one may stand for; any when absent. */
  readonly insteadOf_m2K_W: number | undefined;
  readonly areaCap_m2: number | undefined;
  readonly areaShare: number | undefined;
  readonly source: string;
  readonly place: string;
  readonly known: Known;
  readonly text: string;
}

/** The exceptions of an edition: full depth over the wall plate, and R-30 without an attic. */
export function ceilingExceptions(edition: Edition): CeilingException[] {
  return table.exceptions
    .filter((row) => row.editions.includes(edition))
    .map((row) => ({
      id: row.id,
      resistance_m2K_W: rsiFromR(row.accepted_R),
      insteadOf_m2K_W: row.insteadOf_R === undefined ? undefined : rsiFromR(row.insteadOf_R),
      areaCap_m2: row.areaCap_ft2 === undefined ? undefined : squareMetersFromSquareFeet(row.areaCap_ft2),
      areaShare: row.areaShare,
      source: row.source,
      place: row.place,
      known: row.known,
      text: row.text,
    }));
}

export const compliancePaths = (): typeof table.paths => table.paths;
export const ceilingRules = (): typeof table.rules => table.rules;

/** Effective roof resistance of the Canadian code for a cathedral roof, by its own zone. */
export function canadianCathedralRequirement(nbcZone: string): (typeof table.canada)[number] | NotCovered {
  return (
    table.canada.find((row) => row.nbcZone === nbcZone) ??
    notCovered(`no Canadian roof value for zone ${nbcZone}`, 'the authority having jurisdiction')
  );
}

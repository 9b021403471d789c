/** Every table of this folder as it lies in content/tables, with its schema: what checkTables goes through. */
import type * as v from 'valibot';
import condensation from '../../content/tables/condensation-control.json' with { type: 'json' };
import costs from '../../content/tables/costs.json' with { type: 'json' };
import counties from '../../content/tables/counties.json' with { type: 'json' };
import coverings from '../../content/tables/coverings.json' with { type: 'json' };
import dripEdge from '../../content/tables/drip-edge.json' with { type: 'json' };
import energyCode from '../../content/tables/energy-code.json' with { type: 'json' };
import iceBarrier from '../../content/tables/ice-barrier.json' with { type: 'json' };
import materials from '../../content/tables/materials.json' with { type: 'json' };
import placeNotes from '../../content/tables/place-notes.json' with { type: 'json' };
import places from '../../content/tables/places.json' with { type: 'json' };
import regions from '../../content/tables/regions.json' with { type: 'json' };
import sources from '../../content/tables/sources.json' with { type: 'json' };
import retarders from '../../content/tables/vapor-retarder-classes.json' with { type: 'json' };
import zones from '../../content/tables/zones.json' with { type: 'json' };
import * as placeSchemas from './placeSchemas.ts';
import * as schemas from './schemas.ts';

/** File name to its schema. */
export const tableSchemas = {
  'sources.json': schemas.sourcesTable,
  'materials.json': schemas.materialsTable,
  'energy-code.json': schemas.energyCodeTable,
  'condensation-control.json': schemas.condensationTable,
  'vapor-retarder-classes.json': schemas.vaporRetarderTable,
  'coverings.json': schemas.coveringsTable,
  'ice-barrier.json': schemas.iceBarrierTable,
  'drip-edge.json': schemas.dripEdgeTable,
  'costs.json': schemas.costsTable,
  'zones.json': placeSchemas.zonesTable,
  'regions.json': placeSchemas.regionsTable,
  'places.json': placeSchemas.placesTable,
  'place-notes.json': placeSchemas.placeNotesTable,
  'counties.json': placeSchemas.countiesTable,
} as const;

export type TableName = keyof typeof tableSchemas;
export type Tables = { [Name in TableName]: v.InferOutput<(typeof tableSchemas)[Name]> };

/** The tables as shipped, not yet checked. */
export const shippedTables: Readonly<Record<TableName, unknown>> = {
  'sources.json': sources,
  'materials.json': materials,
  'energy-code.json': energyCode,
  'condensation-control.json': condensation,
  'vapor-retarder-classes.json': retarders,
  'coverings.json': coverings,
  'ice-barrier.json': iceBarrier,
  'drip-edge.json': dripEdge,
  'costs.json': costs,
  'zones.json': zones,
  'regions.json': regions,
  'places.json': places,
  'place-notes.json': placeNotes,
  'counties.json': counties,
};

/** Rules that hold across rows and files of content/tables: what no schema of one value can see. */
import { derivedNoteIds } from './placeNotes.ts';
import { boards, coverings, editions, zones, type Edition, type Zone } from './sets.ts';
import type { Tables, TableName } from './tables.ts';

/** One fault of a table: where, which rule, and what to do. */
export interface Fault {
  readonly file: string;
  readonly path: string;
  readonly rule: string;
  readonly hint: string;
}

type Report = (file: TableName, path: string, rule: string, hint: string) => void;
export type Rule = (tables: Tables, report: Report) => void;

/** The ids that occur more than once. */
function repeated(ids: readonly string[]): string[] {
  const seen = new Set<string>();
  return ids.filter((id) => seen.size === seen.add(id).size);
}

const isAscending = (values: readonly number[]): boolean =>
  values.every((value, i) => i === 0 || value > (values[i - 1] ?? Infinity));

const SOURCE_KEYS: ReadonlySet<string> = new Set(['source', 'sources', 'weightSource']);

/** Every source id that a table names, with its path. */
export function namedSources(value: unknown, path = ''): { path: string; id: string }[] {
  if (Array.isArray(value)) return value.flatMap((each, i) => namedSources(each, `${path}[${i}]`));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => {
    const here = path === '' ? key : `${path}.${key}`;
    if (!SOURCE_KEYS.has(key)) return namedSources(each, here);
    return [each].flat().map((id) => ({ path: here, id: String(id) }));
  });
}

const sourcesExist: Rule = (tables, report) => {
  const ids = new Set(tables['sources.json'].rows.map((row) => row.id));
  for (const [file, table] of Object.entries(tables) as [TableName, unknown][]) {
    for (const { path, id } of namedSources(table)) {
      if (!ids.has(id)) report(file, path, 'source-exists', `add ${id} to sources.json or correct it`);
    }
  }
  const row = tables['places.json'].columns.indexOf('source');
  tables['places.json'].rows.forEach((place, i) => {
    const id = String(place[row]);
    if (!ids.has(id))
      report('places.json', `rows[${i}].source`, 'source-exists', `add ${id} to sources.json`);
  });
};

const idsDiffer: Rule = (tables, report) => {
  const lists: [TableName, string[]][] = [
    ['sources.json', tables['sources.json'].rows.map((row) => row.id)],
    ['materials.json', tables['materials.json'].rows.map((row) => row.id)],
    ['coverings.json', tables['coverings.json'].rows.map((row) => row.id)],
    ['drip-edge.json', tables['drip-edge.json'].rows.map((row) => row.id)],
    ['ice-barrier.json', tables['ice-barrier.json'].rows.map((row) => row.id)],
    ['costs.json', tables['costs.json'].rows.map((row) => row.id)],
    ['costs.json', tables['costs.json'].carbon.map((row) => row.id)],
    ['energy-code.json', tables['energy-code.json'].exceptions.map((row) => row.id)],
    ['zones.json', tables['zones.json'].rows.map((row) => row.zone)],
    ['regions.json', tables['regions.json'].rows.map((row) => row.id)],
    ['places.json', tables['places.json'].rows.map((row) => row[0])],
    ['place-notes.json', tables['place-notes.json'].rows.map((row) => row.id)],
    ['counties.json', tables['counties.json'].states.map((row) => row.state)],
    ['counties.json', tables['counties.json'].states.flatMap((row) => row.counties.map((each) => each[0]))],
  ];
  for (const [file, ids] of lists) {
    for (const id of repeated(ids)) report(file, id, 'id-once', `${id} occurs more than once`);
  }
};

/** Each edition and zone exactly once among rows without a covering of their own. */
function coverEach(
  file: TableName,
  rows: readonly { edition: Edition; zones: readonly Zone[] }[],
  report: Report,
): void {
  for (const edition of editions) {
    for (const zone of zones) {
      const hits = rows.filter((row) => row.edition === edition && row.zones.includes(zone)).length;
      if (hits !== 1) {
        report(
          file,
          `${edition} ${zone}`,
          'zone-once',
          `edition ${edition}, zone ${zone}: ${hits} rows, need 1`,
        );
      }
    }
  }
}

const zonesCovered: Rule = (tables, report) => {
  coverEach('energy-code.json', tables['energy-code.json'].rows, report);
  const rows = tables['condensation-control.json'].rows;
  coverEach(
    'condensation-control.json',
    rows.filter((row) => row.coverings === undefined),
    report,
  );
  const listed = tables['zones.json'].rows.map((row) => row.zone);
  for (const zone of zones) {
    if (!listed.includes(zone)) report('zones.json', zone, 'zone-listed', `add a row for zone ${zone}`);
  }
};

const boardsComplete: Rule = (tables, report) => {
  const { rows, polyisocyanurateByTemperature } = tables['materials.json'];
  for (const board of boards) {
    const row = rows.find((each) => each.id === board);
    if (row?.category !== 'rigid-board' || row.conductivity_W_mK === null) {
      report('materials.json', board, 'board-row', `${board} needs a rigid-board row with a conductivity`);
    }
    if (!row?.soldThicknesses_m)
      report('materials.json', board, 'board-sold', `list the thicknesses sold of ${board}`);
    for (const [list, name] of [
      [tables['costs.json'].rows.map((each) => each.id), `board-${board}`],
      [tables['costs.json'].carbon.map((each) => each.id), board],
    ] as const) {
      if (!list.includes(name)) report('costs.json', name, 'board-cost', `add a row ${name}`);
    }
  }
  for (const row of rows) {
    if (row.soldThicknesses_m && !isAscending(row.soldThicknesses_m)) {
      report('materials.json', row.id, 'sold-sorted', 'list thicknesses from thin to thick, each once');
    }
    if ((row.conductivity_W_mK === null) === (row.resistance_m2K_W === null)) {
      report('materials.json', row.id, 'one-thermal-value', 'give a conductivity or a resistance, not both');
    }
    if (
      row.permeanceByHumidity &&
      !isAscending(row.permeanceByHumidity.points.map(([humidity]) => humidity))
    ) {
      report('materials.json', row.id, 'curve-sorted', 'list points by rising humidity');
    }
  }
  for (const series of new Set(polyisocyanurateByTemperature.map((row) => row.series))) {
    const temperatures = polyisocyanurateByTemperature
      .filter((row) => row.series === series)
      .map((row) => row.meanTemperature_C);
    if (!isAscending(temperatures)) {
      report('materials.json', series, 'temperature-sorted', 'list points by rising temperature');
    }
  }
};

const coveringsComplete: Rule = (tables, report) => {
  const materials = tables['materials.json'].rows.map((row) => row.id);
  const rows = tables['coverings.json'].rows;
  for (const id of coverings) {
    if (!rows.some((row) => row.id === id))
      report('coverings.json', id, 'covering-row', `add a row for ${id}`);
  }
  for (const row of rows) {
    const twice = row.doubleUnderlayment;
    if (!materials.includes(row.material)) {
      report('coverings.json', row.id, 'material-exists', `${row.material} is not in materials.json`);
    }
    if (twice && twice.from_rise_per_12 !== row.minimumPitch_rise_per_12) {
      report('coverings.json', row.id, 'contiguous', 'double underlayment starts at the minimum pitch');
    }
    if (twice && twice.below_rise_per_12 <= twice.from_rise_per_12) {
      report('coverings.json', row.id, 'ascending', 'the double range must end above its start');
    }
    if (row.weightHeavy_Pa < row.weight_Pa)
      report('coverings.json', row.id, 'ascending', 'heavy is at least typical');
  }
};

const rangesAscend: Rule = (tables, report) => {
  const { rows, carbon } = tables['costs.json'];
  for (const row of [...rows, ...carbon]) {
    if (row.low > row.mid || row.mid > row.high)
      report('costs.json', row.id, 'ascending', 'low, mid, high must rise');
  }
  const limits = tables['vapor-retarder-classes.json'].rows.map((row) => row.atMost_perm);
  if (!isAscending(limits))
    report('vapor-retarder-classes.json', 'rows', 'ascending', 'list classes by rising limit');
  const canada = tables['zones.json'].canada;
  canada.forEach((row, i) => {
    if (row.below_Cd !== (canada[i + 1]?.from_Cd ?? null)) {
      report(
        'zones.json',
        `canada ${row.nbcZone}`,
        'contiguous',
        'each range starts where the one before ends',
      );
    }
  });
};

/** Sorted zones of one map whose upper limit is the next one's lower limit. */
const thresholdsContiguous: Rule = (tables, report) => {
  for (const name of ['thresholdsLater', 'thresholdsEarlier'] as const) {
    const rows = tables['zones.json'][name];
    const heated = rows.filter((row) => row.heatingDegreeDays18Above_Cd !== null);
    const cooled = rows.filter((row) => row.coolingDegreeDays10Above_Cd !== null);
    heated.forEach((row, i) => {
      const next = heated[i + 1];
      if (row.heatingDegreeDays18AtMost_Cd !== (next ? next.heatingDegreeDays18Above_Cd : null)) {
        report('zones.json', `${name} ${row.zone}`, 'contiguous', 'heating limits must join');
      }
    });
    cooled.forEach((row, i) => {
      const hotter = cooled[i - 1];
      if (row.coolingDegreeDays10AtMost_Cd !== (hotter ? hotter.coolingDegreeDays10Above_Cd : null)) {
        report('zones.json', `${name} ${row.zone}`, 'contiguous', 'cooling limits must join');
      }
    });
  }
};

const placesResolve: Rule = (tables, report) => {
  const regions = new Set(tables['regions.json'].rows.map((row) => row.id));
  const notes = new Set(tables['place-notes.json'].rows.map((row) => row.id));
  const states = tables['counties.json'].states;
  const counties = new Map(states.flatMap((row) => row.counties.map((each) => [each[0], each] as const)));
  const zoneOf = new Map(tables['places.json'].rows.map((row) => [row[0], row[9]]));
  for (const id of derivedNoteIds()) {
    if (!notes.has(id)) report('place-notes.json', id, 'note-exists', `add a note ${id}`);
  }
  for (const { state } of states) {
    if (!regions.has(state)) report('counties.json', state, 'region-exists', `add ${state} to regions.json`);
  }
  for (const row of tables['places.json'].rows) {
    const [id, , region, country, , , , , fips, zone, olderZone] = row;
    const county = fips === null ? undefined : counties.get(fips);
    if (!regions.has(region)) report('places.json', id, 'region-exists', `add ${region} to regions.json`);
    for (const note of row[21].filter((each) => !notes.has(each))) {
      report('places.json', id, 'note-exists', `add ${note} to place-notes.json`);
    }
    if (country !== 'US') continue;
    if (!county) report('places.json', id, 'county-exists', `${String(fips)} is not in counties.json`);
    else if (county[2] !== zone || county[3] !== olderZone) {
      report('places.json', id, 'zone-of-county', `its county has ${county[2]} and ${county[3]}`);
    }
  }
  for (const row of tables['zones.json'].rows) {
    const zone = zoneOf.get(row.representative);
    if (zone !== (row.standIn ?? row.zone)) {
      report(
        'zones.json',
        row.zone,
        'representative',
        `${row.representative} is not a listed place of the zone`,
      );
    }
  }
};

const countiesInState: Rule = (tables, report) => {
  for (const { state, counties } of tables['counties.json'].states) {
    const prefixes = new Set(counties.map((row) => row[0].slice(0, 2)));
    if (prefixes.size !== 1) report('counties.json', state, 'one-state', 'all codes of a state start alike');
    const codes = tables['counties.json'].notes.map((row) => row.id);
    for (const row of counties) {
      if (row[5] !== undefined && !codes.includes(row[5])) {
        report('counties.json', row[0], 'note-exists', `add ${row[5]} to the notes of the file`);
      }
    }
  }
};

export const rules: readonly Rule[] = [
  sourcesExist,
  idsDiffer,
  zonesCovered,
  boardsComplete,
  coveringsComplete,
  rangesAscend,
  thresholdsContiguous,
  placesResolve,
  countiesInState,
];

/** Damp in the recommended roof: three controls, the monthly method, drying, leaking air, doubtful permeances. */
import type { Candidate } from '../../evaluation/evaluation.ts';
import { firstByVentilation, placeNames, whereOf } from '../../plot/plots.ts';
import { show } from '../../measures.ts';
import type { Block, Cell, Section, Table, Verdict } from '../document.ts';
import { cell, paragraph, plain, strong } from '../document.ts';
import { capital, strategyNames, ventilationNames } from '../names.ts';
import type { Context } from './context.ts';
import { citationOf, cited, marginText, section } from './context.ts';
import { plotBlocks } from './plots.ts';

const monthlyMethod = { source: 'ISO-13788-2012', clause: 'clause 6', known: 'seen-secondary' };
const dryingMethod = { source: 'ISO-13788-2012', clause: 'clause 7', known: 'seen-secondary' };

const verdictOf = (meets: boolean): Verdict => (meets ? 'meets' : 'misses');

function controlsTable(context: Context, best: Candidate): Table {
  const { say } = context;
  const { requirements } = context.evaluation;
  const { table, temperature, humidity, editionShare } = best.condensationControl;
  const rows: readonly (readonly [string, string, string, string, boolean, Cell])[] = [
    [
      'R above the deck, from the table',
      `at least ${say('resistance', table.minimum_m2K_W)}`,
      say('resistance', table.provided_m2K_W),
      marginText(context, 'resistance', table.margin_m2K_W),
      table.meets,
      cell([cited(citationOf(requirements.aboveDeckTable))]),
    ],
    [
      'Temperature of the deck in the three coldest months, winter R counted',
      `at least ${say('temperature', temperature.limit_C)}`,
      say('temperature', temperature.deck_C),
      marginText(context, 'temperatureDifference', temperature.margin_K),
      temperature.meets,
      cell([cited(citationOf(requirements.temperatureRule))]),
    ],
    [
      'Indoor humidity that just condenses on the deck',
      `at least ${say('humidity', humidity.indoor_pct)}, as assumed indoors`,
      say('humidity', humidity.maximumIndoor_pct),
      marginText(context, 'humidity', humidity.margin_pct),
      humidity.meets,
      cell('Dew point of the indoor air'),
    ],
    [
      `Share of R above the deck, for the edition’s own total of ${say('resistance', editionShare.total_m2K_W)}`,
      `at least ${say('share', editionShare.tableShare_pct)}`,
      say('share', editionShare.share_pct),
      marginText(context, 'share', editionShare.share_pct - editionShare.tableShare_pct),
      editionShare.meets,
      cell([cited(citationOf(requirements.aboveDeckTable))]),
    ],
  ];
  return {
    kind: 'table',
    id: 'controls-table',
    caption: 'Condensation control, side by side',
    columns: [
      { id: 'what', title: 'Control', align: 'left', width: 3 },
      { id: 'asked', title: 'Asked', align: 'left', width: 1.7 },
      { id: 'provided', title: 'Here', align: 'right', width: 1.2 },
      { id: 'margin', title: 'Margin', align: 'left', width: 1.7 },
      { id: 'source', title: 'Source', align: 'left', width: 2.2 },
    ],
    rows: rows.map(([what, asked, provided, margin, meets, source]) => [
      cell(what),
      cell(asked),
      cell(provided),
      cell(margin, verdictOf(meets)),
      source,
    ]),
  };
}

export const controlSection = (context: Context, best: Candidate): Section =>
  section(
    context,
    'condensation-control',
    [
      controlsTable(context, best),
      ...plotBlocks(context, best, 'deck-months'),
      ...plotBlocks(context, best, 'profile'),
    ],
    { level: 2 },
  );

const verdicts: Readonly<Record<Candidate['moisture']['verdict'], string>> = {
  none: 'No month leaves condensate inside the roof.',
  'dries-out': 'Water condenses in the cold months and is gone again within the year.',
  accumulates: 'More water condenses in a year than evaporates: it gathers from year to year.',
  'not-covered': 'The method does not cover this roof.',
};

function planesTable(context: Context, best: Candidate): Block[] {
  const { say } = context;
  const { moisture, layers } = best;
  if (moisture.planes.length === 0) return [];
  return [
    {
      kind: 'table',
      id: 'planes-table',
      caption: 'Where water condenses, and how much may',
      columns: [
        { id: 'plane', title: 'Plane', align: 'left', width: 2.6 },
        { id: 'peak', title: 'Most at once', align: 'right', width: 1.4 },
        { id: 'limit', title: 'Limit', align: 'left', width: 1.8 },
        { id: 'why', title: 'Why this limit', align: 'left', width: 3.4 },
      ],
      rows: moisture.planes.map((plane) => [
        cell(capital(whereOf(layers, plane.after, plane.within_pct))),
        cell(say('waterPerArea', plane.peak_kg_m2)),
        cell(say('waterPerArea', plane.limit_kg_m2), verdictOf(plane.meetsLimit)),
        cell([
          { text: `${capital(plane.limitReason)}. ` },
          cited({ source: plane.source, known: knownOf(context, plane.source) }),
        ]),
      ]),
    },
  ];
}

const knownOf = (context: Context, id: string): string =>
  context.evaluation.sources.find((source) => source.id === id)?.known ?? 'memory';

export function monthlySection(context: Context, best: Candidate): Section {
  const { moisture } = best;
  const { indoorAir } = moisture;
  const air =
    indoorAir.basis === 'fixed'
      ? `Indoors ${context.say('humidity', indoorAir.relativeHumidity_pct[0] ?? 0)} all year.`
      : `Indoor humidity by class ${String(indoorAir.humidityClass ?? '')}.`;
  return section(
    context,
    'monthly-method',
    [
      paragraph([strong(verdicts[moisture.verdict]), { text: ` ${air} ` }, cited(monthlyMethod)]),
      ...planesTable(context, best),
      ...(moisture.planes.length === 0 ? [] : plotBlocks(context, best, 'condensate')),
      paragraph('What this method leaves out:'),
      { kind: 'list', ordered: false, items: moisture.leavesOut.map(plain) },
    ],
    { level: 2 },
  );
}

/** Every wetted place of a set of candidates, one row each. */
function dryingTable(context: Context, candidates: readonly Candidate[]): Table {
  const { say } = context;
  return {
    kind: 'table',
    id: 'drying-table',
    caption: `Water of ${say('waterPerArea', 1)} put into each place: months until it has left, and what then sits elsewhere`,
    columns: [
      { id: 'roof', title: 'Roof', align: 'left', width: 3 },
      { id: 'place', title: 'Wetted', align: 'left', width: 2.2 },
      { id: 'months', title: 'Dry in', align: 'right', width: 1.5 },
      { id: 'left', title: 'Still in the roof then', align: 'right', width: 1.6 },
      { id: 'where', title: 'Most of it', align: 'left', width: 2.4 },
    ],
    rows: candidates.flatMap((candidate) =>
      candidate.drying.places.map((place): Cell[] => [
        cell(`${strategyNames[candidate.strategy]}, ${ventilationNames[candidate.ventilation.kind]}`),
        cell(capital(placeNames[place.place])),
        place.monthsToDry === null
          ? cell(`over ${say('months', place.limit_months)}`)
          : cell(say('months', place.monthsToDry)),
        cell(say('waterPerArea', place.left_kg_m2)),
        cell(
          place.leftAfter === null || place.left_kg_m2 <= 0
            ? '–'
            : capital(whereOf(candidate.layers, place.leftAfter)),
        ),
      ]),
    ),
    note: 'Slow is no fault by itself: no code sets a limit here. It says how long a leak would be felt.',
  };
}

function gapText(context: Context, best: Candidate): Block[] {
  const { gap } = best.drying;
  const { say } = context;
  if (gap === null) return [];
  return [
    paragraph(
      `The vented space changes its air ${say('ratio', gap.airChanges_1_h)} times an hour, moving at ${show('speed', gap.velocity_m_s, context.system, { digits: 2 })}, and lets vapor out like ${say('permeance', gap.equivalentPermeance_ng)}: ${gap.basis}.`,
    ),
  ];
}

export function dryingSection(context: Context, best: Candidate): Section {
  const byKind = firstByVentilation(context.evaluation).filter(
    (candidate) => !context.leaders.includes(candidate),
  );
  return section(
    context,
    'drying',
    [
      paragraph([
        {
          text: `The recommended roof can be wetted in ${String(best.drying.places.length)} places. Each month’s diffusion is followed by `,
        },
        cited(dryingMethod),
        { text: '.' },
      ]),
      ...plotBlocks(context, best, 'drying'),
      ...plotBlocks(context, best, 'drying-compared'),
      dryingTable(context, [...context.leaders, ...byKind]),
      ...gapText(context, best),
    ],
    { level: 2 },
  );
}

export function leakageSection(context: Context, best: Candidate): Section[] {
  const { airLeakage } = best.moisture;
  const { say } = context;
  if (airLeakage === null) return [];
  return [
    section(
      context,
      'air-leakage',
      [
        ...plotBlocks(context, best, 'air-leak'),
        paragraph([
          {
            text: `Counted with ${say('hole', airLeakage.hole_m2)} of holes at a pressure of ${say('pressure', airLeakage.pressure_Pa)}, that is ${say('airflow', airLeakage.flow_m3_s)}. A whole roof that leaks as an ordinary ceiling does would bring ${say('waterPerArea', airLeakage.deck.seasonRate_kg_m2)} to the deck in a cold season, and ${say('waterPerArea', airLeakage.coldSide.seasonRate_kg_m2)} to the cold side of the board if the deck did not stop it. `,
          },
          cited({ source: airLeakage.source, known: airLeakage.known }),
        ]),
      ],
      { level: 2 },
    ),
  ];
}

export function permeanceSection(context: Context, best: Candidate): Section[] {
  const { say } = context;
  const doubtful = best.layers.flatMap((layer) =>
    layer.permeanceDoubt === null ? [] : [{ layer, doubt: layer.permeanceDoubt }],
  );
  if (doubtful.length === 0) return [];
  const table: Table = {
    kind: 'table',
    id: 'permeance-table',
    caption: 'Layers whose permeance the sources disagree about',
    columns: [
      { id: 'layer', title: 'Layer', align: 'left', width: 2 },
      { id: 'range', title: 'Dry cup, by source', align: 'left', width: 1.8 },
      { id: 'used', title: 'Used', align: 'right', width: 1.2 },
      { id: 'wet', title: 'Wet cup', align: 'right', width: 1.2 },
      { id: 'why', title: 'Why', align: 'left', width: 4.4 },
    ],
    rows: doubtful.map(({ layer, doubt }) => [
      cell(capital(layer.name)),
      cell(`${say('permeance', doubt.low_ng)} to ${say('permeance', doubt.high_ng)}`),
      cell(say('permeance', doubt.used_ng)),
      cell(layer.permeanceWet_ng === null ? 'no obstacle' : say('permeance', layer.permeanceWet_ng)),
      cell([
        { text: `${doubt.reason} ` },
        ...doubt.sources.flatMap((source, i) => [
          ...(i === 0 ? [] : [{ text: ', ' }]),
          cited({ source, known: knownOf(context, source) }),
        ]),
      ]),
    ]),
  };
  return [section(context, 'permeance', [table], { level: 2 })];
}

/** The recommended build-up: layers, edge, fastening and quantities. */
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { Block, Cell, Section, Table, Verdict } from '../document.ts';
import { cell, paragraph } from '../document.ts';
import { capital, carrierNames } from '../names.ts';
import { cautionLinks } from './closing.ts';
import type { Context } from './context.ts';
import { marginText, section } from './context.ts';
import { detailBlocks } from './drawings.ts';
import { takeoffBlocks } from './takeoff.ts';

/** [m] Thinner layers are sheets, named and not measured (our judgement). */
const LEAST_MEASURED_m = 0.002;

function layersTable(context: Context, best: Candidate): Table {
  const { say } = context;
  const rows = best.layers.map((layer): Cell[] => [
    cell(capital(layer.name)),
    cell(layer.thickness_m < LEAST_MEASURED_m ? 'sheet' : say('length', layer.thickness_m)),
    cell(say('resistance', layer.resistance_m2K_W)),
    cell(say('resistance', layer.winterResistance_m2K_W)),
    cell(layer.permeance_ng === null ? 'no obstacle' : say('permeance', layer.permeance_ng)),
    cell(layer.why),
  ]);
  const sum = (pick: (layer: Candidate['layers'][number]) => number): number =>
    best.layers.reduce((total, layer) => total + pick(layer), 0);
  return {
    kind: 'table',
    id: 'layers-table',
    caption: 'From inside to outside, between framing members',
    columns: [
      { id: 'layer', title: 'Layer', align: 'left', width: 3 },
      { id: 'thickness', title: 'Thickness', align: 'right', width: 1.2 },
      { id: 'labelled', title: 'R labelled', align: 'right', width: 1.2 },
      { id: 'winter', title: 'R winter', align: 'right', width: 1.2 },
      { id: 'permeance', title: 'Permeance', align: 'right', width: 1.3 },
      { id: 'why', title: 'Why it is there', align: 'left', width: 3.6 },
    ],
    rows: [
      ...rows,
      [
        cell('Sum of the layers'),
        cell(
          say(
            'length',
            sum((layer) => layer.thickness_m),
          ),
        ),
        cell(
          say(
            'resistance',
            sum((layer) => layer.resistance_m2K_W),
          ),
        ),
        cell(
          say(
            'resistance',
            sum((layer) => layer.winterResistance_m2K_W),
          ),
        ),
        cell(''),
        cell('Surface films are not in this sum.'),
      ],
    ],
    strongRows: [rows.length],
    note: `The codes count insulation only: ${say('resistance', best.thermal.aboveDeck_m2K_W)} above the deck and ${say('resistance', best.thermal.belowDeck_m2K_W)} below it, ${say('resistance', best.thermal.total_m2K_W)} together.`,
  };
}

const dryingWords: Readonly<Record<Candidate['drying']['path'], string>> = {
  both: 'to the inside and to the outside',
  outward: 'to the outside',
  inward: 'to the inside',
  neither: 'to neither side: a leak stays',
};

function dryingText(context: Context, best: Candidate): Block[] {
  const { drying, moisture, thermal } = best;
  const { say } = context;
  const months = (value: number | null): string =>
    value === null ? 'not within the ten years looked at' : say('months', value);
  const bridge =
    thermal.bandTransmittance_W_m2K === null
      ? ''
      : ` In the band where the carriers cross the insulation, ${say('share', thermal.bandShare_pct)} of the roof, it is ${say('transmittance', thermal.bandTransmittance_W_m2K)}.`;
  return [
    paragraph(
      `It can dry ${dryingWords[drying.path]}. Water of ${say('waterPerArea', 1)} put into the upper deck dries in ${months(drying.monthsToDryUpper)}, into the lower deck in ${months(drying.monthsToDryDeck)} (${moisture.method}). ${drying.verdict}`,
    ),
    paragraph(
      `Heat loss of the field ${say('transmittance', thermal.fieldTransmittance_W_m2K)}, screws add ${say('transmittance', thermal.fastenerCorrection_W_m2K)}, whole roof ${say('transmittance', thermal.transmittance_W_m2K)} with ${say('share', thermal.framingShare_pct)} framing.${bridge}`,
    ),
  ];
}

export function layersSection(context: Context, best: Candidate): Section {
  return section(context, 'layers', [
    layersTable(context, best),
    ...dryingText(context, best),
    ...cautionLinks(context, ['insulation', 'venting', 'below-deck', 'deck', 'indoor', 'covering']),
  ]);
}

interface EdgeLine {
  readonly what: string;
  readonly value: string;
  readonly limit: string;
  readonly meets: boolean | null;
}

function edgeLines(context: Context, best: Candidate): EdgeLine[] {
  const { say } = context;
  const { edge, airBarrier } = best;
  const limit = (value: number | null, margin: number | null): Pick<EdgeLine, 'limit' | 'meets'> =>
    value === null || margin === null
      ? { limit: 'no limit given', meets: null }
      : {
          limit: `at most ${say('length', value)}; margin ${marginText(context, 'length', margin)}`,
          meets: margin >= 0,
        };
  const free = { limit: '–', meets: null };
  return [
    {
      what: 'Build-up above the framing, square to the slope',
      value: say('length', edge.buildUp_m),
      ...free,
    },
    {
      what: `Depth of the ${carrierNames[best.carrier]} behind the fascia`,
      value:
        edge.carrierDepth_m > 0 ? say('length', edge.carrierDepth_m) : 'none: they lie in the insulation',
      ...free,
    },
    {
      what: `Height of the fascia, ${edge.cut} cut`,
      value: say('length', edge.fascia_m),
      ...limit(edge.fasciaLimit_m, edge.fasciaMargin_m),
    },
    {
      what: 'Rise of the ridge',
      value: say('length', edge.ridgeRise_m),
      ...limit(edge.ridgeLimit_m, edge.ridgeMargin_m),
    },
    {
      what: 'Tails and members that pierce the air barrier',
      value: `${say('count', airBarrier.piercings)} in all`,
      ...free,
    },
    {
      what: 'Joints to make airtight at the eaves',
      value: `${say('count', airBarrier.joints)}, ${say('span', airBarrier.jointLength_m)} long together`,
      ...free,
    },
    {
      what: 'Clear height of the vented space',
      value: best.ventilation.gap_m > 0 ? say('length', best.ventilation.gap_m) : 'none',
      ...free,
    },
  ];
}

export function edgeSection(context: Context, best: Candidate): Section {
  const table: Table = {
    kind: 'table',
    id: 'edge-table',
    caption: 'Dimensions of the edge',
    columns: [
      { id: 'what', title: 'What', align: 'left', width: 3.6 },
      { id: 'value', title: 'Size', align: 'left', width: 2 },
      { id: 'limit', title: 'Limit and margin', align: 'left', width: 2.6 },
    ],
    rows: edgeLines(context, best).map((line): Cell[] => [
      cell(line.what),
      cell(line.value),
      cell(line.limit, line.meets === null ? undefined : line.meets ? 'meets' : 'misses'),
    ]),
  };
  const others = context.leaders.filter((one) => one.id !== best.id);
  return section(context, 'edge', [
    ...detailBlocks(context, best, 'eave', 'edge-eave'),
    table,
    paragraph(`${best.airBarrier.summary} ${best.ventilation.rule}`),
    ...detailBlocks(context, best, 'rake', 'edge-rake'),
    ...detailBlocks(context, best, 'ridge', 'edge-ridge'),
    ...cautionLinks(context, ['overhang', 'profile', 'wall', 'framing']),
    ...(context.role === 'builder'
      ? []
      : others.flatMap((other) => detailBlocks(context, other, 'eave', `eave-${other.strategy}`, true))),
  ]);
}

/** A ratio of exactly 1 may come out a rounding above it. */
const ROUNDING = 1e-6;
const isWithin = (ratio: number): boolean => ratio <= 1 + ROUNDING;

function fastening(context: Context, best: Candidate): Table {
  const { say } = context;
  const { fasteners, structure } = best;
  const rows: (readonly [string, string, Verdict?])[] = [
    [
      'Length of the long screws',
      `${say('length', fasteners.screwLength_m)}${fasteners.sold ? '' : ' (longer than commonly sold)'}`,
    ],
    ['They hold in', `the ${fasteners.into}, ${say('length', fasteners.penetration_m)} deep`],
    ['Screws', `${say('count', fasteners.count)} in all, by zone in the fastening schedule`],
    ['Weight added to the framing', say('load', structure.addedDeadLoad_Pa)],
    [
      'Overhang wanted, and limit of this screening',
      `${say('length', structure.overhang_m)} of ${say('length', structure.screeningLimit_m)}`,
      isWithin(structure.use) ? 'meets' : 'misses',
    ],
    ...(structure.advised_m === null
      ? []
      : [
          [
            'Overhang advised instead',
            `${say('length', structure.advised_m[0])} to ${say('length', structure.advised_m[1])}`,
          ] as const,
        ]),
    ...(fasteners.mayShowBelow ? [['Screw points', 'may show below the deck'] as const] : []),
  ];
  return {
    kind: 'table',
    id: 'fastening-table',
    caption: 'Screws and overhang in short (screening)',
    columns: [
      { id: 'what', title: 'Item', align: 'left', width: 3 },
      { id: 'value', title: 'Value', align: 'left', width: 4 },
    ],
    rows: rows.map(([what, value, verdict]) => [cell(what), cell(value, verdict)]),
  };
}

export function quantitiesSection(context: Context, best: Candidate): Section {
  return section(context, 'quantities', [
    ...takeoffBlocks(context, best),
    fastening(context, best),
    ...cautionLinks(context, ['snow', 'wind', 'hazards']),
  ]);
}

/** The fastening schedule: spacing by wind zone, what holds the layers back, checks, and the note for the drawing. */
import { governWords, recordWords, wayWords, zoneWords } from '../../catalog/record.ts';
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { FasteningCheck, ScheduleRow, SlopeWay } from '../../evaluation/fastening.ts';
import type { Block, Cell, Column, Inline, Section, Table } from '../document.ts';
import { cell, paragraph, strong } from '../document.ts';
import { capital, strategyNames } from '../names.ts';
import { cautionLinks } from './closing.ts';
import type { Context } from './context.ts';
import { citationOf, cited, section } from './context.ts';

/** A ratio of exactly 1 may come out a rounding above it. */
const ROUNDING = 1e-6;
const verdictOf = (ratio: number): 'meets' | 'misses' => (ratio <= 1 + ROUNDING ? 'meets' : 'misses');

const column = (id: string, title: string, width: number, align: Column['align'] = 'left'): Column => ({
  id,
  title,
  align,
  width,
});

/** Where the zone lies on this roof, the strips' width in. */
function placeOf(context: Context, { fasteners }: Candidate, row: ScheduleRow): string {
  const shape = context.given.roof.shape === 'hip' ? 'hip' : 'gable';
  return zoneWords(fasteners.edition, shape, row.zone, context.say('length', fasteners.edgeWidth_m));
}

const screws = ({ say }: Context, count: number): string => `${say('count', count)} screws`;

/** How many screws go into a roofing square, or into a square meter. */
const density = ({ system, say }: Context, row: ScheduleRow): string =>
  system === 'IP' ? `${say('count', row.perSquare)} per 100 ft²` : say('perArea', row.perArea_1_m2);

const spacing = ({ say }: Context, row: ScheduleRow): string =>
  `${say('length', row.spacing_m)} by ${say('length', row.across_m)}`;

function useCell({ say }: Context, row: ScheduleRow): Cell {
  const why = governWords(row.governing);
  if (row.ratio === null) return cell(capital(why), 'open');
  return row.standIn
    ? cell(`${say('ratio', row.ratio)} of 1, ${why}; ${recordWords.fastening.standInRow}`, 'open')
    : cell(`${say('ratio', row.ratio)} of 1, ${why}`, verdictOf(row.ratio));
}

/** Plain: where, how far apart, how many; a spacing that stands in or is not covered says so. */
const plainRow = (context: Context, candidate: Candidate, row: ScheduleRow): Cell[] => [
  cell(`Zone ${row.zone}: ${placeOf(context, candidate, row)}`),
  row.standIn
    ? cell(`${spacing(context, row)}, ${recordWords.fastening.standInRow}`, 'open')
    : row.needsDesign
      ? cell(`${spacing(context, row)}, not settled: the engineer decides`, 'open')
      : cell(spacing(context, row)),
  cell(screws(context, row.count)),
];

const fullRow = (context: Context, candidate: Candidate, row: ScheduleRow): Cell[] => [
  cell(`${row.zone}: ${placeOf(context, candidate, row)}`),
  cell(context.say('area', row.area_m2)),
  cell(row.uplift_Pa === null ? 'not covered' : context.say('load', row.uplift_Pa)),
  cell(spacing(context, row)),
  cell(screws(context, row.count)),
  cell(density(context, row)),
  useCell(context, row),
];

/** How deep the screw goes, and in what: a panel screw ends within a deck in view, else past it. */
function depthText({ say, given }: Context, { fasteners }: Candidate): string {
  const depth = say('length', fasteners.penetration_m);
  if (fasteners.into === 'rafter') return `${depth} into the rafter`;
  const endsWithin = given.framing.deckSeenFromBelow && !fasteners.mayShowBelow;
  return `${depth} ${endsWithin ? 'into' : 'past'} the deck`;
}

const lengthText = (context: Context, candidate: Candidate): string => {
  const { hold, screwLength_m } = candidate.fasteners;
  return `${hold.name}, ${context.say('length', screwLength_m)} long, ${depthText(context, candidate)}`;
};

/** Where the wind tables do not reach: what stands in, why, and who decides. */
function gapText({ fasteners: { windGap } }: Candidate): string {
  if (windGap === null) return '';
  const { standIn, noStandIn } = recordWords.fastening;
  return `${windGap.standIn === null ? noStandIn : standIn.replace('{roof}', windGap.standIn)} ${windGap.reason} `;
}

function scheduleTable(context: Context, candidate: Candidate): Table {
  const { fasteners } = candidate;
  const isPlain = context.role === 'builder';
  const across = fasteners.into === 'deck' ? 'each way' : 'up the rafter by rafter spacing';
  return {
    kind: 'table',
    id: `schedule-${candidate.strategy}`,
    caption: lengthText(context, candidate),
    columns: isPlain
      ? [
          column('zone', 'Where', 4),
          column('spacing', `Spacing, ${across}`, 2.4),
          column('count', 'Screws', 1, 'right'),
        ]
      : [
          column('zone', 'Zone', 3),
          column('area', 'Area', 1.1, 'right'),
          column('uplift', 'Net uplift', 1.1, 'right'),
          column('spacing', `Spacing, ${across}`, 1.9),
          column('count', 'Screws', 0.9, 'right'),
          column('density', context.system === 'IP' ? 'Per 100 ft²' : 'Per area', 1, 'right'),
          column('use', 'Use, and what governs', 2),
        ],
    rows: fasteners.schedule.map((row) =>
      isPlain ? plainRow(context, candidate, row) : fullRow(context, candidate, row),
    ),
    note: `${gapText(candidate)}${screws(context, fasteners.count)} in all, without spares. Strips are measured from the outer edge of the overhang.`,
  };
}

function sizeOf({ say }: Context, way: SlopeWay): string {
  const length = way.length_m === null ? '' : say('length', way.length_m);
  switch (way.id) {
    case 'screws-across':
      return 'as in the schedule';
    case 'eave-block':
      return `${length} long, ${say('count', way.count ?? 0)} screws on each rafter`;
    case 'slanted-and-board':
      return `${length} long, every ${say('length', way.spacing_m ?? 0)} on each rafter`;
    case 'slanted-pairs':
      return `${length} long, a pair every ${say('length', way.spacing_m ?? 0)} on each rafter`;
  }
}

function wayRow(context: Context, way: SlopeWay): Cell[] {
  const { say } = context;
  const forces = [
    ...(way.pull_N === null ? [] : [`pull ${say('force', way.pull_N)}`]),
    ...(way.push_N === null ? [] : [`push ${say('force', way.push_N)}`]),
  ];
  const ratio = `${say('ratio', way.ratio)} of 1`;
  return [
    cell(wayWords(way.id).name),
    cell(sizeOf(context, way)),
    cell(forces.join(', ')),
    way.because === ''
      ? cell(ratio, verdictOf(way.ratio))
      : cell(`${ratio}; needs design: ${way.because}`, 'open'),
    cell([cited(citationOf(way))]),
  ];
}

function waysTable(context: Context, candidate: Candidate): Table {
  const { slopePath } = candidate.fasteners;
  const { say } = context;
  return {
    kind: 'table',
    id: `sliding-${candidate.strategy}`,
    caption: `Against sliding: ${say('load', slopePath.demand_Pa)} down the slope, ${say('lineLoad', slopePath.atEave_N_m)} at the eave, with ${recordWords.fastening.snowCases[slopePath.snowCase]}`,
    columns: [
      column('way', 'Way', 2.4),
      column('size', 'Size', 2.2),
      column('forces', 'Forces on one', 1.8),
      column('use', 'Use', 1.8),
      column('source', 'Source', 2.2),
    ],
    rows: slopePath.ways.map((way) => wayRow(context, way)),
    strongRows: slopePath.needsDesign
      ? []
      : slopePath.ways.flatMap(({ id }, index) => (id === slopePath.chosen ? [index] : [])),
    note: 'Each way is asked to hold all of it; rubbing and the board’s own shear are left out. The rafters pass the push on to the wall: their seat is the engineer’s too.',
  };
}

function slidingText(context: Context, candidate: Candidate): Inline {
  const { slopePath } = candidate.fasteners;
  const way = slopePath.ways.find(({ id }) => id === slopePath.chosen);
  if (slopePath.needsDesign || way === undefined)
    return [strong('Against sliding: '), { text: recordWords.fastening.needsDesign }];
  const size = way.id === 'screws-across' ? '' : ` (${sizeOf(context, way)})`;
  return [
    strong('Against sliding: '),
    { text: `${wayWords(way.id).plain}${size}, use ${context.say('ratio', way.ratio)} of 1.` },
  ];
}

const valueNames: Readonly<Record<Candidate['fasteners']['hold']['fromReport'][number], string>> = {
  withdrawal: 'withdrawal',
  'pull-through': 'head pull-through',
  lateral: 'shear across the board',
  penetration: 'least penetration',
};

function basisText({ fasteners: { hold } }: Candidate): string {
  const { byEquations, byReport } = recordWords.fastening;
  if (hold.fromReport.length === 0) return byEquations;
  return byReport.replace('{values}', hold.fromReport.map((value) => valueNames[value]).join(', '));
}

function missText({ say }: Context, { fasteners: { missesRafter: miss, windGap } }: Candidate): string {
  if (miss === null)
    return 'The screws hold in the deck by design, rafter or not; a pull test on the roof tells what this deck holds.';
  const shows = miss.shows ? ' Its tip shows in the room.' : '';
  const asks =
    miss.demand_N === null || miss.ratio === null
      ? 'where what wind asks of one screw is not known here'
      : `where wind asks up to ${say('force', miss.demand_N)} of one screw (${say('ratio', miss.ratio)} of 1${windGap === null ? '' : ', by the roof that stands in'})`;
  return `A screw that misses the rafter keeps ${say('force', miss.hold_N)} in the deck ${asks}, and stands out ${say('length', miss.standsOut_m)} below.${shows} Pull it, seal the hole, set another in wood. Find and mark wires, pipes and ducts under the deck first.`;
}

function checksTable(context: Context, { strategy, fasteners }: Candidate): Table {
  const amount = ({ unit, id }: FasteningCheck, value: number | null): string =>
    id === 'slope-slip' || value === null
      ? ''
      : context.say(unit === 'N' ? 'force' : unit === 'm' ? 'length' : 'stress', value);
  return {
    kind: 'table',
    id: `fastening-checks-${strategy}`,
    caption: 'Checks of the screw that is used most, provisional',
    columns: [
      column('what', 'Check', 3.2),
      column('demand', 'Demand', 1.1, 'right'),
      column('capacity', 'Capacity', 1.1, 'right'),
      column('ratio', 'Ratio', 1.4),
      column('source', 'Source', 2.4),
    ],
    rows: fasteners.checks.map((check) => [
      cell(check.what),
      cell(amount(check, check.demand)),
      cell(amount(check, check.capacity)),
      check.ratio === null
        ? cell('Not covered by the wind tables', 'open')
        : check.open
          ? cell(`${context.say('ratio', check.ratio)} of 1, ${recordWords.fastening.standInRow}`, 'open')
          : cell(`${context.say('ratio', check.ratio)} of 1`, verdictOf(check.ratio)),
      cell([cited(citationOf(check))]),
    ]),
    note: 'Slip is compared with 0.015 in (0.4 mm), the movement believed to stand behind the wall table. A ratio at or below 1 passes this screening only.',
  };
}

const noteBlock = ({ fasteners }: Candidate): Block =>
  paragraph([strong('Note for the drawing: '), { text: fasteners.note }]);

function ofCandidate(context: Context, candidate: Candidate, isBest: boolean): Block[] {
  if (context.role === 'builder')
    return [
      scheduleTable(context, candidate),
      paragraph(slidingText(context, candidate)),
      paragraph(missText(context, candidate)),
      paragraph(basisText(candidate), 'small'),
      noteBlock(candidate),
    ];
  return [
    paragraph([strong(strategyNames[candidate.strategy])]),
    scheduleTable(context, candidate),
    waysTable(context, candidate),
    ...(isBest ? [checksTable(context, candidate), paragraph(missText(context, candidate))] : []),
    paragraph(basisText(candidate), 'small'),
    noteBlock(candidate),
  ];
}

export function fasteningSection(context: Context, best: Candidate): Section {
  const others = context.role === 'builder' ? [] : context.leaders.filter(({ id }) => id !== best.id);
  return section(
    context,
    'fastening',
    [
      ...ofCandidate(context, best, true),
      ...others.flatMap((other) => ofCandidate(context, other, false)),
      ...cautionLinks(context, ['roof-shape', 'framing', 'wind']),
    ],
    context.role === 'builder' ? {} : { newPage: true },
  );
}

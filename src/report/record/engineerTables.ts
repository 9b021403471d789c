/** The tables of the engineer's sheet: geometry, loads, combinations, demands against limits. */
import { recordWords } from '../../catalog/record.ts';
import type { Candidate, NamedLoad } from '../../evaluation/evaluation.ts';
import type { Block, Cell, Run, Table, Verdict } from '../document.ts';
import { cell, citationText, paragraph } from '../document.ts';
import { showUnit } from '../figures.ts';
import { spaced } from '../names.ts';
import type { Context } from './context.ts';
import { citationOf } from './context.ts';

const words = recordWords.engineer;
/** A ratio of exactly 1 may come out a rounding above it. */
const ROUNDING = 1e-6;
/** Whether a use is within its limit. */
export const isWithin = (ratio: number): boolean => ratio <= 1 + ROUNDING;
/** A check that is shown and never counted. */
export const isRobust = (id: string): boolean => id.startsWith('robust');
/** [-] milliradians in a radian (definition). */
const MILLI = 1000;
/** Grades of figures that an engineer need not look up again. */
const sure: readonly string[] = ['computed', 'seen', 'seen-primary'];
const mark = (known: string): string => (sure.includes(known) ? '' : '\u00a0†');

type Pair = readonly [label: string, value: string];

/** Label and value twice a row, so that a long list takes half the height. */
function pairsTable(
  table: Pick<Table, 'id' | 'caption' | 'note'>,
  pairs: readonly Pair[],
  titles: Pair,
  widths: readonly [number, number],
): Table {
  const half = Math.ceil(pairs.length / 2);
  const at = (index: number): Cell[] => {
    const [label, value] = pairs[index] ?? ['', ''];
    return [cell(label), cell(value)];
  };
  return {
    kind: 'table',
    ...table,
    dense: true,
    columns: ['left', 'right'].flatMap((side) => [
      { id: `${side}-label`, title: titles[0], align: 'left' as const, width: widths[0] },
      { id: `${side}-value`, title: titles[1], align: 'left' as const, width: widths[1] },
    ]),
    rows: Array.from({ length: half }, (_, row) => [...at(row), ...at(row + half)]),
  };
}

function memberPairs(context: Context, { structure }: Candidate): Pair[] {
  const { say } = context;
  const { plan, rake } = structure;
  if (plan === null) return [];
  const pairs: Pair[] = [
    ['Member', `${plan.member}, ${plan.orientation === 'flat' ? 'flat' : 'on edge'}`],
    ['Spacing, load at the tip', `${say('length', plan.spacing_m)}, ${say('force', plan.tip_N)}`],
    [
      'Overhang and back span, along it',
      `${say('length', plan.overhang_m)}, ${say('length', plan.backSpan_m)}`,
    ],
    ['Seat', plan.notch_m > 0 ? `${plan.seat}, ${say('length', plan.notch_m)} notch` : plan.seat],
  ];
  if (plan.seatRotation_rad > 0 && plan.notch_m === 0)
    pairs.push(['Turn of the member at the seat', `${(plan.seatRotation_rad * MILLI).toFixed(1)} mrad`]);
  if (plan.screws !== null) {
    const { heel, heelNeeded, wall, wallNeeded, length_m, sold } = plan.screws;
    pairs.push(
      ['Screws at heel, wall; needed', `${heel}, ${wall}; ${heelNeeded}, ${wallNeeded}`],
      ['Length of these screws', `${say('length', length_m)}${sold ? '' : ', not commonly sold'}`],
      ['Smallest that passes here', plan.smallest ?? 'none of the sizes tried'],
    );
    if (plan.nextSmaller !== null)
      pairs.push([
        'The size before it',
        `use ${say('ratio', plan.nextSmaller.ratio)}: ${plan.nextSmaller.member}`,
      ]);
  }
  if (rake !== null)
    pairs.push([
      'Rake, same member, and its limit',
      `${say('length', rake.overhang_m)}, ${say('length', rake.limit_m)}; use ${say('ratio', rake.ratio)}`,
    ]);
  return pairs;
}

/** Roof, overhang, member, seat and screws. */
export function geometryTable(context: Context, candidate: Candidate): Table {
  const { say, given, evaluation } = context;
  const { structure } = candidate;
  const span = `${say('span', given.roof.length_m)} by ${say('span', given.roof.width_m)}`;
  const pairs: Pair[] = [
    ['Roof', `${spaced(given.roof.shape)}, ${say('pitch', given.roof.pitch_rise_per_12)}, ${span}`],
    ['Mean roof height', say('span', evaluation.siteLoads.meanRoofHeight_m)],
    [
      'Framing: depth, spacing',
      `${given.framing.kind}, ${say('length', given.framing.depth_m)}, ${say('length', given.framing.spacing_m)}`,
    ],
    [
      'Eave, level; limit here',
      `${say('length', structure.overhang_m)}; ${say('length', structure.screeningLimit_m)}`,
    ],
    ...memberPairs(context, candidate),
    [
      'Long screws through the board',
      `${say('length', candidate.fasteners.screwLength_m)} into the ${candidate.fasteners.into}`,
    ],
  ];
  return pairsTable(
    { id: `engineer-geometry-${candidate.strategy}`, caption: 'Geometry and member' },
    pairs,
    ['Item', 'Value'],
    [2.5, 2.8],
  );
}

const zoneWords: Readonly<Record<string, string>> = {
  field: 'field',
  edge: 'edges',
  corner: 'corners',
  'eave-overhang': 'eave overhang',
  'rake-overhang': 'rake overhang',
};

/** Loads and factors that share a row, in the order of the row. */
const sharedRows: readonly (readonly [label: string, ids: readonly string[]])[] = [
  ['Dead load above framing, above insulation', ['dead', 'dead-upper']],
  ['Ground snow', ['ground-snow']],
  ['Snow factors Ce, Ct, Is, Cs', ['snow-exposure', 'snow-thermal', 'snow-importance', 'slope-factor']],
  ['Roof snow: flat, sloped', ['flat-snow', 'sloped-snow']],
  ['Unbalanced snow: windward, lee with eave', ['windward-snow', 'leeward-snow']],
  ['On top next to the ridge: load, width', ['ridge-surcharge', 'ridge-extent']],
  ['Drift below the higher roof: load, width', ['step-drift', 'drift-width']],
  ['Wind speed, velocity pressure (strength)', ['wind-speed', 'velocity-pressure']],
  ['Wind factors Kz, Kzt, Ke', ['exposure-coefficient', 'topographic-factor', 'elevation-factor']],
];

/** Every load by name, with what must be confirmed. */
export function loadsTable(context: Context, candidate: Candidate): Table {
  const { say, evaluation, system, given } = context;
  const { siteLoads } = evaluation;
  const value = (load: NamedLoad): string =>
    load.value === null ? 'not covered' : showUnit(load.value, load.unit, system);
  const all = [...candidate.structure.loads, ...siteLoads.loads];
  const shared = sharedRows.flatMap(([label, ids]): Pair[] => {
    const found = ids.flatMap((id) => all.find((load) => load.id === id) ?? []);
    if (found.length === 0) return [];
    return [[label, `${found.map(value).join(', ')}${found.some((load) => load.confirm) ? ' †' : ''}`]];
  });
  const single = all
    .filter((load) => !sharedRows.some(([, ids]) => ids.includes(load.id)))
    .map((load): Pair => [load.what, `${value(load)}${load.confirm ? ' †' : ''}`]);
  const zones = siteLoads.windZones.map((zone): Pair => [
    `Wind up, down: ${zoneWords[zone.id] ?? zone.id} (${zone.zones.join(', ')})`,
    zone.uplift_Pa === null || zone.downward_Pa === null
      ? 'not covered'
      : `${say('load', zone.uplift_Pa)}, ${say('load', zone.downward_Pa)} †`,
  ]);
  const edge: Pair[] =
    siteLoads.edgeWidth_m === null ? [] : [['Width of the edge zones', say('length', siteLoads.edgeWidth_m)]];
  return pairsTable(
    {
      id: `engineer-loads-${candidate.strategy}`,
      caption: `Loads by ${siteLoads.standard === 'asce7-22' ? 'ASCE/SEI 7-22' : 'ASCE/SEI 7-16'}, exposure ${given.loads.exposure}`,
      note: `${siteLoads.standardReason} ${siteLoads.snowStandardReason} ${words.confirm}`,
    },
    [...shared, ...single, ...zones, ...edge],
    ['Load or factor', 'Value'],
    [3.2, 2],
  );
}

/** Every combination with what it does to the member; without a member, why not. */
export function combinationsBlock(context: Context, candidate: Candidate): Block {
  const { say } = context;
  const { combinations: rows, plan } = candidate.structure;
  if (rows.length === 0 || plan === null)
    return paragraph(candidate.carrier === 'truss-tails' ? words.trussTails : words.noMember);
  const most = Math.max(...rows.filter((row) => row.counts).map((row) => row.use));
  const right = { align: 'right', width: 1.2 } as const;
  return {
    kind: 'table',
    id: `engineer-combinations-${candidate.strategy}`,
    caption: 'Allowable-stress combinations, reactions and use',
    dense: true,
    columns: [
      { id: 'combination', title: 'Combination', align: 'left', width: 2.9 },
      { id: 'load', title: 'Load', ...right },
      { id: 'moment', title: 'Moment', ...right },
      { id: 'shear', title: 'Shear', ...right },
      { id: 'wall', title: 'Wall', ...right },
      { id: 'heel', title: 'Heel', ...right },
      { id: 'tip', title: 'Tip', ...right },
      { id: 'use', title: 'Use', align: 'left', width: 1.5 },
    ],
    rows: rows.map((row): Cell[] => [
      cell(row.formula),
      cell(say('load', row.normal_Pa)),
      cell(say('moment', row.moment_Nm)),
      cell(say('force', row.shear_N)),
      cell(say('force', row.wall_N)),
      cell(say('force', row.heel_N)),
      cell(say('length', row.tip_m)),
      row.counts
        ? cell(say('ratio', row.use), isWithin(row.use) ? 'meets' : 'misses')
        : cell(`${say('ratio', row.use)}, shown only`),
    ]),
    strongRows: rows.flatMap((row, index) => (row.counts && row.use === most ? [index] : [])),
    note: words.combinationNote,
  };
}

function verdictOf(ratio: number | null, id: string): Verdict {
  if (ratio === null || isRobust(id)) return 'open';
  return isWithin(ratio) ? 'meets' : 'misses';
}

const sourceRun = (from: { source: string; clause: string; known: string }): Run => {
  const citation = citationOf(from);
  return { text: `${citationText(citation)}${mark(from.known)}`, citation };
};

/** What holds the layers of the field, from the fastening of the candidate. */
function fieldRows(context: Context, { structure, fasteners }: Candidate): Cell[][] {
  const { say } = context;
  const { slopePath, upliftUse, windGap } = fasteners;
  const chosen = slopePath.ways.find((way) => way.id === slopePath.chosen);
  return [
    [
      cell('Uplift of the layers, worst zone'),
      cell('–'),
      cell('–'),
      cell(upliftUse === null ? '' : say('ratio', upliftUse), verdictOf(upliftUse, 'uplift')),
      cell(windGap === null ? '0.6 D + 0.6 W' : 'wind not covered'),
      cell(''),
    ],
    [
      cell(`Sliding, held by ${spaced(slopePath.chosen)}`),
      cell(say('load', structure.alongSlope_Pa)),
      cell('–'),
      cell(
        say('ratio', slopePath.ratio),
        slopePath.needsDesign ? 'open' : verdictOf(slopePath.ratio, 'slope'),
      ),
      cell('D + S'),
      cell(chosen === undefined ? '' : [sourceRun(chosen)]),
    ],
  ];
}

/** Each check with demand, limit, use and the combination that governs it. */
export function checksTable(context: Context, candidate: Candidate): Table {
  const { structure } = candidate;
  const amount = (value: number | null, unit: string, id: string): string => {
    if (value === null || isRobust(id)) return '–';
    // Stresses share the pascal with loads; the check's name tells them apart.
    const isStress = unit === 'Pa' && /bending|shear|bearing|stress|seat/.test(id);
    return isStress ? context.say('stress', value) : showUnit(value, unit, context.system);
  };
  return {
    kind: 'table',
    id: `engineer-checks-${candidate.strategy}`,
    caption: 'Demands against the limits of this screening',
    dense: true,
    columns: [
      { id: 'what', title: 'Check', align: 'left', width: 4 },
      { id: 'demand', title: 'Demand', align: 'right', width: 0.9 },
      { id: 'limit', title: 'Limit', align: 'right', width: 0.9 },
      { id: 'use', title: 'Use', align: 'left', width: 1.1 },
      { id: 'case', title: 'Governs', align: 'left', width: 1.5 },
      { id: 'source', title: 'Source', align: 'left', width: 3.1 },
    ],
    rows: [
      ...structure.checks.map((check): Cell[] => [
        cell(`${check.what}${check.who === 'structural engineer' ? '' : ` (${check.who})`}`),
        cell(amount(check.demand, check.unit, check.id)),
        cell(amount(check.capacity, check.unit, check.id)),
        cell(check.ratio === null ? '' : context.say('ratio', check.ratio), verdictOf(check.ratio, check.id)),
        cell(
          structure.combinations.find((row) => row.id === check.note)?.formula ?? check.note ?? 'geometry',
        ),
        cell([sourceRun(check)]),
      ]),
      ...fieldRows(context, candidate),
    ],
  };
}

/** Workings of sliding: the pull down the slope, and each way to hold it. Screening, never an approval. */
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { SlopeWay } from '../../evaluation/fastening.ts';
import type { Working } from '../../evaluation/working.ts';
import { valueIn } from './value.ts';

const snowNames = {
  balanced: 'roof snow',
  unbalanced: 'mean snow of the lee side, after wind over the ridge',
  drift: 'roof snow with the drift below the higher roof',
} as const;

const PROVISIONAL = 'Provisional: the structural engineer decides.';

const wayWords: Readonly<Record<SlopeWay['id'], { title: string; formula: string; tex: string }>> = {
  'screws-across': {
    title: 'Sliding held by the plain screws',
    formula: 'use = F / V',
    tex: 'u = \\frac{F}{V}',
  },
  'eave-block': {
    title: 'Sliding held by a block at the eave',
    formula: 'use = greatest of screws (push F, pull T) and bearing',
    tex: 'T = F\\,e\\,\\frac{x_n}{\\sum x_i^2}',
  },
  'slanted-and-board': {
    title: 'Sliding held by slanted screws against the board',
    formula: 'T = F / cos β, C = F · tan β + N',
    tex: 'T = \\frac{F}{\\cos\\beta},\\quad C = F\\tan\\beta + N',
  },
  'slanted-pairs': {
    title: 'Sliding held by pairs of slanted screws',
    formula: 'T = C = F / (2 · cos β)',
    tex: 'T = C = \\frac{F}{2\\cos\\beta}',
  },
};

function wayWorking(way: SlopeWay): Working {
  const { title, formula, tex } = wayWords[way.id];
  return {
    id: `slope-${way.id}`,
    title,
    formula,
    formulaTex: tex,
    inputs: [
      ...(way.pull_N === null ? [] : [valueIn('T', 'pull in the worst screw', way.pull_N, 'force')]),
      ...(way.push_N === null
        ? []
        : [
            valueIn(
              way.id === 'slanted-and-board' || way.id === 'slanted-pairs' ? 'C' : 'F',
              way.id === 'screws-across'
                ? 'push on one screw'
                : way.id === 'eave-block'
                  ? 'push on one block'
                  : 'push',
              way.push_N,
              'force',
            ),
          ]),
      ...(way.count === null ? [] : [valueIn('n', 'screws in each block', way.count, 'count')]),
      ...(way.spacing_m === null ? [] : [valueIn('s', 'along or between rafters', way.spacing_m, 'length')]),
      ...(way.length_m === null ? [] : [valueIn('L', 'length of block or screw', way.length_m, 'length')]),
    ],
    result: valueIn('u', `use, governed by ${way.governing}`, way.ratio, 'ratio'),
    limit: { value: 1, kind: 'ratio', meaning: 'screening limit', meets: way.ratio <= 1 },
    source: way.source,
    clause: way.clause,
    known: way.known,
    note: `${way.because === '' ? '' : `Needs design: ${way.because}. `}${PROVISIONAL}`,
  };
}

/** Bend of the plain screws over what the wall table is believed to allow; both are too short to show in inches. */
const slipWorking = (slip_m: number, limit_m: number): Working => ({
  id: 'slope-slip',
  title: 'Slip of the upper layers if the plain screws held them alone',
  formula: 'use = (F · g³ / (12 · E · I)) / 0.015 in',
  formulaTex: 'u = \\frac{F g^3}{12 E I\\, \\delta}',
  inputs: [],
  result: valueIn('u', 'slip over 0.015 in (0.4 mm)', slip_m / limit_m, 'ratio'),
  limit: { value: 1, kind: 'ratio', meaning: 'movement behind the wall table', meets: slip_m <= limit_m },
  source: 'IBC-2018',
  clause: 'bar between two faces; movement behind Table 2603.13.2',
  known: 'memory',
  note: 'The steel alone; wood that gives makes it more, foam that carries makes it less.',
});

export function slidingWorkings(angle_deg: number, { slopePath }: Candidate['fasteners']): Working[] {
  return [
    {
      id: 'along-slope',
      title: 'Pull down the slope of all that lies above the board',
      formula: 'p = (D + S) · sin α',
      formulaTex: 'p = (D + S)\\sin\\alpha',
      inputs: [
        valueIn('D', 'weight above the insulation', slopePath.dead_Pa, 'load'),
        valueIn('S', snowNames[slopePath.snowCase], slopePath.snow_Pa, 'load'),
        valueIn('α', 'slope', angle_deg, 'angle'),
      ],
      result: valueIn('p', 'pull for each unit of slope area', slopePath.demand_Pa, 'load'),
      source: 'ASCE-FORENSIC-2012',
      clause: 'abstract; screw capacity across board by the gap equations',
      known: 'seen-secondary',
    },
    ...slopePath.ways.map(wayWorking),
    slipWorking(slopePath.slip_m, slopePath.slipLimit_m),
  ];
}

/** Workings of the long screws: wind by zone, hold, sliding, length and number. Screening, never an approval. */
import { screwOf } from '../../catalog/lumber.ts';
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { FasteningCheck, ScheduleRow } from '../../evaluation/fastening.ts';
import type { Working } from '../../evaluation/working.ts';
import { slidingWorkings } from './sliding.ts';
import { valueIn } from './value.ts';

const PROVISIONAL = 'Provisional: the structural engineer decides.';
const standards = { 'asce7-16': 'ASCE-7-16', 'asce7-22': 'ASCE-7-22' } as const;

type Fasteners = Candidate['fasteners'];

const standInNote = ({ reason, standIn }: NonNullable<Fasteners['windGap']>): string =>
  standIn === null ? `${reason} ` : `Stand-in: ${standIn}; not covered by the table. ${reason} `;

/** The row whose screw is used most; the first where the wind tables do not reach. */
const worstOf = (schedule: readonly ScheduleRow[]): ScheduleRow | undefined =>
  schedule.reduce<ScheduleRow | undefined>(
    (worst, row) => (worst === undefined || (row.ratio ?? 0) > (worst.ratio ?? 0) ? row : worst),
    undefined,
  );

function windWorkings(fasteners: Fasteners, angle_deg: number): Working[] {
  const row = worstOf(fasteners.schedule);
  if (row === undefined || row.uplift_Pa === null || row.suction_Pa === null) return [];
  const source = { source: standards[fasteners.edition], known: 'seen-transcription' };
  const pull = fasteners.checks.find(({ id }) => id === 'screw-withdrawal');
  const note = `${fasteners.windGap === null ? '' : standInNote(fasteners.windGap)}${PROVISIONAL}`;
  return [
    {
      id: 'zone-uplift',
      title: `Net uplift in zone ${row.zone}, where the screws are used most`,
      formula: 'p = 0.6 · W − 0.6 · D · cos α',
      formulaTex: 'p = 0.6\\,W - 0.6\\,D\\cos\\alpha',
      inputs: [
        valueIn('W', 'suction of the zone, strength level', row.suction_Pa, 'load'),
        valueIn('D', 'weight above the insulation', fasteners.slopePath.dead_Pa, 'load'),
        valueIn('α', 'slope', angle_deg, 'angle'),
      ],
      result: valueIn('p', 'net uplift, allowable-stress level', row.uplift_Pa, 'load'),
      ...source,
      clause: 'section 2.4.1 combination 7, chapter 30 for the zone',
      note,
    },
    ...(pull === undefined || pull.demand === null
      ? []
      : [
          {
            id: 'screw-pull',
            title: `Pull on one screw in zone ${row.zone}`,
            formula: 'T = p · s · b',
            formulaTex: 'T = p\\,s\\,b',
            inputs: [
              valueIn('p', 'net uplift', row.uplift_Pa, 'load'),
              valueIn('s', 'spacing along the line', row.spacing_m, 'length'),
              valueIn('b', 'between lines', row.across_m, 'length'),
            ],
            result: valueIn('T', 'pull', pull.demand, 'force'),
            ...(pull.open || pull.ratio === null
              ? {}
              : {
                  limit: {
                    value: pull.capacity,
                    kind: 'force' as const,
                    meaning: 'withdrawal of one screw in wind',
                    meets: pull.ratio <= 1,
                  },
                }),
            ...source,
            clause: 'tributary area of one screw',
            note,
          },
        ]),
  ];
}

function holdWorkings({ hold, into }: Fasteners): Working[] {
  const screw = screwOf('wood-14');
  const isReported = (name: Fasteners['hold']['fromReport'][number]): boolean =>
    hold.fromReport.includes(name);
  const report = { source: 'USER', clause: 'report of the screw', known: 'seen-secondary' };
  const equations = { source: 'NDS-2018', known: 'seen-transcription' };
  return [
    {
      id: 'screw-withdrawal',
      title: `What the thread of one screw holds in the ${into}`,
      formula: 'W = 2850 · G² · D · p',
      formulaTex: 'W = 2850\\,G^2 D\\,p',
      inputs: [
        valueIn('G', `specific gravity of the ${into}`, hold.mainGravity, 'ratio'),
        valueIn('D', 'diameter of the screw', hold.nominal_m, 'length'),
        valueIn('p', 'thread that counts', hold.thread_m, 'length'),
      ],
      result: valueIn('W', 'withdrawal at load duration 1', hold.withdrawal_N, 'force'),
      ...(isReported('withdrawal') ? report : { ...equations, clause: 'eq. 12.2-2' }),
      ...(isReported('withdrawal')
        ? {}
        : {
            calculation: {
              name: 'screw-withdrawal',
              input: {
                kind: screw.kind,
                diameter_m: hold.nominal_m,
                specificGravity: hold.mainGravity,
                threadPenetration_m: hold.thread_m,
              },
            },
          }),
      note: `In wind the value is multiplied by ${hold.windDuration}. The formula is in lb and inches.`,
    },
    ...(hold.pullThrough_N === null
      ? []
      : [
          {
            id: 'head-pull-through',
            title: 'What the head of one screw holds',
            formula: 'H = 690 · π · d · G² · t, or 1725 · π · d² · G² in wood thicker than 2.5 d',
            formulaTex: 'H = 690\\,\\pi\\,d\\,G^2 t',
            inputs: [
              valueIn('d', 'diameter of the head', hold.head_m ?? 0, 'length'),
              valueIn('G', 'specific gravity under the head', hold.sideGravity, 'ratio'),
              valueIn('t', 'thickness under the head', hold.side_m, 'length'),
            ],
            result: valueIn('H', 'pull-through at load duration 1', hold.pullThrough_N, 'force'),
            ...(isReported('pull-through') ? report : { ...equations, clause: 'section 12.2.5' }),
          },
        ]),
    {
      id: 'gap-shear',
      title: 'What one screw holds along the slope across the board',
      formula: 'V = 0.72 · Z(g)',
      formulaTex: 'V = 0.72\\,Z(g)',
      inputs: [
        valueIn('g', 'board between the wood faces', hold.gap_m, 'length'),
        valueIn('t_s', 'wood under the head', hold.side_m, 'length'),
        valueIn('p', 'thread that counts', hold.thread_m, 'length'),
      ],
      result: valueIn('V', `sustained shear, yield mode ${hold.mode}`, hold.lateral_N, 'force'),
      ...(isReported('lateral')
        ? report
        : {
            source: 'AWC-TR12',
            clause: 'general dowel equations; share from IBC Table 2603.13.2',
            known: 'memory',
          }),
      calculation: {
        name: 'screw-lateral',
        input: {
          diameter_m: hold.root_m,
          nominalDiameter_m: hold.nominal_m,
          bendingYield_Pa: screw.bendingYield_Pa,
          sideThickness_m: hold.side_m,
          sideSpecificGravity: hold.sideGravity,
          mainPenetration_m: hold.thread_m,
          mainSpecificGravity: hold.mainGravity,
          gap_m: hold.gap_m,
        },
      },
      note: 'The calculation gives Z; 0.72 of it is what the wall table of the code allows.',
    },
  ];
}

const checkKinds = { N: 'force', m: 'length', Pa: 'stress' } as const;

/** Checks that no other working shows. */
const ownChecks = new Set(['screw-combined', 'screw-penetration', 'screw-edge', 'screw-row']);

type Worked = FasteningCheck & { readonly demand: number; readonly ratio: number };
const isWorked = (check: FasteningCheck): check is Worked => check.demand !== null && check.ratio !== null;

const checkWorking = (check: Worked): Working => ({
  id: `fastening-${check.id}`,
  title: check.what,
  formula: 'use = demand / limit',
  formulaTex: 'u = \\frac{E}{R}',
  inputs: [
    valueIn('E', 'demand', check.demand, checkKinds[check.unit]),
    valueIn('R', 'limit of this screening', check.capacity, checkKinds[check.unit]),
  ],
  result: valueIn('u', 'use; past 1 the screening fails', check.ratio, 'ratio'),
  ...(check.open
    ? {}
    : { limit: { value: 1, kind: 'ratio', meaning: 'screening limit', meets: check.ratio <= 1 } }),
  source: check.source,
  clause: check.clause,
  known: check.known,
  note: check.open ? `Wind of a stand-in, not covered by the table. ${PROVISIONAL}` : PROVISIONAL,
});

export function fasteningWorkings({ requirements }: Evaluation, candidate: Candidate): Working[] {
  const { fasteners, layers } = candidate;
  const { missesRafter } = fasteners;
  const stack_m = layers
    .filter(({ role }) => role === 'insulation' || role === 'vent-gap')
    .reduce((sum, layer) => sum + layer.thickness_m, 0);
  const deck_m = layers.find(({ role }) => role === 'deck')?.thickness_m ?? 0;
  return [
    {
      id: 'screw-length',
      title: 'Length of the long screws',
      formula: 'L = layers + deck + embedment, rounded up to a length sold',
      formulaTex: 'L = \\lceil t + t_{deck} + e \\rceil',
      inputs: [
        valueIn('t', 'board and vented space', stack_m, 'length'),
        valueIn('t_deck', 'deck', deck_m, 'length'),
        valueIn('e', `into the ${fasteners.into}`, fasteners.penetration_m, 'length'),
      ],
      result: valueIn('L', 'screw', fasteners.screwLength_m, 'length'),
      source: 'COMMON-PRACTICE',
      clause: '1 1/2 in of thread in the rafter, or past the deck for panels',
      known: 'common practice',
      ...(fasteners.sold ? {} : { note: 'Longer than commonly sold.' }),
    },
    ...windWorkings(fasteners, requirements.slope.angle_deg),
    ...holdWorkings(fasteners),
    {
      id: 'screw-count',
      title: 'Screws on the whole roof',
      formula: 'n = sum over the zones of A / (s · b), rounded up',
      formulaTex: 'n = \\sum_z \\left\\lceil \\frac{A_z}{s_z b_z} \\right\\rceil',
      inputs: fasteners.schedule.map((row) =>
        valueIn(`n_${row.zone}`, `zone ${row.zone}`, row.count, 'count'),
      ),
      result: valueIn('n', 'screws', fasteners.count, 'count'),
      source: 'COMMON-PRACTICE',
      clause: 'area of each zone over the area of one screw',
      known: 'computed',
    },
    ...slidingWorkings(requirements.slope.angle_deg, fasteners),
    ...fasteners.checks
      .filter(({ id }) => ownChecks.has(id))
      .filter(isWorked)
      .map(checkWorking),
    ...(missesRafter === null || missesRafter.demand_N === null || missesRafter.ratio === null
      ? []
      : [
          {
            id: 'missed-rafter',
            title: 'A screw that misses the rafter',
            formula: 'use = pull / hold in the deck alone',
            formulaTex: 'u = \\frac{T}{W_{deck}}',
            inputs: [
              valueIn('T', 'pull on the worst screw', missesRafter.demand_N, 'force'),
              valueIn('W_deck', 'hold in the deck, in wind', missesRafter.hold_N, 'force'),
            ],
            result: valueIn('u', 'use', missesRafter.ratio, 'ratio'),
            ...(fasteners.windGap === null
              ? {
                  limit: {
                    value: 1,
                    kind: 'ratio' as const,
                    meaning: 'hold of the deck',
                    meets: missesRafter.ratio <= 1,
                  },
                }
              : {}),
            source: missesRafter.source,
            clause: missesRafter.clause,
            known: missesRafter.known,
            note: 'An estimate: the deck is thinner than the thread that the standard asks. Pull and replace every miss.',
          },
        ]),
  ];
}

/** Workings of what is screened for the engineer: overhang, sliding, screws. Never an approval. */
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';
import { measureKinds, type MeasureKind } from '../../measures.ts';
import { valueIn } from './value.ts';

/** The measure kind that shows a check's unit. */
const kindOf: Readonly<Record<string, MeasureKind>> = { Pa: 'stress', N: 'force', m: 'length' };

export function strengthWorkings({ requirements }: Evaluation, candidate: Candidate): Working[] {
  const { structure, fasteners, layers } = candidate;
  const angle = valueIn('α', 'slope', requirements.slope.angle_deg, 'angle');
  const stack_m = layers
    .filter(({ role }) => role === 'insulation' || role === 'vent-gap')
    .reduce((sum, layer) => sum + layer.thickness_m, 0);
  const deck_m = layers.find(({ role }) => role === 'deck')?.thickness_m ?? 0;
  const checks = structure.checks.flatMap((check): Working[] => {
    const kind = kindOf[check.unit] ?? measureKinds[0];
    if (check.demand === null || check.capacity === null || kind === undefined) return [];
    return [
      {
        id: `check-${check.id}`,
        title: check.what,
        formula: 'use = demand / limit',
        formulaTex: 'u = \\frac{E}{R}',
        inputs: [
          valueIn('E', 'demand', check.demand, kind),
          valueIn('R', 'limit of this screening', check.capacity, kind),
        ],
        result: valueIn('u', 'use; past 1 the screening fails', check.ratio ?? 0, 'ratio'),
        limit: { value: 1, kind: 'ratio', meaning: 'screening limit', meets: (check.ratio ?? 0) <= 1 },
        source: check.source,
        clause: check.clause,
        known: check.known,
        note: `Provisional: the ${check.who} decides.`,
      },
    ];
  });
  return [
    {
      id: 'overhang-use',
      title: 'Overhang against its screening limit',
      formula: 'use = overhang / limit',
      formulaTex: 'u = \\frac{a}{a_{lim}}',
      inputs: [
        valueIn('a', 'eave overhang, horizontal', structure.overhang_m, 'length'),
        valueIn('a_lim', 'screening limit of the carrier', structure.screeningLimit_m, 'length'),
      ],
      result: valueIn('u', 'use', structure.use, 'ratio'),
      limit: { value: 1, kind: 'ratio', meaning: 'screening limit', meets: structure.use <= 1 },
      source: 'NDS-2018',
      clause: 'screening of bending, shear, sag and screws; prescriptive limits',
      known: 'seen-secondary',
      note: 'Provisional: the structural engineer decides.',
    },
    ...checks,
    {
      id: 'along-slope',
      title: 'Pull down the slope of all that lies above the board',
      formula: 'p = (D + S) · sin α',
      formulaTex: 'p = (D + S)\\sin\\alpha',
      inputs: [angle, valueIn('u', 'use of the plain screw schedule', fasteners.slopeUse, 'ratio')],
      result: valueIn('p', 'pull for each unit of slope area', structure.alongSlope_Pa, 'load'),
      limit: { value: 1, kind: 'ratio', meaning: 'use of the screws alone', meets: fasteners.slopeUse <= 1 },
      source: 'ASCE-FORENSIC-2012',
      clause: 'abstract; screw capacity across board by the gap equations',
      known: 'seen-secondary',
      note: 'Past 1 an eave stop, inclined screws or straps need design.',
    },
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
  ];
}

/** Workings of what is screened for the engineer: the overhang and its carrier. Never an approval. */
import type { Candidate } from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';
import { measureKinds, type MeasureKind } from '../../measures.ts';
import { valueIn } from './value.ts';

/** The measure kind that shows a check's unit. */
const kindOf: Readonly<Record<string, MeasureKind>> = {
  Pa: 'stress',
  N: 'force',
  m: 'length',
  ratio: 'ratio',
};

export function strengthWorkings(candidate: Candidate): Working[] {
  const { structure } = candidate;
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
        ...(check.id.startsWith('robust')
          ? {}
          : {
              limit: {
                value: 1,
                kind: 'ratio' as const,
                meaning: 'screening limit',
                meets: (check.ratio ?? 0) <= 1,
              },
            }),
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
  ];
}

/** Workings of the loads and of the combination that governs the carrier of the overhang. Never an approval. */
import type { Candidate, Evaluation, NamedLoad } from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';
import { valueIn } from './value.ts';

const PROVISIONAL = 'Provisional: the authority gives the figures, the structural engineer decides.';

type Cited = Pick<Working, 'source' | 'clause' | 'known'>;
const citedFrom = ({ source, clause, known }: NamedLoad): Cited => ({ source, clause, known });
const noteOf = (load: NamedLoad): string =>
  [load.note, load.confirm ? 'Confirm in the standard.' : undefined, PROVISIONAL].filter(Boolean).join(' ');

/** The named loads of place and build-up, by id. */
function loadsById({ siteLoads }: Evaluation, candidate: Candidate): (id: string) => NamedLoad | undefined {
  const all = [...siteLoads.loads, ...candidate.structure.loads];
  return (id) => all.find((load) => load.id === id);
}

function snowWorkings(evaluation: Evaluation, find: (id: string) => NamedLoad | undefined): Working[] {
  const value = (id: string): number => find(id)?.value ?? 0;
  const flat = find('flat-snow');
  const sloped = find('sloped-snow');
  if (flat === undefined || sloped === undefined) return [];
  const { angle_deg } = evaluation.requirements.slope;
  const lee = find('leeward-snow');
  const ice = find('eave-ice');
  return [
    {
      id: 'flat-snow',
      title: 'Snow on a flat roof',
      formula: 'p_f = 0.7 · C_e · C_t · I_s · p_g',
      formulaTex: 'p_f = 0.7\\,C_e C_t I_s\\,p_g',
      inputs: [
        valueIn('C_e', 'exposure factor', value('snow-exposure'), 'ratio'),
        valueIn('C_t', 'thermal factor', value('snow-thermal'), 'ratio'),
        valueIn('I_s', 'importance factor', value('snow-importance'), 'ratio'),
        valueIn('p_g', 'ground snow', value('ground-snow'), 'load'),
      ],
      result: valueIn('p_f', 'flat roof snow, level projection', flat.value ?? 0, 'load'),
      ...citedFrom(flat),
      note: noteOf(flat),
    },
    {
      id: 'sloped-snow',
      title: 'Snow that stays on the slope',
      formula: 'p_s = C_s · p_f',
      formulaTex: 'p_s = C_s\\,p_f',
      inputs: [
        valueIn('C_s', 'slope factor', value('slope-factor'), 'ratio'),
        valueIn('p_f', 'flat roof snow', flat.value ?? 0, 'load'),
        valueIn('α', 'slope', angle_deg, 'angle'),
      ],
      result: valueIn('p_s', 'sloped roof snow, level projection', sloped.value ?? 0, 'load'),
      ...citedFrom(sloped),
      note: noteOf(sloped),
    },
    ...(lee === undefined
      ? []
      : [
          {
            id: 'leeward-snow',
            title: 'Snow of the lee side after wind over the ridge',
            formula: 'short roofs: I_s · p_g; else p_s, and h_d · γ / √S next to the ridge',
            formulaTex: 'I_s p_g \\;\\text{or}\\; p_s + h_d\\gamma/\\sqrt{S}',
            inputs: [
              valueIn('p_g', 'ground snow', value('ground-snow'), 'load'),
              valueIn('p_s', 'sloped roof snow', sloped.value ?? 0, 'load'),
              valueIn('h_d·γ/√S', 'on top of it next to the ridge', value('ridge-surcharge'), 'load'),
            ],
            result: valueIn('p', 'lee side, eave and all', lee.value ?? 0, 'load'),
            ...citedFrom(lee),
            note: noteOf(lee),
          },
        ]),
    ...(ice === undefined
      ? []
      : [
          {
            id: 'eave-ice',
            title: 'Ice along the eave',
            formula: 'p = 2 · p_f',
            formulaTex: 'p = 2\\,p_f',
            inputs: [valueIn('p_f', 'flat roof snow', flat.value ?? 0, 'load')],
            result: valueIn('p', 'on the overhang, with dead load alone', ice.value ?? 0, 'load'),
            ...citedFrom(ice),
            note: noteOf(ice),
          },
        ]),
  ];
}

function windWorkings(evaluation: Evaluation, find: (id: string) => NamedLoad | undefined): Working[] {
  const { siteLoads } = evaluation;
  const value = (id: string): number => find(id)?.value ?? 0;
  const pressure = find('velocity-pressure');
  if (pressure === undefined) return [];
  const zones = siteLoads.windZones.flatMap((zone): Working[] =>
    zone.uplift_Pa === null
      ? []
      : [
          {
            id: `wind-${zone.id}`,
            title: `Wind suction: ${zone.id.replaceAll('-', ' ')} (${zone.zones.join(', ')})`,
            formula: 'p = q · G_Cp, the greatest suction of these zones',
            formulaTex: 'p = q\\,(GC_p - GC_{pi})',
            inputs: [
              valueIn('q', 'velocity pressure', pressure.value ?? 0, 'load'),
              valueIn('A', 'effective wind area, the smallest of the figure', zone.effectiveArea_m2, 'area'),
              valueIn(
                'p/q',
                'coefficient, inside pressure in on the roof',
                zone.uplift_Pa / (pressure.value ?? 1),
                'ratio',
              ),
            ],
            result: valueIn('p', 'suction at strength level, square to the surface', zone.uplift_Pa, 'load'),
            ...citedFrom(pressure),
            clause: 'figures of chapter 30',
            note: noteOf(pressure),
          },
        ],
  );
  return [
    {
      id: 'velocity-pressure',
      title: 'Velocity pressure of the wind',
      formula: 'q = 0.613 · K_z · K_zt · K_d · K_e · V²',
      formulaTex: 'q = 0.613\\,K_z K_{zt} K_d K_e V^2',
      inputs: [
        valueIn('K_z', 'exposure coefficient at mean roof height', value('exposure-coefficient'), 'ratio'),
        valueIn('K_zt', 'topographic factor', value('topographic-factor'), 'ratio'),
        valueIn('K_e', 'ground elevation factor', value('elevation-factor'), 'ratio'),
        valueIn('V', 'basic wind speed', value('wind-speed'), 'speed'),
      ],
      result: valueIn('q', 'at mean roof height, K_d = 0.85 in', pressure.value ?? 0, 'load'),
      ...citedFrom(pressure),
      note: `${siteLoads.standardReason} ${noteOf(pressure)}`,
    },
    ...zones,
  ];
}

/** The combination with the greatest use, and what it does to the member. */
function governingWorkings({ structure }: Candidate): Working[] {
  const { combinations, plan } = structure;
  const most = combinations
    .filter((row) => row.counts)
    .reduce<(typeof combinations)[number] | undefined>(
      (best, next) => (best === undefined || next.use > best.use ? next : best),
      undefined,
    );
  if (most === undefined || plan === null) return [];
  const statics: Cited = {
    source: 'AWC-BEAM-FORMULAS',
    clause: 'overhanging beam, own statics',
    known: 'computed',
  };
  const a = valueIn('a', 'overhang along the member', plan.overhang_m, 'length');
  const b = valueIn('b', 'back span', plan.backSpan_m, 'length');
  const w = valueIn('w', 'load along the member', most.normal_Pa * plan.spacing_m, 'lineLoad');
  const tip_N = most.id === 'uplift' ? 0 : plan.tip_N;
  const p = valueIn('P', 'load at the tip', tip_N, 'force');
  return [
    {
      id: 'governing-combination',
      title: 'Combination that governs the member',
      formula: `w = (${most.formula}) · s, square to the slope`,
      formulaTex: 'w = p_n\\,s',
      inputs: [
        valueIn('p_n', 'combined load square to the slope', most.normal_Pa, 'load'),
        valueIn('s', 'spacing of the members', plan.spacing_m, 'length'),
        valueIn('C_D', 'load duration factor', most.loadDuration, 'ratio'),
      ],
      result: valueIn('w', 'load along the member', most.normal_Pa * plan.spacing_m, 'lineLoad'),
      source: 'ASCE-7-16',
      clause: most.clause,
      known: 'memory',
      note: PROVISIONAL,
    },
    {
      id: 'overhang-moment',
      title: 'Moment at the wall line',
      formula: 'M = w · a² / 2 + P · a',
      formulaTex: 'M = \\tfrac{1}{2}wa^2 + Pa',
      inputs: [w, a, p],
      result: valueIn('M', 'moment at the wall line', most.moment_Nm, 'moment'),
      ...statics,
      note: PROVISIONAL,
    },
    {
      id: 'heel-reaction',
      title: 'Pull at the heel',
      formula: 'R_B = M / b',
      formulaTex: 'R_B = M/b',
      inputs: [valueIn('M', 'moment at the wall line', most.moment_Nm, 'moment'), b],
      result: valueIn('R_B', 'hold-down of the inner end', most.heel_N, 'force'),
      ...statics,
      note: PROVISIONAL,
    },
    {
      id: 'wall-reaction',
      title: 'Push of the wall line',
      formula: 'R_A = w · a + P + R_B',
      formulaTex: 'R_A = wa + P + R_B',
      inputs: [w, a, p, valueIn('R_B', 'hold-down of the inner end', most.heel_N, 'force')],
      result: valueIn('R_A', 'push of the wall line; below zero it holds down', most.wall_N, 'force'),
      ...statics,
      note: PROVISIONAL,
    },
  ];
}

/** Snow, wind and the governing combination of one candidate. */
export function loadWorkings(evaluation: Evaluation, candidate: Candidate): Working[] {
  const find = loadsById(evaluation, candidate);
  return [
    ...snowWorkings(evaluation, find),
    ...windWorkings(evaluation, find),
    ...governingWorkings(candidate),
  ];
}

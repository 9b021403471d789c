/** Workings of the roof edge: build-up, fascia, ridge, ice barrier, air-barrier joints, vent area. */
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';
import { layersAboveFraming } from '../../roof/assembly.ts';
import { valueIn } from './value.ts';

const PRACTICE = { source: 'COMMON-PRACTICE', known: 'computed' } as const;

export function edgeWorkings({ requirements, case: given }: Evaluation, candidate: Candidate): Working[] {
  const { edge, airBarrier, ventilation } = candidate;
  const angle = valueIn('α', 'slope', requirements.slope.angle_deg, 'angle');
  const layers = layersAboveFraming(candidate.layers);
  const calculation = {
    name: 'roof-edge',
    input: {
      angle_deg: requirements.slope.angle_deg,
      layers: layers.map(({ thickness_m }) => ({ thickness_m })),
      framingDepth_m: edge.carrierDepth_m,
      cut: edge.cut,
      carrier: edge.carrier,
    },
  };
  const buildUp = valueIn('t', 'build-up', edge.buildUp_m, 'length');
  const isPlumb = edge.cut === 'plumb';
  const iceBarrier = requirements.iceBarrier;
  return [
    {
      id: 'build-up',
      title: 'Build-up above the framing',
      formula: 't = Σ layers, square to the slope',
      formulaTex: 't = \\sum_i t_i',
      inputs: layers.map((layer, index) =>
        valueIn(`t_${index + 1}`, layer.name, layer.thickness_m, 'length'),
      ),
      result: buildUp,
      ...PRACTICE,
      clause: 'plane geometry',
      calculation,
    },
    {
      id: 'fascia',
      title: 'Height of the fascia',
      formula: isPlumb ? 'h = (t + d) / cos α' : 'h = t + d',
      formulaTex: isPlumb ? 'h = \\frac{t + d}{\\cos\\alpha}' : 'h = t + d',
      inputs: [buildUp, valueIn('d', 'depth of the tail behind it', edge.carrierDepth_m, 'length'), angle],
      result: valueIn('h', 'fascia', edge.fascia_m, 'length'),
      ...(edge.fasciaLimit_m === null
        ? {}
        : {
            limit: {
              value: edge.fasciaLimit_m,
              kind: 'length' as const,
              meaning: 'greatest fascia wanted',
              meets: edge.fascia_m <= edge.fasciaLimit_m,
            },
          }),
      ...PRACTICE,
      clause: 'plane geometry',
      calculation,
    },
    {
      id: 'ridge-rise',
      title: 'Rise of the ridge',
      formula: 'Δ = t / cos α',
      formulaTex: '\\Delta = \\frac{t}{\\cos\\alpha}',
      inputs: [buildUp, angle],
      result: valueIn('Δ', 'ridge rises by', edge.ridgeRise_m, 'length'),
      ...(edge.ridgeLimit_m === null
        ? {}
        : {
            limit: {
              value: edge.ridgeLimit_m,
              kind: 'length' as const,
              meaning: 'greatest rise allowed',
              meets: edge.ridgeRise_m <= edge.ridgeLimit_m,
            },
          }),
      ...PRACTICE,
      clause: 'plane geometry',
      calculation,
    },
    {
      id: 'ice-barrier',
      title: 'Length of the ice barrier up the slope',
      formula: 'L = (overhang + wall + 24 in) · √(1 + (rise/12)²)',
      formulaTex: 'L = (o + w + 24\\,\\mathrm{in})\\sqrt{1 + (rise/12)^2}',
      inputs: [
        valueIn('o', 'eave overhang, horizontal', given.overhang?.eave_m ?? 0, 'length'),
        valueIn('w', 'wall thickness', given.wall?.thickness_m ?? 0, 'length'),
        valueIn('rise', 'pitch', requirements.slope.pitch_rise_per_12, 'pitch'),
      ],
      result: valueIn('L', 'along the slope from the eave edge', iceBarrier.length_m, 'length'),
      source: iceBarrier.source,
      clause: iceBarrier.clause,
      known: iceBarrier.known,
      note: iceBarrier.required
        ? `Asked for here: ${iceBarrier.courses} courses of a 36 in (914 mm) roll.`
        : 'Not asked for here by the answers given; the length shows what it would be.',
    },
    {
      id: 'air-barrier-joints',
      title: 'Joints of the air barrier along the eaves',
      formula: 'ℓ = joint length / eave length',
      formulaTex: '\\ell = L_{joints} / L_{eave}',
      inputs: [
        valueIn('n', 'bays to block and seal', airBarrier.bays, 'count'),
        valueIn('L_joints', 'joints in all', airBarrier.jointLength_m, 'span'),
        valueIn('L_eave', 'wall line along the eaves', airBarrier.eaveLength_m, 'span'),
      ],
      result: valueIn('ℓ', 'joint for each unit of eave', airBarrier.jointLengthPerEave_m_m, 'ratio'),
      ...PRACTICE,
      clause: 'count of tails and blocks',
      note: airBarrier.summary,
    },
    {
      id: 'vent-area',
      title: 'Net free area of the vent intake',
      formula: 'A = slope length / 300 / 2, for each unit of eave',
      formulaTex: 'A = \\frac{L_{slope}}{300 \\cdot 2}',
      inputs: [valueIn('g', 'clear gap', ventilation.gap_m, 'length')],
      result: valueIn(
        'A',
        'area over length: height of a clear slot',
        ventilation.netFreeArea_m2_m,
        'length',
      ),
      source: 'IRC-2018-R806.1',
      clause: 'ratio used as a yardstick only: R806 does not govern a gap above board',
      known: 'seen-secondary',
    },
  ];
}

/** Workings of heat loss. */
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { Working, WorkingInput } from '../../evaluation/working.ts';
import { valueIn } from './value.ts';

const signOf: Readonly<Record<Candidate['thermal']['losses'][number]['id'], string>> = {
  clear: 'U_clear',
  framing: 'ΔU_framing',
  'eave-band': 'ΔU_eave',
  'rake-band': 'ΔU_rake',
  nailers: 'ΔU_nailers',
  'panel-blocking': 'ΔU_blocks',
  screws: 'ΔU_screws',
  'air-voids': 'ΔU_joints',
};

const lossInputs = ({ losses }: Candidate['thermal']): WorkingInput[] =>
  losses.map(({ id, what, transmittance_W_m2K }) =>
    valueIn(signOf[id], what, transmittance_W_m2K, 'transmittance'),
  );

function combinedWorking({ combined, fieldTransmittance_W_m2K }: Candidate['thermal']): Working {
  return {
    id: 'combined-resistance',
    title: 'R of the field by the combined method, beside the parallel path',
    formula: 'R = (R′ + R″) / 2',
    formulaTex: "R = \\frac{R' + R''}{2}",
    inputs: [
      valueIn(
        'R′',
        'upper limit: heat straight through (parallel path)',
        combined.upperLimit_m2K_W,
        'resistance',
      ),
      valueIn('R″', 'lower limit: each plane at one temperature', combined.lowerLimit_m2K_W, 'resistance'),
      valueIn('U′', 'parallel path', fieldTransmittance_W_m2K, 'transmittance'),
      valueIn('U', 'combined method', combined.transmittance_W_m2K, 'transmittance'),
      valueIn('e', 'greatest error, (R′ − R″) / 2R', combined.error_pct, 'share'),
    ],
    result: valueIn('R', 'combined method', combined.resistance_m2K_W, 'resistance'),
    source: 'ISO-6946-2017',
    clause: 'clauses 6.7.2.2 to 6.7.2.5',
    known: 'memory',
    note: 'The code is held against the parallel path, which flatters the roof a little; the truth lies between the limits.',
  };
}

const effectiveWorking = ({
  effectiveResistance_m2K_W,
  transmittance_W_m2K,
}: Candidate['thermal']): Working => ({
  id: 'effective-resistance',
  title: 'Effective R of the whole roof',
  formula: 'R = 1 / U',
  formulaTex: 'R = \\frac{1}{U}',
  inputs: [valueIn('U', 'whole roof over the heated rooms', transmittance_W_m2K, 'transmittance')],
  result: valueIn('R', 'effective, every bridge in', effectiveResistance_m2K_W, 'resistance'),
  source: 'ISO-6946-2017',
  clause: 'clause 6.5',
  known: 'memory',
});

const seasonWorking = ({ season, transmittance_W_m2K, zones }: Candidate['thermal']): Working => ({
  id: 'season-loss',
  title: 'Heat through the roof in a heating season',
  formula: 'Q = U · HDD · 24 h · A',
  formulaTex: 'Q = U \\cdot HDD \\cdot 24\\,\\mathrm{h} \\cdot A',
  inputs: [
    valueIn('U', 'whole roof', transmittance_W_m2K, 'transmittance'),
    valueIn('HDD', 'heating degree days', season.heatingDegreeDays18_Cd, 'degreeDays'),
    valueIn(
      'A',
      'roof over the heated rooms',
      zones.reduce((sum, zone) => sum + zone.area_m2, 0),
      'area',
    ),
    valueIn('Q/A', 'for each unit of roof', season.perArea_kWh_m2, 'energyPerArea'),
  ],
  result: valueIn('Q', 'in a season', season.whole_kWh, 'energy'),
  source: 'ASHRAE-HOF-2017',
  clause: 'steady transmission with degree days',
  known: 'memory',
  note: season.basis,
});

export function heatWorkings({ requirements }: Evaluation, { thermal, fasteners }: Candidate): Working[] {
  const { ceiling } = requirements;
  const code = { source: ceiling.source, clause: ceiling.clause, known: ceiling.known };
  return [
    {
      id: 'total-resistance',
      title: 'Total labeled R, for the R-value path',
      formula: 'R = R_above + R_below',
      formulaTex: 'R = R_{above} + R_{below}',
      inputs: [
        valueIn('R_above', 'above the deck, labeled', thermal.aboveDeck_m2K_W, 'resistance'),
        valueIn('R_below', 'below the deck, labeled', thermal.belowDeck_m2K_W, 'resistance'),
      ],
      result: valueIn('R', 'total', thermal.total_m2K_W, 'resistance'),
      limit: {
        value: ceiling.resistance_m2K_W,
        kind: 'resistance',
        meaning: 'least ceiling R of the energy code',
        meets: thermal.meetsCeilingResistance,
      },
      ...code,
    },
    {
      id: 'transmittance',
      title: 'Heat through the whole roof',
      formula: 'U = U_clear + Σ ΔU',
      formulaTex: 'U = U_{clear} + \\sum \\Delta U',
      inputs: [
        ...lossInputs(thermal),
        valueIn(
          'U_field',
          'field, framing in by parallel path',
          thermal.fieldTransmittance_W_m2K,
          'transmittance',
        ),
        valueIn('s', 'share of the heated roof with outriggers in the board', thermal.bandShare_pct, 'share'),
        ...(thermal.bandTransmittance_W_m2K === null
          ? []
          : [valueIn('U_band', 'that band', thermal.bandTransmittance_W_m2K, 'transmittance')]),
        valueIn('n', 'screws per area', fasteners.perArea_1_m2, 'perArea'),
        valueIn('f', 'framing share of the cavity', thermal.framingShare_pct, 'share'),
      ],
      result: valueIn('U', 'whole roof', thermal.transmittance_W_m2K, 'transmittance'),
      limit: {
        value: ceiling.transmittance_W_m2K,
        kind: 'transmittance',
        meaning: 'greatest ceiling U of the energy code',
        meets: thermal.meetsTransmittance,
      },
      ...code,
      note: thermal.transmittanceSummary,
    },
    effectiveWorking(thermal),
    combinedWorking(thermal),
    seasonWorking(thermal),
  ];
}

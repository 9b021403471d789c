/** Workings of heat loss. */
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import type { Working } from '../../evaluation/working.ts';
import { valueIn } from './value.ts';

export function heatWorkings({ requirements }: Evaluation, { thermal, fasteners }: Candidate): Working[] {
  const { ceiling } = requirements;
  const code = { source: ceiling.source, clause: ceiling.clause, known: ceiling.known };
  const band = thermal.bandTransmittance_W_m2K;
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
      formula: 'U = (1 − s) · U_field + s · U_band + ΔU_screws',
      formulaTex: 'U = (1 - s)\\,U_{field} + s\\,U_{band} + \\Delta U_{screws}',
      inputs: [
        valueIn(
          'U_field',
          'field, framing in by parallel path',
          thermal.fieldTransmittance_W_m2K,
          'transmittance',
        ),
        valueIn('s', 'share of roof with outriggers in the board', thermal.bandShare_pct, 'share'),
        ...(band === null ? [] : [valueIn('U_band', 'that band', band, 'transmittance')]),
        valueIn('n', 'screws per area', fasteners.perArea_1_m2, 'perArea'),
        valueIn('ΔU', 'added by the screws', thermal.fastenerCorrection_W_m2K, 'transmittance'),
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
  ];
}

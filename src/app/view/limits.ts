/** What each leading candidate is held against: number, limit, margin and whether it meets, straight from the evaluation. */
import type { Candidate, Evaluation } from '../../evaluation/evaluation.ts';
import { show, type MeasureKind, type System } from '../../measures.ts';

export interface LimitCell {
  readonly value: number;
  /** Null when there is no limit to hold it against. */
  readonly limit: number | null;
  readonly margin: number | null;
  readonly meets: boolean | null;
}

export interface LimitRow {
  readonly id: string;
  readonly label: string;
  readonly kind: MeasureKind;
  /** Kind of the margin when it differs: a temperature's margin is a difference. */
  readonly marginKind: MeasureKind;
  /** `at least` or `at most`. */
  readonly sense: 'at least' | 'at most';
  readonly source: string;
  readonly known: string;
  readonly cell: (candidate: Candidate) => LimitCell;
}

export function limitRows(evaluation: Evaluation): readonly LimitRow[] {
  const { aboveDeckTable, ceiling, temperatureRule } = evaluation.requirements;
  return [
    {
      id: 'above-deck',
      label: 'R above the deck, table rule',
      kind: 'resistance',
      marginKind: 'resistance',
      sense: 'at least',
      source: aboveDeckTable.source,
      known: aboveDeckTable.known,
      cell: ({ condensationControl: { table } }) => ({
        value: table.provided_m2K_W,
        limit: table.minimum_m2K_W,
        margin: table.margin_m2K_W,
        meets: table.meets,
      }),
    },
    {
      id: 'deck-temperature',
      label: 'Deck temperature, three coldest months',
      kind: 'temperature',
      marginKind: 'temperatureDifference',
      sense: 'at least',
      source: temperatureRule.source,
      known: temperatureRule.known,
      cell: ({ condensationControl: { temperature } }) => ({
        value: temperature.deck_C,
        limit: temperature.limit_C,
        margin: temperature.margin_K,
        meets: temperature.meets,
      }),
    },
    {
      id: 'indoor-humidity',
      label: 'Highest indoor humidity the deck bears',
      kind: 'humidity',
      marginKind: 'humidity',
      sense: 'at least',
      source: 'ASHRAE-HOF-2017-CH1',
      known: 'seen-secondary',
      cell: ({ condensationControl: { humidity } }) => ({
        value: humidity.maximumIndoor_pct,
        limit: humidity.indoor_pct,
        margin: humidity.margin_pct,
        meets: humidity.meets,
      }),
    },
    {
      id: 'ceiling-resistance',
      label: 'R of the whole roof, energy code',
      kind: 'resistance',
      marginKind: 'resistance',
      sense: 'at least',
      source: ceiling.source,
      known: ceiling.known,
      cell: ({ thermal }) => ({
        value: thermal.total_m2K_W,
        limit: ceiling.resistance_m2K_W,
        margin: thermal.ceilingMargin_m2K_W,
        meets: thermal.meetsCeilingResistance,
      }),
    },
    {
      id: 'transmittance',
      label: 'U of the whole roof, energy code',
      kind: 'transmittance',
      marginKind: 'transmittance',
      sense: 'at most',
      source: ceiling.source,
      known: ceiling.known,
      cell: ({ thermal }) => ({
        value: thermal.transmittance_W_m2K,
        limit: ceiling.transmittance_W_m2K,
        margin: thermal.transmittanceMargin_W_m2K,
        meets: thermal.meetsTransmittance,
      }),
    },
    {
      id: 'fascia',
      label: 'Fascia height',
      kind: 'length',
      marginKind: 'length',
      sense: 'at most',
      source: 'your answer',
      known: 'given',
      cell: ({ edge }) => ({
        value: edge.fascia_m,
        limit: edge.fasciaLimit_m,
        margin: edge.fasciaMargin_m,
        meets: edge.fasciaMargin_m === null ? null : edge.fasciaMargin_m >= 0,
      }),
    },
    {
      id: 'ridge-rise',
      label: 'Rise of the ridge',
      kind: 'length',
      marginKind: 'length',
      sense: 'at most',
      source: 'your answer',
      known: 'given',
      cell: ({ edge }) => ({
        value: edge.ridgeRise_m,
        limit: edge.ridgeLimit_m,
        margin: edge.ridgeMargin_m,
        meets: edge.ridgeMargin_m === null ? null : edge.ridgeMargin_m >= 0,
      }),
    },
  ];
}

/** `, R-3.2 to spare`, `, R-1.8 short`, `, 1 1/4 in too much`; empty where nothing limits. */
export function marginInWords(row: LimitRow, cell: LimitCell, system: System): string {
  if (cell.margin === null) return '';
  const size = show(row.marginKind, Math.abs(cell.margin), system);
  if (cell.meets) return `, ${size} to spare`;
  return `, ${size} ${row.sense === 'at least' ? 'short' : 'too much'}`;
}

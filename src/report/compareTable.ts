/** The leaders side by side: one row for each criterion. Shared by the record and the Compare page. */
import type { Candidate, Evaluation } from '../evaluation/evaluation.ts';
import type { MeasureKind, System } from '../measures.ts';
import { show } from '../measures.ts';
import { allCriteria, criterion } from '../catalog/criterionNames.ts';
import { strategyNames } from './names.ts';

export interface CompareCell {
  readonly candidate: string;
  readonly measure: number;
  /** With its unit. */
  readonly text: string;
  /** 0 to 1. */
  readonly value: number;
  /** weight × value, 0 to 1. */
  readonly contribution: number;
  readonly isBest: boolean;
  readonly limit?: {
    readonly text: string;
    readonly margin: string;
    readonly meets: boolean;
  };
  readonly note?: string;
}

export interface CompareRow {
  readonly criterion: string;
  readonly name: string;
  readonly measure: string;
  readonly kind: MeasureKind;
  /** Normalized. */
  readonly weight: number;
  readonly cells: readonly CompareCell[];
}

export interface CompareColumn {
  readonly candidate: string;
  readonly strategy: string;
  readonly name: string;
  readonly total: number;
  readonly isRecommended: boolean;
}

export interface CompareTable {
  readonly columns: readonly CompareColumn[];
  readonly rows: readonly CompareRow[];
}

interface Limit {
  readonly value: number;
  readonly margin: number;
  readonly meets: boolean;
  readonly words: 'at least' | 'at most';
}

/** The limit behind a criterion, where a rule or an answer sets one. `margin` is positive when it is met. */
function limitOf(id: string, candidate: Candidate): Limit | undefined {
  const { temperature } = candidate.condensationControl;
  switch (id) {
    case 'deckWarmth':
      return { value: 0, margin: temperature.margin_K, meets: temperature.meets, words: 'at least' };
    case 'edgeThickness': {
      const { fasciaLimit_m, fasciaMargin_m } = candidate.edge;
      if (fasciaLimit_m === null || fasciaMargin_m === null) return undefined;
      return { value: fasciaLimit_m, margin: fasciaMargin_m, meets: fasciaMargin_m >= 0, words: 'at most' };
    }
    case 'roofRise': {
      const { ridgeLimit_m, ridgeMargin_m } = candidate.edge;
      if (ridgeLimit_m === null || ridgeMargin_m === null) return undefined;
      return { value: ridgeLimit_m, margin: ridgeMargin_m, meets: ridgeMargin_m >= 0, words: 'at most' };
    }
    case 'heatLoss':
    case 'overhangStrength':
    case 'slopeLoadPath':
    case 'windHold': {
      const measure = candidate.attributes.find((attribute) => attribute.criterion === id)?.measure;
      if (measure === undefined) return undefined;
      return { value: 1, margin: 1 - measure, meets: measure <= 1, words: 'at most' };
    }
    default:
      return undefined;
  }
}

function limitText(
  id: string,
  limit: Limit,
  kind: MeasureKind,
  system: System,
): NonNullable<CompareCell['limit']> {
  const size = measureText(id, Math.abs(limit.margin), kind, system);
  const side = limit.meets ? 'within' : 'beyond';
  return {
    text: `${limit.words} ${measureText(id, limit.value, kind, system)}`,
    margin: id === 'deckWarmth' ? `${size} ${limit.meets ? 'above' : 'below'} the limit` : `${size} ${side}`,
    meets: limit.meets,
  };
}

/** Rows by criterion, heaviest weight first; columns in the order of the leaders. */
export function compareTable(evaluation: Evaluation, system: System): CompareTable {
  const { ranking, candidates } = evaluation;
  const leaders = ranking.leaders.flatMap((leader) => {
    const candidate = candidates.find((one) => one.id === leader.candidate);
    return candidate === undefined ? [] : [{ ...leader, candidate }];
  });
  const columns = leaders.map(({ candidate, strategy, total }) => ({
    candidate: candidate.id,
    strategy,
    name: strategyNames[strategy],
    total,
    isRecommended: candidate.id === ranking.recommended,
  }));
  const rows = allCriteria().flatMap((one): CompareRow[] => {
    const weight = ranking.weights[one.id];
    if (weight === undefined) return [];
    const found = leaders.flatMap(({ candidate }) => {
      const attribute = candidate.attributes.find((part) => part.criterion === one.id);
      return attribute === undefined ? [] : [{ candidate, attribute }];
    });
    if (found.length === 0) return [];
    const best = Math.max(...found.map(({ attribute }) => attribute.value));
    const cells = found.map(({ candidate, attribute }): CompareCell => {
      const limit = limitOf(one.id, candidate);
      return {
        candidate: candidate.id,
        measure: attribute.measure,
        text: measureText(one.id, attribute.measure, one.kind, system),
        value: attribute.value,
        contribution: ranking.contributions[candidate.id]?.[one.id] ?? weight * attribute.value,
        isBest: attribute.value === best,
        ...(limit === undefined ? {} : { limit: limitText(one.id, limit, one.kind, system) }),
        ...(attribute.note === undefined ? {} : { note: attribute.note }),
      };
    });
    return [
      {
        criterion: one.id,
        name: one.name,
        measure: one.measure,
        kind: one.kind,
        weight,
        cells,
      },
    ];
  });
  rows.sort((a, b) => b.weight - a.weight);
  return { columns, rows };
}

/** A ratio says what it is a ratio of, so that no bare number stands alone. */
const ratioWords: Readonly<Record<string, string>> = {
  airBarrier: '× the eave length',
  heatLoss: '× the code U-factor',
  overhangStrength: '× the screening limit',
  slopeLoadPath: '× the screws’ capacity',
  windHold: '× the screws’ capacity',
  wallDisturbance: '× the eave length',
  insectNests: 'of a nest',
  deckHold: 'of the screws',
};

/** What follows the bare number of a ratio or a count; empty where the number carries its unit. */
export function measureWords(id: string): string {
  const kind = criterion(id)?.kind;
  if (kind === 'ratio') return ratioWords[id] ?? 'ratio';
  return kind === 'count' ? 'in all' : '';
}

/** A measure of a criterion with its unit, or with what it is a ratio of. */
export function measureText(id: string, value: number, kind: MeasureKind, system: System): string {
  // A ratio a hair beside 1 must not be printed as 1: the verdict beside it would look wrong.
  const isNear = kind === 'ratio' && value !== 0 && Number(value.toFixed(2)) === Math.round(value);
  const text = isNear ? show(kind, value, system, { digits: 4 }) : show(kind, value, system);
  return `${text} ${measureWords(id)}`.trim();
}

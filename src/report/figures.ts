/** Values with their units for the record: the kind of a figure is read from its unit or from its name. */
import type { MeasureKind, System } from '../measures.ts';
import { show } from '../measures.ts';

/** Unit texts of attributes, checks and take-off. */
const byUnit: Readonly<Record<string, MeasureKind>> = {
  m: 'length',
  m2: 'area',
  'm²': 'area',
  K: 'temperatureDifference',
  '°C': 'temperature',
  C: 'temperature',
  '%': 'share',
  pct: 'share',
  N: 'force',
  'N/m': 'lineLoad',
  N_m: 'lineLoad',
  'N·m': 'moment',
  Nm: 'moment',
  Pa: 'load',
  'm/s': 'speed',
  'm2K/W': 'resistance',
  'm²·K/W': 'resistance',
  m2K_W: 'resistance',
  'W/m2K': 'transmittance',
  'W/(m²·K)': 'transmittance',
  W_m2K: 'transmittance',
  ng: 'permeance',
  'ng/(Pa·s·m²)': 'permeance',
  'kg/m2': 'massPerArea',
  'kg/m²': 'massPerArea',
  'USD/m²': 'costPerArea',
  USD_m2: 'costPerArea',
  'h/m²': 'hoursPerArea',
  h_m2: 'hoursPerArea',
  'kg CO₂e/m²': 'carbonPerArea',
  d: 'days',
  days: 'days',
  months: 'months',
  count: 'count',
  ratio: 'ratio',
  '1/m²': 'perArea',
};

/** Suffixes of the names of facts, the longest first. */
const byName: readonly (readonly [RegExp, MeasureKind])[] = [
  [/pitch_rise_per_12$/, 'pitch'],
  [/_rise_per_12$/, 'pitch'],
  [/_m2K_W$/, 'resistance'],
  [/_W_m2K$/, 'transmittance'],
  [/_kg_m2$/, 'waterPerArea'],
  [/_USD_m2$/, 'costPerArea'],
  [/_h_m2$/, 'hoursPerArea'],
  [/_1_m2$/, 'perArea'],
  [/_N_m$/, 'lineLoad'],
  [/_m_s$/, 'speed'],
  [/_m2$/, 'area'],
  [/_Cd$/, 'degreeDays'],
  [/_pct$/, 'share'],
  [/_deg$/, 'angle'],
  [/_ng$/, 'permeance'],
  [/_Pa$/, 'load'],
  [/_K$/, 'temperatureDifference'],
  [/_C$/, 'temperature'],
  [/_N$/, 'force'],
  [/_m$/, 'length'],
];

export const kindOfUnit = (unit: string): MeasureKind | undefined => byUnit[unit];
export const kindOfName = (name: string): MeasureKind | undefined =>
  byName.find(([ending]) => ending.test(name))?.[1];

/** A value with the unit text of the evaluation. */
export function showUnit(value: number, unit: string, system: System): string {
  const kind = kindOfUnit(unit);
  if (kind !== undefined) return show(kind, value, system);
  const number = show('ratio', value, system);
  return unit === '' || unit === '-' ? number : `${number} ${unit}`;
}

/** Facts of a caution or exclusion as texts for slots. */
export function factTexts(
  facts: Readonly<Record<string, string | number | boolean | null>>,
  system: System,
): Record<string, string> {
  return Object.fromEntries(
    Object.entries(facts).map(([name, value]) => {
      if (typeof value === 'boolean') return [name, value ? 'yes' : 'no'];
      if (typeof value !== 'number') return [name, value ?? 'not known'];
      return [name, show(kindOfName(name) ?? 'ratio', value, system)];
    }),
  );
}

const HUNDRED = 100;
/** Points of 100 with one decimal, for values and contributions of the ranking. */
export function points(share: number): string {
  const text = (Math.abs(share) * HUNDRED).toFixed(1);
  return share < 0 && /[1-9]/.test(text) ? `−${text}` : text;
}
/** A value from 0 to 1. */
export const valueText = (value: number): string => value.toFixed(2);

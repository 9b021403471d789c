/**
 * Inks and fills by meaning. Three themes; contrast is computed in tests/drawing/palette.test.ts:
 * text at least 4.5:1 and marks at least 3:1 against the sheet (WCAG 2.2, 1.4.3 and 1.4.11; known: memory).
 */

export const inkNames = [
  'text',
  'softText',
  'line',
  'hatch',
  'airBarrier',
  'waterPath',
  'dryingPath',
  'dimension',
  'limit',
  'highlight',
] as const;
export type InkName = (typeof inkNames)[number];

export const fillNames = [
  'paper',
  'wood',
  'woodBeyond',
  'panel',
  'foam',
  'fibrous',
  'gypsum',
  'covering',
  'metal',
  'cladding',
  'air',
  'highlightWash',
  'solid',
] as const;
export type FillName = (typeof fillNames)[number];

export const themes = ['light', 'dark', 'print'] as const;
export type Theme = (typeof themes)[number];

export interface Palette {
  readonly inks: Readonly<Record<InkName, string>>;
  readonly fills: Readonly<Record<FillName, string>>;
}

export const palettes: Readonly<Record<Theme, Palette>> = {
  light: {
    inks: {
      text: '#1f1d1a',
      softText: '#57524a',
      line: '#1f1d1a',
      hatch: '#6f675b',
      airBarrier: '#b3261e',
      waterPath: '#1d5c94',
      dryingPath: '#3d6b1f',
      dimension: '#57524a',
      limit: '#8a2f6b',
      highlight: '#b3261e',
    },
    fills: {
      paper: '#fbf7ee',
      wood: '#f0dfc2',
      woodBeyond: '#f7eedc',
      panel: '#ead3ac',
      foam: '#f6efd3',
      fibrous: '#f3e6d8',
      gypsum: '#efece5',
      covering: '#d5cfc4',
      metal: '#dcdcda',
      cladding: '#eae2d3',
      air: '#fdfbf6',
      highlightWash: '#f9ddd6',
      solid: '#1f1d1a',
    },
  },
  dark: {
    inks: {
      text: '#f2ede2',
      softText: '#c3bba9',
      line: '#f2ede2',
      hatch: '#a79d89',
      airBarrier: '#ff9d8f',
      waterPath: '#8cc3f0',
      dryingPath: '#a9d488',
      dimension: '#c3bba9',
      limit: '#eba6d3',
      highlight: '#ff9d8f',
    },
    fills: {
      paper: '#211f1b',
      wood: '#3d3427',
      woodBeyond: '#2d2820',
      panel: '#463a28',
      foam: '#383423',
      fibrous: '#3a3029',
      gypsum: '#343230',
      covering: '#48443d',
      metal: '#3c3d3e',
      cladding: '#35312a',
      air: '#1c1a17',
      highlightWash: '#4d2c27',
      solid: '#f2ede2',
    },
  },
  print: {
    inks: {
      text: '#000000',
      softText: '#3c3c3c',
      line: '#000000',
      hatch: '#5a5a5a',
      airBarrier: '#a31515',
      waterPath: '#0f4c81',
      dryingPath: '#2f5a14',
      dimension: '#3c3c3c',
      limit: '#7a1f5c',
      highlight: '#a31515',
    },
    fills: {
      paper: '#ffffff',
      wood: '#f3e9d6',
      woodBeyond: '#faf5ea',
      panel: '#ebdcc0',
      foam: '#faf6e3',
      fibrous: '#f6eee4',
      gypsum: '#f2f1ee',
      covering: '#dad7d1',
      metal: '#e2e2e2',
      cladding: '#f0ece2',
      air: '#ffffff',
      highlightWash: '#fbe4de',
      solid: '#000000',
    },
  },
};

/** [-] Share of full light of one eight-bit channel (WCAG 2.2, definition of relative luminance; known: memory). */
function channel(value: number): number {
  const share = value / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}

/** [-] Relative luminance of a color written #rrggbb. */
export function luminance(color: string): number {
  const at = (start: number): number => channel(Number.parseInt(color.slice(start, start + 2), 16));
  return 0.2126 * at(1) + 0.7152 * at(3) + 0.0722 * at(5);
}

/** [-] Contrast ratio of two colors, 1 to 21. */
export function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((p, q) => p - q);
  return (high + 0.05) / (low + 0.05);
}

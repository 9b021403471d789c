/** A worked number as a page shows it: the formula with the values put in, and the input that reproduces it. */
import type { Working } from '../../evaluation/working.ts';
import { show, type System } from '../../measures.ts';

const escapedForPattern = (symbol: string): string => symbol.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/**
 * The formula's right side with each symbol replaced by its value. Longest symbols first, and only where the
 * symbol stands alone, so that `R` does not break `R_out`.
 */
export function substituted(working: Working, system: System): string {
  const bySymbol = new Map(working.inputs.map((input) => [input.symbol, input]));
  const symbols = [...bySymbol.keys()].filter((symbol) => symbol !== '').sort((a, b) => b.length - a.length);
  if (symbols.length === 0) return '';
  const [left = '', ...right] = working.formula.split(' = ');
  const pattern = new RegExp(
    `(?<![\\p{L}\\p{N}_])(${symbols.map(escapedForPattern).join('|')})(?![\\p{L}\\p{N}_])`,
    'gu',
  );
  const filled = right.join(' = ').replace(pattern, (symbol) => {
    const input = bySymbol.get(symbol);
    return input === undefined ? symbol : show(input.kind, input.value, system);
  });
  return filled === '' ? '' : `${left} = ${filled}`;
}

export const calculationText = (working: Working): string =>
  `${JSON.stringify(working.calculation?.input ?? null, null, 2)}\n`;

/** A worked number as a page shows it: the formula with the values put in, and the input that reproduces it. */
import type { Working } from '../../evaluation/working.ts';
import { show, type System } from '../../measures.ts';

const escapedForPattern = (symbol: string): string => symbol.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

const subscripts = '₀₁₂₃₄₅₆₇₈₉';
/** `R_1` and `R₁` name the same input. */
const plainIndex = (text: string): string =>
  text.replace(/[₀-₉]+/gu, (digits) => `_${[...digits].map((digit) => subscripts.indexOf(digit)).join('')}`);

/**
 * The formula's right side with each symbol replaced by its value; empty when it names none of the inputs.
 * Longest symbols first, and only where the symbol stands alone, so that `R` does not break `R_out`.
 */
export function substituted(working: Working, system: System): string {
  const bySymbol = new Map(working.inputs.map((input) => [plainIndex(input.symbol), input]));
  const symbols = [...bySymbol.keys()].filter((symbol) => symbol !== '').sort((a, b) => b.length - a.length);
  const [left = '', ...right] = working.formula.split(' = ');
  if (symbols.length === 0 || right.length === 0) return '';
  const pattern = new RegExp(
    `(?<![\\p{L}\\p{N}_])(${symbols.map(escapedForPattern).join('|')})(?![\\p{L}\\p{N}_])`,
    'gu',
  );
  const plain = plainIndex(right.join(' = '));
  const filled = plain.replace(pattern, (symbol) => {
    const input = bySymbol.get(symbol);
    return input === undefined ? symbol : show(input.kind, input.value, system);
  });
  return filled === plain ? '' : `${left} = ${filled}`;
}

export const calculationText = (working: Working): string =>
  `${JSON.stringify(working.calculation?.input ?? null, null, 2)}\n`;

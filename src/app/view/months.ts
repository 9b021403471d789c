/** Twelve typed texts, January to December, read as one answer. */
import type { Reading } from '../../measures.ts';

export const monthNames = [
  'Jan',
  'Feb',
  'Mar',
  'Apr',
  'May',
  'Jun',
  'Jul',
  'Aug',
  'Sep',
  'Oct',
  'Nov',
  'Dec',
] as const;
export const emptyMonths: readonly string[] = monthNames.map(() => '');

interface Twelve {
  /** All twelve, or undefined when all are empty or any is wrong. */
  readonly values: number[] | undefined;
  readonly fault: string | null;
}

export function twelve(texts: readonly string[], read: (text: string) => Reading): Twelve {
  const filled = texts.filter((text) => text.trim() !== '');
  if (filled.length === 0) return { values: undefined, fault: null };
  const values: number[] = [];
  for (const [index, text] of texts.entries()) {
    if (text.trim() === '') continue;
    const reading = read(text);
    if (!reading.ok) return { values: undefined, fault: `${monthNames[index] ?? ''}: ${reading.message}` };
    values.push(reading.value);
  }
  return values.length === monthNames.length
    ? { values, fault: null }
    : { values: undefined, fault: `${values.length} months are given; all twelve are needed, or none.` };
}

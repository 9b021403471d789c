/**
 * Width of a line of text without a browser: advance widths of the drawing's font, thousandths of the
 * font size, read from the horizontal metrics of Source Sans 3 (OpenType table hmtx); a test reads the font again.
 */

const EXTRA = '·×°²³½¼¾–—‘’“”′″−≤≥é';
// prettier-ignore
const REGULAR = [200, 289, 426, 497, 497, 824, 609, 249, 303, 303, 418, 497, 249, 311, 249, 350, 497, 497, 497, 497, 497, 497, 497, 497, 497, 497, 249, 249, 497, 497, 497, 425, 847, 543, 588, 571, 615, 527, 494, 617, 652, 263, 479, 579, 486, 727, 647, 664, 566, 664, 569, 534, 536, 645, 515, 786, 513, 476, 539, 303, 350, 303, 497, 500, 542, 504, 553, 456, 555, 496, 292, 504, 544, 246, 247, 495, 255, 829, 547, 542, 555, 555, 347, 419, 338, 544, 467, 719, 446, 467, 425, 303, 241, 303, 497];
// prettier-ignore
const REGULAR_EXTRA = [249, 497, 331, 367, 367, 808, 781, 796, 480, 800, 249, 249, 426, 426, 249, 426, 497, 497, 497, 496];
// prettier-ignore
const BOLD = [200, 315, 482, 513, 513, 841, 639, 275, 324, 324, 438, 513, 275, 322, 275, 344, 513, 513, 513, 513, 513, 513, 513, 513, 513, 513, 275, 275, 513, 513, 513, 444, 875, 558, 597, 576, 625, 538, 510, 628, 663, 282, 494, 597, 502, 745, 657, 674, 582, 674, 592, 545, 546, 655, 536, 800, 541, 501, 540, 324, 344, 324, 513, 500, 549, 516, 563, 462, 564, 507, 317, 520, 558, 262, 263, 522, 271, 843, 560, 549, 564, 564, 373, 431, 361, 556, 495, 748, 481, 495, 443, 324, 255, 324, 513];
// prettier-ignore
const BOLD_EXTRA = [275, 513, 348, 372, 372, 827, 795, 807, 480, 800, 275, 275, 482, 482, 275, 482, 513, 513, 513, 507];

const FIRST_CODE = 32;
/** Advance of the widest letter (W, @ aside) for characters that the table does not hold. */
const UNKNOWN = 800;
const PER_EM = 1000;

export type Weight = 'regular' | 'bold';

/** Advance of one character, thousandths of the font size. */
export function advance(character: string, weight: Weight): number {
  const plain = weight === 'bold' ? BOLD : REGULAR;
  const code = character.codePointAt(0) ?? FIRST_CODE;
  const extra = weight === 'bold' ? BOLD_EXTRA : REGULAR_EXTRA;
  return plain[code - FIRST_CODE] ?? extra[EXTRA.indexOf(character)] ?? UNKNOWN;
}

export function textWidth_mm(words: string, size_mm: number, weight: Weight = 'regular'): number {
  let sum = 0;
  for (const character of words) sum += advance(character, weight);
  return (sum / PER_EM) * size_mm;
}

/** Breaks words into lines no wider than the limit; a single long word is cut with a hyphen. */
export function wrapText(
  words: string,
  limit_mm: number,
  size_mm: number,
  weight: Weight = 'regular',
): string[] {
  const lines: string[] = [];
  let current = '';
  const fits = (candidate: string): boolean => textWidth_mm(candidate, size_mm, weight) <= limit_mm;
  for (let word of words.split(/\s+/).filter((w) => w !== '')) {
    const joined = current === '' ? word : `${current} ${word}`;
    if (fits(joined)) {
      current = joined;
      continue;
    }
    if (current !== '') lines.push(current);
    while (!fits(word) && word.length > 1) {
      let keep = word.length - 1;
      while (keep > 1 && !fits(`${word.slice(0, keep)}-`)) keep -= 1;
      lines.push(`${word.slice(0, keep)}-`);
      word = word.slice(keep);
    }
    current = word;
  }
  if (current !== '') lines.push(current);
  return lines;
}

/** Runs of text broken into lines of a width, and how a line is drawn. */
import type { Inline, Run } from '../document.ts';
import type { Face, Ink, Pen } from './pen.ts';

export interface Piece {
  readonly text: string;
  readonly face: Face;
  readonly ink: Ink;
  /** `#id` or an address, for a link over this piece. */
  readonly href?: string;
  readonly width: number;
}
export interface Line {
  readonly pieces: readonly Piece[];
  readonly width: number;
}

export interface TextStyle {
  readonly size: number;
  readonly leading: number;
  readonly face?: Face;
  readonly ink?: Ink;
}

/** Where a link box begins above the baseline, as a share of the letter size. */
const ASCENT = 0.8;

function faceOf(run: Run, base: Face): Face {
  if (base === 'serif') return 'serif';
  if (run.strong) return 'bold';
  if (run.emphasis) return 'italic';
  return base;
}

function addressOf(run: Run): string | undefined {
  if (run.citation) return `#source-${run.citation.source}`;
  if (run.term) return `#term-${run.term}`;
  return run.href;
}

/** A word too long for a line, cut where it must be. */
function cut(pen: Pen, word: string, face: Face, size: number, width: number): string[] {
  if (pen.widthOf(word, face, size) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  for (const letter of pen.letters(word, face)) {
    if (part !== '' && pen.widthOf(part + letter, face, size) > width) {
      parts.push(part);
      part = '';
    }
    part += letter;
  }
  parts.push(part);
  return parts;
}

/** A number and its unit stay on one line. */
const withUnitsHeld = (text: string): string =>
  text.replace(
    /(\d) (?=(?:in|ft|mm|m|psf|kPa|Pa|lb|kg|perm|h|USD|days?|months?)\b|ft²|m²|m²·K|°[FC]|%|W\/|Btu)/g,
    '$1\u00A0',
  );

/** Greedy lines; words keep their marks; spaces at a break disappear. */
export function linesOf(pen: Pen, text: Inline, width: number, style: TextStyle): Line[] {
  const lines: Line[] = [];
  let pieces: Piece[] = [];
  let used = 0;
  const base = style.face ?? 'sans';
  const end = (): void => {
    const last = pieces.at(-1);
    if (last && last.text.trim() === '') pieces.pop();
    lines.push({ pieces: merged(pen, pieces, style.size), width: used });
    pieces = [];
    used = 0;
  };
  for (const run of text) {
    const face = faceOf(run, base);
    const href = addressOf(run);
    if (run.text === '\n') {
      end();
      continue;
    }
    const ink = style.ink ?? (href === undefined ? 'ink' : 'accent');
    for (const word of pen.letters(withUnitsHeld(run.text), face).split(/( +)/)) {
      if (word === '') continue;
      const isSpace = word.trim() === '';
      if (isSpace && pieces.length === 0) continue;
      for (const part of isSpace ? [' '] : cut(pen, word, face, style.size, width)) {
        const size = pen.widthOf(part, face, style.size);
        if (!isSpace && used + size > width && pieces.length > 0) end();
        pieces.push({ text: part, face, ink, width: size, ...(href === undefined ? {} : { href }) });
        used += size;
      }
    }
  }
  if (pieces.length > 0 || lines.length === 0) end();
  return lines;
}

function merged(pen: Pen, pieces: readonly Piece[], size: number): Piece[] {
  const result: Piece[] = [];
  for (const piece of pieces) {
    const last = result.at(-1);
    if (last && last.face === piece.face && last.ink === piece.ink && last.href === piece.href) {
      const text = last.text + piece.text;
      result[result.length - 1] = { ...last, text, width: pen.widthOf(text, piece.face, size) };
    } else result.push(piece);
  }
  return result;
}

/** Called for each linked piece, so that inside links can wait until page numbers are known. */
export type LinkSink = (href: string, x: number, y: number, width: number, height: number) => void;

export function drawLine(
  pen: Pen,
  line: Line,
  x: number,
  top: number,
  style: TextStyle,
  link: LinkSink,
  alignedTo?: number,
): void {
  const total = line.pieces.reduce((sum, piece) => sum + piece.width, 0);
  let at = alignedTo === undefined ? x : alignedTo - total;
  const baseline = top + (style.leading - style.size) / 2 + style.size * ASCENT;
  for (const piece of line.pieces) {
    pen.text(piece.text, at, baseline, piece.face, style.size, piece.ink);
    if (piece.href !== undefined) link(piece.href, at, top, piece.width, style.leading);
    at += piece.width;
  }
}

/** The only file that speaks to jsPDF: fonts, inks, letters the fonts lack, lines, links, bookmarks. Lengths in points. */
import { jsPDF } from 'jspdf';

/** Bytes of the TrueType fonts; the shell reads them, the core reads no file. */
export interface PdfFonts {
  readonly sans: Uint8Array;
  readonly sansBold: Uint8Array;
  readonly sansItalic: Uint8Array;
  readonly serif: Uint8Array;
}

export type PageSize = 'letter' | 'a4';
export type Face = 'sans' | 'bold' | 'italic' | 'serif';
export type Ink = 'ink' | 'soft' | 'line' | 'accent' | 'panel' | 'warn' | 'paper';

export const inks: Readonly<Record<Ink, string>> = {
  ink: '#23211d',
  soft: '#5c564b',
  line: '#cfc7b6',
  accent: '#8a3b12',
  panel: '#f3eddf',
  warn: '#8f1d14',
  paper: '#ffffff',
};

const faces: Readonly<Record<Face, readonly [string, string]>> = {
  sans: ['OverdeckSans', 'normal'],
  bold: ['OverdeckSans', 'bold'],
  italic: ['OverdeckSans', 'italic'],
  serif: ['OverdeckSerif', 'normal'],
};

/** Shown for a letter that the fonts lack, so that nothing vanishes silently. */
const replacement = '?';
const LAST_OF_BASIC_PLANE = 0xffff;
const CHUNK = 0x8000;

/** Fonts as text, once for each array of bytes: several records may be made in a row. */
const binaries = new WeakMap<Uint8Array, string>();

function binary(bytes: Uint8Array): string {
  const before = binaries.get(bytes);
  if (before !== undefined) return before;
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += CHUNK) {
    parts.push(String.fromCharCode(...bytes.subarray(at, at + CHUNK)));
  }
  const text = parts.join('');
  binaries.set(bytes, text);
  return text;
}

interface LoadedFont {
  readonly metadata?: { readonly characterToGlyph?: (code: number) => number };
}

export interface Pen {
  readonly doc: jsPDF;
  readonly width: number;
  readonly height: number;
  /** Choose a face for the next text. */
  use(face: Face): void;
  /** Only letters that the face can draw; control letters become spaces. */
  letters(text: string, face: Face): string;
  widthOf(text: string, face: Face, size: number): number;
  text(text: string, x: number, baseline: number, face: Face, size: number, ink?: Ink): void;
  line(
    x1: number,
    y1: number,
    x2: number,
    y2: number,
    width?: number,
    ink?: Ink,
    dash?: readonly number[],
  ): void;
  box(
    x: number,
    y: number,
    width: number,
    height: number,
    fill: Ink | null,
    stroke: Ink | null,
    lineWidth?: number,
  ): void;
}

export interface PenOptions {
  readonly page: PageSize;
  readonly fonts: PdfFonts;
  /** `D:20260101000000+00'00'`: fixed, so that the same report has the same bytes. */
  readonly created: string;
  readonly fileId: string;
}

/** A new document with its fonts, and the few strokes that the rest of the report needs. */
export function penOn(options: PenOptions): Pen {
  const doc = new jsPDF({
    unit: 'pt',
    format: options.page,
    compress: true,
    putOnlyUsedFonts: true,
    floatPrecision: 3,
  });
  doc.setCreationDate(options.created);
  doc.setFileId(options.fileId);
  const bytes: Readonly<Record<Face, Uint8Array>> = {
    sans: options.fonts.sans,
    bold: options.fonts.sansBold,
    italic: options.fonts.sansItalic,
    serif: options.fonts.serif,
  };
  for (const face of ['sans', 'bold', 'italic', 'serif'] as const) {
    const [name, style] = faces[face];
    doc.addFileToVFS(`${name}-${style}.ttf`, binary(bytes[face]));
    doc.addFont(`${name}-${style}.ttf`, name, style);
  }

  const known = new Map<string, string>();
  const widths = new Map<string, number>();
  const use = (face: Face): void => {
    const [name, style] = faces[face];
    doc.setFont(name, style);
  };
  const hasLetter = (letter: string): boolean => {
    const code = letter.codePointAt(0) ?? 0;
    const font = doc.getFont() as unknown as LoadedFont;
    return code <= LAST_OF_BASIC_PLANE && (font.metadata?.characterToGlyph?.(code) ?? 0) !== 0;
  };

  function letters(text: string, face: Face): string {
    const key = `${face}:${text}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    use(face);
    const clean = Array.from(text.replace(/(?:[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]|(?!\u00A0)\p{Zs})+/gu, ' '))
      .map((letter) => (letter === ' ' || letter === '\u00A0' || hasLetter(letter) ? letter : replacement))
      .join('');
    known.set(key, clean);
    return clean;
  }

  function widthOf(text: string, face: Face, size: number): number {
    const key = `${face}:${text}`;
    let unit = widths.get(key);
    if (unit === undefined) {
      use(face);
      unit = doc.getStringUnitWidth(letters(text, face));
      widths.set(key, unit);
    }
    return unit * size;
  }

  return {
    doc,
    width: doc.internal.pageSize.getWidth(),
    height: doc.internal.pageSize.getHeight(),
    use,
    letters,
    widthOf,
    text(text, x, baseline, face, size, ink = 'ink') {
      const clean = letters(text, face);
      if (clean.trim() === '') return;
      use(face);
      doc.setFontSize(size);
      doc.setTextColor(inks[ink]);
      doc.text(clean, x, baseline);
    },
    line(x1, y1, x2, y2, width = 0.5, ink = 'ink', dash = []) {
      doc.setLineWidth(width);
      doc.setDrawColor(inks[ink]);
      doc.setLineDashPattern([...dash], 0);
      doc.line(x1, y1, x2, y2);
    },
    box(x, y, width, height, fill, stroke, lineWidth = 0.5) {
      doc.setLineDashPattern([], 0);
      doc.setLineWidth(lineWidth);
      if (fill !== null) doc.setFillColor(inks[fill]);
      if (stroke !== null) doc.setDrawColor(inks[stroke]);
      const how = fill === null ? 'S' : stroke === null ? 'F' : 'FD';
      doc.rect(x, y, width, height, how);
    },
  };
}

/** jsPDF writes bookmark titles as raw bytes; PDF wants UTF-16 for letters outside Latin-1 (ISO 32000-1, 7.9.2.2). */
export function useUnicodeBookmarks(doc: jsPDF): void {
  const outline = doc.outline as unknown as { makeString: (title: string) => string };
  outline.makeString = (title) => {
    const units = Array.from({ length: title.length }, (_, index) =>
      title.charCodeAt(index).toString(16).padStart(4, '0'),
    );
    return `<FEFF${units.join('').toUpperCase()}>`;
  };
}

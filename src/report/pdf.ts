/**
 * The report as a PDF: real text in embedded fonts, vector drawings, contents with links, bookmarks,
 * the same bytes for the same document. Runs in Node, in a page and in a worker; touches no DOM.
 */
import type { ReportDocument, Section } from './document.ts';
import { blockAtoms } from './pdf/blocks.ts';
import type { Atom, Placed, Spot } from './pdf/flow.ts';
import { placed } from './pdf/flow.ts';
import type { TextStyle } from './pdf/lines.ts';
import { drawLine, linesOf } from './pdf/lines.ts';
import type { PageSize, Pen, PdfFonts } from './pdf/pen.ts';
import { penOn, useUnicodeBookmarks } from './pdf/pen.ts';

export type { PageSize, PdfFonts } from './pdf/pen.ts';

export interface PdfOptions {
  readonly page: PageSize;
  readonly fonts: PdfFonts;
  /** ISO date of the file; without it the document's own date, without that a fixed one. */
  readonly created?: string;
  /** 32 hexadecimal digits; without it a digest of the document. */
  readonly fileId?: string;
  /** Called with the share done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
}

const MARGIN = 54;
const HEAD_AT = 34;
const TOP = 56;
const BOTTOM = 54;
const FOOT_UP = 30;
const FIXED_DATE = '2000-01-01';

const titleText: TextStyle = { size: 20, leading: 25, face: 'serif' };
const subtitleText: TextStyle = { size: 11, leading: 15 };
const chapterText: TextStyle = { size: 16, leading: 21, face: 'serif' };
const headingText: TextStyle = { size: 12.5, leading: 17, face: 'serif' };
const factText: TextStyle = { size: 8.5, leading: 11.5 };
const furniture: TextStyle = { size: 8, leading: 10, ink: 'soft' };
/** A picture smaller than this shows nothing. */
const LEAST_PICTURE = 64;
/** Longest title kept in the file's own data. */
const LONGEST_TITLE = 300;

/** Two 64-bit sums of the text (FNV-1a, offset and prime of its authors' draft RFC), enough to tell files apart. */
export function digest(text: string): string {
  const PRIME = 0x100000001b3n;
  const WRAP = 0xffffffffffffffffn;
  const sum = (start: bigint): string => {
    let hash = start;
    for (let at = 0; at < text.length; at += 1) {
      hash = ((hash ^ BigInt(text.charCodeAt(at))) * PRIME) & WRAP;
    }
    return hash.toString(16).padStart(16, '0');
  };
  return (sum(0xcbf29ce484222325n) + sum(0x84222325cbf29ce4n)).toUpperCase();
}

const plainStart = (date: string): string =>
  `D:${/^\d{4}-\d{2}-\d{2}/.test(date) ? date.slice(0, 10).replaceAll('-', '') : FIXED_DATE.replaceAll('-', '')}000000+00'00'`;

function headingAtoms(pen: Pen, section: Section, x: number, width: number): Atom[] {
  const style = section.level === 1 ? chapterText : headingText;
  return linesOf(pen, [{ text: section.title }], width, style).map((line, index) => ({
    height: style.leading + (section.level === 1 && index === 0 ? 6 : 0),
    before: index === 0 ? (section.level === 1 ? 22 : 14) : 0,
    keep: true,
    ...(index === 0 && section.newPage ? { breakBefore: true } : {}),
    anchors: index === 0 ? [section.id] : [],
    draw: ({ pen: on, link }, top) => {
      const rule = section.level === 1 && index === 0;
      if (rule) on.line(x, top, x + width, top, 1.2);
      drawLine(on, line, x, top + (rule ? 6 : 0), style, link);
    },
  }));
}

function sectionAtoms(pen: Pen, section: Section, x: number, width: number): Atom[] {
  const blocks = section.blocks.map((block) => blockAtoms(pen, block, x, width));
  // The lead-in stays with what it leads into.
  const [lead, ...rest] = blocks;
  const held = section.blocks[0]?.kind === 'paragraph' && rest.length > 0;
  return [
    ...headingAtoms(pen, section, x, width),
    ...(lead ?? []).map((atom) => (held ? { ...atom, keep: true } : atom)),
    ...rest.flat(),
  ];
}

const heightOf = (atoms: readonly Atom[]): number =>
  atoms.reduce((sum, atom) => sum + atom.height + atom.before, 0);

/** The first section on one page where a smaller picture allows it; its picture is not to scale. */
function firstAtoms(pen: Pen, section: Section, x: number, width: number, room: number): Atom[] {
  const atoms = sectionAtoms(pen, section, x, width);
  const over = heightOf(atoms) - room;
  if (over <= 0) return atoms;
  const blocks = section.blocks.map((block) =>
    block.kind === 'drawing' && block.height_pt !== undefined
      ? { ...block, height_pt: Math.max(LEAST_PICTURE, block.height_pt - over) }
      : block,
  );
  return sectionAtoms(pen, { ...section, blocks }, x, width);
}

function titleAtoms(pen: Pen, document: ReportDocument, x: number, width: number): Atom[] {
  const atoms: Atom[] = [];
  const lines = (text: string, style: TextStyle, most: number): void => {
    for (const line of linesOf(pen, [{ text }], width, style).slice(0, most)) {
      atoms.push({
        height: style.leading,
        before: 0,
        keep: true,
        draw: ({ pen: on, link }, top) => drawLine(on, line, x, top, style, link),
      });
    }
  };
  lines(document.title, titleText, 3);
  lines(document.subtitle, subtitleText, 4);
  const columns = 4;
  const gap = 12;
  const size = (width - gap * (columns - 1)) / columns;
  for (let at = 0; at < document.facts.length; at += columns) {
    const row = document.facts.slice(at, at + columns).map((fact) => ({
      label: linesOf(pen, [{ text: fact.label }], size, { ...factText, ink: 'soft' }),
      value: linesOf(pen, [{ text: fact.value }], size, { ...factText, face: 'bold' }).slice(0, 4),
    }));
    const tall = Math.max(...row.map((fact) => fact.label.length + fact.value.length));
    atoms.push({
      height: tall * factText.leading,
      before: at === 0 ? 8 : 4,
      draw: ({ pen: on, link }, top) => {
        row.forEach((fact, index) => {
          [...fact.label, ...fact.value].forEach((line, place) =>
            drawLine(on, line, x + index * (size + gap), top + place * factText.leading, factText, link),
          );
        });
      },
    });
  }
  return atoms;
}

/** The contents list: drawn from page numbers that are known once everything has its place. */
function contentsAtoms(pen: Pen, document: ReportDocument, x: number, width: number): Atom[] {
  const heading: Section = { id: 'contents', title: 'Contents', level: 1, blocks: [], newPage: true };
  const entries = document.sections.map((section): Atom => {
    const indent = section.level === 1 ? 0 : 16;
    const style: TextStyle = section.level === 1 ? { size: 10.5, leading: 17 } : { size: 9.5, leading: 14 };
    const line = linesOf(pen, [{ text: section.title }], width - indent - 40, style)[0];
    return {
      height: style.leading,
      before: 0,
      draw: ({ pen: on, link, pageOf }, top) => {
        if (line) drawLine(on, line, x + indent, top, style, link);
        const page = String(pageOf(section.id) ?? '');
        const size = on.widthOf(page, 'sans', style.size);
        const baseline = top + (style.leading - style.size) / 2 + style.size * 0.8;
        on.text(page, x + width - size, baseline, 'sans', style.size);
        const from = x + indent + (line?.pieces.reduce((sum, piece) => sum + piece.width, 0) ?? 0) + 6;
        on.line(from, baseline, x + width - size - 6, baseline, 0.5, 'line', [1, 3]);
        link(`#${section.id}`, x, top, width, style.leading);
      },
    };
  });
  return [...headingAtoms(pen, heading, x, width), ...entries];
}

/** A text cut to a width, with an ellipsis when something is missing. */
function fitted(pen: Pen, text: string, width: number, style: TextStyle): string {
  const clean = pen.letters(text, 'sans').trim();
  if (pen.widthOf(clean, 'sans', style.size) <= width) return clean;
  let short = clean.slice(0, 400);
  while (short.length > 0 && pen.widthOf(`${short}…`, 'sans', style.size) > width) short = short.slice(0, -1);
  return `${short.trimEnd()}…`;
}

function drawFurniture(pen: Pen, document: ReportDocument, page: number, pages: number): void {
  const right = pen.width - MARGIN;
  const half = (right - MARGIN) / 2;
  if (page > 1) {
    pen.text(
      fitted(pen, document.title, half * 1.5, furniture),
      MARGIN,
      HEAD_AT,
      'sans',
      furniture.size,
      'soft',
    );
    pen.line(MARGIN, HEAD_AT + 5, right, HEAD_AT + 5, 0.5, 'line');
  }
  const y = pen.height - FOOT_UP;
  const revision = document.revision === undefined ? '' : ` · revision ${document.revision}`;
  const count = `page ${page} of ${pages}`;
  const size = pen.widthOf(count, 'sans', furniture.size);
  const tail = fitted(pen, revision, 120, furniture);
  const tailSize = revision === '' ? 0 : pen.widthOf(tail, 'sans', furniture.size) + 4;
  const name = fitted(pen, document.project, right - MARGIN - size - tailSize - 16, furniture);
  pen.line(MARGIN, y - 11, right, y - 11, 0.5, 'line');
  pen.text(name, MARGIN, y, 'sans', furniture.size, 'soft');
  if (tailSize > 0) {
    pen.text(tail, MARGIN + pen.widthOf(name, 'sans', furniture.size) + 4, y, 'sans', furniture.size, 'soft');
  }
  pen.text(count, right - size, y, 'sans', furniture.size, 'soft');
}

interface Target {
  readonly page: number;
  readonly top: number;
}

function targetsOf(places: readonly Placed[]): Map<string, Target> {
  const targets = new Map<string, Target>();
  for (const place of places) {
    for (const id of place.atom.anchors ?? []) {
      if (!targets.has(id)) targets.set(id, { page: place.page, top: place.top });
    }
  }
  return targets;
}

function addBookmarks(pen: Pen, document: ReportDocument, targets: ReadonlyMap<string, Target>): void {
  useUnicodeBookmarks(pen.doc);
  let chapter: unknown = null;
  for (const section of document.sections) {
    const target = targets.get(section.id);
    if (!target) continue;
    const parent = section.level === 1 ? null : chapter;
    const item: unknown = pen.doc.outline.add(parent as never, section.title, { pageNumber: target.page });
    if (section.level === 1) chapter = item;
  }
}

/** The file's bytes. */
export function pdf(document: ReportDocument, options: PdfOptions): Uint8Array {
  const tell = options.onProgress ?? (() => undefined);
  tell(0);
  const pen = penOn({
    page: options.page,
    fonts: options.fonts,
    created: plainStart(options.created ?? document.date ?? FIXED_DATE),
    fileId: options.fileId ?? digest(JSON.stringify(document)),
  });
  const short = document.title.slice(0, LONGEST_TITLE);
  pen.doc.setDocumentProperties({
    title: pen.letters(short, 'sans'),
    subject: pen.letters(document.subtitle.slice(0, LONGEST_TITLE), 'sans'),
    creator: 'Overdeck',
    ...(document.author === undefined ? {} : { author: pen.letters(document.author, 'sans') }),
  });
  pen.doc.setLanguage(document.language);
  pen.doc.viewerPreferences({ DisplayDocTitle: true });

  const width = pen.width - MARGIN * 2;
  const paper = { top: TOP, bottom: pen.height - BOTTOM };
  const [first, ...rest] = document.sections;
  const title = titleAtoms(pen, document, MARGIN, width);
  const room = paper.bottom - paper.top - heightOf(title);
  const atoms = [
    ...title,
    ...(first === undefined ? [] : firstAtoms(pen, first, MARGIN, width, room)),
    ...(rest.length > 1 ? contentsAtoms(pen, document, MARGIN, width) : []),
    ...rest.flatMap((section) => sectionAtoms(pen, section, MARGIN, width)),
  ];
  tell(0.3);
  const places = placed(atoms, paper);
  const targets = targetsOf(places);
  const pages = places.reduce((most, place) => Math.max(most, place.page), 1);
  for (let page = 2; page <= pages; page += 1) pen.doc.addPage();

  const spot: Spot = {
    pen,
    pageOf: (id) => targets.get(id)?.page,
    link: (href, x, y, size, height) => {
      if (!href.startsWith('#')) pen.doc.link(x, y, size, height, { url: encodeURI(href) });
      else {
        const target = targets.get(href.slice(1));
        if (target) {
          const top = Math.max(target.top - 8, 0.1);
          pen.doc.link(x, y, size, height, { pageNumber: target.page, magFactor: 'XYZ', top });
        }
      }
    },
  };
  let done = 0;
  for (const place of places) {
    pen.doc.setPage(place.page);
    place.atom.draw(spot, place.top);
    done += 1;
    if (done % 200 === 0) tell(0.3 + (0.6 * done) / places.length);
  }
  for (let page = 1; page <= pages; page += 1) {
    pen.doc.setPage(page);
    drawFurniture(pen, document, page, pages);
  }
  addBookmarks(pen, document, targets);
  const bytes = new Uint8Array(pen.doc.output('arraybuffer'));
  tell(1);
  return bytes;
}

/** What the notes of a sheet say: marks, words, layer facts, text alternative. */
import type { System } from '../measures.ts';
import { show } from '../measures.ts';
import type { Candidate, Layer } from '../evaluation/evaluation.ts';
import type { Anchor, DetailModel } from './edge-model.ts';
import { inchesText, lengthText } from './lengths.ts';
import { wrapText } from './text-metrics.ts';

export interface SheetLayer {
  readonly id: string;
  readonly mark: string;
  readonly name: string;
  /** Row of the materials table; null for an air space. */
  readonly material: string | null;
  readonly role: Layer['role'];
  readonly thickness_m: number;
  readonly resistance_m2K_W: number;
  readonly permeance_ng: number | null;
  readonly why: string;
  readonly question: string;
}

export interface NoteText {
  readonly id: string;
  readonly layerId: string | null;
  readonly mark: string;
  readonly name: string;
  readonly detail: string;
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** Mark of a part that is no layer, by its place in the order. */
export const letterMark = (index: number): string => LETTERS[index] ?? `Z${String(index)}`;
const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

/** The first words of a name, enough beside a drawing: up to a comma or a parenthesis. */
const shortName = (name: string): string => capital((name.split(/,| \(/)[0] ?? name).trim());

/** [m] Sheets thinner than this are named, not measured. */
const LEAST_NAMED_m = 0.002;

export function layerDetail(layer: Layer, system: System): string {
  const facts: string[] = [];
  if (layer.thickness_m >= LEAST_NAMED_m) facts.push(lengthText(layer.thickness_m, system));
  if (layer.role === 'insulation' || layer.role === 'cavity')
    facts.push(show('resistance', layer.resistance_m2K_W, system));
  return facts.join(', ');
}

export const sheetLayers = (candidate: Candidate): SheetLayer[] =>
  candidate.layers.map((layer, index) => ({
    id: layer.id,
    mark: String(index + 1),
    name: capital(layer.name),
    material: layer.material,
    role: layer.role,
    thickness_m: layer.thickness_m,
    resistance_m2K_W: layer.resistance_m2K_W,
    permeance_ng: layer.permeance_ng,
    why: layer.why,
    question: layer.question,
  }));

/** How far apart the chosen outriggers stand, in words. Empty where none was chosen. */
function outriggersApart({ structure: { outrigger } }: Candidate, system: System): string {
  if (outrigger === null) return '';
  const { spacing_m } = outrigger;
  return `${system === 'IP' ? inchesText(spacing_m) : lengthText(spacing_m, system)} apart`;
}

/** Notes in reading order: layers get numbers inside to outside, other parts get letters. */
export function noteTexts(edge: DetailModel, candidate: Candidate, system: System): NoteText[] {
  const order = new Map(candidate.layers.map((layer, index) => [layer.id, index]));
  let letter = -1;
  const measured = (id: string): string => {
    if (id === 'part-outrigger') return outriggersApart(candidate, system);
    const measure = edge.measures.find((m) => m.id === 'ice-barrier' && id === 'part-ice-barrier');
    return measure === undefined ? '' : `${lengthText(measure.value_m, system)} along the slope`;
  };
  return edge.anchors.map((anchor: Anchor): NoteText => {
    if (anchor.layerId === null) letter += 1;
    const index = anchor.layerId === null ? undefined : order.get(anchor.layerId);
    const layer = index === undefined ? undefined : candidate.layers[index];
    if (layer !== undefined && index !== undefined) {
      return {
        id: anchor.id,
        layerId: layer.id,
        mark: String(index + 1),
        name: shortName(layer.name),
        detail: layerDetail(layer, system),
      };
    }
    return {
      id: anchor.id,
      layerId: null,
      mark: letterMark(letter),
      name: anchor.name,
      detail: [measured(anchor.id), anchor.detail].filter((words) => words !== '').join(', '),
    };
  });
}

export interface WrappedNote {
  readonly lines: readonly string[];
  /** How many of the lines belong to the name. */
  readonly nameLines: number;
}

/** The words of a note broken to the column. */
export function wrapNote(note: NoteText, width_mm: number, size_mm: number, hasDetail: boolean): WrappedNote {
  const name = wrapText(`${note.mark}  ${note.name}`.replace('  ', ' '), width_mm, size_mm);
  const detail = hasDetail && note.detail !== '' ? wrapText(note.detail, width_mm, size_mm) : [];
  return { lines: [...name, ...detail], nameLines: name.length };
}

/** The drawing in words: the layers inside to outside, then the edge. */
export function description(edge: DetailModel, candidate: Candidate, system: System): string[] {
  const lines = candidate.layers.map((layer, index) => {
    const detail = layerDetail(layer, system);
    return `${String(index + 1)}. ${capital(layer.name)}${detail === '' ? '' : `, ${detail}`}.`;
  });
  const measures = edge.measures.map((measure) => {
    const limit =
      measure.limit_m === null || measure.margin_m === null
        ? ''
        : `, limit ${lengthText(measure.limit_m, system)}, ${marginWords(measure.margin_m, system)}`;
    return `${measure.name}: ${lengthText(measure.value_m, system)}${limit}.`;
  });
  const joints = edge.airWalk.joints.map(
    (j) => `Joint ${String(j.number)} of the air barrier: ${j.name}. ${j.how}`,
  );
  return [...lines, ...measures, edge.airWords, ...joints];
}

/** A margin in words: within or over. */
export const marginWords = (margin_m: number, system: System): string =>
  margin_m < 0
    ? `${lengthText(-margin_m, system)} over the limit`
    : `${lengthText(margin_m, system)} to spare`;

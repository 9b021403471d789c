/** A step of the work on a sheet: which bodies and notes stand, and its words. */
import type { DetailModel } from './edge-model.ts';
import { addedBy, STANDING, type Sequence, type Stage } from './sequence.ts';
import type { NoteSet } from './sheet-labels.ts';
import type { Showing } from './sheet-section.ts';

/** What a sheet asks for, as far as the showing of bodies depends on it. */
interface Wish {
  readonly highlight?: readonly string[];
  readonly before?: boolean;
}

/** What to draw of every body: all of it, a step of the work, or all with what stands today told apart. */
export function showingOf(
  stage: Stage | null,
  sequence: Sequence,
  edge: DetailModel,
  options: Wish,
): Showing {
  const highlight = options.highlight ?? [];
  if (stage !== null)
    return {
      isShown: (body) => stage.ofBody(body) !== 'absent',
      isLit: (body) => stage.ofBody(body) === 'new',
      isAdded: () => false,
    };
  return {
    isShown: () => true,
    isLit: ({ layerId }) => layerId !== null && highlight.includes(layerId),
    isAdded: (body) => options.before === true && sequence.stepOf(body, edge.kind) !== STANDING,
  };
}

/** The notes that have something to point to. */
export const notesAt = (set: NoteSet, stage: Stage | null): NoteSet =>
  stage === null ? set : { ...set, placed: set.placed.filter(({ note }) => stage.ofNote(note) !== 'absent') };

/** One step of the work in words, for the title and the text beside it. */
export function stageWords(
  sequence: Sequence,
  edge: DetailModel,
  step: string,
): { title: string; added: string[] } {
  const index = sequence.steps.findIndex(({ id }) => id === step);
  const row = sequence.steps[index];
  if (row === undefined) return { title: 'before the work', added: [] };
  const added = addedBy(sequence, edge, step);
  return {
    title: `step ${String(index + 1)}: ${row.title.replace(/ in \{\w+\} layers/, '')}`,
    added: [
      added.length === 0
        ? 'New in this step: nothing that this section shows.'
        : `New in this step: ${added.join('; ')}.`,
    ],
  };
}

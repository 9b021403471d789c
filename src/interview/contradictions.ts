/** Answers that cannot all be true, said at once and in words. Nothing is corrected: the person decides. */
import type { Answers } from './answers.ts';
import { edgeContradictions } from './contradictionsEdge.ts';
import { layerContradictions } from './contradictionsLayers.ts';
import { roofContradictions } from './contradictionsRoof.ts';
import type { System } from '../measures.ts';
import type { StateId } from './questions.ts';

export interface Contradiction {
  readonly id: string;
  /** The pages whose answers clash; changing either settles it. */
  readonly questions: readonly StateId[];
  readonly text: string;
}

/** One rule: a sentence when the answers clash, undefined when they do not. */
export interface ContradictionRule {
  readonly id: string;
  readonly questions: readonly StateId[];
  readonly clash: (answers: Answers, system: System) => string | undefined;
}

export const contradictionRules: readonly ContradictionRule[] = [
  ...roofContradictions,
  ...edgeContradictions,
  ...layerContradictions,
];

/** Every clash in the answers, in the order of the rules. Kept answers that no longer apply count as well. */
export const contradictions = (answers: Answers, system: System = 'IP'): readonly Contradiction[] =>
  contradictionRules.flatMap(({ id, questions, clash }) => {
    const text = clash(answers, system);
    return text === undefined ? [] : [{ id, questions, text }];
  });

/** What an answer changed in the layers drawn. */
import type { Candidate, Layer } from '../../evaluation/evaluation.ts';
import type { System } from '../../measures.ts';
import { strategyNames } from './names.ts';
import { thicknessInWords } from './layers.ts';

export interface LayerChange {
  /** The layer as it is now; null for one that is gone. */
  readonly layerId: string | null;
  readonly words: string;
}

const said = (layer: Layer, system: System): string => `${layer.name}, ${thicknessInWords(layer, system)}`;

function changeOf(was: Layer | undefined, now: Layer, system: System): LayerChange[] {
  if (was === undefined) return [{ layerId: now.id, words: `new: ${said(now, system)}` }];
  if (was.name !== now.name || was.material !== now.material)
    return [{ layerId: now.id, words: `${was.name} is now ${said(now, system)}` }];
  const old = thicknessInWords(was, system);
  const thickness = thicknessInWords(now, system);
  if (old !== thickness) return [{ layerId: now.id, words: `${now.name} from ${old} to ${thickness}` }];
  return [];
}

/**
 * The layers of a drawing that an answer changed, each in words.
 *
 * @param was     the candidate drawn before; null when there was none
 * @param now     the candidate drawn now
 * @param system  units of the words
 * @returns       new and changed layers from the room outward, then those that are gone
 */
export function layerChanges(was: Candidate | null, now: Candidate, system: System): LayerChange[] {
  if (was === null) return [];
  if (was.strategy !== now.strategy)
    return [{ layerId: null, words: `${strategyNames[now.strategy]} is drawn now` }];
  const before = new Map(was.layers.map((layer) => [layer.id, layer]));
  const after = new Set(now.layers.map(({ id }) => id));
  return [
    ...now.layers.flatMap((layer) => changeOf(before.get(layer.id), layer, system)),
    ...was.layers
      .filter(({ id }) => !after.has(id))
      .map((layer) => ({ layerId: null, words: `gone: ${layer.name}` })),
  ];
}

/** `overdeck evaluate`. */
import { badInput } from './badInput.ts';
export const evaluateCommand = async (words: readonly string[]): Promise<string | Uint8Array> => {
  throw badInput('evaluate', words.join());
};

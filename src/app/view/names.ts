/** Names of the closed sets as the pages write them: the record's own words, so that both always agree. */
import { boardNames, carrierNames, strategyNames, ventilationNames } from '../../report/names.ts';

export { boardNames, carrierNames, strategyNames, ventilationNames };

/** `vapor-open` -> `Vapor open`, for ids that have no name of their own. */
export function inWords(id: string): string {
  const words = id.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

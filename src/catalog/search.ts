/** Forgiving search by words: case, accents, punctuation and common short forms do not matter. */

const SHORT_FORMS: ReadonlyMap<string, string> = new Map([
  ['saint', 'st'],
  ['sainte', 'ste'],
  ['mount', 'mt'],
  ['fort', 'ft'],
]);
/** Words that name the kind of an area, not the area. */
const KIND_WORDS: ReadonlySet<string> = new Set(['county', 'parish', 'borough']);

/** The bare words of a text: lower case, no accents, no punctuation, short forms alike. */
export function wordsOf(text: string): string[] {
  return text
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/['’.]/g, '')
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '' && !KIND_WORDS.has(word))
    .map((word) => SHORT_FORMS.get(word) ?? word);
}

/** What a search looks at: words of the name, of the region (code and full name), and further words. */
export interface Searchable<T> {
  readonly item: T;
  readonly name: readonly string[];
  readonly region: readonly string[];
  readonly more: readonly string[];
}

const startsOne = (words: readonly string[], part: string): boolean =>
  words.some((word) => word.startsWith(part));

/** How well a candidate fits; undefined when some word of the query finds no place in it. */
function fit(
  candidate: Searchable<unknown>,
  city: readonly string[],
  region: readonly string[],
): number | undefined {
  const { name, more } = candidate;
  const inRegion = (part: string): boolean =>
    startsOne(candidate.region.slice(1), part) || candidate.region[0] === part;
  if (!region.every(inRegion)) return undefined;
  if (!city.every((part) => startsOne(name, part) || startsOne(more, part) || inRegion(part)))
    return undefined;
  const whole = name.join(' ');
  const asked = city.join(' ');
  if (whole === asked) return 4;
  if (whole.startsWith(asked)) return 3;
  if (city[0] !== undefined && name[0]?.startsWith(city[0])) return 2;
  return city.every((part) => startsOne(name, part)) ? 1 : 0;
}

/** Candidates that hold every word of the query, best first; `city, state` keeps the state for the region. */
export function searchWords<T>(candidates: readonly Searchable<T>[], query: string, limit: number): T[] {
  const [before = '', ...after] = query.split(',');
  const city = wordsOf(before);
  const region = wordsOf(after.join(' '));
  if (city.length === 0 && region.length === 0) return [];
  return candidates
    .map((candidate) => ({ candidate, score: fit(candidate, city, region) }))
    .filter((hit): hit is { candidate: Searchable<T>; score: number } => hit.score !== undefined)
    .sort(
      (a, b) =>
        b.score - a.score || a.candidate.name.join(' ').localeCompare(b.candidate.name.join(' '), 'en'),
    )
    .slice(0, limit)
    .map((hit) => hit.candidate.item);
}

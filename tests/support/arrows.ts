/** Reads the imports of the source and says which arrow between two rooms runs the wrong way. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Rooms that lie beside units: they know nothing of the trade. */
const GROUND = ['units', 'faults', 'json', 'measures'] as const;
const BELOW_ROOF = [...GROUND, 'catalog', 'case', 'evaluation', 'physics', 'structure'] as const;
const BELOW_EVALUATE = [...BELOW_ROOF, 'roof', 'strategies', 'judgement'] as const;

/** For each room, the rooms that it may import besides itself. */
export const allowed: Readonly<Record<string, readonly string[]>> = {
  units: [],
  faults: [],
  json: ['faults'],
  measures: ['units'],
  catalog: [...GROUND],
  physics: [...GROUND, 'catalog'],
  weather: ['units', 'faults', 'catalog', 'physics'],
  structure: [...GROUND, 'catalog'],
  case: [...GROUND, 'catalog'],
  evaluation: [...GROUND, 'catalog', 'case'],
  roof: BELOW_ROOF,
  strategies: [...BELOW_ROOF, 'roof'],
  judgement: [...BELOW_ROOF, 'roof'],
  evaluate: BELOW_EVALUATE,
  interview: [...GROUND, 'catalog', 'case'],
  drawing: [...GROUND, 'catalog', 'case', 'evaluation'],
  plot: [...GROUND, 'catalog', 'case', 'evaluation', 'drawing'],
  report: [...GROUND, 'catalog', 'case', 'evaluation', 'drawing', 'plot'],
  app: [...BELOW_EVALUATE, 'weather', 'evaluate', 'interview', 'drawing', 'plot', 'report'],
  command: [...BELOW_EVALUATE, 'weather', 'evaluate', 'interview', 'drawing', 'plot', 'report'],
};

/** Packages that only some rooms may use; a package that is not named here is open to every room. */
const packageRooms: readonly { readonly name: RegExp; readonly rooms: readonly string[] }[] = [
  { name: /^node:/, rooms: ['command'] },
  { name: /^(svelte|idb-keyval|dompurify)(\/|$)/, rooms: ['app'] },
  { name: /^xstate(\/|$)/, rooms: ['interview', 'app', 'command'] },
  { name: /^@xstate\/graph$/, rooms: ['command'] },
  { name: /^d3-/, rooms: ['plot'] },
  { name: /^jspdf(\/|$)/, rooms: ['report', 'app', 'command'] },
  { name: /^(vite|vitest|tsx|typescript|playwright-core|psychrolib|jsdom)(\/|$)/, rooms: ['command'] },
];

/** A source file with its path from the repository's root, forward slashes. */
export interface Source {
  readonly path: string;
  readonly text: string;
}

const isSource = (name: string): boolean => /\.(ts|mjs|js|svelte)$/.test(name) && !name.endsWith('.d.ts');

/** Every source file below a folder of the repository. */
export function sourcesBelow(folder: string): Source[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && isSource(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((file) => ({
      path: relative(root, file).replaceAll('\\', '/'),
      text: readFileSync(file, 'utf8'),
    }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** The script of a file: all of it, or what stands between the script tags of a Svelte file. */
export function scriptOf(source: Source): string {
  if (!source.path.endsWith('.svelte')) return source.text;
  return [...source.text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map((found) => found[1]).join('\n');
}

/** The room a file of the source belongs to: its folder below src, or its own name at the top. */
export function roomOf(path: string): string {
  const [, first = ''] = path.split('/');
  return first.replace(/\.\w+$/, '');
}

/** The defaults speak of the fields of a case, which the catalog does not know. */
const tableReaders = (target: string): readonly string[] =>
  target.endsWith('/defaults.json') ? ['catalog', 'case', 'app'] : ['catalog', 'app'];

function wrongArrow(source: Source, specifier: string): string | undefined {
  const from = roomOf(source.path);
  if (!specifier.startsWith('.')) {
    const rule = packageRooms.find(({ name }) => name.test(specifier));
    return rule === undefined || rule.rooms.includes(from)
      ? undefined
      : `${source.path} imports "${specifier}", which only ${rule.rooms.join(', ')} may use`;
  }
  const target = posix.join(posix.dirname(source.path), specifier);
  if (target.startsWith('content/')) {
    return tableReaders(target).includes(from)
      ? undefined
      : `${source.path} imports ${target}; tables are read through src/catalog`;
  }
  if (!target.startsWith('src/')) {
    return target.endsWith('package.json') && from === 'command'
      ? undefined
      : `${source.path} imports ${target}, outside the source`;
  }
  const to = roomOf(target);
  const rooms = allowed[from];
  if (rooms === undefined) return `${source.path} lies in no known room`;
  return to === from || rooms.includes(to)
    ? undefined
    : `${source.path} (${from}) imports ${target} (${to}); ${from} may import ${rooms.join(', ') || 'nothing'}`;
}

/** One sentence for every import that runs the wrong way. */
export function wrongArrows(sources: readonly Source[]): string[] {
  return sources.flatMap((source) =>
    ts
      .preProcessFile(scriptOf(source), true, true)
      .importedFiles.map(({ fileName }) => wrongArrow(source, fileName))
      .filter((sentence) => sentence !== undefined),
  );
}

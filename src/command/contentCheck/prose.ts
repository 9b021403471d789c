/** Markdown: front matter, citations, links, and words that have no place in the product. */
import { marked, type Token } from 'marked';
import { knownGrades } from '../../catalog/sets.ts';
import { parseWords } from '../../catalog/words.ts';
import type { Content, Fault } from './content.ts';
import { sourceIds } from './tables.ts';

interface Forbidden {
  readonly rule: string;
  readonly pattern: RegExp;
  readonly hint: string;
}

/** Patterns, so that the list itself names nothing. */
export const forbidden: readonly Forbidden[] = [
  {
    rule: 'no-machine-path',
    pattern: /(?:^|[\s(`"'])(?:\/(?:work|tmp|root|home|usr|opt|mnt|Users)\/\S*|[A-Z]:\\\S*)/m,
    hint: 'a path of one machine means nothing elsewhere',
  },
  { rule: 'no-brand-mark', pattern: /[®™℠]/, hint: 'name the kind of product, not a brand' },
  {
    rule: 'no-approval',
    pattern: /\bapproved\b/i,
    hint: 'this program warns and defers; it approves nothing',
  },
  { rule: 'no-promise', pattern: /\bguarantee\w*/i, hint: 'nothing here can be promised' },
  { rule: 'nothing-open', pattern: /\b(?:TODO|FIXME|XXX|TBD)\b/, hint: 'finish it or take it out' },
  {
    rule: 'american-spelling',
    pattern: /\b(?:colour|(?:centi|milli)?metre|fibre|vapour|centre|mould|aluminium)s?\b/i,
    hint: 'write it the American way',
  },
  {
    rule: 'no-recording',
    // A grade of knownGrades ends in one of these words.
    pattern: /\b(?:(?<!seen-)transcript|podcast|webinar|youtube)\w*/i,
    hint: 'cite a published source instead',
  },
];

const withoutCode = (text: string): string =>
  text.replace(/```[\s\S]*?(```|$)/g, '').replace(/`[^`\n]*`/g, '``');

function forbiddenFaults(file: string, text: string): Fault[] {
  return forbidden.flatMap(({ rule, pattern, hint }) => {
    const found = pattern.exec(text);
    if (found === null) return [];
    const line = text.slice(0, found.index + found[0].search(/\S/)).split('\n').length;
    return [{ file, path: `line ${line}`, rule, hint: `${JSON.stringify(found[0].trim())}: ${hint}` }];
  });
}

const slugOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\w\s-]/g, '')
    .trim()
    .replace(/\s/g, '-');

const headingsIn = (text: string): string[] =>
  [...withoutCode(text).matchAll(/^#{1,6}\s+(.+)$/gm)].map((found) => slugOf(found[1] ?? ''));

/** The file that a relative target means, from the repository's root. */
function resolved(file: string, target: string): string {
  const parts = file.split('/').slice(0, -1);
  for (const part of target.split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '.' && part !== '') parts.push(part);
  }
  return parts.join('/');
}

function linkFaults(file: string, text: string, content: Content): Fault[] {
  const prose = withoutCode(text);
  const targets = [...prose.matchAll(/\]\(\s*([^)\s]+)/g), ...prose.matchAll(/^\s*\[[^\]]+\]:\s*(\S+)/gm)];
  return targets.flatMap(([, target = '']) => {
    if (/^[a-z][a-z+.-]*:/i.test(target)) return [];
    const [path = '', place] = target.split('#');
    const goal = path === '' ? file : resolved(file, path);
    const fault = (hint: string): Fault[] => [{ file, path: target, rule: 'link-alive', hint }];
    if (path !== '' && !content.holds(goal)) return fault(`there is no ${goal}`);
    const there = path === '' ? text : content.markdown[goal];
    if (place === undefined || place === '' || there === undefined) return [];
    return headingsIn(there).includes(place) ? [] : fault(`${goal} has no heading #${place}`);
  });
}

/** The two sources that are a grade themselves and need no id in the text. */
const bareGrades: Readonly<Record<string, string>> = {
  'common practice': 'COMMON-PRACTICE',
  'our judgement': 'OUR-JUDGEMENT',
};

interface Citation {
  readonly id: string;
  readonly grade: string;
}

/** `(AITC-TN20, seen-secondary)`, `(IRC-2018-FIRE section R902, memory)`, `(common practice)`. */
export function citationsIn(text: string): Citation[] {
  return [...text.matchAll(/\(([^()]*)\)/g)]
    .flatMap((found) => (found[1] ?? '').split(';'))
    .flatMap((part): Citation[] => {
      const bare = bareGrades[part.trim()];
      if (bare !== undefined) return [{ id: bare, grade: part.trim() }];
      const long = /^\s*([A-Z][A-Z0-9.]*(?:-[A-Za-z0-9.]+)+)(?: [^,]*)?, ([a-z][a-z -]*)\s*$/.exec(part);
      return long === null ? [] : [{ id: long[1] ?? '', grade: long[2] ?? '' }];
    });
}

/** Paragraphs and list items, each as one text. */
function blocksOf(tokens: readonly Token[]): string[] {
  return tokens.flatMap((token): string[] => {
    if (token.type === 'list') {
      return (token as { items: { text: string }[] }).items.map(({ text }) => text);
    }
    return token.type === 'paragraph' ? [token.raw.trim()] : [];
  });
}

/** A quantity of any kind: a number with a unit, a percentage, a pitch, an R. */
const figure = /\bR-\d|\d:12\b|\d\s?%|\d\s?(?:in|ft|mm|m|psf|kPa|Pa|mph|°[CF]|perm|lb)\b|\d\s?°/;

/** Texts of advice: every figure says where it comes from and how it is known. */
function citationFaults(
  file: string,
  sources: readonly string[],
  texts: readonly string[],
  ids: ReadonlySet<string>,
): Fault[] {
  return texts.flatMap((text) => {
    const cited = citationsIn(text);
    const fault = (rule: string, hint: string): Fault => ({ file, path: text.slice(0, 40), rule, hint });
    return [
      ...(figure.test(text) && cited.length === 0
        ? [fault('figure-cited', 'say the source and how it is known: (ID, seen) or (common practice)')]
        : []),
      ...cited.flatMap(({ id, grade }) => [
        ...(ids.has(id) ? [] : [fault('source-exists', `add ${id} to sources.json or correct it`)]),
        ...(sources.includes(id) ? [] : [fault('source-listed', `list ${id} under sources of the file`)]),
        ...((knownGrades as readonly string[]).includes(grade)
          ? []
          : [fault('grade-known', `${JSON.stringify(grade)} is not one of ${knownGrades.join(', ')}`)]),
      ]),
    ];
  });
}

/** Every fault of the Markdown files. */
export function proseFaults(content: Content): Fault[] {
  const ids = sourceIds(content);
  const words = Object.entries(content.markdown).filter(([path]) =>
    /^content\/(questions|strategies|cautions|glossary)\//.test(path),
  );
  const reading = parseWords(Object.fromEntries(words));
  const shape: Fault[] = reading.ok
    ? []
    : reading.faults.map(({ path, message }) => {
        const [file = '', place = ''] = path.split(' ');
        return { file, path: place, rule: 'words', hint: message };
      });
  const plain = Object.entries(content.markdown).flatMap(([path, text]) => [
    ...forbiddenFaults(path, text),
    ...linkFaults(path, text, content),
  ]);
  if (!reading.ok) return [...shape, ...plain];
  const { cautions, strategies } = reading.words;
  const advice = [
    ...Object.values(cautions).map((word) => ({ ...word, folder: 'cautions', more: [] as string[] })),
    ...Object.values(strategies).map((word) => ({
      ...word,
      folder: 'strategies',
      more: [...word.goodWhen, ...word.badWhen],
    })),
  ].flatMap(({ id, folder, sources, body, more }) => {
    const file = `content/${folder}/${id}.md`;
    const missing = sources.filter((each) => !ids.has(each));
    return [
      ...missing.map((each) => ({
        file,
        path: 'sources',
        rule: 'source-exists',
        hint: `add ${each} to sources.json or correct it`,
      })),
      ...citationFaults(file, sources, [...more, ...blocksOf(marked.lexer(body))], ids),
    ];
  });
  return [...plain, ...advice];
}

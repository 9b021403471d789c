/** Every exported calculation says in a fixed form what it takes, gives, assumes and rests on. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { root, sourcesBelow, type Source } from './support/arrows.ts';

/** Files that compute nothing of the trade: checks of arguments, and lists of calculations. */
const NOT_CALCULATIONS =
  /\/(guards|calculations|[a-z]+Calculations|inputs?|roof\/(memo|variant)|judgement\/(judge|rules|workings|workings\/\w+))\.ts$/;
/** Guards refuse a wrong argument and compute nothing. */
const GUARD = /^(require|demand)[A-Z]/;
const ORDER = ['param', 'returns', 'range', 'throws', 'source', 'assumes'];
const GRADES = /\((?:[^()]*\b)?(seen-secondary|seen|computed|memory|common practice|our judgement)\b[^()]*\)/;

const { rows } = JSON.parse(readFileSync(join(root, 'content/tables/sources.json'), 'utf8')) as {
  rows: { id: string }[];
};
const known = new Set(rows.map(({ id }) => id));

interface Exported {
  readonly name: string;
  readonly node: ts.Node;
}

const isExported = (statement: ts.Statement): boolean =>
  ts.canHaveModifiers(statement) &&
  (ts.getModifiers(statement) ?? []).some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword);

function exportedFunctions(file: ts.SourceFile): Exported[] {
  return file.statements.filter(isExported).flatMap((statement): Exported[] => {
    if (ts.isFunctionDeclaration(statement))
      return [{ name: statement.name?.text ?? 'default', node: statement }];
    if (!ts.isVariableStatement(statement)) return [];
    return statement.declarationList.declarations
      .filter(({ initializer }) => initializer !== undefined && ts.isArrowFunction(initializer))
      .map(({ name }) => ({ name: name.getText(), node: statement }));
  });
}

const textOf = (tag: ts.JSDocTag): string => tag.getText().replace(/^\s*\*\s?/gm, ' ');

function faultsOf(where: string, { node }: Exported): string[] {
  const tags = ts.getJSDocTags(node).filter((tag) => tag.parent.parent === node);
  const named = (name: string): string[] =>
    tags
      .filter(({ tagName }) =>
        ['return', 'returns'].includes(tagName.text) ? name === 'returns' : tagName.text === name,
      )
      .map(textOf);
  const faults: string[] = [];
  const returned = named('returns');
  if (returned.length !== 1 || !/^@returns\s+\[[^\]]+\]/.test(returned[0] ?? '')) {
    faults.push(`${where} needs one "@returns [unit] meaning"`);
  }
  const cited = named('source');
  if (cited.length === 0) faults.push(`${where} needs a "@source id clause (grade)"`);
  for (const text of cited) {
    const id = /^@source\s+(\S+)/.exec(text)?.[1] ?? '';
    if (!known.has(id))
      faults.push(`${where} cites "${id}", which content/tables/sources.json does not hold`);
    if (id !== 'OUR-JUDGEMENT' && !GRADES.test(text))
      faults.push(`${where} does not say how "${id}" is known`);
  }
  const order = tags.map(({ tagName }) => ORDER.indexOf(tagName.text)).filter((place) => place >= 0);
  if (order.some((place, index) => place < (order[index - 1] ?? 0))) {
    faults.push(`${where} has its tags out of order; the order is ${ORDER.join(', ')}`);
  }
  return faults;
}

function docstringFaults({ path, text }: Source): string[] {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.ESNext, true);
  return exportedFunctions(file)
    .filter(({ name }) => !GUARD.test(name))
    .flatMap((found) => faultsOf(`${path} ${found.name}`, found));
}

const calculations = ['src/physics', 'src/structure', 'src/roof', 'src/judgement']
  .flatMap(sourcesBelow)
  .filter(({ path }) => !NOT_CALCULATIONS.test(path));

describe('docstrings of physics, structure, roof and the values of judgement', () => {
  it('give the unit returned and a source that exists', () => {
    expect(calculations.length).toBeGreaterThan(5);
    expect(calculations.flatMap(docstringFaults)).toEqual([]);
  });

  it.each([
    ['no docstring', 'export function f(): number { return 1; }', 'needs one "@returns'],
    [
      'no unit',
      '/**\n * @returns a number\n * @source ISO-6946-2017 (seen)\n */\nexport function f() {}',
      'needs one',
    ],
    ['no source', '/**\n * @returns [m] length\n */\nexport const f = () => 1;', 'needs a "@source'],
    [
      'an unknown source',
      '/**\n * @returns [m] x\n * @source NONE (seen)\n */\nexport function f() {}',
      'cites "NONE"',
    ],
    [
      'no grade',
      '/**\n * @returns [m] x\n * @source ISO-6946-2017 clause 3\n */\nexport function f() {}',
      'how',
    ],
    [
      'a wrong order',
      '/**\n * @source ISO-6946-2017 (seen)\n * @returns [m] x\n */\nexport function f() {}',
      'order',
    ],
  ])('a planted function with %s is found', (_, text, named) => {
    expect(docstringFaults({ path: 'src/physics/planted.ts', text }).join('\n')).toContain(named);
  });
});

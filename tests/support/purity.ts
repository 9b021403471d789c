/** Finds what a pure file must not touch: page, clock, chance, network, storage, process. */
import ts from 'typescript';
import { scriptOf, type Source } from './arrows.ts';

const FORBIDDEN = new Set([
  'document',
  'window',
  'self',
  'globalThis',
  'navigator',
  'location',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'caches',
  'fetch',
  'XMLHttpRequest',
  'WebSocket',
  'EventSource',
  'Worker',
  'setTimeout',
  'setInterval',
  'queueMicrotask',
  'requestAnimationFrame',
  'performance',
  'crypto',
  'process',
  'Buffer',
  'require',
  'console',
]);

function namesOf(binding: ts.BindingName): string[] {
  if (ts.isIdentifier(binding)) return [binding.text];
  return binding.elements.flatMap((element) => (ts.isBindingElement(element) ? namesOf(element.name) : []));
}

/** Names that a node brings into the scope of what it holds. */
function declaredIn(node: ts.Node): string[] {
  if (ts.isFunctionLike(node)) return node.parameters.flatMap(({ name }) => namesOf(name));
  if (ts.isCatchClause(node) && node.variableDeclaration) return namesOf(node.variableDeclaration.name);
  if (
    (ts.isForStatement(node) || ts.isForOfStatement(node) || ts.isForInStatement(node)) &&
    node.initializer &&
    ts.isVariableDeclarationList(node.initializer)
  ) {
    return node.initializer.declarations.flatMap(({ name }) => namesOf(name));
  }
  if (!ts.isBlock(node) && !ts.isSourceFile(node) && !ts.isCaseClause(node)) return [];
  return node.statements.flatMap((statement) => {
    if (ts.isVariableStatement(statement)) {
      return statement.declarationList.declarations.flatMap(({ name }) => namesOf(name));
    }
    if (ts.isFunctionDeclaration(statement) || ts.isClassDeclaration(statement)) {
      return statement.name === undefined ? [] : [statement.name.text];
    }
    const clause = ts.isImportDeclaration(statement) ? statement.importClause : undefined;
    const bindings = clause?.namedBindings;
    return [
      ...(clause?.name === undefined ? [] : [clause.name.text]),
      ...(bindings === undefined
        ? []
        : ts.isNamespaceImport(bindings)
          ? [bindings.name.text]
          : bindings.elements.map(({ name }) => name.text)),
    ];
  });
}

function isDeclared(node: ts.Identifier): boolean {
  for (let scope: ts.Node = node.parent; scope !== undefined; scope = scope.parent) {
    if (declaredIn(scope).includes(node.text)) return true;
  }
  return false;
}

/** True where the name stands for a value of the surroundings, not for a member, a type or a new name. */
function isValue(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isShorthandPropertyAssignment(parent)) return true;
  if (ts.isTypeNode(parent) && !ts.isExpressionWithTypeArguments(parent)) return ts.isTypeQueryNode(parent);
  const named = (parent as { name?: ts.Node; propertyName?: ts.Node }).name === node;
  return !named && (parent as { propertyName?: ts.Node }).propertyName !== node;
}

function impurity(node: ts.Node): string | undefined {
  if (ts.isMetaProperty(node)) return 'import.meta';
  if (ts.isNewExpression(node) && node.expression.getText() === 'Date' && !node.arguments?.length) {
    return 'new Date()';
  }
  if (ts.isCallExpression(node) && node.expression.getText() === 'Date') return 'Date()';
  if (ts.isPropertyAccessExpression(node) && ['Date.now', 'Math.random'].includes(node.getText())) {
    return node.getText();
  }
  return ts.isIdentifier(node) && FORBIDDEN.has(node.text) && isValue(node) && !isDeclared(node)
    ? node.text
    : undefined;
}

/** One sentence for every use of something that a pure file must not touch. */
export function impurities(source: Source): string[] {
  const file = ts.createSourceFile(
    source.path,
    scriptOf(source),
    ts.ScriptTarget.ESNext,
    true,
    ts.ScriptKind.TS,
  );
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const what = impurity(node);
    if (what !== undefined) {
      const { line } = file.getLineAndCharacterOfPosition(node.getStart());
      found.push(`${source.path}:${line + 1} touches ${what}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

import ts from 'typescript';
import { expect, test } from 'vitest';
import { readSources, type SourceFile } from './source-tree';

const shared = [...readSources().values()].filter((file) => file.path.startsWith('shared/'));
const measuring = shared.filter((file) => /^shared\/(geometry|outline|measure|scoring|stats)\//.test(file.path));

/** Same digits in Node and in every browser: these and no others (ECMA-262 leaves the rest to the engine). */
const exactMath = new Set(['sqrt', 'abs', 'min', 'max', 'floor']);
const outside = new Set([
  'window',
  'document',
  'navigator',
  'localStorage',
  'indexedDB',
  'fetch',
  'process',
  'Buffer',
  'setTimeout',
  'performance',
  'crypto',
]);

function found(files: SourceFile[], wrong: (node: ts.Node) => boolean): string[] {
  return files.flatMap((file) => {
    const hits: string[] = [];
    const visit = (node: ts.Node) => {
      if (wrong(node))
        hits.push(
          `${file.path}:${file.tree.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${node.getText().slice(0, 60)}`,
        );
      ts.forEachChild(node, visit);
    };
    visit(file.tree);
    return hits;
  });
}

const isFree = (node: ts.Identifier) =>
  !(ts.isPropertyAccessExpression(node.parent) && node.parent.name === node) &&
  !ts.isPropertyAssignment(node.parent) &&
  !ts.isPropertySignature(node.parent) &&
  !ts.isBindingElement(node.parent) &&
  !ts.isParameter(node.parent);

test('shared has no DOM, no Node, no clock and no chance', () => {
  expect(
    found(
      shared,
      (node) =>
        (ts.isIdentifier(node) && outside.has(node.text) && isFree(node) && !isDeclared(node)) ||
        (ts.isNewExpression(node) && node.expression.getText() === 'Date' && !node.arguments?.length) ||
        (ts.isPropertyAccessExpression(node) && ['Date.now', 'Math.random'].includes(node.getText())),
    ),
  ).toEqual([]);
});

test('measuring code keeps to arithmetic that gives equal digits everywhere', () => {
  expect(
    found(
      measuring,
      (node) =>
        (ts.isPropertyAccessExpression(node) &&
          node.expression.getText() === 'Math' &&
          !exactMath.has(node.name.text)) ||
        (ts.isBinaryExpression(node) &&
          [ts.SyntaxKind.AsteriskAsteriskToken, ts.SyntaxKind.AsteriskAsteriskEqualsToken].includes(
            node.operatorToken.kind,
          )) ||
        (ts.isIdentifier(node) && node.text === 'Intl' && isFree(node)),
    ),
  ).toEqual([]);
});

/** A local of the same name (e.g. a parameter called `document`) is no global. */
function isDeclared(node: ts.Identifier): boolean {
  return new RegExp(`(const|let|function|\\(|,|\\{)\\s*${node.text}\\s*[:=,)(}?]`).test(node.getSourceFile().text);
}

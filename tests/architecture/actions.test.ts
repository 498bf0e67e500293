import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { readSources, type SourceFile } from './source-tree';

const actionFiles = [...readSources().values()].filter((file) => /(^|\/)actions\.tsx?$/.test(file.path));

/** Names imported from a folder of operations: lib, but not the plumbing in lib/http and not lib/data. */
function operationNames({ tree }: SourceFile): Set<string> {
  const names = new Set<string>();
  for (const node of tree.statements) {
    if (
      !ts.isImportDeclaration(node) ||
      !/^@\/lib\/(?!http\/|data\b|face\/)/.test((node.moduleSpecifier as ts.StringLiteral).text)
    )
      continue;
    const named = node.importClause?.namedBindings;
    if (named && ts.isNamedImports(named)) named.elements.forEach((one) => names.add(one.name.text));
  }
  return names;
}

/** Every export with the code behind it. */
function exported({ tree }: SourceFile): { name: string; body: ts.Node }[] {
  return tree.statements.flatMap((node) => {
    const isExported =
      ts.canHaveModifiers(node) && ts.getModifiers(node)?.some((one) => one.kind === ts.SyntaxKind.ExportKeyword);
    if (ts.isExportDeclaration(node) || ts.isExportAssignment(node))
      return [{ name: node.getText(), body: node as ts.Node }];
    if (!isExported || ts.isTypeAliasDeclaration(node) || ts.isInterfaceDeclaration(node)) return [];
    if (ts.isVariableStatement(node))
      return node.declarationList.declarations.map((one) => ({ name: one.name.getText(), body: one as ts.Node }));
    return [
      {
        name: ts.isFunctionDeclaration(node) ? (node.name?.text ?? 'default') : node.getText().slice(0, 40),
        body: node as ts.Node,
      },
    ];
  });
}

function mentions(body: ts.Node, names: Set<string>): boolean {
  let found = false;
  const visit = (node: ts.Node) => {
    if (ts.isIdentifier(node) && names.has(node.text)) found = true;
    ts.forEachChild(node, visit);
  };
  visit(body);
  return found;
}

describe('server actions', () => {
  test.each(actionFiles.map((file) => [file.path, file] as const))('%s: every export wraps an operation', (_, file) => {
    expect(file.directive).toBe('use server');
    const operations = operationNames(file);
    expect(
      exported(file)
        .filter(({ body }) => !mentions(body, operations))
        .map(({ name }) => name),
    ).toEqual([]);
  });

  test('no other file is open to the browser by “use server”', () => {
    const others = [...readSources().values()].filter(
      (file) => !/(^|\/)actions\.tsx?$/.test(file.path) && /^\s*['"]use server['"]/m.test(file.text),
    );
    expect(others.map((file) => file.path)).toEqual([]);
  });
});

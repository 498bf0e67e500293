import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * A source file: its path from the root, its text, and what it imports (`inside` = paths from the root, `packages` =
 * names).
 */
export type SourceFile = {
  path: string;
  text: string;
  tree: ts.SourceFile;
  inside: string[];
  packages: string[];
  directive: string | null;
};

const rooms = ['app', 'lib', 'prisma', 'shared'];
const skipped = new Set(['node_modules', 'generated', '.next']);

/** Every .ts, .tsx and .mjs file of the product, by path; read once for all files of tests in a worker. */
export function readSources(): ReadonlyMap<string, SourceFile> {
  return (all ??= readAll());
}

let all: ReadonlyMap<string, SourceFile> | null = null;

function readAll(): Map<string, SourceFile> {
  const beside = readdirSync(root).filter((name) => /^(proxy|instrumentation)\.ts$/.test(name));
  const paths = [...beside, ...rooms.flatMap((room) => filesUnder(room))];
  const known = new Set(paths);
  return new Map(paths.map((file) => [file, readSource(file, known)]));
}

/** All files that a file leads to, itself included. `stop` says where not to go on. */
export function reachable(
  from: string,
  sources: ReadonlyMap<string, SourceFile>,
  stop: (file: SourceFile) => boolean = () => false,
): Set<string> {
  const seen = new Set([from]);
  for (const file of seen) {
    const source = sources.get(file);
    if (!source || (file !== from && stop(source))) continue;
    source.inside.forEach((next) => seen.add(next));
  }
  return seen;
}

function filesUnder(folder: string): string[] {
  let entries;
  try {
    entries = readdirSync(path.join(root, folder), { withFileTypes: true });
  } catch {
    return [];
  }
  return entries.flatMap((entry) => {
    if (skipped.has(entry.name)) return [];
    const file = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return filesUnder(file);
    return /\.(tsx?|mjs)$/.test(entry.name) && !entry.name.endsWith('.d.ts') ? [file] : [];
  });
}

function readSource(file: string, known: Set<string>): SourceFile {
  const text = readFileSync(path.join(root, file), 'utf8');
  const tree = ts.createSourceFile(
    file,
    text,
    ts.ScriptTarget.Latest,
    true,
    file.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  );
  const names = importedNames(tree);
  const own = names.filter((name) => name.startsWith('.') || name.startsWith('@/'));
  return {
    path: file,
    text,
    tree,
    inside: own.map((name) => resolveOwn(file, name, known)),
    packages: names.filter((name) => !own.includes(name)),
    directive: directiveOf(tree),
  };
}

/** What is needed when the program runs: imports and re-exports without `import type`, and `import('…')`. */
function importedNames(tree: ts.SourceFile): string[] {
  const names: string[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isImportDeclaration(node) && !onlyTypes(node.importClause))
      names.push((node.moduleSpecifier as ts.StringLiteral).text);
    if (ts.isExportDeclaration(node) && node.moduleSpecifier && !node.isTypeOnly)
      names.push((node.moduleSpecifier as ts.StringLiteral).text);
    if (
      ts.isCallExpression(node) &&
      node.expression.kind === ts.SyntaxKind.ImportKeyword &&
      ts.isStringLiteral(node.arguments[0]!)
    )
      names.push(node.arguments[0].text);
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return names;
}

function onlyTypes(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const named = clause.namedBindings;
  return (
    !clause.name &&
    !!named &&
    ts.isNamedImports(named) &&
    named.elements.length > 0 &&
    named.elements.every((one) => one.isTypeOnly)
  );
}

function resolveOwn(from: string, name: string, known: Set<string>): string {
  const base = name.startsWith('@/') ? name.slice(2) : path.posix.join(path.posix.dirname(from), name);
  const candidates = [base, `${base}.ts`, `${base}.tsx`, `${base}/index.ts`, base.replace(/\.js$/, '.ts')];
  return candidates.find((candidate) => known.has(candidate)) ?? base;
}

function directiveOf(tree: ts.SourceFile): string | null {
  const first = tree.statements[0];
  return first && ts.isExpressionStatement(first) && ts.isStringLiteral(first.expression)
    ? first.expression.text
    : null;
}

import { posix } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { readSources, type SourceFile } from './source-tree';

const rooms = /^(lib|shared)\//;
const sources = [...readSources().values()].filter(({ path }) => rooms.test(path));
const known = new Set(sources.map(({ path }) => path));
const uses = new Map(sources.map((file) => [file.path, usedBy(file)]));

/** Whatever a file names of others, types included: two files that know each other's types have to be read together. */
function usedBy(file: SourceFile): string[] {
  const names: string[] = [];
  const visit = (node: ts.Node) => {
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier)
      names.push((node.moduleSpecifier as ts.StringLiteral).text);
    if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword && node.arguments[0])
      names.push(node.arguments[0].getText().slice(1, -1));
    ts.forEachChild(node, visit);
  };
  visit(file.tree);
  return names.flatMap((name) => {
    const base = name.startsWith('@/') ? name.slice(2) : posix.join(posix.dirname(file.path), name);
    const found = [base, `${base}.ts`, `${base}.tsx`, `${base}.mjs`, `${base}/index.ts`].find((one) => known.has(one));
    return found && found !== file.path ? [found] : [];
  });
}

/** Groups whose members lead to each other (Tarjan's strongly connected components of more than one node). */
function circles(edges: ReadonlyMap<string, Iterable<string>>): string[][] {
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const open: string[] = [];
  const found: string[][] = [];
  const visit = (node: string) => {
    order.set(node, order.size);
    lowest.set(node, order.get(node)!);
    open.push(node);
    for (const next of edges.get(node) ?? []) {
      if (!order.has(next)) visit(next);
      if (open.includes(next)) lowest.set(node, Math.min(lowest.get(node)!, lowest.get(next)!));
    }
    if (lowest.get(node) !== order.get(node)) return;
    const group = open.splice(open.indexOf(node));
    if (group.length > 1) found.push(group.sort());
  };
  for (const node of edges.keys()) if (!order.has(node)) visit(node);
  return found;
}

/** `lib/face/file/woff.ts` belongs to the room `lib/face`: a room's inner folders are read with it. */
const roomOf = (file: string): string => file.split('/').slice(0, 2).join('/');

function roomsOf(top: string): Map<string, Set<string>> {
  const between = new Map<string, Set<string>>();
  for (const [from, targets] of uses) {
    if (!from.startsWith(top)) continue;
    const room = between.get(roomOf(from)) ?? new Set<string>();
    between.set(roomOf(from), room);
    targets.filter((to) => to.startsWith(top) && roomOf(to) !== roomOf(from)).forEach((to) => room.add(roomOf(to)));
  }
  return between;
}

describe('no circles', () => {
  test('finds one that is there', () => {
    const edges = new Map(Object.entries({ a: ['b'], b: ['c'], c: ['b', 'd'], d: [] }));
    expect(circles(edges)).toEqual([['b', 'c']]);
  });

  test('between files of lib and shared', () => {
    expect(circles(uses)).toEqual([]);
  });

  test.each(['lib/', 'shared/'])('between rooms of %s', (top) => {
    expect(circles(roomsOf(top))).toEqual([]);
  });
});

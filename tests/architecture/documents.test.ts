import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from './source-tree';

/** What is made when the program runs, and so is not in a fresh clone. */
const madeLater = /^(\.\/)?(data|backups|prisma\/generated)\//;
const rooms = /^(app|lib|prisma|shared|tests|public)\/|^[\w.-]+\.(md|json|mjs)$/;

/** The README of each room, beside its code. */
function roomReadmes(): string[] {
  return ['app', 'lib', 'prisma', 'shared', 'tests'].flatMap((room) =>
    readdirSync(path.join(root, room), { recursive: true, encoding: 'utf8' })
      .filter((name) => path.basename(name) === 'README.md')
      .map((name) => `${room}/${name}`),
  );
}

/**
 * Paths in code spans and links, without line numbers; what has a placeholder, a space or a pattern in it is no path.
 */
function namedPaths(text: string): string[] {
  const spans = [...text.matchAll(/`([^`\n]+)`/g)].map((match) => match[1]!);
  const links = [...text.matchAll(/\]\(([^)#]+)[^)]*\)/g)]
    .map((match) => match[1]!)
    .filter((link) => !/^[a-z]+:/.test(link));
  return [...new Set([...spans.filter((span) => rooms.test(span)), ...links])].filter(
    (name) => !/[\s*<>{}$…]|NAME/.test(name) && !madeLater.test(name),
  );
}

describe.each(['README.md', 'DEVELOPERS.md', ...roomReadmes()])('%s', (document) => {
  const text = readFileSync(path.join(root, document), 'utf8');
  const beside = path.dirname(path.join(root, document));

  test('names paths, and all of them exist', () => {
    // A bare name is meant from the top in the two documents there, and somewhere in the room in a room's own.
    const named = namedPaths(text).filter((name) => !document.includes('/') || name.includes('/'));
    // The two at the top are maps of the house; a room's may be a few words.
    if (!document.includes('/')) expect(named.length).toBeGreaterThan(3);
    expect(named.filter((name) => ![root, beside].some((folder) => existsSync(path.join(folder, name))))).toEqual([]);
  });

  test('names npm commands that package.json has', () => {
    const { scripts } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as {
      scripts: Record<string, string>;
    };
    const commands = [...text.matchAll(/npm (?:run (?:-s )?([\w-]+)|(start|test))/g)].map(
      (match) => match[1] ?? match[2]!,
    );
    expect(commands.filter((name) => !(name in scripts))).toEqual([]);
  });
});

test('DEVELOPERS.md stays a map: at most 10 kB', () => {
  expect(statSync(path.join(root, 'DEVELOPERS.md')).size).toBeLessThanOrEqual(10_000);
});

describe('comments', () => {
  const comment = /\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/[^\n]*/g;
  const inRoom = /(?<![\w/@.-])(?:app|lib|prisma|shared|tests|public)\/[\w[\]./-]*[\w\]]/g;
  const isThere = (name: string) =>
    ['', '.ts', '.tsx', '.mjs'].some((ending) => existsSync(path.join(root, name + ending)));

  test('name only paths that exist', () => {
    const sources = ['app', 'lib', 'prisma', 'shared', 'tests'].flatMap((room) =>
      readdirSync(path.join(root, room), { recursive: true, encoding: 'utf8' })
        .filter((name) => /\.(tsx?|mjs|prisma|css)$/.test(name) && !name.startsWith('generated'))
        .map((name) => `${room}/${name}`),
    );
    const wrong = sources.flatMap((file) => {
      const text = readFileSync(path.join(root, file), 'utf8');
      const names = [...text.matchAll(comment)].flatMap(([words]) => words.match(inRoom) ?? []);
      return names
        .filter((name) => !/NAME/.test(name) && !madeLater.test(name) && !isThere(name))
        .map((name) => `${file}: ${name}`);
    });
    expect(wrong).toEqual([]);
  });
});

import { readdirSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { root } from './source-tree';

type Folder = { path: string; files: string[]; folders: string[] };

/** Every folder of a room, the room itself included. */
function foldersUnder(room: string): Folder[] {
  const entries = readdirSync(path.join(root, room), { withFileTypes: true });
  const folders = entries.filter((entry) => entry.isDirectory()).map(({ name }) => name);
  const files = entries.filter((entry) => entry.isFile()).map(({ name }) => name);
  return [{ path: room, files, folders }, ...folders.flatMap((name) => foldersUnder(`${room}/${name}`))];
}

/** Files that Next looks for by their name, so that the folder is an address. */
const byName = /^(page|route|layout|loading|error|not-found|template|default)(\.\w+)?\.tsx?$/;

/**
 * A folder is for several things. In app, folders without an underscore are parts of addresses, and Next decides on
 * them.
 */
function holdsOneThing({ path: folder, files, folders }: Folder): boolean {
  if (files.length + folders.length !== 1) return false;
  const isAddress = folder.startsWith('app/') && !folder.includes('/_');
  return files.length === 1 ? !(isAddress && byName.test(files[0]!)) : !isAddress;
}

test('no folder holds a single file', () => {
  const single = ['app', 'lib', 'shared'].flatMap(foldersUnder).filter(holdsOneThing);
  expect(single.map((folder) => folder.path)).toEqual([]);
});

test('an address may hold its page alone, and nothing else may stand alone', () => {
  const one = (folder: string, file: string) => holdsOneThing({ path: folder, files: [file], folders: [] });
  expect(one('app/courses/new', 'page.tsx')).toBe(false);
  expect(one('app/baseline', 'page.bench.tsx')).toBe(false);
  expect(one('app/_home', 'proof-sheet.tsx')).toBe(true);
  expect(one('app/courses/new', 'words.ts')).toBe(true);
  expect(one('lib/mail', 'send.ts')).toBe(true);
  expect(holdsOneThing({ path: 'app/reset', files: [], folders: ['[token]'] })).toBe(false);
  expect(holdsOneThing({ path: 'shared/text', files: [], folders: ['dates'] })).toBe(true);
});

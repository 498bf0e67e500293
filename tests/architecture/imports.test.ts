import { describe, expect, test } from 'vitest';
import { readSources, reachable, type SourceFile } from './source-tree';

const sources = readSources();
const files = [...sources.values()];
const room = (file: string) => (file.includes('/') ? file.split('/')[0]! : 'app');
const under =
  (...folders: string[]) =>
  (file: string) =>
    folders.some((folder) => file.startsWith(`${folder}/`));
const isAction = (file: string) => /(^|\/)actions\.tsx?$/.test(file);

/** `from -> to` for every import that a rule refuses, so that a failure says where to look. */
function refused(from: (file: SourceFile) => boolean, to: (target: string, from: string) => boolean): string[] {
  return files
    .filter(from)
    .flatMap((file) =>
      file.inside.filter((target) => to(target, file.path)).map((target) => `${file.path} -> ${target}`),
    );
}

describe('which room may use which', () => {
  const allowed: Record<string, string[]> = {
    app: ['app', 'lib', 'shared'],
    lib: ['lib', 'prisma', 'shared'],
    // The seed of the demo course works through the operations, like everyone else.
    prisma: ['prisma', 'lib', 'shared'],
    shared: ['shared'],
  };

  test.each(Object.keys(allowed))('%s', (name) => {
    const inDevelopment = (file: SourceFile) => file.path.startsWith('app/parts/');
    expect(
      refused(
        (file) => room(file.path) === name && !inDevelopment(file),
        (target) => !allowed[name]!.includes(room(target)),
      ),
    ).toEqual([]);
  });

  test('shared uses no package but zod/mini', () => {
    const used = files
      .filter((file) => room(file.path) === 'shared')
      .flatMap((file) => file.packages.filter((name) => name !== 'zod/mini').map((name) => `${file.path} -> ${name}`));
    expect(used).toEqual([]);
  });

  test('only what works on behalf of an actor, and the commands, touch lib/data', () => {
    const mayUse = (file: string) => under('lib', 'prisma')(file) && !under('lib/http', 'lib/face')(file);
    expect(
      refused(
        (file) => !mayUse(file.path),
        (target) => under('lib/data', 'prisma')(target),
      ),
    ).toEqual([]);
  });
});

describe('what reaches the browser', () => {
  const client = files.filter((file) => file.directive === 'use client');

  test('client files import shared, _ui, _line, _bench, actions, and client files and styles of their own folder', () => {
    const folder = (file: string) => file.slice(0, file.lastIndexOf('/'));
    const may = (target: string, from: string) =>
      under('shared', 'app/_ui', 'app/_line', 'app/_bench')(target) ||
      isAction(target) ||
      /\.css$/.test(target) ||
      (folder(target).startsWith(folder(from)) &&
        under('app')(target) &&
        sources.get(target)?.directive === 'use client');
    expect(
      refused(
        (file) => client.includes(file),
        (target, from) => !may(target, from),
      ),
    ).toEqual([]);
  });

  test('nothing of lib, prisma or Node lies behind them', () => {
    const wrong = client.flatMap((file) =>
      [...reachable(file.path, sources, (next) => isAction(next.path))]
        .filter((target) => !isAction(target))
        .filter(
          (target) =>
            under('lib', 'prisma')(target) ||
            sources.get(target)?.packages.some((name) => name.startsWith('node:') || name === 'zod'),
        )
        .map((target) => `${file.path} … ${target}`),
    );
    expect(wrong).toEqual([]);
  });
});

describe('what commands use', () => {
  test('lib/face, lib/data, lib/bin and the seed reach no server-only and nothing of Next', () => {
    const starts = files.filter((file) => under('lib/face', 'lib/data', 'lib/bin', 'prisma')(file.path));
    const wrong = starts.flatMap((file) =>
      [...reachable(file.path, sources)]
        .filter((target) =>
          sources.get(target)?.packages.some((name) => name === 'server-only' || /^next(\/|$)/.test(name)),
        )
        .map((target) => `${file.path} … ${target}`),
    );
    expect(wrong).toEqual([]);
  });
});

import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { holdAsOnlyServer } from '@/lib/ops/one-server';

const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-one-server-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const url = `file:${path.join(folder, 'kerncrit.db')}`;

/** Tries it as another process would. */
const elsewhere = () =>
  spawnSync(
    process.execPath,
    [
      '--import',
      'tsx',
      '-e',
      `import('@/lib/ops/one-server').then(({ holdAsOnlyServer }) => holdAsOnlyServer('${url}'))`,
    ],
    { encoding: 'utf8' },
  );

it('refuses a second server on one SQLite file, in words, until the first has gone', () => {
  const release = holdAsOnlyServer(url);
  expect(() => holdAsOnlyServer(url)).toThrow('Another server is using the database kerncrit.db already');
  expect(elsewhere()).toMatchObject({ status: 1, stderr: expect.stringContaining('Another server is using') });
  release();
  expect(elsewhere()).toMatchObject({ status: 0 });
  // That process ended without letting go: the system did it.
  holdAsOnlyServer(url)();
}, 60_000);

it('goes on holding it when nobody kept what came back', () => {
  const held = spawnSync(
    process.execPath,
    [
      '--expose-gc',
      '--import',
      'tsx',
      '-e',
      `import('@/lib/ops/one-server').then(async ({ holdAsOnlyServer }) => {
        holdAsOnlyServer('${url}');
        for (let times = 0; times < 5; times += 1) { await new Promise((done) => setTimeout(done, 20)); gc(); }
        holdAsOnlyServer('${url}');
      })`,
    ],
    { encoding: 'utf8' },
  );
  expect(held).toMatchObject({ status: 1, stderr: expect.stringContaining('Another server is using') });
}, 60_000);

it('holds nothing on PostgreSQL', () => {
  for (let times = 0; times < 2; times += 1) holdAsOnlyServer('postgresql://somebody@127.0.0.1:1/none');
});

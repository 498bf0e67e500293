import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';

const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };
const commands = Object.values(scripts).flatMap((script) => /tsx (lib\/bin\/[\w-]+\.ts)/.exec(script)?.[1] ?? []);

/** A folder that looks like the project's, with settings of its own. */
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-commands-'));
  for (const name of ['lib', 'shared', 'prisma', 'node_modules', 'package.json', 'tsconfig.json'])
    symlinkSync(path.resolve(name), path.join(folder, name));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const run = (command: string, words: string[], more: Record<string, string> = {}) => {
  const { DATABASE_URL: _, ...environment } = process.env;
  return spawnSync(process.execPath, ['--import', 'tsx', command, ...words], {
    cwd: folder,
    encoding: 'utf8',
    env: { ...environment, NODE_ENV: 'production', ...more },
  });
};

it('each tell what they are for when asked with --help, and do nothing', () => {
  expect(commands.length).toBeGreaterThan(9);
  for (const command of commands) {
    const { status, stdout } = run(command, ['--help']);
    expect({ command, status }).toEqual({ command, status: 0 });
    expect(stdout, command).toMatch(/npm run/);
  }
  expect(existsSync(path.join(folder, 'data'))).toBe(false);
}, 300_000);

it('read the file .env: a backup takes the database that it names, and only its owner can read either', () => {
  writeFileSync(path.join(folder, '.env'), 'DATABASE_URL="file:./school/type.db"\nDEMO=no\n');
  expect(run('lib/bin/migrate.ts', [])).toMatchObject({ status: 0 });
  expect(existsSync(path.join(folder, 'school/type.db'))).toBe(true);
  expect(run('lib/bin/backup.ts', ['copy'])).toMatchObject({ status: 0, stderr: '' });
  expect(existsSync(path.join(folder, 'data'))).toBe(false);
  for (const file of ['school/type.db', 'copy.db'])
    expect((statSync(path.join(folder, file)).mode & 0o077).toString(8), file).toBe('0');
}, 120_000);

it('let the environment go before the file', () => {
  writeFileSync(path.join(folder, '.env'), 'DATABASE_URL=file:./one.db\n');
  expect(run('lib/bin/migrate.ts', [], { DATABASE_URL: 'file:./other.db' })).toMatchObject({ status: 0 });
  expect([existsSync(path.join(folder, 'one.db')), existsSync(path.join(folder, 'other.db'))]).toEqual([false, true]);
}, 120_000);

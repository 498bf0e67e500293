import { execFile } from 'node:child_process';
import { existsSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { promisify } from 'node:util';
import Database from 'better-sqlite3';
import { environmentWith, programFolders } from '@/lib/env';
import { providerOf } from '../open';
import { postgresqlFields } from '../postgresql';
import { sqliteFile } from '../sqlite';

/**
 * Writes a whole and consistent copy of the database to a file while it is being used, and checks it.
 * SQLite: its online backup; PostgreSQL: pg_dump in the custom format. The ending `.db` or `.dump` is added when
 * missing.
 *
 * @returns the file
 * @throws Error when the file exists, the database does not, or the copy is not sound; then no file is left.
 */
export async function backUp(url: string, to: string): Promise<string> {
  const provider = providerOf(url);
  const file = withEnding(to, provider === 'sqlite' ? '.db' : '.dump');
  if (existsSync(file))
    throw new Error(`${file} exists already. A backup never writes over a file: choose another name.`);
  const part = `${file}.part`;
  try {
    // Made before anything is in it: people's work and marks are for the owner of the file alone.
    writeFileSync(part, '', { mode: 0o600 });
    await (provider === 'sqlite' ? copySqlite(url, part) : dumpPostgresql(url, part));
    renameSync(part, file);
    return file;
  } finally {
    for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${part}${end}`, { force: true });
  }
}

const withEnding = (file: string, ending: string) => (file.endsWith(ending) ? file : `${file}${ending}`);

async function copySqlite(url: string, to: string) {
  const from = sqliteFile(url);
  if (from === null || !existsSync(from)) throw new Error(`There is no database to back up at ${url}.`);
  const source = new Database(from, { readonly: true, timeout: 10_000 });
  try {
    // All pages in one step: a copy in several steps starts over whenever another connection writes in between.
    await source.backup(to, { progress: () => 2 ** 31 - 1 });
  } finally {
    source.close();
  }
  const copy = new Database(to);
  // One file instead of three, so that it can be carried about.
  copy.pragma('journal_mode = DELETE');
  copy.close();
  checkSqlite(to);
}

/** @throws Error when the file is not a sound SQLite database. */
export function checkSqlite(file: string) {
  let answer: unknown;
  try {
    const copy = new Database(file, { readonly: true, fileMustExist: true });
    answer = copy.pragma('integrity_check', { simple: true });
    copy.close();
  } catch (error) {
    answer = error instanceof Error ? error.message : String(error);
  }
  if (answer !== 'ok') throw new Error(`${file} is not a sound database: ${String(answer)}`);
}

async function dumpPostgresql(url: string, to: string) {
  await runPostgresqlProgram('pg_dump', url, ['--format=custom', '--no-owner', '--no-privileges', `--file=${to}`]);
}

/**
 * Runs one of PostgreSQL's own programs on the database of the url. The password is passed in the environment, where
 * other users of the machine cannot read it.
 * @throws Error with the program's output.
 */
export async function runPostgresqlProgram(name: string, url: string, options: string[]): Promise<void> {
  const { host, port, user, password, database } = postgresqlFields(url);
  const connection = [
    `--host=${host}`,
    `--port=${port}`,
    `--dbname=${database}`,
    ...(user ? [`--username=${user}`] : []),
    '--no-password',
  ];
  const sslmode = new URL(url).searchParams.get('sslmode');
  const env = environmentWith({
    ...(typeof password === 'string' ? { PGPASSWORD: password } : {}),
    ...(sslmode ? { PGSSLMODE: sslmode } : {}),
  });
  try {
    await promisify(execFile)(findProgram(name), [...connection, ...options], { env });
  } catch (error) {
    const answer = error instanceof Error && 'stderr' in error && error.stderr ? String(error.stderr) : String(error);
    throw new Error(`${name} failed: ${answer.trim()}`);
  }
}

/**
 * Debian keeps PostgreSQL's programs out of the path, in a folder a version; the latest reads all earlier ones.
 * @throws Error that says what to install.
 */
export function findProgram(name: string): string {
  const found = [...debianFolders(), ...programFolders()]
    .map((folder) => path.join(folder, name))
    .find((file) => existsSync(file));
  if (!found)
    throw new Error(`PostgreSQL's program ${name} is not installed here (on Debian: apt-get install postgresql).`);
  return found;
}

function debianFolders(): string[] {
  const versions = '/usr/lib/postgresql';
  if (!existsSync(versions)) return [];
  return readdirSync(versions)
    .sort((one, other) => Number(other) - Number(one))
    .map((version) => path.join(versions, version, 'bin'));
}

import { spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { openDatabase, providerOf } from '../open';
import { sqliteFile } from '../sqlite';
import { checkSqlite, findProgram, runPostgresqlProgram } from './back-up';

type Options = {
  /** Replace a database that has content. The old one is set aside; its place is returned. */
  replace?: boolean;
  now?: Date;
};

/**
 * Restores a backup. The file is checked before anything is changed. Stop the server first.
 * @returns where the previous database was set aside, or null when there was none
 * @throws Error when the file is missing or unsound, when there is a database and `replace` is not given, or when the
 * database is in use. One that is damaged can be replaced, too: its files are set aside as they are.
 */
export async function restore(
  url: string,
  from: string,
  { replace = false, now = new Date() }: Options = {},
): Promise<string | null> {
  if (!existsSync(from)) throw new Error(`There is no file ${from}.`);
  const stamp = now.toISOString().slice(0, 19).replaceAll(':', '-');
  return providerOf(url) === 'sqlite'
    ? restoreSqlite(url, from, replace, stamp)
    : restorePostgresql(url, from, replace, stamp);
}

function restoreSqlite(url: string, from: string, replace: boolean, stamp: string): string | null {
  checkSqlite(from);
  const file = sqliteFile(url);
  if (file === null) throw new Error('A database in memory cannot be restored.');
  const there = existsSync(file);
  if (there && !replace) throw new Error(inTheWay(file));
  mkdirSync(path.dirname(file), { recursive: true });
  const part = `${file}.restoring`;
  copyFileSync(from, part);
  checkSqlite(part);
  const setAside = `${file}.before-restore-${stamp}`;
  if (there) {
    // What a damaged database had not yet written into its one file may be all that can be saved of it; SQLite throws
    // it away when it opens the file.
    for (const end of sidecars) if (existsSync(`${file}${end}`)) copyFileSync(`${file}${end}`, `${setAside}${end}`);
    let damaged = false;
    try {
      damaged = !emptyJournal(file);
    } finally {
      for (const end of damaged ? [] : sidecars) rmSync(`${setAside}${end}`, { force: true });
    }
    renameSync(file, setAside);
  }
  for (const end of sidecars) rmSync(`${file}${end}`, { force: true });
  renameSync(part, file);
  return there ? setAside : null;
}

const sidecars = ['-wal', '-shm', '-journal'];

/**
 * Checkpoints all writes into the one file. @returns false where the file is damaged, so that this can't be done.
 * @throws Error when another process has it open.
 */
function emptyJournal(file: string): boolean {
  const old = new Database(file, { timeout: 0 });
  try {
    old.pragma('locking_mode = EXCLUSIVE');
    old.pragma('journal_mode = DELETE');
    old.exec('BEGIN EXCLUSIVE; COMMIT');
    return true;
  } catch (error) {
    if (!damage.test(codeOf(error))) throw new Error(inUse(file));
    return false;
  } finally {
    old.close();
  }
}

/** SQLite's codes for a file that is no database, or one with broken pages (sqlite.org/rescode.html). */
const damage = /^SQLITE_(NOTADB|CORRUPT)/;
const codeOf = (error: unknown): string => String((error as { code?: unknown } | null)?.code);
const inUse = (what: string) => `${what} is being used. Stop the server, then restore.`;

async function restorePostgresql(url: string, from: string, replace: boolean, stamp: string): Promise<string | null> {
  const listed = spawnSync(findProgram('pg_restore'), ['--list', from], { encoding: 'utf8' });
  if (listed.status !== 0) throw new Error(`${from} is not a backup that pg_restore can read: ${listed.stderr.trim()}`);
  const schema = `before_restore_${stamp.replace(/\D/g, '_')}`;
  const there = await holdsTables(url);
  if (there && !replace) throw new Error(inTheWay('The database'));
  if (there && (await isBeingUsed(url))) throw new Error(inUse('The database'));
  if (there) await execute(url, `ALTER SCHEMA public RENAME TO "${schema}"; CREATE SCHEMA public;`);
  try {
    await runPostgresqlProgram('pg_restore', url, [
      '--no-owner',
      '--no-privileges',
      '--exit-on-error',
      '--single-transaction',
      '--schema=public',
      from,
    ]);
  } catch (error) {
    if (there) await execute(url, `DROP SCHEMA public CASCADE; ALTER SCHEMA "${schema}" RENAME TO public;`);
    throw error;
  }
  return there ? `schema ${schema}` : null;
}

const inTheWay = (what: string) =>
  `${what} holds data already. With --replace the backup takes its place, and what is there now is kept beside it.`;

async function holdsTables(url: string): Promise<boolean> {
  const db = openDatabase(url);
  try {
    const tables = await db.$queryRawUnsafe<unknown[]>(
      `SELECT table_name FROM information_schema.tables WHERE table_schema = 'public'`,
    );
    return tables.length > 0;
  } finally {
    await db.$disconnect();
  }
}

const attempts = 20;

/**
 * Whether a server is connected to the database. A connection that was closed a moment ago may still be listed, so
 * it is asked for up to two seconds.
 */
async function isBeingUsed(url: string): Promise<boolean> {
  const db = openDatabase(url);
  try {
    for (let attempt = 1; ; attempt += 1) {
      const others = await db.$queryRawUnsafe<unknown[]>(
        `SELECT pid FROM pg_stat_activity WHERE datname = current_database() AND application_name = 'kerncrit' AND pid <> pg_backend_pid()`,
      );
      if (others.length === 0 || attempt === attempts) return others.length > 0;
      await wait(100);
    }
  } finally {
    await db.$disconnect();
  }
}

async function execute(url: string, script: string) {
  const db = openDatabase(url);
  try {
    await db.$transaction(
      script
        .split(';')
        .filter((part) => part.trim() !== '')
        .map((part) => db.$executeRawUnsafe(part)),
    );
  } finally {
    await db.$disconnect();
  }
}

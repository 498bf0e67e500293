import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import pg from 'pg';
import { providerOf } from '../open';
import { postgresqlFields } from '../postgresql';
import { makeFolder, sqliteFile } from '../sqlite';

/**
 * Lets one process at a time migrate a database; the others wait. The schema engine has locks of its own, but on SQLite
 * two that start together wait for each other until both give up, and on PostgreSQL it waits for ten seconds only.
 * These locks end with the process, however it ends.
 */
export async function withMigrationLock<T>(url: string, work: () => Promise<T>): Promise<T> {
  return providerOf(url) === 'sqlite' ? withFileLock(url, work) : withAdvisoryLock(url, work);
}

/** Any number not used by another lock on that database. */
const advisoryKey = 51_877_020;

async function withAdvisoryLock<T>(url: string, work: () => Promise<T>): Promise<T> {
  const client = new pg.Client(postgresqlFields(url));
  await client.connect();
  try {
    await client.query('SELECT pg_advisory_lock($1)', [advisoryKey]);
    return await work();
  } finally {
    await client.end();
  }
}

/** The lock is a file beside the database, `…-migrating`. */
async function withFileLock<T>(url: string, work: () => Promise<T>): Promise<T> {
  const file = sqliteFile(url);
  if (file === null) return work();
  makeFolder(url);
  const lock = new Database(`${file}-migrating`, { timeout: 0 });
  try {
    await takeLock(lock, file);
    return await work();
  } finally {
    lock.close();
  }
}

async function takeLock(lock: Database.Database, file: string) {
  for (let tries = 0; tries < 1200; tries += 1) {
    if (isTaken(lock)) return;
    await wait(100);
  }
  throw new Error(
    `Another process has been migrating ${file} for two minutes. Wait for it, or end it, and start again.`,
  );
}

function isTaken(lock: Database.Database): boolean {
  try {
    lock.exec('BEGIN EXCLUSIVE');
    return true;
  } catch (error) {
    if (error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY')) return false;
    throw error;
  }
}

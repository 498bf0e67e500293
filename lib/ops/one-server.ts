import path from 'node:path';
import Database from 'better-sqlite3';
import { makeFolder, sqliteFile } from '@/lib/data/sqlite';

/** Referenced here: a connection without a reference is closed, and its lock released. */
const held = new Set<Database.Database>();

/**
 * Makes sure that only one server works on a SQLite file: two would each have their own counts, rooms and caches. A
 * system lock on a file beside it is held until the returned function is called or the process ends, however it ends.
 * Commands may run beside a server. On other databases, and in memory, there is no lock.
 * @throws Error in words when another server holds it
 */
export function holdAsOnlyServer(url: string): () => void {
  const file = url.startsWith('file:') ? sqliteFile(url) : null;
  if (file === null) return () => undefined;
  makeFolder(url);
  const lock = new Database(`${file}.server`, { timeout: 0 });
  held.add(lock);
  try {
    lock.pragma('locking_mode = EXCLUSIVE');
    lock.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    held.delete(lock);
    lock.close();
    if ((error as { code?: string }).code !== 'SQLITE_BUSY') throw error;
    throw new Error(
      `Another server is using the database ${path.basename(file)} already. Stop it first, or give this one another DATABASE_URL; several servers together need PostgreSQL.`,
    );
  }
  return () => {
    held.delete(lock);
    lock.close();
  };
}

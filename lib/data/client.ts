import { env } from '@/lib/env';
import { openDatabase, type Database } from './open';

export type { Database, Db, Transaction } from './open';

/** On globalThis, so that a code reload in development does not open the database again. */
const globals = globalThis as typeof globalThis & { kerncritDatabase?: Database };

/** The database of this installation (DATABASE_URL), opened once per process. */
export function database(): Database {
  globals.kerncritDatabase ??= openDatabase(env().databaseUrl);
  return globals.kerncritDatabase;
}

/** Makes `database()` give this one: for tests, and for commands that work on a database of their own. */
export function exchangeDatabase(other: Database | undefined) {
  globals.kerncritDatabase = other;
}

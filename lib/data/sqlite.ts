import { chmodSync, existsSync, mkdirSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import {
  DriverAdapterError,
  type SqlDriverAdapter,
  type SqlDriverAdapterFactory,
  type SqlQuery,
  type Transaction,
} from '@prisma/driver-adapter-utils';
import { letOthersIn } from '@/lib/let-others-in';
import { Mutex } from './mutex';

type ExecuteBatch = (queries: readonly SqlQuery[]) => Promise<number[]>;

/**
 * The adapter, with one addition to Prisma's ways of using its connection: statements that succeed or fail together, in
 * one turn.
 */
export type SqliteAdapterFactory = SqlDriverAdapterFactory & {
  /**
   * @returns how many rows each statement changed.
   * @throws DriverAdapterError of the statement that failed; then none of them has changed anything.
   */
  executeBatch: ExecuteBatch;
};

/**
 * SQLite for Prisma: one connection in WAL mode, foreign keys on, every commit flushed to disk.
 *
 * The stock adapter locks transactions against each other, but lets a query from outside run on the connection while a
 * transaction is open: it would be rolled back with it although it was acknowledged. Here everything takes its turn.
 * Transactions begin IMMEDIATE, so that they wait for another writing connection instead of failing in the middle. And
 * the waiting happens here and not in SQLite, which would block the whole process meanwhile.
 */
export function sqliteAdapter(url: string): SqliteAdapterFactory {
  const stock = new PrismaBetterSqlite3({ url });
  let execute: ExecuteBatch = () => Promise.reject(new Error('This SQLite database is not connected.'));
  return {
    executeBatch: (queries) => execute(queries),
    provider: 'sqlite',
    adapterName: stock.adapterName,
    async connect() {
      makeFolder(url);
      const connection = await stock.connect();
      await patiently(() => connection.executeScript(pragmas));
      closeToOthers(url);
      await connection.executeScript('PRAGMA busy_timeout = 0');
      const turn = new Mutex();
      execute = (queries) => turn.run(() => executeBatch(connection, queries));
      return inTurns(connection, turn);
    },
  };
}

const pragmas = `
  PRAGMA journal_mode = WAL;
  PRAGMA synchronous = FULL;
  PRAGMA foreign_keys = ON;
`;

/**
 * How many values one statement may have. SQLite takes 32,766 since 3.32 (sqlite.org/limits.html,
 * SQLITE_MAX_VARIABLE_NUMBER); by default Prisma assumes 999 and refuses the lines of a hundred proofs.
 */
const maxBindValues = 32_766;

/** The file behind a `file:` url, or null for one in memory. */
export function sqliteFile(url: string): string | null {
  const file = url.replace(/^file:/, '');
  return file.startsWith(':memory:') ? null : path.resolve(file);
}

/** Makes the folder that the file will lie in. */
export function makeFolder(url: string) {
  const file = sqliteFile(url);
  if (file) mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
}

/** Makes the file, and those that SQLite puts beside it, readable by its owner alone, also one from before. */
function closeToOthers(url: string) {
  const file = sqliteFile(url);
  if (!file) return;
  for (const end of ['', '-wal', '-shm']) if (existsSync(`${file}${end}`)) chmodSync(`${file}${end}`, 0o600);
}

function inTurns(connection: SqlDriverAdapter, turn: Mutex): SqlDriverAdapter {
  return {
    provider: connection.provider,
    adapterName: connection.adapterName,
    queryRaw: async (query) => {
      const found = await turn.run(async () => {
        // Within the turn: of queries asked together, the next one would begin at once.
        await letOthersIn();
        return patiently(() => connection.queryRaw(query));
      });
      await letOthersIn();
      return found;
    },
    executeRaw: (query) => turn.run(() => patiently(() => connection.executeRaw(query))),
    executeScript: (script) => turn.run(() => patiently(() => connection.executeScript(script))),
    startTransaction: () => startTransaction(connection, turn),
    getConnectionInfo: () => ({ maxBindValues, supportsRelationJoins: false }),
    dispose: () => turn.run(() => connection.dispose()),
  };
}

async function executeBatch(connection: SqlDriverAdapter, queries: readonly SqlQuery[]): Promise<number[]> {
  await begin(connection);
  try {
    const counts: number[] = [];
    for (const query of queries) counts.push(await connection.executeRaw(query));
    await connection.executeScript('COMMIT');
    return counts;
  } catch (error) {
    await connection.executeScript('ROLLBACK').catch(() => undefined);
    throw error;
  }
}

/** Takes the file's lock for writing at once, so that nothing after it can meet another writer. */
const begin = (connection: SqlDriverAdapter) => patiently(() => connection.executeScript('BEGIN IMMEDIATE'));

async function startTransaction(connection: SqlDriverAdapter, turn: Mutex): Promise<Transaction> {
  const release = await turn.take();
  try {
    await begin(connection);
  } catch (error) {
    release();
    throw error;
  }
  const savepoint = (words: string) => connection.executeScript(words);
  return {
    provider: connection.provider,
    adapterName: connection.adapterName,
    options: { usePhantomQuery: false },
    queryRaw: (query) => connection.queryRaw(query),
    executeRaw: (query) => (isCommit(query) ? commit(connection, query, release) : connection.executeRaw(query)),
    commit: async () => release(),
    rollback: async () => release(),
    createSavepoint: (name) => savepoint(`SAVEPOINT ${name}`),
    rollbackToSavepoint: (name) => savepoint(`ROLLBACK TO ${name}`),
    releaseSavepoint: (name) => savepoint(`RELEASE SAVEPOINT ${name}`),
  };
}

/** A statement that found the file locked has done nothing, so it is tried again, for ten seconds at most. */
async function patiently<T>(work: () => Promise<T>): Promise<T> {
  const end = Date.now() + 10_000;
  for (let pause = 2; ; pause = Math.min(pause * 2, 50)) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error) || Date.now() > end) throw error;
      await wait(pause);
    }
  }
}

/** The stock adapter calls it a timeout of the socket. */
function isBusy(error: unknown): boolean {
  return error instanceof DriverAdapterError && error.cause.kind === 'SocketTimeout';
}

const isCommit = (query: SqlQuery) => query.sql.trim().toUpperCase() === 'COMMIT';

/** A commit that fails leaves the transaction open: without this the connection would be stuck in it for good. */
async function commit(connection: SqlDriverAdapter, query: SqlQuery, release: () => void): Promise<number> {
  try {
    return await connection.executeRaw(query);
  } catch (error) {
    await connection.executeScript('ROLLBACK').catch(() => undefined);
    release();
    throw error;
  }
}

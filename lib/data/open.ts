import { PrismaClient as PostgresqlClient } from '@/prisma/generated/postgresql/client/client';
import { PrismaClient as SqliteClient } from '@/prisma/generated/sqlite/client/client';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import { postgresqlAdapter } from './postgresql';
import { sqliteAdapter, type SqliteAdapterFactory } from './sqlite';

/** Both databases go by the SQLite client's type: it is the narrower of the two. */
export type Database = SqliteClient;
/** The same queries inside a transaction. */
export type Transaction = Prisma.TransactionClient;
/** What a function gets that may run inside a transaction or outside of one. */
export type Db = Database | Transaction;
export type Provider = 'sqlite' | 'postgresql';

export function providerOf(url: string): Provider {
  if (url.startsWith('file:')) return 'sqlite';
  if (/^postgres(ql)?:\/\//.test(url)) return 'postgresql';
  throw new Error('DATABASE_URL must begin with file: (SQLite) or postgresql:// (PostgreSQL).');
}

/** Opens the database that the url names; it connects at the first query, and `$disconnect` closes it. */
export function openDatabase(url: string): Database {
  const transactionOptions = { maxWait: 10_000, timeout: 20_000 };
  if (providerOf(url) === 'sqlite') {
    const adapter = sqliteAdapter(url);
    const db = new SqliteClient({ adapter, transactionOptions });
    adapters.set(db, adapter);
    return db;
  }
  return new PostgresqlClient({ adapter: postgresqlAdapter(url), transactionOptions }) as unknown as SqliteClient;
}

const adapters = new WeakMap<object, SqliteAdapterFactory>();

/** The SQLite adapter behind a database opened here; undefined for PostgreSQL. */
export const sqliteAdapterOf = (db: Database): SqliteAdapterFactory | undefined => adapters.get(db);

import type { ArgType, SqlQuery } from '@prisma/driver-adapter-utils';
import type { Prisma } from '@/prisma/generated/sqlite/client/client';
import { sqliteAdapterOf, type Db, type Transaction } from './open';

/**
 * Runs plain statements atomically without returning rows: for the busiest writes. On SQLite they go to the connection
 * in one turn, past Prisma's transactions, which cost more than the statements and block every other query meanwhile;
 * on PostgreSQL, where they block nothing, they are Prisma's transaction. Inside a transaction they are part of that
 * one.
 *
 * @returns how many rows each statement changed.
 * @throws what `retryOnConflict` and `isTaken` understand, where a key is taken or another writer was quicker; then no
 * statement has changed anything.
 */
export async function executeBatch(db: Db, statements: readonly Prisma.Sql[]): Promise<number[]> {
  if (!('$connect' in db)) return oneByOne(db, statements);
  const adapter = sqliteAdapterOf(db);
  if (!adapter) return db.$transaction(statements.map((statement) => db.$executeRaw(statement)));
  await db.$connect();
  return adapter.executeBatch(statements.map(queryOf));
}

async function oneByOne(inside: Transaction, statements: readonly Prisma.Sql[]): Promise<number[]> {
  const counts: number[] = [];
  for (const statement of statements) counts.push(await inside.$executeRaw(statement));
  return counts;
}

const queryOf = ({ sql, values }: Prisma.Sql): SqlQuery => ({ sql, args: [...values], argTypes: values.map(typeOf) });

/** Only dates are stored in another form than given, and the adapter needs their type. */
const typeOf = (value: unknown): ArgType => ({
  scalarType: value instanceof Date ? 'datetime' : 'unknown',
  arity: 'scalar',
});

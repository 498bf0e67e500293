import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import { PrismaPg } from '@prisma/adapter-pg';
import type { SqlDriverAdapter, SqlMigrationAwareDriverAdapterFactory } from '@prisma/driver-adapter-utils';
import pg from 'pg';
import { providerOf } from '../open';
import { postgresqlFields } from '../postgresql';
import { makeFolder } from '../sqlite';

/** How the schema engine reaches the database. It wants the stock adapters, with three corrections on PostgreSQL. */
export function migrationAdapter(url: string): SqlMigrationAwareDriverAdapterFactory {
  if (providerOf(url) === 'postgresql') return postgresqlForMigrations(url);
  makeFolder(url);
  // The engine locks the file while it works; others that start at the same time wait for a minute.
  return new PrismaBetterSqlite3({ url, timeout: 60_000 });
}

function postgresqlForMigrations(url: string): SqlMigrationAwareDriverAdapterFactory {
  // Its advisory lock belongs to a connection, so there must be one only.
  const stock = new PrismaPg({ ...postgresqlFields(url), max: 1, Client: ClientReadingChar } as pg.PoolConfig);
  return {
    provider: 'postgres',
    adapterName: stock.adapterName,
    connect: async () => withWholeScripts(await stock.connect()),
    connectToShadowDb: () => Promise.reject(new Error('Migrations are compared with a scratch database, never a shadow database.')),
  };
}

/** The stock adapter cuts scripts at every `;`, even inside text. PostgreSQL takes a script as one simple query. */
function withWholeScripts(adapter: SqlDriverAdapter & { underlyingDriver(): { query(sql: string): Promise<unknown> } }): SqlDriverAdapter {
  adapter.executeScript = async (script) => { await adapter.underlyingDriver().query(script); };
  return adapter;
}

const charType = 18;
const textType = 25;

/**
 * The stock adapter refuses columns of the internal type "char" (OID 18), which the catalogues are full of. Its pool asks
 * the client with a callback as the last argument.
 */
class ClientReadingChar extends pg.Client {
  override query(...args: unknown[]): never {
    const answer = args.at(-1);
    if (typeof answer === 'function') {
      args[args.length - 1] = (error: unknown, result?: pg.QueryResult) => answer(error, charAsText(result));
    }
    return (super.query as (...all: unknown[]) => unknown)(...args) as never;
  }
}

function charAsText(result?: pg.QueryResult) {
  for (const field of result?.fields ?? []) if (field.dataTypeID === charType) field.dataTypeID = textType;
  return result;
}

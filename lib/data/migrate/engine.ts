import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import { PrismaPg } from '@prisma/adapter-pg';
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlDriverAdapter,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils';
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg';
import pg from 'pg';
import { providerOf } from '../open';
import { postgresqlFields } from '../postgresql';
import { makeFolder } from '../sqlite';
import { Mutex } from '../mutex';

/**
 * Prisma's own schema engine, in the WebAssembly build that comes inside an npm package: the usual one is downloaded at
 * run time. One per process, used by one caller at a time.
 */
export async function withSchemaEngine<T>(
  schema: string,
  factory: SqlMigrationAwareDriverAdapterFactory,
  work: (engine: bindings.SchemaEngine) => Promise<T>,
): Promise<T> {
  load();
  return turn.run(async () => {
    const connections: SqlDriverAdapter[] = [];
    const adapter = bindMigrationAwareSqlAdapterFactory(remembering(factory, connections));
    try {
      const engine = await saying(() =>
        bindings.SchemaEngine.new({ datamodels: [['schema.prisma', schema]] }, () => {}, adapter),
      );
      return await saying(() => work(engine));
    } finally {
      await Promise.allSettled(connections.map((connection) => connection.dispose()));
    }
  });
}

/** The engine never closes its connections, and with them goes its lock. */
function remembering(
  factory: SqlMigrationAwareDriverAdapterFactory,
  connections: SqlDriverAdapter[],
): SqlMigrationAwareDriverAdapterFactory {
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    connectToShadowDb: () => factory.connectToShadowDb(),
    async connect() {
      const connection = await factory.connect();
      connections.push(connection);
      return connection;
    },
  };
}

const turn = new Mutex();
let loaded = false;
let lastPanic = '';

function load() {
  if (loaded) return;
  Object.assign(globalThis, {
    PRISMA_WASM_PANIC_REGISTRY: {
      set_message: (message: string) => {
        lastPanic = message;
      },
    },
  });
  const file = createRequire(import.meta.url)
    .resolve('@prisma/schema-engine-wasm/schema_engine_bg')
    .replace(/\.js$/, '.wasm');
  const made = new WebAssembly.Instance(new WebAssembly.Module(readFileSync(file)), {
    './schema_engine_bg.js': bindings as never,
  });
  const raw = bindings as typeof bindings & { __wbg_set_wasm(exports: WebAssembly.Exports): void };
  raw.__wbg_set_wasm(made.exports);
  (made.exports.__wbindgen_start as () => void)();
  loaded = true;
}

/** The engine throws plain objects, and traps on a panic: both become an Error with its message. */
async function saying<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof WebAssembly.RuntimeError)
      throw new Error(`The schema engine gave up: ${lastPanic || error.message}`, { cause: error });
    if (error instanceof Error) throw new Error(messageOf(error), { cause: error });
    throw new Error(messageOf(error));
  }
}

function messageOf(error: unknown): string {
  const text =
    typeof error === 'object' && error !== null && 'message' in error ? String(error.message) : JSON.stringify(error);
  // The engine does not know the stock adapter's word for "the file stayed locked".
  if (text.includes('unknown variant `SocketTimeout`'))
    return 'Another process has the database open. Stop the server, then try again.';
  return text.trim();
}

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
    connectToShadowDb: () =>
      Promise.reject(new Error('Migrations are compared with a scratch database, never a shadow database.')),
  };
}

/** The stock adapter cuts scripts at every `;`, even inside text. PostgreSQL takes a script as one simple query. */
function withWholeScripts(
  adapter: SqlDriverAdapter & { underlyingDriver(): { query(sql: string): Promise<unknown> } },
): SqlDriverAdapter {
  adapter.executeScript = async (script) => {
    await adapter.underlyingDriver().query(script);
  };
  return adapter;
}

const charType = 18;
const textType = 25;

/**
 * The stock adapter refuses columns of the internal type "char" (OID 18), which the catalogues are full of. Its pool
 * asks the client with a callback as the last argument.
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

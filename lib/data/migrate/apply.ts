import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { SchemaEngine } from '@prisma/schema-engine-wasm/schema_engine_bg';
import { type Database, openDatabase, type Provider, providerOf } from '../open';
import { migrationAdapter, withSchemaEngine } from './engine';
import { withMigrationLock } from './lock';

type Options = {
  /** Of the migrations; the installation's own by default. */
  folder?: string;
  /** Called once before anything is changed in a database that already holds something. */
  beforeChange?: () => Promise<void>;
};

/**
 * Brings the database up to this version and says which migrations that took, in order. Safe to call from several
 * processes at once. Records them in the standard `_prisma_migrations`.
 *
 * @throws Error when a migration that was applied earlier has been edited since, when the database was made by a later
 *   version, or when one fails: each names the migration.
 */
export function applyMigrations(url: string, options: Options = {}): Promise<string[]> {
  return withMigrationLock(url, () => apply(url, options));
}

async function apply(
  url: string,
  { folder = migrationsFolder(providerOf(url)), beforeChange }: Options,
): Promise<string[]> {
  const migrationsList = readMigrations(folder);
  const filters = { externalTables: [], externalEnums: [] };
  const state = await databaseState(url, migrationsList);
  if (state === 'current') return [];
  const engine = <T>(work: (engine: SchemaEngine) => Promise<T>) =>
    withSchemaEngine(readSchema(providerOf(url)), migrationAdapter(url), work);
  // On a fresh SQLite file the engine cannot answer this.
  if (state === 'other') {
    refuse(
      await engine((asked) =>
        asked.diagnoseMigrationHistory({ migrationsList, filters, optInToShadowDatabase: false }),
      ),
    );
    await beforeChange?.();
  }
  return (await engine((asked) => asked.applyMigrations({ migrationsList, filters }))).appliedMigrationNames;
}

type Diagnosis = {
  editedMigrationNames: string[];
  history: null | { diagnostic: string; unpersistedMigrationNames?: string[] };
};

function refuse({ editedMigrationNames, history }: Diagnosis) {
  if (editedMigrationNames.length > 0) {
    throw new Error(
      `Migration ${editedMigrationNames.join(', ')} was edited after it was applied to this database. ` +
        'Put the file back as it was; a change goes into a new migration.',
    );
  }
  const unknown = history?.unpersistedMigrationNames ?? [];
  if (unknown.length > 0) {
    throw new Error(
      `This database has been through migration ${unknown.join(', ')}, which this version does not know. ` +
        'Start the version that made it, or restore a backup from before the upgrade.',
    );
  }
}

type Row = { migration_name: string; checksum: string; finished_at: unknown; rolled_back_at: unknown };

/**
 * The state of the database compared with the migrations in the folder. `current` is found without the schema engine,
 * which is slow to load and wants the file for itself: so a second start is quick, and works beside a server.
 */
export async function databaseState(
  url: string,
  list: ReturnType<typeof readMigrations>,
): Promise<'empty' | 'current' | 'other'> {
  const db = openDatabase(url);
  try {
    if (!(await wasMigrated(db, providerOf(url)))) return 'empty';
    const rows = await db.$queryRawUnsafe<Row[]>(
      'SELECT migration_name, checksum, finished_at, rolled_back_at FROM _prisma_migrations',
    );
    return isCurrent(rows, list) ? 'current' : 'other';
  } finally {
    await db.$disconnect();
  }
}

function isCurrent(rows: Row[], { migrationDirectories }: ReturnType<typeof readMigrations>): boolean {
  const applied = new Map(
    rows
      .filter((row) => row.finished_at !== null && row.rolled_back_at === null)
      .map((row) => [row.migration_name, row.checksum]),
  );
  return (
    rows.length === applied.size &&
    applied.size === migrationDirectories.length &&
    migrationDirectories.every(
      (migration) => applied.get(migration.path) === sha256(migration.migrationFile.content.value),
    )
  );
}

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');

async function wasMigrated(db: Database, provider: Provider): Promise<boolean> {
  const found = await db.$queryRawUnsafe<unknown[]>(
    provider === 'sqlite'
      ? `SELECT name FROM sqlite_master WHERE type = 'table' AND name = '_prisma_migrations'`
      : `SELECT table_name FROM information_schema.tables WHERE table_schema = current_schema() AND table_name = '_prisma_migrations'`,
  );
  return found.length > 0;
}

/** Commands and the server run from the top folder of the installation. */
export const migrationsFolder = (provider: Provider) => path.resolve('prisma/migrations', provider);

/** The derived schema (see lib/bin/generate.mjs). */
export function readSchema(provider: Provider): string {
  return readFileSync(path.resolve('prisma/generated', provider, 'schema.prisma'), 'utf8');
}

/** Names of the migrations in order, e.g. `0001_ground`. */
export function migrationNames(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
}

/** The shape in which the schema engine wants them. */
export function readMigrations(folder: string) {
  return {
    baseDir: folder,
    lockfile: { path: 'migration_lock.toml', content: `provider = "${path.basename(folder)}"\n` },
    shadowDbInitScript: '',
    migrationDirectories: migrationNames(folder).map((name) => ({
      path: name,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok' as const, value: readFileSync(path.join(folder, name, 'migration.sql'), 'utf8') },
      },
    })),
  };
}

/**
 * The SQL that takes the database at `url` to the schema; null when it is there already.
 * Used to write the next migration (from a scratch database with all earlier ones) and to find drift.
 */
export async function differenceToSchema(url: string): Promise<string | null> {
  const schema = readSchema(providerOf(url));
  const files = [{ path: 'schema.prisma', content: schema }];
  return withSchemaEngine(schema, migrationAdapter(url), async (engine) => {
    const { exitCode, stdout } = await engine.diff({
      from: { tag: 'schemaDatasource', files, configDir: '.' },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: true,
      filters: { externalTables: [], externalEnums: [] },
    });
    return exitCode === 2 ? stdout : null;
  });
}

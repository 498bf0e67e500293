import { openDatabase, providerOf, type Database } from '../open';
import { migrationAdapter } from './adapters';
import { withSchemaEngine } from './engine';
import { migrationsFolder, readMigrations, readSchema } from './files';

/**
 * Brings the database up to this version and says which migrations that took, in order. Safe to call from several
 * processes at once: the engine locks the database meanwhile. Records them in the standard `_prisma_migrations`.
 *
 * @param folder of the migrations; the installation's own by default
 * @throws Error when a migration that was applied earlier has been edited since, when the database was made by a later
 *   version, or when one fails: each names the migration.
 */
export async function applyMigrations(url: string, folder = migrationsFolder(providerOf(url))): Promise<string[]> {
  const migrationsList = readMigrations(folder);
  const filters = { externalTables: [], externalEnums: [] };
  const known = await wasMigratedBefore(url);
  return withSchemaEngine(readSchema(providerOf(url)), migrationAdapter(url), async (engine) => {
    const diagnose = () => engine.diagnoseMigrationHistory({ migrationsList, filters, optInToShadowDatabase: false });
    if (known) refuse(await diagnose());
    const { appliedMigrationNames } = await engine.applyMigrations({ migrationsList, filters });
    return appliedMigrationNames;
  });
}

type Diagnosis = { editedMigrationNames: string[]; history: null | { diagnostic: string; unpersistedMigrationNames?: string[] } };

function refuse({ editedMigrationNames, history }: Diagnosis) {
  if (editedMigrationNames.length > 0) {
    throw new Error(`Migration ${editedMigrationNames.join(', ')} was edited after it was applied to this database. `
      + 'Put the file back as it was; a change goes into a new migration.');
  }
  const unknown = history?.unpersistedMigrationNames ?? [];
  if (unknown.length > 0) {
    throw new Error(`This database has been through migration ${unknown.join(', ')}, which this version does not know. `
      + 'Start the version that made it, or restore a backup from before the upgrade.');
  }
}

/** Asked beforehand, since on a fresh SQLite file the engine cannot answer. */
async function wasMigratedBefore(url: string): Promise<boolean> {
  const db = openDatabase(url);
  try {
    return await hasTable(db, providerOf(url) === 'sqlite'
      ? `SELECT name FROM sqlite_master WHERE type = 'table' AND name = '_prisma_migrations'`
      : `SELECT table_name FROM information_schema.tables WHERE table_schema = current_schema() AND table_name = '_prisma_migrations'`);
  } finally {
    await db.$disconnect();
  }
}

async function hasTable(db: Database, query: string): Promise<boolean> {
  return (await db.$queryRawUnsafe<unknown[]>(query)).length > 0;
}

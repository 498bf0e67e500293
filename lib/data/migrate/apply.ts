import type { SchemaEngine } from '@prisma/schema-engine-wasm/schema_engine_bg';
import { providerOf } from '../open';
import { migrationAdapter } from './adapters';
import { standing } from './applied';
import { withSchemaEngine } from './engine';
import { withMigrationLock } from './lock';
import { migrationsFolder, readMigrations, readSchema } from './files';

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

async function apply(url: string, { folder = migrationsFolder(providerOf(url)), beforeChange }: Options): Promise<string[]> {
  const migrationsList = readMigrations(folder);
  const filters = { externalTables: [], externalEnums: [] };
  const stands = await standing(url, migrationsList);
  if (stands === 'current') return [];
  const engine = <T>(work: (engine: SchemaEngine) => Promise<T>) => withSchemaEngine(readSchema(providerOf(url)), migrationAdapter(url), work);
  // On a fresh SQLite file the engine cannot answer this.
  if (stands === 'other') {
    refuse(await engine((asked) => asked.diagnoseMigrationHistory({ migrationsList, filters, optInToShadowDatabase: false })));
    await beforeChange?.();
  }
  return (await engine((asked) => asked.applyMigrations({ migrationsList, filters }))).appliedMigrationNames;
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

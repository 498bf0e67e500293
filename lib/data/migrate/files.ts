import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Provider } from '../open';

/** Commands and the server run from the top folder of the installation. */
export const migrationsFolder = (provider: Provider) => path.resolve('prisma/migrations', provider);

/** The derived schema (see lib/bin/generate.mjs). */
export function readSchema(provider: Provider): string {
  return readFileSync(path.resolve('prisma/generated', provider, 'schema.prisma'), 'utf8');
}

/** Names of the migrations in order, e.g. `0001_ground`. */
export function migrationNames(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory()).map((entry) => entry.name).sort();
}

/** The shape in which the schema engine wants them. */
export function readMigrations(folder: string) {
  return {
    baseDir: folder,
    lockfile: { path: 'migration_lock.toml', content: `provider = "${path.basename(folder)}"\n` },
    shadowDbInitScript: '',
    migrationDirectories: migrationNames(folder).map((name) => ({
      path: name,
      migrationFile: { path: 'migration.sql', content: { tag: 'ok' as const, value: readFileSync(path.join(folder, name, 'migration.sql'), 'utf8') } },
    })),
  };
}

import { createHash } from 'node:crypto';
import { openDatabase, providerOf, type Database, type Provider } from '../open';
import type { readMigrations } from './files';

type Row = { migration_name: string; checksum: string; finished_at: unknown; rolled_back_at: unknown };

/**
 * How the database stands to the migrations in the folder. `current` is answered without the schema engine, which is
 * slow to load and wants the file for itself: a second start is quick, and works beside a server.
 */
export async function standing(url: string, list: ReturnType<typeof readMigrations>): Promise<'empty' | 'current' | 'other'> {
  const db = openDatabase(url);
  try {
    if (!await wasMigrated(db, providerOf(url))) return 'empty';
    const rows = await db.$queryRawUnsafe<Row[]>('SELECT migration_name, checksum, finished_at, rolled_back_at FROM _prisma_migrations');
    return isCurrent(rows, list) ? 'current' : 'other';
  } finally {
    await db.$disconnect();
  }
}

function isCurrent(rows: Row[], { migrationDirectories }: ReturnType<typeof readMigrations>): boolean {
  const applied = new Map(rows.filter((row) => row.finished_at !== null && row.rolled_back_at === null)
    .map((row) => [row.migration_name, row.checksum]));
  return rows.length === applied.size && applied.size === migrationDirectories.length
    && migrationDirectories.every(({ path, migrationFile }) => applied.get(path) === sha256(migrationFile.content.value));
}

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');

async function wasMigrated(db: Database, provider: Provider): Promise<boolean> {
  const found = await db.$queryRawUnsafe<unknown[]>(provider === 'sqlite'
    ? `SELECT name FROM sqlite_master WHERE type = 'table' AND name = '_prisma_migrations'`
    : `SELECT table_name FROM information_schema.tables WHERE table_schema = current_schema() AND table_name = '_prisma_migrations'`);
  return found.length > 0;
}

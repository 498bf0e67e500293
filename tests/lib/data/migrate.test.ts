import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { applyMigrations, differenceToSchema, migrationNames, migrationsFolder } from '@/lib/data/migrate/apply';
import { openDatabase, type Provider } from '@/lib/data/open';
import { emptyDatabase } from '../../fixtures/databases';
import { inOtherProcesses } from '../../fixtures/processes';

const scratch = mkdtempSync(path.join(tmpdir(), 'kerncrit-migrate-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

describe.each<Provider>(['sqlite', 'postgresql'])('migrations (%s)', (provider) => {
  const all = migrationNames(migrationsFolder(provider));

  it('take an empty database to exactly the schema, and a second time do nothing', async () => {
    const url = await emptyDatabase(provider);
    expect(await applyMigrations(url)).toEqual(all);
    expect(await differenceToSchema(url)).toBeNull();
    expect(await applyMigrations(url)).toEqual([]);
  });

  it('are recorded in the standard table', async () => {
    const url = await emptyDatabase(provider);
    await applyMigrations(url);
    const db = openDatabase(url);
    const rows = await db.$queryRawUnsafe<{ migration_name: string; finished_at: unknown }[]>(
      'SELECT migration_name, finished_at FROM _prisma_migrations ORDER BY migration_name',
    );
    await db.$disconnect();
    expect(rows.map((row) => row.migration_name)).toEqual(all);
    expect(rows.every((row) => row.finished_at !== null)).toBe(true);
  });

  it('may be started by three processes at once', async () => {
    const url = await emptyDatabase(provider);
    const answers = await inOtherProcesses(3, 'tests/fixtures/migrate-once.ts', url);
    expect(answers.filter((answer) => answer === all.join(','))).toHaveLength(1);
    expect(answers.filter((answer) => answer === '')).toHaveLength(2);
    expect(await differenceToSchema(url)).toBeNull();
  }, 60_000);

  it('refuse when a file was edited after it was applied, and name it', async () => {
    const url = await emptyDatabase(provider);
    const folder = copyOf(provider);
    await applyMigrations(url, { folder });
    writeFileSync(path.join(folder, all[0]!, 'migration.sql'), '-- other\n');
    await expect(applyMigrations(url, { folder })).rejects.toThrow(`Migration ${all[0]} was edited`);
  });

  it('refuse a database that a later version made', async () => {
    const url = await emptyDatabase(provider);
    const folder = copyOf(provider);
    addMigration(folder, '9999_later', 'CREATE TABLE "Later" ("id" TEXT NOT NULL PRIMARY KEY);');
    await applyMigrations(url, { folder });
    await expect(applyMigrations(url)).rejects.toThrow('9999_later, which this version does not know');
  });

  it('keep what is in the tables, and say when one fails', async () => {
    const url = await emptyDatabase(provider);
    await applyMigrations(url);
    const db = openDatabase(url);
    await db.installation.create({ data: { key: 'kept', value: 'yes', setAt: new Date(0) } });
    await db.$disconnect();
    const folder = copyOf(provider);
    addMigration(
      folder,
      '9998_more',
      `CREATE TABLE "More" ("id" TEXT NOT NULL PRIMARY KEY, "say" TEXT NOT NULL DEFAULT 'a; b');`,
    );
    expect(await applyMigrations(url, { folder })).toEqual(['9998_more']);
    addMigration(folder, '9999_broken', 'CREATE TABEL "Broken";');
    await expect(applyMigrations(url, { folder })).rejects.toThrow('9999_broken');
    const again = openDatabase(url);
    expect(await again.installation.findMany({ select: { key: true } })).toEqual([{ key: 'kept' }]);
    await again.$disconnect();
  });
});

it('come in the same order for both databases', () => {
  expect(migrationNames(migrationsFolder('sqlite')).at(-1)).toBe(migrationNames(migrationsFolder('postgresql')).at(-1));
});

function copyOf(provider: Provider): string {
  const folder = path.join(mkdtempSync(path.join(scratch, 'copy-')), provider);
  cpSync(migrationsFolder(provider), folder, { recursive: true });
  return folder;
}

function addMigration(folder: string, name: string, sql: string) {
  mkdirSync(path.join(folder, name));
  writeFileSync(path.join(folder, name, 'migration.sql'), sql);
}

import { rmSync } from 'node:fs';
import { database, exchangeDatabase } from '@/lib/data/client';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { openDatabase, providerOf } from '@/lib/data/open';
import { sqliteFile } from '@/lib/data/sqlite';
import seedDemo from '@/prisma/seed';

const key = 'demo';

/** Whether the database was made as a demo. */
export async function isDemo(): Promise<boolean> {
  return (await markOf()) === 'yes';
}

/**
 * Fills the database with the demo if it is new. A filling that was cut short begins again: no server has ever run on
 * such a database, so nothing is lost.
 */
export async function fillDemo(url: string): Promise<'filled' | 'in use'> {
  if ((await markOf()) === 'begun') await empty(url);
  if ((await markOf()) !== null || (await database().user.count()) > 0) return 'in use';
  await mark('begun');
  await seedDemo(new Date());
  await mark('yes');
  return 'filled';
}

async function markOf(): Promise<string | null> {
  return (await database().installation.findUnique({ where: { key } }))?.value ?? null;
}

async function mark(value: string) {
  const setAt = new Date();
  await database().installation.upsert({ where: { key }, create: { key, value, setAt }, update: { value, setAt } });
}

async function empty(url: string) {
  const file = providerOf(url) === 'sqlite' ? sqliteFile(url) : null;
  if (file === null) {
    throw new Error(
      'Filling this database with the demo was cut short. Drop it, create it anew and start again; nothing but demo data is in it.',
    );
  }
  await database().$disconnect();
  for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true });
  await applyMigrations(url);
  exchangeDatabase(openDatabase(url));
}

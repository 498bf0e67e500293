// Run by start.mjs in a separate process: migrates, fills a new database with the demo, and sends its parent what to
// print once the server answers.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { env } from '@/lib/env';
import { firstLink } from '@/lib/account/first-instructor';
import { holdAsOnlyServer } from '@/lib/ops/one-server';
import { backUp } from '@/lib/data/backup/back-up';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { demoSignIns } from '@/prisma/seed';
import { fillDemo, isDemo } from './demo';

export type Prepared = {
  notes: string[];
  signIns: { role: string; email: string; password: string }[];
  firstLink: { address: string; expiresAt: string } | null;
};

try {
  process.send?.({ prepared: await prepare() });
} catch (error) {
  process.send?.({ failed: error instanceof Error ? error.message : String(error) });
}
process.disconnect?.();
process.exit(0);

async function prepare(): Promise<Prepared> {
  const { databaseUrl, demo, publicOrigin } = env();
  const notes: string[] = [];
  // Not under the feet of a server that is running.
  holdAsOnlyServer(databaseUrl)();
  const applied = await applyMigrations(databaseUrl, {
    beforeChange: async () => {
      notes.push(`Kept a copy from before the upgrade: ${await backUpFirst(databaseUrl)}`);
    },
  });
  if (applied.length > 0) notes.push(`Migrated the database: ${applied.join(', ')}.`);
  if (demo && (await fillDemo(databaseUrl)) === 'filled') notes.push('Filled it with the demo course.');
  if (await isDemo())
    return {
      notes,
      signIns: demoSignIns.map(({ role, email, password }) => ({ role, email, password })),
      firstLink: null,
    };
  const link = await firstLink(publicOrigin);
  return { notes, signIns: [], firstLink: link && { address: link.address, expiresAt: link.expiresAt.toISOString() } };
}

/** An upgrade can be taken back only with what was there before. */
async function backUpFirst(url: string): Promise<string> {
  const folder = path.join(env().dataDirectory, 'backups');
  mkdirSync(folder, { recursive: true });
  const file = path.join(folder, `before-upgrade-${new Date().toISOString().replaceAll(':', '-').slice(0, 19)}`);
  return backUp(url, file);
}

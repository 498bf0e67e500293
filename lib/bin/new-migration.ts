// npm run migration -- NAME: writes the next migration for both databases, from what the schema says now.
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { applyMigrations, differenceToSchema, migrationNames, migrationsFolder } from '@/lib/data/migrate/apply';
import type { Provider } from '@/lib/data/open';
import { startScratchServer } from './scratch-postgresql';
import { answerHelp } from './help';

answerHelp(`npm run migration -- NAME
  Writes the next migration for both databases, from what prisma/schema.prisma says now.`);

const name = process.argv[2] ?? '';
if (!/^[a-z][a-z0-9_]*$/.test(name)) {
  console.error(`The name of a migration says what it does, in small letters and underscores; got "${name}".`);
  process.exit(1);
}

const scratch = mkdtempSync(path.join(tmpdir(), 'kerncrit-migration-'));
const server = await startScratchServer();
try {
  const number = String(Math.max(...(['sqlite', 'postgresql'] as const).map(nextNumber))).padStart(4, '0');
  await write('sqlite', `${number}_${name}`, `file:${path.join(scratch, 'scratch.db')}`);
  await write('postgresql', `${number}_${name}`, await server.createDatabase('scratch'));
} finally {
  await server.stop();
  rmSync(scratch, { recursive: true, force: true });
}

function nextNumber(provider: Provider): number {
  return 1 + Math.max(0, ...migrationNames(migrationsFolder(provider)).map((each) => Number.parseInt(each, 10)));
}

async function write(provider: Provider, folderName: string, url: string) {
  await applyMigrations(url);
  const sql = await differenceToSchema(url);
  const folder = path.join(migrationsFolder(provider), folderName);
  if (sql === null) return console.log(`${provider}: the migrations already say what the schema says.`);
  if (existsSync(folder)) throw new Error(`${folder} exists already.`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, 'migration.sql'), sql);
  console.log(`${provider}: wrote ${path.relative('.', folder)}. Read it before you commit it.`);
}

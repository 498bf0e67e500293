// npm run backup -- OUT: a whole copy of the database, while it is being used.
import { existsSync, writeFileSync } from 'node:fs';
import { env } from '@/lib/env';
import { lastBackupFile } from '@/lib/ops/last-backup';
import { backUp } from '@/lib/data/backup/back-up';
import { answerHelp } from './help';

answerHelp(`npm run backup -- OUT
  Copies the whole database to OUT while it is being used. OUT must not exist yet.`);

const out = process.argv[2];
if (!out || out.startsWith('-')) {
  console.error('Name a folder for the backup: npm run backup -- backups/2027-03-08');
  process.exit(1);
}
try {
  const { databaseUrl, dataDirectory } = env();
  const file = await backUp(databaseUrl, out);
  // Monitoring tells from it how old the last backup is; where no server has a folder of its own, nothing does.
  if (existsSync(dataDirectory)) writeFileSync(lastBackupFile(dataDirectory), `${new Date().toISOString()}\n`);
  console.log(`Backed up to ${file}. It holds people’s work and marks: keep it as safe as the server.`);
  process.exit(0);
} catch (error) {
  console.error(`No backup was made. ${error instanceof Error ? error.message : String(error)}`);
  process.exit(1);
}

// npm run restore -- FILE [--replace]: brings a backup back, then migrates it to this version.
import { env } from '@/lib/env';
import { restore } from '@/lib/data/backup/restore';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { answerHelp } from './help';

answerHelp(`npm run restore -- FILE [--replace]
  Brings a backup back and migrates it to this version. --replace puts what is there aside first. Stop the server before.`);

const words = process.argv.slice(2);
const file = words.find((word) => !word.startsWith('--'));
const unknown = words.find((word) => word.startsWith('--') && word !== '--replace');
if (!file || unknown) {
  console.error(
    `${unknown ? `"${unknown}" is not an option. ` : ''}Say which backup: npm run restore -- FILE [--replace]`,
  );
  process.exit(1);
}
try {
  const { databaseUrl } = env();
  const setAside = await restore(databaseUrl, file, { replace: words.includes('--replace') });
  const applied = await applyMigrations(databaseUrl);
  console.log(
    [
      `Restored ${file}.`,
      ...(setAside ? [`What was there before is kept: ${setAside}`] : []),
      ...(applied.length > 0 ? [`Migrated it to this version: ${applied.join(', ')}.`] : []),
    ].join('\n'),
  );
  process.exit(0);
} catch (error) {
  console.error(`Nothing was restored. ${error instanceof Error ? error.message : String(error)}`);
  process.exit(1);
}

// npm run migrate: brings the database of DATABASE_URL up to this version. `npm start` does it too.
import { env } from '@/lib/env';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { answerHelp } from './help';

answerHelp(`npm run migrate
  Brings the database up to this version. npm start does it too.`);

try {
  const applied = await applyMigrations(env().databaseUrl);
  console.log(applied.length === 0 ? 'The database is up to date.' : `Migrated the database: ${applied.join(', ')}.`);
} catch (error) {
  console.error(`The database was not migrated. ${error instanceof Error ? error.message : String(error)}`);
  process.exit(1);
}

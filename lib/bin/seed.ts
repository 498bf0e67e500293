// npm run seed: fills a new database with the demo course. `npm start` does this too, unless an option prevents it.
import { fillDemo } from './start/demo';
import { env } from '@/lib/env';
import { applyMigrations } from '@/lib/data/migrate/apply';
import { answerHelp } from './help';

answerHelp(`npm run seed
  Fills a new database with the demo course. npm start does it too.`);

try {
  await applyMigrations(env().databaseUrl);
  const state = await fillDemo(env().databaseUrl);
  console.log(
    state === 'filled'
      ? 'Filled the database with the demo course.'
      : 'The database is in use already, and was left as it is.',
  );
  process.exit(0);
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}

// npm start: installs, generates, migrates, fills a new database with the demo, builds and serves. Plain JavaScript
// that needs nothing but Node, since it runs before anything is installed. What is done already is not done again.
import { buildIfChanged } from './start/build.mjs';
import { installIfChanged } from './start/install.mjs';
import { readOptions } from './start/options.mjs';
import { refuseOldNode, refuseTakenPort, sayFailure } from './start/refuse.mjs';
import { prepareDatabase } from './start/database.mjs';
import { secretsOf } from './start/secrets.mjs';
import { serve } from './start/serve.mjs';

// Databases, backups and secrets are for their owner alone.
process.umask(0o077);

try {
  refuseOldNode();
  const options = readOptions(process.argv.slice(2), process.env);
  await refuseTakenPort(options);
  installIfChanged();
  const { generate } = await import('./generate.mjs');
  generate();
  const environment = { ...process.env, ...secretsOf(options), ...options.environment };
  const prepared = await prepareDatabase(environment);
  buildIfChanged();
  await serve(options, environment, prepared);
} catch (error) {
  sayFailure(error);
  process.exit(1);
}

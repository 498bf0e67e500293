// The server of the browser tests: `npm start` with a new demo database in a temporary folder.
import { rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { secretsOf } from '../../lib/bin/start/secrets.mjs';

const port = process.argv[2];
const folder = path.join(tmpdir(), `kerncrit-e2e-${port}`);
rmSync(folder, { recursive: true, force: true });

// The key of the checkout, which the build carries: so `npm start` and the tests share one build.
const { NEXT_SERVER_ACTIONS_ENCRYPTION_KEY } = secretsOf({ dataDirectory: './data' });
Object.assign(process.env, {
  NEXT_SERVER_ACTIONS_ENCRYPTION_KEY,
  DATA_DIR: folder,
  DATABASE_URL: `file:${path.join(folder, 'kerncrit.db')}`,
});
process.argv = [...process.argv.slice(0, 2), '--port', port];
await import('../../lib/bin/start.mjs');

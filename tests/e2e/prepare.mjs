// Build and demo, made once for all servers of the browser tests. `node tests/e2e/prepare.mjs FILE` makes both ahead of
// time.
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildIfChanged } from '../../lib/bin/start/build.mjs';
import { prepareDatabase } from '../../lib/bin/start/database.mjs';
import { secretsOf } from '../../lib/bin/start/secrets.mjs';

/** The environment of the servers: no more of this machine's than `npm start` would have. */
export function serverEnvironment() {
  return { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' };
}

/** Builds where anything changed and, beside it, fills `file` with a new demo unless it is there. */
export async function prepare(file) {
  const environment = serverEnvironment();
  const filling = existsSync(file) ? null : fillDemo(file, environment);
  // Failures are reported after the build.
  filling?.catch(() => {});
  buildIfChanged();
  await filling;
}

async function fillDemo(file, environment) {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-demo-'));
  const filled = path.join(folder, 'kerncrit.db');
  try {
    const secrets = secretsOf({ dataDirectory: folder });
    await prepareDatabase({ ...environment, ...secrets, DATA_DIR: folder, DATABASE_URL: `file:${filled}` });
    await copyDatabase(filled, file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** One whole file, without the log that SQLite keeps beside it. */
export async function copyDatabase(from, to) {
  // Not at the top: this runs before anything is installed.
  const { default: SQLite } = await import('better-sqlite3');
  const database = new SQLite(from);
  try {
    database.prepare('VACUUM INTO ?').run(to);
  } finally {
    database.close();
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await prepare(process.argv[2]);

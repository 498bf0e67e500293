// The servers of the browser tests, one for each worker: `npm start`, each with a demo database of its own, all copies
// of one. `node tests/e2e/start.mjs PORT COUNT`: ports PORT, PORT + 10, …, each
// with its figures five above; E2E_DEMO names a demo that was made before.
import { spawn } from 'node:child_process';
import { copyFileSync, mkdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { serverEnvironment, prepare } from './prepare.mjs';

const [first, count] = process.argv.slice(2).map(Number);
const ports = Array.from({ length: count }, (_, index) => first + 10 * index);
const folderOf = (port) => path.join(tmpdir(), `kerncrit-e2e-${port}`);
for (const port of ports) {
  rmSync(folderOf(port), { recursive: true, force: true });
  mkdirSync(folderOf(port), { recursive: true });
}

const demo = process.env.E2E_DEMO ?? path.join(folderOf(first), 'demo.db');
await prepare(demo);
const servers = [];
for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => servers.forEach((server) => server.kill('SIGTERM')));
// The runner waits for the last one alone, which is therefore begun when the others answer.
await Promise.all(ports.slice(0, -1).map(serve));
await serve(ports.at(-1));

/** Resolves when it answers. */
function serve(port) {
  const folder = folderOf(port);
  for (const name of ['kerncrit.db', 'demo.db']) {
    const copy = path.join(folder, name);
    if (copy !== demo) copyFileSync(demo, copy);
  }
  const environment = {
    ...serverEnvironment(),
    DATA_DIR: folder,
    DATABASE_URL: `file:${path.join(folder, 'kerncrit.db')}`,
    METRICS_PORT: String(port + 5),
  };
  const server = spawn(process.execPath, ['lib/bin/start.mjs', '--port', String(port)], {
    env: environment,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  servers.push(server);
  return new Promise((resolve) => {
    server.stdout.on('data', (text) => {
      process.stdout.write(text);
      if (String(text).includes('Stop it with Ctrl-C.')) resolve();
    });
    server.once('exit', (code) => {
      // One that ends takes the others along.
      servers.forEach((other) => other.kill('SIGTERM'));
      process.exitCode = code ?? 0;
    });
  });
}

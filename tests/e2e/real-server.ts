import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** `npm start -- --real` beside the demo server, as a school would start it, with its own new database. */
export async function startReal(port: number, settings: Record<string, string>) {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-real-'));
  // The key that the build carries, kept by the demo server beside it: so both share one build.
  const { NEXT_SERVER_ACTIONS_ENCRYPTION_KEY } = JSON.parse(readFileSync('data/secrets.json', 'utf8')) as Record<string, string>;
  const server = spawn(process.execPath, ['lib/bin/start.mjs', '--real', '--port', String(port)], {
    env: { ...process.env, NEXT_SERVER_ACTIONS_ENCRYPTION_KEY, DATA_DIR: folder, DATABASE_URL: `file:${path.join(folder, 'kerncrit.db')}`, ...settings },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  const ready = new Promise<void>((resolve, reject) => {
    server.stdout.on('data', (text) => { said += String(text); if (said.includes('Stop it with Ctrl-C.')) resolve(); });
    server.stderr.on('data', (text) => { said += String(text); });
    server.once('exit', () => reject(new Error(`The server ended:\n${said}`)));
  });
  await ready;
  const stop = async () => {
    const ended = new Promise((resolve) => { server.once('exit', resolve); });
    server.kill('SIGTERM');
    await ended;
    rmSync(folder, { recursive: true, force: true });
  };
  return { origin: `http://127.0.0.1:${port}`, firstLink: /http:\/\/\S+\/first\/\S+/.exec(said)?.[0] ?? null, stop };
}

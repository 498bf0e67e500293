import { spawn, type ChildProcess } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/**
 * `npm start` beside the demo server, on the port after it, with its own database: a copy of the demo as it was when
 * filled, or with `--real` a new one. It can be killed and started again.
 */
export async function startBeside(port: number, words: readonly string[] = [], settings: Record<string, string> = {}) {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-beside-'));
  const env = {
    ...process.env,
    DATA_DIR: folder,
    DATABASE_URL: `file:${path.join(folder, 'kerncrit.db')}`,
    ...settings,
  };
  const demo = path.join(tmpdir(), `kerncrit-e2e-${port - 1}`, 'demo.db');
  if (!words.includes('--real') && existsSync(demo)) copyFileSync(demo, path.join(folder, 'kerncrit.db'));
  const started = async () => {
    // With a process group of its own, so that a kill reaches the server behind the command, too.
    const server = spawn(process.execPath, ['lib/bin/start.mjs', ...words, '--port', String(port)], {
      env,
      stdio: ['ignore', 'pipe', 'pipe'],
      detached: true,
    });
    return { server, said: await readyWords(server) };
  };
  let running = await started();
  const end = async (signal: NodeJS.Signals) => {
    const ended = new Promise((resolve) => {
      running.server.once('exit', resolve);
    });
    process.kill(-running.server.pid!, signal);
    await ended;
  };
  return {
    origin: `http://127.0.0.1:${port}`,
    /** Where its database and its secrets are. */
    folder,
    /** What the console printed at the first start. */
    said: running.said,
    /** Ends it at once, as a power cut does. */
    kill: () => end('SIGKILL'),
    startAgain: async () => {
      running = await started();
    },
    stop: async () => {
      await end('SIGTERM');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** As a school would start it: without a demo. */
export async function startReal(port: number, settings: Record<string, string>) {
  const server = await startBeside(port, ['--real'], settings);
  return { ...server, firstLink: /http:\/\/\S+\/first\/\S+/.exec(server.said)?.[0] ?? null };
}

/** Resolves with the command's output once it serves. */
function readyWords(server: ChildProcess): Promise<string> {
  let said = '';
  return new Promise((resolve, reject) => {
    server.stdout!.on('data', (text) => {
      said += String(text);
      if (said.includes('Stop it with Ctrl-C.')) resolve(said);
    });
    server.stderr!.on('data', (text) => {
      said += String(text);
    });
    server.once('exit', () => reject(new Error(`The server ended:\n${said}`)));
  });
}

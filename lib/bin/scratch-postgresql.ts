import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { chownSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import pg from 'pg';
import { findProgram } from '@/lib/data/backup/back-up';

export type ScratchServer = {
  pid: number;
  folder: string;
  /** Makes a new database (a copy of `template` where given) and returns its url. */
  createDatabase(name: string, template?: string): Promise<string>;
  url(name: string): string;
  stop(): Promise<void>;
};

/**
 * A PostgreSQL server of its own in a temporary folder, on the loopback address and a free port, for tests and for
 * writing migrations. It does not wait for the disk, so it is never for real data.
 * @param outliving the process that started it; then it must be stopped with `stopScratchServer`.
 * @throws Error that says what to install when there is no PostgreSQL.
 */
export async function startScratchServer({ outliving = false } = {}): Promise<ScratchServer> {
  const owner = serverUser();
  const folder = mkdtempSync(path.join(tmpdir(), 'kerncrit-postgresql-'));
  if (owner) chownSync(folder, owner.uid, owner.gid);
  const data = path.join(folder, 'data');
  const log = path.join(folder, 'log');
  const port = await freePort();
  run('initdb', ['-D', data, '-U', 'kerncrit', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-sync'], owner);
  const server = spawn(findProgram('postgres'), ['-D', data, '-p', String(port), ...serverSettings], {
    ...owner,
    cwd: folder,
    detached: outliving,
    stdio: ['ignore', 'ignore', openSync(log, 'w')],
  });
  if (outliving) server.unref();
  const url = (name: string) => `postgresql://kerncrit@127.0.0.1:${port}/${name}`;
  await answering(url('postgres'), server, log);
  const pid = server.pid ?? 0;
  return {
    pid,
    folder,
    url,
    createDatabase: async (name, template) => {
      await createDatabase(url('postgres'), name, template);
      return url(name);
    },
    stop: () => stopScratchServer({ pid, folder }),
  };
}

/** @param server url of any database on the server */
export async function createDatabase(server: string, name: string, template?: string) {
  await onServer(server, `CREATE DATABASE "${name}"${template ? ` TEMPLATE "${template}"` : ''}`);
}

/** Stops the server at once and removes its folder. */
export async function stopScratchServer({ pid, folder }: { pid: number; folder: string }) {
  if (isRunning(pid)) process.kill(pid, 'SIGQUIT');
  for (let tries = 0; tries < 100 && isRunning(pid); tries += 1) await wait(50);
  rmSync(folder, { recursive: true, force: true });
}

function isRunning(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

const serverSettings = [
  '-c',
  'listen_addresses=127.0.0.1',
  '-c',
  'unix_socket_directories=',
  '-c',
  'max_connections=200',
  '-c',
  'fsync=off',
  '-c',
  'synchronous_commit=off',
  '-c',
  'full_page_writes=off',
  '-c',
  'shared_buffers=64MB',
];

type Owner = { uid: number; gid: number };

/** PostgreSQL refuses to run as root, so then it runs as the user that its package made. */
function serverUser(): Owner | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const line = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find((entry) => entry.startsWith('postgres:'));
  if (!line)
    throw new Error(
      'There is no user "postgres" to run a test server as: install PostgreSQL (on Debian: apt-get install postgresql).',
    );
  const [, , uid, gid] = line.split(':');
  return { uid: Number(uid), gid: Number(gid) };
}

function run(name: string, options: string[], owner?: Owner) {
  const result = spawnSync(findProgram(name), options, { ...owner, cwd: '/', encoding: 'utf8' });
  if (result.status !== 0) throw new Error(`${name} failed:\n${result.stderr}`);
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer()
      .once('error', reject)
      .listen(0, '127.0.0.1', () => {
        const address = probe.address();
        probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
      });
  });
}

async function answering(url: string, server: ChildProcess, log: string) {
  for (let tries = 0; tries < 400; tries += 1) {
    if (server.exitCode !== null) break;
    if (
      await onServer(url, 'SELECT 1').then(
        () => true,
        () => false,
      )
    )
      return;
    await wait(50);
  }
  throw new Error(`The test server of PostgreSQL did not start:\n${readFileSync(log, 'utf8')}`);
}

async function onServer(url: string, sql: string) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(sql);
  } finally {
    await client.end();
  }
}

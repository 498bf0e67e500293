import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { readFileSync, rmSync } from 'node:fs';
import { cpus } from 'node:os';
import { setTimeout as wait } from 'node:timers/promises';

const next = 'node_modules/next/dist/bin/next';
export const secret = randomBytes(32).toString('base64url');

/** Builds with the baseline routes (…bench.ts), which no other build has; the next start builds without them again. */
export function buildForBench() {
  rmSync('.next/kerncrit-built', { force: true });
  const { status, stdout, stderr } = spawnSync(process.execPath, [next, 'build'], {
    encoding: 'utf8',
    env: { ...process.env, NODE_ENV: 'production', KERNCRIT_BENCH: 'yes', NEXT_TELEMETRY_DISABLED: '1' },
  });
  if (status !== 0) throw new Error(`The build failed:\n${stdout}${stderr}`);
}

export type BenchServer = { origin: string; processorMs: () => number; stop: () => void };

/** With `core`, the server and all it starts run on that core alone, and this process and its others on the rest. */
export async function serveForBench(
  databaseUrl: string,
  port: number,
  { core }: { core?: number } = {},
): Promise<BenchServer> {
  const origin = `http://127.0.0.1:${port}`;
  const command = [process.execPath, next, 'start', '-H', '127.0.0.1', '-p', String(port)];
  const bound = core === undefined ? command : ['taskset', '-c', String(core), ...command];
  if (core !== undefined) {
    const rest = [...cpus().keys()].filter((each) => each !== core).join(',');
    execFileSync('taskset', ['-a', '-p', '-c', rest, String(process.pid)]);
  }
  const server = spawn(bound[0]!, bound.slice(1), {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: {
      ...process.env,
      NODE_ENV: 'production',
      DATABASE_URL: databaseUrl,
      NEXTAUTH_SECRET: secret,
      NEXTAUTH_URL: origin,
      PORT: String(port),
      NEXT_TELEMETRY_DISABLED: '1',
    },
  });
  for (let tries = 0; tries < 600; tries += 1) {
    if (server.exitCode !== null) break;
    if (
      await fetch(`${origin}/icon.svg`).then(
        () => true,
        () => false,
      )
    )
      return {
        origin,
        processorMs: () => processorMs(server.pid!),
        stop: () => {
          server.kill('SIGTERM');
        },
      };
    await wait(100);
  }
  throw new Error('The server of the benchmark did not start.');
}

/**
 * Processor time that a process has used so far, in ms, as Linux keeps it (proc(5): fields 14 and 15 of stat, in ticks
 * of a hundredth of a second). Unlike a time by the clock it hardly minds what else the machine is doing.
 */
function processorMs(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
    .replace(/^.*\) /s, '')
    .split(' ');
  return 10 * (Number(fields[11]) + Number(fields[12]));
}

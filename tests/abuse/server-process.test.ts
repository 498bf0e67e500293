import { spawn, type ChildProcess } from 'node:child_process';
import { get } from 'node:http';
import { afterEach, expect, it } from 'vitest';

const running: ChildProcess[] = [];
afterEach(() => running.splice(0).forEach((child) => child.kill('SIGKILL')));

/** tests/fixtures/served.ts in a process of its own. */
async function serve(proxies: number, channel = false) {
  const child = spawn(process.execPath, ['--import', 'tsx', 'tests/fixtures/served.ts', String(proxies)], {
    stdio: ['ignore', 'pipe', 'inherit', ...(channel ? (['ipc'] as const) : [])],
  });
  running.push(child);
  const port = Number(
    await new Promise((resolve) => child.stdout!.once('data', (text) => resolve(String(text).trim()))),
  );
  const ended = new Promise<number>((resolve) => child.once('exit', () => resolve(Date.now())));
  return { child, port, ended };
}

const ask = (port: number, headers: Record<string, string>): Promise<string> =>
  new Promise((resolve, reject) =>
    get({ host: '127.0.0.1', port, headers }, (answer) => {
      let text = '';
      answer.on('data', (chunk) => (text += String(chunk))).on('end', () => resolve(text));
    }).on('error', reject),
  );

const openStream = (port: number): Promise<void> =>
  new Promise((resolve) => {
    get({ host: '127.0.0.1', port, path: '/stream' }, (answer) =>
      answer.once('data', () => resolve()).on('error', () => undefined),
    ).on('error', () => undefined);
  });

it('takes the address of the connection where no proxy is trusted, whatever the sender writes', async () => {
  const { port } = await serve(0);
  expect(await ask(port, { 'x-forwarded-for': '203.0.113.9' })).toBe('127.0.0.1');
  expect(await ask(port, {})).toBe('127.0.0.1');
}, 60_000);

it('leaves what a proxy says where one is trusted', async () => {
  const { port } = await serve(1);
  expect(await ask(port, { 'x-forwarded-for': '203.0.113.9' })).toBe('203.0.113.9');
}, 60_000);

it('ends within ten seconds of SIGTERM with a stream open', async () => {
  const { child, port, ended } = await serve(0);
  await openStream(port);
  const told = Date.now();
  child.kill('SIGTERM');
  expect((await ended) - told).toBeLessThan(10_000);
}, 60_000);

it('ends when whoever started it is gone', async () => {
  const { child, port, ended } = await serve(0, true);
  await openStream(port);
  const told = Date.now();
  child.disconnect();
  expect((await ended) - told).toBeLessThan(10_000);
}, 60_000);

import { spawn } from 'node:child_process';
import { setTimeout as wait } from 'node:timers/promises';

/** Serves until it is stopped (Ctrl-C), and prints the address as soon as it answers. */
export async function serve({ host, port, address }, environment, prepared) {
  const server = spawn(process.execPath, ['node_modules/next/dist/bin/next', 'start', '-H', host, '-p', String(port)], {
    env: environment,
    // By the channel the server notices when this command is gone, however it ended.
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  });
  const output = [];
  server.stdout.on('data', (text) => output.push(String(text)));
  const ended = new Promise((resolve) => {
    server.once('exit', (code, signal) => resolve({ code, signal }));
  });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'])
    process.on(signal, () => server.kill(signal === 'SIGHUP' ? 'SIGTERM' : signal));
  stopWithNpm(() => server.kill('SIGTERM'));

  const answered = await Promise.race([answers(host, port), ended.then(() => false)]);
  if (answered) {
    output.length = 0;
    server.stdout.on('data', (text) => process.stdout.write(text));
    console.log(greeting(address, prepared));
  }
  const { code, signal } = await ended;
  if (!answered && !signal) throw new Error(`The server ended by itself (${code}):\n${output.join('')}`);
  process.exit(signal ? 0 : (code ?? 1));
}

/** npm dies of a signal without passing it on: where it started this command, its end is ours. */
function stopWithNpm(stop) {
  if (process.env.npm_lifecycle_event !== 'start') return;
  const parent = process.ppid;
  setInterval(() => process.ppid !== parent && stop(), 500).unref();
}

async function answers(host, port) {
  const reachable =
    host === '0.0.0.0' ? '127.0.0.1' : host === '::' ? '[::1]' : host.includes(':') ? `[${host}]` : host;
  for (;;) {
    const response = await fetch(`http://${reachable}:${port}/`, { redirect: 'manual' }).catch(() => null);
    if (response) return true;
    await wait(100);
  }
}

function greeting(address, { notes, signIns, firstLink }) {
  const lines = [...notes, '', `Kerncrit is at ${address}`];
  if (signIns.length > 0) {
    const width = Math.max(...signIns.map(({ email }) => email.length));
    lines.push('', 'Demo sign-ins (everything in this database is invented):');
    lines.push(
      ...signIns.map(({ role, email, password }) => `  ${role.padEnd(10)}  ${email.padEnd(width)}  ${password}`),
    );
    lines.push('', 'To begin with a course of your own: npm start -- --real, with another DATABASE_URL.');
  }
  if (firstLink) {
    lines.push(
      '',
      `The first instructor makes their account here, once, until ${firstLink.expiresAt.slice(0, 10)}:`,
      `  ${firstLink.address}`,
    );
  }
  return [...lines, '', 'Stop it with Ctrl-C.'].join('\n');
}

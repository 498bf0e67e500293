import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';

/** What keeps the server from starting, and what to do about it, without a stack. */
export function sayFailure(error) {
  console.error(`\nKerncrit did not start. ${error?.message ?? error}`);
}

export function refuseOldNode(version = process.versions.node) {
  const [major, minor] = version.split('.').map(Number);
  const { engines } = JSON.parse(readFileSync('package.json', 'utf8'));
  const [needMajor, needMinor] = engines.node.replace('>=', '').split('.').map(Number);
  if (major > needMajor || (major === needMajor && minor >= needMinor)) return;
  throw new Error(`This is Node ${version}; Kerncrit needs ${needMajor}.${needMinor} or later (https://nodejs.org).`);
}

/** Checked first, so that the refusal doesn't come after a build. */
export function refuseTakenPort({ host, port }) {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', (error) =>
      reject(new Error(reasons(host, port)[error.code] ?? `It cannot listen on ${host}:${port}: ${error.message}`)),
    );
    probe.listen(port, host, () => probe.close(resolve));
  });
}

const reasons = (host, port) => ({
  EADDRINUSE: `Something is listening on ${host}:${port} already: perhaps Kerncrit itself. Another port: npm start -- --port ${port + 1}`,
  EACCES: `Port ${port} is kept for the system. Choose one above 1023, and let a proxy stand before it.`,
  EADDRNOTAVAIL: `${host} is not an address of this machine.`,
});

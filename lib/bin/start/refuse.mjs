import { createServer } from 'node:net';
import { isOldNode, neededNode } from '../newer-node.mjs';

/** What keeps the server from starting, and what to do about it, without a stack. */
export function sayFailure(error) {
  console.error(`\nKerncrit did not start. ${error?.message ?? error}`);
}

/** For who runs a file of ours without npm, whose commands fetch a newer Node (run.mjs). */
export function refuseOldNode(version = process.versions.node) {
  if (!isOldNode(version)) return;
  throw new Error(`This is Node ${version}; Kerncrit needs ${neededNode()} or later. The npm commands fetch one.`);
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

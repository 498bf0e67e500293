import { fork } from 'node:child_process';
import type { FitOptions } from './fit-net';
import type { NetNumbers } from './net-in-training';

/** Fits a net on these faces in a process of its own, so that several are fitted at once. */
export function fitApart(paths: string[], options: FitOptions): Promise<NetNumbers> {
  return new Promise((resolve, reject) => {
    const worker = fork(new URL('./fit.worker.ts', import.meta.url).pathname, {
      execArgv: ['--import', 'tsx'],
      serialization: 'advanced',
    });
    worker.on('error', reject);
    worker.on('exit', (code) => (code === 0 ? undefined : reject(new Error(`A fit ended with ${code}.`))));
    worker.on('message', (net) => {
      resolve(net as NetNumbers);
      worker.disconnect();
    });
    worker.send({ paths, options });
  });
}

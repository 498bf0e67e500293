import { fork } from 'node:child_process';

/**
 * Migrates and fills the database in a process of its own (TypeScript, and the schema engine's memory goes with it).
 * @returns what to print: see prepare-database.ts
 */
export function prepareDatabase(environment) {
  return new Promise((resolve, reject) => {
    const child = fork('lib/bin/start/prepare-database.ts', [], { execArgv: ['--import', 'tsx'], env: environment });
    child.once('error', reject);
    child.once('message', ({ prepared, failed }) => (prepared ? resolve(prepared) : reject(new Error(failed))));
    child.once('exit', () => reject(new Error('Preparing the database ended early; see its output above.')));
  });
}

import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('./', import.meta.url));

const all = 'tests/**/*.test.ts';
const isolated = 'tests/**/*.isolated.test.ts';
const elsewhere = ['tests/e2e/**', 'tests/bench/**', 'node_modules/**'];

export default defineConfig({
  resolve: {
    alias: [
      { find: /^@\//, replacement: root },
      // Next resolves `server-only` itself; outside it there is nothing to resolve.
      { find: 'server-only', replacement: `${root}tests/fixtures/server-only.ts` },
    ],
  },
  test: {
    // Files of one worker share what they import and the processes that read faces: importing and starting them again took
    // half of the time. What changes or counts something of its whole process is named *.isolated.test.ts.
    projects: [
      { extends: true, test: { name: 'shared', include: [all], exclude: [...elsewhere, isolated], isolate: false } },
      { extends: true, test: { name: 'isolated', include: [isolated], exclude: elsewhere } },
    ],
    testTimeout: 60_000,
    // Whatever is waited for by condition comes late on a busy machine: a second, the default, is no sign of a fault.
    expect: { poll: { timeout: 20_000 } },
    // Browsers, databases and other processes start slowly on a busy machine.
    hookTimeout: 60_000,
    // One worker on two cores leaves the other idle: much of this waits for databases and other processes.
    maxWorkers: Math.max(2, Math.floor(cpus().length / 2)),
    globalSetup: ['tests/fixtures/global-setup.ts'],
  },
});
